/**
 * Coverage intervals read off a sample, and how close two of them have to be to count as the same.
 *
 * Source: JCGM 101:2008 7.7 (intervals), 7.9.2 (numerical tolerance), 8 (validation of the law of propagation).
 */
import { lastPlace } from './format.ts';

export type Interval = readonly [low: number, high: number];

/** Of the values that an interval has to cover, unless another share is asked for. */
export const COVERAGE = 0.95;

/** Coverage factor of a normal result for `COVERAGE`, two-sided: JCGM 100:2008 table G.1. */
const COVERAGE_FACTOR_BOTH_SIDES = 1.959964;

/**
 * Numerical tolerance of an uncertainty: half a unit of its last significant digit, δ = ½·10^l for u = c·10^l with c a
 * whole number of `digits` digits. JCGM 101:2008 7.9.2.
 */
export function numericalTolerance(u: number, digits: number): number {
  return u > 0 ? 0.5 * 10 ** lastPlace(u, digits) : 0;
}

/** The interval that leaves as many values below it as above. JCGM 101:2008 7.7.2. @param sorted ascending; NaN where empty */
export function symmetricInterval(sorted: Float64Array, coverage = COVERAGE): Interval {
  const inside = covered(sorted.length, coverage);
  const below = Math.floor((sorted.length - inside + 1) / 2);
  return between(sorted, Math.max(below, 1), inside);
}

/** The shortest interval that covers the share. JCGM 101:2008 5.3.4, 7.7.4. @param sorted ascending; NaN where empty */
export function shortestInterval(sorted: Float64Array, coverage = COVERAGE): Interval {
  const inside = covered(sorted.length, coverage);
  let shortest = between(sorted, 1, inside);
  for (let below = 2; below <= sorted.length - inside; below++) {
    const interval = between(sorted, below, inside);
    if (interval[1] - interval[0] < shortest[1] - shortest[0]) shortest = interval;
  }
  return shortest;
}

/** q: the number of values that the share comes to. */
function covered(count: number, coverage: number): number {
  return Math.floor(coverage * count + 0.5);
}

/** From the value of that rank, counted from one, to the value `inside` ranks above it. */
function between(sorted: Float64Array, rank: number, inside: number): Interval {
  const last = sorted.length - 1;
  return [at(sorted, Math.min(rank - 1, last)), at(sorted, Math.min(rank - 1 + inside, last))];
}

function at(values: Float64Array, index: number): number {
  return values[index] ?? Number.NaN;
}

/** How many of the values are at least `limit`. @param sorted ascending */
export function countFrom(sorted: Float64Array, limit: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at(sorted, middle) < limit) low = middle + 1;
    else high = middle;
  }
  return sorted.length - low;
}

/** y ± U of a first-order result, for the usual coverage of 95 %. */
export function firstOrderInterval(value: number, u: number): Interval {
  return [value - COVERAGE_FACTOR_BOTH_SIDES * u, value + COVERAGE_FACTOR_BOTH_SIDES * u];
}

/** Whether both ends agree within δ, so that the one interval confirms the other. JCGM 101:2008 8.2. */
export function agree(one: Interval, other: Interval, tolerance: number): boolean {
  return Math.abs(one[0] - other[0]) <= tolerance && Math.abs(one[1] - other[1]) <= tolerance;
}
