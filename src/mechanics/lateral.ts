/** What the lean that the ballast holds is worth on the road: sideways acceleration, turns, cross slopes. */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireNotNegative, requirePositive } from './domain.ts';
import { standardGravity } from './gravity.ts';

function requireLean(lean: number): void {
  requireNotNegative('largest lean', lean, 'rad');
  if (lean >= Math.PI / 2) throw new DomainError('largest lean', lean, 'it has to be less than 90°', 'rad');
}

/**
 * Sideways acceleration that the ballast holds with the vehicle upright.
 *
 *   a = g tan φ_max,   from  (M₀ + m_b z_b) a = m_b g e
 *
 * @param largestLean  φ_max, rad, the exact one, in [0, π/2)
 * @returns a, m/s²
 * @throws DomainError  outside that range
 * Source: equilibrium of moments about the ground line in the accelerated frame; tan φ = v²/(g r) is the same line in
 * OpenStax, University Physics 1, section 6.3.
 */
export function lateralLimit({ largestLean }: { readonly largestLean: number }): number {
  requireLean(largestLean);
  return standardGravity * Math.tan(largestLean);
}

/**
 * Radius of the turn that a sideways acceleration allows at a speed: r = v² / a, m.
 *
 * @param lateralAcceleration  a, m/s², more than 0
 * @param speed                v, m/s, not negative
 * @throws DomainError  where no sideways acceleration is held: the vehicle cannot turn
 * Source: OpenStax, University Physics 1, section 6.3.
 */
export function turnRadius(turn: { readonly lateralAcceleration: number; readonly speed: number }): number {
  requirePositive('lateral acceleration', turn.lateralAcceleration, 'm/s²');
  requireNotNegative('speed', turn.speed, 'm/s');
  return turn.speed ** 2 / turn.lateralAcceleration;
}

/**
 * Sideways acceleration of a steady turn: a = v² / r, m/s².
 *
 * @param speed   v, m/s, not negative
 * @param radius  r, m, more than 0
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 6.3.
 */
export function turnAcceleration(turn: { readonly speed: number; readonly radius: number }): number {
  requireNotNegative('speed', turn.speed, 'm/s');
  requirePositive('radius of the turn', turn.radius, 'm');
  return turn.speed ** 2 / turn.radius;
}

/**
 * Cross slope on which the vehicle still stands square to the ground with something in reserve.
 *
 *   β = φ_max − φ_r
 *
 * Square to a slope β the vehicle leans β from the vertical, and the ballast has to hold that lean for good.
 *
 * @param largestLean  φ_max, rad, in [0, π/2)
 * @param reserve      φ_r, rad, lean kept for disturbances, not negative
 * @returns β, rad; negative where the reserve alone is more than is held
 * @throws DomainError  outside these ranges
 * Source: equilibrium of moments about the ground line.
 */
export function crossSlope({
  largestLean,
  reserve = 0,
}: {
  readonly largestLean: number;
  readonly reserve?: number;
}): number {
  requireLean(largestLean);
  requireNotNegative('reserve for disturbances', reserve, 'rad');
  return largestLean - reserve;
}

const largestLean = {
  symbol: String.raw`\varphi_{\max}`,
  unit: 'rad',
  meaning: 'largest lean that the ballast holds',
} as const;
const speed = { symbol: 'v', unit: 'm/s', meaning: 'speed on the road' } as const;
const acceleration = (meaning: string) => ({ symbol: 'a', unit: 'm/s²', meaning }) as const;

export const lateralCalculations: readonly Calculation[] = [
  calculation({
    id: 'ballast.lateral-limit',
    title: 'Largest lateral acceleration, vehicle upright',
    equation: String.raw`a_{\max} = g \tan\varphi_{\max}`,
    inputs: { largestLean },
    outputs: { acceleration: acceleration('largest lateral acceleration that is held, vehicle upright') },
    validity:
      'Steady, vehicle held upright by the ballast alone; gyroscopic moments of wheels and rotor left out.',
    source:
      'Derived: equilibrium of moments about the ground line; tan φ = v²/(g r) as in OpenStax, University Physics Volume 1, section 6.3',
    compute: (inputs) => ({ acceleration: lateralLimit(inputs) }),
    example: { largestLean: 0.16885 },
    related: ['ballast.largest-lean', 'ballast.turn-radius'],
  }),
  calculation({
    id: 'ballast.turn-radius',
    title: 'Smallest turn radius at a speed',
    equation: String.raw`r_{\min} = \frac{v^2}{a}`,
    inputs: { lateralAcceleration: acceleration('lateral acceleration that is held'), speed },
    outputs: {
      radius: { symbol: String.raw`r_{\min}`, unit: 'm', meaning: 'smallest radius of a steady turn' },
    },
    validity: 'Steady turn on level ground, tyres that do not slip.',
    source: 'OpenStax, University Physics Volume 1, section 6.3',
    compute: (inputs) => ({ radius: turnRadius(inputs) }),
    example: { lateralAcceleration: 1.672, speed: 1.2 },
    related: ['ballast.turn-acceleration', 'ballast.lateral-limit'],
  }),
  calculation({
    id: 'ballast.turn-acceleration',
    title: 'Lateral acceleration of a turn',
    equation: String.raw`a = \frac{v^2}{r}`,
    inputs: { speed, radius: { symbol: 'r', unit: 'm', meaning: 'radius of the turn' } },
    outputs: { acceleration: acceleration('lateral acceleration of the turn') },
    validity: 'Steady turn on level ground; the way into the turn asks for more.',
    source: 'OpenStax, University Physics Volume 1, section 6.3',
    compute: (inputs) => ({ acceleration: turnAcceleration(inputs) }),
    example: { speed: 1.2, radius: 1.5 },
    related: ['ballast.turn-radius', 'ballast.lateral-limit'],
  }),
  calculation({
    id: 'ballast.cross-slope',
    title: 'Steepest cross slope',
    equation: String.raw`\beta = \varphi_{\max} - \varphi_r`,
    inputs: {
      largestLean,
      reserve: {
        symbol: String.raw`\varphi_r`,
        unit: 'rad',
        meaning: 'lean kept in reserve for disturbances',
        default: 0,
      },
    },
    outputs: {
      slope: { symbol: String.raw`\beta`, unit: 'rad', meaning: 'steepest cross slope that is held' },
    },
    validity: 'Vehicle square to the slope at rest; negative where the reserve alone is more than is held.',
    source: 'Derived: equilibrium of moments about the ground line',
    compute: (inputs) => ({ slope: crossSlope(inputs) }),
    example: { largestLean: 0.16885, reserve: 0.0349 },
    related: ['ballast.largest-lean'],
  }),
];
