/**
 * Inertia by letting the vehicle swing about an axis under its own weight (compound pendulum), and the other way
 * round: the period that a known inertia gives. Small swings; what a wide swing and damping do to the period stands in
 * `swing-corrections.ts`, pendulums on wires in `wire-pendulum.ts`.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireNotNegative, requirePositive } from './domain.ts';
import { standardGravity } from './gravity.ts';

/** g (T/2π)², m: length of the simple pendulum of the same period. */
function equivalentLength(period: number): number {
  return standardGravity * (period / (2 * Math.PI)) ** 2;
}

/**
 * Period of a compound pendulum.
 *
 *   T = 2π √( (I + m l²) / (m g l) )
 *
 * @param inertia   I, kg·m², about the centre of gravity, not negative
 * @param mass      m, kg, more than 0
 * @param distance  l, m from axis to centre of gravity, more than 0
 * @returns T, s
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 15.4.
 */
export function swingPeriod(body: {
  readonly inertia: number;
  readonly mass: number;
  readonly distance: number;
}): number {
  requireNotNegative('inertia about the centre of gravity', body.inertia, 'kg·m²');
  requirePositive('mass', body.mass, 'kg');
  requirePositive('distance of the centre of gravity from the axis', body.distance, 'm');
  const about = body.inertia + body.mass * body.distance ** 2;
  return 2 * Math.PI * Math.sqrt(about / (body.mass * standardGravity * body.distance));
}

/**
 * Inertia from the period of a compound pendulum.
 *
 *   I_P = m g l (T/2π)²,   I = I_P − m l²
 *
 * @param mass      m, kg, more than 0
 * @param distance  l, m from axis to centre of gravity, more than 0
 * @param period    T, s for there and back, more than 0
 * @returns aboutAxis I_P and aboutCentre I, kg·m²
 * @throws DomainError  outside these ranges, or where the period is shorter than that of a point at that distance
 * Source: J. K. Moore, Human Control of a Bicycle (2012), physical parameters.
 */
export function swingInertia(pendulum: {
  readonly mass: number;
  readonly distance: number;
  readonly period: number;
}): { aboutAxis: number; aboutCentre: number } {
  const { mass, distance, period } = pendulum;
  requirePositive('mass', mass, 'kg');
  requirePositive('distance of the centre of gravity from the axis', distance, 'm');
  requirePositive('period of swing', period, 's');
  const length = equivalentLength(period);
  if (length < distance) {
    const least = Number((2 * Math.PI * Math.sqrt(distance / standardGravity)).toPrecision(4));
    const requirement = `a body whose centre hangs that far below takes ${least} s or more`;
    throw new DomainError('period of swing', period, requirement, 's');
  }
  return { aboutAxis: mass * distance * length, aboutCentre: mass * distance * (length - distance) };
}

/**
 * Centre of gravity and inertia from the periods about two axes on a line through the centre of gravity, one to each
 * side of it: no distance to the centre of gravity need be known.
 *
 *   a₁ (ℓ₁ − a₁) = a₂ (ℓ₂ − a₂) = k²,   a₁ + a₂ = D,   ℓ = g (T/2π)²
 *   a₁ = D (ℓ₂ − D) / (ℓ₁ + ℓ₂ − 2 D),   I = m k²
 *
 * @param mass          m, kg, more than 0
 * @param separation    D, m between the axes, more than 0
 * @param firstPeriod   T₁, s; secondPeriod T₂, s; both more than 0
 * @returns distance a₁, m of the centre of gravity from the first axis; inertia I, kg·m² about the centre of gravity
 * @throws DomainError  where the periods give no centre of gravity between the axes
 * Source: Khurmi & Gupta, Theory of Machines, 14th ed., example 4.6; Bevan, The Theory of Machines, ch. 2.
 */
export function twoPivots(pendulum: {
  readonly mass: number;
  readonly separation: number;
  readonly firstPeriod: number;
  readonly secondPeriod: number;
}): { distance: number; inertia: number } {
  const { mass, separation, firstPeriod, secondPeriod } = pendulum;
  requirePositive('mass', mass, 'kg');
  requirePositive('distance between the axes', separation, 'm');
  requirePositive('period about the first axis', firstPeriod, 's');
  requirePositive('period about the second axis', secondPeriod, 's');
  const [first, second] = [equivalentLength(firstPeriod), equivalentLength(secondPeriod)];
  const distance = (separation * (second - separation)) / (first + second - 2 * separation);
  if (!(distance > 0 && distance < separation)) {
    const requirement = 'the periods have to place it between the axes';
    throw new DomainError(
      'distance of the centre of gravity from the first axis',
      distance,
      requirement,
      'm',
    );
  }
  const inertia = mass * distance * (first - distance);
  requireNotNegative('inertia about the centre of gravity', inertia, 'kg·m²');
  return { distance, inertia };
}

/**
 * Distance of the centre of gravity from the axis, from the period of swing and the radius of gyration.
 *
 *   l² − ℓ l + k² = 0,   ℓ = g (T/2π)²
 *
 * Two distances swing with the same period; the axis of a vehicle hung by its wheels is nearly always the farther one.
 *
 * @param period            T, s, more than 0
 * @param radiusOfGyration  k, m, about the centre of gravity, not negative
 * @returns farther l₁ and nearer l₂, m
 * @throws DomainError  where no distance swings that fast: T is at least 2π √(2k/g)
 * Source: the compound pendulum's period solved for the distance.
 */
export function swingDistance(pendulum: { readonly period: number; readonly radiusOfGyration: number }): {
  farther: number;
  nearer: number;
} {
  requirePositive('period of swing', pendulum.period, 's');
  requireNotNegative('radius of gyration', pendulum.radiusOfGyration, 'm');
  const length = equivalentLength(pendulum.period);
  const underRoot = length ** 2 - 4 * pendulum.radiusOfGyration ** 2;
  if (underRoot < 0) {
    const least = 2 * Math.PI * Math.sqrt((2 * pendulum.radiusOfGyration) / standardGravity);
    const requirement = `about no axis does it swing faster than ${Number(least.toPrecision(4))} s`;
    throw new DomainError('period of swing', pendulum.period, requirement, 's');
  }
  const farther = (length + Math.sqrt(underRoot)) / 2;
  // The product of the roots is k²: no difference of nearly equal numbers.
  return { farther, nearer: pendulum.radiusOfGyration ** 2 / farther };
}

const mass = { symbol: 'm', unit: 'kg', meaning: 'mass of the body' } as const;
const distance = {
  symbol: 'l',
  unit: 'm',
  meaning: 'distance of the centre of gravity from the axis',
} as const;
const period = { symbol: 'T', unit: 's', meaning: 'period of swing, there and back' } as const;
const own = { symbol: 'I', unit: 'kg·m²', meaning: 'inertia about the centre of gravity' } as const;

export const swingCalculations: readonly Calculation[] = [
  calculation({
    id: 'swing.period',
    title: 'Period of a compound pendulum',
    equation: String.raw`T = 2\pi \sqrt{\frac{I + m l^2}{m g l}}`,
    inputs: { inertia: own, mass, distance },
    outputs: { period },
    validity: 'Small swings (0.2 % long at 10° to each side), little damping.',
    source: 'OpenStax, University Physics Volume 1, section 15.4',
    compute: (inputs) => ({ period: swingPeriod(inputs) }),
    example: { inertia: 6.1e-3, mass: 0.955, distance: 0.145 },
    related: ['swing.inertia', 'swing.small-swing-period'],
  }),
  calculation({
    id: 'swing.inertia',
    title: 'Inertia from the period of swing',
    equation: String.raw`I_P = m g l \left( \frac{T}{2\pi} \right)^2, \qquad I = I_P - m l^2`,
    inputs: { mass, distance, period },
    outputs: {
      aboutAxis: { symbol: 'I_P', unit: 'kg·m²', meaning: 'inertia about the axis of swing' },
      aboutCentre: own,
    },
    validity:
      'Small swings about a knife edge; the inertia about the centre is a small difference when the axis is far: hang near it.',
    source: 'J. K. Moore, Human Control of a Bicycle, PhD thesis, UC Davis 2012, physical parameters',
    compute: swingInertia,
    example: { mass: 0.955, distance: 0.145, period: 0.8724 },
    related: ['swing.two-pivots', 'swing.torsion', 'inertia.parallel-axis'],
  }),
  calculation({
    id: 'swing.two-pivots',
    title: 'Centre of gravity and inertia from two axes of swing',
    equation: String.raw`a_1 = \frac{D \left( \ell_2 - D \right)}{\ell_1 + \ell_2 - 2 D}, \qquad I = m\, a_1 \left( \ell_1 - a_1 \right), \qquad \ell_1 = g \left( \frac{T_1}{2\pi} \right)^2, \quad \ell_2 = g \left( \frac{T_2}{2\pi} \right)^2`,
    inputs: {
      mass,
      separation: { symbol: 'D', unit: 'm', meaning: 'distance between the axes' },
      firstPeriod: { symbol: 'T_1', unit: 's', meaning: 'period about the first axis' },
      secondPeriod: { symbol: 'T_2', unit: 's', meaning: 'period about the second axis' },
    },
    outputs: {
      distance: {
        symbol: 'a_1',
        unit: 'm',
        meaning: 'distance of the centre of gravity from the first axis',
      },
      inertia: own,
    },
    validity:
      'Both axes and the centre of gravity in one line, the centre between them; poor where both periods come near 2π √(D/g).',
    source:
      'Khurmi & Gupta, Theory of Machines, 14th ed., example 4.6; T. Bevan, The Theory of Machines, ch. 2',
    compute: twoPivots,
    example: { mass: 0.955, separation: 0.25, firstPeriod: 0.8724, secondPeriod: 0.835 },
    related: ['swing.inertia', 'swing.distance'],
  }),
  calculation({
    id: 'swing.distance',
    title: 'Distance of the centre of gravity from the period of swing',
    equation: String.raw`l_1 = \frac{1}{2} \left( \ell + \sqrt{\ell^2 - 4 k^2} \right), \qquad l_2 = \frac{k^2}{l_1}, \qquad \ell = g \left( \frac{T}{2\pi} \right)^2`,
    inputs: {
      period,
      radiusOfGyration: {
        symbol: 'k',
        unit: 'm',
        meaning: 'radius of gyration about the centre of gravity',
      },
    },
    outputs: {
      farther: {
        symbol: 'l_1',
        unit: 'm',
        meaning: 'farther of the two distances of the centre of gravity from the axis',
      },
      nearer: {
        symbol: 'l_2',
        unit: 'm',
        meaning: 'nearer of the two distances of the centre of gravity from the axis',
      },
    },
    validity:
      'Small swings; blunt where the axis stands about a radius of gyration away, since the period then hardly depends on it.',
    source: 'Derived: the compound pendulum’s period solved for the distance',
    compute: swingDistance,
    example: { period: 0.8724, radiusOfGyration: 0.0799 },
    related: ['weighing.inclining', 'swing.two-pivots', 'inertia.radius-of-gyration'],
  }),
];
