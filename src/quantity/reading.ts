/** What reading a value and reading its uncertainty have in common: the unit against the field, and the refusals. */
import type { ProblemCode } from './catalogue.ts';
import { unitForField } from './compatible.ts';
import { exampleFor } from './example.ts';
import type { NumberFault } from './number-text.ts';
import { bad, good, type Result } from './problem.ts';
import { multiply, nearest, type Rational } from './rational.ts';
import { oneSpelling, parseUnit, type Unit, unitOf } from './unit.ts';

/** A text being read against a field; carries what every refusal needs. */
export interface Reading {
  readonly typed: string;
  /** The same in one spelling (`oneSpelling`), character for character. */
  readonly text: string;
  readonly field: Unit;
  readonly place: string;
}

/** Half-open range of characters. */
export type Span = readonly [from: number, to: number];

const LONGEST_TEXT = 200;

export const PLUS_MINUS = /±|\+\/[-−]/u;
const LEADING_PLUS_MINUS = /^ *(?:(?:±|\+\/[-−]) *)?/u;

export function readingOf(text: string, unit: string, place: string): Reading {
  return { typed: text, text: oneSpelling(text), field: unitOf(unit), place };
}

/** Where the number begins: after spaces and a leading ±. */
export function startOfNumber(text: string): number {
  return LEADING_PLUS_MINUS.exec(text)?.[0].length ?? 0;
}

/** Exact up to the one rounding to a double, and one more where π comes in. */
export function toSi(value: Rational, unit: Unit): number {
  return nearest(multiply(value, unit.exact.ratio)) * Math.PI ** unit.exact.pi;
}

/** The unit written between two places of the text, if it fits the field. */
export function fieldUnit(reading: Reading, [from, to]: Span): Result<Unit> {
  const { text, field, place } = reading;
  const start = skipSpaces(text, from);
  const written = text.slice(start, to).trimEnd();
  const range: Span = [start, start + written.length];
  const example = exampleFor(field);
  if (written === '') {
    const takesBare = field.text === '1';
    if (takesBare) return good(field);
    return bad('quantity.missing-unit', place, { text: text.trim(), example }, [0, text.length]);
  }
  const unit = parseUnit(written, place);
  if (!unit.ok) {
    const { problem } = unit;
    const [a, b] = problem.range ?? [0, written.length];
    return {
      ok: false,
      problem: { ...problem, figures: { ...problem.figures, example }, range: [a + start, b + start] },
    };
  }
  return unitForField(unit.value, field, text.trim(), place, range);
}

export function refuseOutright({ text, field, place }: Reading): Result<never> | undefined {
  const example = exampleFor(field);
  if (text.trim() === '') return bad('quantity.empty', place, { example }, [0, text.length]);
  if (text.length > LONGEST_TEXT) {
    const figures = { length: text.length, limit: LONGEST_TEXT, example };
    return bad('quantity.too-long', place, figures, [LONGEST_TEXT, text.length]);
  }
  return undefined;
}

export function refuseNumber(
  { text, field, place }: Reading,
  fault: NumberFault,
  from: number,
): Result<never> {
  const code: ProblemCode = `quantity.${fault}`;
  const typed = text.trim();
  const example = fault === 'decimal-comma' ? withoutComma(typed) : exampleFor(field);
  return bad(code, place, { text: typed, example }, [from, text.length]);
}

/** `1,5 kg` could only mean 1.5 kg; `8,500 rpm` could also mean 8500 rpm, so both are offered. */
function withoutComma(text: string): string {
  const point = text.replace(',', '.');
  return /\d,\d{3}(?!\d)/.test(text) ? `${point} or ${text.replaceAll(',', '')}` : point;
}

export function badUncertainty({ text, field, place }: Reading, range: Span): Result<never> {
  const value = exampleFor(field);
  // beside a plain number a percentage would be ambiguous
  const example =
    field.text === '1' ? `${value} ± 0.1` : field.text === '%' ? '80 % ± 5 %' : `${value} ± 2 %`;
  return bad('quantity.bad-uncertainty', place, { text: text.slice(...range).trim(), example }, range);
}

export function skipSpaces(text: string, from: number): number {
  let at = from;
  while (text[at] === ' ') at++;
  return at;
}
