/**
 * Reads what a person types into a field: `73 g`, `1 1/2 in`, `±45°`, `73.2(4) g`, `73 g ± 0.5 g`. Either the SI
 * value that was meant, or a problem that points at the characters and shows what the field takes.
 */
import type { ProblemCode } from './catalogue.ts';
import { unitForField } from './compatible.ts';
import { isNumber } from './dimension.ts';
import { exampleFor } from './example.ts';
import { type NumberFault, readNumber } from './number-text.ts';
import { bad, good, type Problem, type Result } from './problem.ts';
import { add, multiply, nearest, type Rational } from './rational.ts';
import { asBound } from './uncertainty.ts';
import { oneSpelling, parseUnit, type Unit, unitOf } from './unit.ts';

export interface Quantity {
  /** As typed, without outer spaces. */
  readonly typed: string;
  /** In the coherent SI unit of the field; an angle in radians. */
  readonly si: number;
  /** Standard uncertainty in the same unit, where the text gives one. */
  readonly u?: number;
  /** The part of `typed` that gave it. Figures in brackets are a standard uncertainty, ± is a bound. */
  readonly uncertainty?: { readonly typed: string; readonly kind: 'standard' | 'bound' };
}

export const LONGEST_QUANTITY_TEXT = 200;

const PLUS_MINUS = /±|\+\/[-−]/u;

/** A text being read against a field; carries what every refusal needs. */
export interface Reading {
  readonly text: string;
  readonly field: Unit;
  readonly place: string;
}

/**
 * @param text   as typed
 * @param unit   the field's unit, SI or display: `kg·m²`, `rpm`, `°`, `1`. It decides the dimension and the rules of
 *               `compatible.ts`; the text may use any unit that fits
 * @param place  the field's name, for the problem
 * @returns      the value in SI. A bare number is taken only where the field's unit is `1`
 */
export function parseQuantity(text: string, unit: string, place: string): Result<Quantity> {
  const reading: Reading = { text: oneSpelling(text), field: unitOf(unit), place };
  const refusal = refuseOutright(reading);
  if (refusal) return refusal;
  const from = /^ *(?:(?:±|\+\/[-−]) *)?/u.exec(reading.text)?.[0].length ?? 0;
  const isTravel = from > 0 && PLUS_MINUS.test(reading.text.slice(0, from));

  const bracketed = /^\( *([^()±]+) *(±|\+\/[-−]) *([^()±]+)\)/u.exec(reading.text.slice(from));
  if (bracketed) return readBracketed(reading, from, bracketed[0].length);

  const number = readNumber(reading.text, from);
  if (typeof number === 'string') return refuseNumber(reading, number, from);
  if (isTravel && number.value.numerator < 0n) return refuseNumber(reading, 'not-a-number', from);

  const sign = PLUS_MINUS.exec(reading.text.slice(number.end));
  const unitEnd = sign ? number.end + sign.index : text.length;
  if (!sign) {
    const found = fieldUnit(reading, number.end, unitEnd);
    if (!found.ok) return found;
    return finish(
      reading,
      number.value,
      found.value,
      number.bracket,
      number.bracket && {
        typed: /\([^)]*\)/.exec(text.slice(from, number.end))?.[0] ?? '',
        kind: 'standard',
      },
    );
  }
  const at = unitEnd + sign[0].length;
  if (number.bracket) {
    return bad('quantity.uncertainty-twice', place, { text: text.trim() }, [unitEnd, text.length]);
  }
  return readPlusMinus(reading, number.value, [number.end, unitEnd], [unitEnd, at]);
}

/** `73 g ± 0.5 g`, `73 ± 0.5 g`, `73 g ± 2 %`. */
function readPlusMinus(
  reading: Reading,
  value: Rational,
  unitRange: readonly [number, number],
  signRange: readonly [number, number],
): Result<Quantity> {
  const { text, field, place } = reading;
  const from = skip(text, signRange[1]);
  const bound = readNumber(text, from);
  const whole: Problem['range'] = [signRange[0], text.length];
  if (typeof bound === 'string' || bound.value.numerator < 0n || bound.bracket) {
    return bad('quantity.bad-uncertainty', place, badUncertainty(text.slice(...whole), field), whole);
  }
  const valueHasUnit = text.slice(...unitRange).trim() !== '';
  const boundUnit = text.slice(bound.end).trim();
  if (boundUnit === '%' && !valueHasUnit) return ambiguousPercentage(reading, whole);
  const unit = valueHasUnit ? fieldUnit(reading, ...unitRange) : fieldUnit(reading, bound.end, text.length);
  if (!unit.ok) return unit;
  const origin = { typed: text.slice(...whole).trim(), kind: 'bound' } as const;

  if (boundUnit === '%' && unit.value.text !== '%') {
    // a part of the value, but in a field of numbers it could be a part of one as well
    if (isNumber(field.dimension) && field.angle === 0) return ambiguousPercentage(reading, whole);
    const share = multiply(bound.value, { numerator: 1n, denominator: 100n });
    const part = multiply(share, value.numerator < 0n ? { ...value, numerator: -value.numerator } : value);
    return finish(reading, value, unit.value, part, origin);
  }
  const own = boundUnit === '' ? unit : fieldUnit(reading, bound.end, text.length);
  if (!own.ok) return own;
  return finish(reading, value, unit.value, bound.value, origin, own.value);
}

/** `0.8 ± 5 %`: five hundredths, or a twentieth of 0.8? */
function ambiguousPercentage(
  { text, field, place }: Reading,
  range: NonNullable<Problem['range']>,
): Result<never> {
  const isShare = isNumber(field.dimension) && field.angle === 0;
  const example = isShare ? '80 % ± 5 %' : badUncertainty('', field).example;
  return bad('quantity.ambiguous-percentage', place, { text: text.trim(), example }, range);
}

/** `(73.2 ± 0.4) g`: the unit belongs to both. */
function readBracketed(reading: Reading, from: number, length: number): Result<Quantity> {
  const { text, place, field } = reading;
  const close = from + length;
  const value = readNumber(text, skip(text, from + 1));
  if (typeof value === 'string') return refuseNumber(reading, value, from + 1);
  const sign = PLUS_MINUS.exec(text.slice(value.end));
  const signAt = value.end + (sign?.index ?? 0);
  const bound = readNumber(text, skip(text, signAt + (sign?.[0].length ?? 0)));
  const range: Problem['range'] = [from, close];
  const isWhole =
    typeof bound !== 'string' &&
    bound.value.numerator >= 0n &&
    text.slice(value.end, signAt).trim() === '' &&
    text.slice(bound.end, close - 1).trim() === '';
  if (!isWhole || value.bracket || bound.bracket) {
    return bad('quantity.bad-uncertainty', place, badUncertainty(text.slice(...range), field), range);
  }
  const unit = fieldUnit(reading, close, text.length);
  if (!unit.ok) return unit;
  const typed = text.slice(signAt, close - 1).trim();
  return finish(reading, value.value, unit.value, bound.value, { typed, kind: 'bound' });
}

function finish(
  reading: Reading,
  value: Rational,
  unit: Unit,
  spread: Rational | undefined,
  uncertainty: Quantity['uncertainty'],
  spreadUnit: Unit = unit,
): Result<Quantity> {
  const si = toSi(unit.offset ? add(value, unit.offset) : value, unit);
  const half = spread && toSi(spread, spreadUnit);
  if (!Number.isFinite(si) || (half !== undefined && !Number.isFinite(half))) {
    return refuseNumber(reading, 'too-large', 0);
  }
  const typed = reading.text.trim();
  if (half === undefined || !uncertainty) return good({ typed, si });
  return good({ typed, si, u: uncertainty.kind === 'bound' ? asBound(half) : half, uncertainty });
}

/** Exact up to the one rounding to a double, and one more where π comes in. */
export function toSi(value: Rational, unit: Unit): number {
  return nearest(multiply(value, unit.exact.ratio)) * Math.PI ** unit.exact.pi;
}

/** The unit written between two places of the text, if it fits the field. */
export function fieldUnit(reading: Reading, from: number, to: number): Result<Unit> {
  const { text, field, place } = reading;
  const start = skip(text, from);
  const written = text.slice(start, to).trimEnd();
  const range: Problem['range'] = [start, start + written.length];
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
  if (text.length > LONGEST_QUANTITY_TEXT) {
    const figures = { length: text.length, limit: LONGEST_QUANTITY_TEXT, example };
    return bad('quantity.too-long', place, figures, [LONGEST_QUANTITY_TEXT, text.length]);
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

export function badUncertainty(text: string, field: Unit): { text: string; example: string } {
  return { text: text.trim(), example: `${exampleFor(field)} ± 2 %` };
}

function skip(text: string, from: number): number {
  let at = from;
  while (text[at] === ' ') at++;
  return at;
}
