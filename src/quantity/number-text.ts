/**
 * Reads a number at the head of a text as people write it: `73.2`, `−0.5`, `.5`, `1e-3`, `1.2×10^-3`, `12 345.678 9`,
 * `1/2`, `1 1/2`, `½`, `73.2(4)`. The value is kept as an exact fraction; see `rational.ts`.
 */
import { plainFigures } from './dimension.ts';
import { add, divide, type Rational, rational, shift } from './rational.ts';

export interface NumberText {
  readonly value: Rational;
  /** Standard uncertainty from figures in brackets on the last digits, `73.2(4)`. */
  readonly bracket?: Rational;
  /** Where the number ends in the text. */
  readonly end: number;
}

export type NumberFault = 'not-a-number' | 'decimal-comma' | 'too-large';

/** Exponents beyond this leave the doubles anyway, and would cost time as exact fractions. */
const LARGEST_EXPONENT = 400;

const SIGN = /[-−–+]/y;
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Figures before and after the point; in groups of three with spaces, as the SI prints them, or without. */
const WHOLE = /\d{1,3}(?: \d{3})+(?!\d)(?! *\/ *\d)|\d+/y;
const DECIMALS = /\.(?:\d{3}(?: \d{3})* \d{1,3}(?!\d)|\d*)/y;

/**
 * @param text  brought to one spelling (`oneSpelling`): every space is a plain one
 * @param from  where the number has to begin
 */
export function readNumber(text: string, from: number): NumberText | NumberFault {
  const sign = match(SIGN, text, from);
  const start = from + (sign?.length ?? 0);
  const magnitude = readFraction(text, start) ?? readDecimal(text, start);
  if (typeof magnitude === 'string') return magnitude;
  const negative = sign !== undefined && sign !== '+';
  return negative ? { ...magnitude, value: negated(magnitude.value) } : magnitude;
}

/** `1/2`, `1 1/2`, `1-1/2`, `½`, `1½`, `1 ½`. Not `1/2` of a longer decimal such as `1/2.5`. */
function readFraction(text: string, from: number): NumberText | NumberFault | undefined {
  const found = match(
    /(?:\d{1,6}(?: +|-))?\d{1,6} ?\/ ?\d{1,6}(?![\d.,])|(?:\d{1,6} ?)?[½¼¾⅓⅔⅛⅜⅝⅞]/uy,
    text,
    from,
  );
  if (found === undefined) return undefined;
  const plain = found.replace(/[½¼¾⅓⅔⅛⅜⅝⅞]/u, (sign) => ` ${VULGAR[sign]}`).replace(/ ?\/ ?/, '/');
  const parts = plain.trim().split(/ +|-/);
  const fraction = parts.at(-1) ?? '';
  if (/\/0+$/.test(fraction)) return 'not-a-number';
  const value = parts.length > 1 ? add(rational(parts[0] ?? '0'), rational(fraction)) : rational(fraction);
  return { value, end: from + found.length };
}

function readDecimal(text: string, from: number): NumberText | NumberFault {
  const whole = match(WHOLE, text, from) ?? '';
  const figures = whole + (match(DECIMALS, text, from + whole.length) ?? '');
  if (!/\d/.test(figures)) return 'not-a-number';
  let end = from + figures.length;
  if (/,\d/y.test(text.slice(end))) return 'decimal-comma';
  const plain = figures.replaceAll(' ', '');
  const decimals = plain.split('.')[1]?.length ?? 0;

  const bracket = match(/ ?\(\d+(?:\.\d+)?\)/y, text, end);
  end += bracket?.length ?? 0;
  const power = match(
    /e[-−+]?\d+| ?[×x*·] ?10(?:\^ ?(?:\([-−+]?\d+\)|[-−+]?\d+)|[⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)/iuy,
    text,
    end,
  );
  end += power?.length ?? 0;

  const exponent = power === undefined ? 0 : exponentOf(power);
  const value = scaled(plain, exponent);
  if (value === 'too-large') return value;
  if (bracket === undefined) return { value, end };
  const digits = bracket.replace(/[ ()]/g, '');
  // figures without a point count in the last digit; with one they stand in full, 73.2(0.4)
  const unscaled = digits.includes('.') ? rational(digits) : shift(rational(digits), -decimals);
  return { value, bracket: shift(unscaled, exponent), end };
}

/** The value of plain figures with a point and an exponent after e: `1.5e-3`. The caller has checked the form. */
export function plainDecimal(text: string): Rational | 'too-large' {
  const [figures = '', exponent = '0'] = text.toLowerCase().split('e');
  return scaled(figures, exponentOf(`e${exponent}`));
}

function scaled(figures: string, exponent: number): Rational | 'too-large' {
  if (Math.abs(exponent) > LARGEST_EXPONENT || figures.length > LARGEST_EXPONENT) return 'too-large';
  return shift(rational(`0${figures}`), exponent);
}

function exponentOf(power: string): number {
  const written = /^e/i.test(power) ? power.slice(1) : power.replace(/^.*10\^? ?/, '');
  return Number(plainFigures(written).replace(/[()+]/g, '').replace('−', '-'));
}

function negated(a: Rational): Rational {
  return divide(a, { numerator: -1n, denominator: 1n });
}

function match(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}
