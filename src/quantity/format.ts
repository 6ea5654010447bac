/**
 * Prints figures for people: as many digits as the uncertainty allows, the real minus sign, and the spacing of the
 * SI Brochure (9th ed., 5.4): a space before every unit but °.
 *
 * Source for the digits: JCGM 100:2008 7.2.2, 7.2.6. Rounding is to the nearest, never up.
 */
import { superscript } from './dimension.ts';
import { nearest } from './rational.ts';
import { standardUncertainty, type Uncertain } from './uncertain.ts';
import { type Unit, unitOf } from './unit.ts';
import { printedUnit } from './unit-print.ts';

const MINUS = '\u2212';
/** Between a number and its unit and between groups of figures; no line breaks there. */
const NARROW_SPACE = '\u202F';

const DIGITS_OF_UNCERTAINTY = 2;
const DIGITS_WITHOUT_UNCERTAINTY = 4;
/** However small the uncertainty, figures beyond these are made up by the binary form. */
const DIGITS_OF_A_DOUBLE = 15;

/** Places of the first digit between which no power of ten is set apart. */
const LARGEST_PLAIN = 5;
const SMALLEST_PLAIN = -4;

/** A value in SI as a number of display units: `toDisplay(0.0732, 'g')` is 73.2. */
export function toDisplay(si: number, display: string): number {
  const unit = unitOf(display);
  return differenceToDisplay(si, unit) - (unit.offset ? nearest(unit.offset) : 0);
}

/** Multiplies by the inverse's exact numerator and denominator where they are small, so that 0.0732 kg is 73.2 g. */
function differenceToDisplay(si: number, unit: Unit): number {
  const { ratio, pi } = unit.exact;
  const turns = pi === 0 ? si : si / Math.PI ** pi;
  return (turns * Number(ratio.denominator)) / Number(ratio.numerator);
}

/**
 * @param si    value in SI
 * @param unit  unit to print it in; `1` prints none
 * @param u     standard uncertainty in SI. Its place decides the digits; it is not printed. Without it, or when it is
 *              0, four significant digits
 * @throws ProblemError  for a unit that cannot be read
 */
export function formatValue(si: number, unit: string, u?: number): string {
  const value = toDisplay(si, unit);
  const spread = u === undefined ? 0 : Math.abs(differenceToDisplay(u, unitOf(unit)));
  return withUnit(print(value, spread, false), unit);
}

/** Value with its uncertainty in brackets on the last digits, `0.0742(12) kg·m²`; no brackets where it is 0. */
export function formatUncertain(figure: Uncertain, unit: string): string {
  const u = standardUncertainty(figure);
  return withUnit(
    print(toDisplay(figure.value, unit), Math.abs(differenceToDisplay(u, unitOf(unit))), true),
    unit,
  );
}

function withUnit(number: string, unit: string): string {
  const printed = printedUnit(unit);
  if (printed === '1') return number;
  return printed === '°' ? `${number}°` : `${number}${NARROW_SPACE}${printed}`;
}

function print(value: number, u: number, bracket: boolean): string {
  if (!Number.isFinite(value)) return Number.isNaN(value) ? 'not a number' : signed(value, '∞');
  const known = u > 0 && Number.isFinite(u);
  const size = Math.abs(value);
  const last = known
    ? Math.max(
        lastPlace(u, DIGITS_OF_UNCERTAINTY),
        size > 0 ? lastPlace(size, DIGITS_OF_A_DOUBLE) : -Infinity,
      )
    : lastPlace(size, DIGITS_WITHOUT_UNCERTAINTY);
  const place = placeOf(Math.max(size, known ? u : 0), last);
  // a last place left of the point would print noughts that claim to be known
  const apart = place > LARGEST_PLAIN || place < SMALLEST_PLAIN || (known && last > 0);
  const power = apart ? place : 0;
  const decimals = Math.min(Math.max(power - last, 0), 100);
  const rounded = over(size, power).toFixed(decimals);
  // without an uncertainty, noughts at the end would claim an accuracy that nobody has stated
  const digits = signed(value, known ? rounded : rounded.replace(/\.0+$|(\.\d*?)0+$/, '$1'));
  const spread = known && bracket ? concise(over(u, power), decimals) : '';
  return `${grouped(digits)}${spread}${power === 0 ? '' : `×10${superscript(power)}`}`;
}

/** size / 10^power, also where 10^power is no double. */
function over(size: number, power: number): number {
  const [figures, exponent] = size.toExponential().split('e');
  return power === 0 ? size : Number(`${figures}e${Number(exponent) - power}`);
}

/** Uncertainty in units of the value's last digit, bracketed: 0.0012 beside four decimals is (12). */
function concise(u: number, decimals: number): string {
  const figures = u.toFixed(decimals).replace('.', '').replace(/^0+/, '');
  return figures === '' ? '' : `(${figures})`;
}

/** Groups of three from the point on, where a side of it has more than four figures. SI Brochure 5.4.4. */
function grouped(digits: string): string {
  const [whole = '', decimals] = digits.split('.');
  const left = whole.replace(/\D/g, '').length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, NARROW_SPACE) : whole;
  if (decimals === undefined) return left;
  return `${left}.${decimals.length > 4 ? decimals.replace(/\d{3}(?=\d)/g, `$&${NARROW_SPACE}`) : decimals}`;
}

/** Exponent of ten of the last of `digits` significant digits, after rounding: 0.0996 to two is 0.10, place −2. */
export function lastPlace(value: number, digits: number): number {
  if (value === 0) return 0;
  return (
    Number(
      Math.abs(value)
        .toExponential(digits - 1)
        .split('e')[1],
    ) -
    (digits - 1)
  );
}

/** Exponent of ten of the first digit, once rounded at the last place: 9.999e5 at place 3 is 1.000e6. */
function placeOf(size: number, last: number): number {
  if (size === 0) return 0;
  const digits = Math.floor(Math.log10(size)) - last;
  return Number(size.toExponential(Math.min(Math.max(digits, 0), 100)).split('e')[1]);
}

/** The sign in front, unless only noughts are left of it. */
function signed(value: number, digits: string): string {
  return value < 0 && /[1-9∞]/.test(digits) ? MINUS + digits : digits;
}
