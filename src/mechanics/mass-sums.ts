/**
 * Sums over the mass table: total, first moment, centre of gravity, roll inertia. Everything about how fast the
 * vehicle falls and what the ballast can hold starts here. The tables may be long, so every sum gives its exact
 * derivatives as well.
 *
 * Frame: ISO 8855; x forward, y to the left, z up, origin on the ground line.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireEach, requireSameLength } from './domain.ts';

/** Masses of the parts, kg, none negative: what is missing from a part is measured with it, not subtracted. */
function requireMasses(masses: readonly number[]): void {
  requireEach('mass of part', masses, 'kg', 0);
}

function requireForEachPart(quantity: string, values: readonly number[], masses: readonly number[]): void {
  requireEach(`${quantity} of part`, values, 'm');
  requireSameLength(quantity, values, 'mass', masses);
}

/**
 * Total mass.
 *
 *   m = Σ mᵢ
 *
 * @param masses  mᵢ, kg, not negative
 * @returns m, kg; 0 for an empty list
 * @throws DomainError  for a negative mass or one that is not a number
 * Source: OpenStax, University Physics 1, section 9.6.
 */
export function totalMass({ masses }: { readonly masses: readonly number[] }): number {
  requireMasses(masses);
  return masses.reduce((sum, mass) => sum + mass, 0);
}

/**
 * First moment of mass about the ground line.
 *
 *   M = Σ mᵢ zᵢ
 *
 * @param masses   mᵢ, kg, not negative
 * @param heights  zᵢ, m above the ground line; negative below it, as under a rail
 * @returns M, kg·m; 0 for empty lists
 * @throws DomainError  for a negative mass, a value that is not a number, or lists of unequal length
 * Source: OpenStax, University Physics 1, section 9.6 (numerator of the centre of mass).
 */
export function firstMoment(parts: {
  readonly masses: readonly number[];
  readonly heights: readonly number[];
}): number {
  const { masses, heights } = parts;
  requireMasses(masses);
  requireForEachPart('height', heights, masses);
  return momentSum(masses, heights);
}

/**
 * Centre of gravity along one axis.
 *
 *   r̄ = Σ mᵢ rᵢ / Σ mᵢ
 *
 * @param masses     mᵢ, kg, not negative, together more than 0
 * @param positions  rᵢ, m, all along the same axis from the same origin
 * @returns r̄, m
 * @throws DomainError  as `firstMoment`, and where there is no mass
 * Source: OpenStax, University Physics 1, section 9.6; SFTE Reference Handbook 2013, section 7.2.
 */
export function centreOfGravity(parts: {
  readonly masses: readonly number[];
  readonly positions: readonly number[];
}): number {
  const { masses, positions } = parts;
  const total = totalMass({ masses });
  requireForEachPart('position', positions, masses);
  if (total <= 0) throw new DomainError('total mass', total, 'a part with a mass is needed', 'kg');
  return momentSum(masses, positions) / total;
}

/**
 * Roll inertia about the roll axis, the line through the contact points.
 *
 *   I = Σ [ Iᵢ + mᵢ (yᵢ² + zᵢ²) ]
 *
 * @param masses       mᵢ, kg, not negative
 * @param lefts        yᵢ, m to the left of the centre line
 * @param heights      zᵢ, m above the ground line
 * @param ownInertias  Iᵢ, kg·m², of each part about the fore-and-aft axis through its own centre of gravity; 0 for a
 *                     part that is small against its distance from the ground line
 * @returns I, kg·m²; 0 for empty lists
 * @throws DomainError  for a negative mass or inertia, a value that is not a number, or lists of unequal length
 * Source: parallel-axis theorem, OpenStax, University Physics 1, section 10.5.
 */
export function rollInertia(parts: {
  readonly masses: readonly number[];
  readonly lefts: readonly number[];
  readonly heights: readonly number[];
  readonly ownInertias: readonly number[];
}): number {
  const { masses, lefts, heights, ownInertias } = parts;
  requireMasses(masses);
  requireForEachPart('position to the left', lefts, masses);
  requireForEachPart('height', heights, masses);
  requireEach('own roll inertia of part', ownInertias, 'kg·m²', 0);
  requireSameLength('own roll inertia', ownInertias, 'mass', masses);
  const transferred = masses.reduce((sum, mass, i) => sum + mass * squaredDistance(lefts[i], heights[i]), 0);
  return ownInertias.reduce((sum, inertia) => sum + inertia, transferred);
}

function momentSum(masses: readonly number[], positions: readonly number[]): number {
  return masses.reduce((sum, mass, i) => sum + mass * (positions[i] ?? 0), 0);
}

function squaredDistance(left = 0, height = 0): number {
  return left * left + height * height;
}

const masses = { symbol: 'm_i', unit: 'kg', meaning: 'masses of the parts', list: true } as const;
const heights = {
  symbol: 'z_i',
  unit: 'm',
  meaning: 'heights of the parts’ centres of gravity above the ground line',
  list: true,
} as const;

export const massSumCalculations: readonly Calculation[] = [
  calculation({
    id: 'mass.total',
    title: 'Total mass',
    equation: String.raw`m = \sum_i m_i`,
    inputs: { masses },
    outputs: { totalMass: { symbol: 'm', unit: 'kg', meaning: 'total mass' } },
    validity:
      'Every part of the vehicle as it runs stands in the table once, the ballast and the pack included.',
    source: 'OpenStax, University Physics Volume 1, section 9.6',
    compute: (inputs) => ({ totalMass: totalMass(inputs) }),
    partials: (inputs) => ({ totalMass: { masses: inputs.masses.map(() => 1) } }),
    example: { masses: [0.365, 0.41, 0.107, 0.073] },
    related: ['mass.first-moment', 'mass.centre-of-gravity'],
  }),
  calculation({
    id: 'mass.first-moment',
    title: 'First moment about the ground line',
    equation: String.raw`M = \sum_i m_i z_i`,
    inputs: { masses, heights },
    outputs: { firstMoment: { symbol: 'M', unit: 'kg·m', meaning: 'first moment about the ground line' } },
    validity:
      'Heights are taken with the vehicle upright, from the line through the contact points of the wheels.',
    source: 'OpenStax, University Physics Volume 1, section 9.6',
    compute: (inputs) => ({ firstMoment: firstMoment(inputs) }),
    partials: (inputs) => ({ firstMoment: { masses: inputs.heights, heights: inputs.masses } }),
    example: { masses: [0.365, 0.41, 0.107, 0.073], heights: [0.12, 0.14, 0.09, 0.315] },
    related: ['mass.centre-of-gravity', 'mass.toppling'],
  }),
  calculation({
    id: 'mass.centre-of-gravity',
    title: 'Centre of gravity along one axis',
    equation: String.raw`\bar r = \frac{\sum_i m_i r_i}{\sum_i m_i}`,
    inputs: {
      masses,
      positions: {
        symbol: 'r_i',
        unit: 'm',
        meaning: 'positions of the parts’ centres of gravity along the axis',
        list: true,
      },
    },
    outputs: {
      position: {
        symbol: String.raw`\bar r`,
        unit: 'm',
        meaning: 'position of the centre of gravity along the axis',
      },
    },
    validity: 'All positions are measured along one axis from one origin.',
    source:
      'OpenStax, University Physics Volume 1, section 9.6; Society of Flight Test Engineers, Reference Handbook 2013, section 7.2',
    compute: (inputs) => ({ position: centreOfGravity(inputs) }),
    partials: (inputs) => {
      const total = totalMass(inputs);
      const position = centreOfGravity(inputs);
      return {
        position: {
          masses: inputs.positions.map((r) => (r - position) / total),
          positions: inputs.masses.map((mass) => mass / total),
        },
      };
    },
    example: { masses: [0.365, 0.41, 0.107, 0.073], positions: [0.12, 0.14, 0.09, 0.315] },
    related: ['mass.total', 'mass.first-moment'],
  }),
  calculation({
    id: 'mass.roll-inertia',
    title: 'Roll inertia about the ground line',
    equation: String.raw`I = \sum_i \left[ I_i + m_i \left( y_i^2 + z_i^2 \right) \right]`,
    inputs: {
      masses,
      lefts: {
        symbol: 'y_i',
        unit: 'm',
        meaning: 'positions of the parts’ centres of gravity to the left of the centre line',
        list: true,
      },
      heights,
      ownInertias: {
        symbol: 'I_i',
        unit: 'kg·m²',
        meaning: 'roll inertias of the parts about their own centres of gravity',
        list: true,
      },
    },
    outputs: { rollInertia: { symbol: 'I', unit: 'kg·m²', meaning: 'roll inertia about the roll axis' } },
    validity:
      'Parts are rigid and rigidly mounted; own inertias are about fore-and-aft axes through the centres of gravity.',
    source: 'Parallel-axis theorem: OpenStax, University Physics Volume 1, section 10.5',
    compute: (inputs) => ({ rollInertia: rollInertia(inputs) }),
    partials: ({ masses, lefts, heights, ownInertias }) => ({
      rollInertia: {
        masses: masses.map((_, i) => squaredDistance(lefts[i], heights[i])),
        lefts: masses.map((mass, i) => 2 * mass * (lefts[i] ?? 0)),
        heights: masses.map((mass, i) => 2 * mass * (heights[i] ?? 0)),
        ownInertias: ownInertias.map(() => 1),
      },
    }),
    example: {
      masses: [0.365, 0.41, 0.107, 0.073],
      lefts: [0, 0, 0.012, 0],
      heights: [0.12, 0.14, 0.09, 0.315],
      ownInertias: [4.1e-4, 7.8e-4, 6e-5, 0],
    },
    related: ['body.box-roll-inertia', 'mass.toppling'],
  }),
];
