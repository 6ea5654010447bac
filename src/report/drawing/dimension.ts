/** Dimension lines after ISO 129-1: thin lines, filled arrowheads, the figure above the line and never upside down. */
import type { Primitive } from './primitive.ts';
import { arrowhead, LINE, lettering, line, lines, type Point } from './sketch.ts';
import { textWidth } from './text-width.ts';

interface Style {
  /** Size of the lettering. */
  readonly size: number;
}

const THIN = { stroke: 'quiet', width: LINE.thin } as const;
const EXTENSION = { stroke: 'quiet', width: LINE.hair } as const;
/** Gap between the outline and its extension line, and how far that runs past the dimension line, in text sizes. */
const GAP = 0.25;
const OVERRUN = 0.25;
const ARROW = 0.75;

/** Upright dimension at `x` between two heights; extension lines come from `fromX`. */
export function uprightDimension(
  x: number,
  [a, b]: readonly [number, number],
  fromX: readonly [number, number],
  text: string,
  { size }: Style,
): Primitive[] {
  const top = Math.min(a, b);
  const bottom = Math.max(a, b);
  const extension = (y: number, from: number): readonly [Point, Point] => {
    const away = Math.sign(x - from) || 1;
    return [
      [from + away * GAP * size, y],
      [x + away * OVERRUN * size, y],
    ];
  };
  const [fromA, fromB] = fromX;
  const tight = bottom - top < 2.6 * ARROW * size;
  const middle = (top + bottom) / 2;
  const width = textWidth(text, size);
  const outside = bottom - top < width + size * 0.4;
  return [
    lines([extension(a, fromA), extension(b, fromB)], EXTENSION),
    ...(tight ? outward([x, top], [x, bottom], size) : inward([x, top], [x, bottom], size)),
    outside
      ? lettering([x + size * 0.35, middle + size * 0.35], text, size, { ink: 'ink' })
      : lettering([x - size * 0.3, middle], text, size, { anchor: 'middle', rotate: 90 }),
  ];
}

/** Level dimension at `y` between two places; extension lines come from `fromY`. */
export function levelDimension(
  y: number,
  [a, b]: readonly [number, number],
  fromY: readonly [number, number],
  text: string,
  { size }: Style,
): Primitive[] {
  const left = Math.min(a, b);
  const right = Math.max(a, b);
  const extension = (x: number, from: number): readonly [Point, Point] => {
    const away = Math.sign(y - from) || 1;
    return [
      [x, from + away * GAP * size],
      [x, y + away * OVERRUN * size],
    ];
  };
  const [fromA, fromB] = fromY;
  const width = textWidth(text, size);
  const tight = right - left < 2.6 * ARROW * size;
  const outside = right - left < width + size * 0.4;
  return [
    lines([extension(a, fromA), extension(b, fromB)], EXTENSION),
    ...(tight ? outward([left, y], [right, y], size) : inward([left, y], [right, y], size)),
    outside
      ? lettering([right + size * (tight ? ARROW * 2 : 0.4), y + size * 0.35], text, size)
      : lettering([(left + right) / 2, y - size * 0.3], text, size, { anchor: 'middle' }),
  ];
}

/** Arrows between the ends, pointing outwards to them. */
function inward(from: Point, to: Point, size: number): Primitive[] {
  const along: Point = [to[0] - from[0], to[1] - from[1]];
  const back: Point = [-along[0], -along[1]];
  return [
    line(from, to, THIN),
    arrowhead(from, back, ARROW * size, 'quiet'),
    arrowhead(to, along, ARROW * size, 'quiet'),
  ];
}

/** No room between the ends: the arrows stand outside and point at each other. */
function outward(from: Point, to: Point, size: number): Primitive[] {
  const norm = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const unit: Point = [(to[0] - from[0]) / norm, (to[1] - from[1]) / norm];
  const reach = ARROW * size * 1.8;
  const before: Point = [from[0] - unit[0] * reach, from[1] - unit[1] * reach];
  const after: Point = [to[0] + unit[0] * reach, to[1] + unit[1] * reach];
  return [
    line(before, after, THIN),
    arrowhead(from, unit, ARROW * size, 'quiet'),
    arrowhead(to, [-unit[0], -unit[1]], ARROW * size, 'quiet'),
  ];
}
