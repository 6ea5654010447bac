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
  /** The next so many normal numbers at once, into a list. */
  fillNormal(list: Float64Array): void;
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
  const state: State = {
    words: Int32Array.from(words, (word) => word | 0),
    spare: Float64Array.of(Number.NaN),
  };
  return {
    bits: () => nextBits(state.words),
    even: () => nextEven(state.words),
    normal: () => nextNormal(state),
    fillNormal(list) {
      for (let i = 0; i < list.length; i++) list[i] = nextNormal(state);
    },
  };
}

/** In arrays, which are changed in place: numbers in a closure would be made anew at every change. */
interface State {
  readonly words: Int32Array;
  /** The second of two normal numbers that came together; not a number where it has been given. */
  readonly spare: Float64Array;
}

function nextBits(words: Int32Array): number {
  const a = words[0] ?? 0;
  const b = words[1] ?? 0;
  const c = (words[2] ?? 0) ^ a;
  const d = (words[3] ?? 0) ^ b;
  words[0] = a ^ d;
  words[1] = b ^ c;
  words[2] = c ^ (b << 9);
  words[3] = rotated(d, 11);
  return Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
}

function nextEven(words: Int32Array): number {
  return ((nextBits(words) >>> 5) * 2 ** 26 + (nextBits(words) >>> 6)) / 2 ** 53;
}

/** Polar method: G. Marsaglia, T. A. Bray, SIAM Review 6 (1964) 260. */
function nextNormal({ words, spare }: State): number {
  const kept = spare[0] ?? Number.NaN;
  if (!Number.isNaN(kept)) {
    spare[0] = Number.NaN;
    return kept;
  }
  for (;;) {
    const x = 2 * nextEven(words) - 1;
    const y = 2 * nextEven(words) - 1;
    const square = x * x + y * y;
    if (square >= 1 || square === 0) continue;
    const scale = Math.sqrt((-2 * Math.log(square)) / square);
    spare[0] = y * scale;
    return x * scale;
  }
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
