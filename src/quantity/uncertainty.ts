/**
 * Standard uncertainty from what is known about a reading.
 *
 * Source: JCGM 100:2008 4.3.7 (bounds, nothing known within them: rectangular), F.2.2.1 (resolution of a display).
 */
import { exampleFor } from './example.ts';
import { readNumber } from './number-text.ts';
import { bad, good, type Result } from './problem.ts';
import { badUncertainty, fieldUnit, type Reading, refuseNumber, refuseOutright, toSi } from './quantity.ts';
import { oneSpelling, unitOf } from './unit.ts';

/** How an uncertainty was stated: as u itself, as a bound ±a, or as the step d of the display. */
export type StatedAs = 'standard' | 'bound' | 'resolution';

/** u = a/√3 for a value that lies anywhere within ±a. JCGM 100 4.3.7. */
export function asBound(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** u = d/√12 for a display that steps by d, so that the value lies anywhere within ±d/2. JCGM 100 F.2.2.1. */
export function asResolution(step: number): number {
  return step / Math.sqrt(12);
}

/**
 * @param text   `0.5 g`, `± 0.5 g`, or `2 %` of the value where the field is not a plain number
 * @param kind   how it is stated
 * @param unit   the field's unit
 * @param place  the field's name, for the problem
 * @param value  the field's value in SI, which a percentage is taken of
 * @returns      the standard uncertainty in SI, not negative
 */
export function parseUncertainty(
  text: string,
  kind: StatedAs,
  unit: string,
  place: string,
  value?: number,
): Result<number> {
  const reading: Reading = { text: oneSpelling(text), field: unitOf(unit), place };
  const refusal = refuseOutright(reading);
  if (refusal) return refusal;
  const from = /^ *(?:(?:±|\+\/[-−]) *)?/u.exec(reading.text)?.[0].length ?? 0;
  const number = readNumber(reading.text, from);
  if (typeof number === 'string') return refuseNumber(reading, number, from);
  if (number.value.numerator < 0n || number.bracket) {
    return bad('quantity.bad-uncertainty', place, badUncertainty(text, reading.field), [from, number.end]);
  }
  const isShare = reading.text.slice(number.end).trim() === '%' && !/^[1%]$/.test(reading.field.text);
  if (isShare && value !== undefined)
    return good(standard(toSi(number.value, unitOf('%')) * Math.abs(value), kind));
  const found = fieldUnit(reading, number.end, text.length);
  if (!found.ok) return found;
  const spread = toSi(number.value, found.value);
  if (!Number.isFinite(spread)) {
    return bad('quantity.too-large', place, { text: text.trim(), example: exampleFor(reading.field) }, [
      from,
      number.end,
    ]);
  }
  return good(standard(spread, kind));
}

function standard(spread: number, kind: StatedAs): number {
  if (kind === 'bound') return asBound(spread);
  return kind === 'resolution' ? asResolution(spread) : spread;
}
