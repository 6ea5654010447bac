/** The speed at which a rotor has to be judged: not the one that it is set to, but the one that it could reach. */
import { type Calculation, calculation } from './calculation.ts';
import {
  DomainError,
  requireFinite,
  requireNotNegative,
  requirePositive,
  requireWholeNumber,
} from './domain.ts';

/**
 * Speed that the spin motor would run to with its control dead and the pack freshly charged.
 *
 *   Ω_r = k_v n V_full
 *
 * @param speedConstant    k_v, rad/s per volt, no-load speed constant of the motor, more than 0
 * @param cells            n, cells in series, a whole number
 * @param cellFullVoltage  V_full, V of a cell at full charge, more than 0
 * @returns Ω_r, rad/s, with a direct drive
 * @throws DomainError  outside these ranges
 * Source: no-load line of a direct-current machine (Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., ch. 7);
 * the dead control as the worst case as in 14 CFR 25.1461.
 */
export function runawaySpeed(motor: {
  readonly speedConstant: number;
  readonly cells: number;
  readonly cellFullVoltage: number;
}): number {
  requirePositive('speed constant of the motor', motor.speedConstant, 'rad/(s·V)');
  requireWholeNumber('number of cells in series', motor.cells, 1);
  requirePositive('full voltage of a cell', motor.cellFullVoltage, 'V');
  return motor.speedConstant * motor.cells * motor.cellFullVoltage;
}

/**
 * Speed at which the rotor's strength is judged.
 *
 *   Ω_j = f max(Ω_w, Ω_r)
 *
 * Stress grows with the square of the speed: a factor of 1.2 asks for 1.44 times the strength.
 *
 * @param largestSpeed     Ω_w, rad/s, largest working speed, more than 0
 * @param runawaySpeed     Ω_r, rad/s, not negative; 0 where nothing can drive the rotor faster than it is set to
 * @param overspeedFactor  f, at least 1
 * @returns Ω_j, rad/s
 * @throws DomainError  outside these ranges
 * Source: the shape of the rule, a factor on the highest speed that the drive can reach, as in 14 CFR 33.27.
 */
export function judgedSpeed({
  largestSpeed,
  runawaySpeed = 0,
  overspeedFactor,
}: {
  readonly largestSpeed: number;
  readonly runawaySpeed?: number;
  readonly overspeedFactor: number;
}): number {
  requirePositive('largest working speed', largestSpeed, 'rad/s');
  requireNotNegative('runaway speed', runawaySpeed, 'rad/s');
  requireFinite('overspeed factor', overspeedFactor);
  if (overspeedFactor < 1) {
    throw new DomainError('overspeed factor', overspeedFactor, 'it has to be at least 1');
  }
  return overspeedFactor * Math.max(largestSpeed, runawaySpeed);
}

export const rotorSpeedCalculations: readonly Calculation[] = [
  calculation({
    id: 'rotor.runaway-speed',
    title: 'Runaway speed of the rotor',
    equation: String.raw`\Omega_r = k_v\, n\, V_{\mathrm{full}}`,
    inputs: {
      speedConstant: { symbol: 'k_v', unit: 'rad/(s·V)', meaning: 'speed constant of the spin motor' },
      cells: { symbol: 'n', unit: '1', meaning: 'number of cells in series' },
      cellFullVoltage: {
        symbol: String.raw`V_{\mathrm{full}}`,
        unit: 'V',
        meaning: 'voltage of a cell at full charge',
      },
    },
    outputs: {
      speed: { symbol: String.raw`\Omega_r`, unit: 'rad/s', meaning: 'runaway speed of the rotor' },
    },
    validity: 'Motor on the rotor’s own axis, no load; drag holds the real rotor below it.',
    source:
      'Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed. 2003, ch. 7 (no-load speed); worst case as in 14 CFR 25.1461',
    compute: (inputs) => ({ speed: runawaySpeed(inputs) }),
    example: { speedConstant: 94.2, cells: 3, cellFullVoltage: 4.2 },
    related: ['rotor.judged-speed', 'pack.voltage'],
  }),
  calculation({
    id: 'rotor.judged-speed',
    title: 'Speed at which the rotor is judged',
    equation: String.raw`\Omega_j = f \max(\Omega_w, \Omega_r)`,
    inputs: {
      largestSpeed: {
        symbol: String.raw`\Omega_w`,
        unit: 'rad/s',
        meaning: 'largest working speed of the rotor',
      },
      runawaySpeed: {
        symbol: String.raw`\Omega_r`,
        unit: 'rad/s',
        meaning: 'runaway speed of the rotor',
        default: 0,
      },
      overspeedFactor: { symbol: 'f', unit: '1', meaning: 'overspeed factor' },
    },
    outputs: {
      speed: { symbol: String.raw`\Omega_j`, unit: 'rad/s', meaning: 'speed at which the rotor is judged' },
    },
    validity: 'Without a runaway speed, only where nothing can drive the rotor faster than it is set to.',
    source: 'Project choice after 14 CFR 33.27 (factor on the highest speed that can be reached)',
    compute: (inputs) => ({ speed: judgedSpeed(inputs) }),
    example: { largestSpeed: 890, runawaySpeed: 1187, overspeedFactor: 1.2 },
    related: ['rotor.runaway-speed', 'rotor.peak-stress'],
  }),
];
