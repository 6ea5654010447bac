/**
 * How each margin changes with each figure of the vehicle and of the controller, exactly: by implicit
 * differentiation of the condition that holds at the critical point, so that no margin is ever found twice.
 */
import {
  type BalanceController,
  type BalanceLoop,
  type CommandRows,
  commandRows,
  feedbackRows,
  plantOptions,
} from './balance-loop.ts';
import { type ComplexVector, onCircle, timesReal } from './complex.ts';
import { transferByDelay } from './delay-margin.ts';
import { discretiseWithSlopes, type SampledSlope, type SampledWithSlopes } from './discretise.ts';
import {
  type HardwareFigure,
  type LinearPlant,
  linearPlant,
  linearPlantSlopes,
  type PlantOptions,
  type Signal,
} from './linear-plant.ts';
import { loopTransfer, type TransferSlopePoint, transferOf } from './loop-transfer.ts';
import type { StableLoop } from './margins.ts';
import type { GainMargin } from './nyquist.ts';

export type ControllerFigure = Exclude<keyof BalanceController, 'rateSource'>;
export type LoopFigure = HardwareFigure | ControllerFigure;
/** Derivative by each figure; one that is absent is 0. */
export type Slopes = Partial<Record<LoopFigure, number>>;

export interface MarginSlopes {
  readonly gainMarginUp: Slopes;
  readonly gainMarginDown: Slopes;
  readonly delayMargin: Slopes;
  readonly peakSensitivity: Slopes;
}

/** L at a critical point with its derivatives by θ, by the delay and by every figure. */
interface CriticalPoint extends TransferSlopePoint {
  readonly byDelay: readonly [re: number, im: number];
  readonly byFigure: ReadonlyMap<LoopFigure, readonly [re: number, im: number]>;
}

/**
 * Derivatives of the margins of a stable loop.
 *
 *   κ L(e^{jθ}) = −1                  →  d ln κ = −Re(dL/L) + Im(dL/L) Re(L_θ/L) / Im(L_θ/L)
 *   L(e^{jθ}; delay + δ) = −1         →  dδ = −Im(L̄_θ dL) / Im(L̄_θ L_δ)
 *   M_s = 1/|1 + L| at its maximum    →  dM_s = −M_s Re(dL / (1 + L))
 *
 * with dL taken at the critical θ. Derivatives belong to the critical point as it is: where two points compete,
 * they hold on this side of the change. A free gimbal (k = 0) is left free at ω = 0, where centring is a step, not
 * a slope: the derivative by k is given as 0 there.
 */
export function marginSlopes(loop: BalanceLoop, margins: StableLoop): MarginSlopes {
  const { gainMarginUp: up, gainMarginDown: down, delayMargin, peakSensitivity } = margins;
  const { delay } = loop.controller;
  const [atUp, atDown, atPeak] = criticalPoints(loop, delay, [up.theta, down.theta, peakSensitivity.theta]);
  const [atDelay] = Number.isFinite(delayMargin.delay)
    ? criticalPoints(loop, delay + delayMargin.delay, [delayMargin.theta])
    : [];
  return {
    gainMarginUp: gainSlopes(up, atUp),
    gainMarginDown: gainSlopes(down, atDown),
    delayMargin: delaySlopes(atDelay),
    peakSensitivity: peakSlopes(peakSensitivity.peak, atPeak),
  };
}

function gainSlopes({ factor }: GainMargin, point: CriticalPoint | undefined): Slopes {
  if (!point || factor === 0 || !Number.isFinite(factor)) return {};
  const { re, im, theta, reByTheta, imByTheta } = point;
  const square = re * re + im * im;
  const real = theta === 0 || theta === Math.PI;
  const turning = (imByTheta * re - reByTheta * im) / square;
  const growing = (reByTheta * re + imByTheta * im) / square;
  const along = real ? 0 : growing / turning;
  return each(point, ([dRe, dIm]) => {
    const growth = (dRe * re + dIm * im) / square;
    const turn = (dIm * re - dRe * im) / square;
    return -factor * (growth - turn * along);
  });
}

function delaySlopes(point: CriticalPoint | undefined): Slopes {
  if (!point) return {};
  const { reByTheta, imByTheta, byDelay } = point;
  const across = ([re, im]: readonly [number, number]): number => reByTheta * im - imByTheta * re;
  const scale = across(byDelay);
  return each(point, (slope) => -across(slope) / scale);
}

function peakSlopes(peak: number, point: CriticalPoint | undefined): Slopes {
  if (!point) return {};
  const { re, im } = point;
  return each(point, ([dRe, dIm]) => -(peak ** 3) * (dRe * (1 + re) + dIm * im));
}

function each(point: CriticalPoint, slope: (d: readonly [number, number]) => number): Slopes {
  const slopes: Slopes = {};
  for (const [figure, d] of point.byFigure) slopes[figure] = slope(d);
  return slopes;
}

/**
 * For θ ≠ 0 in the model with its neutral modes kept, in which every figure has its slope; they cancel out of L. At
 * θ = 0 they do not, and the model is the one of the margin itself.
 */
function criticalPoints(
  loop: BalanceLoop,
  delay: number,
  thetas: readonly number[],
): (CriticalPoint | undefined)[] {
  const moving = prepare(loop, { reads: everySignal(loop.controller), keepNeutralModes: true }, delay);
  const resting =
    thetas.includes(0) && loop.plant.neutralModes.length > 0
      ? prepare(loop, plantOptions(loop.controller), delay)
      : moving;
  return thetas.map((theta) => (theta === 0 ? resting : moving)(theta));
}

/** What the controller reads, and what it would read with gains that are 0 now. */
function everySignal({ rateSource }: BalanceController): Signal[] {
  const signals: Signal[] = ['measured lean', 'gimbal tilt'];
  if (rateSource === 'rate gyro') signals.push('measured rate');
  else if (rateSource !== 'difference of angle') signals.push(rateSource);
  return signals;
}

function prepare(
  { hardware, controller }: BalanceLoop,
  options: PlantOptions,
  delay: number,
): (theta: number) => CriticalPoint | undefined {
  const plant = linearPlant(hardware, options);
  const plantSlopes = linearPlantSlopes(hardware, options);
  const delayed = discretiseWithSlopes(plant, controller.sampleTime, delay, plantSlopes);
  const transfer = loopTransfer({ sampled: delayed.sampled, ...feedbackRows(plant, controller) });

  const changes = new Map<LoopFigure, Change>();
  plantSlopes.forEach((slope, i) => {
    const sampled = delayed.slopes[i];
    changes.set(slope.figure, {
      command: commandRows(slope.signals, controller),
      ...(sampled ? { sampled } : {}),
    });
  });
  for (const [figure, command] of controllerRows(plant, controller)) changes.set(figure, { command });
  changes.set('delay', { sampled: delayed.byDelay });
  changes.set('sampleTime', { ...changes.get('sampleTime'), sampled: delayed.bySampleTime });

  return (theta) => {
    const point = transfer.slopeAt(theta);
    if (!point) return undefined;
    const byFigure = new Map<LoopFigure, readonly [number, number]>();
    for (const [figure, change] of changes) byFigure.set(figure, transferChange(point, delayed, change));
    return { ...point, byDelay: transferByDelay(point.row, delayed, theta), byFigure };
  };
}

/** What a figure changes: the sampled plant, the rows of the controller, or both. */
interface Change {
  readonly sampled?: SampledSlope;
  readonly command?: CommandRows;
}

/** The controller is linear in each gain: its slope is the controller with that gain 1 and the others 0. */
function controllerRows(
  plant: Pick<LinearPlant, 'signals'>,
  controller: BalanceController,
): [ControllerFigure, CommandRows][] {
  const none = { ...controller, leanGain: 0, rateGain: 0, gimbalGain: 0 };
  const rows = (gains: Partial<BalanceController>): CommandRows =>
    commandRows(plant.signals, { ...none, ...gains });
  const list: [ControllerFigure, CommandRows][] = [
    ['leanGain', rows({ leanGain: 1 })],
    ['rateGain', rows({ rateGain: 1 })],
    ['gimbalGain', rows({ gimbalGain: 1 })],
  ];
  if (controller.rateSource === 'difference of angle') {
    // the difference is divided by the sample time
    list.push(['sampleTime', rows({ rateGain: -controller.rateGain / controller.sampleTime })]);
  }
  return list;
}

/** dL = −( dK y + r dΦ y + r dΓ ). */
function transferChange(
  { theta, row, column }: TransferSlopePoint,
  { sampled }: SampledWithSlopes,
  change: Change,
): [re: number, im: number] {
  let re = 0;
  let im = 0;
  if (change.sampled) {
    const { transition, input, inputBefore } = change.sampled;
    [re, im] = transferOf(row, { ...sampled, input, inputBefore }, theta);
    const n = sampled.order;
    for (let j = 0; j < n; j++) {
      let sumRe = 0;
      let sumIm = 0;
      for (let i = 0; i < n; i++) {
        const entry = transition[i * n + j] ?? 0;
        sumRe += (row.re[i] ?? 0) * entry;
        sumIm += (row.im[i] ?? 0) * entry;
      }
      const yRe = column.re[j] ?? 0;
      const yIm = column.im[j] ?? 0;
      re -= sumRe * yRe - sumIm * yIm;
      im -= sumRe * yIm + sumIm * yRe;
    }
  }
  if (change.command) {
    const { now, before } = change.command;
    const read = withHeldCommand(column, sampled.wholeSamples, theta);
    const [nowRe, nowIm] = timesReal(read, now);
    re -= nowRe;
    im -= nowIm;
    if (before) {
      const [beforeRe, beforeIm] = timesReal(read, before);
      const [cos, sin] = onCircle(theta, -1);
      re -= cos * beforeRe - sin * beforeIm;
      im -= cos * beforeIm + sin * beforeRe;
    }
  }
  return [re, im];
}

/** The states and, last, the command that acts just before the sampling instant: z^{−m−1} of the present one. */
function withHeldCommand({ re, im }: ComplexVector, wholeSamples: number, theta: number): ComplexVector {
  const [cos, sin] = onCircle(theta, -wholeSamples - 1);
  return { re: Float64Array.of(...re, cos), im: Float64Array.of(...im, sin) };
}
