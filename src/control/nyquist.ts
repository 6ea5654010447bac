/** Margins read off the loop transfer along the unit circle: where it crosses the negative axis, 1, and −1's reach. */
import { angleBetween } from './complex.ts';
import type { FrequencySweep } from './frequency-sweep.ts';
import type { TransferPoint } from './loop-transfer.ts';
import { zeroBetween } from './root-finding.ts';

/** A place on the unit circle. */
export interface AtFrequency {
  /** θ = ω T_s, rad a sample, 0 to π. */
  readonly theta: number;
  /** ω, rad/s. */
  readonly frequency: number;
}

export interface GainMargin extends AtFrequency {
  /** Factor on all gains together at which a pole reaches the unit circle. */
  readonly factor: number;
}

export interface PhaseMargin extends AtFrequency {
  /** rad, the smallest turn of L about 0 that takes it to −1; Infinity where |L| is never 1. */
  readonly angle: number;
}

export interface PeakSensitivity extends AtFrequency {
  /** M_s = max 1 / |1 + L|. */
  readonly peak: number;
}

export interface GainMargins {
  /** Smallest factor above 1; Infinity where more gain never takes the balance. */
  readonly gainMarginUp: GainMargin;
  /** Largest factor below 1; 0 where the vehicle balances without the loop. */
  readonly gainMarginDown: GainMargin;
}

/** An undamped rotor that holds the vehicle up by itself has its poles on the circle, where L is without bound. */
const NO_LOWER_LIMIT = 1e-9;

/**
 * Gain margins both ways, all gains scaled together by κ.
 *
 *   κ L(e^{jθ}) = −1:  L is negative real there, and κ = 1 / |L|
 *
 * Source: Nyquist criterion. An unstable vehicle has a lower margin as well as an upper.
 */
export function gainMargins(sweep: FrequencySweep): GainMargins {
  let up: GainMargin = { factor: Number.POSITIVE_INFINITY, ...atFrequency(sweep, Math.PI) };
  let down: GainMargin = { factor: 0, ...atFrequency(sweep, 0) };
  for (const { theta, re } of phaseCrossings(sweep)) {
    const factor = -1 / re;
    if (factor > 1 && factor < up.factor) up = { factor, ...atFrequency(sweep, theta) };
    if (factor < 1 && factor > Math.max(down.factor, NO_LOWER_LIMIT))
      down = { factor, ...atFrequency(sweep, theta) };
  }
  return { gainMarginUp: up, gainMarginDown: down };
}

/** Points at which L is negative real. */
function phaseCrossings(sweep: FrequencySweep): TransferPoint[] {
  const { points, transfer } = sweep;
  /** Sine of the angle at which L passes the axis, divided by sin θ so that it keeps its sign to both ends. */
  const rise = (point: TransferPoint): number => {
    const size = Math.hypot(point.re, point.im);
    if (point.theta > 0 && point.theta < Math.PI) return point.im / (size * Math.sin(point.theta));
    const slope = transfer.slopeAt(point.theta)?.imByTheta ?? Number.NaN;
    return (point.theta > 0 ? -slope : slope) / size;
  };
  const ends = points.filter(({ theta, re }) => (theta === 0 || theta === Math.PI) && re < 0);
  const zeros = zerosAlong(sweep, rise, ({ re }) => re < 0).flatMap((theta) => transfer.at(theta) ?? []);
  return [...ends, ...zeros];
}

/** Frequencies at which |L| = 1. */
export function gainCrossovers(sweep: FrequencySweep): number[] {
  return zerosAlong(
    sweep,
    ({ re, im }) => Math.log(Math.hypot(re, im)),
    () => true,
  );
}

/** The smallest angle between L and −1 where |L| = 1. */
export function phaseMargin(sweep: FrequencySweep): PhaseMargin {
  let smallest: PhaseMargin = { angle: Number.POSITIVE_INFINITY, ...atFrequency(sweep, Math.PI) };
  for (const theta of gainCrossovers(sweep)) {
    const point = sweep.transfer.at(theta);
    if (!point) continue;
    const angle = Math.abs(angleBetween({ re: -1, im: 0 }, point));
    if (angle < smallest.angle) smallest = { angle, ...atFrequency(sweep, theta) };
  }
  return smallest;
}

/**
 * Peak sensitivity M_s = max over θ of 1 / |1 + L|: how much the loop amplifies a disturbance at the worst
 * frequency, and the inverse of its distance from −1.
 *
 * Source: K. J. Åström, R. M. Murray, Feedback Systems, 2nd ed. 2021, section 13 (sensitivity functions).
 */
export function peakSensitivity(sweep: FrequencySweep): PeakSensitivity {
  const { points, transfer } = sweep;
  const distances = points.map(({ re, im }) => Math.hypot(1 + re, im));
  const nearest = Math.min(...distances);
  let best = { distance: Number.POSITIVE_INFINITY, theta: 0 };
  const consider = (theta: number, distance: number): void => {
    if (distance < best.distance) best = { distance, theta };
  };
  /** Half of d|1 + L|²/dθ. */
  const growth = (theta: number): number => {
    const point = transfer.slopeAt(theta);
    return point ? (1 + point.re) * point.reByTheta + point.im * point.imByTheta : 0;
  };
  points.forEach((point, i) => {
    const distance = distances[i] ?? 0;
    const left = points[i - 1];
    const right = points[i + 1];
    if (distance > (distances[i - 1] ?? distance) || distance > (distances[i + 1] ?? distance)) return;
    if (distance > 1.1 * nearest) return;
    consider(point.theta, distance);
    if (!left || !right) return;
    const before = growth(left.theta);
    const after = growth(right.theta);
    if (!(before < 0 && after > 0)) return;
    const theta = zeroBetween(growth, left.theta, right.theta, before, after);
    const there = transfer.at(theta);
    if (there) consider(theta, Math.hypot(1 + there.re, there.im));
  });
  return { peak: 1 / best.distance, ...atFrequency(sweep, best.theta) };
}

export function atFrequency({ loop }: FrequencySweep, theta: number): AtFrequency {
  return { theta, frequency: theta / loop.sampled.sampleTime };
}

/**
 * Zeros of a smooth function of L along the sweep: between neighbours of opposite sign, and in pairs where the
 * function only just dips through zero between two of the same sign.
 */
function zerosAlong(
  { points, transfer }: FrequencySweep,
  f: (point: TransferPoint) => number,
  counts: (point: TransferPoint) => boolean,
): number[] {
  const zeros: number[] = [];
  const at = (theta: number): number => {
    const point = transfer.at(theta);
    return point ? f(point) : Number.NaN;
  };
  const values = points.map((point) => (counts(point) ? f(point) : Number.NaN));
  for (let i = 0; i + 1 < points.length; i++) {
    const left = points[i];
    const right = points[i + 1];
    const here = values[i] ?? Number.NaN;
    const next = values[i + 1] ?? Number.NaN;
    if (!left || !right) continue;
    if (here === 0) zeros.push(left.theta);
    if (here * next < 0) {
      zeros.push(zeroBetween(at, left.theta, right.theta, here, next));
      continue;
    }
    const before = points[i - 1];
    const previous = values[i - 1] ?? Number.NaN;
    if (!before || !(previous * here > 0 && here * next > 0)) continue;
    if (Math.abs(here) > Math.abs(previous) || Math.abs(here) > Math.abs(next)) continue;
    const dip = beyondZero(at, [before.theta, left.theta, right.theta], [previous, here, next]);
    if (dip === undefined) continue;
    zeros.push(zeroBetween(at, before.theta, dip.x, previous, dip.value));
    zeros.push(zeroBetween(at, dip.x, right.theta, dip.value, next));
  }
  return zeros;
}

/** Where a function that turns back near zero has the other sign, if it has. */
function beyondZero(
  f: (x: number) => number,
  [a, b, c]: readonly [number, number, number],
  [fa, fb, fc]: readonly [number, number, number],
): { readonly x: number; readonly value: number } | undefined {
  // vertex of the parabola through the three points, drawn anew from the closer point a few times
  let [x0, x1, x2, f0, f1, f2] = [a, b, c, fa, fb, fc];
  for (let step = 0; step < 6; step++) {
    const slope = (f1 - f0) / (x1 - x0);
    const bend = ((f2 - f1) / (x2 - x1) - slope) / (x2 - x0);
    const vertex = (x0 + x1) / 2 - slope / (2 * bend);
    const depth = f1 - bend * (vertex - x1) ** 2;
    if (!(vertex > x0 && vertex < x2) || vertex === x1) return undefined;
    if (depth * f1 > 0 && Math.abs(depth) > 0.5 * Math.abs(f1)) return undefined; // turns well before zero
    const value = f(vertex);
    if (value * fb < 0) return { x: vertex, value };
    if (Math.abs(value) >= Math.abs(f1)) return undefined;
    if (vertex < x1) [x2, f2, x1, f1] = [x1, f1, vertex, value];
    else [x0, f0, x1, f1] = [x1, f1, vertex, value];
  }
  return undefined;
}
