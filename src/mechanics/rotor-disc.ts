/**
 * One uniform disc in more depth than its peak stress: the stresses at every radius, the bound of the thin ring, the speed
 * at which it first yields, and the speed at which a ductile disc comes apart, as far as a formula can say.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireBetween, requireFinite, requireNotNegative, requirePositive } from './domain.ts';
import { requireSections } from './rotor.ts';
import { rotorPeakStress } from './rotor-stress.ts';

interface Disc {
  /** D, m, more than 0. */
  readonly outerDiameter: number;
  /** d, m, from 0 (solid) to less than D. */
  readonly boreDiameter: number;
  /** ρ, kg/m³, more than 0. */
  readonly density: number;
}

function requireDisc({ outerDiameter, boreDiameter, density }: Disc): void {
  requireSections({ outerDiameters: [outerDiameter], boreDiameters: [boreDiameter] });
  requirePositive('density of the disc', density, 'kg/m³');
}

/**
 * Radial and hoop stress of a uniform disc at a radius.
 *
 *   σ_r = (3+ν)/8 ρΩ² ( a² + b² − a²b²/r² − r² )
 *   σ_θ = (3+ν)/8 ρΩ² ( a² + b² + a²b²/r² − (1+3ν)/(3+ν) r² ),   a = d/2, b = D/2
 *
 * @param outerDiameter  D, m; boreDiameter d, m; density ρ, kg/m³
 * @param poissonRatio   ν, from 0 to 0.5
 * @param speed          Ω, rad/s, not negative
 * @param radius         r, m, from a to b
 * @returns radialStress σ_r and hoopStress σ_θ, Pa
 * @throws DomainError  outside these ranges
 * Source: E. J. Hearn, Mechanics of Materials 2, ch. 4; the solid disc is its limit a → 0 for r > 0.
 */
export function discStress(
  disc: Disc & { readonly poissonRatio: number; readonly speed: number; readonly radius: number },
): { radialStress: number; hoopStress: number } {
  requireDisc(disc);
  requireBetween('Poisson ratio', disc.poissonRatio, 0, 0.5, '1');
  requireNotNegative('rotor speed', disc.speed, 'rad/s');
  const [a, b, r, nu] = [disc.boreDiameter / 2, disc.outerDiameter / 2, disc.radius, disc.poissonRatio];
  requireBetween('radius', r, a, b, 'm');
  const load = ((3 + nu) / 8) * disc.density * disc.speed ** 2;
  const core = a === 0 ? 0 : (a * b) ** 2 / r ** 2;
  return {
    radialStress: load * (a ** 2 + b ** 2 - core - r ** 2),
    hoopStress: load * (a ** 2 + b ** 2 + core - ((1 + 3 * nu) / (3 + nu)) * r ** 2),
  };
}

/**
 * Hoop stress of a thin ring: σ = ρ (Ω D_m/2)², Pa.
 *
 * @param meanDiameter  D_m, m, more than 0
 * @param density       ρ, kg/m³, more than 0
 * @param speed         Ω, rad/s, not negative
 * @throws DomainError  outside these ranges
 * Source: Khurmi & Gupta, Theory of Machines, 14th ed., ch. 16; Hearn, Mechanics of Materials 2, ch. 4.
 */
export function ringStress(ring: {
  readonly meanDiameter: number;
  readonly density: number;
  readonly speed: number;
}): number {
  requirePositive('mean diameter of the ring', ring.meanDiameter, 'm');
  requirePositive('density of the ring', ring.density, 'kg/m³');
  requireNotNegative('rotor speed', ring.speed, 'rad/s');
  return ring.density * ((ring.speed * ring.meanDiameter) / 2) ** 2;
}

/** (D² + D d + d²)/12 = (b² + ab + a²)/3, m². */
function meanSquare({ outerDiameter: D, boreDiameter: d }: Disc): number {
  return (D * D + D * d + d * d) / 12;
}

/**
 * Hoop stress of a disc, its mean over a plane through the axis: σ_m = ρ Ω² (D² + D d + d²)/12, Pa.
 *
 * @throws DomainError  for a disc without material, or a negative speed
 * Source: statics alone: the pull of one half on the other over the area between; Boresi & Schmidt, Advanced Mechanics of
 * Materials, example 11.8.
 */
export function meanHoopStress(disc: Disc & { readonly speed: number }): number {
  requireDisc(disc);
  requireNotNegative('rotor speed', disc.speed, 'rad/s');
  return disc.density * disc.speed ** 2 * meanSquare(disc);
}

/**
 * Speed at which a uniform disc first yields: at the bore, or at the centre of a solid one.
 *
 *   Ω_y = √( 16 σ_y / ( ρ [ (3+ν) D² + (1−ν) d² ] ) ),   solid: Ω_y = √( 32 σ_y / ( ρ (3+ν) D² ) )
 *
 * @param yieldStrength  σ_y, Pa, more than 0
 * @param poissonRatio   ν, from 0 to 0.5
 * @returns Ω_y, rad/s
 * @throws DomainError  outside these ranges
 * Source: Boresi & Schmidt, Advanced Mechanics of Materials, example 11.8 (Tresca at the bore).
 */
export function yieldSpeed(
  disc: Disc & { readonly yieldStrength: number; readonly poissonRatio: number },
): number {
  requireDisc(disc);
  requirePositive('yield strength', disc.yieldStrength, 'Pa');
  const { outerDiameter, boreDiameter, density, poissonRatio } = disc;
  const atUnitSpeed = rotorPeakStress({
    outerDiameters: [outerDiameter],
    boreDiameters: [boreDiameter],
    density,
    poissonRatio,
    speed: 1,
  });
  return Math.sqrt(disc.yieldStrength / atUnitSpeed);
}

/**
 * Speed at which the mean hoop stress of a disc reaches a share of the tensile strength: an estimate of its burst.
 *
 *   Ω_b = √( 12 f σ_u / ( ρ (D² + D d + d²) ) )
 *
 * Holds for tough metal that flows before it tears. Brittle, cast, printed, glued, notched or cracked discs burst at
 * the elastic peak stress, far below.
 *
 * @param tensileStrength  σ_u, Pa, more than 0
 * @param share            f of the strength that counts, more than 0, up to 1; 1 if left out
 * @returns Ω_b, rad/s
 * @throws DomainError  outside these ranges
 * Source: E. L. Robinson's criterion as quoted by V. Tvergaard, Int. J. Mech. Sci. 20 (1978) 109–120.
 */
export function burstSpeed({
  tensileStrength,
  share = 1,
  ...disc
}: Disc & { readonly tensileStrength: number; readonly share?: number }): number {
  requireDisc(disc);
  requirePositive('tensile strength', tensileStrength, 'Pa');
  requireFinite('share of the strength', share);
  if (share <= 0 || share > 1) {
    throw new DomainError('share of the strength', share, 'it has to be more than 0 and no more than 1');
  }
  return Math.sqrt((share * tensileStrength) / (disc.density * meanSquare(disc)));
}

const disc = {
  outerDiameter: { symbol: 'D', unit: 'm', meaning: 'outer diameter' },
  boreDiameter: { symbol: 'd', unit: 'm', meaning: 'bore diameter, 0 where solid' },
  density: { symbol: String.raw`\rho`, unit: 'kg/m³', meaning: 'density of the material' },
} as const;
const poissonRatio = {
  symbol: String.raw`\nu`,
  unit: '1',
  meaning: 'Poisson ratio of the material',
} as const;
const speed = { symbol: String.raw`\Omega`, unit: 'rad/s', meaning: 'speed of the rotor' } as const;
const stress = (symbol: string, meaning: string) => ({ symbol, unit: 'Pa', meaning }) as const;
const HEARN = 'E. J. Hearn, Mechanics of Materials 2, ch. 4';
const BORESI = 'Boresi & Schmidt, Advanced Mechanics of Materials, example 11.8';
const steel = { outerDiameter: 0.09, boreDiameter: 0.02, density: 7850 };

export const rotorDiscCalculations: readonly Calculation[] = [
  calculation({
    id: 'rotor.disc-stress',
    title: 'Stresses of a disc at a radius',
    equation: String.raw`\begin{gathered} \sigma_r = \frac{3+\nu}{8} \rho\Omega^2 \left( a^2 + b^2 - \frac{a^2 b^2}{r^2} - r^2 \right), \qquad \sigma_\theta = \frac{3+\nu}{8} \rho\Omega^2 \left( a^2 + b^2 + \frac{a^2 b^2}{r^2} - \frac{1+3\nu}{3+\nu} r^2 \right) \\ a = \frac{d}{2}, \qquad b = \frac{D}{2} \end{gathered}`,
    inputs: {
      ...disc,
      poissonRatio,
      speed,
      radius: { symbol: 'r', unit: 'm', meaning: 'radius at which the stresses are wanted' },
    },
    outputs: {
      radialStress: stress(String.raw`\sigma_r`, 'radial stress'),
      hoopStress: stress(String.raw`\sigma_\theta`, 'hoop stress'),
    },
    validity:
      'Elastic, thin uniform disc, free at bore and rim; keyways, holes and press fits left out. The radial stress is greatest at r = √(ab).',
    source: HEARN,
    compute: discStress,
    example: { ...steel, poissonRatio: 0.3, speed: 1424, radius: 0.0212 },
    related: ['rotor.peak-stress', 'rotor.mean-hoop-stress'],
  }),
  calculation({
    id: 'rotor.ring-stress',
    title: 'Hoop stress of a thin ring',
    equation: String.raw`\sigma = \rho \left( \frac{\Omega D_m}{2} \right)^2`,
    inputs: {
      meanDiameter: { symbol: 'D_m', unit: 'm', meaning: 'mean diameter of the ring' },
      density: disc.density,
      speed,
    },
    outputs: { stress: stress(String.raw`\sigma`, 'hoop stress') },
    validity: 'Ring thin against its radius, without spokes; no ring of the material can be faster.',
    source: `Khurmi & Gupta, Theory of Machines, 14th ed., ch. 16; ${HEARN}`,
    compute: (inputs) => ({ stress: ringStress(inputs) }),
    example: { meanDiameter: 0.08, density: 8490, speed: 1424 },
    related: ['rotor.peak-stress', 'rotor.rim-speed'],
  }),
  calculation({
    id: 'rotor.mean-hoop-stress',
    title: 'Mean hoop stress of a disc',
    equation: String.raw`\sigma_m = \frac{\rho\Omega^2}{12} \left( D^2 + D d + d^2 \right)`,
    inputs: { ...disc, speed },
    outputs: { stress: stress(String.raw`\sigma_m`, 'mean hoop stress over a plane through the axis') },
    validity:
      'Statics alone; the peak is 1.24 times as high in a solid disc (ν = 0.3) and 2.5 times with a small bore.',
    source: `Derived: pull of one half on the other; ${BORESI}`,
    compute: (inputs) => ({ stress: meanHoopStress(inputs) }),
    example: { ...steel, speed: 1424 },
    related: ['rotor.burst-estimate', 'rotor.disc-stress'],
  }),
  calculation({
    id: 'rotor.yield-speed',
    title: 'Speed at which a disc first yields',
    equation: String.raw`\Omega_y = \begin{cases} 4 \sqrt{\dfrac{\sigma_y}{\rho \left[ (3+\nu) D^2 + (1-\nu) d^2 \right]}} & d > 0 \\[1ex] 4 \sqrt{\dfrac{2 \sigma_y}{\rho\, (3+\nu) D^2}} & d = 0 \end{cases}`,
    inputs: { ...disc, poissonRatio, yieldStrength: stress(String.raw`\sigma_y`, 'yield strength') },
    outputs: {
      speed: { symbol: String.raw`\Omega_y`, unit: 'rad/s', meaning: 'speed at which the disc first yields' },
    },
    validity: 'Uniform thin disc of its own; keyways, holes and press fits let it yield earlier.',
    source: BORESI,
    compute: (inputs) => ({ speed: yieldSpeed(inputs) }),
    example: { ...steel, poissonRatio: 0.28, yieldStrength: 235e6 },
    related: ['rotor.peak-stress', 'rotor.burst-estimate', 'rotor.judged-speed'],
  }),
  calculation({
    id: 'rotor.burst-estimate',
    title: 'Estimate of the burst speed',
    equation: String.raw`\Omega_b = \sqrt{\frac{12\, f\, \sigma_u}{\rho \left( D^2 + D d + d^2 \right)}}`,
    inputs: {
      ...disc,
      tensileStrength: stress(String.raw`\sigma_u`, 'tensile strength'),
      share: { symbol: 'f', unit: '1', meaning: 'share of the strength that counts', default: 1 },
    },
    outputs: {
      speed: {
        symbol: String.raw`\Omega_b`,
        unit: 'rad/s',
        meaning: 'speed at which the mean hoop stress reaches that share',
      },
    },
    validity:
      'Tough wrought metal without cracks only, and no working limit: brittle, cast, printed, glued or notched discs burst at the elastic peak stress, far below.',
    source:
      'Mean hoop stress criterion (E. L. Robinson) as quoted by V. Tvergaard, Int. J. Mech. Sci. 20 (1978) 109–120',
    compute: (inputs) => ({ speed: burstSpeed(inputs) }),
    example: { ...steel, tensileStrength: 360e6, share: 0.85 },
    related: ['rotor.mean-hoop-stress', 'rotor.yield-speed', 'rotor.fragment-energy'],
  }),
];
