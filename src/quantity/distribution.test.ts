/** Draws of a known distribution against its own moments and limits. Statistical bounds are four standard errors. */
import { describe, expect, it } from 'vitest';
import { type DistributionShape, deviation, type RandomSource, shapeOf } from './distribution.ts';

const COUNT = 100_000;

/** Uniform on (0, 1): a linear congruential generator with the multiplier of Knuth's MMIX; normal by Box and Muller. */
function source(seed: bigint): RandomSource {
  let state = seed;
  const even = (): number => {
    state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffff_ffff_ffff_ffffn;
    return (Number(state >> 11n) + 0.5) / 2 ** 53;
  };
  return { even, normal: () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even()) };
}

describe('a deviation drawn at random', () => {
  it.each<[DistributionShape, number]>([
    ['normal', 3],
    ['rectangular', 1.8],
  ])('of the %s shape has mean 0, standard deviation 1 and kurtosis %s', (shape, kurtosis) => {
    const random = source(11n);
    const drawn = Array.from({ length: COUNT }, () => deviation(shape, random));
    const moment = (power: number): number => drawn.reduce((sum, x) => sum + x ** power, 0) / COUNT;
    expect(Math.abs(moment(1))).toBeLessThan(4 / Math.sqrt(COUNT));
    expect(Math.abs(moment(2) - 1)).toBeLessThan(4 * Math.sqrt((kurtosis - 1) / COUNT));
    expect(Math.abs(moment(4) - kurtosis)).toBeLessThan(4 * Math.sqrt(100 / COUNT));
  });

  it('of the rectangular shape reaches the bounds ±√3 u and goes no further', () => {
    const random = source(5n);
    const drawn = Array.from({ length: COUNT }, () => deviation('rectangular', random));
    const largest = drawn.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    expect(largest).toBeLessThanOrEqual(Math.sqrt(3));
    expect(largest).toBeGreaterThan(1.73);
  });

  it('is rectangular for a bound and for the step of a display, normal for a standard uncertainty', () => {
    expect(shapeOf('bound')).toBe('rectangular');
    expect(shapeOf('resolution')).toBe('rectangular');
    expect(shapeOf('standard')).toBe('normal');
  });
});
