/**
 * Reads unit texts: `kg·m²`, `N m`, `rad/(s·V)`, `1/min`, `ozf·in`, `m/s^2`. The grammar is written out in
 * `readProduct`; the words come from `unit-table.ts`.
 *
 * An angle counts as the number 1 in the dimension, but the text remembers it (`angle`), so that a field in
 * radians can refuse a percentage, and so that hertz never passes for radians per second.
 */
import type { ProblemCode } from './catalogue.ts';
import { type Cursor, passSpaces, take } from './cursor.ts';
import { type Dimension, isRepresentable, NUMBER, plainFigures, timesPower } from './dimension.ts';
import { bad, good, type Problem, ProblemError, type Result } from './problem.ts';
import { bits, multiply, nearest, ONE, power, type Rational, rational, shift } from './rational.ts';
import { PREFIXES, UNIT_ROWS, type UnitRow } from './unit-table.ts';

export interface Unit {
  /** As written, without outer spaces. */
  readonly text: string;
  /** SI units in one of this unit. */
  readonly factor: number;
  /** The same without rounding: ratio · π^pi. */
  readonly exact: { readonly ratio: Rational; readonly pi: number };
  readonly dimension: Dimension;
  /** Exponent of the angle as written: 1 in `rpm`, −1 in `N·m/rad`, 0 in `Hz`. */
  readonly angle: number;
  /** Only for °C and °F: added to the number before the factor. */
  readonly offset?: Rational;
}

const LONGEST_UNIT_TEXT = 60;
const LARGEST_POWER = 9;
/** Of an exact factor: beyond the doubles, and below what would take time, as ((km^9)^9)^9 in brackets of brackets would. */
const MOST_BITS = 4000;
const CACHE_SIZE = 500;
const cache = new Map<string, Result<Unit>>();

/**
 * @param place  where the text stands, for the problem
 * @returns the unit, or a problem whose range points into `text`
 */
export function parseUnit(text: string, place = 'unit'): Result<Unit> {
  const known = cache.get(text);
  const result = known ?? readWhole(text);
  if (!known && text.length <= LONGEST_UNIT_TEXT) {
    if (cache.size >= CACHE_SIZE) cache.clear();
    cache.set(text, result);
  }
  return result.ok ? result : { ok: false, problem: { ...result.problem, place } };
}

/**
 * A unit text that the program itself wrote.
 *
 * @throws ProblemError when it cannot be read: that is a bug of ours, not of the person who types
 */
export function unitOf(text: string): Unit {
  const result = parseUnit(text);
  if (!result.ok) throw new ProblemError(result.problem);
  return result.value;
}

/** The dimension of a unit text that the program itself wrote: `dimension('kg·m²')`. Throws as `unitOf` does. */
export function dimension(unitText: string): Dimension {
  return unitOf(unitText).dimension;
}

/** Two code points for one sign, and typographic spaces, brought to one spelling; lengths stay as they are. */
export function oneSpelling(text: string): string {
  return text
    .replaceAll('\u03BC', 'µ')
    .replaceAll('\u2126', 'Ω')
    .replace(/[\s\u200B]/g, ' ');
}

type Raw = Omit<Unit, 'text' | 'factor'>;
const PURE: Raw = { exact: { ratio: ONE, pi: 0 }, dimension: NUMBER, angle: 0 };

/** Leaves the nested readers on the first fault; caught in `readWhole`. */
function fault(code: ProblemCode, figures: Problem['figures'], from: number, to: number): ProblemError {
  return new ProblemError({ code, place: '', figures, range: [from, to] });
}

function readWhole(text: string): Result<Unit> {
  const trimmed = text.trim();
  if (trimmed === '') return bad('quantity.missing-unit', '', { text, example: 'kg' }, [0, text.length]);
  if (trimmed.length > LONGEST_UNIT_TEXT) {
    return bad('quantity.unknown-unit', '', { unit: `${trimmed.slice(0, 20)}…`, example: 'kg·m²' }, [
      0,
      text.length,
    ]);
  }
  const cursor: Cursor = { text: oneSpelling(text), at: 0 };
  try {
    const raw = readProduct(cursor);
    passSpaces(cursor);
    if (cursor.at < text.length) throw unreadable(cursor, cursor.at);
    return good({ ...raw, text: trimmed, factor: nearest(raw.exact.ratio) * Math.PI ** raw.exact.pi });
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: error.problem };
    throw error;
  }
}

/**
 *     product = [ '/' ] factor { ( '·' | '*' | '×' | '-' | space ) factor } [ '/' factor ]
 *     factor  = ( word | '1' | '(' product ')' ) [ power ]
 *     power   = '²' | '^2' | '^(-2)' | '2' | '^0.5', the last for coherent SI units only
 *
 * One solidus, and nothing multiplied after it: `kg/m·s` could be meant both ways, so it asks for brackets.
 */
function readProduct(cursor: Cursor): Raw {
  const start = cursor.at;
  passSpaces(cursor);
  if (take(cursor, /\//y)) return raise(PURE, readFactor(cursor), -1, cursor, start);
  let result = readFactor(cursor);
  for (;;) {
    const before = cursor.at;
    if (take(cursor, / *[·⋅∙*×] *| *\/ *| +(?=[^ )])|-(?=\p{L})/uy) === undefined) return result;
    const divides = cursor.text.slice(before, cursor.at).includes('/');
    result = raise(result, readFactor(cursor), divides ? -1 : 1, cursor, start);
    if (!divides) continue;
    const after = cursor.at;
    if (take(cursor, / *[·⋅∙*×/] *| +(?=[^ )])|-(?=\p{L})/uy) !== undefined) {
      throw fault('quantity.unit-brackets', { unit: cursor.text.trim() }, after, cursor.text.length);
    }
    return result;
  }
}

function readFactor(cursor: Cursor): Raw {
  const start = cursor.at;
  let base: Raw;
  if (take(cursor, /\(/y)) {
    base = readProduct(cursor);
    passSpaces(cursor);
    if (take(cursor, /\)/y) === undefined) throw unreadable(cursor, start);
  } else if (take(cursor, /1(?![\d.])/y)) {
    base = PURE;
  } else {
    const word = take(cursor, /g_n|[\p{L}°%‰″"℃℉]+/uy);
    if (word === undefined) throw unreadable(cursor, start);
    base = unitWord(word, start);
  }
  const exponent = readPower(cursor);
  return exponent === 1 ? base : raise(PURE, base, exponent, cursor, start);
}

function readPower(cursor: Cursor): number {
  const start = cursor.at;
  const written =
    take(cursor, /[⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/uy) ??
    take(cursor, / ?(?:\^|\*\*) ?(?:\([-−]?\d*\.?\d+\)|[-−]?\d*\.?\d+)/uy) ??
    take(cursor, /[-−]?\d+/uy);
  if (written === undefined) return 1;
  const exponent = Number(
    plainFigures(written)
      .replace(/[\^*() ]/g, '')
      .replace('−', '-'),
  );
  if (Math.abs(exponent) > LARGEST_POWER || exponent === 0) throw unreadable(cursor, start);
  return exponent;
}

function raise(product: Raw, factor: Raw, exponent: number, cursor: Cursor, start: number): Raw {
  if (factor.offset) {
    throw fault(
      'quantity.temperature-in-product',
      { unit: cursor.text.slice(start, cursor.at).trim() },
      start,
      cursor.at,
    );
  }
  if (product.offset) return raise(PURE, product, 1, cursor, start);
  const { ratio, pi } = factor.exact;
  const dimension = timesPower(product.dimension, factor.dimension, exponent);
  const isCoherent = ratio.numerator === ratio.denominator && pi === 0;
  const isExact = isCoherent || Number.isInteger(exponent);
  if (!isExact || !isRepresentable(dimension) || bits(ratio) * Math.abs(exponent) > MOST_BITS) {
    throw unreadable(cursor, start);
  }
  return {
    exact: {
      ratio: isCoherent ? product.exact.ratio : multiply(product.exact.ratio, power(ratio, exponent)),
      pi: product.exact.pi + pi * exponent,
    },
    dimension,
    angle: product.angle + factor.angle * exponent,
  };
}

function unreadable(cursor: Cursor, from: number): ProblemError {
  const unit = cursor.text.slice(from).trim() || cursor.text.trim();
  return fault('quantity.unknown-unit', { unit, example: 'kg·m²' }, from, cursor.text.length);
}

/** Every spelling with every prefix of its row; made once, row by row, each from the rows above it. */
const WORDS = new Map<string, Raw>();
for (const row of UNIT_ROWS) addRow(row);

function addRow(row: UnitRow): void {
  const of: Raw = row.of ? unitOf(row.of) : { ...PURE, dimension: row.base ?? NUMBER, angle: row.angle ?? 0 };
  const ratio = row.factor ? multiply(of.exact.ratio, rational(row.factor)) : of.exact.ratio;
  const pi = of.exact.pi + (row.pi ?? 0);
  for (const symbol of row.symbols) {
    WORDS.set(symbol, {
      exact: { ratio, pi },
      dimension: of.dimension,
      angle: of.angle,
      ...(row.offset ? { offset: rational(row.offset) } : {}),
    });
  }
  const letters = [...(row.prefixes ?? ''), ...(row.prefixes?.includes('µ') ? ['u'] : [])];
  for (const letter of letters) {
    for (const symbol of row.symbols) {
      const prefixed = { ratio: shift(ratio, PREFIXES[letter] ?? 0), pi };
      WORDS.set(letter + symbol, { exact: prefixed, dimension: of.dimension, angle: of.angle });
    }
  }
}

/** Whether the word alone is a unit: `kg`, `°`, `mAh`. */
export function isUnitWord(word: string): boolean {
  return WORDS.has(oneSpelling(word));
}

function unitWord(word: string, start: number): Raw {
  const known = WORDS.get(word);
  if (known) return known;
  const other = [...WORDS.keys()].find((candidate) => candidate.toLowerCase() === word.toLowerCase());
  throw other
    ? fault('quantity.misspelt-unit', { unit: word, suggestion: other }, start, start + word.length)
    : fault('quantity.unknown-unit', { unit: word, example: 'kg·m²' }, start, start + word.length);
}
