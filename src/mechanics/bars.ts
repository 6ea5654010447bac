/** Straight bars in bending: sections, stress, and the arm as a cantilever: how stiff it is and how it swings. */
import { type Calculation, calculation } from './calculation.ts';
import { requireFinite, requireNotNegative, requirePositive } from './domain.ts';
import { requireHollow, secondMoment } from './round-section.ts';

/**
 * Second moment and section modulus of a rectangle: J = b h³/12, m⁴; W = b h²/6, m³.
 *
 * @param width   b, m across the plane of bending, more than 0
 * @param height  h, m in the plane of bending, more than 0
 * @throws DomainError  outside these ranges
 * Source: ∫ y² dA.
 */
export function rectangleSection(bar: { readonly width: number; readonly height: number }): {
  secondMoment: number;
  modulus: number;
} {
  requirePositive('width of the bar', bar.width, 'm');
  requirePositive('height of the bar', bar.height, 'm');
  return {
    secondMoment: (bar.width * bar.height ** 3) / 12,
    modulus: (bar.width * bar.height ** 2) / 6,
  };
}

/**
 * Second moment and section modulus of a round bar or tube: J = π (D⁴ − d⁴)/64, m⁴; W = 2J/D, m³.
 *
 * @param diameter  D, m, more than 0; bore d, m, from 0 (if left out) to less than D
 * @throws DomainError  outside these ranges
 * Source: ∫ y² dA.
 */
export function tubeSection({ diameter, bore = 0 }: { readonly diameter: number; readonly bore?: number }): {
  secondMoment: number;
  modulus: number;
} {
  requireHollow('bar', diameter, bore);
  const moment = secondMoment(diameter, bore);
  return { secondMoment: moment, modulus: (2 * moment) / diameter };
}

/**
 * Largest bending stress: σ = M/W, Pa.
 *
 * @param bendingMoment  M, N·m
 * @param modulus        W, m³, more than 0
 * @throws DomainError  outside these ranges
 * Source: Gere, Mechanics of Materials, ch. 5.
 */
export function bendingStress(bar: { readonly bendingMoment: number; readonly modulus: number }): number {
  requireFinite('bending moment', bar.bendingMoment, 'N·m');
  requirePositive('section modulus', bar.modulus, 'm³');
  return bar.bendingMoment / bar.modulus;
}

/**
 * Stiffness of a cantilever at its tip, and how far a force bends it: k = 3 E J/L³, N/m; y = F/k, m.
 *
 * @param elasticModulus  E, Pa, more than 0
 * @param secondMoment    J, m⁴, more than 0
 * @param length          L, m, more than 0
 * @param force           F, N across the tip; 0 if left out
 * @throws DomainError  outside these ranges
 * Source: Gere, Mechanics of Materials, ch. 9.
 */
export function armStiffness({
  elasticModulus,
  secondMoment: moment,
  length,
  force = 0,
}: {
  readonly elasticModulus: number;
  readonly secondMoment: number;
  readonly length: number;
  readonly force?: number;
}): { stiffness: number; deflection: number } {
  requirePositive('elastic modulus', elasticModulus, 'Pa');
  requirePositive('second moment of area', moment, 'm⁴');
  requirePositive('length of the arm', length, 'm');
  requireFinite('force at the tip', force, 'N');
  const stiffness = (3 * elasticModulus * moment) / length ** 3;
  return { stiffness, deflection: force / stiffness };
}

/**
 * First frequency of a cantilever with a mass at its tip: ω = √( k / (m + 33/140 m_a) ), rad/s.
 *
 * The arm's own mass counts with 33/140 of it at the tip, from the shape that a force at the tip bends it into: 1.5 % high
 * without any tip mass, exact as the tip mass grows.
 *
 * @param stiffness  k, N/m at the tip, more than 0
 * @param tipMass    m, kg, not negative; armMass m_a, kg, not negative (0 if left out); together more than 0
 * @throws DomainError  outside these ranges
 * Source: Rayleigh's method; W. T. Thomson, Theory of Vibration with Applications, from memory.
 */
export function armFrequency({
  stiffness,
  tipMass,
  armMass = 0,
}: {
  readonly stiffness: number;
  readonly tipMass: number;
  readonly armMass?: number;
}): number {
  requirePositive('stiffness of the arm at its tip', stiffness, 'N/m');
  requireNotNegative('mass at the tip', tipMass, 'kg');
  requireNotNegative('mass of the arm', armMass, 'kg');
  const mass = tipMass + (33 / 140) * armMass;
  requirePositive('swinging mass', mass, 'kg');
  return Math.sqrt(stiffness / mass);
}

const secondMomentOfArea = { symbol: 'J', unit: 'm⁴', meaning: 'second moment of area' } as const;
const modulus = { symbol: 'W', unit: 'm³', meaning: 'section modulus' } as const;
const stiffness = { symbol: 'k', unit: 'N/m', meaning: 'stiffness of the arm at its tip' } as const;
const GERE = 'J. M. Gere, Mechanics of Materials';

export const barCalculations: readonly Calculation[] = [
  calculation({
    id: 'bar.rectangle',
    title: 'Section of a rectangular bar',
    equation: String.raw`J = \frac{b h^3}{12}, \qquad W = \frac{b h^2}{6}`,
    inputs: {
      width: { symbol: 'b', unit: 'm', meaning: 'width of the bar across the plane of bending' },
      height: { symbol: 'h', unit: 'm', meaning: 'height of the bar in the plane of bending' },
    },
    outputs: { secondMoment: secondMomentOfArea, modulus },
    validity: 'Full rectangle; take holes at the root off the width.',
    source: 'Derived: ∫ y² dA over the section',
    compute: rectangleSection,
    example: { width: 0.01, height: 0.004 },
    related: ['bar.bending', 'arm.stiffness', 'bar.tube'],
  }),
  calculation({
    id: 'bar.tube',
    title: 'Section of a round bar or tube',
    equation: String.raw`J = \frac{\pi}{64} \left( D^4 - d^4 \right), \qquad W = \frac{2 J}{D}`,
    inputs: {
      diameter: { symbol: 'D', unit: 'm', meaning: 'outer diameter' },
      bore: { symbol: 'd', unit: 'm', meaning: 'bore, 0 where solid', default: 0 },
    },
    outputs: { secondMoment: secondMomentOfArea, modulus },
    validity: 'Round section; a very thin wall buckles before it yields.',
    source: 'Derived: ∫ y² dA over the section',
    compute: tubeSection,
    example: { diameter: 0.008, bore: 0.006 },
    related: ['bar.bending', 'arm.stiffness', 'bar.rectangle'],
  }),
  calculation({
    id: 'bar.bending',
    title: 'Bending stress of a bar',
    equation: String.raw`\sigma = \frac{M}{W}`,
    inputs: { bendingMoment: { symbol: 'M', unit: 'N·m', meaning: 'bending moment' }, modulus },
    outputs: { stress: { symbol: String.raw`\sigma`, unit: 'Pa', meaning: 'largest bending stress' } },
    validity: 'Elastic, straight bar, away from notches.',
    source: `${GERE}, ch. 5`,
    compute: (inputs) => ({ stress: bendingStress(inputs) }),
    example: { bendingMoment: 0.9, modulus: 2.667e-8 },
    related: ['bar.rectangle', 'bar.tube', 'joint.printed-strength', 'load.arm-root'],
  }),
  calculation({
    id: 'arm.stiffness',
    title: 'Stiffness of the arm as a cantilever',
    equation: String.raw`k = \frac{3 E J}{L^3}, \qquad y = \frac{F}{k}`,
    inputs: {
      elasticModulus: { symbol: 'E', unit: 'Pa', meaning: 'elastic modulus' },
      secondMoment: secondMomentOfArea,
      length: { symbol: 'L', unit: 'm', meaning: 'length of the arm' },
      force: { symbol: 'F', unit: 'N', meaning: 'force across the tip', default: 0 },
    },
    outputs: {
      stiffness,
      deflection: { symbol: 'y', unit: 'm', meaning: 'deflection at the tip' },
    },
    validity: 'Uniform slender arm held rigidly at its root; the drive’s own give is often the larger part.',
    source: `${GERE}, ch. 9`,
    compute: armStiffness,
    example: { elasticModulus: 70e9, secondMoment: 5.333e-11, length: 0.115, force: 5.8 },
    related: ['arm.frequency', 'bar.rectangle', 'bar.tube'],
  }),
  calculation({
    id: 'arm.frequency',
    title: 'First frequency of the arm',
    equation: String.raw`\omega = \sqrt{\frac{k}{m + \frac{33}{140} m_a}}`,
    inputs: {
      stiffness,
      tipMass: { symbol: 'm', unit: 'kg', meaning: 'mass at the tip' },
      armMass: { symbol: 'm_a', unit: 'kg', meaning: 'mass of the arm itself', default: 0 },
    },
    outputs: { frequency: { symbol: String.raw`\omega`, unit: 'rad/s', meaning: 'first frequency' } },
    validity: 'Root held rigidly; 1.5 % high without a mass at the tip, nearer with one.',
    source: 'Rayleigh’s method; W. T. Thomson, Theory of Vibration with Applications, from memory',
    compute: (inputs) => ({ frequency: armFrequency(inputs) }),
    example: { stiffness: 7364, tipMass: 0.59, armMass: 0.012 },
    related: ['arm.stiffness', 'rotor.alias'],
  }),
];
