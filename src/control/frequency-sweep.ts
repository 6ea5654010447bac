/**
 * The loop transfer at as many frequencies as it takes to miss nothing: from below the slowest pole to half the
 * sampling frequency, close together where a lightly damped mode turns the curve quickly, and split wherever the
 * curve still turns by more than a fraction of a radian, seen from 0 or from −1.
 */
import type { SampledLoop } from './balance-loop.ts';
import { angleBetween, type Complex } from './complex.ts';
import { type LoopTransfer, loopTransfer, type TransferPoint } from './loop-transfer.ts';

export interface FrequencySweep {
  readonly loop: SampledLoop;
  readonly transfer: LoopTransfer;
  /** θ rising from 0 (or just above, where the loop integrates) to π. */
  readonly points: readonly TransferPoint[];
}

const LARGEST_TURN = 0.4; // rad between neighbours
const POINTS_PER_DECADE = 6;
const WIDEST_STEP = 0.2; // rad
const MOST_POINTS = 6000;
/** Around a mode, in units of its half-width. */
const AROUND_A_MODE = [-6, -2.5, -1, -0.4, 0, 0.4, 1, 2.5, 6] as const;

/**
 * @param loop         to be broken at the command
 * @param openPoles    eigenvalues of Φ
 * @param closedPoles  poles of the closed loop in z
 */
export function frequencySweep(
  loop: SampledLoop,
  openPoles: readonly Complex[],
  closedPoles: readonly Complex[],
): FrequencySweep {
  const transfer = loopTransfer(loop);
  const points: TransferPoint[] = [];
  const put = (point: TransferPoint): void => {
    split(points.at(-1), point, 0);
    points.push(point);
  };
  const split = (left: TransferPoint | undefined, right: TransferPoint, depth: number): void => {
    if (!left || depth > 30 || points.length > MOST_POINTS || !turnsFar(left, right)) return;
    const middle = left.theta === 0 ? right.theta / 2 : Math.sqrt(left.theta * right.theta);
    if (middle <= left.theta || middle >= right.theta) return;
    const between = transfer.at(middle);
    if (!between) return;
    split(left, between, depth + 1);
    points.push(between);
    split(between, right, depth + 1);
  };
  for (const theta of startingFrequencies([...openPoles, ...closedPoles])) {
    const point = transfer.at(theta);
    if (point && Number.isFinite(point.re) && Number.isFinite(point.im)) put(point);
  }
  return { loop, transfer, points };
}

function turnsFar(left: TransferPoint, right: TransferPoint): boolean {
  return (
    Math.abs(angleBetween(left, right)) > LARGEST_TURN ||
    Math.abs(angleBetween({ re: 1 + left.re, im: left.im }, { re: 1 + right.re, im: right.im })) >
      LARGEST_TURN
  );
}

function startingFrequencies(poles: readonly Complex[]): number[] {
  const frequencies: number[] = [];
  let slowest = 0.1;
  for (const { re, im } of poles) {
    const size = Math.hypot(re, im);
    if (size < 1e-6) continue; // dies within the sample
    const decay = Math.abs(Math.log(size));
    const turn = Math.abs(Math.atan2(im, re));
    const speed = Math.hypot(decay, turn);
    if (speed > 1e-9) slowest = Math.min(slowest, speed);
    if (turn > 0 && decay < turn) {
      const width = Math.max(decay, 1e-9 * turn);
      for (const step of AROUND_A_MODE) frequencies.push(turn + step * width);
    }
  }
  const low = 0.03 * slowest;
  const count = Math.ceil(POINTS_PER_DECADE * Math.log10(Math.PI / low));
  for (let i = 0; i < count; i++) frequencies.push(low * (Math.PI / low) ** (i / count));
  for (let theta = WIDEST_STEP; theta < Math.PI; theta += WIDEST_STEP) frequencies.push(theta);
  const inside = frequencies.filter((theta) => theta >= low && theta < Math.PI).sort((a, b) => a - b);
  return [0, ...inside.filter((theta, i) => theta !== inside[i - 1]), Math.PI];
}
