/**
 * The loop broken at the command, on the unit circle: L(z) with z = e^{jθ}, θ = ω T_s, so that the closed loop is
 * 1 + L = 0. Everything about margins is read from it.
 *
 *   L(z) = −K(z) (z I − Φ)⁻¹ Γ(z),   K(z) = feedback + feedbackBefore z⁻¹,   Γ(z) = Γ₀ z^{−m} + Γ₁ z^{−m−1}
 */
import type { SampledLoop } from './balance-loop.ts';
import { type ComplexVector, complexVector, dot, onCircle, timesReal } from './complex.ts';
import type { SampledPlant } from './discretise.ts';
import { createResolvent } from './resolvent.ts';

/** L at one frequency, with the row that serves any other delay as well. */
export interface TransferPoint {
  readonly theta: number;
  readonly re: number;
  readonly im: number;
  /** r = K(z) (z I − Φ)⁻¹. */
  readonly row: ComplexVector;
}

/** L, its derivative by θ, and both halves of the resolvent, for derivatives by anything else. */
export interface TransferSlopePoint extends TransferPoint {
  readonly reByTheta: number;
  readonly imByTheta: number;
  /** y = (z I − Φ)⁻¹ Γ(z). */
  readonly column: ComplexVector;
}

export interface LoopTransfer {
  /** L at θ; undefined where Φ has an eigenvalue there. */
  at(theta: number): TransferPoint | undefined;
  slopeAt(theta: number): TransferSlopePoint | undefined;
}

/** Prepares the evaluation of L; each evaluation solves one small complex system. */
export function loopTransfer(loop: SampledLoop): LoopTransfer {
  const { sampled } = loop;
  const n = sampled.order;
  const resolvent = createResolvent(sampled);

  const rowAt = (theta: number): ComplexVector => {
    const right = complexVector(n);
    const [cos, sin] = onCircle(theta, -1);
    for (let i = 0; i < n; i++) {
      const before = loop.feedbackBefore?.[i] ?? 0;
      right.re[i] = (loop.feedback[i] ?? 0) + cos * before;
      right.im[i] = sin * before;
    }
    return resolvent.row(right);
  };
  const pointAt = (theta: number): TransferPoint => {
    const row = rowAt(theta);
    const [re, im] = transferOf(row, sampled, theta);
    return { theta, re, im, row };
  };

  return {
    at: (theta) => (resolvent.moveTo(theta) ? pointAt(theta) : undefined),
    slopeAt(theta) {
      if (!resolvent.moveTo(theta)) return undefined;
      const point = pointAt(theta);
      const { row } = point;
      const column = resolvent.column(inputAt(sampled, theta));
      // dL/dθ = −( K_θ y − j z r y + r Γ_θ )
      const [zRe, zIm] = onCircle(theta, 1);
      const [ryRe, ryIm] = dot(row, column);
      let re = zIm * ryRe + zRe * ryIm;
      let im = zIm * ryIm - zRe * ryRe;
      const { wholeSamples: m } = sampled;
      const [g0Re, g0Im] = timesReal(row, sampled.input);
      const [g1Re, g1Im] = timesReal(row, sampled.inputBefore);
      const [c0, s0] = onCircle(theta, -m);
      const [c1, s1] = onCircle(theta, -m - 1);
      // −j m z^{−m}
      re += m * (s0 * g0Re + c0 * g0Im) + (m + 1) * (s1 * g1Re + c1 * g1Im);
      im += m * (s0 * g0Im - c0 * g0Re) + (m + 1) * (s1 * g1Im - c1 * g1Re);
      if (loop.feedbackBefore) {
        const [kRe, kIm] = timesReal(column, loop.feedbackBefore);
        const [c, s] = onCircle(theta, -1);
        re += s * kRe + c * kIm;
        im += s * kIm - c * kRe;
      }
      return { ...point, reByTheta: -re, imByTheta: -im, column };
    },
  };
}

/** L = −r Γ(z) for a row r found before, with the inputs of the same plant at any delay. */
export function transferOf(
  row: ComplexVector,
  sampled: Pick<SampledPlant, 'wholeSamples' | 'input' | 'inputBefore'>,
  theta: number,
): [re: number, im: number] {
  const { wholeSamples: m, input, inputBefore } = sampled;
  const [g0Re, g0Im] = timesReal(row, input);
  const [g1Re, g1Im] = timesReal(row, inputBefore);
  const [c0, s0] = onCircle(theta, -m);
  const [c1, s1] = onCircle(theta, -m - 1);
  return [-(c0 * g0Re - s0 * g0Im + c1 * g1Re - s1 * g1Im), -(c0 * g0Im + s0 * g0Re + c1 * g1Im + s1 * g1Re)];
}

/** Γ(z). */
export function inputAt(
  { order, wholeSamples: m, input, inputBefore }: SampledPlant,
  theta: number,
): ComplexVector {
  const out = complexVector(order);
  const [c0, s0] = onCircle(theta, -m);
  const [c1, s1] = onCircle(theta, -m - 1);
  for (let i = 0; i < order; i++) {
    out.re[i] = c0 * (input[i] ?? 0) + c1 * (inputBefore[i] ?? 0);
    out.im[i] = s0 * (input[i] ?? 0) + s1 * (inputBefore[i] ?? 0);
  }
  return out;
}
