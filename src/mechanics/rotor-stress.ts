/** The peak stress in a spinning rotor: at the bore where there is one, at the centre where there is none. */
import { type Calculation, calculation } from './calculation.ts';
import { requireBetween, requireNotNegative, requirePositive } from './domain.ts';
import { type RotorSections, requireSections, sectionSymbols } from './rotor.ts';

/**
 * Peak hoop stress over the sections of a rotor, each taken as a uniform disc or ring that spins on its own.
 *
 *   bored:  σ = ρ Ω²/4 [ (3 + ν) b² + (1 − ν) a² ]   at the bore
 *   solid:  σ = ρ Ω²/8 (3 + ν) b²                    at the centre
 *
 * with b = D_j/2 and a = d_j/2. However small, a bore doubles the stress of the solid disc: the formula does not pass
 * smoothly from one to the other, and neither does the rotor.
 *
 * A section that is thick against its radius comes to no more than the long cylinder, ν replaced by ν/(1 − ν): for
 * ν = 0.3 another 4 %.
 *
 * Left out: keyways, bolt holes and set screws (local stress up to three times as high), interference of a press fit,
 * the pull of a section on its neighbour at a step, magnets, glue and prints.
 *
 * @param outerDiameters  D_j, m, more than 0
 * @param boreDiameters   d_j, m, from 0 (solid) to less than D_j
 * @param density         ρ, kg/m³, more than 0
 * @param poissonRatio    ν, from 0 to 0.5
 * @param speed           Ω, rad/s, not negative; the speed at which the rotor is judged
 * @returns σ, Pa, the largest over the sections
 * @throws DomainError  outside these ranges, or for lists of unequal length
 * Source: Hearn, Mechanics of Materials 2, ch. 4; Malkin & Guo, Grinding Technology, eq. (2-10), the same algebra.
 */
export function rotorPeakStress(
  rotor: RotorSections & {
    readonly density: number;
    readonly poissonRatio: number;
    readonly speed: number;
  },
): number {
  const { outerDiameters, boreDiameters, density, poissonRatio, speed } = rotor;
  requireSections(rotor);
  requirePositive('density of the rotor', density, 'kg/m³');
  requireBetween('Poisson ratio', poissonRatio, 0, 0.5, '1');
  requireNotNegative('rotor speed', speed, 'rad/s');
  const stresses = outerDiameters.map((outer, j) =>
    discPeakStress(outer / 2, (boreDiameters[j] ?? 0) / 2, density, poissonRatio, speed),
  );
  return Math.max(...stresses);
}

function discPeakStress(b: number, a: number, density: number, nu: number, speed: number): number {
  const solid = ((3 + nu) / 8) * density * speed ** 2 * b ** 2;
  return a === 0 ? solid : 2 * solid + ((1 - nu) / 4) * density * speed ** 2 * a ** 2;
}

export const rotorStressCalculations: readonly Calculation[] = [
  calculation({
    id: 'rotor.peak-stress',
    title: 'Peak stress in the rotor',
    equation: String.raw`\sigma = \max_j \begin{cases} \dfrac{\rho\Omega^2}{16} \left[ (3+\nu) D_j^2 + (1-\nu) d_j^2 \right] & d_j > 0 \\[1ex] \dfrac{\rho\Omega^2}{32} (3+\nu) D_j^2 & d_j = 0 \end{cases}`,
    inputs: {
      ...sectionSymbols,
      density: { symbol: String.raw`\rho`, unit: 'kg/m³', meaning: 'density of the rotor’s material' },
      poissonRatio: { symbol: String.raw`\nu`, unit: '1', meaning: 'Poisson ratio of the rotor’s material' },
      speed: { symbol: String.raw`\Omega`, unit: 'rad/s', meaning: 'speed at which the rotor is judged' },
    },
    outputs: { stress: { symbol: String.raw`\sigma`, unit: 'Pa', meaning: 'peak hoop stress in the rotor' } },
    validity:
      'Elastic, thin sections (a thick one has up to 4 % more at ν = 0.3), each as a uniform disc of its own; keyways, bolt holes, press fits and the pull between sections left out.',
    source:
      'E. J. Hearn, Mechanics of Materials 2, ch. 4; S. Malkin, C. Guo, Grinding Technology, eq. (2-10)',
    compute: (inputs) => ({ stress: rotorPeakStress(inputs) }),
    example: {
      outerDiameters: [0.09, 0.03],
      boreDiameters: [0.07, 0.005],
      density: 8490,
      poissonRatio: 0.31,
      speed: 1424,
    },
    related: ['rotor.judged-speed', 'rotor.rim-speed'],
  }),
];
