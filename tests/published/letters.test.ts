/** Revision letters against the sequence of the drawing standard. */
import { describe, expect, it } from 'vitest';
import { revisionLetter, revisionNumber } from '../../src/notebook/index.ts';

/** ASME Y14.35: letters left out from a secondary source (fcsuper.com, citing Y14.35M-1997); the sequence from memory. */
const checks: readonly { id: string; number: number; letter: string }[] = [
  ...[...'ABCDEFGHJKLMNPRTUVWY'].map((letter, index) => ({ id: 'REV-1', number: index + 1, letter })),
  { id: 'REV-2', number: 1, letter: 'A' },
  { id: 'REV-2', number: 8, letter: 'H' },
  { id: 'REV-2', number: 9, letter: 'J' },
  { id: 'REV-3', number: 14, letter: 'P' },
  { id: 'REV-3', number: 15, letter: 'R' },
  { id: 'REV-3', number: 16, letter: 'T' },
  { id: 'REV-3', number: 17, letter: 'U' },
  { id: 'REV-3', number: 20, letter: 'Y' },
  { id: 'REV-4', number: 21, letter: 'AA' },
  { id: 'REV-4', number: 40, letter: 'AY' },
  { id: 'REV-4', number: 41, letter: 'BA' },
  { id: 'REV-5', number: 420, letter: 'YY' },
];

describe('revision letters of ASME Y14.35', () => {
  it.each(checks)('$id: revision $number is $letter', ({ number, letter }) => {
    expect(revisionLetter(number)).toBe(letter);
    expect(revisionNumber(letter)).toBe(number);
  });

  it.each(['I', 'O', 'Q', 'S', 'X', 'Z', 'AI', 'a', 'A1'])('REV-6: %s is no revision letter', (letter) => {
    expect(revisionNumber(letter)).toBeUndefined();
  });
});
