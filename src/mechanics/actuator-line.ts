/**
 * What a direct-current actuator can give: its moment falls in a straight line from stall to no-load speed, and the whole
 * line moves with the supply voltage. The same line serves a slide with force for moment and m/s for rad/s.
 */
import { type Calculation, calculation } from './calculation.ts';
import { requireNotNegative, requirePositive } from './domain.ts';

interface Line {
  /** T_s, N·m (or N), at the rated voltage, more than 0. */
  readonly stallMoment: number;
  /** ω₀, rad/s (or m/s), at the rated voltage, more than 0. */
  readonly noLoadSpeed: number;
  /** v, supply over rated voltage, more than 0; 1 where left out. */
  readonly voltageRatio?: number;
}

function requireLine({ stallMoment, noLoadSpeed, voltageRatio = 1 }: Line): void {
  requirePositive('stall moment of the actuator', stallMoment, 'N·m');
  requirePositive('no-load speed of the actuator', noLoadSpeed, 'rad/s');
  requirePositive('supply over rated voltage', voltageRatio, '1');
}

/**
 * Moment left at a speed.
 *
 *   T = T_s ( v − ω/ω₀ )
 *
 * @param stallMoment   T_s, N·m, at the rated voltage, more than 0
 * @param noLoadSpeed   ω₀, rad/s, at the rated voltage, more than 0
 * @param speed         ω, rad/s, not negative
 * @param voltageRatio  v, supply over rated voltage, more than 0; 1 if left out
 * @returns T, N·m; negative where the load drives the actuator faster than it would run free
 * @throws DomainError  outside these ranges
 * Source: V = I R + K ω and T = K I, Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., ch. 7.
 */
export function momentAtSpeed(drive: Line & { readonly speed: number }): number {
  requireLine(drive);
  requireNotNegative('speed', drive.speed, 'rad/s');
  return drive.stallMoment * ((drive.voltageRatio ?? 1) - drive.speed / drive.noLoadSpeed);
}

/**
 * Speed left under a load.
 *
 *   ω = ω₀ ( v − T/T_s )
 *
 * @param load  T, N·m, not negative; the other inputs as for `momentAtSpeed`
 * @returns ω, rad/s; negative where the load runs the actuator backwards
 * @throws DomainError  outside these ranges
 * Source: as `momentAtSpeed`.
 */
export function speedAtLoad(drive: Line & { readonly load: number }): number {
  requireLine(drive);
  requireNotNegative('load', drive.load, 'N·m');
  return drive.noLoadSpeed * ((drive.voltageRatio ?? 1) - drive.load / drive.stallMoment);
}

/**
 * Largest power that the line gives, at half the no-load speed: P = v² T_s ω₀ / 4, W.
 *
 * @throws DomainError  as `momentAtSpeed`
 * Source: largest value of T ω on the line.
 */
export function actuatorPower(drive: Line): number {
  requireLine(drive);
  return ((drive.voltageRatio ?? 1) ** 2 * drive.stallMoment * drive.noLoadSpeed) / 4;
}

const line = {
  stallMoment: {
    symbol: 'T_s',
    unit: 'N·m',
    slideUnit: 'N',
    meaning: 'stall moment of the actuator at its rated voltage',
  },
  noLoadSpeed: {
    symbol: String.raw`\omega_0`,
    unit: 'rad/s',
    slideUnit: 'm/s',
    meaning: 'no-load speed of the actuator at its rated voltage',
  },
  voltageRatio: { symbol: 'v', unit: '1', meaning: 'supply over rated voltage', default: 1 },
} as const;
const speed = (meaning: string) =>
  ({ symbol: String.raw`\omega`, unit: 'rad/s', slideUnit: 'm/s', meaning }) as const;
const moment = (meaning: string) => ({ symbol: 'T', unit: 'N·m', slideUnit: 'N', meaning }) as const;
const FITZGERALD = 'Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed. 2003, ch. 7 (V = I R + K ω)';

export const actuatorLineCalculations: readonly Calculation[] = [
  calculation({
    id: 'actuator.moment-at-speed',
    title: 'Moment of the actuator at a speed',
    equation: String.raw`T = T_s \left( v - \frac{\omega}{\omega_0} \right)`,
    inputs: { ...line, speed: speed('speed') },
    outputs: { moment: moment('moment left at that speed') },
    validity:
      'Direct-current drive without current limit, gear friction within the two end points; the voltage is that at the plug under load.',
    source: FITZGERALD,
    compute: (inputs) => ({ moment: momentAtSpeed(inputs) }),
    example: { stallMoment: 1.4, noLoadSpeed: 7, voltageRatio: 0.93, speed: 3 },
    related: ['actuator.speed-at-load', 'actuator.arm-moving-moment', 'motor.at-speed'],
  }),
  calculation({
    id: 'actuator.speed-at-load',
    title: 'Speed of the actuator under a load',
    equation: String.raw`\omega = \omega_0 \left( v - \frac{T}{T_s} \right)`,
    inputs: { ...line, load: moment('load') },
    outputs: { speed: speed('speed left under that load') },
    validity:
      'Direct-current drive without current limit; negative where the load runs the actuator backwards.',
    source: FITZGERALD,
    compute: (inputs) => ({ speed: speedAtLoad(inputs) }),
    example: { stallMoment: 1.4, noLoadSpeed: 7, voltageRatio: 0.93, load: 0.59 },
    related: ['actuator.moment-at-speed', 'actuator.stroke-demand', 'actuator.stop-to-stop'],
  }),
  calculation({
    id: 'actuator.largest-power',
    title: 'Largest power of the actuator',
    equation: String.raw`P = \frac{v^2\, T_s\, \omega_0}{4}`,
    inputs: line,
    outputs: { power: { symbol: 'P', unit: 'W', meaning: 'largest power, at half the no-load speed' } },
    validity: 'On the straight line; more than the drive gives for longer than seconds.',
    source: 'Derived: largest value of T ω on the line',
    compute: (inputs) => ({ power: actuatorPower(inputs) }),
    example: { stallMoment: 1.4, noLoadSpeed: 7, voltageRatio: 1 },
    related: ['actuator.moment-at-speed', 'gear.best-ratio'],
  }),
];
