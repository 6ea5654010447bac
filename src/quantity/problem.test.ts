import { describe, expect, test } from 'vitest';
import { bad, good, ProblemError, phrase, sentence } from './problem.ts';

describe('a problem', () => {
  const result = bad(
    'quantity.out-of-range',
    'Ballast',
    { name: 'travel', value: -0.123456789, range: '0 to 1' },
    [2, 4],
  );
  if (result.ok) throw new Error('not a problem');

  test('is said with its place, its reason and its remedy', () => {
    expect(phrase(result.problem)).toEqual({
      place: 'Ballast',
      reason: 'travel is −0.123457, outside 0 to 1.',
      remedy: 'Check the number and its unit.',
    });
    expect(sentence(result.problem)).toBe(
      'Ballast: travel is −0.123457, outside 0 to 1. Check the number and its unit.',
    );
  });

  test('keeps whole numbers whole, and a figure that was forgotten visible', () => {
    const long = bad('quantity.too-long', 'Mass', { length: 1234567 });
    expect(!long.ok && sentence(long.problem)).toBe(
      'Mass: it is 1234567 characters long, and at most {limit} are read. Type one number with its unit, for example {example}.',
    );
  });

  test('has a range only where it has one', () => {
    expect(result.problem.range).toEqual([2, 4]);
    const plain = bad('quantity.empty', 'Mass');
    expect(!plain.ok && 'range' in plain.problem).toBe(false);
  });

  test('can be thrown and says the same', () => {
    const error = new ProblemError(result.problem);
    expect(error.message).toBe(sentence(result.problem));
    expect(error.problem).toBe(result.problem);
  });

  test('is not there when all is well', () => {
    expect(good(3)).toEqual({ ok: true, value: 3 });
  });
});
