import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { add, bits, divide, nearest, power, rational, shift } from './rational.ts';

describe('fractions', () => {
  test('a decimal is read without rounding', () => {
    expect(rational('25.4')).toEqual({ numerator: 254n, denominator: 10n });
    expect(nearest(rational('1000/3600'))).toBe(1000 / 3600);
  });

  test('the nearest double of a decimal is the one that the language itself reads', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 25n }),
        fc.integer({ min: -340, max: 280 }),
        (figures, exponent) => {
          const exact = shift({ numerator: figures, denominator: 1n }, exponent);
          expect(nearest(exact)).toBe(Number(`${figures}e${exponent}`));
        },
      ),
    );
  });

  test('the quotient of two whole doubles is the one that the machine divides', () => {
    const whole = fc.integer({ min: 1, max: Number.MAX_SAFE_INTEGER });
    fc.assert(
      fc.property(whole, whole, (a, b) => {
        expect(nearest({ numerator: BigInt(a), denominator: BigInt(b) })).toBe(a / b);
      }),
    );
  });

  test('a tie goes to the even neighbour, and a hair above it does not', () => {
    const tie = 2n ** 53n + 1n;
    expect(nearest({ numerator: tie, denominator: 1n })).toBe(2 ** 53);
    expect(nearest({ numerator: tie * 10n ** 40n + 1n, denominator: 10n ** 40n })).toBe(2 ** 53 + 2);
  });

  test('what is beyond the doubles is infinite, and nought has no sign', () => {
    expect(nearest(shift(rational('1'), 400))).toBe(Number.POSITIVE_INFINITY);
    expect(nearest(shift(rational('-1'), 400))).toBe(Number.NEGATIVE_INFINITY);
    expect(Object.is(nearest(divide(rational('0'), rational('-3'))), 0)).toBe(true);
  });

  test('negative powers turn the fraction over, and sums find the common denominator', () => {
    expect(nearest(power(rational('5/9'), -2))).toBe(81 / 25);
    expect(nearest(add(rational('1/3'), rational('1/6')))).toBe(0.5);
  });

  test('nought below the line is a bug of the caller', () => {
    expect(() => divide(rational('1'), rational('0'))).toThrow(RangeError);
  });

  test('the length in binary is right to within three bits', () => {
    expect(bits({ numerator: 2n ** 100n, denominator: 3n })).toBeGreaterThanOrEqual(101);
    expect(bits({ numerator: 2n ** 100n, denominator: 3n })).toBeLessThanOrEqual(104);
  });
});
