import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bars, type HistogramInput, histogram } from './histogram.ts';
import type { Drawing, PathPrimitive, TextPrimitive } from './primitive.ts';
import { textWidth } from './text-width.ts';

/** Eight bars over 4.6 to 5.4, highest in the middle. */
const bell: Bars = { from: 4.6, width: 0.1, shares: [0.02, 0.08, 0.15, 0.25, 0.25, 0.15, 0.08, 0.02] };
const value = (at: number): Bars => ({ from: at, width: 0, shares: [1] });
const lean: HistogramInput = { title: 'Lean to recover from', unit: '°', capability: bell };
const draw = (change: Partial<HistogramInput> = {}, width = 440): Drawing =>
  histogram({ ...lean, ...change }, { width });

const paths = (drawing: Drawing): PathPrimitive[] =>
  drawing.primitives.filter((primitive) => primitive.type === 'path');
const texts = (drawing: Drawing): TextPrimitive[] =>
  drawing.primitives.filter((primitive) => primitive.type === 'text');
const words = (drawing: Drawing): string[] => texts(drawing).map(({ text }) => text);

function points({ steps }: PathPrimitive): [number, number][] {
  return steps.flatMap((step): [number, number][] => {
    const numbers = step.slice(1) as number[];
    return Array.from({ length: numbers.length / 2 }, (_, i) => [
      numbers[2 * i] ?? Number.NaN,
      numbers[2 * i + 1] ?? Number.NaN,
    ]);
  });
}
const extent = (path: PathPrimitive | undefined): readonly [number, number] => {
  const xs = path ? points(path).map(([x]) => x) : [];
  return [Math.min(...xs), Math.max(...xs)];
};
const filled = (drawing: Drawing): PathPrimitive | undefined =>
  paths(drawing).find(({ tint }) => tint !== undefined);
const open = (drawing: Drawing): PathPrimitive | undefined =>
  paths(drawing).find(({ fill }) => fill === 'paper');

describe('a histogram', () => {
  it('draws bars as high as their share, side by side from the axis up', () => {
    const bars = filled(draw());
    const heights = bars ? points(bars).map(([, y]) => y) : [];
    const base = Math.max(...heights);
    const tops = heights.filter((y) => y < base).map((y) => base - y);
    const [low, high] = [tops[0] ?? Number.NaN, Math.max(...tops)];
    expect(low / high).toBeCloseTo(0.02 / 0.25, 6);
    expect(tops).toHaveLength(16);
  });

  it('leaves the bars open that fall short of the demand', () => {
    const drawing = draw({ demand: value(4.8) });
    const [short, enough] = [extent(open(drawing)), extent(filled(drawing))];
    expect(short[1]).toBeCloseTo(enough[0], 6);
    expect((short[1] - short[0]) / (enough[1] - enough[0])).toBeCloseTo(0.2 / 0.6, 6);
  });

  it('leaves all of them open where none reaches it, and none where all do', () => {
    const failing = draw({ demand: value(5.6) });
    expect(filled(failing)).toBeUndefined();
    expect(open(failing)).toBeDefined();
    const holding = draw({ demand: value(4.5) });
    expect(open(holding)).toBeUndefined();
    expect(filled(holding)).toBeDefined();
  });

  it('draws the demand as bars, and leaves those open that the capability does not reach, where only it spreads', () => {
    const drawing = draw({ capability: value(5.2), demand: bell });
    expect(filled(drawing)?.stroke).toBe('demand');
    expect(extent(open(drawing))[0]).toBeCloseTo(extent(filled(drawing))[1], 6);
    expect(words(drawing)).toEqual(expect.arrayContaining(['can 5.2°', 'needs 5.00°']));
  });

  it('outlines a demand that spreads as well, in dashes', () => {
    const drawing = draw({ demand: { ...bell, from: 4.2 } });
    const outline = paths(drawing).find(({ dash }) => dash !== undefined);
    expect(outline?.stroke).toBe('demand');
    expect(extent(outline)[0]).toBeLessThan(extent(filled(drawing))[0]);
    expect(open(drawing)).toBeUndefined();
  });

  it('points the way to a demand that is far off, instead of pressing the bars into a line', () => {
    const drawing = draw({ demand: value(0.6) });
    const [from, to] = extent(filled(drawing));
    expect(to - from).toBeGreaterThan(300);
    expect(words(drawing)).toContain('needs 0.6°');
    const onRight = draw({ demand: value(60) });
    const x = (found: Drawing): number => texts(found).find(({ text }) => text.startsWith('needs'))?.x ?? 0;
    expect(x(drawing)).toBeLessThan(110);
    expect(x(onRight)).toBeGreaterThan(330);
  });

  it('marks the interval that covers 95 % of the draws over the bars', () => {
    const drawing = draw({ interval: [4.75, 5.25] });
    expect(words(drawing)).toContain('95\u202F% of the draws');
    const [from, to] = extent(filled(drawing));
    const bracket = paths(drawing).find((path) => {
      const [a, b] = extent(path);
      return path.stroke === 'ink' && Math.abs((b - a) / (to - from) - 0.5 / 0.8) < 1e-6;
    });
    expect(bracket).toBeDefined();
  });

  it('says in words what it shows', () => {
    expect(draw({ demand: value(5), interval: [4.75, 5.25] }).description).toBe(
      'What it can do lies between 4.60° and 5.40°. What is asked of it is 5° in every draw. 95 % of the draws are between 4.75° and 5.25°.',
    );
  });

  it('letters a power of ten beside the unit where the figures are very small', () => {
    const small = draw({
      title: 'own roll inertia',
      unit: 'kg·m²',
      capability: { ...bell, from: 9.2e-6, width: 2e-7 },
    });
    expect(words(small)).toContain('own roll inertia, 10⁻⁶ kg·m²');
    const ticks = words(small).filter((text) => /^[\d.]+$/.test(text));
    expect(ticks.length).toBeGreaterThan(2);
    expect(new Set(ticks).size).toBe(ticks.length);
  });

  it('stands on an axis alone where there are no draws', () => {
    const drawing = draw({ capability: { from: 0, width: 0, shares: [] }, demand: value(5) });
    expect(filled(drawing)).toBeUndefined();
    expect(drawing.description).toContain('has no draws');
  });

  it('keeps every line and letter inside the picture, whatever the figures', () => {
    const bars = fc.record({
      from: fc.double({ min: -1e5, max: 1e5, noNaN: true }),
      width: fc.oneof(fc.constant(0), fc.double({ min: 1e-6, max: 1e4, noNaN: true })),
      shares: fc.array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 1, maxLength: 40 }),
    });
    fc.assert(
      fc.property(
        bars,
        fc.option(bars, { nil: undefined }),
        fc.integer({ min: 240, max: 700 }),
        (can, needs, width) => {
          const drawing = draw({ capability: can, demand: needs }, width);
          for (const primitive of drawing.primitives) {
            if (primitive.type === 'text') {
              const size = textWidth(primitive.text, primitive.size, primitive.weight);
              const start =
                primitive.x -
                (primitive.anchor === 'middle' ? size / 2 : primitive.anchor === 'end' ? size : 0);
              expect(start).toBeGreaterThanOrEqual(-0.01);
              expect(start + size).toBeLessThanOrEqual(width + 0.01);
              expect(primitive.y).toBeLessThanOrEqual(drawing.height);
            } else {
              for (const [x, y] of points(primitive)) {
                expect(x).toBeGreaterThanOrEqual(-1);
                expect(x).toBeLessThanOrEqual(width + 1);
                expect(y).toBeGreaterThanOrEqual(-1);
                expect(y).toBeLessThanOrEqual(drawing.height + 1);
              }
            }
          }
        },
      ),
    );
  });
});
