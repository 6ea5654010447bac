import { describe, expect, it } from 'vitest';
import { nextNumber } from './next-number.ts';

describe('the next number', () => {
  it('begins with one', () => {
    expect(nextNumber({})).toBe(1);
  });

  it('is one above the largest, whatever gaps there are and in whatever order they were made', () => {
    expect(nextNumber({ a: { number: 7 }, b: { number: 2 } })).toBe(8);
    expect(nextNumber({ a: { number: 1 }, b: { number: 10 }, c: { number: 9 } })).toBe(11);
  });
});
