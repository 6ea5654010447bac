/** How fast the vehicle falls with nothing moving: the yardstick for the rotor, the ballast drive and the loop. */
import { type Calculation, calculation } from './calculation.ts';
import { requirePositive } from './domain.ts';
import { standardGravity } from './gravity.ts';

/**
 * Toppling stiffness and toppling time constant of the vehicle without a rotor.
 *
 *   K = g M,   τ₀ = √( I / (g M) ),   from  I φ̈ = g M φ
 *
 * @param firstMoment  M, kg·m, about the ground line, more than 0
 * @param rollInertia  I, kg·m², about the same line, more than 0
 * @returns stiffness K, N·m per radian of lean; timeConstant τ₀, s: a small lean grows e-fold in that time
 * @throws DomainError  where the first moment is not positive: such a vehicle hangs and nothing topples
 * Source: equation of moments about the ground line, lean small (sin φ ≈ φ: 1 % at 14°).
 */
export function toppling(vehicle: { readonly firstMoment: number; readonly rollInertia: number }): {
  stiffness: number;
  timeConstant: number;
} {
  requirePositive('first moment about the ground line', vehicle.firstMoment, 'kg·m');
  requirePositive('roll inertia', vehicle.rollInertia, 'kg·m²');
  const stiffness = standardGravity * vehicle.firstMoment;
  return { stiffness, timeConstant: Math.sqrt(vehicle.rollInertia / stiffness) };
}

export const topplingCalculations: readonly Calculation[] = [
  calculation({
    id: 'mass.toppling',
    title: 'Toppling stiffness and time constant',
    equation: String.raw`K = g M, \qquad \tau_0 = \sqrt{\frac{I}{g M}}`,
    inputs: {
      firstMoment: { symbol: 'M', unit: 'kg·m', meaning: 'first moment about the ground line' },
      rollInertia: { symbol: 'I', unit: 'kg·m²', meaning: 'roll inertia about the roll axis' },
    },
    outputs: {
      stiffness: { symbol: 'K', unit: 'N·m/rad', meaning: 'toppling stiffness' },
      timeConstant: {
        symbol: String.raw`\tau_0`,
        unit: 's',
        meaning: 'toppling time constant without a rotor',
      },
    },
    validity:
      'Rotor stopped or locked in its gimbal, ballast still, wheels that neither slip nor steer, lean small (1 % at 14°).',
    source: 'Derived: equation of moments about the ground line, I φ̈ = g M sin φ, for small lean',
    compute: toppling,
    example: { firstMoment: 0.138475, rollInertia: 0.0264 },
    related: ['mass.first-moment', 'mass.roll-inertia', 'gyro.time-gain'],
  }),
];
