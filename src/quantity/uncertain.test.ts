import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { combine, covariance, exact, independent, standardUncertainty, type Uncertain } from './uncertain.ts';

const a = independent('a', 2, 0.3);
const b = independent('b', 5, 0.4);

describe('contributions', () => {
  test('of independent inputs add in squares', () => {
    expect(
      standardUncertainty(
        combine(7, [
          [1, a],
          [1, b],
        ]),
      ),
    ).toBeCloseTo(0.5, 15);
  });

  test('of one input add with their signs: a figure less itself is exactly nought', () => {
    expect(
      standardUncertainty(
        combine(0, [
          [1, a],
          [-1, a],
        ]),
      ),
    ).toBe(0);
    expect(
      standardUncertainty(
        combine(4, [
          [1, a],
          [1, a],
        ]),
      ),
    ).toBeCloseTo(0.6, 15);
  });

  test('make the covariance of figures that share an input', () => {
    const sum = combine(7, [
      [1, a],
      [1, b],
    ]);
    const difference = combine(-3, [
      [1, a],
      [-1, b],
    ]);
    expect(covariance(sum, difference)).toBeCloseTo(0.3 ** 2 - 0.4 ** 2, 15);
    expect(covariance(a, b)).toBe(0);
    expect(covariance(sum, sum)).toBeCloseTo(standardUncertainty(sum) ** 2, 15);
  });

  test('of an exact number are none', () => {
    expect(exact(3).contributions.size).toBe(0);
    expect(independent('c', 3, 0).contributions.size).toBe(0);
    expect(combine(6, [[2, exact(3)]]).contributions.size).toBe(0);
  });

  test('are not made of an uncertainty that is no number', () => {
    for (const u of [-0.1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => independent('a', 2, u)).toThrow(RangeError);
    }
  });

  test('do not depend on the order or the grouping of a sum', () => {
    const slope = fc.double({ min: -10, max: 10, noNaN: true });
    const input: fc.Arbitrary<Uncertain> = fc
      .tuple(fc.constantFrom('a', 'b', 'c', 'd'), fc.double({ min: 0, max: 5, noNaN: true }))
      .map(([name, u]) => independent(name, 1, u));
    fc.assert(
      fc.property(fc.array(fc.tuple(slope, input), { maxLength: 12 }), fc.nat(12), (terms, at) => {
        const whole = combine(1, terms);
        const grouped = combine(1, [
          [1, combine(0, terms.slice(at))],
          [1, combine(0, terms.slice(0, at))],
        ]);
        for (const name of ['a', 'b', 'c', 'd']) {
          expect(grouped.contributions.get(name) ?? 0).toBeCloseTo(whole.contributions.get(name) ?? 0, 10);
        }
      }),
    );
  });
});
