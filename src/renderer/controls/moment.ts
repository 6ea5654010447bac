/** Times as the records keep them, printed as they were written: the offset of the place stays theirs. */

/** `2026-03-15 16:30`. */
export function dateAndTime(at: string): string {
  return at.slice(0, 16).replace('T', ' ');
}

/** `16:30`. */
export function timeOfDay(at: string): string {
  return at.slice(11, 16);
}
