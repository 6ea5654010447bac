/** The rotor as a stack of rings and discs: its inertia, its mass, its momentum, its energy and its rim speed. */
import { type Calculation, calculation } from './calculation.ts';
import {
  DomainError,
  requireEach,
  requireNotNegative,
  requirePositive,
  requireSameLength,
} from './domain.ts';

export interface RotorSections {
  /** D_j, m, one for each section of the stack. */
  readonly outerDiameters: readonly number[];
  /** d_j, m; 0 where the section is solid. */
  readonly boreDiameters: readonly number[];
}

/** At least one section, each with material between bore and rim. */
export function requireSections({ outerDiameters, boreDiameters }: RotorSections): void {
  requireEach('outer diameter of section', outerDiameters, 'm', 0);
  requireEach('bore diameter of section', boreDiameters, 'm', 0);
  requireSameLength('bore diameter', boreDiameters, 'section of the rotor', outerDiameters);
  if (outerDiameters.length === 0) throw new DomainError('number of sections', 0, 'a rotor has at least one');
  outerDiameters.forEach((diameter, j) => {
    requirePositive(`outer diameter of section ${j + 1}`, diameter, 'm');
    const bore = boreDiameters[j] ?? 0;
    if (bore >= diameter) {
      const requirement = `it has to be less than the outer diameter, ${diameter} m`;
      throw new DomainError(`bore diameter of section ${j + 1}`, bore, requirement, 'm');
    }
  });
}

/**
 * Inertia about the spin axis and mass of a stack of uniform rings and discs.
 *
 *   I_s = Σ π/32 ρ t_j (D_j⁴ − d_j⁴),   m_s = Σ π/4 ρ t_j (D_j² − d_j²)
 *
 * @param outerDiameters  D_j, m, more than 0
 * @param boreDiameters   d_j, m, from 0 (solid) to less than D_j
 * @param thicknesses     t_j, m along the spin axis, not negative
 * @param density         ρ, kg/m³, more than 0, one material throughout
 * @returns inertia I_s, kg·m²; mass m_s, kg, to be held against the scale
 * @throws DomainError  outside these ranges, or for lists of unequal length
 * Source: disc and annulus, OpenStax, University Physics 1, sections 10.4 and 10.5, with m = ρ V.
 */
export function rotorInertia(
  rotor: RotorSections & { readonly thicknesses: readonly number[]; readonly density: number },
): { inertia: number; mass: number } {
  const { outerDiameters, boreDiameters, thicknesses, density } = rotor;
  requireSections(rotor);
  requireEach('thickness of section', thicknesses, 'm', 0);
  requireSameLength('thickness', thicknesses, 'section of the rotor', outerDiameters);
  requirePositive('density of the rotor', density, 'kg/m³');
  let inertia = 0;
  let mass = 0;
  outerDiameters.forEach((outer, j) => {
    const [D2, d2, t] = [outer ** 2, (boreDiameters[j] ?? 0) ** 2, thicknesses[j] ?? 0];
    const sectionMass = (Math.PI / 4) * density * t * (D2 - d2);
    mass += sectionMass;
    inertia += (sectionMass * (D2 + d2)) / 8;
  });
  return { inertia, mass };
}

/**
 * Spin momentum: H = I_s Ω, N·m·s.
 *
 * @param inertia  I_s, kg·m² about the spin axis, more than 0
 * @param speed    Ω, rad/s, not negative
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 11.4.
 */
export function spinMomentum(rotor: { readonly inertia: number; readonly speed: number }): number {
  requirePositive('rotor inertia', rotor.inertia, 'kg·m²');
  requireNotNegative('rotor speed', rotor.speed, 'rad/s');
  return rotor.inertia * rotor.speed;
}

/**
 * Energy stored in the spinning rotor: E = ½ I_s Ω², J. What a guard, a brake or a hand would have to take.
 *
 * @param inertia  I_s, kg·m² about the spin axis, more than 0
 * @param speed    Ω, rad/s, not negative
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 10.4.
 */
export function rotorEnergy(rotor: { readonly inertia: number; readonly speed: number }): number {
  requirePositive('rotor inertia', rotor.inertia, 'kg·m²');
  requireNotNegative('rotor speed', rotor.speed, 'rad/s');
  return 0.5 * rotor.inertia * rotor.speed ** 2;
}

/**
 * Rim speed of the largest section: v = Ω max D_j / 2, m/s.
 *
 * @param outerDiameters  D_j, m, more than 0, at least one
 * @param speed           Ω, rad/s, not negative
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 10.3.
 */
export function rimSpeed(rotor: {
  readonly outerDiameters: readonly number[];
  readonly speed: number;
}): number {
  requireSections({ outerDiameters: rotor.outerDiameters, boreDiameters: rotor.outerDiameters.map(() => 0) });
  requireNotNegative('rotor speed', rotor.speed, 'rad/s');
  return (rotor.speed * Math.max(...rotor.outerDiameters)) / 2;
}

/** The symbols of a stack, for every calculation that takes one. */
export const sectionSymbols = {
  outerDiameters: { symbol: 'D_j', unit: 'm', meaning: 'outer diameters of the sections', list: true },
  boreDiameters: {
    symbol: 'd_j',
    unit: 'm',
    meaning: 'bore diameters of the sections, 0 where solid',
    list: true,
  },
} as const;
const inertia = {
  symbol: 'I_s',
  unit: 'kg·m²',
  meaning: 'inertia of the rotor about its spin axis',
} as const;
const speed = { symbol: String.raw`\Omega`, unit: 'rad/s', meaning: 'speed of the rotor' } as const;

export const rotorCalculations: readonly Calculation[] = [
  calculation({
    id: 'rotor.inertia',
    title: 'Inertia and mass of the rotor',
    equation: String.raw`I_s = \frac{\pi\rho}{32} \sum_j t_j \left( D_j^4 - d_j^4 \right), \qquad m_s = \frac{\pi\rho}{4} \sum_j t_j \left( D_j^2 - d_j^2 \right)`,
    inputs: {
      ...sectionSymbols,
      thicknesses: {
        symbol: 't_j',
        unit: 'm',
        meaning: 'thicknesses of the sections along the spin axis',
        list: true,
      },
      density: { symbol: String.raw`\rho`, unit: 'kg/m³', meaning: 'density of the rotor’s material' },
    },
    outputs: { inertia, mass: { symbol: 'm_s', unit: 'kg', meaning: 'mass of the rotor by its drawing' } },
    validity: 'One uniform material, sections concentric; spokes, screw holes and the motor’s bell left out.',
    source: 'OpenStax, University Physics Volume 1, sections 10.4 (annulus) and 10.5 (disc)',
    compute: rotorInertia,
    example: {
      outerDiameters: [0.09, 0.03],
      boreDiameters: [0.07, 0.005],
      thicknesses: [0.02, 0.012],
      density: 8490,
    },
    related: ['rotor.momentum', 'rotor.energy', 'rotor.peak-stress'],
  }),
  calculation({
    id: 'rotor.momentum',
    title: 'Spin momentum',
    equation: String.raw`H = I_s \Omega`,
    inputs: { inertia, speed },
    outputs: { spinMomentum: { symbol: 'H', unit: 'N·m·s', meaning: 'spin momentum of the rotor' } },
    validity: 'Spin axis is a principal axis of the rotor; spin much faster than the tilting of the gimbal.',
    source: 'OpenStax, University Physics Volume 1, section 11.4',
    compute: (inputs) => ({ spinMomentum: spinMomentum(inputs) }),
    example: { inertia: 5e-4, speed: 890 },
    related: ['rotor.inertia', 'gyro.nutation', 'gyro.slow-toppling'],
  }),
  calculation({
    id: 'rotor.energy',
    title: 'Energy of the spinning rotor',
    equation: String.raw`E = \tfrac{1}{2} I_s \Omega^2`,
    inputs: { inertia, speed },
    outputs: { energy: { symbol: 'E', unit: 'J', meaning: 'energy of the spinning rotor' } },
    validity: 'Rigid rotor; parts of the motor that spin with it belong to the inertia.',
    source: 'OpenStax, University Physics Volume 1, section 10.4',
    compute: (inputs) => ({ energy: rotorEnergy(inputs) }),
    example: { inertia: 5e-4, speed: 890 },
    related: ['rotor.inertia', 'rotor.rim-speed'],
  }),
  calculation({
    id: 'rotor.rim-speed',
    title: 'Rim speed',
    equation: String.raw`v = \frac{\Omega}{2} \max_j D_j`,
    inputs: { outerDiameters: sectionSymbols.outerDiameters, speed },
    outputs: { rimSpeed: { symbol: 'v', unit: 'm/s', meaning: 'speed of the rim' } },
    validity: 'At the largest outer diameter of the stack.',
    source: 'OpenStax, University Physics Volume 1, section 10.3',
    compute: (inputs) => ({ rimSpeed: rimSpeed(inputs) }),
    example: { outerDiameters: [0.09, 0.03], speed: 890 },
    related: ['rotor.peak-stress', 'rotor.energy'],
  }),
];
