/**
 * The gains that leave the loop furthest from losing its balance, within what travel and noise allow. A proposal, with
 * the reason why it is no better.
 */
import { DomainError, requireFinite, requirePositive } from '../mechanics/index.ts';
import { type BalanceLoop, balanceLoop, respond, restingState } from './balance-loop.ts';
import { commandNoise, type ReadingNoise } from './command-noise.ts';
import { type GainName, type Gains, gainFamily, gainNames } from './gain-family.ts';
import { gainsOf, gainTexts } from './gain-map.ts';
import { loopMargins, type StableLoop } from './margins.ts';
import { climb } from './nelder-mead.ts';

/** What counts as enough of each margin: they are measured by it, and the smallest counts. */
export interface WantedMargins {
  /** Factor on all gains, upwards and downwards; more than 1. 2 where left out (common practice). */
  readonly gainMargin?: number;
  /** s; as much again as the delay and half the sample time already are, where left out. */
  readonly delayMargin?: number;
  /** M_s; 2 where left out (common practice: between 1.3 and 2). */
  readonly peakSensitivity?: number;
}

export interface GainLimits {
  /** Lowest and highest value of each gain that may be changed; the others stay. */
  readonly range: Partial<Record<GainName, readonly [number, number]>>;
  /** The command after a start at rest from this lean, rad, must not be more than this, rad or m. */
  readonly command?: { readonly lean: number; readonly largest: number };
  /** Nor its standard deviation by the noise of the readings more than this. */
  readonly noise?: ReadingNoise & { readonly largest: number };
}

export type Shortest = 'gain margin up' | 'gain margin down' | 'delay margin' | 'peak sensitivity';

export interface RobustGains {
  readonly gains: Gains;
  /** The smallest of the margins, measured by what is wanted: 1 where all of it is there. */
  readonly robustness: number;
  /** Which of them it is. */
  readonly shortest: Shortest;
  readonly margins: StableLoop;
  /** Lean from sample to sample after a start at rest from 1 rad, as long as the settling time (at most 10 s). */
  readonly response: Float64Array;
  /** Gains that lie at their limit. */
  readonly atLimit: readonly GainName[];
  readonly evaluations: number;
}

/** Points to a side of the first look round, by the number of gains that may change. */
const LOOK_ROUND: Readonly<Record<number, number>> = { 1: 201, 2: 41, 3: 15 };
const STARTS = 3;
const UNSTABLE = -2;
/** s after the start, by when the largest command has long come. */
const LARGEST_COMMAND_BY = 2;

/**
 * The most robust gains within limits; nothing where none hold.
 *
 *   max over the gains of min( ln κ↑ / ln κ_w, −ln κ↓ / ln κ_w, δ / δ_w, M_w / M_s )
 *
 * First a look round over the whole range for gains that hold at all; then a Nelder–Mead climb from the present gains
 * and from the steadiest of those found, and once more from the best. The same limits give the same gains.
 *
 * @throws DomainError  for limits that contradict themselves, and for wants that are none
 * Source: maximin of normalised margins; the margins themselves as in margins.ts.
 */
export function mostRobustGains(
  loop: BalanceLoop,
  limits: GainLimits,
  wanted: WantedMargins = {},
): RobustGains | undefined {
  const free = gainNames.filter((name) => limits.range[name] !== undefined);
  const ranges: readonly (readonly [number, number])[] = free.map((name) => limits.range[name] ?? [0, 0]);
  requireLimits(free, ranges, limits);
  const { hardware, controller } = loop;
  const { gainMargin = 2, peakSensitivity = 2 } = wanted;
  const delay = wanted.delayMargin ?? controller.delay + controller.sampleTime / 2;
  requireMoreThanOne('gain margin wanted', gainMargin);
  requireMoreThanOne('peak sensitivity wanted', peakSensitivity);
  requirePositive('delay margin wanted', delay, 's');

  const present = gainsOf(loop);
  const gainsAt = (point: Float64Array): Gains => {
    const gains = { ...present };
    free.forEach((name, i) => {
      const [low, high] = ranges[i] ?? [0, 0];
      gains[name] = low + (high - low) * (point[i] ?? 0);
    });
    return gains;
  };
  const family = gainFamily(loop);
  const measures = (margins: StableLoop): readonly (readonly [Shortest, number])[] => [
    ['gain margin up', Math.log(margins.gainMarginUp.factor) / Math.log(gainMargin)],
    ['gain margin down', -Math.log(margins.gainMarginDown.factor) / Math.log(gainMargin)],
    ['delay margin', margins.delayMargin.delay / delay],
    ['peak sensitivity', peakSensitivity / margins.peakSensitivity.peak],
  ];
  const shortestOf = (margins: StableLoop): readonly [Shortest, number] =>
    measures(margins).reduce((least, measure) => (measure[1] < least[1] ? measure : least));
  /** Above 0 what is to be largest; −1 to 0 too much command; below −2 unstable, and the further the lower. */
  const height = (point: Float64Array): number => {
    const gains = gainsAt(point);
    const radius = family.spectralRadius(gains);
    if (!(radius < 1)) return UNSTABLE - (radius - 1);
    const candidate = balanceLoop(hardware, { ...controller, ...gains });
    const taken = limitsTaken(candidate, limits);
    if (taken > 1) return 1 / taken - 1;
    const margins = loopMargins(candidate);
    return margins.stable ? shortestOf(margins)[1] : UNSTABLE;
  };

  let evaluations = 0;
  const starts = [
    Float64Array.from(free, (name, i) => {
      const [low, high] = ranges[i] ?? [0, 1];
      return (present[name] - low) / (high - low);
    }),
    ...steadiest(free.length, (point) => family.spectralRadius(gainsAt(point))),
  ];
  let best: { readonly point: Float64Array; readonly value: number } | undefined;
  const from = (start: Float64Array, size: number): void => {
    const summit = climb(height, start, { size, tolerance: 1e-4, mostEvaluations: 110 });
    evaluations += summit.evaluations;
    if (!best || summit.value > best.value) best = summit;
  };
  for (const start of starts) from(start, 0.1);
  for (let again = 0; again < 2 && best; again++) from(best.point, 0.05);
  if (!best || best.value < 0) return undefined;

  const gains = gainsAt(best.point);
  const chosen = balanceLoop(hardware, { ...controller, ...gains });
  const margins = loopMargins(chosen);
  if (!margins.stable) return undefined;
  const [shortest, robustness] = shortestOf(margins);
  const { point } = best;
  return {
    gains,
    robustness,
    shortest,
    margins,
    response: leanAfter(chosen, Math.min(margins.settlingTime, 10)),
    atLimit: free.filter((_, i) => (point[i] ?? 0) < 1e-3 || (point[i] ?? 0) > 1 - 1e-3),
    evaluations,
  };
}

/** The points of least spectral radius on a grid over the unit box, some way apart from each other. */
function steadiest(variables: number, radius: (point: Float64Array) => number): Float64Array[] {
  const side = LOOK_ROUND[variables] ?? 9;
  const points = Array.from({ length: side ** variables }, (_, index) => {
    const point = Float64Array.from({ length: variables }, (_, i) => {
      const step = Math.floor(index / side ** i) % side;
      return (step + 0.5) / side;
    });
    return { point, radius: radius(point) };
  }).sort((a, b) => a.radius - b.radius);
  const chosen: Float64Array[] = [];
  for (const { point } of points) {
    const apart = chosen.every((other) => point.some((x, i) => Math.abs(x - (other[i] ?? 0)) > 0.15));
    if (apart) chosen.push(point);
    if (chosen.length === STARTS) break;
  }
  return chosen;
}

/** How much of the limits on the command a loop takes: more than 1 is too much. */
function limitsTaken(loop: BalanceLoop, { command, noise }: GainLimits): number {
  const byNoise = noise ? commandNoise(loop, noise) / noise.largest : 0;
  if (!command || byNoise > 1) return byNoise;
  const states = fromLean(loop, LARGEST_COMMAND_BY);
  let largest = 0;
  states.forEach((state, k) => {
    const before = states[k - 1] ?? states[0];
    let u = 0;
    for (let i = 0; i < state.length; i++) {
      u += (loop.feedback[i] ?? 0) * (state[i] ?? 0) + (loop.feedbackBefore?.[i] ?? 0) * (before?.[i] ?? 0);
    }
    largest = Math.max(largest, Math.abs(u));
  });
  return Math.max(byNoise, (largest * command.lean) / command.largest);
}

function fromLean(loop: BalanceLoop, duration: number): Float64Array[] {
  const samples = Math.ceil(duration / loop.controller.sampleTime);
  return respond(loop, restingState(loop.plant, { lean: 1, 'lagged lean': 1 }), samples);
}

function leanAfter(loop: BalanceLoop, duration: number): Float64Array {
  return Float64Array.from(fromLean(loop, duration), (state) => state[0] ?? 0);
}

function requireLimits(
  free: readonly GainName[],
  ranges: readonly (readonly [number, number])[],
  { command, noise }: GainLimits,
): void {
  if (free.length === 0) {
    throw new DomainError('number of gains that may change', 0, 'there has to be at least one');
  }
  free.forEach((name, i) => {
    const [low, high] = ranges[i] ?? [Number.NaN, Number.NaN];
    requireFinite(`lowest ${gainTexts[name]}`, low);
    requireFinite(`highest ${gainTexts[name]}`, high);
    if (!(high > low)) {
      throw new DomainError(`highest ${gainTexts[name]}`, high, 'it has to be more than the lowest');
    }
  });
  if (command) {
    requirePositive('lean to recover from', command.lean, 'rad');
    requirePositive('largest command', command.largest, '');
  }
  if (noise) requirePositive('largest noise of the command', noise.largest, '');
}

function requireMoreThanOne(quantity: string, value: number): void {
  if (!(value > 1 && value < Number.POSITIVE_INFINITY)) {
    throw new DomainError(quantity, value, 'it has to be more than 1');
  }
}
