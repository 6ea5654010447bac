/**
 * Reads what a person types into a field: `73 g`, `1 1/2 in`, `±45°`, `73.2(4) g`, `73 g ± 0.5 g`. Either the SI
 * value that was meant, or a problem that points at the characters and shows what the field takes.
 */
import { isNumber } from './dimension.ts';
import { type NumberText, readNumber } from './number-text.ts';
import { bad, good, type Problem, type Result } from './problem.ts';
import { add, magnitude, multiply, type Rational, rational } from './rational.ts';
import {
  badUncertainty,
  fieldUnit,
  PLUS_MINUS,
  type Reading,
  readingOf,
  refuseNumber,
  refuseOutright,
  type Span,
  skipSpaces,
  startOfNumber,
  toSi,
} from './reading.ts';
import { asBound } from './standard.ts';
import type { Unit } from './unit.ts';

export interface Quantity {
  /** As typed, without outer spaces, uncertainty and all. */
  readonly typed: string;
  /** In the coherent SI unit of the field; an angle in radians. */
  readonly si: number;
  /** Standard uncertainty in the same unit, where the text gives one. */
  readonly u?: number;
  /**
   * The part of `typed` that gave it. Figures in brackets are a standard uncertainty (JCGM 100 7.2.2); what stands
   * after ± is a bound (4.3.7), as builders and data sheets mean it.
   */
  readonly uncertainty?: { readonly typed: string; readonly kind: 'standard' | 'bound' };
}

/**
 * @param text   as typed
 * @param unit   the field's unit, SI or display: `kg·m²`, `rpm`, `°`, `1`. It decides the dimension and the rules of
 *               `compatible.ts`; the text may use any unit that fits
 * @param place  the field's name, for the problem
 * @returns      the value in SI. A bare number is taken only where the field's unit is `1`
 */
export function parseQuantity(text: string, unit: string, place: string): Result<Quantity> {
  const reading = readingOf(text, unit, place);
  const refusal = refuseOutright(reading);
  if (refusal) return refusal;
  const parts = split(reading);
  return parts.ok ? convert(reading, parts.value) : parts;
}

/** What the text is made of, before any unit is understood. */
interface Parts {
  readonly value: Rational;
  readonly unit: Span;
  readonly spread?: {
    readonly value: Rational;
    readonly unit: Span;
    readonly span: Span;
    readonly kind: 'standard' | 'bound';
  };
}

function split(reading: Reading): Result<Parts> {
  const { text } = reading;
  const from = startOfNumber(text);
  const around = /^\(([^()]+?)(?:±|\+\/[-−])([^()]+)\)/u.exec(text.slice(from));
  if (around) return splitAround(reading, from, from + around[0].length);

  const number = readNumber(text, from);
  const isTravel = text.slice(0, from).trim() !== '';
  if (typeof number === 'string') return refuseNumber(reading, number, from);
  if (isTravel && number.value.numerator < 0n) return refuseNumber(reading, 'not-a-number', from);

  const sign = PLUS_MINUS.exec(text.slice(number.end));
  if (!sign) {
    const unit: Span = [number.end, text.length];
    if (!number.bracket) return good({ value: number.value, unit });
    const span: Span = [text.indexOf('(', from), text.indexOf(')', from) + 1];
    return good({
      value: number.value,
      unit,
      spread: { value: number.bracket, unit, span, kind: 'standard' },
    });
  }
  const signAt = number.end + sign.index;
  const span: Span = [signAt, text.length];
  if (number.bracket) {
    return bad('quantity.uncertainty-twice', reading.place, { text: text.trim() }, span);
  }
  const bound = readBound(reading, signAt + sign[0].length, span);
  if (!bound.ok) return bound;
  const after: Span = [bound.value.end, text.length];
  const before: Span = [number.end, signAt];
  const blank = (part: Span): boolean => text.slice(...part).trim() === '';
  return good({
    value: number.value,
    unit: blank(before) ? after : before,
    spread: { value: bound.value.value, unit: blank(after) ? before : after, span, kind: 'bound' },
  });
}

/** `(73.2 ± 0.4) g`: the unit belongs to both. */
function splitAround(reading: Reading, from: number, to: number): Result<Parts> {
  const { text } = reading;
  const number = readNumber(text, skipSpaces(text, from + 1));
  if (typeof number === 'string') return refuseNumber(reading, number, from + 1);
  const signAt = skipSpaces(text, number.end);
  const sign = PLUS_MINUS.exec(text.slice(signAt));
  const span: Span = [signAt, to - 1];
  if (sign?.index !== 0 || number.bracket) return badUncertainty(reading, [from, to]);
  const bound = readBound(reading, signAt + sign[0].length, span);
  if (!bound.ok) return bound;
  if (skipSpaces(text, bound.value.end) !== to - 1) {
    return badUncertainty(reading, [from, to]);
  }
  const unit: Span = [to, text.length];
  return good({ value: number.value, unit, spread: { value: bound.value.value, unit, span, kind: 'bound' } });
}

function readBound(reading: Reading, from: number, span: Span): Result<NumberText> {
  const bound = readNumber(reading.text, skipSpaces(reading.text, from));
  const isBound = typeof bound !== 'string' && bound.value.numerator >= 0n && !bound.bracket;
  return isBound ? good(bound) : badUncertainty(reading, span);
}

function convert(reading: Reading, { value, unit: unitSpan, spread }: Parts): Result<Quantity> {
  const isShare = spread !== undefined && isShareOfValue(reading, unitSpan, spread.unit);
  if (spread && isShare && isPlainNumber(reading.field)) return ambiguousShare(reading, spread.span);

  const unit = fieldUnit(reading, unitSpan);
  if (!unit.ok) return unit;
  const si = toSi(unit.value.offset ? add(value, unit.value.offset) : value, unit.value);
  if (!Number.isFinite(si)) return refuseNumber(reading, 'too-large', 0);
  const typed = reading.typed.trim();
  if (!spread) return good({ typed, si });

  const spreadUnit = isShare ? unit : fieldUnit(reading, spread.unit);
  if (!spreadUnit.ok) return spreadUnit;
  const width = isShare
    ? multiply(magnitude(value), multiply(spread.value, rational('1/100')))
    : spread.value;
  const half = toSi(width, spreadUnit.value);
  if (!Number.isFinite(half)) return refuseNumber(reading, 'too-large', spread.span[0]);
  return good({
    typed,
    si,
    u: spread.kind === 'bound' ? asBound(half) : half,
    uncertainty: { typed: reading.typed.slice(...spread.span).trim(), kind: spread.kind },
  });
}

/** `73 g ± 2 %`, where the value itself is not in per cent. */
function isShareOfValue({ text }: Reading, unit: Span, spreadUnit: Span): boolean {
  const isPercent = text.slice(...spreadUnit).trim() === '%';
  const valueHasOwn = unit[0] !== spreadUnit[0];
  // `0.8 ± 5 %` has one unit for both or for the second only; `(80 ± 5) %` is plain
  return (
    isPercent && (valueHasOwn ? text.slice(...unit).trim() !== '%' : !text.slice(0, unit[0]).includes(')'))
  );
}

function isPlainNumber(field: Unit): boolean {
  return isNumber(field.dimension) && field.angle === 0;
}

/** `0.8 ± 5 %`: five hundredths, or a twentieth of 0.8? */
function ambiguousShare({ text, place }: Reading, range: NonNullable<Problem['range']>): Result<never> {
  return bad('quantity.ambiguous-percentage', place, { text: text.trim(), example: '80 % ± 5 %' }, range);
}
