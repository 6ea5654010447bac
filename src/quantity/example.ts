/** An example of what a field takes, for every message that refuses something. */
import { sameDimension } from './dimension.ts';
import { type Unit, unitOf } from './unit.ts';

/** Written as a builder would, in a size that occurs on a bench. First match wins. */
const EXAMPLES: readonly (readonly [unit: string, example: string])[] = [
  ['%', '80 %'],
  ['1', '1.5'],
  ['°', '30°'],
  ['rpm', '8500 rpm'],
  ['rad/s', '12 rad/s'],
  ['rad/(s·V)', '900 rpm/V'],
  ['kg', '73.2 g'],
  ['m', '120 mm'],
  ['s', '20 ms'],
  ['min', '10 min'],
  ['A', '8 A'],
  ['V', '7.4 V'],
  ['mΩ', '45 mΩ'],
  ['Ω', '45 mΩ'],
  ['A·h', '2200 mAh'],
  ['m/s', '2 m/s'],
  ['km/h', '15 km/h'],
  ['m/s²', '2.5 m/s²'],
  ['kg·m²', '1.2e-3 kg·m²'],
  ['N', '25 N'],
  ['N·m/rad', '0.05 N·m/rad'],
  ['N·m·s/rad', '0.002 N·m·s/rad'],
  ['N·m', '1.5 N·m'],
  ['MPa', '250 MPa'],
  ['kg/m³', '7850 kg/m³'],
  ['°C', '25 °C'],
];

/** The example that stands for the very unit, else for its kind, else a plain number before the unit's text. */
export function exampleFor(field: Unit): string {
  const byText = EXAMPLES.find(([unit]) => unit === field.text);
  if (byText) return byText[1];
  const byKind = EXAMPLES.find(([text]) => {
    const unit = unitOf(text);
    return unit.angle === field.angle && sameDimension(unit.dimension, field.dimension);
  });
  return byKind?.[1] ?? `2.5 ${field.text}`;
}
