/**
 * Inertia by hanging a body from wires and letting it turn: on one wire that twists (torsion), on two (bifilar), on a
 * plate on three (trifilar). Unlike a compound pendulum these turn the body about an axis through its centre of gravity.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireFinite, requireNotNegative, requirePositive } from './domain.ts';
import { standardGravity } from './gravity.ts';
import type { InertiaTensor } from './inertia-tensor.ts';

/**
 * Stiffness of a torsion wire from the period of a body of known inertia: κ = 4π² I / T², N·m/rad.
 *
 * @param inertia  I, kg·m², of the calibration body about the wire, more than 0
 * @param period   T, s, more than 0
 * @throws DomainError  outside these ranges
 * Source: J. K. Moore, Human Control of a Bicycle (2012), physical parameters; OpenStax, University Physics 1, ex. 15.5.
 */
export function torsionStiffness(calibration: { readonly inertia: number; readonly period: number }): number {
  requirePositive('inertia of the calibration body', calibration.inertia, 'kg·m²');
  requirePositive('period of the calibration body', calibration.period, 's');
  return calibration.inertia * ((2 * Math.PI) / calibration.period) ** 2;
}

/**
 * Inertia on a torsion wire: I = κ (T/2π)², kg·m² about the wire.
 *
 * @param stiffness  κ, N·m/rad, more than 0
 * @param period     T, s, more than 0
 * @throws DomainError  outside these ranges
 * Source: as `torsionStiffness`.
 */
export function torsionInertia(pendulum: { readonly stiffness: number; readonly period: number }): number {
  requirePositive('stiffness of the wire', pendulum.stiffness, 'N·m/rad');
  requirePositive('period of swing', pendulum.period, 's');
  return pendulum.stiffness * (pendulum.period / (2 * Math.PI)) ** 2;
}

/**
 * Inertia on two wires of equal length, about the upright axis through the centre of gravity between them.
 *
 *   I = m g x y T² / (4π² l)
 *
 * @param mass            m, kg, more than 0
 * @param firstDistance   x, m of the one wire from the centre of gravity; secondDistance y of the other; more than 0
 * @param wireLength      l, m, more than 0
 * @param period          T, s, more than 0
 * @returns I, kg·m²
 * @throws DomainError  outside these ranges
 * Source: Khurmi & Gupta, Theory of Machines, 14th ed., example 4.9; Bevan, The Theory of Machines, ch. 2.
 */
export function bifilarInertia(pendulum: {
  readonly mass: number;
  readonly firstDistance: number;
  readonly secondDistance: number;
  readonly wireLength: number;
  readonly period: number;
}): number {
  requirePositive('mass', pendulum.mass, 'kg');
  requirePositive('distance of the first wire', pendulum.firstDistance, 'm');
  requirePositive('distance of the second wire', pendulum.secondDistance, 'm');
  requirePositive('length of the wires', pendulum.wireLength, 'm');
  requirePositive('period of swing', pendulum.period, 's');
  const stiffness =
    (pendulum.mass * standardGravity * pendulum.firstDistance * pendulum.secondDistance) /
    pendulum.wireLength;
  return stiffness * (pendulum.period / (2 * Math.PI)) ** 2;
}

/**
 * Inertia on a plate that hangs from three wires, the bare plate taken off.
 *
 *   I = g r² / (4π² l) [ (m + m_p) T² − m_p T_p² ]
 *
 * @param mass            m, kg of the body, more than 0
 * @param radius          r, m of the circle on which the wires hold the plate, more than 0
 * @param wireLength      l, m, more than 0
 * @param period          T, s with the body on the plate, more than 0
 * @param platformMass    m_p, kg of the bare plate, not negative; 0 if left out: the body hangs from the wires itself
 * @param platformPeriod  T_p, s of the bare plate, not negative; 0 if left out
 * @returns I, kg·m², about the upright axis through the centre of gravity
 * @throws DomainError  outside these ranges, or where the bare plate alone has more inertia than the two together
 * Source: Khurmi & Gupta, Theory of Machines, 14th ed., examples 4.10 and 4.11.
 */
export function trifilarInertia({
  mass,
  radius,
  wireLength,
  period,
  platformMass = 0,
  platformPeriod = 0,
}: {
  readonly mass: number;
  readonly radius: number;
  readonly wireLength: number;
  readonly period: number;
  readonly platformMass?: number;
  readonly platformPeriod?: number;
}): number {
  requirePositive('mass', mass, 'kg');
  requirePositive('radius of the circle of wires', radius, 'm');
  requirePositive('length of the wires', wireLength, 'm');
  requirePositive('period with the body', period, 's');
  requireNotNegative('mass of the bare plate', platformMass, 'kg');
  requireNotNegative('period of the bare plate', platformPeriod, 's');
  const loaded = (mass + platformMass) * period ** 2;
  const bare = platformMass * platformPeriod ** 2;
  if (bare > loaded) {
    const requirement = 'the plate alone cannot have more inertia than plate and body together';
    throw new DomainError('period of the bare plate', platformPeriod, requirement, 's');
  }
  return (standardGravity * radius ** 2 * (loaded - bare)) / (4 * Math.PI ** 2 * wireLength);
}

/** Three axes of which two lie closer than this tell two inertias, not three. */
const LEAST_SINES = 1e-4;

/**
 * Inertias and product in the vehicle's upright plane from three hangings that differ by a turn about the axis across.
 *
 *   I(β) = I_xx cos²β − 2 I_xz sin β cos β + I_zz sin²β
 *
 * @param firstInertia  I₁, secondInertia I₂, thirdInertia I₃, kg·m², each about the wire, not negative
 * @param firstAngle    β₁, secondAngle β₂, thirdAngle β₃, rad of the wire from the vehicle's fore-and-aft axis
 * @returns roll inertia I_xx, product I_xz (a tensor entry), yaw inertia I_zz, kg·m²
 * @throws DomainError  for angles of which two are the same axis
 * Source: J. K. Moore, Human Control of a Bicycle (2012), physical parameters.
 */
export function planarTensor(hangings: {
  readonly firstInertia: number;
  readonly firstAngle: number;
  readonly secondInertia: number;
  readonly secondAngle: number;
  readonly thirdInertia: number;
  readonly thirdAngle: number;
}): Pick<InertiaTensor, 'rollInertia' | 'rollYawProduct' | 'yawInertia'> {
  const inertias = [hangings.firstInertia, hangings.secondInertia, hangings.thirdInertia] as const;
  const angles = [hangings.firstAngle, hangings.secondAngle, hangings.thirdAngle] as const;
  for (const inertia of inertias) requireNotNegative('inertia about the wire', inertia, 'kg·m²');
  for (const angle of angles) requireFinite('angle of the wire', angle, 'rad');
  const [a, b, c] = angles;
  const spread = Math.sin(a - b) * Math.sin(b - c) * Math.sin(c - a);
  if (Math.abs(spread) < LEAST_SINES) {
    throw new DomainError(
      'angle of the third wire',
      c,
      'the three hangings need three different axes',
      'rad',
    );
  }
  // In double angles I = M + D cos 2β − P sin 2β: Cramer's rule, whose determinant is 4 times the product of sines.
  const [ca, cb, cc] = [Math.cos(2 * a), Math.cos(2 * b), Math.cos(2 * c)];
  const [sa, sb, sc] = [Math.sin(2 * a), Math.sin(2 * b), Math.sin(2 * c)];
  const [ia, ib, ic] = inertias;
  const determinant = cb * sc - sb * cc - (ca * sc - sa * cc) + (ca * sb - sa * cb);
  const mean = (ia * (cb * sc - sb * cc) - ib * (ca * sc - sa * cc) + ic * (ca * sb - sa * cb)) / determinant;
  const half = (ia * (sb - sc) - ib * (sa - sc) + ic * (sa - sb)) / determinant;
  const product = (ia * (cb - cc) - ib * (ca - cc) + ic * (ca - cb)) / determinant;
  return { rollInertia: mean + half, rollYawProduct: product, yawInertia: mean - half };
}

const mass = { symbol: 'm', unit: 'kg', meaning: 'mass of the body' } as const;
const period = { symbol: 'T', unit: 's', meaning: 'period of swing, there and back' } as const;
const wireLength = { symbol: 'l', unit: 'm', meaning: 'length of the wires' } as const;
const stiffness = {
  symbol: String.raw`\kappa`,
  unit: 'N·m/rad',
  meaning: 'stiffness of the wire in torsion',
} as const;
const inertia = {
  symbol: 'I',
  unit: 'kg·m²',
  meaning: 'inertia about the upright axis through the centre of gravity',
} as const;
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed.';
const MOORE = 'J. K. Moore, Human Control of a Bicycle, PhD thesis, UC Davis 2012, physical parameters';

export const wirePendulumCalculations: readonly Calculation[] = [
  calculation({
    id: 'swing.torsion-stiffness',
    title: 'Stiffness of a torsion wire from a calibration body',
    equation: String.raw`\kappa = \frac{4\pi^2 I}{T^2}`,
    inputs: {
      inertia: { symbol: 'I', unit: 'kg·m²', meaning: 'inertia of the calibration body about the wire' },
      period: { symbol: 'T', unit: 's', meaning: 'period of the calibration body' },
    },
    outputs: { stiffness },
    validity: 'A round rod hung by its middle serves; same wire, same clamps and about the same load later.',
    source: MOORE,
    compute: (inputs) => ({ stiffness: torsionStiffness(inputs) }),
    example: { inertia: 2.1e-3, period: 1.42 },
    related: ['swing.torsion', 'body.cylinder-across-axis'],
  }),
  calculation({
    id: 'swing.torsion',
    title: 'Inertia on a torsion wire',
    equation: String.raw`I = \kappa \left( \frac{T}{2\pi} \right)^2`,
    inputs: { stiffness, period },
    outputs: { inertia },
    validity: 'Centre of gravity under the wire; elastic wire, any swing within its limit.',
    source: `OpenStax, University Physics Volume 1, example 15.5; ${MOORE}`,
    compute: (inputs) => ({ inertia: torsionInertia(inputs) }),
    example: { stiffness: 0.0411, period: 2.42 },
    related: ['swing.torsion-stiffness', 'swing.planar-tensor'],
  }),
  calculation({
    id: 'swing.bifilar',
    title: 'Inertia on two wires',
    equation: String.raw`I = \frac{m g\, x\, y\, T^2}{4\pi^2 l}`,
    inputs: {
      mass,
      firstDistance: {
        symbol: 'x',
        unit: 'm',
        meaning: 'distance of the first wire from the centre of gravity',
      },
      secondDistance: {
        symbol: 'y',
        unit: 'm',
        meaning: 'distance of the second wire from the centre of gravity',
      },
      wireLength,
      period,
    },
    outputs: { inertia },
    validity:
      'Wires upright and of equal length, long against their distance; small swings about the middle.',
    source: `${KHURMI}, example 4.9; T. Bevan, The Theory of Machines, ch. 2`,
    compute: (inputs) => ({ inertia: bifilarInertia(inputs) }),
    example: { mass: 0.955, firstDistance: 0.08, secondDistance: 0.08, wireLength: 0.9, period: 1.55 },
    related: ['swing.trifilar', 'swing.torsion'],
  }),
  calculation({
    id: 'swing.trifilar',
    title: 'Inertia on a plate on three wires',
    equation: String.raw`I = \frac{g r^2}{4\pi^2 l} \left[ \left( m + m_p \right) T^2 - m_p T_p^2 \right]`,
    inputs: {
      mass,
      radius: { symbol: 'r', unit: 'm', meaning: 'radius of the circle of wires' },
      wireLength,
      period: { symbol: 'T', unit: 's', meaning: 'period with the body on the plate' },
      platformMass: { symbol: 'm_p', unit: 'kg', meaning: 'mass of the bare plate', default: 0 },
      platformPeriod: { symbol: 'T_p', unit: 's', meaning: 'period of the bare plate', default: 0 },
    },
    outputs: { inertia },
    validity:
      'Wires upright, of equal length and evenly spaced, centre of gravity over the middle of the plate, small swings.',
    source: `${KHURMI}, examples 4.10 and 4.11`,
    compute: (inputs) => ({ inertia: trifilarInertia(inputs) }),
    example: {
      mass: 0.955,
      radius: 0.12,
      wireLength: 0.8,
      period: 1.36,
      platformMass: 0.42,
      platformPeriod: 1.29,
    },
    related: ['swing.bifilar', 'swing.torsion'],
  }),
  calculation({
    id: 'swing.planar-tensor',
    title: 'Inertias and product from three hangings',
    equation: String.raw`I_j = I_{xx} \cos^2\beta_j - 2 I_{xz} \sin\beta_j \cos\beta_j + I_{zz} \sin^2\beta_j, \qquad \left( I_1, \beta_1 \right), \left( I_2, \beta_2 \right), \left( I_3, \beta_3 \right)`,
    inputs: {
      firstInertia: { symbol: 'I_1', unit: 'kg·m²', meaning: 'inertia about the wire in the first hanging' },
      firstAngle: {
        symbol: String.raw`\beta_1`,
        unit: 'rad',
        meaning: 'angle of the first wire from the fore-and-aft axis',
      },
      secondInertia: {
        symbol: 'I_2',
        unit: 'kg·m²',
        meaning: 'inertia about the wire in the second hanging',
      },
      secondAngle: {
        symbol: String.raw`\beta_2`,
        unit: 'rad',
        meaning: 'angle of the second wire from the fore-and-aft axis',
      },
      thirdInertia: { symbol: 'I_3', unit: 'kg·m²', meaning: 'inertia about the wire in the third hanging' },
      thirdAngle: {
        symbol: String.raw`\beta_3`,
        unit: 'rad',
        meaning: 'angle of the third wire from the fore-and-aft axis',
      },
    },
    outputs: {
      rollInertia: {
        symbol: 'I_{xx}',
        unit: 'kg·m²',
        meaning: 'roll inertia about the centre of gravity',
      },
      rollYawProduct: {
        symbol: 'I_{xz}',
        unit: 'kg·m²',
        meaning: 'product of inertia of roll and yaw about the centre of gravity, a tensor entry',
      },
      yawInertia: { symbol: 'I_{zz}', unit: 'kg·m²', meaning: 'yaw inertia about the centre of gravity' },
    },
    validity:
      'All three wires in the vehicle’s upright plane through its centre of gravity; angles of about 60° between them are best.',
    source: MOORE,
    compute: planarTensor,
    example: {
      firstInertia: 6.1e-3,
      firstAngle: 0,
      secondInertia: 5.2e-3,
      secondAngle: 1.05,
      thirdInertia: 4.7e-3,
      thirdAngle: 2.09,
    },
    related: ['swing.torsion', 'inertia.principal'],
  }),
];
