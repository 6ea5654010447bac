/**
 * What kind of quantity a number is: the exponents of the base units. An angle counts as the number 1, so that
 * a moment times an angular speed is a power and I·ω·Ω is a moment.
 */

/** Exponents of kilogram, metre, second, ampere and kelvin; whole or half numbers. */
export interface Dimension {
  readonly kg: number;
  readonly m: number;
  readonly s: number;
  readonly A: number;
  readonly K: number;
}

const BASES = ['kg', 'm', 's', 'A', 'K'] as const;

export const NUMBER: Dimension = { kg: 0, m: 0, s: 0, A: 0, K: 0 };

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return BASES.every((base) => a[base] === b[base]);
}

export function isNumber(a: Dimension): boolean {
  return sameDimension(a, NUMBER);
}

/** a · b^exponent, the one operation that products, quotients, powers and roots of dimensions come down to. */
export function timesPower(a: Dimension, b: Dimension, exponent: number): Dimension {
  return {
    kg: a.kg + b.kg * exponent,
    m: a.m + b.m * exponent,
    s: a.s + b.s * exponent,
    A: a.A + b.A * exponent,
    K: a.K + b.K * exponent,
  };
}

/** Whether every exponent is a whole or half number: the square root of a length is one, its cube root is not. */
export function isRepresentable(a: Dimension): boolean {
  return BASES.every((base) => Number.isInteger(2 * a[base]) && Math.abs(a[base]) <= LARGEST_EXPONENT);
}

/** Beyond this a formula has gone wrong; no quantity of mechanics comes near. */
const LARGEST_EXPONENT = 60;

interface Named {
  readonly dimension: Dimension;
  readonly unit: string;
  readonly name: string;
}

function named(kg: number, m: number, s: number, A: number, K: number, unit: string, name: string): Named {
  return { dimension: { kg, m, s, A, K }, unit, name };
}

/** Dimensions that have a name in the trade, with the unit in which a bare result is printed. */
const NAMED: readonly Named[] = [
  named(0, 0, 0, 0, 0, '1', 'a number without unit'),
  named(1, 0, 0, 0, 0, 'kg', 'a mass'),
  named(0, 1, 0, 0, 0, 'm', 'a length'),
  named(0, 2, 0, 0, 0, 'm²', 'an area'),
  named(0, 3, 0, 0, 0, 'm³', 'a volume'),
  named(0, 0, 1, 0, 0, 's', 'a time'),
  named(0, 0, -1, 0, 0, '1/s', 'a frequency or an angular speed'),
  named(0, 0, -2, 0, 0, '1/s²', 'an angular acceleration'),
  named(0, 0, 0, 1, 0, 'A', 'a current'),
  named(0, 0, 0, 0, 1, 'K', 'a temperature'),
  named(0, 1, -1, 0, 0, 'm/s', 'a speed'),
  named(0, 1, -2, 0, 0, 'm/s²', 'an acceleration'),
  named(1, 1, 0, 0, 0, 'kg·m', 'a first moment of mass'),
  named(1, 2, 0, 0, 0, 'kg·m²', 'a moment of inertia'),
  named(1, -3, 0, 0, 0, 'kg/m³', 'a density'),
  named(1, -1, 0, 0, 0, 'kg/m', 'a mass per length'),
  named(1, 1, -1, 0, 0, 'N·s', 'a momentum'),
  named(1, 2, -1, 0, 0, 'N·m·s', 'an angular momentum'),
  named(1, 1, -2, 0, 0, 'N', 'a force'),
  named(1, 2, -2, 0, 0, 'N·m', 'a moment or an energy'),
  named(1, 2, -3, 0, 0, 'W', 'a power'),
  named(1, -1, -2, 0, 0, 'Pa', 'a pressure or a stress'),
  named(1, 0, -2, 0, 0, 'N/m', 'a stiffness'),
  named(1, 0, -1, 0, 0, 'kg/s', 'a mass flow or a damping'),
  named(0, 0, 1, 1, 0, 'A·s', 'an electric charge'),
  named(1, 2, -3, -1, 0, 'V', 'a voltage'),
  named(1, 2, -3, -2, 0, 'Ω', 'a resistance'),
  named(-1, -2, 4, 2, 0, 'F', 'a capacitance'),
  named(1, 2, -2, -2, 0, 'H', 'an inductance'),
  named(-1, -2, 2, 1, 0, '1/(s·V)', 'a motor speed constant'),
  named(1, 2, -2, -1, 0, 'V·s', 'a motor moment constant'),
];

/** The SI unit in which a result of this dimension is printed: `N·m`, else products of base units. */
export function unitTextOf(dimension: Dimension): string {
  return find(dimension)?.unit ?? product(dimension);
}

/** In the trade's words, with its article: `a mass`, `a moment or an energy`. */
export function describeDimension(dimension: Dimension): string {
  return find(dimension)?.name ?? `a quantity in ${product(dimension)}`;
}

function find(dimension: Dimension): Named | undefined {
  return NAMED.find((entry) => sameDimension(entry.dimension, dimension));
}

/** `kg·m^0.5/s²`: positive powers, one solidus, negative powers in brackets where there are several. */
function product(dimension: Dimension): string {
  const above = BASES.filter((base) => dimension[base] > 0).map((base) => base + raised(dimension[base]));
  const below = BASES.filter((base) => dimension[base] < 0).map((base) => base + raised(-dimension[base]));
  const top = above.length > 0 ? above.join('·') : '1';
  if (below.length === 0) return top;
  return below.length === 1 ? `${top}/${below[0]}` : `${top}/(${below.join('·')})`;
}

function raised(exponent: number): string {
  if (exponent === 1) return '';
  return Number.isInteger(exponent) ? superscript(exponent) : `^${exponent}`;
}

const SUPERSCRIPTS: Readonly<Record<string, string>> = {
  '-': '⁻',
  0: '⁰',
  1: '¹',
  2: '²',
  3: '³',
  4: '⁴',
  5: '⁵',
  6: '⁶',
  7: '⁷',
  8: '⁸',
  9: '⁹',
};

/** A whole number in raised figures: -3 gives ⁻³. */
export function superscript(exponent: number): string {
  return [...String(exponent)].map((figure) => SUPERSCRIPTS[figure] ?? figure).join('');
}

/** Raised figures back to plain ones: ⁻³ gives -3. */
export function plainFigures(raisedText: string): string {
  return [...raisedText].map((sign) => PLAIN.get(sign) ?? sign).join('');
}

const PLAIN: ReadonlyMap<string, string> = new Map(
  Object.entries(SUPERSCRIPTS).map(([plain, sign]) => [sign, plain]),
);
