/**
 * Random numbers that are the same for the same seed on every machine: for sensor noise, and for drawing vehicles
 * within their uncertainty.
 *
 * Generator: xoshiro128** 1.1; its state filled by SplitMix64, as its authors recommend.
 * Source: D. Blackman, S. Vigna, Scrambled Linear Pseudorandom Number Generators, ACM Trans. Math. Softw. 47 (2021) 36;
 * G. L. Steele, D. Lea, C. H. Flood, Fast Splittable Pseudorandom Number Generators, OOPSLA 2014.
 */
import { requireWholeNumber } from '../mechanics/index.ts';

export interface RandomNumbers {
  /** The next 32 bits, as a whole number from 0. */
  bits(): number;
  /** Evenly spread in [0, 1), in steps of 2⁻⁵³. */
  even(): number;
  /** Normal, mean 0, standard deviation 1. */
  normal(): number;
}

/**
 * A stream of random numbers.
 *
 * @param seed    whole number, not negative
 * @param stream  whole number, not negative: streams of one seed have nothing to do with each other
 * @throws DomainError  for a seed or a stream that is not such a number
 */
export function randomNumbers(seed: number, stream = 0): RandomNumbers {
  requireWholeNumber('seed', seed, 0);
  requireWholeNumber('number of the random stream', stream, 0);
  const [first = 0n] = splitMix(BigInt(seed), 1);
  const [low = 0n, high = 0n] = splitMix(first ^ BigInt(stream), 2);
  return randomNumbersFrom(Uint32Array.from([low, low >> 32n, high, high >> 32n], halfOf));
}

function halfOf(word: bigint): number {
  return Number(word & 0xffffffffn);
}

/** The stream that continues from a state of four words, not all 0. The words given are not changed. */
export function randomNumbersFrom(words: ArrayLike<number>): RandomNumbers {
  // in arrays, which are changed in place: numbers in a closure would be made anew at every change
  const state = Int32Array.from(words, (word) => word | 0);
  const spare = Float64Array.of(Number.NaN);

  const bits = (): number => {
    const a = state[0] ?? 0;
    const b = state[1] ?? 0;
    const c = (state[2] ?? 0) ^ a;
    const d = (state[3] ?? 0) ^ b;
    state[0] = a ^ d;
    state[1] = b ^ c;
    state[2] = c ^ (b << 9);
    state[3] = rotated(d, 11);
    return Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
  };
  const even = (): number => ((bits() >>> 5) * 2 ** 26 + (bits() >>> 6)) / 2 ** 53;
  /** Polar method: G. Marsaglia, T. A. Bray, SIAM Review 6 (1964) 260. */
  const normal = (): number => {
    const kept = spare[0] ?? Number.NaN;
    if (!Number.isNaN(kept)) {
      spare[0] = Number.NaN;
      return kept;
    }
    for (;;) {
      const x = 2 * even() - 1;
      const y = 2 * even() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      spare[0] = y * scale;
      return x * scale;
    }
  };
  return { bits, even, normal };
}

function rotated(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

/** The first words of the 64-bit sequence that a seed begins. */
export function splitMix(seed: bigint, count: number): bigint[] {
  let state = BigInt.asUintN(64, seed);
  return Array.from({ length: count }, () => {
    state = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n);
    let word = state;
    word = BigInt.asUintN(64, (word ^ (word >> 30n)) * 0xbf58476d1ce4e5b9n);
    word = BigInt.asUintN(64, (word ^ (word >> 27n)) * 0x94d049bb133111ebn);
    return word ^ (word >> 31n);
  });
}
