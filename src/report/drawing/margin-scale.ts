/**
 * A margin drawn as a draughtsman's scale: one ruled strip from nought, the capability pointing at it from above,
 * the demand notched into it from below, and the span between the two laid as a rule: solid while the capability
 * lies beyond the demand, open where it falls short. Hatching shows how far each figure may be off.
 */
import { type MarginAxis, marginAxis } from './margin-axis.ts';
import { decimalsOfStep, fixedText, roundedText } from './number-text.ts';
import type { Drawing, Ink, Primitive } from './primitive.ts';
import { area, type Box, corners, hatch, lettering, lines, type Point, polyline } from './sketch.ts';
import { fittedText, textWidth } from './text-width.ts';
import { type VerdictWord, verdictMark } from './verdict-mark.ts';

/** One-sided 95 % of a normal distribution (JCGM 106): half width of the bands, in standard uncertainties. */
export const BAND_FACTOR = 1.645;

export interface MarginScaleInput {
  readonly title: string;
  /** Unit that the figures below are given in, as lettered: `°`, `rpm`; `1` for a pure number. */
  readonly unit: string;
  /** Absent where it is not known. */
  readonly capability?: number | undefined;
  readonly capabilityU?: number | undefined;
  readonly demand?: number | undefined;
  readonly demandU?: number | undefined;
  readonly verdict: VerdictWord;
  readonly marginOfSafety?: number | undefined;
  /** One-sided lower 95 % bound of the margin of safety. */
  readonly lowerBound?: number | undefined;
  /** For the verdict “unknown”: what is missing, in a few words. */
  readonly reason?: string | undefined;
}

export interface MarginScaleOptions {
  readonly width: number;
  /** Size of the lettering; everything else follows from it. */
  readonly textSize?: number;
  /** Leaves the title out, where a heading above says it already. */
  readonly untitled?: boolean;
}

interface Layout {
  readonly em: number;
  readonly left: number;
  readonly right: number;
  readonly strip: Box;
  readonly axis: MarginAxis;
  readonly x: (value: number) => number;
}

export function marginScale(
  input: MarginScaleInput,
  { width, textSize = 12, untitled = false }: MarginScaleOptions,
): Drawing {
  const em = textSize;
  const left = em * 0.5;
  const right = width - em * 0.5;
  const top = em * 3.3;
  const strip: Box = { left, top, right, bottom: top + em * 0.86 };
  const axis = marginAxis(
    [
      { value: input.capability ?? Number.NaN, half: BAND_FACTOR * (input.capabilityU ?? 0) },
      { value: input.demand ?? Number.NaN, half: BAND_FACTOR * (input.demandU ?? 0) },
    ],
    Math.max(2, Math.floor((right - left) / (em * 5))),
  );
  const layout: Layout = {
    em,
    left,
    right,
    strip,
    axis,
    x: (value) => left + axis.at(value) * (right - left),
  };
  return {
    width,
    height: em * 7.2,
    title: `Margin: ${input.title}`,
    description: inWords(input),
    primitives: [
      ...heading(untitled ? '' : input.title, input.verdict, layout),
      ...bands(input, layout),
      ...ruledStrip(input, layout),
      ...span(input, layout),
      ...capabilityPointer(input, layout),
      ...demandNotch(input, layout),
      ...footing(input, layout),
    ],
  };
}

function heading(title: string, verdict: VerdictWord, { em, left, right }: Layout): Primitive[] {
  const word = textWidth(verdict, em, 'semibold');
  const mark = em * 1.25;
  const room = right - left - word - mark - em * 1.2;
  return [
    lettering([left, em * 1.1], fittedText(title, room, em, 'semibold'), em, { weight: 'semibold' }),
    ...verdictMark(verdict, right - word - mark - em * 0.35, em * 1.1, mark),
    lettering([right, em * 1.1], verdict, em, { weight: 'semibold', anchor: 'end' }),
  ];
}

/** The upper half of the strip belongs to the capability, the lower half to the demand; hatched opposite ways. */
function bands(input: MarginScaleInput, { em, strip, x }: Layout): Primitive[] {
  const middle = (strip.top + strip.bottom) / 2;
  const band = (value: number | undefined, u: number | undefined, upper: boolean, ink: Ink): Primitive[] => {
    if (value === undefined || !(u && u > 0)) return [];
    const box: Box = {
      left: x(value - BAND_FACTOR * u),
      right: x(value + BAND_FACTOR * u),
      top: upper ? strip.top : middle,
      bottom: upper ? middle : strip.bottom,
    };
    if (box.right - box.left < em * 0.1) return [];
    return [
      area(corners(box), { fill: 'band', tint: 0.45 }),
      hatch(box, em * 0.26, upper, { stroke: ink, width: em * 0.05 }),
      lines(
        [
          [
            [box.left, box.top],
            [box.left, box.bottom],
          ],
          [
            [box.right, box.top],
            [box.right, box.bottom],
          ],
        ],
        { stroke: ink, width: em * 0.07 },
      ),
    ];
  };
  return [
    ...band(input.capability, input.capabilityU, true, 'capability'),
    ...band(input.demand, input.demandU, false, 'demand'),
  ];
}

function ruledStrip(input: MarginScaleInput, { em, left, right, strip, axis, x }: Layout): Primitive[] {
  const blank = input.capability === undefined && input.demand === undefined;
  const pen = {
    stroke: 'quiet' as const,
    width: em * 0.06,
    ...(blank ? { dash: [em * 0.3, em * 0.25] } : {}),
  };
  if (blank) return [polyline(corners(strip), pen, true)];
  const cut = axis.break ? left + axis.break.at * (right - left) : undefined;
  const gap = em * 0.28;
  const pieces: (readonly [number, number])[] =
    cut === undefined
      ? [[left, right]]
      : [
          [left, cut - gap / 2],
          [cut + gap / 2, right],
        ];
  const tickLength = (tick: number): number => (tick === 0 ? strip.bottom - strip.top : em * 0.24);
  const fine = axis.step / 5;
  const fineTicks = axis.ticks.flatMap((tick) => [1, 2, 3, 4].map((i) => tick + i * fine));
  const inside = (value: number): boolean => {
    const position = x(value);
    return position <= (cut !== undefined && axis.break?.side === 'right' ? cut - gap : right - 0.5);
  };
  return [
    lines(
      [
        ...pieces.flatMap(([from, to]): [Point, Point][] => [
          [
            [from, strip.top],
            [to, strip.top],
          ],
          [
            [from, strip.bottom],
            [to, strip.bottom],
          ],
        ]),
        ...axis.ticks.map((tick): [Point, Point] => [
          [x(tick), strip.bottom],
          [x(tick), strip.bottom - tickLength(tick)],
        ]),
        ...fineTicks.filter(inside).map((tick): [Point, Point] => [
          [x(tick), strip.bottom],
          [x(tick), strip.bottom - em * 0.12],
        ]),
      ],
      pen,
    ),
    ...(cut === undefined ? [] : [breakMark(cut, gap, strip, em)]),
  ];
}

/** Two short zigzags across the strip. */
function breakMark(cut: number, gap: number, strip: Box, em: number): Primitive {
  const high = strip.top - em * 0.2;
  const low = strip.bottom + em * 0.2;
  const reach = (low - high) / 4;
  const zigzag = (x: number): [Point, Point][] => {
    const points: Point[] = [0, 1, 2, 3, 4].map((i) => [
      x + (i % 2 === 1 ? em * 0.11 : -em * 0.11),
      high + i * reach,
    ]);
    return points.slice(1).map((point, i): [Point, Point] => [points[i] ?? point, point]);
  };
  return lines([...zigzag(cut - gap / 2), ...zigzag(cut + gap / 2)], { stroke: 'quiet', width: em * 0.06 });
}

/** The rule between demand and capability: what is to spare, or what is lacking. */
function span(input: MarginScaleInput, { em, strip, x }: Layout): Primitive[] {
  if (input.capability === undefined || input.demand === undefined) return [];
  const middle = (strip.top + strip.bottom) / 2;
  const from = x(input.demand);
  const to = x(input.capability);
  const half = em * 0.11;
  const box: Box = {
    left: Math.min(from, to),
    right: Math.max(from, to),
    top: middle - half,
    bottom: middle + half,
  };
  if (box.right - box.left < em * 0.12) return [];
  return input.capability >= input.demand
    ? [area(corners(box), { fill: 'ink' })]
    : [area(corners(box), { fill: 'paper', stroke: 'ink', width: em * 0.08 })];
}

function capabilityPointer(input: MarginScaleInput, { em, left, right, strip, x }: Layout): Primitive[] {
  if (input.capability === undefined) return [];
  const at = x(input.capability);
  const label = `can ${figureText(input.capability, input.capabilityU, input.unit)}`;
  return [
    area(
      [
        [at, strip.top + em * 0.06],
        [at + em * 0.34, strip.top - em * 0.62],
        [at - em * 0.34, strip.top - em * 0.62],
      ],
      { fill: 'capability' },
    ),
    labelAt(label, at, strip.top - em * 0.84, em * 0.95, left, right, 'capability'),
  ];
}

function demandNotch(input: MarginScaleInput, layout: Layout): Primitive[] {
  const { em, left, right, strip, axis, x } = layout;
  const baseline = strip.bottom + em * 1.5;
  const taken: [number, number][] = [];
  const marks: Primitive[] = [];
  if (input.demand !== undefined) {
    const at = x(input.demand);
    const label = `needs ${figureText(input.demand, input.demandU, input.unit)}`;
    const width = textWidth(label, em * 0.95, 'semibold');
    const middle = clampLabel(at, width, left, right);
    taken.push([middle - width / 2, middle + width / 2]);
    marks.push(
      area(
        [
          [at, strip.bottom - em * 0.06],
          [at + em * 0.34, strip.bottom + em * 0.62],
          [at - em * 0.34, strip.bottom + em * 0.62],
        ],
        { fill: 'paper', stroke: 'demand', width: em * 0.11 },
      ),
      labelAt(label, at, baseline, em * 0.95, left, right, 'demand'),
    );
  }
  if (input.capability === undefined && input.demand === undefined) return marks;
  const decimals = decimalsOfStep(axis.step);
  const size = em * 0.85;
  for (const tick of axis.ticks) {
    const text = fixedText(tick, decimals);
    const width = textWidth(text, size);
    const middle = clampLabel(x(tick), width, left, right);
    const from = middle - width / 2 - em * 0.4;
    const to = middle + width / 2 + em * 0.4;
    if (taken.some(([a, b]) => from < b && to > a)) continue;
    taken.push([from + em * 0.4, to - em * 0.4]);
    marks.push(lettering([middle, baseline], text, size, { anchor: 'middle', ink: 'quiet' }));
  }
  return marks;
}

function footing(input: MarginScaleInput, { em, left, right }: Layout): Primitive[] {
  const baseline = em * 6.95;
  const size = em * 0.95;
  const { marginOfSafety, lowerBound } = input;
  if (marginOfSafety === undefined) {
    const text = input.reason ?? 'not known yet';
    return [lettering([left, baseline], fittedText(text, right - left, size), size, { ink: 'quiet' })];
  }
  // a loop that is unstable has no capability at all: the reason says more than the bound
  const none = input.capability === undefined && input.reason !== undefined;
  const bound = none
    ? `: ${input.reason}`
    : lowerBound === undefined
      ? ''
      : `, at least ${signed(lowerBound)} (95 %)`;
  const start = textWidth(`MS ${signed(marginOfSafety)}`, size, 'semibold');
  return [
    lettering([left, baseline], `MS ${signed(marginOfSafety)}`, size, { weight: 'semibold' }),
    lettering([left + start, baseline], fittedText(bound, right - left - start, size), size, {
      ink: 'quiet',
    }),
  ];
}

function labelAt(
  text: string,
  at: number,
  baseline: number,
  size: number,
  left: number,
  right: number,
  ink: Ink,
): Primitive {
  const width = textWidth(text, size, 'semibold');
  return lettering([clampLabel(at, width, left, right), baseline], text, size, {
    anchor: 'middle',
    weight: 'semibold',
    ink,
  });
}

function clampLabel(at: number, width: number, left: number, right: number): number {
  return Math.max(left + width / 2, Math.min(right - width / 2, at));
}

/** `12.4°`, `0.35 N·m`, a pure number without a unit. */
export function figureText(value: number, u: number | undefined, unit: string): string {
  const number = roundedText(value, u);
  if (unit === '1' || unit === '') return number;
  return unit === '°' ? `${number}°` : `${number} ${unit}`;
}

function signed(value: number): string {
  if (!Number.isFinite(value)) return '–';
  const magnitude = Math.abs(value);
  const text = fixedText(value, magnitude >= 100 ? 0 : magnitude >= 10 ? 1 : 2);
  return value > 0 && !/^0\.?0*$/.test(text) ? `+${text}` : text;
}

function inWords(input: MarginScaleInput): string {
  const figure = (value: number | undefined, u: number | undefined): string =>
    value === undefined ? 'not known' : figureText(value, u, input.unit);
  const parts = [
    `Capability ${figure(input.capability, input.capabilityU)}, demand ${figure(input.demand, input.demandU)}.`,
  ];
  if (input.marginOfSafety !== undefined) parts.push(`Margin of safety ${signed(input.marginOfSafety)}.`);
  if (input.lowerBound !== undefined) parts.push(`Lower 95 % bound ${signed(input.lowerBound)}.`);
  parts.push(`Verdict: ${input.verdict}.`);
  if (input.marginOfSafety === undefined && input.reason) parts.push(input.reason);
  return parts.join(' ');
}
