/**
 * Texts of templates with figures in them: `{{name}}` prints a figure in the unit that people read it in,
 * `{{expression | unit}}` prints the result of an expression in the unit named.
 */
import { bad, good, type Result } from '../quantity/index.ts';

export type Piece =
  | { readonly kind: 'words'; readonly text: string }
  | {
      readonly kind: 'figure';
      /** An expression, or a bare name. */
      readonly expression: string;
      readonly unit?: string;
      /** Half-open range in the whole text, for a message that points at it. */
      readonly range: readonly [number, number];
    };

/** The text cut at its braces; a problem where a pair of braces is not closed. */
export function piecesOf(text: string, place: string): Result<readonly Piece[]> {
  const pieces: Piece[] = [];
  let at = 0;
  while (at < text.length) {
    const open = text.indexOf('{{', at);
    if (open < 0) break;
    const close = text.indexOf('}}', open);
    if (close < 0) return bad('template.unclosed', place, {}, [open, text.length]);
    if (open > at) pieces.push({ kind: 'words', text: text.slice(at, open) });
    const inside = text.slice(open + 2, close);
    const bar = inside.lastIndexOf('|');
    const expression = (bar < 0 ? inside : inside.slice(0, bar)).trim();
    const unit = bar < 0 ? '' : inside.slice(bar + 1).trim();
    pieces.push({
      kind: 'figure',
      expression,
      ...(unit === '' ? {} : { unit }),
      range: [open, close + 2],
    });
    at = close + 2;
  }
  if (at < text.length) pieces.push({ kind: 'words', text: text.slice(at) });
  return good(pieces);
}
