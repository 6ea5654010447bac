/**
 * How the loop transfer at one frequency changes with the coefficients of the continuous plant and with the times of
 * sampling, exactly. Found from the other end: once for all coefficients of a and b, however many figures stand
 * behind them.
 */
import { type ComplexVector, complexVector, onCircle } from './complex.ts';
import { bordered, type Held, type HeldPlant, type SampledSlope } from './discretise.ts';
import type { StateSpace } from './linear-plant.ts';
import { type TransferSlopePoint, transferOf } from './loop-transfer.ts';
import { matrixExponentialWithSlopes } from './matrix-exponential.ts';

/** Real and imaginary part. */
export type Pair = readonly [re: number, im: number];

/** dL = −( r dΦ y + r dΓ(z) ), for derivatives of the sampled plant. */
export function changeBySampling(point: TransferSlopePoint, sampled: HeldPlant, slope: SampledSlope): Pair {
  const { row, column, theta } = point;
  const { wholeSamples, order: n } = sampled;
  const { transition, input, inputBefore } = slope;
  let [re, im] = transferOf(row, { wholeSamples, input, inputBefore }, theta);
  if (!transition) return [re, im];
  for (let i = 0; i < n; i++) {
    let yRe = 0;
    let yIm = 0;
    for (let j = 0; j < n; j++) {
      const entry = transition[i * n + j] ?? 0;
      yRe += entry * (column.re[j] ?? 0);
      yIm += entry * (column.im[j] ?? 0);
    }
    const rRe = row.re[i] ?? 0;
    const rIm = row.im[i] ?? 0;
    re -= rRe * yRe - rIm * yIm;
    im -= rRe * yIm + rIm * yRe;
  }
  return [re, im];
}

/**
 * ∂L by every coefficient of [a b], at each point: a row of order + 1 for each state, row after row.
 *
 * Over a stretch t of the sample the states go from x to e^{X} x, X = [a b; 0 0] t, and the loop transfer takes
 * −ρ e^{X} ξ of it, with ξ the states and command at its beginning and ρ what its end counts for. The derivative of
 * that in any direction E is −ρ 𝓛(X, E) ξ = −tr( E 𝓛(X, ξ ρ) ), 𝓛 being the derivative of the exponential: one such
 * derivative, in the direction ξ ρ, holds those by all coefficients.
 * Source: trace identity of the Fréchet derivative (N. J. Higham, Functions of Matrices, 2008, section 3.2; from
 * memory, and it follows from the power series).
 */
export function transferByCoefficient(
  plant: StateSpace,
  sampled: HeldPlant,
  points: readonly (TransferSlopePoint | undefined)[],
): (ComplexVector | undefined)[] {
  const n = plant.order;
  const size = n + 1;
  const results = points.map((point) => (point ? complexVector(n * size) : undefined));

  const addStretch = (
    { time }: Held,
    ends: (point: TransferSlopePoint) => { readonly start: ComplexVector; readonly end: ComplexVector },
  ): void => {
    if (time === 0) return;
    const directions: Float64Array[] = [];
    for (const point of points) {
      if (!point) continue;
      const { start, end } = ends(point);
      directions.push(...outerProduct(start, end, size));
    }
    const { slopes } = matrixExponentialWithSlopes(bordered(plant, time), size, directions);
    let next = 0;
    for (const result of results) {
      if (!result) continue;
      for (const part of [result.re, result.im]) {
        const slope = slopes[next++];
        if (!slope) continue;
        for (let i = 0; i < n; i++) {
          for (let j = 0; j < size; j++) {
            part[i * size + j] = (part[i * size + j] ?? 0) - time * (slope[j * size + i] ?? 0);
          }
        }
      }
    }
  };

  const { late, early, wholeSamples: m } = sampled;
  addStretch(late, ({ row, column, theta }) => ({
    start: extended(column, onCircle(theta, -m - 1)),
    end: extended(rowTimes(row, early.transition, n), [0, 0]),
  }));
  addStretch(early, ({ row, column, theta }) => ({
    start: extended(afterStretch(late, column, onCircle(theta, -m - 1), n), onCircle(theta, -m)),
    end: extended(row, [0, 0]),
  }));
  return results;
}

/** States at the end of a stretch: e^{a t} x + ∫e^{a s}ds b u. */
function afterStretch(
  { transition, input }: Held,
  x: ComplexVector,
  [uRe, uIm]: Pair,
  n: number,
): ComplexVector {
  const out = complexVector(n);
  for (let i = 0; i < n; i++) {
    let re = uRe * (input[i] ?? 0);
    let im = uIm * (input[i] ?? 0);
    for (let j = 0; j < n; j++) {
      const entry = transition[i * n + j] ?? 0;
      re += entry * (x.re[j] ?? 0);
      im += entry * (x.im[j] ?? 0);
    }
    out.re[i] = re;
    out.im[i] = im;
  }
  return out;
}

function rowTimes(row: ComplexVector, matrix: Float64Array, n: number): ComplexVector {
  const out = complexVector(n);
  for (let i = 0; i < n; i++) {
    const re = row.re[i] ?? 0;
    const im = row.im[i] ?? 0;
    for (let j = 0; j < n; j++) {
      const entry = matrix[i * n + j] ?? 0;
      out.re[j] = (out.re[j] ?? 0) + re * entry;
      out.im[j] = (out.im[j] ?? 0) + im * entry;
    }
  }
  return out;
}

function extended({ re, im }: ComplexVector, [lastRe, lastIm]: Pair): ComplexVector {
  const out = complexVector(re.length + 1);
  out.re.set(re);
  out.im.set(im);
  out.re[re.length] = lastRe;
  out.im[re.length] = lastIm;
  return out;
}

/** ξ ρ in its real and its imaginary part. */
function outerProduct(
  xi: ComplexVector,
  rho: ComplexVector,
  size: number,
): [re: Float64Array, im: Float64Array] {
  const re = new Float64Array(size * size);
  const im = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    const xRe = xi.re[i] ?? 0;
    const xIm = xi.im[i] ?? 0;
    for (let j = 0; j < size; j++) {
      const rRe = rho.re[j] ?? 0;
      const rIm = rho.im[j] ?? 0;
      re[i * size + j] = xRe * rRe - xIm * rIm;
      im[i * size + j] = xRe * rIm + xIm * rRe;
    }
  }
  return [re, im];
}
