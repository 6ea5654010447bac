/**
 * A spinning rotor whose axis is turned: the couple that it asks for, what its bearings carry, how fast it precesses
 * under its own weight, and how a free body wobbles.
 */
import { type Calculation, calculation } from './calculation.ts';
import { requireBetween, requireFinite, requireNotNegative, requirePositive } from './domain.ts';
import { standardGravity } from './gravity.ts';

/**
 * Couple that turns the axis of a rotor: C = H Ω, N·m, the axis of the turn square to the spin axis.
 *
 * @param spinMomentum  H, N·m·s, not negative
 * @param turnRate      Ω, rad/s, not negative
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 11.4; J. Perry, Spinning Tops.
 */
export function gyroCouple(gyro: { readonly spinMomentum: number; readonly turnRate: number }): number {
  requireNotNegative('spin momentum', gyro.spinMomentum, 'N·m·s');
  requireNotNegative('rate of turn of the axis', gyro.turnRate, 'rad/s');
  return gyro.spinMomentum * gyro.turnRate;
}

/**
 * Largest couple and acceleration while the axis swings to and fro.
 *
 *   C = H φ ω,   α = φ ω²
 *
 * @param spinMomentum  H, N·m·s, not negative
 * @param amplitude     φ, rad to each side, not negative
 * @param frequency     ω, rad/s of the swing, 2π over its period, more than 0
 * @returns couple C, N·m; acceleration α, rad/s²
 * @throws DomainError  outside these ranges
 * Source: Khurmi & Gupta, Theory of Machines, 14th ed., examples 14.6 to 14.9.
 */
export function peakCouple(gyro: {
  readonly spinMomentum: number;
  readonly amplitude: number;
  readonly frequency: number;
}): { couple: number; acceleration: number } {
  requireNotNegative('spin momentum', gyro.spinMomentum, 'N·m·s');
  requireNotNegative('swing to each side', gyro.amplitude, 'rad');
  requirePositive('frequency of the swing', gyro.frequency, 'rad/s');
  const rate = gyro.amplitude * gyro.frequency;
  return { couple: gyro.spinMomentum * rate, acceleration: rate * gyro.frequency };
}

/**
 * Load on the rotor's bearings while its axis is turned.
 *
 *   F_g = H Ω / b,   F = F_g + m g / 2
 *
 * @param spinMomentum  H, N·m·s, not negative
 * @param turnRate      Ω, rad/s, not negative: of the gimbal, of the vehicle, or of the hand that turns both
 * @param bearingSpan   b, m between the bearings, more than 0
 * @param rotorMass     m, kg, the rotor midway between them, not negative; 0 if left out
 * @returns gyroLoad F_g, N on each bearing, in opposite directions; largestLoad F, N
 * @throws DomainError  outside these ranges
 * Source: couple as two forces; Khurmi & Gupta, Theory of Machines, 14th ed., example 14.2 (method).
 */
export function gyroBearingLoad({
  spinMomentum,
  turnRate,
  bearingSpan,
  rotorMass = 0,
}: {
  readonly spinMomentum: number;
  readonly turnRate: number;
  readonly bearingSpan: number;
  readonly rotorMass?: number;
}): { gyroLoad: number; largestLoad: number } {
  requirePositive('span of the bearings', bearingSpan, 'm');
  requireNotNegative('mass of the rotor', rotorMass, 'kg');
  const gyroLoad = gyroCouple({ spinMomentum, turnRate }) / bearingSpan;
  return { gyroLoad, largestLoad: gyroLoad + (rotorMass * standardGravity) / 2 };
}

/**
 * Precession of a rotor under its own weight, held beside its centre of gravity: Ω = m g l / H, rad/s.
 *
 * @param mass          m, kg, not negative
 * @param arm           l, m from support to centre of gravity, not negative
 * @param spinMomentum  H, N·m·s, more than 0
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 11.4; exact for steady precession with the axis level.
 */
export function topPrecession(top: {
  readonly mass: number;
  readonly arm: number;
  readonly spinMomentum: number;
}): number {
  requireNotNegative('mass', top.mass, 'kg');
  requireNotNegative('distance of the centre of gravity from the support', top.arm, 'm');
  requirePositive('spin momentum', top.spinMomentum, 'N·m·s');
  return (top.mass * standardGravity * top.arm) / top.spinMomentum;
}

/**
 * Wobble of a symmetric body that nothing holds.
 *
 *   ω_s = I_s Ω / (I_t cos θ),   ω_b = (I_s − I_t) Ω / I_t
 *
 * @param spinInertia        I_s, kg·m², about the axis of symmetry, more than 0
 * @param transverseInertia  I_t, kg·m², about an axis across it, more than 0
 * @param speed              Ω, rad/s, spin about the axis of symmetry
 * @param tilt               θ, rad, of that axis from the angular momentum, from 0 to less than π/2; 0 if left out
 * @returns spaceRate ω_s, rad/s, at which the axis goes round in space; bodyRate ω_b, rad/s, at which the wobble goes
 *          round in the body
 * @throws DomainError  outside these ranges
 * Source: φ̇ = L/I_t, Physics LibreTexts; Balabhaskar et al., BSc 1st Year Physics, ch. 3, example 14 (body rate).
 */
export function freeWobble({
  spinInertia,
  transverseInertia,
  speed,
  tilt = 0,
}: {
  readonly spinInertia: number;
  readonly transverseInertia: number;
  readonly speed: number;
  readonly tilt?: number;
}): { spaceRate: number; bodyRate: number } {
  requirePositive('inertia about the axis of symmetry', spinInertia, 'kg·m²');
  requirePositive('inertia across it', transverseInertia, 'kg·m²');
  requireFinite('spin', speed, 'rad/s');
  requireBetween('tilt of the axis', tilt, 0, Math.PI / 2, 'rad');
  return {
    spaceRate: (spinInertia * speed) / (transverseInertia * Math.cos(tilt)),
    bodyRate: ((spinInertia - transverseInertia) * speed) / transverseInertia,
  };
}

/**
 * Couple of a rotor that sits tilted on its shaft: C = ½ (I_s − I_t) Ω² sin 2β, N·m, turning with the shaft.
 *
 * @param spinInertia        I_s, kg·m², about the rotor's own axis, not negative
 * @param transverseInertia  I_t, kg·m², across it, not negative
 * @param speed              Ω, rad/s, not negative
 * @param tilt               β, rad, of the rotor on the shaft, from 0 to π/2
 * @throws DomainError  outside these ranges
 * Source: Khurmi & Gupta, Theory of Machines, 14th ed., example 14.17, for a thin disc (m/8) Ω² r² sin 2β.
 */
export function tiltedRotorCouple(rotor: {
  readonly spinInertia: number;
  readonly transverseInertia: number;
  readonly speed: number;
  readonly tilt: number;
}): number {
  requireNotNegative('inertia about the rotor’s own axis', rotor.spinInertia, 'kg·m²');
  requireNotNegative('inertia across it', rotor.transverseInertia, 'kg·m²');
  requireNotNegative('rotor speed', rotor.speed, 'rad/s');
  requireBetween('tilt of the rotor on its shaft', rotor.tilt, 0, Math.PI / 2, 'rad');
  return 0.5 * (rotor.spinInertia - rotor.transverseInertia) * rotor.speed ** 2 * Math.sin(2 * rotor.tilt);
}

const spinMomentum = { symbol: 'H', unit: 'N·m·s', meaning: 'spin momentum of the rotor' } as const;
const turnRate = {
  symbol: String.raw`\Omega`,
  unit: 'rad/s',
  meaning: 'rate at which the axis is turned',
} as const;
const spinInertia = {
  symbol: 'I_s',
  unit: 'kg·m²',
  meaning: 'inertia about the axis of symmetry',
} as const;
const transverseInertia = {
  symbol: 'I_t',
  unit: 'kg·m²',
  meaning: 'inertia about an axis across it',
} as const;
const speed = {
  symbol: String.raw`\Omega`,
  unit: 'rad/s',
  meaning: 'spin about the axis of symmetry',
} as const;

export const gyroPrecessionCalculations: readonly Calculation[] = [
  calculation({
    id: 'gyro.couple',
    title: 'Couple that turns the rotor’s axis',
    equation: String.raw`C = H\, \Omega`,
    inputs: { spinMomentum, turnRate },
    outputs: { couple: { symbol: 'C', unit: 'N·m', meaning: 'gyroscopic couple' } },
    validity: 'Axis of the turn square to the spin axis; otherwise H Ω times the sine of the angle between.',
    source: 'OpenStax, University Physics Volume 1, section 11.4; J. Perry, Spinning Tops',
    compute: (inputs) => ({ couple: gyroCouple(inputs) }),
    example: { spinMomentum: 0.445, turnRate: 1 },
    related: ['gyro.bearing-load', 'gyro.peak-couple', 'gyro.heavy-top'],
  }),
  calculation({
    id: 'gyro.peak-couple',
    title: 'Largest couple while the axis swings',
    equation: String.raw`C = H\, \varphi\, \omega, \qquad \alpha = \varphi\, \omega^2`,
    inputs: {
      spinMomentum,
      amplitude: {
        symbol: String.raw`\varphi`,
        unit: 'rad',
        meaning: 'swing of the axis to each side',
      },
      frequency: {
        symbol: String.raw`\omega`,
        unit: 'rad/s',
        meaning: 'frequency of the swing, 2π over its period',
      },
    },
    outputs: {
      couple: { symbol: 'C', unit: 'N·m', meaning: 'largest gyroscopic couple' },
      acceleration: {
        symbol: String.raw`\alpha`,
        unit: 'rad/s²',
        meaning: 'largest acceleration of the swing',
      },
    },
    validity: 'Harmonic swing, small angles.',
    source: 'Khurmi & Gupta, Theory of Machines, 14th ed., examples 14.6 to 14.9',
    compute: peakCouple,
    example: { spinMomentum: 0.445, amplitude: 0.0436, frequency: 12 },
    related: ['gyro.couple', 'actuator.sine-demand'],
  }),
  calculation({
    id: 'gyro.bearing-load',
    title: 'Bearing load while the rotor’s axis is turned',
    equation: String.raw`F_g = \frac{H\, \Omega}{b}, \qquad F = F_g + \frac{m g}{2}`,
    inputs: {
      spinMomentum,
      turnRate,
      bearingSpan: { symbol: 'b', unit: 'm', meaning: 'span of the rotor’s bearings' },
      rotorMass: { symbol: 'm', unit: 'kg', meaning: 'mass of the rotor, midway between them', default: 0 },
    },
    outputs: {
      gyroLoad: { symbol: 'F_g', unit: 'N', meaning: 'load on each bearing by the couple' },
      largestLoad: { symbol: 'F', unit: 'N', meaning: 'largest load on a bearing, weight included' },
    },
    validity: 'Rotor midway between two bearings; unbalance comes on top. A hand easily turns at 3 rad/s.',
    source: 'Khurmi & Gupta, Theory of Machines, 14th ed., example 14.2 (method)',
    compute: gyroBearingLoad,
    example: { spinMomentum: 0.445, turnRate: 3, bearingSpan: 0.04, rotorMass: 0.41 },
    related: ['gyro.couple', 'rotor.unbalance-force'],
  }),
  calculation({
    id: 'gyro.heavy-top',
    title: 'Precession of a rotor under its own weight',
    equation: String.raw`\Omega = \frac{m g\, l}{H}`,
    inputs: {
      mass: { symbol: 'm', unit: 'kg', meaning: 'mass of the rotor' },
      arm: { symbol: 'l', unit: 'm', meaning: 'distance of its centre of gravity from the support' },
      spinMomentum,
    },
    outputs: { precession: { symbol: String.raw`\Omega`, unit: 'rad/s', meaning: 'rate of precession' } },
    validity:
      'Precession much slower than the spin; a rotor held on a string by one end shows its momentum in this way.',
    source: 'OpenStax, University Physics Volume 1, section 11.4',
    compute: (inputs) => ({ precession: topPrecession(inputs) }),
    example: { mass: 0.3, arm: 0.05, spinMomentum: 0.0471 },
    related: ['gyro.couple', 'rotor.momentum'],
  }),
  calculation({
    id: 'gyro.free-wobble',
    title: 'Wobble of a free symmetric body',
    equation: String.raw`\omega_s = \frac{I_s\, \Omega}{I_t \cos\theta}, \qquad \omega_b = \frac{\left( I_s - I_t \right) \Omega}{I_t}`,
    inputs: {
      spinInertia,
      transverseInertia,
      speed,
      tilt: {
        symbol: String.raw`\theta`,
        unit: 'rad',
        meaning: 'tilt of the axis from the angular momentum',
        default: 0,
      },
    },
    outputs: {
      spaceRate: {
        symbol: String.raw`\omega_s`,
        unit: 'rad/s',
        meaning: 'rate at which the axis goes round in space',
      },
      bodyRate: {
        symbol: String.raw`\omega_b`,
        unit: 'rad/s',
        meaning: 'rate at which the wobble goes round in the body',
      },
    },
    validity:
      'No outside moment: a rotor that has left its bearings, not one in a gimbal (see gyro.nutation).',
    source:
      'Physics LibreTexts (rate = momentum over transverse inertia); Balabhaskar et al., BSc 1st Year Physics, ch. 3, example 14',
    compute: freeWobble,
    example: { spinInertia: 5e-4, transverseInertia: 2.6e-4, speed: 890, tilt: 0.02 },
    related: ['gyro.nutation', 'gyro.tilted-rotor'],
  }),
  calculation({
    id: 'gyro.tilted-rotor',
    title: 'Couple of a rotor tilted on its shaft',
    equation: String.raw`C = \tfrac{1}{2} \left( I_s - I_t \right) \Omega^2 \sin 2\beta`,
    inputs: {
      spinInertia: { symbol: 'I_s', unit: 'kg·m²', meaning: 'inertia about the rotor’s own axis' },
      transverseInertia,
      speed: { symbol: String.raw`\Omega`, unit: 'rad/s', meaning: 'speed of the shaft' },
      tilt: { symbol: String.raw`\beta`, unit: 'rad', meaning: 'tilt of the rotor on its shaft' },
    },
    outputs: { couple: { symbol: 'C', unit: 'N·m', meaning: 'couple that turns with the shaft' } },
    validity: 'Rigid rotor and shaft; balancing in one plane does not take this couple away.',
    source: 'Khurmi & Gupta, Theory of Machines, 14th ed., example 14.17',
    compute: (inputs) => ({ couple: tiltedRotorCouple(inputs) }),
    example: { spinInertia: 5e-4, transverseInertia: 2.6e-4, speed: 890, tilt: 0.002 },
    related: ['rotor.unbalance-force', 'gyro.free-wobble'],
  }),
];
