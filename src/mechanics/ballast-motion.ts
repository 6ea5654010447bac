/**
 * What moving the ballast does besides righting: it first pushes the vehicle the wrong way, and it builds its moment up
 * no faster than its drive moves it.
 */
import { type Calculation, calculation } from './calculation.ts';
import { requireBetween, requireFinite, requireNotNegative, requirePositive } from './domain.ts';
import { standardGravity } from './gravity.ts';

/**
 * Wrong-way zero of the ballast: z = √(g/z_b), 1/s.
 *
 * From ballast offset to roll moment the transfer is −m_b (g − z_b s²): its zeros are ±√(g/z_b), and the one in the right
 * half plane no controller removes. A loop has to be slower than it: the higher the ballast, the slower.
 *
 * @param ballastHeight  z_b, m above the ground line, more than 0; at or below the line there is no wrong way
 * @throws DomainError  outside that range
 * Source: numerator of the linear equation of lean, I φ̈ = g M φ − g m_b e + m_b z_b ë.
 */
export function wrongWayZero({ ballastHeight }: { readonly ballastHeight: number }): number {
  requirePositive('ballast height', ballastHeight, 'm');
  return Math.sqrt(standardGravity / ballastHeight);
}

/**
 * Moment by which an accelerating ballast first tips the vehicle the wrong way: T = m_b z_b ë, N·m.
 *
 * @param ballastMass    m_b, kg, not negative
 * @param ballastHeight  z_b, m above the ground line
 * @param acceleration   ë, m/s² across the vehicle
 * @throws DomainError  outside these ranges
 * Source: inertia force of the ballast about the ground line, vehicle upright.
 */
export function reactionMoment(ballast: {
  readonly ballastMass: number;
  readonly ballastHeight: number;
  readonly acceleration: number;
}): number {
  requireNotNegative('ballast mass', ballast.ballastMass, 'kg');
  requireFinite('ballast height', ballast.ballastHeight, 'm');
  requireFinite('acceleration of the ballast', ballast.acceleration, 'm/s²');
  return ballast.ballastMass * ballast.ballastHeight * ballast.acceleration;
}

/**
 * Rate at which an arm builds up its righting moment: dT_b/dt = m_b g L θ̇ cos θ, N·m/s.
 *
 * @param ballastMass  m_b, kg, not negative
 * @param armLength    L, m, more than 0
 * @param speed        θ̇, rad/s, not negative
 * @param angle        θ, rad from the centre line, within ±π/2; 0, where the rate is greatest, if left out
 * @throws DomainError  outside these ranges
 * Source: time derivative of m_b g L sin θ.
 */
export function armMomentRate({
  ballastMass,
  armLength,
  speed,
  angle = 0,
}: {
  readonly ballastMass: number;
  readonly armLength: number;
  readonly speed: number;
  readonly angle?: number;
}): number {
  requireNotNegative('ballast mass', ballastMass, 'kg');
  requirePositive('arm length', armLength, 'm');
  requireNotNegative('speed of the arm', speed, 'rad/s');
  requireBetween('arm angle', angle, -Math.PI / 2, Math.PI / 2, 'rad');
  return ballastMass * standardGravity * armLength * speed * Math.cos(angle);
}

/**
 * Rate at which a slide builds up its righting moment: dT_b/dt = m_b g ṡ, N·m/s.
 *
 * @param ballastMass  m_b, kg, not negative
 * @param speed        ṡ, m/s, not negative
 * @throws DomainError  outside these ranges
 * Source: time derivative of m_b g s.
 */
export function slideMomentRate(ballast: { readonly ballastMass: number; readonly speed: number }): number {
  requireNotNegative('ballast mass', ballast.ballastMass, 'kg');
  requireNotNegative('speed of the slide', ballast.speed, 'm/s');
  return ballast.ballastMass * standardGravity * ballast.speed;
}

const ballastMass = { symbol: 'm_b', unit: 'kg', meaning: 'mass of the ballast' } as const;
const ballastHeight = {
  symbol: 'z_b',
  unit: 'm',
  meaning: 'height of the ballast above the ground line',
} as const;
const rate = {
  symbol: String.raw`\dot T_b`,
  unit: 'N·m/s',
  meaning: 'rate of the righting moment, vehicle upright',
} as const;

export const ballastMotionCalculations: readonly Calculation[] = [
  calculation({
    id: 'ballast.wrong-way-zero',
    title: 'Wrong-way zero of the ballast',
    equation: String.raw`z = \sqrt{\frac{g}{z_b}}`,
    inputs: { ballastHeight },
    outputs: {
      rate: { symbol: 'z', unit: '1/s', meaning: 'zero in the right half plane, ballast offset to lean' },
    },
    validity:
      'Ballast above the ground line and moved level across the vehicle; below the line there is no wrong way.',
    source: 'Derived: numerator of the linear equation of lean, g − z_b s²',
    compute: (inputs) => ({ rate: wrongWayZero(inputs) }),
    example: { ballastHeight: 0.315 },
    related: ['ballast.reaction-moment', 'mass.toppling'],
  }),
  calculation({
    id: 'ballast.reaction-moment',
    title: 'Wrong-way moment of an accelerating ballast',
    equation: String.raw`T = m_b\, z_b\, \ddot e`,
    inputs: {
      ballastMass,
      ballastHeight,
      acceleration: {
        symbol: String.raw`\ddot e`,
        unit: 'm/s²',
        meaning: 'acceleration of the ballast across the vehicle',
      },
    },
    outputs: {
      moment: { symbol: 'T', unit: 'N·m', meaning: 'moment that tips the vehicle the wrong way' },
    },
    validity:
      'Vehicle upright; the moment lasts while the ballast speeds up and turns round as it slows down.',
    source: 'Derived: inertia force of the ballast about the ground line',
    compute: (inputs) => ({ moment: reactionMoment(inputs) }),
    example: { ballastMass: 0.59, ballastHeight: 0.315, acceleration: 6 },
    related: ['ballast.wrong-way-zero', 'ballast.righting-moment'],
  }),
  calculation({
    id: 'ballast.arm-moment-rate',
    title: 'Rate of the righting moment of an arm',
    equation: String.raw`\dot T_b = m_b\, g\, L\, \dot\theta \cos\theta`,
    inputs: {
      ballastMass,
      armLength: { symbol: 'L', unit: 'm', meaning: 'arm length, pivot to centre of gravity of the ballast' },
      speed: { symbol: String.raw`\dot\theta`, unit: 'rad/s', meaning: 'speed of the arm' },
      angle: {
        symbol: String.raw`\theta`,
        unit: 'rad',
        meaning: 'angle of the arm from the centre line',
        default: 0,
      },
    },
    outputs: { rate },
    validity: 'Arm already moving; its acceleration works the wrong way first.',
    source: 'Derived: time derivative of the righting moment',
    compute: (inputs) => ({ rate: armMomentRate(inputs) }),
    example: { ballastMass: 0.59, armLength: 0.115, speed: 6, angle: 0 },
    related: ['ballast.righting-moment', 'actuator.speed-at-load', 'gyro.driven-moment'],
  }),
  calculation({
    id: 'ballast.slide-moment-rate',
    title: 'Rate of the righting moment of a slide',
    equation: String.raw`\dot T_b = m_b\, g\, \dot s`,
    inputs: {
      ballastMass,
      speed: { symbol: String.raw`\dot s`, unit: 'm/s', meaning: 'speed of the slide' },
    },
    outputs: { rate },
    validity: 'Slide already moving; its acceleration works the wrong way first.',
    source: 'Derived: time derivative of the righting moment',
    compute: (inputs) => ({ rate: slideMomentRate(inputs) }),
    example: { ballastMass: 0.9, speed: 0.3 },
    related: ['ballast.righting-moment', 'actuator.speed-at-load'],
  }),
];
