/**
 * How much later the command may come before the balance is lost: found on the exact model, in which a delay that
 * is not a whole number of samples changes what the hold puts out between them.
 */
import { angleBetween, type Complex } from './complex.ts';
import { discretise, type SampledPlant, slopeByDelay } from './discretise.ts';
import type { FrequencySweep } from './frequency-sweep.ts';
import type { StateSpace } from './linear-plant.ts';
import { loopTransfer, type TransferPoint, transferOf } from './loop-transfer.ts';
import { type AtFrequency, atFrequency } from './nyquist.ts';
import { zeroBetween } from './root-finding.ts';

export interface DelayMargin extends AtFrequency {
  /** δ, s, on top of the delay that the loop has; Infinity where no delay within reach takes the balance. */
  readonly delay: number;
}

/** Parts of a sample at which the crossing is first looked for. */
const PARTS = 3;
/** |1 + L| at which Newton's method has arrived. */
const ARRIVED = 1e-9;

/**
 * The smallest additional delay at which a closed-loop pole reaches the unit circle.
 *
 *   1 + L(e^{jθ}; delay + δ) = 0,  two real equations for θ and δ
 *
 * Started from every frequency with |L| = 1, where a delay of whole samples only turns L, at several parts of a
 * sample, and refined by Newton's method.
 *
 * @param sweep  of the loop as it stands, which is stable
 * @param plant  the continuous plant that was sampled
 * @param delay  s, that the loop has already
 */
export function delayMargin(sweep: FrequencySweep, plant: StateSpace, delay: number): DelayMargin {
  const { sampleTime } = sweep.loop.sampled;
  const parts = Array.from({ length: PARTS }, (_, part) =>
    part === 0 ? sweep.loop.sampled : discretise(plant, sampleTime, delay + (part / PARTS) * sampleTime),
  );
  const starts: { readonly theta: number; readonly extra: number }[] = [];
  parts.forEach((sampled, part) => {
    for (const { theta, angle } of crossovers(sweep, sampled)) {
      const turn = ((2 * Math.PI) / theta) * sampleTime;
      const wait = (part / PARTS + angle / theta) * sampleTime;
      const extra = wait - turn * Math.floor(wait / turn);
      starts.push({ theta, extra });
      if (extra > turn - sampleTime) starts.push({ theta, extra: 0 });
    }
  });
  const roots: (typeof starts)[number][] = [];
  let first: DelayMargin = { delay: Number.POSITIVE_INFINITY, ...atFrequency(sweep, Math.PI) };
  const take = (theta: number, extra: number): void => {
    if (extra > 0 && extra < first.delay) first = { delay: extra, ...atFrequency(sweep, theta) };
  };
  for (const { theta, extra } of starts.sort((a, b) => a.extra - b.extra)) {
    if (extra > first.delay + sampleTime) break;
    // the parts of a sample differ so little that most starts lead to one and the same crossing
    const near = (root: { theta: number; extra: number }): boolean =>
      Math.abs(root.theta - theta) < 0.02 * theta && Math.abs(root.extra - extra) < 0.05 * sampleTime;
    if (roots.some(near)) continue;
    const found = refine(sweep, plant, delay, theta, extra);
    if (!found) continue;
    roots.push(found);
    take(found.theta, found.extra);
  }
  const alternating = alternatingCrossing(sweep, plant, delay, parts);
  if (alternating !== undefined) take(Math.PI, alternating);
  return first;
}

/** Where |L| = 1 for one part of a sample of delay, and how far L there is from −1, clockwise. */
function crossovers(sweep: FrequencySweep, sampled: SampledPlant): { theta: number; angle: number }[] {
  const found: { theta: number; angle: number }[] = [];
  let before: { theta: number; size: number; value: Complex } | undefined;
  for (const { theta, row } of sweep.points) {
    const [re, im] = transferOf(row, sampled, theta);
    const here = { theta, size: Math.log(Math.hypot(re, im)), value: { re, im } };
    if (before && theta > 0 && before.size * here.size <= 0 && before.size !== here.size) {
      const share = before.size / (before.size - here.size);
      const turn = angleBetween(before.value, here.value);
      const angle = angleBetween({ re: -1, im: 0 }, before.value) + share * turn;
      found.push({ theta: before.theta + share * (theta - before.theta), angle });
    }
    before = here;
  }
  return found;
}

/** Newton's method in (θ, δ) on the exact model. */
function refine(
  sweep: FrequencySweep,
  plant: StateSpace,
  delay: number,
  startTheta: number,
  startExtra: number,
): { theta: number; extra: number } | undefined {
  const { sampleTime } = sweep.loop.sampled;
  let theta = startTheta;
  let extra = startExtra;
  let nearest = { theta, extra, miss: Number.POSITIVE_INFINITY };
  for (let step = 0; step < 25; step++) {
    const total = delay + extra;
    if (!(total >= 0 && theta > 0 && theta < Math.PI)) break;
    const there = delayedPoint(sweep, plant, total, theta);
    if (!there) break;
    const { re, im, reByTheta, imByTheta, reByDelay, imByDelay } = there;
    const miss = Math.hypot(1 + re, im);
    // rounding ends the approach: no digits are left to gain
    if (nearest.miss < ARRIVED && miss > 0.25 * nearest.miss) break;
    if (miss < nearest.miss) nearest = { theta, extra, miss };
    const determinant = reByTheta * imByDelay - imByTheta * reByDelay;
    const stepTheta = (-(1 + re) * imByDelay + im * reByDelay) / determinant;
    const stepExtra = (-reByTheta * im + imByTheta * (1 + re)) / determinant;
    if (!Number.isFinite(stepTheta + stepExtra)) break;
    // a first guess that is poor may overshoot: go at most a part of the way there
    const share = Math.min(1, (0.3 * theta) / Math.abs(stepTheta), (2 * sampleTime) / Math.abs(stepExtra));
    theta += share * stepTheta;
    extra += share * stepExtra;
  }
  return nearest.miss < ARRIVED ? nearest : undefined;
}

interface DelayedPoint extends TransferPoint {
  readonly reByTheta: number;
  readonly imByTheta: number;
  readonly reByDelay: number;
  readonly imByDelay: number;
}

function delayedPoint(
  { loop }: FrequencySweep,
  plant: StateSpace,
  delay: number,
  theta: number,
): DelayedPoint | undefined {
  const sampled = discretise(plant, loop.sampled.sampleTime, delay);
  const point = loopTransfer({ ...loop, sampled }).slopeAt(theta);
  if (!point) return undefined;
  const [reByDelay, imByDelay] = transferOf(
    point.row,
    { ...sampled, ...slopeByDelay(plant, sampled) },
    theta,
  );
  return { ...point, reByDelay, imByDelay };
}

/**
 * The one crossing that the search by |L| = 1 can miss: at half the sampling frequency L stays real, so that it
 * may slide along the axis on to −1 within a sample. One whole sample more changes its sign and nothing else.
 */
function alternatingCrossing(
  sweep: FrequencySweep,
  plant: StateSpace,
  delay: number,
  parts: readonly SampledPlant[],
): number | undefined {
  const row = sweep.points.at(-1)?.row;
  if (!row) return undefined;
  const { sampleTime } = sweep.loop.sampled;
  const distance = (sampled: SampledPlant): number => 1 + transferOf(row, sampled, Math.PI)[0];
  const atParts = parts.map(distance);
  const distances = [...atParts, ...atParts.map((h) => 2 - h), ...atParts.slice(0, 1)];
  for (let i = 0; i + 1 < distances.length; i++) {
    const here = distances[i] ?? 0;
    const next = distances[i + 1] ?? 0;
    if (here * next >= 0) continue;
    const at = (extra: number): number => distance(discretise(plant, sampleTime, delay + extra));
    return zeroBetween(at, (i / PARTS) * sampleTime, ((i + 1) / PARTS) * sampleTime, here, next);
  }
  return undefined;
}
