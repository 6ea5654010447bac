/**
 * Propagation of distributions by random draws: batch after batch, until mean, standard uncertainty and both ends of
 * the coverage interval stand still within the numerical tolerance.
 *
 * Source: JCGM 101:2008 7.9 (adaptive procedure), 8.2 (a fifth of the tolerance where the law of propagation is to be
 * confirmed).
 */
import {
  COVERAGE,
  type Interval,
  numericalTolerance,
  shortestInterval,
  symmetricInterval,
} from './coverage.ts';

/** Fills each array with as many draws of its result; NaN where a draw has none. The next call draws on. */
export type DrawBatch = (results: readonly Float64Array[]) => void;

export interface DrawRule {
  /** Significant digits of u that are to be right. */
  readonly digits: number;
  /** Share of the values that the intervals cover. */
  readonly coverage?: number;
  /** Part of the numerical tolerance at which a result stands still: 1/5 where a first-order result is to be confirmed. */
  readonly part?: number;
  /** Draws in a batch; by the procedure at least 10 000 and 100/(1 − coverage). */
  readonly batch?: number;
  /** Batches that are drawn in any case, at least 2. Two may agree by luck. */
  readonly fewestBatches?: number;
  /** Draws after which it ends, settled or not. */
  readonly most: number;
}

/** One result as its draws spread. */
export interface DrawnSpread {
  readonly draws: number;
  /** Draws in which the result has no value; they are left out of everything below. */
  readonly without: number;
  readonly mean: number;
  readonly u: number;
  readonly symmetric: Interval;
  readonly shortest: Interval;
  /** δ, of u. */
  readonly tolerance: number;
  /** Whether everything stood still before the draws ran out. */
  readonly settled: boolean;
  /** Ascending. */
  readonly values: Float64Array;
}

/**
 * @param draw      draws the next batch of every result
 * @param count     number of results
 * @param progress  told after every batch how many draws were made
 * @returns         a spread for each result; all of NaN where no draw has a value
 */
export function adaptiveDraws(
  draw: DrawBatch,
  count: number,
  rule: DrawRule,
  progress: (draws: number) => void = () => undefined,
): DrawnSpread[] {
  const { digits, coverage = COVERAGE, part = 1, fewestBatches = 2, most } = rule;
  const size = Math.min(rule.batch ?? Math.max(10_000, Math.ceil(100 / (1 - coverage) - 1e-9)), most);
  const batch = Array.from({ length: count }, () => new Float64Array(size));
  const results = batch.map(() => gathered({ digits, part, coverage, fewestBatches }));
  let draws = 0;
  let settled = false;
  for (let batches = 1; !settled && draws + size <= most; batches++) {
    draw(batch);
    draws += size;
    batch.forEach((values, index) => {
      results[index]?.take(values);
    });
    settled = batches >= fewestBatches && results.every((result) => result.isSettled());
    progress(draws);
  }
  return results.map((result) => result.spread(draws));
}

interface Gathered {
  take(batch: Float64Array): void;
  isSettled(): boolean;
  spread(draws: number): DrawnSpread;
}

/** What has been drawn of one result, and the four figures of each batch that have to stand still. */
function gathered({
  digits,
  part,
  coverage,
  fewestBatches,
}: Required<Pick<DrawRule, 'digits' | 'part' | 'coverage' | 'fewestBatches'>>): Gathered {
  let kept = new Float64Array(0);
  let count = 0;
  const moments = runningMoments();
  const means: number[] = [];
  const deviations: number[] = [];
  const lows: number[] = [];
  const highs: number[] = [];

  const standsStill = (): boolean => {
    const tolerance = part * numericalTolerance(moments.deviation(), digits);
    return (
      means.length >= fewestBatches &&
      [means, deviations, lows, highs].every(
        (figures) => 2 * deviationOfMean(figures) < tolerance || isConstant(figures),
      )
    );
  };
  return {
    take(batch) {
      const values = batch.filter((value) => !Number.isNaN(value)).sort();
      if (values.length < 2) return;
      if (kept.length < count + values.length) {
        const larger = new Float64Array(2 * (count + batch.length));
        larger.set(kept.subarray(0, count));
        kept = larger;
      }
      kept.set(values, count);
      count += values.length;
      moments.add(values);
      const own = runningMoments();
      own.add(values);
      const [low, high] = symmetricInterval(values, coverage);
      means.push(own.mean());
      deviations.push(own.deviation());
      lows.push(low);
      highs.push(high);
    },
    /** A result that no draw has had so far is not waited for. */
    isSettled: () => count === 0 || standsStill(),
    spread(draws) {
      const values = kept.slice(0, count).sort();
      const u = moments.deviation();
      return {
        draws,
        without: draws - count,
        mean: moments.mean(),
        u,
        symmetric: symmetricInterval(values, coverage),
        shortest: shortestInterval(values, coverage),
        tolerance: numericalTolerance(u, digits),
        settled: standsStill(),
        values,
      };
    },
  };
}

function isConstant(figures: readonly number[]): boolean {
  return figures.every((figure) => figure === figures[0]);
}

/** s_z: standard deviation of the mean of the batches' figures. JCGM 101:2008 7.9.4 e. */
function deviationOfMean(figures: readonly number[]): number {
  const moments = runningMoments();
  moments.add(figures);
  return moments.deviation() / Math.sqrt(figures.length);
}

interface RunningMoments {
  add(values: ArrayLike<number>): void;
  mean(): number;
  /** Standard deviation of the sample, n − 1; NaN for fewer than two values. */
  deviation(): number;
}

/** Mean and sum of squares, merged group by group so that nothing cancels. Source: T. F. Chan et al., 1979. */
function runningMoments(): RunningMoments {
  let [count, mean, squares] = [0, 0, 0];
  return {
    add(values) {
      const more = values.length;
      if (more === 0) return;
      let sum = 0;
      for (let i = 0; i < more; i++) sum += values[i] ?? Number.NaN;
      const own = sum / more;
      let about = 0;
      for (let i = 0; i < more; i++) about += ((values[i] ?? Number.NaN) - own) ** 2;
      const apart = own - mean;
      const together = count + more;
      squares += about + (apart * apart * count * more) / together;
      mean += (apart * more) / together;
      count = together;
    },
    mean: () => (count > 0 ? mean : Number.NaN),
    deviation: () => (count > 1 ? Math.sqrt(squares / (count - 1)) : Number.NaN),
  };
}
