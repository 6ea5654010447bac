/** A position in a text that is read from left to right, shared by the readers of units and of formulas. */

export interface Cursor {
  /** In one spelling; see `oneSpelling`. */
  readonly text: string;
  at: number;
}

/**
 * What the pattern finds exactly here, or undefined; moves on past it.
 *
 * @param pattern  with the flag y: without it the search would run ahead
 */
export function take(cursor: Cursor, pattern: RegExp): string | undefined {
  pattern.lastIndex = cursor.at;
  const found = pattern.exec(cursor.text)?.[0];
  cursor.at += found?.length ?? 0;
  return found;
}

export function passSpaces(cursor: Cursor): void {
  take(cursor, / */y);
}
