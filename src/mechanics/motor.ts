/** The direct-current motor on its supply: its constants, what it draws and gives at a speed, and at stall. */
import { type Calculation, calculation } from './calculation.ts';
import { requireFinite, requireNotNegative, requirePositive } from './domain.ts';

/**
 * Torque constant from the speed constant on the data sheet.
 *
 *   K = 1/k_v      (K [N·m/A] = 60 / (2π k_v [rpm/V]) = 9.549 / k_v)
 *
 * It belongs to the current in the supply leads of a brushed or block-commutated motor. Where a maker's current is the peak
 * of a sine-driven phase, the constant is √3/2 of it, 8.27/k_v.
 *
 * @param speedConstant  k_v, rad/(s·V), more than 0
 * @returns K, N·m/A and V·s/rad alike
 * @throws DomainError  outside that range
 * Source: Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., ch. 7: the same constant for moment and voltage.
 */
export function torqueConstant({ speedConstant }: { readonly speedConstant: number }): number {
  requirePositive('speed constant of the motor', speedConstant, 'rad/(s·V)');
  return 1 / speedConstant;
}

/**
 * Torque constant and drag from a run without load.
 *
 *   K = (V − I₀ R) / ω₀,   T_d = K I₀
 *
 * @param voltage     V, V, more than 0
 * @param current     I₀, A, not negative
 * @param resistance  R, Ω, not negative
 * @param speed       ω₀, rad/s, more than 0
 * @returns torqueConstant K, N·m/A; dragMoment T_d, N·m, of bearings, brushes and iron at that speed
 * @throws DomainError  outside these ranges, or where the current alone would take the whole voltage
 * Source: Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., example 7.9.
 */
export function noLoadTest(run: {
  readonly voltage: number;
  readonly current: number;
  readonly resistance: number;
  readonly speed: number;
}): { torqueConstant: number; dragMoment: number } {
  requirePositive('voltage', run.voltage, 'V');
  requireNotNegative('current without load', run.current, 'A');
  requireNotNegative('resistance of the motor', run.resistance, 'Ω');
  requirePositive('speed without load', run.speed, 'rad/s');
  const induced = run.voltage - run.current * run.resistance;
  requirePositive('voltage left beside I₀ R', induced, 'V');
  const constant = induced / run.speed;
  return { torqueConstant: constant, dragMoment: constant * run.current };
}

interface Motor {
  /** V, V at the terminals, not negative. */
  readonly voltage: number;
  /** R, Ω, of windings, leads and bridge, more than 0. */
  readonly resistance: number;
  /** K, N·m/A, more than 0. */
  readonly torqueConstant: number;
}

function requireMotor(motor: Motor): void {
  requireNotNegative('voltage', motor.voltage, 'V');
  requirePositive('resistance of the motor', motor.resistance, 'Ω');
  requirePositive('torque constant', motor.torqueConstant, 'N·m/A');
}

/**
 * Current, moment, power and heat of the motor at a speed.
 *
 *   I = (V − K ω) / R,   T = K I − T_d,   P = T ω,   Q = I² R
 *
 * @param voltage         V, V, not negative
 * @param resistance      R, Ω, more than 0
 * @param torqueConstant  K, N·m/A, more than 0
 * @param speed           ω, rad/s, not negative
 * @param dragMoment      T_d, N·m, not negative; 0 if left out
 * @returns current I, A; moment T, N·m and power P, W at the shaft, both negative where the load drives the motor; heat
 *          Q, W in the windings
 * @throws DomainError  outside these ranges
 * Source: Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., ch. 7.
 */
export function motorAtSpeed(motor: Motor & { readonly speed: number; readonly dragMoment?: number }): {
  current: number;
  moment: number;
  power: number;
  heat: number;
} {
  requireMotor(motor);
  requireNotNegative('speed of the motor', motor.speed, 'rad/s');
  requireNotNegative('drag of the motor', motor.dragMoment ?? 0, 'N·m');
  const current = (motor.voltage - motor.torqueConstant * motor.speed) / motor.resistance;
  const moment = motor.torqueConstant * current - (motor.dragMoment ?? 0);
  return { current, moment, power: moment * motor.speed, heat: current ** 2 * motor.resistance };
}

/**
 * Motor held still on its supply: all of the power is heat.
 *
 *   I = V/R,   T = K V/R,   P = V²/R
 *
 * @returns current I, A; moment T, N·m; heat P, W
 * @throws DomainError  as `motorAtSpeed`
 * Source: `motorAtSpeed` at standstill.
 */
export function motorStall(motor: Motor): { current: number; moment: number; heat: number } {
  const { current, moment, heat } = motorAtSpeed({ ...motor, speed: 0 });
  return { current, moment, heat };
}

/**
 * Speed of the motor under a load: ω = (V − R (T + T_d)/K) / K, rad/s.
 *
 * @param moment      T, N·m at the shaft
 * @param dragMoment  T_d, N·m, not negative; 0 if left out
 * @returns current I = (T + T_d)/K, A; speed ω, rad/s, negative where the load overcomes the motor
 * @throws DomainError  outside these ranges
 * Source: as `motorAtSpeed`.
 */
export function motorAtLoad(motor: Motor & { readonly moment: number; readonly dragMoment?: number }): {
  current: number;
  speed: number;
} {
  requireMotor(motor);
  requireFinite('moment at the shaft', motor.moment, 'N·m');
  requireNotNegative('drag of the motor', motor.dragMoment ?? 0, 'N·m');
  const current = (motor.moment + (motor.dragMoment ?? 0)) / motor.torqueConstant;
  return { current, speed: (motor.voltage - motor.resistance * current) / motor.torqueConstant };
}

const constant = { symbol: 'K', unit: 'N·m/A', meaning: 'torque constant of the motor' } as const;
const motor = {
  voltage: { symbol: 'V', unit: 'V', meaning: 'voltage at the motor’s terminals' },
  resistance: { symbol: 'R', unit: 'Ω', meaning: 'resistance of windings, leads and bridge' },
  torqueConstant: constant,
} as const;
const drag = { symbol: 'T_d', unit: 'N·m', meaning: 'drag of the motor itself', default: 0 } as const;
const current = { symbol: 'I', unit: 'A', meaning: 'current' } as const;
const FITZGERALD = 'Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed. 2003, ch. 7';

export const motorCalculations: readonly Calculation[] = [
  calculation({
    id: 'motor.torque-constant',
    title: 'Torque constant from the speed constant',
    equation: String.raw`K = \frac{1}{k_v}`,
    inputs: {
      speedConstant: { symbol: 'k_v', unit: 'rad/(s·V)', meaning: 'speed constant of the motor' },
    },
    outputs: { torqueConstant: constant },
    validity:
      'Brushed or block-commutated motor, current in the supply leads: 9.549/k_v with k_v in rpm/V. For the peak current of a sine-driven phase it is 8.27/k_v.',
    source: FITZGERALD,
    compute: (inputs) => ({ torqueConstant: torqueConstant(inputs) }),
    example: { speedConstant: 94.2 },
    related: ['motor.no-load-test', 'rotor.runaway-speed'],
  }),
  calculation({
    id: 'motor.no-load-test',
    title: 'Torque constant and drag from a run without load',
    equation: String.raw`K = \frac{V - I_0 R}{\omega_0}, \qquad T_d = K I_0`,
    inputs: {
      voltage: motor.voltage,
      current: { symbol: 'I_0', unit: 'A', meaning: 'current without load' },
      resistance: motor.resistance,
      speed: { symbol: String.raw`\omega_0`, unit: 'rad/s', meaning: 'speed without load' },
    },
    outputs: {
      torqueConstant: constant,
      dragMoment: { symbol: 'T_d', unit: 'N·m', meaning: 'drag of the motor itself at that speed' },
    },
    validity: 'Steady run, resistance measured at the temperature of the run.',
    source: `${FITZGERALD}, example 7.9`,
    compute: noLoadTest,
    example: { voltage: 11.1, current: 0.6, resistance: 0.12, speed: 1035 },
    related: ['motor.torque-constant', 'motor.at-speed'],
  }),
  calculation({
    id: 'motor.at-speed',
    title: 'Motor at a speed',
    equation: String.raw`I = \frac{V - K\omega}{R}, \qquad T = K I - T_d, \qquad P = T\omega, \qquad Q = I^2 R`,
    inputs: {
      ...motor,
      speed: { symbol: String.raw`\omega`, unit: 'rad/s', meaning: 'speed of the motor' },
      dragMoment: drag,
    },
    outputs: {
      current,
      moment: { symbol: 'T', unit: 'N·m', meaning: 'moment at the shaft' },
      power: { symbol: 'P', unit: 'W', meaning: 'power at the shaft' },
      heat: { symbol: 'Q', unit: 'W', meaning: 'heat in the windings' },
    },
    validity: 'No current limit; negative moment and power where the load drives the motor.',
    source: FITZGERALD,
    compute: motorAtSpeed,
    example: { voltage: 11.1, resistance: 0.12, torqueConstant: 0.0106, speed: 890, dragMoment: 0.0064 },
    related: ['motor.at-load', 'motor.stall', 'actuator.moment-at-speed'],
  }),
  calculation({
    id: 'motor.at-load',
    title: 'Motor under a load',
    equation: String.raw`I = \frac{T + T_d}{K}, \qquad \omega = \frac{V - R I}{K}`,
    inputs: {
      ...motor,
      moment: { symbol: 'T', unit: 'N·m', meaning: 'moment at the shaft' },
      dragMoment: drag,
    },
    outputs: {
      current,
      speed: { symbol: String.raw`\omega`, unit: 'rad/s', meaning: 'speed of the motor' },
    },
    validity: 'No current limit; a negative speed says that the load overcomes the motor.',
    source: FITZGERALD,
    compute: motorAtLoad,
    example: { voltage: 11.1, resistance: 0.12, torqueConstant: 0.0106, moment: 0.03, dragMoment: 0.0064 },
    related: ['motor.at-speed', 'motor.stall'],
  }),
  calculation({
    id: 'motor.stall',
    title: 'Motor held still',
    equation: String.raw`I = \frac{V}{R}, \qquad T = \frac{K V}{R}, \qquad Q = \frac{V^2}{R}`,
    inputs: motor,
    outputs: {
      current: { symbol: 'I', unit: 'A', meaning: 'stall current' },
      moment: { symbol: 'T', unit: 'N·m', meaning: 'stall moment' },
      heat: { symbol: 'Q', unit: 'W', meaning: 'heat in the windings' },
    },
    validity:
      'No current limit, cold windings, a supply that holds its voltage; seconds of it burn a small motor.',
    source: FITZGERALD,
    compute: motorStall,
    example: { voltage: 7.4, resistance: 2.1, torqueConstant: 0.0042 },
    related: ['motor.at-speed', 'pack.sag', 'fuse.shares'],
  }),
];
