/**
 * Inertia of round bodies that are neither cylinder nor tube: balls, cones, domes. Each about an axis through its own
 * centre of gravity; all are uniform solids. Cylinders, tubes, discs and rings stand in `bodies.ts`.
 */
import { type Calculation, calculation } from './calculation.ts';
import { requireNotNegative, requirePositive } from './domain.ts';

function requireRound(body: { readonly mass: number; readonly diameter: number }): void {
  requireNotNegative('mass', body.mass, 'kg');
  requirePositive('diameter', body.diameter, 'm');
}

/**
 * Inertia of a solid sphere about any diameter: I = m D² / 10, kg·m², mass m in kg, diameter D in m.
 *
 * @throws DomainError  for a negative mass or a diameter that is not positive
 * Source: OpenStax, University Physics 1, section 10.5 (2 m R²/5).
 */
export function sphereInertia(sphere: { readonly mass: number; readonly diameter: number }): number {
  requireRound(sphere);
  return (sphere.mass * sphere.diameter ** 2) / 10;
}

/**
 * Inertia of a solid cone about its own axis: I = 3 m D² / 40, kg·m², mass m in kg, diameter D of its base in m.
 *
 * @throws DomainError  for a negative mass or a diameter that is not positive
 * Source: ∫ ½ r² dm over discs whose radius grows evenly from the tip.
 */
export function coneInertiaAlongAxis(cone: { readonly mass: number; readonly diameter: number }): number {
  requireRound(cone);
  return (3 * cone.mass * cone.diameter ** 2) / 40;
}

/**
 * Inertia of a solid cone about an axis across it through its centre of gravity, a quarter of the height above its base.
 *
 *   I = 3 m (D² + h²) / 80
 *
 * @param mass      m, kg, not negative
 * @param diameter  D, m, of the base, more than 0
 * @param height    h, m, not negative
 * @returns I, kg·m²
 * @throws DomainError  outside these ranges
 * Source: ∫ (r²/4 + z²) dm over discs whose radius grows evenly from the tip, moved to the centre of gravity.
 */
export function coneInertiaAcrossAxis(cone: {
  readonly mass: number;
  readonly diameter: number;
  readonly height: number;
}): number {
  requireRound(cone);
  requireNotNegative('height', cone.height, 'm');
  return (3 * cone.mass * (cone.diameter ** 2 + cone.height ** 2)) / 80;
}

const mass = { symbol: 'm', unit: 'kg', meaning: 'mass of the part' } as const;
const diameter = { symbol: 'D', unit: 'm', meaning: 'diameter' } as const;
const base = { symbol: 'D', unit: 'm', meaning: 'diameter of the base' } as const;
const inertia = (axis: string) =>
  ({ symbol: 'I', unit: 'kg·m²', meaning: `inertia about ${axis} through the centre of gravity` }) as const;

export const roundBodyCalculations: readonly Calculation[] = [
  calculation({
    id: 'body.sphere',
    title: 'Inertia of a sphere',
    equation: String.raw`I = \frac{m D^2}{10}`,
    inputs: { mass, diameter },
    outputs: { inertia: inertia('any diameter') },
    validity: 'Uniform solid sphere.',
    source: 'OpenStax, University Physics Volume 1, section 10.5',
    compute: (inputs) => ({ inertia: sphereInertia(inputs) }),
    example: { mass: 0.059, diameter: 0.0243 },
    related: ['body.cylinder-along-axis', 'inertia.parallel-axis'],
  }),
  calculation({
    id: 'body.cone-along-axis',
    title: 'Inertia of a cone about its own axis',
    equation: String.raw`I = \frac{3 m D^2}{40}`,
    inputs: { mass, diameter: base },
    outputs: { inertia: inertia('its own axis') },
    validity: 'Uniform solid cone of any height.',
    source: 'Derived: ∫ ½ r² dm over a uniform cone',
    compute: (inputs) => ({ inertia: coneInertiaAlongAxis(inputs) }),
    example: { mass: 0.04, diameter: 0.03 },
    related: ['body.cone-across-axis'],
  }),
  calculation({
    id: 'body.cone-across-axis',
    title: 'Inertia of a cone about an axis across it',
    equation: String.raw`I = \frac{3 m}{80} \left( D^2 + h^2 \right)`,
    inputs: { mass, diameter: base, height: { symbol: 'h', unit: 'm', meaning: 'height of the cone' } },
    outputs: { inertia: inertia('an axis across it') },
    validity: 'Uniform solid cone; its centre of gravity is a quarter of the height above the base.',
    source: 'Derived: ∫ (r²/4 + z²) dm over a uniform cone',
    compute: (inputs) => ({ inertia: coneInertiaAcrossAxis(inputs) }),
    example: { mass: 0.04, diameter: 0.03, height: 0.05 },
    related: ['body.cone-along-axis'],
  }),
];
