/** How long the rotor takes to its speed, and what that takes out of the pack. */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireNotNegative, requirePositive } from './domain.ts';

interface SpinUp {
  /** I, kg·m², more than 0. */
  readonly inertia: number;
  /** Ω₁, rad/s, not negative; 0 where left out. */
  readonly fromSpeed?: number;
  /** Ω₂, rad/s, more than Ω₁. */
  readonly toSpeed: number;
}

function requireSpinUp({ inertia, fromSpeed = 0, toSpeed }: SpinUp): void {
  requirePositive('rotor inertia', inertia, 'kg·m²');
  requireNotNegative('speed at the start', fromSpeed, 'rad/s');
  requirePositive('speed to be reached', toSpeed, 'rad/s');
  if (toSpeed <= fromSpeed) {
    throw new DomainError(
      'speed to be reached',
      toSpeed,
      'it has to be more than the one at the start',
      'rad/s',
    );
  }
}

/**
 * Spin-up under a constant moment.
 *
 *   t = I (Ω₂ − Ω₁) / (T − T_d),   W = T t (Ω₁ + Ω₂)/2
 *
 * @param inertia  I, kg·m²; fromSpeed Ω₁ (0 if left out) and toSpeed Ω₂, rad/s
 * @param moment   T, N·m, more than the drag
 * @param drag     T_d, N·m, not negative; 0 if left out
 * @returns time t, s; work W, J, that the motor does at its shaft
 * @throws DomainError  outside these ranges, or where the drag leaves nothing
 * Source: OpenStax, University Physics 1, sections 10.7 and 10.8.
 */
export function spinUp(rotor: SpinUp & { readonly moment: number; readonly drag?: number }): {
  time: number;
  work: number;
} {
  requireSpinUp(rotor);
  const { inertia, fromSpeed = 0, toSpeed, moment, drag = 0 } = rotor;
  requireNotNegative('drag', drag, 'N·m');
  requirePositive('moment beyond the drag', moment - drag, 'N·m');
  const time = (inertia * (toSpeed - fromSpeed)) / (moment - drag);
  return { time, work: (moment * time * (fromSpeed + toSpeed)) / 2 };
}

/**
 * Spin-up under a constant power: t = I (Ω₂² − Ω₁²)/(2 P), s.
 *
 * @param power  P, W at the shaft beyond the losses, more than 0; the rest as `spinUp`
 * @throws DomainError  outside these ranges
 * Source: work and kinetic energy, OpenStax, University Physics 1, section 10.8.
 */
export function spinUpAtPower(rotor: SpinUp & { readonly power: number }): number {
  requireSpinUp(rotor);
  requirePositive('power', rotor.power, 'W');
  const { inertia, fromSpeed = 0, toSpeed, power } = rotor;
  return (inertia * (toSpeed - fromSpeed) * (toSpeed + fromSpeed)) / (2 * power);
}

/**
 * Spin-up by a direct-current motor: first at its current limit, then on its line.
 *
 *   limit:  Ω ≤ Ω_c = (V − I_l R)/K,   t = J (Ω − Ω₁)/(K I_l − T_d)
 *   line:   t = τ ln( (Ω_∞ − Ω_a)/(Ω_∞ − Ω₂) ),   τ = J R/K²,   Ω_∞ = V/K − T_d R/K²
 *   energy: ∫ (K I Ω + I² R) dt
 *
 * @param inertia         J, kg·m²; fromSpeed Ω₁ (0 if left out) and toSpeed Ω₂, rad/s
 * @param voltage         V, V, more than 0
 * @param resistance      R, Ω, more than 0
 * @param torqueConstant  K, N·m/A, more than 0
 * @param currentLimit    I_l, A, more than 0
 * @param drag            T_d, N·m, taken as constant, not negative; 0 if left out
 * @returns time t, s; energy E, J, out of the supply through a controller without loss
 * @throws DomainError  outside these ranges, and where the motor never gets there: the limit does not beat the drag, or
 *                      the speed is not below Ω_∞
 * Source: J Ω̇ = K (V − K Ω)/R − T_d, integrated; Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., ch. 7 (motor).
 */
export function spinUpByMotor(
  rotor: SpinUp & {
    readonly voltage: number;
    readonly resistance: number;
    readonly torqueConstant: number;
    readonly currentLimit: number;
    readonly drag?: number;
  },
): { time: number; energy: number } {
  requireSpinUp(rotor);
  const { inertia, fromSpeed = 0, toSpeed, voltage, resistance, torqueConstant, currentLimit } = rotor;
  const { drag = 0 } = rotor;
  requirePositive('voltage', voltage, 'V');
  requirePositive('resistance of the motor', resistance, 'Ω');
  requirePositive('torque constant', torqueConstant, 'N·m/A');
  requirePositive('current limit', currentLimit, 'A');
  requireNotNegative('drag', drag, 'N·m');
  requirePositive('moment at the current limit beyond the drag', torqueConstant * currentLimit - drag, 'N·m');
  const endSpeed = voltage / torqueConstant - (drag * resistance) / torqueConstant ** 2;
  if (toSpeed >= endSpeed) {
    const most = Number(endSpeed.toPrecision(4));
    throw new DomainError(
      'speed to be reached',
      toSpeed,
      `the motor comes to ${most} rad/s in the end`,
      'rad/s',
    );
  }
  const corner = (voltage - currentLimit * resistance) / torqueConstant;
  const change = Math.min(Math.max(corner, fromSpeed), toSpeed);
  const limited = (inertia * (change - fromSpeed)) / (torqueConstant * currentLimit - drag);
  const limitedEnergy =
    limited * (torqueConstant * currentLimit * ((fromSpeed + change) / 2) + currentLimit ** 2 * resistance);
  const onLine =
    ((inertia * resistance) / torqueConstant ** 2) * Math.log((endSpeed - change) / (endSpeed - toSpeed));
  // On the line the whole supply voltage lies on the motor, and ∫ K I dt = J ΔΩ + T_d t.
  const lineEnergy = (voltage * (inertia * (toSpeed - change) + drag * onLine)) / torqueConstant;
  return { time: limited + onLine, energy: limitedEnergy + lineEnergy };
}

const inertia = { symbol: 'I', unit: 'kg·m²', meaning: 'inertia of the rotor about its spin axis' } as const;
const fromSpeed = {
  symbol: String.raw`\Omega_1`,
  unit: 'rad/s',
  meaning: 'speed at the start',
  default: 0,
} as const;
const toSpeed = { symbol: String.raw`\Omega_2`, unit: 'rad/s', meaning: 'speed to be reached' } as const;
const time = { symbol: 't', unit: 's', meaning: 'time of the spin-up' } as const;
const drag = { symbol: 'T_d', unit: 'N·m', meaning: 'drag of air and bearings', default: 0 } as const;

export const spinUpCalculations: readonly Calculation[] = [
  calculation({
    id: 'rotor.spin-up',
    title: 'Spin-up under a constant moment',
    equation: String.raw`t = \frac{I \left( \Omega_2 - \Omega_1 \right)}{T - T_d}, \qquad W = T\, t\, \frac{\Omega_1 + \Omega_2}{2}`,
    inputs: { inertia, fromSpeed, toSpeed, moment: { symbol: 'T', unit: 'N·m', meaning: 'moment' }, drag },
    outputs: { time, work: { symbol: 'W', unit: 'J', meaning: 'work at the shaft' } },
    validity: 'Moment and drag constant; a motor at its current limit comes near it.',
    source: 'OpenStax, University Physics Volume 1, sections 10.7 and 10.8',
    compute: spinUp,
    example: { inertia: 5e-4, fromSpeed: 0, toSpeed: 890, moment: 0.05, drag: 0.004 },
    related: ['rotor.spin-up-at-power', 'rotor.spin-up-by-motor', 'rotor.coast-down-time'],
  }),
  calculation({
    id: 'rotor.spin-up-at-power',
    title: 'Spin-up under a constant power',
    equation: String.raw`t = \frac{I \left( \Omega_2^2 - \Omega_1^2 \right)}{2 P}`,
    inputs: {
      inertia,
      fromSpeed,
      toSpeed,
      power: { symbol: 'P', unit: 'W', meaning: 'power at the shaft beyond the losses' },
    },
    outputs: { time },
    validity: 'Power constant from the start, which asks for a large moment at low speed: the least time.',
    source: 'OpenStax, University Physics Volume 1, section 10.8 (work and kinetic energy)',
    compute: (inputs) => ({ time: spinUpAtPower(inputs) }),
    example: { inertia: 5e-4, fromSpeed: 0, toSpeed: 890, power: 30 },
    related: ['rotor.spin-up', 'rotor.energy'],
  }),
  calculation({
    id: 'rotor.spin-up-by-motor',
    title: 'Spin-up by a direct-current motor',
    equation: String.raw`\begin{gathered} t = \frac{I \left( \Omega_a - \Omega_1 \right)}{K I_l - T_d} + \frac{I R}{K^2} \ln\frac{\Omega_\infty - \Omega_a}{\Omega_\infty - \Omega_2}, \qquad E = \int \left( K i\, \Omega + i^2 R \right) \mathrm{d}t \\ \Omega_a = \frac{V - I_l R}{K} \text{ within } \left[ \Omega_1, \Omega_2 \right], \qquad \Omega_\infty = \frac{V}{K} - \frac{T_d R}{K^2} \end{gathered}`,
    inputs: {
      inertia,
      fromSpeed,
      toSpeed,
      voltage: { symbol: 'V', unit: 'V', meaning: 'voltage of the supply under load' },
      resistance: { symbol: 'R', unit: 'Ω', meaning: 'resistance of windings, leads and bridge' },
      torqueConstant: { symbol: 'K', unit: 'N·m/A', meaning: 'torque constant of the motor' },
      currentLimit: { symbol: 'I_l', unit: 'A', meaning: 'current limit of the motor’s controller' },
      drag,
    },
    outputs: { time, energy: { symbol: 'E', unit: 'J', meaning: 'energy out of the supply' } },
    validity:
      'Drag constant, supply stiff, controller without loss of its own; refused where the motor never reaches the speed.',
    source:
      'Derived: J Ω̇ = K (V − K Ω)/R − T_d, integrated; motor as in Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed. 2003, ch. 7',
    compute: spinUpByMotor,
    example: {
      inertia: 5e-4,
      fromSpeed: 0,
      toSpeed: 890,
      voltage: 11.1,
      resistance: 0.12,
      torqueConstant: 0.0106,
      currentLimit: 25,
      drag: 0.004,
    },
    related: ['rotor.spin-up', 'motor.at-speed', 'pack.energy'],
  }),
];
