/**
 * Numbers and quantities in a formula: `1e-3`, `73 g`, `2.5 m/s²`, `0.2 N·m·s/rad`. The rules, so that no formula
 * can be read in two ways:
 *
 * - a unit stands only directly after a number; anywhere else a word is the name of a figure;
 * - it has no spaces inside, and is joined by · and one /, not by *: `3 m / s` divides by the figure s;
 * - hertz is refused, because 10 Hz is 10 1/s to one reader and 62.8 rad/s to another.
 */
import { type Cursor, passSpaces, take } from '../cursor.ts';
import { plainDecimal } from '../number-text.ts';
import type { ProblemError } from '../problem.ts';
import { toSi } from '../reading.ts';
import { isUnitWord, parseUnit, type Unit, unitOf } from '../unit.ts';
import { fault, moved } from './fault.ts';
import type { Span, Token } from './token.ts';

const NUMBER = /(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-−+]?\d+)?/uy;
const UNIT_WORD = /g_n|[\p{L}°%‰℃℉][\p{L}\p{Nd}_]*/uy;
const UNIT_POWER = /⁻?[⁰¹²³⁴-⁹]+|\^(?:\([-−]?\d\)|[-−]?\d)(?![\d.])/uy;
const UNIT_GROUP = /\([\p{L}°·⋅¹²³⁴⁻^\d-]+\)/uy;

/** The number that begins here, with its unit if one follows; undefined where no number begins. */
export function readLiteral(cursor: Cursor): Token | undefined {
  const from = cursor.at;
  const figures = take(cursor, NUMBER);
  if (figures === undefined) return undefined;
  const tooLarge = (): Error =>
    fault('quantity.too-large', { text: figures, example: '1e6' }, [from, cursor.at]);
  const value = plainDecimal(figures);
  if (value === 'too-large') throw tooLarge();

  const unit = readUnit(cursor, figures);
  const si = toSi(value, unit?.unit ?? unitOf('1'));
  if (!Number.isFinite(si)) throw tooLarge();
  const span: Span = [from, cursor.at];
  return unit ? { kind: 'quantity', si, ...unit, span } : { kind: 'number', value: si, span };
}

function readUnit(cursor: Cursor, figures: string): { unit: Unit; joined: readonly string[] } | undefined {
  const afterNumber = cursor.at;
  passSpaces(cursor);
  const from = cursor.at;
  const word = take(cursor, UNIT_WORD);
  if (word === undefined || word === 'and' || word === 'or') {
    cursor.at = afterNumber;
    return undefined;
  }
  if (!isUnitWord(word)) throw notAUnit(word, from);
  const joined = readJoined(cursor);
  const unit = parseUnit(cursor.text.slice(from, cursor.at));
  if (!unit.ok) throw moved(unit.problem, from);
  refuseInFormulas(unit.value, [from, cursor.at]);
  if (word === 'in' && isConversion(cursor)) {
    throw fault('expression.inch-or-in', { number: figures }, [from, cursor.text.length]);
  }
  return { unit: unit.value, joined };
}

function notAUnit(word: string, from: number): ProblemError {
  const read = parseUnit(word);
  const isMisspelt = !read.ok && read.problem.code === 'quantity.misspelt-unit';
  return isMisspelt
    ? moved(read.problem, from)
    : fault('expression.not-a-unit', { word }, [from, from + word.length]);
}

/** The rest of a unit after its first word, as far as it is one: `/s²` of `m/s²`, nothing of `/x`. */
function readJoined(cursor: Cursor): readonly string[] {
  const joined: string[] = [];
  take(cursor, UNIT_POWER);
  for (;;) {
    const before = cursor.at;
    const sign = take(cursor, /[·⋅/]/y);
    if (sign === undefined) return joined;
    const group = sign === '/' ? take(cursor, UNIT_GROUP) : undefined;
    const word = group ?? take(cursor, UNIT_WORD);
    const isUnit = word !== undefined && (group === undefined ? isUnitWord(word) : parseUnit(word).ok);
    if (!isUnit) {
      cursor.at = before;
      return joined;
    }
    joined.push(...(word.match(/[\p{L}_]+/gu) ?? []));
    take(cursor, UNIT_POWER);
    if (sign === '/') return joined;
  }
}

/** `5 in mm` at the end of a formula: meant as a conversion, read as inches. */
function isConversion(cursor: Cursor): boolean {
  const rest = cursor.text.slice(cursor.at).trim();
  return /^(?!in )[\p{L}°%]/u.test(rest) && parseUnit(rest).ok;
}

/** The unit that a closing `in` asks for: the rest of the text. */
export function readTarget(cursor: Cursor, from: number): Unit {
  passSpaces(cursor);
  const start = cursor.at;
  cursor.at = cursor.text.length;
  if (start === cursor.at) throw fault('expression.unfinished', {}, [from, start]);
  const unit = parseUnit(cursor.text.slice(start));
  if (!unit.ok) throw moved(unit.problem, start);
  refuseInFormulas(unit.value, [from, cursor.at]);
  return unit.value;
}

function refuseInFormulas(unit: Unit, span: Span): void {
  if (unit.offset) throw fault('expression.no-temperature-scale', { unit: unit.text }, span);
  if (/Hz/.test(unit.text)) throw fault('expression.no-hertz', { unit: unit.text }, span);
}
