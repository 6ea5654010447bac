/**
 * Where the border of a gain map may really run: the vehicle is known to its uncertainties only, so the border is drawn
 * for many vehicles that it could be.
 */
import { DomainError, requireNotNegative, requireWholeNumber } from '../mechanics/index.ts';
import { type BalanceController, type BalanceLoop, balanceLoop } from './balance-loop.ts';
import { gainFamily } from './gain-family.ts';
import { type GainAxis, gainsOf, requireAxes, valuesOf } from './gain-map.ts';
import type { BalanceHardware, HardwareFigure } from './linear-plant.ts';
import { randomNumbers } from './random.ts';
import { type BorderLine, borderLines } from './stability-border.ts';

/** Standard uncertainties of the figures that are not taken as exact: normal, independent of each other. */
export type LoopSpread = Partial<Record<HardwareFigure | 'sampleTime' | 'delay', number>>;

/** A vehicle and controller that the loop could be; for figures that depend on each other. */
export type DrawLoop = (normal: () => number) => Pick<BalanceLoop, 'hardware' | 'controller'>;

export interface BorderCloud {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** The border of each vehicle drawn. */
  readonly borders: readonly (readonly BorderLine[])[];
  /** Share of the vehicles that each point of the grid holds, 0 to 1; row after row of equal y. */
  readonly share: Float64Array;
  /** Vehicles drawn that cannot exist, and were drawn again. */
  readonly redrawn: number;
}

export interface CloudOptions {
  /** How many vehicles; at least 1. */
  readonly draws: number;
  /** Whole number, not negative. */
  readonly seed?: number;
}

/** Redraws for each vehicle before the spread is taken to be senseless. */
const MOST_REDRAWS = 100;

/**
 * The borders of vehicles drawn at random, on the same plane of gains; 41 values to an axis do for smooth lines.
 *
 * @param spread  uncertainties, or how to draw a loop; its gains do not matter but for the one that is not on the map
 * @throws DomainError  for axes that lead nowhere, a negative uncertainty, and a spread that hardly ever gives a vehicle
 * Source: Monte Carlo method, JCGM 101:2008, clauses 5 and 6.
 */
export function borderCloud(
  loop: BalanceLoop,
  x: GainAxis,
  y: GainAxis,
  spread: LoopSpread | DrawLoop,
  { draws, seed = 0 }: CloudOptions,
): BorderCloud {
  requireAxes(x, y);
  requireWholeNumber('number of vehicles drawn', draws, 1);
  const draw = typeof spread === 'function' ? spread : drawFrom(loop, spread);
  const [xs, ys] = [valuesOf(x), valuesOf(y)];
  const share = new Float64Array(xs.length * ys.length);
  const borders: BorderLine[][] = [];
  let redrawn = 0;
  for (let i = 0; i < draws; i++) {
    const { normal } = randomNumbers(seed, i);
    const { loop: drawn, attempts } = existing(draw, normal);
    redrawn += attempts;
    const family = gainFamily(drawn);
    const rest = gainsOf(drawn);
    const excess = (xValue: number, yValue: number): number =>
      family.spectralRadius({ ...rest, [x.gain]: xValue, [y.gain]: yValue }) - 1;
    const values = new Float64Array(share.length);
    ys.forEach((yValue, row) => {
      xs.forEach((xValue, column) => {
        const at = row * xs.length + column;
        values[at] = excess(xValue, yValue);
        if ((values[at] ?? 1) < 0) share[at] = (share[at] ?? 0) + 1 / draws;
      });
    });
    borders.push(borderLines(xs, ys, values, excess));
  }
  return { x: xs, y: ys, borders, share, redrawn };
}

function existing(
  draw: DrawLoop,
  normal: () => number,
): { readonly loop: BalanceLoop; readonly attempts: number } {
  for (let attempts = 0; ; attempts++) {
    try {
      const { hardware, controller } = draw(normal);
      return { loop: balanceLoop(hardware, controller), attempts };
    } catch (error) {
      if (!(error instanceof DomainError) || attempts >= MOST_REDRAWS) throw error;
    }
  }
}

function drawFrom({ hardware, controller }: BalanceLoop, spread: LoopSpread): DrawLoop {
  const entries = Object.entries(spread) as [keyof LoopSpread, number][];
  for (const [name, uncertainty] of entries) requireNotNegative(`uncertainty of ${name}`, uncertainty, '');
  return (normal) => {
    const drawn: Record<string, number> = {};
    for (const [name, uncertainty] of entries) {
      const value = name === 'sampleTime' || name === 'delay' ? controller[name] : hardware[name];
      drawn[name] = value + uncertainty * normal();
    }
    const { sampleTime = controller.sampleTime, delay = controller.delay, ...rest } = drawn;
    const drawnController: BalanceController = { ...controller, sampleTime, delay };
    const drawnHardware: BalanceHardware = { ...hardware, ...rest };
    return { hardware: drawnHardware, controller: drawnController };
  };
}
