/** Round shafts, solid or bored, in bending and torsion: stresses, equivalent stresses, twist, and the diameter for a limit. */
import { type Calculation, calculation } from './calculation.ts';
import { requireFinite, requireNotNegative, requirePositive } from './domain.ts';
import { requireHollow, secondMoment } from './round-section.ts';

interface Section {
  /** D, m, more than 0. */
  readonly diameter: number;
  /** d, m, from 0 (solid, the default) to less than D. */
  readonly bore?: number;
}

/** Section modulus in bending W = 2J/D, m³; in torsion twice as much. */
function modulus({ diameter, bore = 0 }: Section): number {
  requireHollow('shaft', diameter, bore);
  return (2 * secondMoment(diameter, bore)) / diameter;
}

/**
 * Shear stress of a shaft in torsion, outside and at the bore.
 *
 *   τ = 16 T D / ( π (D⁴ − d⁴) ),   τ_i = τ d/D
 *
 * @param moment    T, N·m
 * @param diameter  D, m; bore d, m (0 if left out)
 * @returns outerStress τ and innerStress τ_i, Pa
 * @throws DomainError  for a shaft without material
 * Source: Beer & Johnston, Mechanics of Materials, ch. 3.
 */
export function shaftTorsion(shaft: Section & { readonly moment: number }): {
  outerStress: number;
  innerStress: number;
} {
  requireFinite('torsional moment', shaft.moment, 'N·m');
  const outerStress = shaft.moment / (2 * modulus(shaft));
  return { outerStress, innerStress: (outerStress * (shaft.bore ?? 0)) / shaft.diameter };
}

/**
 * Twist of a shaft: ψ = T l / (2 G J), rad, J = π (D⁴ − d⁴)/64.
 *
 * @param moment        T, N·m
 * @param diameter      D, m; bore d, m (0 if left out)
 * @param length        l, m, not negative
 * @param shearModulus  G, Pa, more than 0
 * @throws DomainError  outside these ranges
 * Source: Beer & Johnston, Mechanics of Materials, ch. 3.
 */
export function shaftTwist(
  shaft: Section & { readonly moment: number; readonly length: number; readonly shearModulus: number },
): number {
  requireFinite('torsional moment', shaft.moment, 'N·m');
  requireHollow('shaft', shaft.diameter, shaft.bore ?? 0);
  requireNotNegative('length of the shaft', shaft.length, 'm');
  requirePositive('shear modulus', shaft.shearModulus, 'Pa');
  return (
    (shaft.moment * shaft.length) / (2 * shaft.shearModulus * secondMoment(shaft.diameter, shaft.bore ?? 0))
  );
}

/**
 * Stresses of a shaft in bending, torsion and tension together, at the outside.
 *
 *   σ = 32 M D/(π(D⁴ − d⁴)) + 4 F/(π(D² − d²)),   τ = 16 T D/(π(D⁴ − d⁴))
 *   σ_v = √(σ² + 3 τ²)  (von Mises),   σ_t = √(σ² + 4 τ²)  (Tresca)
 *
 * @param bendingMoment  M, N·m, not negative
 * @param torsion        T, N·m
 * @param axialForce     F, N, tension positive; 0 if left out
 * @param diameter       D, m; bore d, m (0 if left out)
 * @returns normalStress σ, of the side where bending and pull or push add; shearStress τ; vonMises σ_v; tresca σ_t; Pa
 * @throws DomainError  outside these ranges
 * Source: Boresi & Schmidt, Advanced Mechanics of Materials, ch. 4; Jindal, Machine Design, ch. 15.
 */
export function shaftStress(
  shaft: Section & { readonly bendingMoment: number; readonly torsion: number; readonly axialForce?: number },
): { normalStress: number; shearStress: number; vonMises: number; tresca: number } {
  requireNotNegative('bending moment', shaft.bendingMoment, 'N·m');
  const { outerStress: shearStress } = shaftTorsion({ ...shaft, moment: shaft.torsion });
  const { diameter, bore = 0, axialForce = 0 } = shaft;
  requireFinite('force along the shaft', axialForce, 'N');
  const area = (Math.PI * (diameter - bore) * (diameter + bore)) / 4;
  const normalStress = shaft.bendingMoment / modulus(shaft) + Math.abs(axialForce) / area;
  return {
    normalStress,
    shearStress,
    vonMises: Math.hypot(normalStress, Math.sqrt(3) * shearStress),
    tresca: Math.hypot(normalStress, 2 * shearStress),
  };
}

/**
 * Diameter of a solid shaft for a permitted shear stress.
 *
 *   d = [ 16/(π τ) √( (k_b M)² + (k_t T)² ) ]^(1/3)
 *
 * @param bendingMoment  M, N·m, and torsion T, N·m, not negative, not both 0
 * @param shearStress    τ, Pa, permitted, more than 0
 * @param bendingFactor  k_b and torsionFactor k_t for shock and fatigue, more than 0; 1 if left out
 * @returns d, m
 * @throws DomainError  outside these ranges
 * Source: Jindal, Machine Design, ch. 15 (largest shear stress).
 */
export function shaftDiameter({
  bendingMoment,
  torsion,
  shearStress,
  bendingFactor = 1,
  torsionFactor = 1,
}: {
  readonly bendingMoment: number;
  readonly torsion: number;
  readonly shearStress: number;
  readonly bendingFactor?: number;
  readonly torsionFactor?: number;
}): number {
  requireNotNegative('bending moment', bendingMoment, 'N·m');
  requireNotNegative('torsional moment', torsion, 'N·m');
  requirePositive('permitted shear stress', shearStress, 'Pa');
  requirePositive('factor on bending', bendingFactor, '1');
  requirePositive('factor on torsion', torsionFactor, '1');
  const equivalent = Math.hypot(bendingFactor * bendingMoment, torsionFactor * torsion);
  requirePositive('equivalent moment', equivalent, 'N·m');
  return Math.cbrt((16 * equivalent) / (Math.PI * shearStress));
}

const section = {
  diameter: { symbol: 'D', unit: 'm', meaning: 'diameter of the shaft' },
  bore: { symbol: 'd', unit: 'm', meaning: 'bore of the shaft, 0 where solid', default: 0 },
} as const;
const torsion = { symbol: 'T', unit: 'N·m', meaning: 'torsional moment' } as const;
const bendingMoment = { symbol: 'M', unit: 'N·m', meaning: 'bending moment' } as const;
const stress = (symbol: string, meaning: string) => ({ symbol, unit: 'Pa', meaning }) as const;
const BEER = 'Beer & Johnston, Mechanics of Materials, ch. 3';
const JINDAL = 'U. C. Jindal, Machine Design, 2010, ch. 15';

export const shaftStressCalculations: readonly Calculation[] = [
  calculation({
    id: 'shaft.torsion',
    title: 'Shear stress of a shaft in torsion',
    equation: String.raw`\tau = \frac{16\, T D}{\pi \left( D^4 - d^4 \right)}, \qquad \tau_i = \tau \frac{d}{D}`,
    inputs: { moment: torsion, ...section },
    outputs: {
      outerStress: stress(String.raw`\tau`, 'shear stress at the outside'),
      innerStress: stress(String.raw`\tau_i`, 'shear stress at the bore'),
    },
    validity: 'Elastic, away from shoulders, keyways and holes, which multiply the stress.',
    source: BEER,
    compute: shaftTorsion,
    example: { moment: 0.4, diameter: 0.008, bore: 0.005 },
    related: ['shaft.stress', 'shaft.twist'],
  }),
  calculation({
    id: 'shaft.twist',
    title: 'Twist of a shaft',
    equation: String.raw`\psi = \frac{32\, T\, l}{\pi G \left( D^4 - d^4 \right)}`,
    inputs: {
      moment: torsion,
      ...section,
      length: { symbol: 'l', unit: 'm', meaning: 'length of the shaft' },
      shearModulus: stress('G', 'shear modulus'),
    },
    outputs: { twist: { symbol: String.raw`\psi`, unit: 'rad', meaning: 'twist over the length' } },
    validity: 'Elastic, uniform section.',
    source: BEER,
    compute: (inputs) => ({ twist: shaftTwist(inputs) }),
    example: { moment: 0.4, diameter: 0.005, bore: 0, length: 0.04, shearModulus: 79e9 },
    related: ['shaft.torsion'],
  }),
  calculation({
    id: 'shaft.stress',
    title: 'Shaft in bending, torsion and tension together',
    equation: String.raw`\sigma = \frac{32\, M D}{\pi \left( D^4 - d^4 \right)} + \frac{4 \lvert F \rvert}{\pi \left( D^2 - d^2 \right)}, \quad \tau = \frac{16\, T D}{\pi \left( D^4 - d^4 \right)}, \quad \sigma_v = \sqrt{\sigma^2 + 3 \tau^2}, \quad \sigma_t = \sqrt{\sigma^2 + 4 \tau^2}`,
    inputs: {
      bendingMoment,
      torsion,
      axialForce: { symbol: 'F', unit: 'N', meaning: 'force along the shaft', default: 0 },
      ...section,
    },
    outputs: {
      normalStress: stress(String.raw`\sigma`, 'normal stress at the outside'),
      shearStress: stress(String.raw`\tau`, 'shear stress at the outside'),
      vonMises: stress(String.raw`\sigma_v`, 'equivalent stress by von Mises'),
      tresca: stress(String.raw`\sigma_t`, 'equivalent stress by Tresca'),
    },
    validity:
      'Elastic and static, away from shoulders and keyways; in a turning shaft the bending stress alternates, and fatigue asks for its own check.',
    source: `Boresi & Schmidt, Advanced Mechanics of Materials, ch. 4; ${JINDAL}`,
    compute: shaftStress,
    example: { bendingMoment: 0.9, torsion: 0.4, axialForce: 0, diameter: 0.005, bore: 0 },
    related: ['shaft.torsion', 'shaft.required-diameter', 'stress.plane'],
  }),
  calculation({
    id: 'shaft.required-diameter',
    title: 'Shaft diameter for a permitted shear stress',
    equation: String.raw`D = \left[ \frac{16}{\pi \tau} \sqrt{\left( k_b M \right)^2 + \left( k_t T \right)^2} \right]^{1/3}`,
    inputs: {
      bendingMoment,
      torsion,
      shearStress: stress(String.raw`\tau`, 'permitted shear stress'),
      bendingFactor: {
        symbol: 'k_b',
        unit: '1',
        meaning: 'factor on bending for shock and fatigue',
        default: 1,
      },
      torsionFactor: {
        symbol: 'k_t',
        unit: '1',
        meaning: 'factor on torsion for shock and fatigue',
        default: 1,
      },
    },
    outputs: { diameter: { symbol: 'D', unit: 'm', meaning: 'least diameter of the solid shaft' } },
    validity: 'Solid round shaft of tough metal; keyways and shoulders by the factors.',
    source: JINDAL,
    compute: (inputs) => ({ diameter: shaftDiameter(inputs) }),
    example: {
      bendingMoment: 0.9,
      torsion: 0.4,
      shearStress: 60e6,
      bendingFactor: 1.5,
      torsionFactor: 1,
    },
    related: ['shaft.stress'],
  }),
];
