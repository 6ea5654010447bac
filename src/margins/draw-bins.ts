/** Draws counted into bins of equal width, for a picture of how they spread. */
import { countFrom } from '../quantity/index.ts';

export interface DrawBins {
  /** Lower end of the first bin, and the width of each, SI; width 0 where all draws are the same. */
  readonly from: number;
  readonly width: number;
  /** Part of all draws in each bin. What lies beyond the ends is in none. */
  readonly shares: readonly number[];
}

const BINS = 40;
/** Of the draws that are left out at each end: one far away would press all others into a line. */
const BEYOND = 0.0005;

/** @param sorted  ascending; no bins for no draws */
export function drawBins(sorted: Float64Array): DrawBins {
  const rank = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
  const from = rank(BEYOND);
  const width = (rank(1 - BEYOND) - from) / BINS;
  if (sorted.length === 0) return { from: 0, width: 0, shares: [] };
  if (!(width > 0)) return { from, width: 0, shares: [1] };
  const above = Array.from({ length: BINS }, (_, bin) => countFrom(sorted, from + bin * width));
  const beyond = countFrom(sorted, from + BINS * width);
  const shares = above.map((count, bin) => (count - (above[bin + 1] ?? beyond)) / sorted.length);
  return { from, width, shares };
}
