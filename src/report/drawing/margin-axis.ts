/**
 * The axis of a margin scale: from nought, linear, and long enough for demand, capability and their uncertainty.
 * Where one figure dwarfs the other, the axis is broken and the far figure stands in a zone of its own at the end,
 * so that the near one stays readable.
 */
import { niceStep } from './number-text.ts';

/** Past this ratio of magnitudes a linear axis shows nothing of the smaller figure. */
const RATIO_FOR_BREAK = 8;
/** Share of the length that the far zone takes. */
const FAR_SHARE = 0.24;
const HEADROOM = 1.04;
/**
 * Lengths that an axis may have, in each decade: preferred numbers, R 20 (ISO 3:1973). While a figure is changed the
 * scale stands still under it until the next length is needed.
 */
const LENGTHS = [
  1, 1.12, 1.25, 1.4, 1.6, 1.8, 2, 2.24, 2.5, 2.8, 3.15, 3.55, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10,
];
/** Below this a figure is nought as far as a drawing goes; no division by it makes sense. */
const SMALLEST = 1e-100;

export interface MarginAxis {
  /** Value → position, 0…1 of the length. Values past the break all lie in the far zone. */
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
  readonly step: number;
  /** Where the axis is broken, 0…1; the far zone lies outside of it. */
  readonly break?: { readonly at: number; readonly side: 'left' | 'right' };
}

interface Spread {
  readonly value: number;
  readonly half: number;
}

/** @param figures  what has to fit: value and half width of its band; `tickCount` at most, for the room there is */
export function marginAxis(figures: readonly Spread[], tickCount: number): MarginAxis {
  const known = figures
    .filter(({ value }) => Number.isFinite(value))
    .map(({ value, half }) => ({ value: Math.abs(value) < SMALLEST ? 0 : value, half }));
  const far = farFigure(known);
  const near = far ? known.filter((figure) => figure !== far) : known;
  const low = Math.min(0, ...near.map(({ value, half }) => value - Math.min(half, 0.5 * Math.abs(value))));
  const high = Math.max(0, ...near.map(({ value, half }) => value + Math.min(half, Math.abs(value))));
  const from = low < 0 ? -lengthFor(-low * HEADROOM) : 0;
  const to = high > 0 ? lengthFor(high * (far ? 1.5 : HEADROOM)) : low < 0 ? -from * 0.1 : 1;
  const start = far && far.value < 0 ? FAR_SHARE : 0;
  const end = far && far.value > 0 ? 1 - FAR_SHARE : 1;
  const linear = (value: number): number => start + ((value - from) / (to - from)) * (end - start);
  const step = niceStep(to - from, tickCount);
  const ticks = ticksBetween(from, to, step);
  if (!far) return { at: (value) => clamp(linear(value), 0, 1), ticks, step };

  const side = far.value > 0 ? 'right' : 'left';
  const centre = side === 'right' ? 1 - FAR_SHARE / 2 : FAR_SHARE / 2;
  const scale = (0.32 * FAR_SHARE) / Math.max(far.half, 1e-9 * Math.abs(far.value));
  const inFar = (value: number): number =>
    clamp(centre + (value - far.value) * scale, centre - FAR_SHARE * 0.36, centre + FAR_SHARE * 0.36);
  const isFar = (value: number): boolean => (side === 'right' ? value > to : value < from);
  return {
    at: (value) => (isFar(value) ? inFar(value) : clamp(linear(value), start, end)),
    ticks,
    step,
    break: { at: side === 'right' ? end : start, side },
  };
}

/** The shortest of the lengths that the value fits in. */
function lengthFor(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value));
  const length = LENGTHS.find((each) => each * decade >= value * (1 - 1e-12));
  return (length ?? 10) * decade;
}

function ticksBetween(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
}

function farFigure(figures: readonly Spread[]): Spread | undefined {
  const [a, b] = figures;
  if (!a || !b) return undefined;
  const [small, large] = Math.abs(a.value) <= Math.abs(b.value) ? [a, b] : [b, a];
  return small.value !== 0 && Math.abs(large.value / small.value) > RATIO_FOR_BREAK ? large : undefined;
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
