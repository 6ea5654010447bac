/**
 * The loop transfer of a family of loops, which is linear in the gains: what belongs to each gain is taken once at many
 * frequencies, and the peak sensitivity of any set of gains is read off in a few thousand sums.
 */
import { type BalanceController, commandRows } from './balance-loop.ts';
import { type Complex, onCircle, timesReal } from './complex.ts';
import { eigenvalues } from './eigenvalues.ts';
import { type FamilyMember, type Gains, gainNames } from './gain-family.ts';
import { inputAt } from './loop-transfer.ts';
import { createResolvent } from './resolvent.ts';

export interface GainTransfers {
  /**
   * M_s = max 1/|1 + L| of a loop that is stable, to about 1 %: at fixed frequencies and at those of its poles.
   *
   * @param poles  of the closed loop, in z
   */
  peakSensitivity(gains: Gains, poles: readonly Complex[]): number;
}

const POINTS = 200;
/** Around a pole, in units of its half-width. */
const AROUND_A_POLE = [-1, -0.3, 0, 0.3, 1] as const;
/** Poles that die out faster leave no peak narrower than the fixed frequencies stand apart. */
const SLOW = 0.7;

export function gainTransfers(member: FamilyMember, controller: BalanceController): GainTransfers {
  const { plant, sampled } = member;
  const n = sampled.order;
  const none = { ...controller, leanGain: 0, rateGain: 0, gimbalGain: 0 };
  const rows = gainNames.map((name) => commandRows(plant.signals, { ...none, [name]: 1 }));
  const resolvent = createResolvent(sampled);
  /** Real and imaginary part of what each gain contributes at θ. */
  const at = (theta: number): Float64Array | undefined => {
    if (!resolvent.moveTo(theta)) return undefined;
    const column = resolvent.column(inputAt(sampled, theta));
    const [cos, sin] = onCircle(theta, -1);
    const parts = new Float64Array(2 * rows.length);
    rows.forEach(({ now, before }, i) => {
      let [re, im] = timesReal(column, now.subarray(0, n));
      if (before) {
        const [bRe, bIm] = timesReal(column, before.subarray(0, n));
        re += cos * bRe - sin * bIm;
        im += cos * bIm + sin * bRe;
      }
      parts[2 * i] = -re;
      parts[2 * i + 1] = -im;
    });
    return parts.every(Number.isFinite) ? parts : undefined;
  };
  const fixed = frequencies(eigenvalues(sampled.transition, n)).flatMap((theta) => at(theta) ?? []);
  const contributions = new Float64Array(fixed.length * 2 * rows.length);
  fixed.forEach((parts, k) => {
    contributions.set(parts, k * 2 * rows.length);
  });

  /** |1 + L|² at one of the frequencies. */
  const squareAt = (gains: Gains, parts: Float64Array, from: number): number => {
    const { leanGain, rateGain, gimbalGain } = gains;
    const re =
      1 +
      leanGain * (parts[from] ?? 0) +
      rateGain * (parts[from + 2] ?? 0) +
      gimbalGain * (parts[from + 4] ?? 0);
    const im =
      leanGain * (parts[from + 1] ?? 0) +
      rateGain * (parts[from + 3] ?? 0) +
      gimbalGain * (parts[from + 5] ?? 0);
    return re * re + im * im;
  };

  return {
    peakSensitivity(gains, poles) {
      let least = Number.POSITIVE_INFINITY;
      for (let from = 0; from < contributions.length; from += 6) {
        const square = squareAt(gains, contributions, from);
        if (square < least) least = square;
      }
      for (const { re, im } of poles) {
        const size = Math.hypot(re, im);
        if (im < 0 || size < SLOW) continue;
        const turn = Math.atan2(im, re);
        for (const step of AROUND_A_POLE) {
          const theta = turn - step * Math.log(size);
          if (!(theta >= 0 && theta <= Math.PI)) continue;
          const parts = at(theta);
          if (parts) least = Math.min(least, squareAt(gains, parts, 0));
        }
      }
      return 1 / Math.sqrt(least);
    },
  };
}

/** From well below the slowest pole of the open loop to half the sampling frequency, and closely around its modes. */
function frequencies(poles: readonly Complex[]): number[] {
  let slowest = 0.1;
  const modes: number[] = [];
  for (const { re, im } of poles) {
    const size = Math.hypot(re, im);
    if (size < 1e-6) continue;
    const decay = Math.abs(Math.log(size));
    const turn = Math.atan2(im, re);
    const speed = Math.hypot(decay, turn);
    if (speed > 1e-9) slowest = Math.min(slowest, speed);
    if (turn > 0) for (const step of AROUND_A_POLE) modes.push(turn + step * Math.max(decay, 1e-6));
  }
  const low = 0.05 * slowest;
  const even = Array.from({ length: POINTS }, (_, i) => low * (Math.PI / low) ** (i / (POINTS - 1)));
  return [0, ...even.slice(0, -1), ...modes.filter((theta) => theta > 0 && theta < Math.PI), Math.PI];
}
