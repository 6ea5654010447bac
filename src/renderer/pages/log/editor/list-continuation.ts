/** What Enter does at the end of a list item or a quoted line: the next item's mark, or the way out of the list. */

export type Continuation =
  /** Break the line and begin the next one with this. */
  | { readonly kind: 'go on'; readonly insert: string }
  /** The item is empty: take its mark away instead of breaking the line. */
  | { readonly kind: 'end'; readonly length: number };

const MARK = /^(\s*)(?:((?:>\s?)+)|([-*+])(\s+)(\[[ xX]\]\s+)?|(\d{1,9})([.)])(\s+))/;

/** @param before  the line from its start to the cursor; `undefined` where Enter is an ordinary line break */
export function continuation(before: string): Continuation | undefined {
  const mark = MARK.exec(before);
  if (!mark) return undefined;
  const [whole, indent = '', quote, bullet, bulletGap = '', task, number, point = '', numberGap = ''] = mark;
  if (before.trim() === whole.trim()) return { kind: 'end', length: before.length };
  if (quote !== undefined) return { kind: 'go on', insert: indent + quote };
  if (bullet !== undefined)
    return { kind: 'go on', insert: indent + bullet + bulletGap + (task ? '[ ] ' : '') };
  return { kind: 'go on', insert: `${indent}${Number(number) + 1}${point}${numberGap}` };
}
