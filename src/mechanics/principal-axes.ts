/**
 * An inertia tensor seen along other axes: turned with a frame, about one inclined axis, and along the axes of its own
 * about which it has no products. A body spins without shaking its bearings about a principal axis and no other.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireFinite } from './domain.ts';
import { type InertiaTensor, requireTensor, tensorSymbols } from './inertia-tensor.ts';

function matrixOf(t: InertiaTensor): Matrix {
  return new Matrix([
    [t.rollInertia, t.rollPitchProduct, t.rollYawProduct],
    [t.rollPitchProduct, t.pitchInertia, t.pitchYawProduct],
    [t.rollYawProduct, t.pitchYawProduct, t.yawInertia],
  ]);
}

/**
 * Inertia tensor along axes turned against the old ones, origin kept.
 *
 *   I' = R I Rᵀ,   R = R_x(φ) R_y(θ) R_z(ψ)
 *
 * The new axes come from the old by yaw ψ about z, then pitch θ about the new y, then roll φ about the new x; each
 * R_a(γ) takes components along old axes into components along axes turned by γ about a.
 *
 * @param yaw    ψ, rad; pitch θ, rad; roll φ, rad
 * @throws DomainError  for a negative moment or a value that is not a number
 * Source: transformation of a second-order tensor; order of the turns as in ISO 8855:2011.
 */
export function turnedTensor(
  body: InertiaTensor & { readonly yaw: number; readonly pitch: number; readonly roll: number },
): InertiaTensor {
  requireTensor(body);
  requireFinite('yaw angle', body.yaw, 'rad');
  requireFinite('pitch angle', body.pitch, 'rad');
  requireFinite('roll angle', body.roll, 'rad');
  const [cy, sy] = [Math.cos(body.yaw), Math.sin(body.yaw)];
  const [cp, sp] = [Math.cos(body.pitch), Math.sin(body.pitch)];
  const [cr, sr] = [Math.cos(body.roll), Math.sin(body.roll)];
  const yaw = new Matrix([
    [cy, sy, 0],
    [-sy, cy, 0],
    [0, 0, 1],
  ]);
  const pitch = new Matrix([
    [cp, 0, -sp],
    [0, 1, 0],
    [sp, 0, cp],
  ]);
  const roll = new Matrix([
    [1, 0, 0],
    [0, cr, sr],
    [0, -sr, cr],
  ]);
  const turn = roll.mmul(pitch).mmul(yaw);
  const turned = turn.mmul(matrixOf(body)).mmul(turn.transpose());
  return {
    rollInertia: turned.get(0, 0),
    pitchInertia: turned.get(1, 1),
    yawInertia: turned.get(2, 2),
    rollPitchProduct: turned.get(0, 1),
    rollYawProduct: turned.get(0, 2),
    pitchYawProduct: turned.get(1, 2),
  };
}

/**
 * Inertia about one axis of any direction through the same origin.
 *
 *   I_n = nᵀ I n,   n = a / |a|
 *
 * @param forward  a_x, and left a_y, up a_z: a vector along the axis, of any length but 0
 * @returns I_n, kg·m²
 * @throws DomainError  for a negative moment or a direction without length
 * Source: OpenStax has it axis by axis; I_n = nᵀ I n from the energy ½ ωᵀ I ω of a spin ω = ω n.
 */
export function inertiaAboutAxis(
  body: InertiaTensor & { readonly forward: number; readonly left: number; readonly up: number },
): number {
  requireTensor(body);
  requireFinite('direction forward', body.forward);
  requireFinite('direction to the left', body.left);
  requireFinite('direction up', body.up);
  const length = Math.hypot(body.forward, body.left, body.up);
  if (length === 0) throw new DomainError('length of the direction', 0, 'the axis needs a direction');
  const [x, y, z] = [body.forward / length, body.left / length, body.up / length];
  return (
    body.rollInertia * x * x +
    body.pitchInertia * y * y +
    body.yawInertia * z * z +
    2 * (body.rollPitchProduct * x * y + body.rollYawProduct * x * z + body.pitchYawProduct * y * z)
  );
}

/** A principal moment, kg·m², and its axis as a vector of length 1 with its largest component positive. */
export interface PrincipalAxis {
  readonly inertia: number;
  readonly forward: number;
  readonly left: number;
  readonly up: number;
}

/**
 * Principal moments of inertia and their axes, the largest first.
 *
 *   I n_j = I_j n_j
 *
 * Where two moments are equal, any axis in their plane serves and the pair returned is one of many.
 *
 * @throws DomainError  for a negative moment, for no inertia at all, and for entries that no body has: a principal moment
 *                      below 0, or one that is more than the two others together
 * Source: eigenvalues of the symmetric tensor, by ml-matrix (Householder reduction, QL iteration).
 */
export function principalAxes(tensor: InertiaTensor): readonly [PrincipalAxis, PrincipalAxis, PrincipalAxis] {
  requireTensor(tensor);
  const scale = Math.max(...Object.values(onlyTensor(tensor)).map(Math.abs));
  if (scale === 0) throw new DomainError('inertia', 0, 'a body with inertia is needed', 'kg·m²');
  // Scaled to 1, so that the iteration meets neither overflow nor underflow.
  const decomposition = new EigenvalueDecomposition(matrixOf(tensor).div(scale), { assumeSymmetric: true });
  const vectors = decomposition.eigenvectorMatrix;
  const axes = decomposition.realEigenvalues
    .map((value, j) => axis(value * scale, vectors.getColumn(j)))
    .sort((a, b) => b.inertia - a.inertia);
  const [largest, middle, least] = axes;
  if (!largest || !middle || !least) throw new Error('a matrix of three rows has three eigenvalues');
  const rounding = 1e-9 * scale;
  if (least.inertia < -rounding) {
    throw new DomainError('least principal inertia', least.inertia, 'no body has less than 0', 'kg·m²');
  }
  if (largest.inertia > middle.inertia + least.inertia + rounding) {
    const requirement = 'no body has more than its two others together; check the signs and the axes';
    throw new DomainError('largest principal inertia', largest.inertia, requirement, 'kg·m²');
  }
  return [largest, middle, least];
}

function onlyTensor({
  rollInertia,
  pitchInertia,
  yawInertia,
  rollPitchProduct,
  rollYawProduct,
  pitchYawProduct,
}: InertiaTensor): InertiaTensor {
  return { rollInertia, pitchInertia, yawInertia, rollPitchProduct, rollYawProduct, pitchYawProduct };
}

function axis(inertia: number, vector: readonly number[]): PrincipalAxis {
  const strongest = vector.reduce((best, v) => (Math.abs(v) > Math.abs(best) ? v : best), 0);
  const sign = strongest < 0 ? -1 : 1;
  const [forward = 0, left = 0, up = 0] = vector.map((v) => sign * v + 0);
  return { inertia, forward, left, up };
}

const tensor = tensorSymbols('about the origin');
const angle = (symbol: string, meaning: string) => ({ symbol, unit: 'rad', meaning, default: 0 }) as const;
const cosine = (symbol: string, meaning: string) => ({ symbol, unit: '1', meaning }) as const;
const example = {
  rollInertia: 6.1e-3,
  pitchInertia: 8.9e-3,
  yawInertia: 4.2e-3,
  rollPitchProduct: 1e-5,
  rollYawProduct: -3e-4,
  pitchYawProduct: 2e-5,
};
const ENTRIES = String.raw`\mathbf{I} = \left( I_{xx}, I_{yy}, I_{zz}, I_{xy}, I_{xz}, I_{yz} \right)`;

export const principalAxesCalculations: readonly Calculation[] = [
  calculation({
    id: 'inertia.turned-axes',
    title: 'Inertia tensor along turned axes',
    equation: String.raw`\begin{gathered} \mathbf{I}' = \mathbf{R}\, \mathbf{I}\, \mathbf{R}^{\mathrm{T}}, \qquad \mathbf{R} = \mathbf{R}_x(\varphi)\, \mathbf{R}_y(\theta)\, \mathbf{R}_z(\psi) \\ ${ENTRIES}, \quad \mathbf{I}' = \left( I'_{xx}, I'_{yy}, I'_{zz}, I'_{xy}, I'_{xz}, I'_{yz} \right) \end{gathered}`,
    inputs: {
      ...tensor,
      yaw: angle(String.raw`\psi`, 'yaw of the new axes, first, about z'),
      pitch: angle(String.raw`\theta`, 'pitch of the new axes, second, about the new y'),
      roll: angle(String.raw`\varphi`, 'roll of the new axes, last, about the new x'),
    },
    outputs: tensorSymbols('along the turned axes', "'"),
    validity: 'Origin kept; products are tensor entries (I_xy = −Σ m x y).',
    source: 'Transformation of a second-order tensor; order of the turns as in ISO 8855:2011',
    compute: turnedTensor,
    example: { ...example, yaw: 0, pitch: 0.12, roll: 0 },
    related: ['inertia.principal', 'inertia.about-axis'],
  }),
  calculation({
    id: 'inertia.about-axis',
    title: 'Inertia about an axis of any direction',
    equation: String.raw`\begin{gathered} I_n = \frac{1}{a^2} \left[ I_{xx} a_x^2 + I_{yy} a_y^2 + I_{zz} a_z^2 + 2 \left( I_{xy} a_x a_y + I_{xz} a_x a_z + I_{yz} a_y a_z \right) \right] \\ a^2 = a_x^2 + a_y^2 + a_z^2 \end{gathered}`,
    inputs: {
      ...tensor,
      forward: { symbol: 'a_x', unit: '1', meaning: 'direction of the axis, its share forward' },
      left: { symbol: 'a_y', unit: '1', meaning: 'direction of the axis, its share to the left' },
      up: { symbol: 'a_z', unit: '1', meaning: 'direction of the axis, its share up' },
    },
    outputs: { inertia: { symbol: 'I_n', unit: 'kg·m²', meaning: 'inertia about the axis' } },
    validity: 'Axis through the same origin as the tensor; the length of the direction does not matter.',
    source: 'Derived: energy ½ ωᵀ I ω of a spin about the axis',
    compute: (inputs) => ({ inertia: inertiaAboutAxis(inputs) }),
    example: { ...example, forward: 1, left: 0, up: 0.2 },
    related: ['inertia.turned-axes', 'inertia.parallel-axis'],
  }),
  calculation({
    id: 'inertia.principal',
    title: 'Principal moments and axes of inertia',
    equation: String.raw`\begin{gathered} \mathbf{I}\, \mathbf{n}_j = I_j \mathbf{n}_j, \qquad I_1 \ge I_2 \ge I_3, \qquad ${ENTRIES} \\ \mathbf{n}_1 = \left( n_{1x}, n_{1y}, n_{1z} \right), \quad \mathbf{n}_2 = \left( n_{2x}, n_{2y}, n_{2z} \right), \quad \mathbf{n}_3 = \left( n_{3x}, n_{3y}, n_{3z} \right) \end{gathered}`,
    inputs: tensor,
    outputs: {
      largest: { symbol: 'I_1', unit: 'kg·m²', meaning: 'largest principal inertia' },
      middle: { symbol: 'I_2', unit: 'kg·m²', meaning: 'middle principal inertia' },
      least: { symbol: 'I_3', unit: 'kg·m²', meaning: 'least principal inertia' },
      largestForward: cosine('n_{1x}', 'share forward of the axis of the largest inertia'),
      largestLeft: cosine('n_{1y}', 'share to the left of the axis of the largest inertia'),
      largestUp: cosine('n_{1z}', 'share up of the axis of the largest inertia'),
      middleForward: cosine('n_{2x}', 'share forward of the axis of the middle inertia'),
      middleLeft: cosine('n_{2y}', 'share to the left of the axis of the middle inertia'),
      middleUp: cosine('n_{2z}', 'share up of the axis of the middle inertia'),
      leastForward: cosine('n_{3x}', 'share forward of the axis of the least inertia'),
      leastLeft: cosine('n_{3y}', 'share to the left of the axis of the least inertia'),
      leastUp: cosine('n_{3z}', 'share up of the axis of the least inertia'),
    },
    validity:
      'Axes of length 1, their largest share positive; where two moments are equal, one pair out of many. Refused where the entries belong to no body.',
    source: 'Eigenvalues of the symmetric tensor (Householder reduction and QL iteration, ml-matrix)',
    compute: (inputs) => {
      const [largest, middle, least] = principalAxes(inputs);
      return {
        largest: largest.inertia,
        middle: middle.inertia,
        least: least.inertia,
        largestForward: largest.forward,
        largestLeft: largest.left,
        largestUp: largest.up,
        middleForward: middle.forward,
        middleLeft: middle.left,
        middleUp: middle.up,
        leastForward: least.forward,
        leastLeft: least.left,
        leastUp: least.up,
      };
    },
    example,
    related: ['inertia.tensor', 'inertia.turned-axes'],
  }),
];
