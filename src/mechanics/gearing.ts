/** A gear between motor and load: what the motor feels of the load, and the ratio that speeds the load up hardest. */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireFinite, requireNotNegative, requirePositive } from './domain.ts';

function requireEfficiency(efficiency: number): void {
  requireFinite('efficiency of the gear', efficiency);
  if (efficiency <= 0 || efficiency > 1) {
    throw new DomainError(
      'efficiency of the gear',
      efficiency,
      'it has to be more than 0 and no more than 1',
    );
  }
}

/**
 * Inertia and moment of a load as the motor feels them.
 *
 *   J = J_m + J_l / i²,   T = T_l / (i η)
 *
 * @param motorInertia  J_m, kg·m², of the motor and what turns with it, not negative
 * @param loadInertia   J_l, kg·m², not negative
 * @param loadMoment    T_l, N·m, that the motor drives against, not negative
 * @param ratio         i, motor speed over load speed, more than 0
 * @param efficiency    η, more than 0, up to 1; 1 if left out
 * @returns inertia J, kg·m², and moment T, N·m, at the motor
 * @throws DomainError  outside these ranges
 * Source: J. B. Gupta, Elements of Electric Drives, example 3 (some books put η on the inertia as well).
 */
export function gearReflection({
  motorInertia,
  loadInertia,
  loadMoment,
  ratio,
  efficiency = 1,
}: {
  readonly motorInertia: number;
  readonly loadInertia: number;
  readonly loadMoment: number;
  readonly ratio: number;
  readonly efficiency?: number;
}): { inertia: number; moment: number } {
  requireNotNegative('inertia of the motor', motorInertia, 'kg·m²');
  requireNotNegative('inertia of the load', loadInertia, 'kg·m²');
  requireNotNegative('moment of the load', loadMoment, 'N·m');
  requirePositive('gear ratio', ratio, '1');
  requireEfficiency(efficiency);
  return { inertia: motorInertia + loadInertia / ratio ** 2, moment: loadMoment / (ratio * efficiency) };
}

/**
 * Gear ratio that accelerates a load hardest with a given motor moment, and that acceleration.
 *
 *   i = T_l/T_m + √( (T_l/T_m)² + J_l/J_m ),   α = (T_m i − T_l) / (J_m i² + J_l)
 *
 * Without a load moment the ratio is √(J_l/J_m): motor and load then share the moment evenly.
 *
 * @param motorMoment   T_m, N·m, more than 0
 * @param motorInertia  J_m, kg·m², more than 0
 * @param loadInertia   J_l, kg·m², more than 0
 * @param loadMoment    T_l, N·m, not negative; 0 if left out
 * @returns ratio i; acceleration α, rad/s² of the load
 * @throws DomainError  outside these ranges
 * Source: Khurmi & Gupta, Theory of Machines, 14th ed., example 3.14, with a load moment added: dα/di = 0.
 */
export function bestRatio({
  motorMoment,
  motorInertia,
  loadInertia,
  loadMoment = 0,
}: {
  readonly motorMoment: number;
  readonly motorInertia: number;
  readonly loadInertia: number;
  readonly loadMoment?: number;
}): { ratio: number; acceleration: number } {
  requirePositive('moment of the motor', motorMoment, 'N·m');
  requirePositive('inertia of the motor', motorInertia, 'kg·m²');
  requirePositive('inertia of the load', loadInertia, 'kg·m²');
  requireNotNegative('moment of the load', loadMoment, 'N·m');
  const share = loadMoment / motorMoment;
  const ratio = share + Math.sqrt(share ** 2 + loadInertia / motorInertia);
  return {
    ratio,
    acceleration: (motorMoment * ratio - loadMoment) / (motorInertia * ratio ** 2 + loadInertia),
  };
}

const motorInertia = { symbol: 'J_m', unit: 'kg·m²', meaning: 'inertia of the motor' } as const;
const loadInertia = { symbol: 'J_l', unit: 'kg·m²', meaning: 'inertia of the load' } as const;
const loadMoment = { symbol: 'T_l', unit: 'N·m', meaning: 'moment of the load' } as const;

export const gearingCalculations: readonly Calculation[] = [
  calculation({
    id: 'gear.reflection',
    title: 'Load as the motor feels it',
    equation: String.raw`J = J_m + \frac{J_l}{i^2}, \qquad T = \frac{T_l}{i\, \eta}`,
    inputs: {
      motorInertia,
      loadInertia,
      loadMoment,
      ratio: { symbol: 'i', unit: '1', meaning: 'gear ratio, motor speed over load speed' },
      efficiency: {
        symbol: String.raw`\eta`,
        unit: '1',
        meaning: 'efficiency of the gear',
        default: 1,
      },
    },
    outputs: {
      inertia: { symbol: 'J', unit: 'kg·m²', meaning: 'inertia at the motor' },
      moment: { symbol: 'T', unit: 'N·m', meaning: 'moment at the motor' },
    },
    validity:
      'Motor drives the load; when the load drives the motor the efficiency stands on the other side.',
    source: 'J. B. Gupta, Elements of Electric Drives, examples 3 and 4',
    compute: gearReflection,
    example: { motorInertia: 2e-7, loadInertia: 8.2e-3, loadMoment: 0.59, ratio: 200, efficiency: 0.7 },
    related: ['gear.best-ratio', 'actuator.arm-moving-moment'],
  }),
  calculation({
    id: 'gear.best-ratio',
    title: 'Gear ratio for the hardest acceleration',
    equation: String.raw`i = \frac{T_l}{T_m} + \sqrt{\left( \frac{T_l}{T_m} \right)^2 + \frac{J_l}{J_m}}, \qquad \alpha = \frac{T_m i - T_l}{J_m i^2 + J_l}`,
    inputs: {
      motorMoment: { symbol: 'T_m', unit: 'N·m', meaning: 'moment of the motor' },
      motorInertia,
      loadInertia,
      loadMoment: { ...loadMoment, default: 0 },
    },
    outputs: {
      ratio: { symbol: 'i', unit: '1', meaning: 'best gear ratio, motor speed over load speed' },
      acceleration: { symbol: String.raw`\alpha`, unit: 'rad/s²', meaning: 'acceleration of the load' },
    },
    validity:
      'Constant motor moment, gear without loss; a ratio this high may ask for more speed than the motor has.',
    source: 'Khurmi & Gupta, Theory of Machines, 14th ed., example 3.14; derived: dα/di = 0',
    compute: bestRatio,
    example: { motorMoment: 0.01, motorInertia: 2e-7, loadInertia: 8.2e-3, loadMoment: 0.59 },
    related: ['gear.reflection', 'actuator.largest-power'],
  }),
];
