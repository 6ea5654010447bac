/**
 * Inertia of the simple bodies that parts of a vehicle are taken for, each about an axis through its own centre of
 * gravity. The mass table moves them to the ground line. All are uniform solids.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireNotNegative, requirePositive } from './domain.ts';

function requireMass(mass: number): void {
  requireNotNegative('mass', mass, 'kg');
}

/** A bore that leaves material round it; 0 is a solid body. */
function requireBore(bore: number, diameter: number): void {
  requirePositive('outer diameter', diameter, 'm');
  requireNotNegative('bore diameter', bore, 'm');
  if (bore >= diameter) {
    throw new DomainError(
      'bore diameter',
      bore,
      `it has to be less than the outer diameter, ${diameter} m`,
      'm',
    );
  }
}

/**
 * Roll inertia of a box, about the fore-and-aft axis through its centre.
 *
 *   I = m (w² + h²) / 12
 *
 * @param mass    m, kg, not negative
 * @param width   w, m across the vehicle; 0 for a thin plate on edge
 * @param height  h, m; 0 for a thin plate lying flat
 * @returns I, kg·m²
 * @throws DomainError  for a negative mass or length
 * Source: ∫(y² + z²) dm over a uniform box.
 */
export function boxRollInertia(box: {
  readonly mass: number;
  readonly width: number;
  readonly height: number;
}): number {
  requireMass(box.mass);
  requireNotNegative('width', box.width, 'm');
  requireNotNegative('height', box.height, 'm');
  return (box.mass * (box.width ** 2 + box.height ** 2)) / 12;
}

/**
 * Inertia of a tube about its own axis; with no bore, of a cylinder or disc.
 *
 *   I = m (D² + d²) / 8      (plus, not minus: the mass is what is left after boring)
 *
 * @param mass      m, kg, not negative
 * @param diameter  D, m, outer, more than 0
 * @param bore      d, m, from 0 to less than D
 * @returns I, kg·m²
 * @throws DomainError  for a negative mass, or a bore that leaves no wall
 * Source: OpenStax, University Physics 1, section 10.4, table of shapes (annular cylinder).
 */
export function tubeInertiaAlongAxis(tube: {
  readonly mass: number;
  readonly diameter: number;
  readonly bore: number;
}): number {
  requireMass(tube.mass);
  requireBore(tube.bore, tube.diameter);
  return (tube.mass * (tube.diameter ** 2 + tube.bore ** 2)) / 8;
}

/**
 * Inertia of a tube about an axis across it through its centre; with no bore, of a cylinder; with no length, of a
 * thin ring or disc about a diameter.
 *
 *   I = m [ 3 (D² + d²) + 4 l² ] / 48
 *
 * @param mass      m, kg, not negative
 * @param diameter  D, m, outer, more than 0
 * @param bore      d, m, from 0 to less than D
 * @param length    l, m, not negative
 * @returns I, kg·m²
 * @throws DomainError  for a negative mass or length, or a bore that leaves no wall
 * Source: ∫(r² sin²θ + x²) dm over a uniform tube; without bore, Moore, Human Control of a Bicycle (2012), physical
 * parameters (calibration rod).
 */
export function tubeInertiaAcrossAxis(tube: {
  readonly mass: number;
  readonly diameter: number;
  readonly bore: number;
  readonly length: number;
}): number {
  requireMass(tube.mass);
  requireBore(tube.bore, tube.diameter);
  requireNotNegative('length', tube.length, 'm');
  return (tube.mass * (3 * (tube.diameter ** 2 + tube.bore ** 2) + 4 * tube.length ** 2)) / 48;
}

/**
 * Inertia of a cylinder about its own axis: I = m D² / 8, kg·m², mass m in kg, diameter D in m.
 *
 * @throws DomainError  for a negative mass or a diameter that is not positive
 * Source: OpenStax, University Physics 1, section 10.5.
 */
export function cylinderInertiaAlongAxis(cylinder: {
  readonly mass: number;
  readonly diameter: number;
}): number {
  return tubeInertiaAlongAxis({ mass: cylinder.mass, diameter: cylinder.diameter, bore: 0 });
}

/**
 * Inertia of a cylinder about an axis across it through its centre: I = m (3 D² + 4 l²) / 48, kg·m², mass m in kg,
 * diameter D and length l in m.
 *
 * @throws DomainError  for a negative mass or length, or a diameter that is not positive
 * Source: Moore, Human Control of a Bicycle (2012), physical parameters (calibration rod).
 */
export function cylinderInertiaAcrossAxis(cylinder: {
  readonly mass: number;
  readonly diameter: number;
  readonly length: number;
}): number {
  return tubeInertiaAcrossAxis({
    mass: cylinder.mass,
    diameter: cylinder.diameter,
    bore: 0,
    length: cylinder.length,
  });
}

/**
 * Inertia of a thin rod about an axis across it through its centre: I = m l² / 12, kg·m², mass m in kg, length l
 * in m. A rod as thick as a quarter of its length has 5 % more.
 *
 * @throws DomainError  for a negative mass or a length that is not positive
 * Source: OpenStax, University Physics 1, section 10.5.
 */
export function rodInertiaAcrossAxis(rod: { readonly mass: number; readonly length: number }): number {
  requireMass(rod.mass);
  requirePositive('length', rod.length, 'm');
  return (rod.mass * rod.length ** 2) / 12;
}

const mass = { symbol: 'm', unit: 'kg', meaning: 'mass of the part' } as const;
const diameter = { symbol: 'D', unit: 'm', meaning: 'outer diameter' } as const;
const bore = { symbol: 'd', unit: 'm', meaning: 'bore diameter' } as const;
const length = { symbol: 'l', unit: 'm', meaning: 'length' } as const;
const inertia = (axis: string) =>
  ({ symbol: 'I', unit: 'kg·m²', meaning: `inertia about ${axis} through the centre of gravity` }) as const;

export const bodyCalculations: readonly Calculation[] = [
  calculation({
    id: 'body.box-roll-inertia',
    title: 'Roll inertia of a box',
    equation: String.raw`I = \frac{m}{12} \left( w^2 + h^2 \right)`,
    inputs: {
      mass,
      width: { symbol: 'w', unit: 'm', meaning: 'width across the vehicle' },
      height: { symbol: 'h', unit: 'm', meaning: 'height' },
    },
    outputs: { inertia: inertia('the fore-and-aft axis') },
    validity: 'Uniform box with its edges along the axes of the vehicle.',
    source: 'Derived: ∫(y² + z²) dm over a uniform box',
    compute: (inputs) => ({ inertia: boxRollInertia(inputs) }),
    example: { mass: 0.107, width: 0.035, height: 0.022 },
    related: ['mass.roll-inertia'],
  }),
  calculation({
    id: 'body.cylinder-along-axis',
    title: 'Inertia of a cylinder about its own axis',
    equation: String.raw`I = \frac{m D^2}{8}`,
    inputs: { mass, diameter },
    outputs: { inertia: inertia('its own axis') },
    validity: 'Uniform solid cylinder or disc of any length.',
    source: 'OpenStax, University Physics Volume 1, section 10.5',
    compute: (inputs) => ({ inertia: cylinderInertiaAlongAxis(inputs) }),
    example: { mass: 0.3, diameter: 0.1 },
    related: ['body.tube-along-axis', 'body.cylinder-across-axis'],
  }),
  calculation({
    id: 'body.cylinder-across-axis',
    title: 'Inertia of a cylinder about an axis across it',
    equation: String.raw`I = \frac{m}{48} \left( 3 D^2 + 4 l^2 \right)`,
    inputs: { mass, diameter, length },
    outputs: { inertia: inertia('an axis across it') },
    validity: 'Uniform solid cylinder; length 0 for a thin disc about a diameter.',
    source:
      'J. K. Moore, Human Control of a Bicycle, PhD thesis, UC Davis 2012, physical parameters (calibration rod)',
    compute: (inputs) => ({ inertia: cylinderInertiaAcrossAxis(inputs) }),
    example: { mass: 0.3, diameter: 0.1, length: 0.02 },
    related: ['body.tube-across-axis', 'body.rod-across-axis'],
  }),
  calculation({
    id: 'body.tube-along-axis',
    title: 'Inertia of a tube about its own axis',
    equation: String.raw`I = \frac{m}{8} \left( D^2 + d^2 \right)`,
    inputs: { mass, diameter, bore },
    outputs: { inertia: inertia('its own axis') },
    validity: 'Uniform tube or ring of any length; m is the mass that is left after boring.',
    source: 'OpenStax, University Physics Volume 1, section 10.4 (annular cylinder)',
    compute: (inputs) => ({ inertia: tubeInertiaAlongAxis(inputs) }),
    example: { mass: 0.3, diameter: 0.1, bore: 0.08 },
    related: ['body.cylinder-along-axis', 'body.tube-across-axis'],
  }),
  calculation({
    id: 'body.tube-across-axis',
    title: 'Inertia of a tube about an axis across it',
    equation: String.raw`I = \frac{m}{48} \left[ 3 \left( D^2 + d^2 \right) + 4 l^2 \right]`,
    inputs: { mass, diameter, bore, length },
    outputs: { inertia: inertia('an axis across it') },
    validity:
      'Uniform tube; length 0 for a thin ring about a diameter; m is the mass that is left after boring.',
    source: 'Derived: ∫(r² sin² θ + x²) dm over a uniform tube',
    compute: (inputs) => ({ inertia: tubeInertiaAcrossAxis(inputs) }),
    example: { mass: 0.3, diameter: 0.1, bore: 0.08, length: 0.02 },
    related: ['body.cylinder-across-axis', 'body.tube-along-axis'],
  }),
  calculation({
    id: 'body.rod-across-axis',
    title: 'Inertia of a thin rod about an axis across it',
    equation: String.raw`I = \frac{m l^2}{12}`,
    inputs: { mass, length },
    outputs: { inertia: inertia('an axis across it') },
    validity: 'Uniform rod, thin against its length (a round one of a quarter of its length has 5 % more).',
    source: 'OpenStax, University Physics Volume 1, section 10.5',
    compute: (inputs) => ({ inertia: rodInertiaAcrossAxis(inputs) }),
    example: { mass: 0.02, length: 0.3 },
    related: ['body.cylinder-across-axis'],
  }),
];
