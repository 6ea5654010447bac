/**
 * The whole inertia of a part table: three moments and three products, about the centre of gravity, and what they
 * become about other axes. The lean needs the roll inertia alone; how the vehicle answers when the ballast, a kick or
 * the rotor turns it about two axes at once needs the products as well.
 *
 * Sign: products are the entries of the tensor, I_xy = −Σ m x y. Drawing programs and handbooks often print +Σ m x y;
 * such a figure changes its sign before it comes in here.
 * Frame: ISO 8855; x forward, y to the left, z up.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireEach, requireFinite, requireNotNegative, requireSameLength } from './domain.ts';
import { centreOfGravity } from './mass-sums.ts';

/** Moments and products of inertia about three axes square to each other, kg·m². */
export interface InertiaTensor {
  /** I_xx, about the fore-and-aft axis. */
  readonly rollInertia: number;
  /** I_yy, about the axis across the vehicle. */
  readonly pitchInertia: number;
  /** I_zz, about the upright axis. */
  readonly yawInertia: number;
  /** I_xy = −Σ m x y. */
  readonly rollPitchProduct: number;
  /** I_xz = −Σ m x z. */
  readonly rollYawProduct: number;
  /** I_yz = −Σ m y z. */
  readonly pitchYawProduct: number;
}

/** What a mass m at (x, y, z) adds about axes through the origin: m [ (d·d) E − d dᵀ ]. */
function transfer(mass: number, x: number, y: number, z: number): InertiaTensor {
  return {
    rollInertia: mass * (y * y + z * z),
    pitchInertia: mass * (x * x + z * z),
    yawInertia: mass * (x * x + y * y),
    rollPitchProduct: -mass * x * y,
    rollYawProduct: -mass * x * z,
    pitchYawProduct: -mass * y * z,
  };
}

function sum(a: InertiaTensor, b: InertiaTensor): InertiaTensor {
  return {
    rollInertia: a.rollInertia + b.rollInertia,
    pitchInertia: a.pitchInertia + b.pitchInertia,
    yawInertia: a.yawInertia + b.yawInertia,
    rollPitchProduct: a.rollPitchProduct + b.rollPitchProduct,
    rollYawProduct: a.rollYawProduct + b.rollYawProduct,
    pitchYawProduct: a.pitchYawProduct + b.pitchYawProduct,
  };
}

/** Finite entries, moments not negative. */
export function requireTensor(tensor: InertiaTensor): void {
  requireNotNegative('roll inertia', tensor.rollInertia, 'kg·m²');
  requireNotNegative('pitch inertia', tensor.pitchInertia, 'kg·m²');
  requireNotNegative('yaw inertia', tensor.yawInertia, 'kg·m²');
  requireFinite('product of inertia of roll and pitch', tensor.rollPitchProduct, 'kg·m²');
  requireFinite('product of inertia of roll and yaw', tensor.rollYawProduct, 'kg·m²');
  requireFinite('product of inertia of pitch and yaw', tensor.pitchYawProduct, 'kg·m²');
}

/** Positions of the parts and their own tensors about their own centres of gravity, axes along the vehicle's. */
export interface PartTensors {
  readonly masses: readonly number[];
  readonly forwards: readonly number[];
  readonly lefts: readonly number[];
  readonly heights: readonly number[];
  readonly ownRollInertias: readonly number[];
  readonly ownPitchInertias: readonly number[];
  readonly ownYawInertias: readonly number[];
  readonly ownRollPitchProducts: readonly number[];
  readonly ownRollYawProducts: readonly number[];
  readonly ownPitchYawProducts: readonly number[];
}

/**
 * Inertia tensor of a part table about its own centre of gravity, axes along the vehicle's.
 *
 *   I = Σ [ I_i + m_i ( (d_i·d_i) E − d_i d_iᵀ ) ],   d_i = r_i − r̄
 *
 * @param masses            m_i, kg, not negative, together more than 0
 * @param forwards          x_i, m
 * @param lefts             y_i, m
 * @param heights           z_i, m
 * @param ownRollInertias   I_xx of each part about its own centre of gravity, kg·m²; likewise pitch and yaw
 * @param ownRollPitchProducts  I_xy of each part, kg·m², as a tensor entry; 0 for a body whose faces lie along the axes
 * @throws DomainError  for a negative mass or moment, no mass at all, or lists of unequal length
 * Source: parallel-axis theorem for tensors; OpenStax, University Physics 1, section 10.5, axis by axis.
 */
export function inertiaTensor(parts: PartTensors): InertiaTensor {
  const { masses, forwards, lefts, heights } = parts;
  const centre = {
    x: centreOfGravity({ masses, positions: forwards }),
    y: centreOfGravity({ masses, positions: lefts }),
    z: centreOfGravity({ masses, positions: heights }),
  };
  const own = ownTensors(parts);
  return masses.reduce(
    (total, mass, i) =>
      sum(
        total,
        sum(
          own[i] ?? transfer(0, 0, 0, 0),
          transfer(
            mass,
            (forwards[i] ?? 0) - centre.x,
            (lefts[i] ?? 0) - centre.y,
            (heights[i] ?? 0) - centre.z,
          ),
        ),
      ),
    transfer(0, 0, 0, 0),
  );
}

function ownTensors(parts: PartTensors): InertiaTensor[] {
  const moments = [
    ['own roll inertia', parts.ownRollInertias],
    ['own pitch inertia', parts.ownPitchInertias],
    ['own yaw inertia', parts.ownYawInertias],
  ] as const;
  const products = [
    ['own product of roll and pitch', parts.ownRollPitchProducts],
    ['own product of roll and yaw', parts.ownRollYawProducts],
    ['own product of pitch and yaw', parts.ownPitchYawProducts],
  ] as const;
  for (const [name, values] of moments) requireEach(`${name} of part`, values, 'kg·m²', 0);
  for (const [name, values] of products) requireEach(`${name} of part`, values, 'kg·m²');
  for (const [name, values] of [...moments, ...products]) {
    requireSameLength(name, values, 'mass', parts.masses);
  }
  return parts.masses.map((_, i) => ({
    rollInertia: parts.ownRollInertias[i] ?? 0,
    pitchInertia: parts.ownPitchInertias[i] ?? 0,
    yawInertia: parts.ownYawInertias[i] ?? 0,
    rollPitchProduct: parts.ownRollPitchProducts[i] ?? 0,
    rollYawProduct: parts.ownRollYawProducts[i] ?? 0,
    pitchYawProduct: parts.ownPitchYawProducts[i] ?? 0,
  }));
}

/**
 * Inertia tensor about axes parallel to those through the centre of gravity.
 *
 *   I' = I + m [ (d·d) E − d dᵀ ]
 *
 * @param mass     m, kg, not negative
 * @param forward  x, m, of the centre of gravity from the new origin; likewise left y and height z
 * @throws DomainError  for a negative mass or moment, or a value that is not a number
 * Source: parallel-axis theorem for tensors. Between two origins of which neither is the centre of gravity the way goes
 * through the centre of gravity.
 */
export function parallelAxesTensor(
  body: InertiaTensor & {
    readonly mass: number;
    readonly forward: number;
    readonly left: number;
    readonly height: number;
  },
): InertiaTensor {
  requireTensor(body);
  requireNotNegative('mass', body.mass, 'kg');
  requireFinite('distance forward', body.forward, 'm');
  requireFinite('distance to the left', body.left, 'm');
  requireFinite('height', body.height, 'm');
  return sum(body, transfer(body.mass, body.forward, body.left, body.height));
}

/**
 * Inertia about one axis parallel to an axis through the centre of gravity: I_P = I + m d², kg·m².
 *
 * @param inertia   I, kg·m², about the axis through the centre of gravity, not negative
 * @param mass      m, kg, not negative
 * @param distance  d, m, from the centre of gravity to the new axis
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 10.5.
 */
export function parallelAxisInertia(body: {
  readonly inertia: number;
  readonly mass: number;
  readonly distance: number;
}): number {
  requireNotNegative('inertia about the centre of gravity', body.inertia, 'kg·m²');
  requireNotNegative('mass', body.mass, 'kg');
  requireFinite('distance of the axes', body.distance, 'm');
  return body.inertia + body.mass * body.distance ** 2;
}

/**
 * Radius of gyration: k = √(I/m), m.
 *
 * @param inertia  I, kg·m², not negative
 * @param mass     m, kg, more than 0
 * @throws DomainError  outside these ranges
 * Source: by definition.
 */
export function radiusOfGyration(body: { readonly inertia: number; readonly mass: number }): number {
  requireNotNegative('inertia', body.inertia, 'kg·m²');
  if (!(body.mass > 0)) throw new DomainError('mass', body.mass, 'it has to be more than 0 kg', 'kg');
  return Math.sqrt(body.inertia / body.mass);
}

/** The six entries as symbols; `mark` is what stands behind each, such as a prime. */
export const tensorSymbols = (of: string, mark = '') =>
  ({
    rollInertia: { symbol: `I${mark}_{xx}`, unit: 'kg·m²', meaning: `roll inertia ${of}` },
    pitchInertia: { symbol: `I${mark}_{yy}`, unit: 'kg·m²', meaning: `pitch inertia ${of}` },
    yawInertia: { symbol: `I${mark}_{zz}`, unit: 'kg·m²', meaning: `yaw inertia ${of}` },
    rollPitchProduct: {
      symbol: `I${mark}_{xy}`,
      unit: 'kg·m²',
      meaning: `product of inertia of roll and pitch ${of}, a tensor entry`,
    },
    rollYawProduct: {
      symbol: `I${mark}_{xz}`,
      unit: 'kg·m²',
      meaning: `product of inertia of roll and yaw ${of}, a tensor entry`,
    },
    pitchYawProduct: {
      symbol: `I${mark}_{yz}`,
      unit: 'kg·m²',
      meaning: `product of inertia of pitch and yaw ${of}, a tensor entry`,
    },
  }) as const;

const ownList = (symbol: string, of: string) =>
  ({
    symbol,
    unit: 'kg·m²',
    meaning: `${of} of the parts about their own centres of gravity`,
    list: true,
  }) as const;
const position = (symbol: string, meaning: string) =>
  ({ symbol, unit: 'm', meaning: `${meaning} of the parts’ centres of gravity`, list: true }) as const;
const mass = { symbol: 'm', unit: 'kg', meaning: 'mass of the body' } as const;

export const inertiaTensorCalculations: readonly Calculation[] = [
  calculation({
    id: 'inertia.tensor',
    title: 'Inertia tensor about the centre of gravity',
    equation: String.raw`\begin{gathered} I_{xx} = \sum_i \left[ I_{xx,i} + m_i \left( \eta_i^2 + \zeta_i^2 \right) \right], \quad I_{yy} = \sum_i \left[ I_{yy,i} + m_i \left( \xi_i^2 + \zeta_i^2 \right) \right], \quad I_{zz} = \sum_i \left[ I_{zz,i} + m_i \left( \xi_i^2 + \eta_i^2 \right) \right] \\ I_{xy} = \sum_i \left( I_{xy,i} - m_i \xi_i \eta_i \right), \quad I_{xz} = \sum_i \left( I_{xz,i} - m_i \xi_i \zeta_i \right), \quad I_{yz} = \sum_i \left( I_{yz,i} - m_i \eta_i \zeta_i \right) \\ \xi_i = x_i - \bar x, \quad \eta_i = y_i - \bar y, \quad \zeta_i = z_i - \bar z \end{gathered}`,
    inputs: {
      masses: { symbol: 'm_i', unit: 'kg', meaning: 'masses of the parts', list: true },
      forwards: position('x_i', 'positions forward'),
      lefts: position('y_i', 'positions to the left'),
      heights: position('z_i', 'heights above the ground line'),
      ownRollInertias: ownList('I_{xx,i}', 'roll inertias'),
      ownPitchInertias: ownList('I_{yy,i}', 'pitch inertias'),
      ownYawInertias: ownList('I_{zz,i}', 'yaw inertias'),
      ownRollPitchProducts: ownList('I_{xy,i}', 'products of roll and pitch'),
      ownRollYawProducts: ownList('I_{xz,i}', 'products of roll and yaw'),
      ownPitchYawProducts: ownList('I_{yz,i}', 'products of pitch and yaw'),
    },
    outputs: tensorSymbols('about the centre of gravity'),
    validity:
      'Rigid parts, own axes along the vehicle’s; products are tensor entries (I_xy = −Σ m x y), so that a figure printed as +Σ m x y changes its sign.',
    source:
      'Parallel-axis theorem for tensors; OpenStax, University Physics Volume 1, section 10.5, axis by axis',
    compute: inertiaTensor,
    example: {
      masses: [0.365, 0.41, 0.107, 0.073],
      forwards: [0.05, -0.03, 0.11, 0],
      lefts: [0, 0, 0.012, 0],
      heights: [0.12, 0.14, 0.09, 0.315],
      ownRollInertias: [4.1e-4, 7.8e-4, 6e-5, 0],
      ownPitchInertias: [9.2e-4, 7.8e-4, 1.1e-4, 0],
      ownYawInertias: [7.4e-4, 1.3e-3, 9e-5, 0],
      ownRollPitchProducts: [0, 0, 0, 0],
      ownRollYawProducts: [0, 0, -1e-5, 0],
      ownPitchYawProducts: [0, 0, 0, 0],
    },
    related: ['mass.roll-inertia', 'inertia.principal', 'inertia.parallel-axes'],
  }),
  calculation({
    id: 'inertia.parallel-axes',
    title: 'Inertia tensor about parallel axes',
    equation: String.raw`\begin{gathered} I'_{xx} = I_{xx} + m \left( y^2 + z^2 \right), \quad I'_{yy} = I_{yy} + m \left( x^2 + z^2 \right), \quad I'_{zz} = I_{zz} + m \left( x^2 + y^2 \right) \\ I'_{xy} = I_{xy} - m x y, \quad I'_{xz} = I_{xz} - m x z, \quad I'_{yz} = I_{yz} - m y z \end{gathered}`,
    inputs: {
      ...tensorSymbols('about the centre of gravity'),
      mass,
      forward: { symbol: 'x', unit: 'm', meaning: 'distance of the centre of gravity forward of the origin' },
      left: {
        symbol: 'y',
        unit: 'm',
        meaning: 'distance of the centre of gravity to the left of the origin',
      },
      height: { symbol: 'z', unit: 'm', meaning: 'height of the centre of gravity above the origin' },
    },
    outputs: tensorSymbols('about the origin', "'"),
    validity: 'From the centre of gravity only; from another point first back to the centre of gravity.',
    source:
      'Parallel-axis theorem for tensors; OpenStax, University Physics Volume 1, section 10.5, axis by axis',
    compute: parallelAxesTensor,
    example: {
      rollInertia: 6.1e-3,
      pitchInertia: 8.9e-3,
      yawInertia: 4.2e-3,
      rollPitchProduct: 0,
      rollYawProduct: -3e-4,
      pitchYawProduct: 0,
      mass: 0.955,
      forward: 0.015,
      left: 0.001,
      height: 0.145,
    },
    related: ['inertia.tensor', 'inertia.parallel-axis'],
  }),
  calculation({
    id: 'inertia.parallel-axis',
    title: 'Inertia about a parallel axis',
    equation: 'I_P = I + m d^2',
    inputs: {
      inertia: {
        symbol: 'I',
        unit: 'kg·m²',
        meaning: 'inertia about the axis through the centre of gravity',
      },
      mass,
      distance: { symbol: 'd', unit: 'm', meaning: 'distance of the axes' },
    },
    outputs: { inertia: { symbol: 'I_P', unit: 'kg·m²', meaning: 'inertia about the parallel axis' } },
    validity: 'The distance is taken from the centre of gravity, square to the axes.',
    source: 'OpenStax, University Physics Volume 1, section 10.5',
    compute: (inputs) => ({ inertia: parallelAxisInertia(inputs) }),
    example: { inertia: 6.1e-3, mass: 0.955, distance: 0.145 },
    related: ['inertia.parallel-axes', 'mass.roll-inertia'],
  }),
  calculation({
    id: 'inertia.radius-of-gyration',
    title: 'Radius of gyration',
    equation: String.raw`k = \sqrt{\frac{I}{m}}`,
    inputs: { inertia: { symbol: 'I', unit: 'kg·m²', meaning: 'inertia about the axis' }, mass },
    outputs: { radius: { symbol: 'k', unit: 'm', meaning: 'radius of gyration about the same axis' } },
    validity: 'Inertia and radius belong to the same axis.',
    source: 'By definition',
    compute: (inputs) => ({ radius: radiusOfGyration(inputs) }),
    example: { inertia: 6.1e-3, mass: 0.955 },
    related: ['inertia.parallel-axis'],
  }),
];
