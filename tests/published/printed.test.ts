import { describe, expect, it } from 'vitest';
import { agreesToPrintedDigits, lastDigit, solveRising } from './printed.ts';

describe('printed digits', () => {
  it.each([
    ['2.34', 0.01],
    ['317', 1],
    ['5.26e5', 1e3],
    ['-1.4e-3', 1e-4],
    ['0.30', 0.01],
  ])('the last digit of %s is worth %d', (printed, worth) => {
    expect(lastDigit(printed)).toBeCloseTo(worth, 12);
  });

  it('accepts what rounds to the printed figure and nothing else', () => {
    expect(agreesToPrintedDigits(2.344999, '2.34')).toBe(true);
    expect(agreesToPrintedDigits(2.335001, '2.34')).toBe(true);
    expect(agreesToPrintedDigits(2.3451, '2.34')).toBe(false);
    expect(agreesToPrintedDigits(2.3349, '2.34')).toBe(false);
    expect(agreesToPrintedDigits(-2.34, '2.34')).toBe(false);
    expect(agreesToPrintedDigits(Number.NaN, '2.34')).toBe(false);
  });

  it('gives a figure with more noughts a narrower tolerance', () => {
    expect(agreesToPrintedDigits(2.02, '2')).toBe(true);
    expect(agreesToPrintedDigits(2.02, '2.00')).toBe(false);
  });

  it('refuses a text that is not a figure', () => {
    expect(() => lastDigit('about 3')).toThrow('about 3');
  });

  it('solves the inverse question', () => {
    expect(solveRising((x) => x * x, 2, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
    expect(() => solveRising((x) => x, 5, 0, 2)).toThrow('5 is not reached');
  });
});
