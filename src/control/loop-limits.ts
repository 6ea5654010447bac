/**
 * Limits that no gains beat. Where one of them is near, tuning is lost time: the vehicle has to be built differently, and
 * the figures say what to change.
 */
import {
  type Calculation,
  calculation,
  DomainError,
  requireFinite,
  requireNotNegative,
  requirePositive,
  standardGravity,
} from '../mechanics/index.ts';

/**
 * Unstable pole against delay: p τ, with everything in the loop that acts like a delay counted as one.
 *
 *   τ = τ_d + T_s/2 + τ_s + 2ζ/ω_n,   M_T ≥ e^{p τ_d}
 *
 * With p τ at √2 no proportional and differential control of lean holds a vehicle that topples at p; in practice 0.3
 * to 0.5 is as far as one goes.
 *
 * @param unstablePole      p, 1/s, the fastest growing open-loop pole, more than 0
 * @param delay             τ_d, s, of the command, not negative
 * @param sampleTime        T_s, s, more than 0
 * @param sensorLag         τ_s, s, not negative
 * @param naturalFrequency  ω_n, rad/s, of the drive, more than 0
 * @param dampingRatio      ζ of the drive, more than 0
 * @returns totalDelay τ, s; product p τ; peakComplementary, what M_T is at least, by the pure delay alone
 * @throws DomainError  outside these ranges
 * Source: G. Stépán, Phil. Trans. R. Soc. A 367 (2009) 1195 (from memory; √2 re-derived); S. Skogestad, I. Postlethwaite,
 * Multivariable Feedback Control, 2nd ed., chapter 5 (from memory).
 */
export function delayLimit(loop: {
  readonly unstablePole: number;
  readonly delay: number;
  readonly sampleTime: number;
  readonly sensorLag: number;
  readonly naturalFrequency: number;
  readonly dampingRatio: number;
}): { totalDelay: number; product: number; peakComplementary: number } {
  const { unstablePole, delay, sampleTime, sensorLag, naturalFrequency, dampingRatio } = loop;
  requirePositive('unstable pole', unstablePole, '1/s');
  requireNotNegative('delay', delay, 's');
  requirePositive('sample time', sampleTime, 's');
  requireNotNegative('sensor lag', sensorLag, 's');
  requirePositive('natural frequency of the actuator', naturalFrequency, 'rad/s');
  requirePositive('damping ratio of the actuator', dampingRatio, '1');
  const totalDelay = delay + sampleTime / 2 + sensorLag + (2 * dampingRatio) / naturalFrequency;
  return {
    totalDelay,
    product: unstablePole * totalDelay,
    peakComplementary: Math.exp(unstablePole * delay),
  };
}

/**
 * Unstable pole against the wrong-way reaction: a ballast that is moved first pushes the vehicle the other way.
 *
 *   z = √(g / z_b),   M_s ≥ (z + p) / |z − p|
 *
 * @param ballastHeight  z_b, m above the ground line, more than 0 (at it or below there is no wrong way)
 * @param unstablePole   p, 1/s, more than 0
 * @returns zero z, 1/s; peakSensitivity, what M_s is at least
 * @throws DomainError  outside these ranges, and for p = z, where no control reaches the fall at all
 * Source: numerator g − z_b s² of the ballast's effect; S. Skogestad, I. Postlethwaite, Multivariable Feedback Control,
 * 2nd ed., chapter 5 (from memory), by the maximum modulus theorem.
 */
export function wrongWayLimit(loop: { readonly ballastHeight: number; readonly unstablePole: number }): {
  zero: number;
  peakSensitivity: number;
} {
  requirePositive('ballast height', loop.ballastHeight, 'm');
  requirePositive('unstable pole', loop.unstablePole, '1/s');
  const zero = Math.sqrt(standardGravity / loop.ballastHeight);
  const apart = Math.abs(zero - loop.unstablePole);
  if (apart < 1e-9 * zero) {
    const requirement = 'at √(g/z_b) the ballast cannot reach the fall: it has to stand lower or higher';
    throw new DomainError('unstable pole', loop.unstablePole, requirement, '1/s');
  }
  return { zero, peakSensitivity: (zero + loop.unstablePole) / apart };
}

/**
 * Unstable pole against the band in which the drive follows.
 *
 *   M_s ≥ e^{π p / Ω}
 *
 * @param unstablePole      p, 1/s, more than 0
 * @param naturalFrequency  Ω, rad/s: beyond it the loop does nothing, more than 0
 * @returns peakSensitivity, what M_s is at least
 * @throws DomainError  outside these ranges
 * Source: G. Stein, Respect the unstable, IEEE Control Systems Magazine 23 (2003) 4, 12 (from memory): Bode’s integral
 * ∫ ln|S| dω = π p, all of it within the band.
 */
export function bandwidthLimit(loop: {
  readonly unstablePole: number;
  readonly naturalFrequency: number;
}): number {
  requirePositive('unstable pole', loop.unstablePole, '1/s');
  requirePositive('natural frequency of the actuator', loop.naturalFrequency, 'rad/s');
  return Math.exp((Math.PI * loop.unstablePole) / loop.naturalFrequency);
}

/**
 * The largest lean, at rest, from which a vehicle without a rotor can still be caught, by the best control there could be:
 * after the delay the ballast goes to the end of its travel as fast as the drive can.
 *
 *   φ_max = (m_b e_m / M) (1 − z_b p²/g) e^{−p τ} (1 − e^{−x}) / x,   x = p e_m / v,   p = √(g M / I)
 *
 * The static limit, less what the wrong-way reaction, the delay and the drive's speed cost.
 *
 * @param firstMoment    M, kg·m, ballast included, more than 0
 * @param rollInertia    I, kg·m², ballast centred, more than 0
 * @param ballastMass    m_b, kg, more than 0
 * @param ballastHeight  z_b, m above the ground line
 * @param ballastOffset  e_m, m, at the end of the travel, more than 0
 * @param offsetSpeed    v, m/s, of the ballast, more than 0
 * @param delay          τ, s, of everything in the loop, not negative
 * @returns lean φ_max, rad; share of the static limit
 * @throws DomainError  outside these ranges, and where z_b ≥ I/M: so high a ballast pushes the wrong way for good
 * Source: derived; the growing part φ + φ̇/p of the motion stays bounded only if
 * φ + φ̇/p ≤ (m_b/(p I)) ∫ e^{−pt} (g e − z_b ë) dt; null-controllable region, T. Hu, Z. Lin, Control Systems with
 * Actuator Saturation, 2001, chapter 2 (from memory).
 */
export function largestLeanCaught(vehicle: {
  readonly firstMoment: number;
  readonly rollInertia: number;
  readonly ballastMass: number;
  readonly ballastHeight: number;
  readonly ballastOffset: number;
  readonly offsetSpeed: number;
  readonly delay: number;
}): { lean: number; share: number } {
  const { firstMoment, rollInertia, ballastMass, ballastHeight, ballastOffset, offsetSpeed, delay } = vehicle;
  requirePositive('first moment about the ground line', firstMoment, 'kg·m');
  requirePositive('roll inertia', rollInertia, 'kg·m²');
  requirePositive('ballast mass', ballastMass, 'kg');
  requireFinite('ballast height', ballastHeight, 'm');
  requirePositive('ballast offset', ballastOffset, 'm');
  requirePositive('speed of the ballast', offsetSpeed, 'm/s');
  requireNotNegative('delay', delay, 's');
  const highest = rollInertia / firstMoment;
  if (ballastHeight >= highest) {
    const requirement = `it has to be less than I/M, here ${Number(highest.toPrecision(3))} m, or its reaction takes more than its weight gives`;
    throw new DomainError('ballast height', ballastHeight, requirement, 'm');
  }
  const pole = Math.sqrt((standardGravity * firstMoment) / rollInertia);
  const x = (pole * ballastOffset) / offsetSpeed;
  const share = (1 - ballastHeight / highest) * Math.exp(-pole * delay) * (-Math.expm1(-x) / x);
  return { lean: ((ballastMass * ballastOffset) / firstMoment) * share, share };
}

const unstablePole = {
  symbol: 'p',
  unit: '1/s',
  meaning: 'fastest growing pole of the vehicle without its controller',
} as const;
const naturalFrequency = {
  symbol: String.raw`\omega_n`,
  unit: 'rad/s',
  meaning: 'natural frequency of the actuator',
} as const;
const ballastHeight = {
  symbol: 'z_b',
  unit: 'm',
  meaning: 'ballast height above the ground line, centred',
} as const;
const peakSensitivity = {
  symbol: 'M_s',
  unit: '1',
  meaning: 'least peak sensitivity that any gains can reach',
} as const;

export const loopLimitCalculations: readonly Calculation[] = [
  calculation({
    id: 'loop.delay-limit',
    title: 'Unstable pole against delay',
    equation: String.raw`\tau = \tau_d + \frac{T_s}{2} + \tau_s + \frac{2\zeta}{\omega_n}, \qquad p\,\tau < \sqrt{2}, \qquad M_T \ge e^{p\,\tau_d}`,
    inputs: {
      unstablePole,
      delay: {
        symbol: String.raw`\tau_d`,
        unit: 's',
        meaning: 'delay from reading the sensors to the command reaching the actuator',
      },
      sampleTime: { symbol: 'T_s', unit: 's', meaning: 'sample time of the controller' },
      sensorLag: {
        symbol: String.raw`\tau_s`,
        unit: 's',
        meaning: 'lag of the lean and rate sensors',
        default: 0,
      },
      naturalFrequency,
      dampingRatio: { symbol: String.raw`\zeta`, unit: '1', meaning: 'damping ratio of the actuator' },
    },
    outputs: {
      totalDelay: {
        symbol: String.raw`\tau`,
        unit: 's',
        meaning: 'everything in the loop that acts like a delay',
      },
      product: { symbol: String.raw`p\,\tau`, unit: '1', meaning: 'unstable pole times total delay' },
      peakComplementary: {
        symbol: 'M_T',
        unit: '1',
        meaning: 'least peak of the complementary sensitivity that any gains can reach',
      },
    },
    validity:
      'Lags count as delays, good while p τ is well below 1; √2 is where proportional and differential control of the lean ends, 0.3 to 0.5 is practice.',
    source:
      'G. Stépán, Phil. Trans. R. Soc. A 367 (2009) 1195; S. Skogestad, I. Postlethwaite, Multivariable Feedback Control, 2nd ed., chapter 5',
    compute: delayLimit,
    example: {
      unstablePole: 7.29,
      delay: 0.018,
      sampleTime: 0.005,
      sensorLag: 0.008,
      naturalFrequency: 32,
      dampingRatio: 0.85,
    },
    related: ['loop.margins', 'loop.wrong-way-limit', 'mass.toppling'],
  }),
  calculation({
    id: 'loop.wrong-way-limit',
    title: 'Unstable pole against the wrong-way reaction',
    equation: String.raw`z = \sqrt{\frac{g}{z_b}}, \qquad M_s \ge \frac{z + p}{\left| z - p \right|}`,
    inputs: { ballastHeight, unstablePole },
    outputs: {
      zero: { symbol: 'z', unit: '1/s', meaning: 'zero of the wrong-way reaction' },
      peakSensitivity,
    },
    validity: 'Ballast above the ground line; whatever is measured and however it is controlled.',
    source:
      'Derived: ballast’s effect with the numerator g − z_b s²; S. Skogestad, I. Postlethwaite, Multivariable Feedback Control, 2nd ed., chapter 5',
    compute: wrongWayLimit,
    example: { ballastHeight: 0.08, unstablePole: 1.56 },
    related: ['loop.margins', 'loop.delay-limit', 'loop.largest-lean-caught'],
  }),
  calculation({
    id: 'loop.bandwidth-limit',
    title: 'Unstable pole against the actuator',
    equation: String.raw`M_s \ge e^{\pi p / \omega_n}`,
    inputs: { unstablePole, naturalFrequency },
    outputs: { peakSensitivity },
    validity:
      'The loop does nothing beyond the natural frequency of the actuator, and is as good as can be below it.',
    source: 'G. Stein, Respect the unstable, IEEE Control Systems Magazine 23 (2003) no. 4, p. 12',
    compute: (inputs) => ({ peakSensitivity: bandwidthLimit(inputs) }),
    example: { unstablePole: 6, naturalFrequency: 40 },
    related: ['loop.margins', 'loop.delay-limit'],
  }),
  calculation({
    id: 'loop.largest-lean-caught',
    title: 'Largest lean that can be caught',
    equation: String.raw`\varphi_{\max} = \frac{m_b\, e_m}{M} \left( 1 - \frac{z_b\, p^2}{g} \right) e^{-p\,\tau}\, \frac{1 - e^{-x}}{x}, \qquad x = \frac{p\, e_m}{v}, \qquad p = \sqrt{\frac{g M}{I}}`,
    inputs: {
      firstMoment: {
        symbol: 'M',
        unit: 'kg·m',
        meaning: 'first moment about the ground line, ballast included',
      },
      rollInertia: {
        symbol: 'I',
        unit: 'kg·m²',
        meaning: 'roll inertia about the roll axis, ballast centred',
      },
      ballastMass: { symbol: 'm_b', unit: 'kg', meaning: 'ballast mass' },
      ballastHeight,
      ballastOffset: { symbol: 'e_m', unit: 'm', meaning: 'offset of the ballast at the end of its travel' },
      offsetSpeed: { symbol: 'v', unit: 'm/s', meaning: 'speed of the ballast across the vehicle' },
      delay: {
        symbol: String.raw`\tau`,
        unit: 's',
        meaning: 'everything in the loop that acts like a delay',
        default: 0,
      },
    },
    outputs: {
      lean: {
        symbol: String.raw`\varphi_{\max}`,
        unit: 'rad',
        meaning: 'largest lean at rest that can be caught',
      },
      share: { symbol: 'q', unit: '1', meaning: 'share of the static limit' },
    },
    validity:
      'Without a rotor, or with its gimbal at the stop; small lean, ballast at the speed given at once after the delay.',
    source:
      'Derived: the growing part of the motion stays bounded; T. Hu, Z. Lin, Control Systems with Actuator Saturation, 2001, chapter 2',
    compute: largestLeanCaught,
    example: {
      firstMoment: 0.492,
      rollInertia: 0.09076,
      ballastMass: 0.9,
      ballastHeight: 0.08,
      ballastOffset: 0.06,
      offsetSpeed: 0.4,
      delay: 0.05,
    },
    related: ['ballast.largest-lean', 'loop.delay-limit', 'loop.wrong-way-limit', 'actuator.stop-to-stop'],
  }),
];
