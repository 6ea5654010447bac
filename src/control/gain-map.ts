/**
 * What a loop does with other gains: a plane of two of them, with how well each point holds and where the border runs
 * beyond which nothing does.
 */
import { DomainError, requireFinite, requireWholeNumber } from '../mechanics/index.ts';
import type { BalanceLoop } from './balance-loop.ts';
import { type GainFamily, type GainName, type Gains, gainFamily } from './gain-family.ts';
import { type GainTransfers, gainTransfers } from './gain-transfers.ts';
import type { NeutralMode } from './linear-plant.ts';
import { type BorderLine, borderLines } from './stability-border.ts';

export interface GainAxis {
  readonly gain: GainName;
  /** First and last value, the last larger than the first. */
  readonly from: number;
  readonly to: number;
  /** How many values, evenly spaced; at least 2. */
  readonly count: number;
}

/** Row after row of equal y, from the smallest. */
export interface GainMap {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Largest modulus of the closed-loop poles: the vehicle balances below 1. */
  readonly spectralRadius: Float64Array;
  /** ζ of the dominant mode, the slowest to die out; negative where it grows. */
  readonly dominantDamping: Float64Array;
  /** −ln ρ / T_s, 1/s: how fast the dominant mode dies out. */
  readonly decayRate: Float64Array;
  /** M_s; Infinity where nothing holds. Only where it was asked for. */
  readonly peakSensitivity?: Float64Array;
  /** Where the spectral radius is 1, to 10⁻⁷ of a cell. */
  readonly border: readonly BorderLine[];
  readonly neutralModes: readonly NeutralMode[];
}

export interface GainMapOptions {
  /** Also the peak sensitivity, which takes as long again. */
  readonly peakSensitivity?: boolean;
}

/** Values to a side. */
const MOST_VALUES = 1001;

/**
 * A loop over a plane of two of its gains; its third gain stays as it is.
 *
 * @throws DomainError  for an axis that leads nowhere, and for twice the same gain
 * Source: eigenvalues of the exact sampled loop at every point; Nyquist distance for the peak sensitivity.
 */
export function gainMap(loop: BalanceLoop, x: GainAxis, y: GainAxis, options: GainMapOptions = {}): GainMap {
  requireAxes(x, y);
  const family = gainFamily(loop);
  const [xs, ys] = [valuesOf(x), valuesOf(y)];
  const gainsAt = (xValue: number, yValue: number): Gains => ({
    ...gainsOf(loop),
    [x.gain]: xValue,
    [y.gain]: yValue,
  });
  const size = xs.length * ys.length;
  const spectralRadius = new Float64Array(size);
  const dominantDamping = new Float64Array(size);
  const decayRate = new Float64Array(size);
  const peakSensitivity = options.peakSensitivity ? new Float64Array(size) : undefined;
  const transfers = new Map<object, GainTransfers>();
  const neutralModes = new Set<NeutralMode>();

  ys.forEach((yValue, j) => {
    xs.forEach((xValue, i) => {
      const at = j * xs.length + i;
      const gains = gainsAt(xValue, yValue);
      const member = family.member(gains);
      for (const mode of member.plant.neutralModes) neutralModes.add(mode);
      const poles = polesOrNone(family, gains);
      let [radius, turn] = [poles.length === 0 ? Number.NaN : 0, 0];
      for (const { re, im } of poles) {
        const modulus = Math.hypot(re, im);
        if (modulus > radius) [radius, turn] = [modulus, Math.abs(Math.atan2(im, re))];
      }
      const decay = -Math.log(radius);
      spectralRadius[at] = radius;
      decayRate[at] = decay / loop.controller.sampleTime;
      dominantDamping[at] = radius === 0 ? 1 : decay === 0 ? 0 : decay / Math.hypot(decay, turn);
      if (!peakSensitivity) return;
      let known = transfers.get(member);
      if (!known) {
        known = gainTransfers(member, loop.controller);
        transfers.set(member, known);
      }
      peakSensitivity[at] = radius < 1 ? known.peakSensitivity(gains, poles) : Number.POSITIVE_INFINITY;
    });
  });
  return {
    x: xs,
    y: ys,
    spectralRadius,
    dominantDamping,
    decayRate,
    ...(peakSensitivity ? { peakSensitivity } : {}),
    border: borderLines(
      xs,
      ys,
      spectralRadius.map((radius) => radius - 1),
      (xValue, yValue) => radiusOrNone(family, gainsAt(xValue, yValue)) - 1,
    ),
    neutralModes: [...neutralModes],
  };
}

export function gainsOf({ controller }: Pick<BalanceLoop, 'controller'>): Gains {
  const { leanGain, rateGain, gimbalGain } = controller;
  return { leanGain, rateGain, gimbalGain };
}

export function valuesOf({ from, to, count }: GainAxis): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}

/** @throws DomainError */
export function requireAxes(x: GainAxis, y: GainAxis): void {
  for (const axis of [x, y]) {
    const name = gainTexts[axis.gain];
    requireFinite(`first ${name} of the map`, axis.from);
    requireFinite(`last ${name} of the map`, axis.to);
    if (!(axis.to > axis.from)) {
      throw new DomainError(`last ${name} of the map`, axis.to, 'it has to be more than the first');
    }
    requireWholeNumber(`number of values of the ${name}`, axis.count, 2);
    if (axis.count > MOST_VALUES) {
      const requirement = `it has to be at most ${MOST_VALUES}`;
      throw new DomainError(`number of values of the ${name}`, axis.count, requirement);
    }
  }
  if (x.gain === y.gain) {
    throw new DomainError(`number of axes with the ${gainTexts[x.gain]}`, 2, 'a map has two different gains');
  }
}

export const gainTexts: Readonly<Record<GainName, string>> = {
  leanGain: 'lean gain',
  rateGain: 'rate gain',
  gimbalGain: 'gimbal gain',
};

/** A map is drawn to its end, even where single poles cannot be told from rounding. */
function polesOrNone(family: GainFamily, gains: Gains): ReturnType<GainFamily['poles']> {
  try {
    return family.poles(gains);
  } catch (error) {
    if (error instanceof DomainError) return [];
    throw error;
  }
}

function radiusOrNone(family: GainFamily, gains: Gains): number {
  const poles = polesOrNone(family, gains);
  return poles.length === 0
    ? Number.NaN
    : poles.reduce((most, { re, im }) => Math.max(most, Math.hypot(re, im)), 0);
}
