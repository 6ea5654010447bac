/**
 * How the draws of a figure spread: bars over a ruled axis, and what is asked of it as a line, or as bars of its own
 * where that spreads too. Bars on the wrong side of the demand stay open, as the rule of a margin scale does.
 */
import { figureText } from './margin-scale.ts';
import { decimalsOfStep, fixedText, niceStep, powerOfTen } from './number-text.ts';
import type { Drawing, Ink, Primitive } from './primitive.ts';
import { area, arrowhead, lettering, line, lines, type Point, polyline } from './sketch.ts';
import { fittedText, textWidth } from './text-width.ts';

/** Draws counted into bins of equal width, in the unit of the histogram. */
export interface Bars {
  readonly from: number;
  /** 0 where all draws are the same. */
  readonly width: number;
  /** Part of the draws in each bin. */
  readonly shares: readonly number[];
}

export interface HistogramInput {
  readonly title: string;
  /** As lettered: `°`, `rpm`; `1` for a pure number. */
  readonly unit: string;
  /** What the vehicle can do; or any figure. */
  readonly capability: Bars;
  /** What is asked of it. */
  readonly demand?: Bars | undefined;
  /** Ends of the interval that covers 95 % of the draws of the capability. */
  readonly interval?: readonly [low: number, high: number] | undefined;
}

export interface HistogramOptions {
  readonly width: number;
  readonly textSize?: number;
}

type Side = 'capability' | 'demand';

interface Layout {
  readonly em: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly base: number;
  readonly from: number;
  readonly to: number;
  readonly x: (value: number) => number;
}

export function histogram(input: HistogramInput, { width, textSize = 12 }: HistogramOptions): Drawing {
  const em = textSize;
  const main: Side =
    !spreads(input.capability) && input.demand && spreads(input.demand) ? 'demand' : 'capability';
  const bars = input[main] ?? input.capability;
  const other = main === 'demand' ? input.capability : input.demand;
  const [from, to] = reach(bars, other);
  const left = em * 0.5;
  const right = width - left;
  const layout: Layout = {
    em,
    left,
    right,
    top: em * 2.6,
    base: em * 7.6,
    from,
    to,
    x: (value) => left + ((value - from) / (to - from)) * (right - left),
  };
  const otherSide: Side = main === 'demand' ? 'capability' : 'demand';
  const limit = other && other.shares.length > 0 && !spreads(other) ? other.from : undefined;
  return {
    width,
    height: em * 10.6,
    title: `Draws: ${input.title}`,
    description: inWords(input),
    primitives: [
      ...spread(bars, main, limit, layout),
      ...(other
        ? [...marked(other, otherSide, input.unit, layout), ...named(bars, main, limit, input.unit, layout)]
        : []),
      ...(input.interval ? bracket(input.interval, layout) : []),
      ...ruled(input, layout),
    ],
  };
}

function spreads({ width, shares }: Bars): boolean {
  return width > 0 && shares.length > 0;
}

function end({ from, width, shares }: Bars): number {
  return from + width * shares.length;
}

function mean({ from, width, shares }: Bars): number {
  const total = shares.reduce((sum, share) => sum + share, 0);
  return from + width * shares.reduce((sum, share, i) => sum + (i + 0.5) * (share / total), 0);
}

/** About what a standard uncertainty is, for the digits: bars reach a little more than three to either side. */
function uncertainty(bars: Bars): number {
  return spreads(bars) ? (end(bars) - bars.from) / 6 : 0;
}

function label(bars: Bars, side: Side, unit: string): string {
  const value = spreads(bars) ? mean(bars) : bars.from;
  return `${side === 'demand' ? 'needs' : 'can'} ${figureText(value, uncertainty(bars), unit)}`;
}

/** How far beyond the bars the axis goes for the sake of the other figure, in widths of all bars together. */
const FARTHEST = 1.5;
/** Below this a figure is nought as far as a drawing goes; no division by it makes sense. */
const SMALLEST = 1e-100;

/** Both ends of the axis: round the bars, and the other figure too where that is not far off. */
function reach(bars: Bars, other: Bars | undefined): readonly [from: number, to: number] {
  const [low, high] = bars.shares.length > 0 ? [bars.from, end(bars)] : [0, 0];
  const size = high > low ? high - low : Math.abs(low) > SMALLEST ? 0.1 * Math.abs(low) : 1;
  const near = (value: number): boolean => value > low - FARTHEST * size && value < high + FARTHEST * size;
  const others = other && other.shares.length > 0 ? [other.from, end(other)] : [];
  const all = others.every(near) ? [low, high, ...others] : [low, high];
  const room = 0.08 * Math.max(Math.max(...all) - Math.min(...all), size);
  return [Math.min(...all) - room, Math.max(...all) + room];
}

/** Bars as one shape; where the other figure is a single value, those on the wrong side of it as an open one. */
function spread(bars: Bars, side: Side, limit: number | undefined, layout: Layout): Primitive[] {
  const { em, base, top, x } = layout;
  if (!spreads(bars)) {
    return bars.shares.length === 0
      ? []
      : [line([x(bars.from), base], [x(bars.from), top], { stroke: side, width: em * 0.16 })];
  }
  const full = { fill: side, tint: 0.4, stroke: side, width: em * 0.07 };
  const open = { fill: 'paper' as Ink, stroke: side, width: em * 0.07 };
  const most = Math.max(...bars.shares);
  const shape = (low: number, high: number, style: typeof full | typeof open): Primitive[] =>
    high > low ? [area(outline(bars, low, high, most, layout), style)] : [];
  const cut = Math.min(Math.max(limit ?? Number.NaN, bars.from), end(bars));
  if (limit === undefined) return shape(bars.from, end(bars), full);
  const [below, above] = side === 'capability' ? [open, full] : [full, open];
  return [...shape(bars.from, cut, below), ...shape(cut, end(bars), above)];
}

/** Along the tops of the bars between two values, closed along the axis. */
function outline(bars: Bars, low: number, high: number, most: number, { base, top, x }: Layout): Point[] {
  const points: Point[] = [[x(low), base]];
  bars.shares.forEach((share, i) => {
    const from = Math.max(low, bars.from + i * bars.width);
    const to = Math.min(high, bars.from + (i + 1) * bars.width);
    if (!(to > from)) return;
    const y = base - (share / most) * (base - top);
    points.push([x(from), y], [x(to), y]);
  });
  points.push([x(high), base]);
  return points;
}

/** Over the bars, beside the line that the other figure may draw there. */
function named(bars: Bars, side: Side, limit: number | undefined, unit: string, layout: Layout): Primitive[] {
  if (!spreads(bars)) return [];
  const { em, left, right, top, x } = layout;
  const text = label(bars, side, unit);
  const size = em * 0.95;
  const half = textWidth(text, size, 'semibold') / 2;
  const middle = Math.min(Math.max(x(mean(bars)), left + half), right - half);
  const at = limit === undefined ? Number.NEGATIVE_INFINITY : x(limit);
  const apart = half + em * 0.3;
  const beside = at + apart + half <= right ? at + apart : at - apart;
  const centre = Math.abs(middle - at) < apart ? beside : middle;
  const style = { weight: 'semibold', anchor: 'middle', ink: side } as const;
  return [lettering([centre, top - em * 0.35], text, size, style)];
}

/** The figure that the bars are held against: a line, an outline in dashes, or the way to it where it is far off. */
function marked(bars: Bars, side: Side, unit: string, layout: Layout): Primitive[] {
  if (bars.shares.length === 0) return [];
  const { em, left, right, top, base, from, to, x } = layout;
  const middle = (bars.from + end(bars)) / 2;
  const text = label(bars, side, unit);
  const size = em * 0.95;
  const half = textWidth(text, size, 'semibold') / 2;
  const style = { weight: 'semibold', anchor: 'middle', ink: side } as const;
  const baseline = em * 1.1;
  if (bars.from < from || end(bars) > to) {
    const onLeft = middle < from;
    const tip: Point = [onLeft ? left : right, baseline - size * 0.32];
    const way = onLeft ? 1 : -1;
    const shaft: Point = [tip[0] + way * em * 1.6, tip[1]];
    const centre = shaft[0] + way * (em * 0.4 + half);
    return [
      line(shaft, tip, { stroke: side, width: em * 0.1 }),
      arrowhead(tip, [-way, 0], em * 0.8, side),
      lettering([centre, baseline], text, size, style),
    ];
  }
  const centre = Math.min(Math.max(x(middle), left + half), right - half);
  const pen = { stroke: side, width: em * 0.12, dash: [em * 0.35, em * 0.2] };
  return [
    lettering([centre, baseline], text, size, style),
    spreads(bars)
      ? polyline(outline(bars, bars.from, end(bars), Math.max(...bars.shares), layout), pen)
      : line([x(middle), base + em * 0.3], [x(middle), top - em * 0.9], { stroke: side, width: em * 0.16 }),
  ];
}

/** Over the bars: from one end of the interval to the other. */
function bracket([low, high]: readonly [number, number], { em, top, left, right, x }: Layout): Primitive[] {
  const y = top - em * 0.5;
  const [a, b] = [low, high].map((value) => Math.min(Math.max(x(value), left), right)) as [number, number];
  const text = '95\u202F% of the draws';
  const size = em * 0.85;
  const half = textWidth(text, size) / 2;
  const centre = Math.min(Math.max((a + b) / 2, left + half), right - half);
  return [
    lines(
      [
        [
          [a, y],
          [b, y],
        ],
        [
          [a, y - em * 0.25],
          [a, y + em * 0.25],
        ],
        [
          [b, y - em * 0.25],
          [b, y + em * 0.25],
        ],
      ],
      { stroke: 'ink', width: em * 0.07 },
    ),
    lettering([centre, y - em * 0.45], text, size, { anchor: 'middle', ink: 'quiet' }),
  ];
}

function ruled({ title, unit }: HistogramInput, layout: Layout): Primitive[] {
  const { em, left, right, base, from, to, x } = layout;
  const size = em * 0.85;
  const pen = { stroke: 'quiet' as const, width: em * 0.06 };
  const power = powerFor(Math.max(Math.abs(from), Math.abs(to)));
  const lettered = [power === 0 ? '' : powerOfTen(power), unit === '1' ? '' : unit].filter(Boolean).join(' ');
  const caption = lettered === '' ? title : `${title}, ${lettered}`;
  const step = niceStep(to - from, Math.max(2, Math.floor((right - left) / (em * 5))));
  const decimals = decimalsOfStep(step / 10 ** power);
  const first = Math.ceil(from / step);
  const count = Math.max(0, Math.floor(to / step) - first + 1);
  const ticks = Array.from({ length: count }, (_, i) => (first + i) * step);
  return [
    line([left, base], [right, base], pen),
    lines(
      ticks.map((tick): [Point, Point] => [
        [x(tick), base],
        [x(tick), base + em * 0.3],
      ]),
      pen,
    ),
    ...ticks.flatMap((tick) => {
      const text = fixedText(tick / 10 ** power, decimals);
      const half = textWidth(text, size) / 2;
      if (x(tick) - half < 0 || x(tick) + half > right + left) return [];
      return [lettering([x(tick), base + em * 1.25], text, size, { anchor: 'middle', ink: 'quiet' })];
    }),
    lettering([left, base + em * 2.6], fittedText(caption, right - left, em * 0.95), em * 0.95, {
      ink: 'quiet',
    }),
  ];
}

/** Exponent of the power of ten that stands beside the unit, so that ticks are told apart in a few figures. */
function powerFor(largest: number): number {
  return largest > SMALLEST && (largest < 0.01 || largest >= 1e6)
    ? 3 * Math.floor(Math.log10(largest) / 3)
    : 0;
}

function inWords({ unit, capability, demand, interval }: HistogramInput): string {
  const extent = (bars: Bars): string => {
    if (bars.shares.length === 0) return 'has no draws';
    const u = uncertainty(bars);
    if (u === 0) return `is ${figureText(bars.from, 0, unit)} in every draw`;
    return `lies between ${figureText(bars.from, u, unit)} and ${figureText(end(bars), u, unit)}`;
  };
  const parts = [demand ? `What it can do ${extent(capability)}.` : `It ${extent(capability)}.`];
  if (demand) parts.push(`What is asked of it ${extent(demand)}.`);
  if (interval) {
    const u = (interval[1] - interval[0]) / 4;
    const [low, high] = interval.map((value) => figureText(value, u, unit));
    parts.push(`95 % of the draws are between ${low} and ${high}.`);
  }
  return parts.join(' ');
}
