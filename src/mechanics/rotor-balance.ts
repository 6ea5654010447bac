/**
 * How far from balance a rotor may be, what the rest of it pulls with, and at what frequency the loop sees it. Unbalance
 * is mass times distance from the axis, kg·m; the shop writes g·mm, a millionth of it.
 */
import { type Calculation, calculation } from './calculation.ts';
import { requireNotNegative, requirePositive, requireWholeNumber } from './domain.ts';

/**
 * Residual unbalance that a balance grade permits at a speed.
 *
 *   e = G/Ω,   U = e m
 *
 * @param grade      G, m/s: 0.0063 for G 6.3, which is written in mm/s; more than 0
 * @param rotorMass  m, kg, more than 0
 * @param speed      Ω, rad/s, highest working speed, more than 0
 * @returns eccentricity e, m; unbalance U, kg·m, of the whole rotor, shared between its balancing planes
 * @throws DomainError  outside these ranges
 * Source: ISO 21940-11:2016 (U [g·mm] = 9549 G m/n with n in rpm).
 */
export function permissibleUnbalance(rotor: {
  readonly grade: number;
  readonly rotorMass: number;
  readonly speed: number;
}): { eccentricity: number; unbalance: number } {
  requirePositive('balance grade', rotor.grade, 'm/s');
  requirePositive('mass of the rotor', rotor.rotorMass, 'kg');
  requirePositive('rotor speed', rotor.speed, 'rad/s');
  const eccentricity = rotor.grade / rotor.speed;
  return { eccentricity, unbalance: eccentricity * rotor.rotorMass };
}

/**
 * Balance grade of a measured unbalance: e = U/m, G = e Ω.
 *
 * @param unbalance  U, kg·m, not negative
 * @param rotorMass  m, kg, more than 0
 * @param speed      Ω, rad/s, not negative
 * @returns eccentricity e, m; grade G, m/s (times 1000 it is the number behind the G)
 * @throws DomainError  outside these ranges
 * Source: ISO 21940-11:2016.
 */
export function balanceGrade(rotor: {
  readonly unbalance: number;
  readonly rotorMass: number;
  readonly speed: number;
}): { eccentricity: number; grade: number } {
  requireNotNegative('unbalance', rotor.unbalance, 'kg·m');
  requirePositive('mass of the rotor', rotor.rotorMass, 'kg');
  requireNotNegative('rotor speed', rotor.speed, 'rad/s');
  const eccentricity = rotor.unbalance / rotor.rotorMass;
  return { eccentricity, grade: eccentricity * rotor.speed };
}

/**
 * Force of an unbalance: F = U Ω² (= m e Ω²), N, turning with the rotor.
 *
 * @param unbalance  U, kg·m, not negative
 * @param speed      Ω, rad/s, not negative
 * @throws DomainError  outside these ranges
 * Source: centripetal force, OpenStax, University Physics 1, section 6.3.
 */
export function unbalanceForce(rotor: { readonly unbalance: number; readonly speed: number }): number {
  requireNotNegative('unbalance', rotor.unbalance, 'kg·m');
  requireNotNegative('rotor speed', rotor.speed, 'rad/s');
  return rotor.unbalance * rotor.speed ** 2;
}

/**
 * Mass that takes an unbalance away at a radius: m_c = U/r, kg.
 *
 * @param unbalance  U, kg·m, not negative
 * @param radius     r, m, more than 0
 * @throws DomainError  outside these ranges
 * Source: equal moments of mass about the axis.
 */
export function correctionMass(rotor: { readonly unbalance: number; readonly radius: number }): number {
  requireNotNegative('unbalance', rotor.unbalance, 'kg·m');
  requirePositive('radius of the correction', rotor.radius, 'm');
  return rotor.unbalance / rotor.radius;
}

/**
 * Frequency of the rotor's shake and the one that a sampled loop takes it for.
 *
 *   ω = n Ω,   ω_a = | ω − ω_s round(ω/ω_s) |,   ω_s = 2π/T_s
 *
 * @param speed       Ω, rad/s, not negative
 * @param sampleTime  T_s, s, more than 0
 * @param harmonic    n, a whole number; 1 if left out
 * @returns frequency ω, rad/s; alias ω_a, rad/s, from 0 to ω_s/2
 * @throws DomainError  outside these ranges
 * Source: sampling theorem: frequencies that differ by whole multiples of the sampling rate give the same samples.
 */
export function rotorAlias({
  speed,
  sampleTime,
  harmonic = 1,
}: {
  readonly speed: number;
  readonly sampleTime: number;
  readonly harmonic?: number;
}): { frequency: number; alias: number } {
  requireNotNegative('rotor speed', speed, 'rad/s');
  requirePositive('sample time', sampleTime, 's');
  requireWholeNumber('number of the harmonic', harmonic, 1);
  const frequency = harmonic * speed;
  const turnsPerSample = (frequency * sampleTime) / (2 * Math.PI);
  const rest = Math.abs(turnsPerSample - Math.round(turnsPerSample));
  return { frequency, alias: (2 * Math.PI * rest) / sampleTime };
}

const unbalance = { symbol: 'U', unit: 'kg·m', meaning: 'unbalance of the rotor' } as const;
const rotorMass = { symbol: 'm', unit: 'kg', meaning: 'mass of the rotor' } as const;
const speed = { symbol: String.raw`\Omega`, unit: 'rad/s', meaning: 'speed of the rotor' } as const;
const grade = { symbol: 'G', unit: 'm/s', meaning: 'balance grade, 0.0063 m/s for G 6.3' } as const;
const eccentricity = {
  symbol: 'e',
  unit: 'm',
  meaning: 'distance of the rotor’s centre of gravity from its axis',
} as const;
const ISO = 'ISO 21940-11:2016';

export const rotorBalanceCalculations: readonly Calculation[] = [
  calculation({
    id: 'rotor.permissible-unbalance',
    title: 'Residual unbalance that a grade permits',
    equation: String.raw`e = \frac{G}{\Omega}, \qquad U = e\, m`,
    inputs: { grade, rotorMass, speed },
    outputs: { eccentricity, unbalance: { ...unbalance, meaning: 'residual unbalance of the whole rotor' } },
    validity:
      'Rigid rotor at its highest working speed; two planes share U. The standard names G 0.4 for gyroscopes; older lists have flywheels under G 6.3.',
    source: ISO,
    compute: permissibleUnbalance,
    example: { grade: 0.0063, rotorMass: 0.41, speed: 890 },
    related: ['rotor.balance-grade', 'rotor.unbalance-force', 'rotor.correction-mass'],
  }),
  calculation({
    id: 'rotor.balance-grade',
    title: 'Balance grade of a measured unbalance',
    equation: String.raw`e = \frac{U}{m}, \qquad G = e\, \Omega`,
    inputs: { unbalance, rotorMass, speed },
    outputs: { eccentricity, grade },
    validity: 'Rigid rotor; the number behind the G is this figure in mm/s.',
    source: ISO,
    compute: balanceGrade,
    example: { unbalance: 3e-6, rotorMass: 0.41, speed: 890 },
    related: ['rotor.permissible-unbalance'],
  }),
  calculation({
    id: 'rotor.unbalance-force',
    title: 'Force of an unbalance',
    equation: String.raw`F = U\, \Omega^2`,
    inputs: { unbalance, speed },
    outputs: { force: { symbol: 'F', unit: 'N', meaning: 'force that turns with the rotor' } },
    validity: 'Rotor well below its first whirling speed, bearings stiff.',
    source: 'OpenStax, University Physics Volume 1, section 6.3 (centripetal force)',
    compute: (inputs) => ({ force: unbalanceForce(inputs) }),
    example: { unbalance: 3e-6, speed: 890 },
    related: ['rotor.permissible-unbalance', 'gyro.bearing-load', 'rotor.alias'],
  }),
  calculation({
    id: 'rotor.correction-mass',
    title: 'Mass that corrects an unbalance',
    equation: String.raw`m_c = \frac{U}{r}`,
    inputs: {
      unbalance,
      radius: { symbol: 'r', unit: 'm', meaning: 'radius at which mass is added or taken away' },
    },
    outputs: {
      mass: { symbol: 'm_c', unit: 'kg', meaning: 'mass to add opposite the heavy side, or to take from it' },
    },
    validity: 'One plane; a tilted rotor needs two.',
    source: 'Derived: equal moments of mass about the axis',
    compute: (inputs) => ({ mass: correctionMass(inputs) }),
    example: { unbalance: 3e-6, radius: 0.04 },
    related: ['rotor.unbalance-force', 'gyro.tilted-rotor'],
  }),
  calculation({
    id: 'rotor.alias',
    title: 'Shake of the rotor as a sampled loop sees it',
    equation: String.raw`\omega = n\, \Omega, \qquad \omega_a = \left| \omega - \omega_s \operatorname{round}\frac{\omega}{\omega_s} \right|, \qquad \omega_s = \frac{2\pi}{T_s}`,
    inputs: {
      speed,
      sampleTime: { symbol: 'T_s', unit: 's', meaning: 'sample time of the loop' },
      harmonic: {
        symbol: 'n',
        unit: '1',
        meaning: 'number of the harmonic, 1 for once a turn',
        default: 1,
      },
    },
    outputs: {
      frequency: { symbol: String.raw`\omega`, unit: 'rad/s', meaning: 'frequency of the shake' },
      alias: {
        symbol: String.raw`\omega_a`,
        unit: 'rad/s',
        meaning: 'frequency at which it appears in the samples',
      },
    },
    validity:
      'Sensor without a filter before it is sampled; an alias near the loop’s own frequencies shakes the ballast.',
    source: 'Sampling theorem',
    compute: rotorAlias,
    example: { speed: 890, sampleTime: 0.005, harmonic: 1 },
    related: ['rotor.unbalance-force', 'gyro.nutation'],
  }),
];
