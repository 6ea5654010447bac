/** Which neighbours stay on one line: a figure and its unit, a sign and its figure, “Table” and its number. */
import { parseUnit } from '../../quantity/index.ts';

const FIGURE = /^[(+−±≥≤≈<>~-]*\d[\d.,]*(e[-+−]?\d+)?(\(\d+\))?[)°%]*$/;
const SIGN = /^[±×≥≤=<>≈·]$/;
const NUMBERED = /^\(?(Figure|Table|Section|Step|Run|run|revision|Revision|page|item|card)$/;
const NUMBER_OR_LETTER = /^([\d.]+|[A-Z]{1,2})[.,;:)]*$/;

const units = new Map<string, boolean>();

export function staysTogether(before: string, after: string): boolean {
  if (FIGURE.test(before)) return SIGN.test(after) || isUnit(after);
  if (SIGN.test(before)) return true;
  return NUMBERED.test(before) && NUMBER_OR_LETTER.test(after);
}

const LONGEST_UNIT = 12;

function isUnit(word: string): boolean {
  const text = word.replace(/[.,;:)]+$/, '');
  if (text === '' || text.length > LONGEST_UNIT) return false;
  let known = units.get(text);
  if (known === undefined) {
    known = parseUnit(text).ok;
    units.set(text, known);
  }
  return known;
}
