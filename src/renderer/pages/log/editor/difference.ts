/** What changed between two texts, as one change of an editor's document. */

/** The one stretch that differs, so that the cursor stays where it is. */
export function difference(before: string, after: string): { from: number; to: number; insert: string } {
  const shorter = Math.min(before.length, after.length);
  let from = 0;
  while (from < shorter && before[from] === after[from]) from++;
  let same = 0;
  while (same < shorter - from && before[before.length - 1 - same] === after[after.length - 1 - same]) same++;
  return { from, to: before.length - same, insert: after.slice(from, after.length - same) };
}
