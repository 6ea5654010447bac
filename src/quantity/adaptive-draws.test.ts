/** The adaptive procedure on results whose spread is known, and where draws have no value or never stand still. */
import { describe, expect, it } from 'vitest';
import { adaptiveDraws, type DrawBatch } from './adaptive-draws.ts';
import { agree, countFrom, firstOrderInterval, shortestInterval, symmetricInterval } from './coverage.ts';

/** Uniform on (0, 1): a linear congruential generator with the multiplier of Knuth's MMIX. */
function uniform(seed: bigint): () => number {
  let state = seed;
  return () => {
    state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffff_ffff_ffff_ffffn;
    return (Number(state >> 11n) + 0.5) / 2 ** 53;
  };
}

const filling =
  (...results: readonly (() => number)[]): DrawBatch =>
  (arrays) =>
    arrays.forEach((array, index) => {
      for (let i = 0; i < array.length; i++) array[i] = results[index]?.() ?? Number.NaN;
    });

describe('drawing until the figures stand still', () => {
  it('draws on for more digits', () => {
    // the mean alone wants (2u/δ)² draws: about 1.3 million for u = 0.289 to three digits, 13 000 to two
    const drawn = [2, 3].map((digits) => {
      const [spread] = adaptiveDraws(filling(uniform(1n)), 1, { digits, most: 5e6 });
      expect(spread?.settled).toBe(true);
      return spread?.draws ?? 0;
    });
    expect(drawn[1]).toBeGreaterThan(drawn[0] ?? Infinity);
  });

  it('gives mean, standard uncertainty and both intervals of a spread that is known', () => {
    // y = x², x even on (0, 1): density 1/(2√y); mean 1/3, variance 4/45; F(y) = √y, shortest interval from 0 on
    const even = uniform(2n);
    const [spread] = adaptiveDraws(
      filling(() => even() ** 2),
      1,
      { digits: 2, most: 1e7 },
    );
    const within = spread?.tolerance ?? 0;
    expect(within).toBe(0.005);
    expect(Math.abs((spread?.mean ?? 0) - 1 / 3)).toBeLessThan(within);
    expect(Math.abs((spread?.u ?? 0) - Math.sqrt(4 / 45))).toBeLessThan(within);
    expect(agree(spread?.symmetric ?? [0, 0], [0.025 ** 2, 0.975 ** 2], within)).toBe(true);
    expect(agree(spread?.shortest ?? [0, 0], [0, 0.95 ** 2], within)).toBe(true);
  });

  it('waits for the slowest of several results, and gives all of them the same number of draws', () => {
    const alone = adaptiveDraws(filling(uniform(3n)), 1, { digits: 1, most: 5e6 });
    const both = adaptiveDraws(
      filling(uniform(3n), () => 7),
      2,
      { digits: 1, most: 5e6 },
    );
    expect(both.map(({ draws }) => draws)).toEqual([alone[0]?.draws, alone[0]?.draws]);
    expect(both[0]).toEqual(alone[0]);
    expect(both[1]).toMatchObject({ mean: 7, u: 0, symmetric: [7, 7], settled: true });
  });

  it('counts draws without a value and leaves them out', () => {
    const even = uniform(4n);
    const [spread] = adaptiveDraws(
      filling(() => {
        const x = even();
        return x < 0.25 ? Number.NaN : x;
      }),
      1,
      { digits: 1, most: 1e6 },
    );
    expect(Math.abs((spread?.without ?? 0) / (spread?.draws ?? 1) - 0.25)).toBeLessThan(0.02);
    expect(Math.abs((spread?.mean ?? 0) - 0.625)).toBeLessThan(0.01);
    expect((spread?.draws ?? 0) - (spread?.without ?? 0)).toBe(spread?.values.length);
  });

  it('does not wait for a result that no draw has', () => {
    const [none] = adaptiveDraws(
      filling(() => Number.NaN),
      1,
      { digits: 1, most: 1e6 },
    );
    expect(none).toMatchObject({ draws: 20_000, without: 20_000, mean: Number.NaN, settled: false });
  });

  it('ends at the most draws allowed and says that it has not settled', () => {
    const even = uniform(5n);
    // a Cauchy spread has no mean and no standard deviation
    const [spread] = adaptiveDraws(
      filling(() => Math.tan(Math.PI * (even() - 0.5))),
      1,
      { digits: 2, most: 50_000 },
    );
    expect(spread).toMatchObject({ draws: 50_000, settled: false });
  });

  it('draws no fewer batches than asked, and tells the draws after each', () => {
    const told: number[] = [];
    adaptiveDraws(
      filling(() => 1),
      1,
      { digits: 1, batch: 10, fewestBatches: 4, most: 1000 },
      (draws) => told.push(draws),
    );
    expect(told).toEqual([10, 20, 30, 40]);
  });

  it('takes a hundredfold of what lies outside the interval in a batch, ten thousand at least', () => {
    const sizes = [0.95, 0.999].map((coverage) => {
      let size = 0;
      adaptiveDraws(
        ([array]) => {
          size = array?.length ?? 0;
        },
        1,
        { digits: 1, coverage, most: 1e6 },
      );
      return size;
    });
    expect(sizes).toEqual([10_000, 100_000]);
  });
});

describe('intervals of a sample', () => {
  const sample = Float64Array.from([1, 2, 2.5, 3, 4, 5, 6, 7, 8, 100]);

  it('covers its share with as much left out below as above', () => {
    expect(symmetricInterval(sample, 0.6)).toEqual([2, 7]);
  });

  it('is the shortest one there is', () => {
    expect(shortestInterval(sample, 0.4)).toEqual([1, 4]);
    expect(shortestInterval(sample, 0.3)).toEqual([1, 3]);
  });

  it('has values at a limit counted as reaching it', () => {
    expect(countFrom(sample, 4)).toBe(6);
    expect(countFrom(sample, 4.1)).toBe(5);
    expect([countFrom(sample, 0), countFrom(sample, 101)]).toEqual([10, 0]);
  });

  it('of an empty sample is not a number', () => {
    expect(symmetricInterval(new Float64Array(0))).toEqual([Number.NaN, Number.NaN]);
    expect(shortestInterval(new Float64Array(0))).toEqual([Number.NaN, Number.NaN]);
  });

  it('of first order is the estimate ± 1.96 u', () => {
    const [low, high] = firstOrderInterval(10, 2);
    expect([low.toFixed(3), high.toFixed(3)]).toEqual(['6.080', '13.920']);
  });
});
