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
import { discretise, slopeByDelay, slopeBySampleTime } from './discretise.ts';
import {
  type HardwareFigure,
  type LinearPlant,
  linearPlant,
  linearPlantSlopes,
  type PlantOptions,
  type Signal,
  type SlopeEntry,
} from './linear-plant.ts';
import { loopTransfer, type TransferSlopePoint } from './loop-transfer.ts';
import type { StableLoop } from './margins.ts';
import type { GainMargin } from './nyquist.ts';
import { changeBySampling, type Pair, transferByCoefficient } from './transfer-slopes.ts';

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
  readonly byDelay: Pair;
  readonly byFigure: ReadonlyMap<LoopFigure, Pair>;
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
  const across = ([re, im]: Pair): number => reByTheta * im - imByTheta * re;
  const scale = across(byDelay);
  return each(point, (slope) => -across(slope) / scale);
}

function peakSlopes(peak: number, point: CriticalPoint | undefined): Slopes {
  if (!point) return {};
  const { re, im } = point;
  return each(point, ([dRe, dIm]) => -(peak ** 3) * (dRe * (1 + re) + dIm * im));
}

function each(point: CriticalPoint, slope: (d: Pair) => number): Slopes {
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
  const points = moving(thetas);
  if (loop.plant.neutralModes.length === 0 || !thetas.includes(0)) return points;
  const [resting] = prepare(loop, plantOptions(loop.controller), delay)([0]);
  return points.map((point, i) => (thetas[i] === 0 ? resting : point));
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
): (thetas: readonly number[]) => (CriticalPoint | undefined)[] {
  const plant = linearPlant(hardware, options);
  const plantSlopes = linearPlantSlopes(hardware, options);
  const sampled = discretise(plant, controller.sampleTime, delay);
  const transfer = loopTransfer({ sampled, ...feedbackRows(plant, controller) });
  const byDelay = slopeByDelay(plant, sampled);
  const bySampleTime = slopeBySampleTime(plant, sampled);
  const rows = controllerRows(plant, controller);

  return (thetas) => {
    const points = thetas.map((theta) => transfer.slopeAt(theta));
    const byCoefficient = transferByCoefficient(plant, sampled, points);
    return points.map((point, i) => {
      const coefficients = byCoefficient[i];
      if (!point || !coefficients) return undefined;
      const read = withHeldCommand(point.column, sampled.wholeSamples, point.theta);
      const byFigure = new Map<LoopFigure, Pair>();
      const add = (figure: LoopFigure, [re, im]: Pair): void => {
        const [knownRe, knownIm] = byFigure.get(figure) ?? [0, 0];
        byFigure.set(figure, [knownRe + re, knownIm + im]);
      };
      for (const { figure, entries, signals } of plantSlopes) {
        add(figure, changeByEntries(coefficients, plant.order + 1, entries));
        if (signals) add(figure, changeByCommand(read, point.theta, commandRows(signals, controller)));
      }
      for (const [figure, command] of rows) add(figure, changeByCommand(read, point.theta, command));
      const delayed = changeBySampling(point, sampled, byDelay);
      add('delay', delayed);
      add('sampleTime', changeBySampling(point, sampled, bySampleTime));
      return { ...point, byDelay: delayed, byFigure };
    });
  };
}

/**
 * The controller is linear in each gain: its slope is the controller with that gain 1 and the others 0. A difference
 * of angles is divided by the sample time as well.
 */
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
    list.push(['sampleTime', rows({ rateGain: -controller.rateGain / controller.sampleTime })]);
  }
  return list;
}

function changeByEntries(
  byCoefficient: ComplexVector,
  columns: number,
  entries: readonly SlopeEntry[],
): Pair {
  let re = 0;
  let im = 0;
  for (const { row, column, value } of entries) {
    re += value * (byCoefficient.re[row * columns + column] ?? 0);
    im += value * (byCoefficient.im[row * columns + column] ?? 0);
  }
  return [re, im];
}

/** dL = −dK(z) y, for what the controller reads at this sample and the one before. */
function changeByCommand(read: ComplexVector, theta: number, { now, before }: CommandRows): Pair {
  let [re, im] = timesReal(read, now);
  if (before) {
    const [beforeRe, beforeIm] = timesReal(read, before);
    const [cos, sin] = onCircle(theta, -1);
    re += cos * beforeRe - sin * beforeIm;
    im += cos * beforeIm + sin * beforeRe;
  }
  return [-re, -im];
}

/** The states and, last, the command that acts just before the sampling instant: z^{−m−1} of the present one. */
function withHeldCommand({ re, im }: ComplexVector, wholeSamples: number, theta: number): ComplexVector {
  const [cos, sin] = onCircle(theta, -wholeSamples - 1);
  return { re: Float64Array.of(...re, cos), im: Float64Array.of(...im, sin) };
}
