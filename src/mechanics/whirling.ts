/**
 * First whirling speed of a shaft: the speed at which it turns as fast as it would swing sideways, so that the smallest
 * unbalance bends it. A rotor on a thin shaft meets it on the way up.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireEach, requirePositive, requireSameLength } from './domain.ts';
import { standardGravity } from './gravity.ts';
import { requireHollow, secondMoment } from './round-section.ts';

interface Shaft {
  /** E, Pa, more than 0. */
  readonly elasticModulus: number;
  /** d, m, more than 0. */
  readonly shaftDiameter: number;
  /** d_i, m, from 0 (solid, the default) to less than d. */
  readonly shaftBore?: number;
  /** L, m between the bearings, more than 0. */
  readonly span: number;
}

function requireShaft({ elasticModulus, shaftDiameter, shaftBore = 0, span }: Shaft): void {
  requirePositive('elastic modulus of the shaft', elasticModulus, 'Pa');
  requireHollow('shaft', shaftDiameter, shaftBore);
  requirePositive('span of the bearings', span, 'm');
}

function bendingStiffness({ elasticModulus, shaftDiameter, shaftBore = 0 }: Shaft): number {
  return elasticModulus * secondMoment(shaftDiameter, shaftBore);
}

/**
 * First whirling speed of a disc between two bearings.
 *
 *   k = 3 E J L / (a² (L − a)²),   ω = √(k/m),   J = π (d⁴ − d_i⁴)/64
 *
 * @param discMass   m, kg, more than 0
 * @param elasticModulus E, Pa; shaftDiameter d, m; shaftBore d_i, m (0 if left out); span L, m
 * @param position   a, m of the disc from one bearing, between 0 and L
 * @returns stiffness k, N/m; speed ω, rad/s
 * @throws DomainError  outside these ranges
 * Source: deflection of a beam on two supports under one load; in the middle k = 48 E J/L³.
 */
export function whirlingOfDisc(rotor: Shaft & { readonly discMass: number; readonly position: number }): {
  stiffness: number;
  speed: number;
} {
  requireShaft(rotor);
  requirePositive('mass of the disc', rotor.discMass, 'kg');
  requirePositive('distance of the disc from a bearing', rotor.position, 'm');
  if (rotor.position >= rotor.span) {
    const requirement = `it has to be less than the span, ${rotor.span} m; beyond it the disc is overhung`;
    throw new DomainError('distance of the disc from a bearing', rotor.position, requirement, 'm');
  }
  const other = rotor.span - rotor.position;
  const stiffness = (3 * bendingStiffness(rotor) * rotor.span) / (rotor.position * other) ** 2;
  return { stiffness, speed: Math.sqrt(stiffness / rotor.discMass) };
}

/**
 * First whirling speed of a disc overhung beyond one of two bearings.
 *
 *   k = 3 E J / ( c² (L + c) ),   ω = √(k/m)
 *
 * @param overhang  c, m from the nearer bearing to the disc, more than 0; the rest as `whirlingOfDisc`
 * @returns stiffness k, N/m; speed ω, rad/s
 * @throws DomainError  outside these ranges
 * Source: deflection of an overhanging beam under a load at its end.
 */
export function whirlingOverhung(rotor: Shaft & { readonly discMass: number; readonly overhang: number }): {
  stiffness: number;
  speed: number;
} {
  requireShaft(rotor);
  requirePositive('mass of the disc', rotor.discMass, 'kg');
  requirePositive('overhang of the disc', rotor.overhang, 'm');
  const stiffness = (3 * bendingStiffness(rotor)) / (rotor.overhang ** 2 * (rotor.span + rotor.overhang));
  return { stiffness, speed: Math.sqrt(stiffness / rotor.discMass) };
}

/**
 * First whirling speed of a bare uniform shaft on two bearings: ω = (π/L)² √( E (d² + d_i²) / (16 ρ) ), rad/s.
 *
 * @param density  ρ, kg/m³, more than 0; the rest as `whirlingOfDisc`
 * @throws DomainError  outside these ranges
 * Source: first bending mode of a uniform beam on simple supports, (π/L)² √(E J/(ρ A)).
 */
export function whirlingOfShaft(shaft: Shaft & { readonly density: number }): number {
  requireShaft(shaft);
  requirePositive('density of the shaft', shaft.density, 'kg/m³');
  const { shaftDiameter, shaftBore = 0 } = shaft;
  const radiusSquared = (shaftDiameter ** 2 + shaftBore ** 2) / 16;
  return (Math.PI / shaft.span) ** 2 * Math.sqrt((shaft.elasticModulus * radiusSquared) / shaft.density);
}

/**
 * First whirling speed by Rayleigh's method, from the sag under the weights: an upper bound.
 *
 *   ω = √( g Σ mᵢ yᵢ / Σ mᵢ yᵢ² )
 *
 * @param masses       mᵢ, kg, not negative
 * @param deflections  yᵢ, m of each mass under all the weights together, not negative, not all 0
 * @returns ω, rad/s
 * @throws DomainError  outside these ranges or for lists of unequal length
 * Source: Shigley's Mechanical Engineering Design, 10th ed., eq. (7-23).
 */
export function rayleighSpeed(shaft: {
  readonly masses: readonly number[];
  readonly deflections: readonly number[];
}): number {
  const { masses, deflections } = shaft;
  requireEach('mass', masses, 'kg', 0);
  requireEach('deflection', deflections, 'm', 0);
  requireSameLength('deflections', deflections, 'mass', masses);
  let [work, square] = [0, 0];
  masses.forEach((mass, i) => {
    const y = deflections[i] ?? 0;
    work += mass * y;
    square += mass * y * y;
  });
  requirePositive('sum of mass times deflection', work, 'kg·m');
  requirePositive('sum of mass times deflection squared', square, 'kg·m²');
  return Math.sqrt((standardGravity * work) / square);
}

/**
 * First whirling speed of several masses by Dunkerley's rule, from each alone: a lower bound.
 *
 *   1/ω² = Σ 1/ωᵢ²
 *
 * @param speeds  ωᵢ, rad/s, each mass alone on the shaft, and the bare shaft; more than 0, at least one
 * @returns ω, rad/s
 * @throws DomainError  outside these ranges
 * Source: S. Dunkerley, Phil. Trans. R. Soc. A 185 (1894).
 */
export function dunkerleySpeed({ speeds }: { readonly speeds: readonly number[] }): number {
  requireEach('whirling speed', speeds, 'rad/s', 0);
  if (speeds.length === 0) throw new DomainError('number of whirling speeds', 0, 'at least one is needed');
  speeds.forEach((speed, i) => {
    requirePositive(`whirling speed ${i + 1}`, speed, 'rad/s');
  });
  // Relative to the least of them: neither squares nor their inverses leave the range of numbers.
  const least = Math.min(...speeds);
  return least / Math.sqrt(speeds.reduce((sum, speed) => sum + (least / speed) ** 2, 0));
}

const shaft = {
  elasticModulus: { symbol: 'E', unit: 'Pa', meaning: 'elastic modulus of the shaft' },
  shaftDiameter: { symbol: 'd', unit: 'm', meaning: 'diameter of the shaft' },
  shaftBore: { symbol: 'd_i', unit: 'm', meaning: 'bore of the shaft, 0 where solid', default: 0 },
  span: { symbol: 'L', unit: 'm', meaning: 'span of the bearings' },
} as const;
const discMass = { symbol: 'm', unit: 'kg', meaning: 'mass of the disc' } as const;
const stiffness = { symbol: 'k', unit: 'N/m', meaning: 'stiffness of the shaft at the disc' } as const;
const speed = {
  symbol: String.raw`\omega`,
  unit: 'rad/s',
  meaning: 'first whirling speed',
} as const;
const SECTION = String.raw`J = \frac{\pi}{64} \left( d^4 - d_i^4 \right)`;
const HOLDS =
  'Bearings stiff and free to tilt, shaft light against the disc; the disc’s own gyroscopic moment raises the speed a little, soft bearings and mounts lower it.';

export const whirlingCalculations: readonly Calculation[] = [
  calculation({
    id: 'shaft.whirling-of-disc',
    title: 'Whirling speed of a disc between bearings',
    equation: String.raw`k = \frac{3 E J L}{a^2 \left( L - a \right)^2}, \qquad \omega = \sqrt{\frac{k}{m}}, \qquad ${SECTION}`,
    inputs: {
      discMass,
      ...shaft,
      position: { symbol: 'a', unit: 'm', meaning: 'distance of the disc from one bearing' },
    },
    outputs: { stiffness, speed },
    validity: HOLDS,
    source: 'Derived: deflection of a beam on two supports under one load (48 E J/L³ in the middle)',
    compute: whirlingOfDisc,
    example: {
      discMass: 0.41,
      elasticModulus: 205e9,
      shaftDiameter: 0.005,
      shaftBore: 0,
      span: 0.04,
      position: 0.02,
    },
    related: ['shaft.whirling-overhung', 'shaft.dunkerley', 'rotor.judged-speed'],
  }),
  calculation({
    id: 'shaft.whirling-overhung',
    title: 'Whirling speed of an overhung disc',
    equation: String.raw`k = \frac{3 E J}{c^2 \left( L + c \right)}, \qquad \omega = \sqrt{\frac{k}{m}}, \qquad ${SECTION}`,
    inputs: {
      discMass,
      ...shaft,
      overhang: { symbol: 'c', unit: 'm', meaning: 'overhang of the disc beyond the nearer bearing' },
    },
    outputs: { stiffness, speed },
    validity: HOLDS,
    source: 'Derived: deflection of an overhanging beam under a load at its end',
    compute: whirlingOverhung,
    example: {
      discMass: 0.41,
      elasticModulus: 205e9,
      shaftDiameter: 0.005,
      shaftBore: 0,
      span: 0.025,
      overhang: 0.012,
    },
    related: ['shaft.whirling-of-disc', 'shaft.dunkerley'],
  }),
  calculation({
    id: 'shaft.whirling-of-shaft',
    title: 'Whirling speed of a bare shaft',
    equation: String.raw`\omega = \left( \frac{\pi}{L} \right)^2 \sqrt{\frac{E \left( d^2 + d_i^2 \right)}{16 \rho}}`,
    inputs: {
      ...shaft,
      density: { symbol: String.raw`\rho`, unit: 'kg/m³', meaning: 'density of the shaft' },
    },
    outputs: { speed },
    validity: 'Uniform slender shaft, bearings stiff and free to tilt.',
    source: 'First bending mode of a uniform beam on simple supports',
    compute: (inputs) => ({ speed: whirlingOfShaft(inputs) }),
    example: { elasticModulus: 205e9, shaftDiameter: 0.005, shaftBore: 0, span: 0.04, density: 7850 },
    related: ['shaft.whirling-of-disc', 'shaft.dunkerley'],
  }),
  calculation({
    id: 'shaft.rayleigh',
    title: 'Whirling speed by Rayleigh’s method',
    equation: String.raw`\omega = \sqrt{\frac{g \sum_i m_i y_i}{\sum_i m_i y_i^2}}`,
    inputs: {
      masses: { symbol: 'm_i', unit: 'kg', meaning: 'masses on the shaft', list: true },
      deflections: {
        symbol: 'y_i',
        unit: 'm',
        meaning: 'deflections of the shaft at the masses under all the weights',
        list: true,
      },
    },
    outputs: { speed },
    validity: 'An upper bound; deflections all to one side.',
    source: 'Shigley’s Mechanical Engineering Design, 10th ed., eq. (7-23)',
    compute: (inputs) => ({ speed: rayleighSpeed(inputs) }),
    example: { masses: [0.41, 0.06], deflections: [4.2e-6, 2.1e-6] },
    related: ['shaft.dunkerley', 'shaft.whirling-of-disc'],
  }),
  calculation({
    id: 'shaft.dunkerley',
    title: 'Whirling speed by Dunkerley’s rule',
    equation: String.raw`\frac{1}{\omega^2} = \sum_i \frac{1}{\omega_i^2}`,
    inputs: {
      speeds: {
        symbol: String.raw`\omega_i`,
        unit: 'rad/s',
        meaning: 'whirling speeds with each mass alone, and of the bare shaft',
        list: true,
      },
    },
    outputs: { speed },
    validity: 'A lower bound, on the safe side.',
    source: 'S. Dunkerley, On the Whirling and Vibration of Shafts, Phil. Trans. R. Soc. A 185 (1894)',
    compute: (inputs) => ({ speed: dunkerleySpeed(inputs) }),
    example: { speeds: [1520, 4100, 39000] },
    related: ['shaft.rayleigh', 'shaft.whirling-of-shaft'],
  }),
];
