import { describe, expect, it } from 'vitest';
import { revisionLetter, revisionNumber } from './letters.ts';

describe('revision letters', () => {
  it('count up without a gap or a repeat, and back to their numbers', () => {
    const letters = Array.from({ length: 9000 }, (_, index) => revisionLetter(index + 1));
    expect(new Set(letters).size).toBe(letters.length);
    expect(letters.map(revisionNumber)).toEqual(letters.map((_, index) => index + 1));
  });

  it('never get shorter', () => {
    for (let n = 2; n < 500; n++) {
      expect(revisionLetter(n).length).toBeGreaterThanOrEqual(revisionLetter(n - 1).length);
    }
  });

  it.each([0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY])('there is none for the number %s', (n) => {
    expect(() => revisionLetter(n)).toThrow(RangeError);
  });

  it.each(['', ' ', 'A ', '-', 'Ä', 'toString'])('%j is none', (text) => {
    expect(revisionNumber(text)).toBeUndefined();
  });
});
