import { describe, expect, it } from 'vitest';
import { randomNumbers } from './random.ts';

const COUNT = 200_000;

function sample(draw: () => number): { mean: number; variance: number; kurtosis: number } {
  const values = Array.from({ length: COUNT }, draw);
  const mean = values.reduce((sum, x) => sum + x, 0) / COUNT;
  const moment = (power: number): number => values.reduce((sum, x) => sum + (x - mean) ** power, 0) / COUNT;
  return { mean, variance: moment(2), kurtosis: moment(4) / moment(2) ** 2 };
}

describe('random numbers', () => {
  it('are the same for the same seed and stream, and for no other', () => {
    const first = (seed: number, stream?: number): number[] => {
      const random = randomNumbers(seed, stream);
      return Array.from({ length: 4 }, () => random.bits());
    };
    expect(first(7)).toEqual(first(7, 0));
    const others = [first(7), first(8), first(7, 1), first(8, 1), first(2 ** 40 + 7)];
    expect(new Set(others.map(String)).size).toBe(others.length);
  });

  it('spread evenly between 0 and 1', () => {
    const random = randomNumbers(1);
    const { mean, variance } = sample(random.even);
    // four standard errors
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 / Math.sqrt(12 * COUNT));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / COUNT));
  });

  it('have the moments of a normal distribution', () => {
    const { mean, variance, kurtosis } = sample(randomNumbers(2).normal);
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(COUNT));
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / COUNT));
    expect(Math.abs(kurtosis - 3)).toBeLessThan(4 * Math.sqrt(24 / COUNT));
  });

  it('do not follow each other from one stream to the next', () => {
    const [one, two] = [randomNumbers(3, 1), randomNumbers(3, 2)];
    let together = 0;
    for (let i = 0; i < COUNT; i++) together += one.normal() * two.normal();
    expect(Math.abs(together / COUNT)).toBeLessThan(4 / Math.sqrt(COUNT));
  });

  it.each([
    [-1, 0],
    [0.5, 0],
    [Number.NaN, 0],
    [1, -1],
  ])('refuse the seed %s with the stream %s', (seed, stream) => {
    expect(() => randomNumbers(seed, stream)).toThrow(/it has to be a whole number/);
  });
});
