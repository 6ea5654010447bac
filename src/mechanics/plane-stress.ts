/** One point of a surface: from the stresses along two axes to principal and equivalent stresses. */
import { type Calculation, calculation } from './calculation.ts';
import { requireFinite } from './domain.ts';

/**
 * Principal and equivalent stresses of a plane state of stress.
 *
 *   σ₁,₂ = (σ_x + σ_y)/2 ± √( ((σ_x − σ_y)/2)² + τ² ),   τ_m = (σ₁ − σ₂)/2
 *   σ_v = √( σ_x² − σ_x σ_y + σ_y² + 3 τ² ),   σ_t = max( |σ₁|, |σ₂|, σ₁ − σ₂ )
 *
 * @param firstStress   σ_x, Pa, and secondStress σ_y, Pa; tension positive
 * @param shearStress   τ, Pa
 * @returns largest σ₁, least σ₂, shear τ_m in the plane, vonMises σ_v, tresca σ_t; Pa
 * @throws DomainError  for a value that is not a number
 * Source: Gere, Mechanics of Materials, ch. 8; Boresi & Schmidt, Advanced Mechanics of Materials, ch. 4.
 */
export function planeStress(point: {
  readonly firstStress: number;
  readonly secondStress: number;
  readonly shearStress: number;
}): { largest: number; least: number; shear: number; vonMises: number; tresca: number } {
  const { firstStress: x, secondStress: y, shearStress: xy } = point;
  requireFinite('first normal stress', x, 'Pa');
  requireFinite('second normal stress', y, 'Pa');
  requireFinite('shear stress', xy, 'Pa');
  const mean = (x + y) / 2;
  const radius = Math.hypot((x - y) / 2, xy);
  return {
    largest: mean + radius,
    least: mean - radius,
    shear: radius,
    vonMises: Math.hypot(mean, Math.sqrt(3) * radius),
    tresca: Math.max(Math.abs(mean) + radius, 2 * radius),
  };
}

const stress = (symbol: string, meaning: string) => ({ symbol, unit: 'Pa', meaning }) as const;

export const planeStressCalculations: readonly Calculation[] = [
  calculation({
    id: 'stress.plane',
    title: 'Principal and equivalent stresses at a surface',
    equation: String.raw`\begin{gathered} \sigma_1 = \frac{\sigma_x + \sigma_y}{2} + \tau_m, \quad \sigma_2 = \frac{\sigma_x + \sigma_y}{2} - \tau_m, \quad \tau_m = \sqrt{\left( \frac{\sigma_x - \sigma_y}{2} \right)^2 + \tau^2} \\ \sigma_v = \sqrt{\sigma_x^2 - \sigma_x \sigma_y + \sigma_y^2 + 3 \tau^2}, \quad \sigma_t = \max\left( \lvert \sigma_1 \rvert, \lvert \sigma_2 \rvert, \sigma_1 - \sigma_2 \right) \end{gathered}`,
    inputs: {
      firstStress: stress(String.raw`\sigma_x`, 'normal stress along the first axis'),
      secondStress: stress(String.raw`\sigma_y`, 'normal stress along the second axis'),
      shearStress: stress(String.raw`\tau`, 'shear stress'),
    },
    outputs: {
      largest: stress(String.raw`\sigma_1`, 'largest principal stress'),
      least: stress(String.raw`\sigma_2`, 'least principal stress'),
      shear: stress(String.raw`\tau_m`, 'largest shear stress in the plane'),
      vonMises: stress(String.raw`\sigma_v`, 'equivalent stress by von Mises'),
      tresca: stress(String.raw`\sigma_t`, 'equivalent stress by Tresca'),
    },
    validity: 'Free surface, no stress square to it.',
    source:
      'J. M. Gere, Mechanics of Materials, ch. 8; Boresi & Schmidt, Advanced Mechanics of Materials, ch. 4',
    compute: planeStress,
    example: { firstStress: 60e6, secondStress: -8e6, shearStress: 25e6 },
    related: ['shaft.stress', 'rotor.disc-stress'],
  }),
];
