/** Marks of the drawing board as primitives: lines, boxes, circles, hatching, arrowheads, lettering. */
import type { Ink, PathPrimitive, PathStep, Primitive, TextPrimitive } from './primitive.ts';

export interface Stroke {
  readonly stroke: Ink;
  readonly width: number;
  readonly dash?: readonly number[];
}

export interface Fill {
  readonly fill: Ink;
  readonly tint?: number;
}

export type Point = readonly [x: number, y: number];

/** Thin and broad line of one drawing, in the ratio 1 : 2 of ISO 128-2; a hairline for hatching and extension lines. */
export const LINE = { hair: 0.35, thin: 0.6, broad: 1.2 } as const;
/** Dash patterns, in points: hidden edges, centre lines, alternative positions (ISO 128-2 lines 02, 10 and 12). */
export const DASH = { hidden: [3, 1.6], centre: [7, 1.8, 1, 1.8], ghost: [5, 1.5, 1, 1.5, 1, 1.5] } as const;

export function polyline(
  points: readonly Point[],
  style: Stroke & Partial<Fill>,
  closed = false,
): PathPrimitive {
  const steps: PathStep[] = points.map(([x, y], index) => [index === 0 ? 'M' : 'L', x, y]);
  if (closed) steps.push(['Z']);
  return { type: 'path', steps, ...style };
}

export function line(from: Point, to: Point, style: Stroke): PathPrimitive {
  return polyline([from, to], style);
}

/** Several separate lines in one path. */
export function lines(pairs: readonly (readonly [Point, Point])[], style: Stroke): PathPrimitive {
  return {
    type: 'path',
    steps: pairs.flatMap(([a, b]): PathStep[] => [
      ['M', a[0], a[1]],
      ['L', b[0], b[1]],
    ]),
    ...style,
  };
}

export function area(points: readonly Point[], style: Fill & Partial<Stroke>): PathPrimitive {
  const steps: PathStep[] = points.map(([x, y], index) => [index === 0 ? 'M' : 'L', x, y]);
  return { type: 'path', steps: [...steps, ['Z']], ...style };
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function corners({ left, top, right, bottom }: Box): Point[] {
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

/** Control point distance of a quarter circle drawn as one cubic, 4/3·(√2 − 1). */
const QUARTER = 0.5522847498;

export function ellipse(
  [x, y]: Point,
  rx: number,
  ry: number,
  style: Partial<Stroke> & Partial<Fill>,
): PathPrimitive {
  const a = rx * QUARTER;
  const b = ry * QUARTER;
  return {
    type: 'path',
    steps: [
      ['M', x + rx, y],
      ['C', x + rx, y + b, x + a, y + ry, x, y + ry],
      ['C', x - a, y + ry, x - rx, y + b, x - rx, y],
      ['C', x - rx, y - b, x - a, y - ry, x, y - ry],
      ['C', x + a, y - ry, x + rx, y - b, x + rx, y],
      ['Z'],
    ],
    ...style,
  };
}

export function circle(centre: Point, radius: number, style: Partial<Stroke> & Partial<Fill>): PathPrimitive {
  return ellipse(centre, radius, radius, style);
}

/** Circular arc; angles in radians, 0 upwards, positive to the right. */
export function arc(centre: Point, radius: number, from: number, to: number, style: Stroke): PathPrimitive {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / (Math.PI / 4)));
  const sweep = (to - from) / pieces;
  const handle = (4 / 3) * Math.tan(sweep / 4) * radius;
  const at = (angle: number): Point => [
    centre[0] + radius * Math.sin(angle),
    centre[1] - radius * Math.cos(angle),
  ];
  const steps: PathStep[] = [['M', ...at(from)]];
  for (let i = 0; i < pieces; i += 1) {
    const a = from + i * sweep;
    const b = a + sweep;
    const [ax, ay] = at(a);
    const [bx, by] = at(b);
    steps.push([
      'C',
      ax + handle * Math.cos(a),
      ay + handle * Math.sin(a),
      bx - handle * Math.cos(b),
      by - handle * Math.sin(b),
      bx,
      by,
    ]);
  }
  return { type: 'path', steps, ...style };
}

/** More would be black, and a box that has no end is a mistake elsewhere. */
const MOST_STROKES = 2000;

/** Parallel strokes across a box, cut off at its edges. `rising` leans them like a slash, otherwise the other way. */
export function hatch(box: Box, spacing: number, rising: boolean, style: Stroke): PathPrimitive {
  const height = box.bottom - box.top;
  if (!((box.right - box.left) / spacing < MOST_STROKES)) return lines([], style);
  const pairs: (readonly [Point, Point])[] = [];
  const first = Math.ceil((box.left - height) / spacing) * spacing;
  for (let x = first; x < box.right; x += spacing) {
    const from = Math.max(x, box.left);
    const to = Math.min(x + height, box.right);
    if (to - from < 0.01) continue;
    const a: Point = rising ? [from, box.bottom - (from - x)] : [from, box.top + (from - x)];
    const b: Point = rising ? [to, box.bottom - (to - x)] : [to, box.top + (to - x)];
    pairs.push([a, b]);
  }
  return lines(pairs, style);
}

/** Filled arrowhead, length to width 3 : 1; the tip at `tip`, pointing along (dx, dy). */
export function arrowhead(tip: Point, [dx, dy]: Point, length: number, ink: Ink): PathPrimitive {
  const norm = Math.hypot(dx, dy) || 1;
  const ux = dx / norm;
  const uy = dy / norm;
  const half = length / 6;
  const back: Point = [tip[0] - ux * length, tip[1] - uy * length];
  return area([tip, [back[0] - uy * half, back[1] + ux * half], [back[0] + uy * half, back[1] - ux * half]], {
    fill: ink,
  });
}

export function lettering(
  [x, y]: Point,
  text: string,
  size: number,
  options: {
    readonly anchor?: TextPrimitive['anchor'];
    readonly ink?: Ink;
    readonly weight?: 'regular' | 'semibold';
    readonly rotate?: number;
  } = {},
): TextPrimitive {
  const { anchor = 'start', ink = 'ink', weight, rotate } = options;
  return {
    type: 'text',
    x,
    y,
    text,
    size,
    anchor,
    ink,
    ...(weight ? { weight } : {}),
    ...(rotate ? { rotate } : {}),
  };
}

/** The same marks elsewhere. */
export function moved(primitives: readonly Primitive[], dx: number, dy: number): Primitive[] {
  return primitives.map((primitive) =>
    primitive.type === 'text'
      ? { ...primitive, x: primitive.x + dx, y: primitive.y + dy }
      : { ...primitive, steps: primitive.steps.map((step) => movedStep(step, dx, dy)) },
  );
}

function movedStep(step: PathStep, dx: number, dy: number): PathStep {
  switch (step[0]) {
    case 'M':
    case 'L':
      return [step[0], step[1] + dx, step[2] + dy];
    case 'Q':
      return ['Q', step[1] + dx, step[2] + dy, step[3] + dx, step[4] + dy];
    case 'C':
      return ['C', step[1] + dx, step[2] + dy, step[3] + dx, step[4] + dy, step[5] + dx, step[6] + dy];
    case 'Z':
      return step;
  }
}
