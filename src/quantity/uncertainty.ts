/** Reads an uncertainty that is typed apart from its value: `0.5 g`, `± 0.5 g`, `2 %`. */
import { readNumber } from './number-text.ts';
import { good, type Result } from './problem.ts';
import {
  badUncertainty,
  fieldUnit,
  readingOf,
  refuseNumber,
  refuseOutright,
  startOfNumber,
  toSi,
} from './reading.ts';
import { type StatedAs, standardFrom } from './standard.ts';
import { unitOf } from './unit.ts';

/**
 * @param text   as typed; a percentage is a part of `value`, except in a field of plain numbers
 * @param kind   how it is stated
 * @param unit   the field's unit
 * @param place  the field's name, for the problem
 * @param value  the field's value in SI; without it a percentage is refused
 * @returns      the standard uncertainty in SI, not negative
 */
export function parseUncertainty(
  text: string,
  kind: StatedAs,
  unit: string,
  place: string,
  value?: number,
): Result<number> {
  const reading = readingOf(text, unit, place);
  const refusal = refuseOutright(reading);
  if (refusal) return refusal;
  const from = startOfNumber(reading.text);
  const number = readNumber(reading.text, from);
  if (typeof number === 'string') return refuseNumber(reading, number, from);
  if (number.value.numerator < 0n || number.bracket) return badUncertainty(reading, [from, number.end]);

  const isShare = reading.text.slice(number.end).trim() === '%' && !/^[1%]$/.test(reading.field.text);
  if (isShare && value !== undefined) {
    return good(standardFrom(toSi(number.value, unitOf('%')) * Math.abs(value), kind));
  }
  const found = fieldUnit(reading, [number.end, text.length]);
  if (!found.ok) return found;
  const spread = toSi(number.value, found.value);
  return Number.isFinite(spread)
    ? good(standardFrom(spread, kind))
    : refuseNumber(reading, 'too-large', from);
}
