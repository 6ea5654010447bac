/** How much of the sensors' noise arrives in the command: what a high gain costs. */
import { requireNotNegative } from '../mechanics/index.ts';
import { type BalanceLoop, closedLoopMatrix } from './balance-loop.ts';
import { multiply } from './dense.ts';
import { spectralRadius } from './margins.ts';

/** Standard deviations of single readings, independent from sample to sample. */
export interface ReadingNoise {
  /** rad. */
  readonly lean?: number;
  /** rad/s, of the rate gyro or of the gimbal rate. */
  readonly rate?: number;
  /** rad. */
  readonly tilt?: number;
}

/**
 * Standard deviation of the command of a loop that is stable, by the noise of its readings, loop and all.
 *
 *   u = f X + d v,   X(k+1) = A X(k) + B v(k),   P = A P Aᵀ + B Bᵀ σ²,   σ_u² = f P fᵀ + d² σ²
 *
 * @returns in the unit of the command, rad or m; Infinity for a loop that is not stable
 * @throws DomainError  for negative noise
 * Source: stationary covariance of a sampled linear system, K. J. Åström, Introduction to Stochastic Control Theory,
 * chapter 3; P by doubling (R. A. Smith 1968).
 */
export function commandNoise(loop: BalanceLoop, noise: ReadingNoise): number {
  const { lean = 0, rate = 0, tilt = 0 } = noise;
  requireNotNegative('noise of the lean', lean, 'rad');
  requireNotNegative('noise of the rate', rate, 'rad/s');
  requireNotNegative('noise of the gimbal tilt', tilt, 'rad');
  if (!(spectralRadius(loop) < 1)) return Number.POSITIVE_INFINITY;
  const { controller, sampled } = loop;
  const { leanGain, rateGain, gimbalGain, rateSource, sampleTime } = controller;
  const { matrix, order } = closedLoopMatrix(loop);
  const n = sampled.order;
  const remembers = loop.feedbackBefore !== undefined;
  const past = order - n - (remembers ? 1 : 0);

  /** What a unit of command does to the next state. */
  const command = new Float64Array(order);
  if (sampled.wholeSamples === 0) command.set(sampled.input);
  if (past > 0) command[n] = 1;
  const differenced = rateSource === 'difference of angle' ? rateGain / sampleTime : 0;
  const readsRate = rateSource === 'rate gyro' || rateSource === 'gimbal rate';
  const sources = [
    { size: lean, gain: leanGain + differenced, remembered: -differenced },
    { size: rate, gain: readsRate ? rateGain : 0, remembered: 0 },
    { size: tilt, gain: gimbalGain + (rateSource === 'gimbal tilt' ? rateGain : 0), remembered: 0 },
  ];
  const covariance = new Float64Array(order * order);
  let direct = 0;
  for (const { size, gain, remembered } of sources) {
    direct += (size * gain) ** 2;
    const column = command.map((entry) => entry * gain);
    if (remembers) column[order - 1] = (column[order - 1] ?? 0) + remembered;
    for (let i = 0; i < order; i++) {
      for (let j = 0; j < order; j++) {
        const at = i * order + j;
        covariance[at] = (covariance[at] ?? 0) + size ** 2 * (column[i] ?? 0) * (column[j] ?? 0);
      }
    }
  }
  sumOfAll(covariance, matrix, order);
  const row = new Float64Array(order);
  row.set(loop.feedback);
  if (remembers) row[order - 1] = 1;
  let variance = direct;
  for (let i = 0; i < order; i++) {
    for (let j = 0; j < order; j++) {
      variance += (row[i] ?? 0) * (covariance[i * order + j] ?? 0) * (row[j] ?? 0);
    }
  }
  return Math.sqrt(variance);
}

/** P = Σ Aᵏ Q Aᵏᵀ in place of Q, each round taking twice as many terms as the one before. */
function sumOfAll(p: Float64Array, matrix: Float64Array, order: number): void {
  let a = Float64Array.from(matrix);
  const left = new Float64Array(order * order);
  const term = new Float64Array(order * order);
  const transposed = new Float64Array(order * order);
  for (let round = 0; round < 60; round++) {
    for (let i = 0; i < order; i++) {
      for (let j = 0; j < order; j++) transposed[j * order + i] = a[i * order + j] ?? 0;
    }
    multiply(left, a, p, order);
    multiply(term, left, transposed, order);
    let change = 0;
    let size = 0;
    for (let i = 0; i < p.length; i++) {
      p[i] = (p[i] ?? 0) + (term[i] ?? 0);
      change = Math.max(change, Math.abs(term[i] ?? 0));
      size = Math.max(size, Math.abs(p[i] ?? 0));
    }
    if (change <= 1e-15 * size) return;
    const square = new Float64Array(order * order);
    multiply(square, a, a, order);
    a = square;
  }
}
