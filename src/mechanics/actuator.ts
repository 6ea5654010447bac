/** What holding and moving the ballast asks of its drive. */

import { requireDirection } from './ballast-position.ts';
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireBetween, requireNotNegative, requirePositive } from './domain.ts';
import { standardGravity } from './gravity.ts';

function requireBallastMass(mass: number): void {
  requireNotNegative('ballast mass', mass, 'kg');
}

function requireLean(lean: number): void {
  requireNotNegative('lean', lean, 'rad');
  if (lean >= Math.PI / 2) throw new DomainError('lean', lean, 'it has to be less than 90°', 'rad');
}

/**
 * Largest static moment about the arm's pivot, over every arm angle in the travel and every lean up to the given one.
 *
 *   T_p = m_b g L sin( min(θ_m + φ, π/2) )
 *
 * Seen from the ground an upright arm stands at θ − φ from the vertical (φ the lean, θ counted against it) and a
 * hanging arm at θ + φ; the weight's lever is L times the sine of that. θ runs over ±θ_m and the lean over ±φ, so in
 * both cases the angle runs over ±(θ_m + φ). The sine's size is greatest at the ends, or at 90° where they lie
 * beyond. The direction of the arm therefore decides where the worst case lies, not how large it is: an upright arm
 * meets it when the vehicle leans to the side that the arm is on, a hanging one when it leans away from it.
 *
 * @param ballastMass  m_b, kg, not negative
 * @param armLength    L, m, more than 0
 * @param direction    d, +1 upright, −1 hanging
 * @param travel       θ_m, rad to one side, from 0 to π/2
 * @param lean         φ, rad to either side, in [0, π/2)
 * @returns T_p, N·m
 * @throws DomainError  outside these ranges
 * Source: moment of the ballast's weight about the pivot.
 */
export function armHoldingMoment(drive: {
  readonly ballastMass: number;
  readonly armLength: number;
  readonly direction: number;
  readonly travel: number;
  readonly lean: number;
}): number {
  requireBallastMass(drive.ballastMass);
  requirePositive('arm length', drive.armLength, 'm');
  requireDirection(drive.direction);
  requireBetween('arm travel', drive.travel, 0, Math.PI / 2, 'rad');
  requireLean(drive.lean);
  const worstAngle = Math.min(drive.travel + drive.lean, Math.PI / 2);
  return drive.ballastMass * standardGravity * drive.armLength * Math.sin(worstAngle);
}

/**
 * Force along the slide that holds the ballast at a lean: F = m_b g sin φ, N.
 *
 * @param ballastMass  m_b, kg, not negative
 * @param lean         φ, rad, in [0, π/2)
 * @throws DomainError  outside these ranges
 * Source: component of the ballast's weight along the slide, which leans with the vehicle.
 */
export function slideHoldingForce(drive: { readonly ballastMass: number; readonly lean: number }): number {
  requireBallastMass(drive.ballastMass);
  requireLean(drive.lean);
  return drive.ballastMass * standardGravity * Math.sin(drive.lean);
}

/**
 * Shortest time from one end of the travel to the other: t = 2 θ_m / θ̇₀, s; for a slide t = 2 s_m / ṡ₀.
 *
 * @param travel       θ_m, rad, or s_m, m, to one side, more than 0
 * @param noLoadSpeed  θ̇₀, rad/s, or ṡ₀, m/s, more than 0
 * @throws DomainError  outside these ranges
 * Source: constant no-load speed; starting, stopping and the load only add to it.
 */
export function stopToStopTime(drive: { readonly travel: number; readonly noLoadSpeed: number }): number {
  requirePositive('travel', drive.travel, '');
  requirePositive('no-load speed of the actuator', drive.noLoadSpeed, '');
  return (2 * drive.travel) / drive.noLoadSpeed;
}

const ballastMass = { symbol: 'm_b', unit: 'kg', meaning: 'mass of the ballast' } as const;

export const actuatorCalculations: readonly Calculation[] = [
  calculation({
    id: 'actuator.arm-holding-moment',
    title: 'Moment to hold the arm',
    equation: String.raw`T_p = m_b\, g\, L \sin\left( \min\left( \theta_m + \varphi,\; 90^\circ \right) \right)`,
    inputs: {
      ballastMass,
      armLength: { symbol: 'L', unit: 'm', meaning: 'arm length, pivot to centre of gravity of the ballast' },
      direction: { symbol: 'd', unit: '1', meaning: 'direction of the arm, 1 upright, −1 hanging' },
      travel: { symbol: String.raw`\theta_m`, unit: 'rad', meaning: 'travel of the arm to one side' },
      lean: { symbol: String.raw`\varphi`, unit: 'rad', meaning: 'lean of the vehicle to either side' },
    },
    outputs: {
      moment: { symbol: 'T_p', unit: 'N·m', meaning: 'largest moment about the pivot to hold the arm' },
    },
    validity:
      'Static; the same for an upright and a hanging arm; friction, the arm’s own weight and m_b L² θ̈ for moving it come on top.',
    source: 'Derived: moment of the ballast’s weight about the pivot, greatest over the travel and the lean',
    compute: (inputs) => ({ moment: armHoldingMoment(inputs) }),
    example: { ballastMass: 0.59, armLength: 0.115, direction: 1, travel: Math.PI / 4, lean: 0.16885 },
    related: ['actuator.slide-holding-force', 'actuator.stop-to-stop'],
  }),
  calculation({
    id: 'actuator.slide-holding-force',
    title: 'Force to hold the slide',
    equation: String.raw`F_s = m_b\, g \sin\varphi`,
    inputs: {
      ballastMass,
      lean: { symbol: String.raw`\varphi`, unit: 'rad', meaning: 'lean of the vehicle' },
    },
    outputs: { force: { symbol: 'F_s', unit: 'N', meaning: 'force along the slide to hold the ballast' } },
    validity: 'Static; friction of the slide and m_b s̈ for moving the ballast come on top.',
    source: 'Derived: component of the ballast’s weight along the slide',
    compute: (inputs) => ({ force: slideHoldingForce(inputs) }),
    example: { ballastMass: 0.9, lean: 0.1 },
    related: ['actuator.arm-holding-moment', 'actuator.stop-to-stop'],
  }),
  calculation({
    id: 'actuator.stop-to-stop',
    title: 'Time from stop to stop',
    equation: String.raw`t = \frac{2\, \theta_m}{\dot\theta_0}`,
    inputs: {
      travel: {
        symbol: String.raw`\theta_m`,
        unit: 'rad',
        slideUnit: 'm',
        meaning: 'travel of the ballast to one side',
      },
      noLoadSpeed: {
        symbol: String.raw`\dot\theta_0`,
        unit: 'rad/s',
        slideUnit: 'm/s',
        meaning: 'no-load speed of the actuator',
      },
    },
    outputs: { time: { symbol: 't', unit: 's', meaning: 'shortest time from stop to stop' } },
    validity: 'Least time: no load, no time to start and stop; for a slide travel and speed are lengths.',
    source: 'Derived: constant no-load speed over the whole travel',
    compute: (inputs) => ({ time: stopToStopTime(inputs) }),
    example: { travel: Math.PI / 4, noLoadSpeed: 10.5 },
    related: ['actuator.arm-holding-moment', 'actuator.slide-holding-force'],
  }),
];
