/** The random numbers against the sequences that their authors' programs print. */
import { describe, expect, it } from 'vitest';
import { randomNumbersFrom, splitMix } from '../../src/control/random.ts';

describe('random numbers', () => {
  it('follow xoshiro128** from the state 1, 2, 3, 4 (test sequence of the Rust crate rand_xoshiro)', () => {
    const random = randomNumbersFrom([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, () => random.bits())).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  it('are seeded by SplitMix64, here from 1234567 (Rosetta Code, Pseudo-random numbers/Splitmix64)', () => {
    expect(splitMix(1234567n, 5)).toEqual([
      6457827717110365317n,
      3203168211198807973n,
      9817491932198370423n,
      4593380528125082431n,
      16408922859458223821n,
    ]);
  });
});
