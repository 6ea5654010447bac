/**
 * The units that people write, as data. Each is defined by an exact factor and units above it in the table;
 * the coherent SI units come first. Adding a unit is adding a row.
 *
 * Sources: SI Brochure (9th ed., 2019) for SI and the units accepted with it; the exact definitions inch = 25.4 mm,
 * pound = 0.453 592 37 kg (international agreement of 1959), g_n = 9.806 65 m/s² (CGPM 1901).
 */
import type { Dimension } from './dimension.ts';

export interface UnitRow {
  /** Spellings; the first one is the one that a nearby misspelling is told about. */
  readonly symbols: readonly string[];
  /** Exact, decimal or fraction; 1 when absent. */
  readonly factor?: string;
  /** Power of π that multiplies the factor. */
  readonly pi?: number;
  /** In units of rows above; absent for a base. */
  readonly of?: string;
  readonly base?: Dimension;
  /** Exponent of the angle, for a base only; products and quotients carry it along. */
  readonly angle?: number;
  /** Prefixes that it is used with, one letter each. */
  readonly prefixes?: string;
  /** Added to the number before the factor: a scale that does not begin at nought. */
  readonly offset?: string;
}

/** Powers of ten. */
export const PREFIXES: Readonly<Record<string, number>> = {
  T: 12,
  G: 9,
  M: 6,
  k: 3,
  d: -1,
  c: -2,
  m: -3,
  µ: -6,
  u: -6, // as typed where the keyboard has no µ
  n: -9,
  p: -12,
};

const NONE = { kg: 0, m: 0, s: 0, A: 0, K: 0 };

export const UNIT_ROWS: readonly UnitRow[] = [
  // bases; the gram carries the prefixes
  { symbols: ['g'], factor: '1/1000', base: { ...NONE, kg: 1 }, prefixes: 'kmµ' },
  { symbols: ['m'], base: { ...NONE, m: 1 }, prefixes: 'kdcmµn' },
  { symbols: ['s'], base: { ...NONE, s: 1 }, prefixes: 'mµn' },
  { symbols: ['A'], base: { ...NONE, A: 1 }, prefixes: 'kmµn' },
  { symbols: ['K'], base: { ...NONE, K: 1 }, prefixes: 'm' },
  { symbols: ['rad'], base: NONE, angle: 1, prefixes: 'mµ' },

  // numbers
  { symbols: ['%'], factor: '1/100', base: NONE },
  { symbols: ['‰'], factor: '1/1000', base: NONE },
  { symbols: ['ppm'], factor: '1/1000000', base: NONE },

  // angles and turns
  { symbols: ['°', 'deg', 'degree', 'degrees', 'º'], factor: '1/180', pi: 1, of: 'rad' },
  { symbols: ['rev', 'turn', 'turns'], factor: '2', pi: 1, of: 'rad' },

  // time
  { symbols: ['sec'], of: 's' },
  { symbols: ['min'], factor: '60', of: 's' },
  { symbols: ['h', 'hr', 'hour', 'hours'], factor: '3600', of: 's' },
  { symbols: ['Hz'], of: '1/s', prefixes: 'GMkm' },
  { symbols: ['rpm', 'RPM'], of: 'rev/min', prefixes: 'k' },

  // mechanics, SI
  { symbols: ['N'], of: 'kg·m/s²', prefixes: 'Mkmµ' },
  { symbols: ['Nm'], of: 'N·m', prefixes: 'kmµ' },
  { symbols: ['Ncm'], of: 'N·cm' },
  { symbols: ['Nmm'], of: 'N·mm' },
  { symbols: ['Nms'], of: 'N·m·s' },
  { symbols: ['Pa'], of: 'N/m²', prefixes: 'GMkm' },
  { symbols: ['bar'], factor: '100000', of: 'Pa', prefixes: 'm' },
  { symbols: ['J'], of: 'N·m', prefixes: 'MkmµG' },
  { symbols: ['W'], of: 'J/s', prefixes: 'MkmµG' },
  { symbols: ['Wh'], of: 'W·h', prefixes: 'Mkm' },
  { symbols: ['L', 'l'], factor: '1/1000', of: 'm³', prefixes: 'm' },
  { symbols: ['t'], factor: '1000', of: 'kg' },
  { symbols: ['kph', 'kmh'], of: 'km/h' },

  // electricity
  { symbols: ['C'], of: 'A·s', prefixes: 'mµkn' },
  { symbols: ['Ah'], of: 'A·h', prefixes: 'm' },
  { symbols: ['V'], of: 'W/A', prefixes: 'kmµ' },
  { symbols: ['Ω', 'ohm', 'ohms', 'Ohm'], of: 'V/A', prefixes: 'Mkmµ' },
  { symbols: ['F'], of: 'C/V', prefixes: 'mµnp' },
  { symbols: ['H'], of: 'V·s/A', prefixes: 'mµn' },

  // temperature: values only, never in a product
  { symbols: ['°C', 'degC', 'ºC', '℃'], of: 'K', offset: '273.15' },
  { symbols: ['°F', 'degF', 'ºF', '℉'], factor: '5/9', of: 'K', offset: '459.67' },

  // free fall, and forces told as weights
  { symbols: ['g_n', 'gn'], factor: '9.80665', of: 'm/s²' },
  { symbols: ['kgf', 'kp'], of: 'kg·g_n' },
  { symbols: ['gf'], of: 'g·g_n' },

  // inch and pound
  { symbols: ['in', 'inch', 'inches', '″', '"'], factor: '25.4', of: 'mm' },
  { symbols: ['thou', 'mil'], factor: '1/1000', of: 'in' },
  { symbols: ['ft', 'foot', 'feet'], factor: '12', of: 'in' },
  { symbols: ['yd'], factor: '3', of: 'ft' },
  { symbols: ['mi', 'mile', 'miles'], factor: '5280', of: 'ft' },
  { symbols: ['mph'], of: 'mi/h' },
  { symbols: ['fps'], of: 'ft/s' },
  { symbols: ['lb', 'lbs', 'lbm'], factor: '0.45359237', of: 'kg' },
  { symbols: ['oz'], factor: '1/16', of: 'lb' },
  { symbols: ['lbf'], of: 'lb·g_n' },
  { symbols: ['ozf'], of: 'oz·g_n' },
  { symbols: ['slug', 'slugs'], of: 'lbf·s²/ft' },
  { symbols: ['psi'], of: 'lbf/in²' },
  { symbols: ['ksi'], factor: '1000', of: 'psi' },
  { symbols: ['hp'], factor: '550', of: 'ft·lbf/s' },
];
