/**
 * The Markdown of log entries for the editor and for finding calculations: GitHub's flavour without HTML, which
 * stays plain text. `mdast-tree.ts` reads the same language for the read view; a test keeps the two alike.
 */
import { GFM, parser } from '@lezer/markdown';

export const entryParser = parser.configure([GFM, { remove: ['HTMLBlock', 'HTMLTag'] }]);

/** The first word behind the fence that makes a block a calculation. */
export const CALC = 'calc';

/** Whether a fence's info string makes the block a calculation. */
export function isCalcInfo(info: string): boolean {
  return info.trim().split(/\s+/)[0] === CALC;
}
