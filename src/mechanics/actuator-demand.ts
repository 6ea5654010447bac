/** What moving the ballast asks of its drive beyond holding it: acceleration, and the speed that a stroke needs. */
import { armHoldingMoment, slideHoldingForce } from './actuator.ts';
import { type Calculation, calculation } from './calculation.ts';
import { requireNotNegative, requirePositive } from './domain.ts';

/**
 * Largest moment about the arm's pivot while it holds and speeds up.
 *
 *   T = m_b g L sin( min(θ_m + φ, π/2) ) + (m_b L² + I_b) θ̈ + T_f
 *
 * @param ballastMass      m_b, kg; armLength L, m; direction d; travel θ_m, rad; lean φ, rad: as `armHoldingMoment`
 * @param acceleration     θ̈, rad/s², not negative
 * @param ownInertia       I_b, kg·m², of arm and ballast beyond the point mass, about the pivot, not negative; 0 if left out
 * @param frictionMoment   T_f, N·m, not negative; 0 if left out
 * @returns T, N·m
 * @throws DomainError  outside these ranges
 * Source: equation of moments about the pivot, each term at its worst.
 */
export function armMovingMoment({
  acceleration,
  ownInertia = 0,
  frictionMoment = 0,
  ...arm
}: {
  readonly ballastMass: number;
  readonly armLength: number;
  readonly direction: number;
  readonly travel: number;
  readonly lean: number;
  readonly acceleration: number;
  readonly ownInertia?: number;
  readonly frictionMoment?: number;
}): number {
  const holding = armHoldingMoment(arm);
  requireNotNegative('acceleration of the arm', acceleration, 'rad/s²');
  requireNotNegative('own inertia of arm and ballast', ownInertia, 'kg·m²');
  requireNotNegative('friction of the arm', frictionMoment, 'N·m');
  return holding + (arm.ballastMass * arm.armLength ** 2 + ownInertia) * acceleration + frictionMoment;
}

/**
 * Largest force along the slide while it holds and speeds up: F = m_b (g sin φ + s̈) + F_f, N.
 *
 * @param ballastMass    m_b, kg; lean φ, rad: as `slideHoldingForce`
 * @param acceleration   s̈, m/s², not negative
 * @param frictionForce  F_f, N, not negative; 0 if left out
 * @throws DomainError  outside these ranges
 * Source: equation of motion along the slide, each term at its worst.
 */
export function slideMovingForce({
  ballastMass,
  lean,
  acceleration,
  frictionForce = 0,
}: {
  readonly ballastMass: number;
  readonly lean: number;
  readonly acceleration: number;
  readonly frictionForce?: number;
}): number {
  const holding = slideHoldingForce({ ballastMass, lean });
  requireNotNegative('acceleration of the slide', acceleration, 'm/s²');
  requireNotNegative('friction of the slide', frictionForce, 'N');
  return holding + ballastMass * acceleration + frictionForce;
}

/**
 * Speed and acceleration of a stroke from stop to stop that speeds up for half the way and slows down for the rest.
 *
 *   ω = 4 θ_m / t,   α = 8 θ_m / t²
 *
 * @param travel  θ_m, rad (or s_m, m) to one side, more than 0
 * @param time    t, s for the whole stroke 2 θ_m, more than 0
 * @returns speed ω, the largest, and acceleration α
 * @throws DomainError  outside these ranges
 * Source: uniform acceleration over half the stroke, OpenStax, University Physics 1, section 10.2.
 */
export function strokeDemand(stroke: { readonly travel: number; readonly time: number }): {
  speed: number;
  acceleration: number;
} {
  requirePositive('travel', stroke.travel, '');
  requirePositive('time of the stroke', stroke.time, 's');
  return {
    speed: (4 * stroke.travel) / stroke.time,
    acceleration: (8 * stroke.travel) / stroke.time ** 2,
  };
}

/**
 * Speed and acceleration of a swing to and fro, as a loop near its limit makes it: ω_p = A Ω, α_p = A Ω².
 *
 * @param amplitude  A, rad (or m) to each side, not negative
 * @param frequency  Ω, rad/s, more than 0
 * @returns speed and acceleration, the largest of each
 * @throws DomainError  outside these ranges
 * Source: harmonic motion; Khurmi & Gupta, Theory of Machines, 14th ed., ch. 4.
 */
export function sineDemand(swing: { readonly amplitude: number; readonly frequency: number }): {
  speed: number;
  acceleration: number;
} {
  requireNotNegative('swing to each side', swing.amplitude, '');
  requirePositive('frequency of the swing', swing.frequency, 'rad/s');
  return {
    speed: swing.amplitude * swing.frequency,
    acceleration: swing.amplitude * swing.frequency ** 2,
  };
}

const ballastMass = { symbol: 'm_b', unit: 'kg', meaning: 'mass of the ballast' } as const;
const speed = (symbol: string) =>
  ({ symbol, unit: 'rad/s', slideUnit: 'm/s', meaning: 'largest speed' }) as const;
const acceleration = (symbol: string) =>
  ({ symbol, unit: 'rad/s²', slideUnit: 'm/s²', meaning: 'largest acceleration' }) as const;

export const actuatorDemandCalculations: readonly Calculation[] = [
  calculation({
    id: 'actuator.arm-moving-moment',
    title: 'Moment to hold and speed up the arm',
    equation: String.raw`T = m_b\, g\, L \sin\left( \min\left( \theta_m + \varphi,\; 90^\circ \right) \right) + \left( m_b L^2 + I_b \right) \ddot\theta + T_f`,
    inputs: {
      ballastMass,
      armLength: { symbol: 'L', unit: 'm', meaning: 'arm length, pivot to centre of gravity of the ballast' },
      direction: { symbol: 'd', unit: '1', meaning: 'direction of the arm, 1 upright, −1 hanging' },
      travel: { symbol: String.raw`\theta_m`, unit: 'rad', meaning: 'travel of the arm to one side' },
      lean: { symbol: String.raw`\varphi`, unit: 'rad', meaning: 'lean of the vehicle to either side' },
      acceleration: { symbol: String.raw`\ddot\theta`, unit: 'rad/s²', meaning: 'acceleration of the arm' },
      ownInertia: {
        symbol: 'I_b',
        unit: 'kg·m²',
        meaning: 'inertia of arm and ballast about the pivot beyond the point mass',
        default: 0,
      },
      frictionMoment: { symbol: 'T_f', unit: 'N·m', meaning: 'friction of the arm', default: 0 },
    },
    outputs: { moment: { symbol: 'T', unit: 'N·m', meaning: 'largest moment about the pivot' } },
    validity: 'Every term at its worst at once; the vehicle’s own roll acceleration is left out.',
    source: 'Derived: equation of moments about the pivot',
    compute: (inputs) => ({ moment: armMovingMoment(inputs) }),
    example: {
      ballastMass: 0.59,
      armLength: 0.115,
      direction: 1,
      travel: Math.PI / 4,
      lean: 0.16885,
      acceleration: 40,
      ownInertia: 4e-4,
      frictionMoment: 0.02,
    },
    related: ['actuator.arm-holding-moment', 'actuator.moment-at-speed', 'actuator.stroke-demand'],
  }),
  calculation({
    id: 'actuator.slide-moving-force',
    title: 'Force to hold and speed up the slide',
    equation: String.raw`F = m_b \left( g \sin\varphi + \ddot s \right) + F_f`,
    inputs: {
      ballastMass,
      lean: { symbol: String.raw`\varphi`, unit: 'rad', meaning: 'lean of the vehicle' },
      acceleration: { symbol: String.raw`\ddot s`, unit: 'm/s²', meaning: 'acceleration of the slide' },
      frictionForce: { symbol: 'F_f', unit: 'N', meaning: 'friction of the slide', default: 0 },
    },
    outputs: { force: { symbol: 'F', unit: 'N', meaning: 'largest force along the slide' } },
    validity: 'Every term at its worst at once; the vehicle’s own roll acceleration is left out.',
    source: 'Derived: equation of motion along the slide',
    compute: (inputs) => ({ force: slideMovingForce(inputs) }),
    example: { ballastMass: 0.9, lean: 0.1, acceleration: 4, frictionForce: 0.6 },
    related: ['actuator.slide-holding-force', 'drive.lead-screw', 'drive.belt'],
  }),
  calculation({
    id: 'actuator.stroke-demand',
    title: 'Speed and acceleration of a stroke',
    equation: String.raw`\omega = \frac{4\, \theta_m}{t}, \qquad \alpha = \frac{8\, \theta_m}{t^2}`,
    inputs: {
      travel: {
        symbol: String.raw`\theta_m`,
        unit: 'rad',
        slideUnit: 'm',
        meaning: 'travel of the ballast to one side',
      },
      time: { symbol: 't', unit: 's', meaning: 'time of the stroke from stop to stop' },
    },
    outputs: { speed: speed(String.raw`\omega`), acceleration: acceleration(String.raw`\alpha`) },
    validity: 'Speeds up for half the way and slows down for the rest; the least acceleration for that time.',
    source:
      'Derived: uniform acceleration over half the stroke, OpenStax, University Physics Volume 1, section 10.2',
    compute: strokeDemand,
    example: { travel: Math.PI / 4, time: 0.5 },
    related: ['actuator.stop-to-stop', 'actuator.speed-at-load', 'actuator.sine-demand'],
  }),
  calculation({
    id: 'actuator.sine-demand',
    title: 'Speed and acceleration of a swing to and fro',
    equation: String.raw`\omega_p = A\, \Omega, \qquad \alpha_p = A\, \Omega^2`,
    inputs: {
      amplitude: { symbol: 'A', unit: 'rad', slideUnit: 'm', meaning: 'swing to each side' },
      frequency: { symbol: String.raw`\Omega`, unit: 'rad/s', meaning: 'frequency of the swing' },
    },
    outputs: { speed: speed(String.raw`\omega_p`), acceleration: acceleration(String.raw`\alpha_p`) },
    validity: 'Harmonic swing; a drive that cannot reach the speed flattens it and adds delay.',
    source: 'Khurmi & Gupta, Theory of Machines, 14th ed., ch. 4 (harmonic motion)',
    compute: sineDemand,
    example: { amplitude: 0.2, frequency: 18 },
    related: ['actuator.stroke-demand', 'gyro.peak-couple'],
  }),
];
