/**
 * Revision letters of ASME Y14.35: I, O, Q, S, X and Z are not used because they read as figures or as blanks;
 * after Y comes AA, then AB … AY, BA.
 */
const LETTERS = 'ABCDEFGHJKLMNPRTUVWY';

/** The nth revision letter, n ≥ 1. */
export function revisionLetter(n: number): string {
  if (!Number.isInteger(n) || n < 1) throw new RangeError(`revision number is ${n}, but it counts from 1`);
  let rest = n;
  let letters = '';
  while (rest > 0) {
    rest -= 1;
    letters = LETTERS.charAt(rest % LETTERS.length) + letters;
    rest = Math.floor(rest / LETTERS.length);
  }
  return letters;
}

/** The number of a revision letter, or undefined where it is none. */
export function revisionNumber(letter: string): number | undefined {
  if (letter === '') return undefined;
  let n = 0;
  for (const character of letter) {
    const digit = LETTERS.indexOf(character);
    if (digit < 0) return undefined;
    n = n * LETTERS.length + digit + 1;
  }
  return n;
}
