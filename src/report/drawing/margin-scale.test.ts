import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BAND_FACTOR, type MarginScaleInput, marginScale } from './margin-scale.ts';
import type { Drawing, PathPrimitive, TextPrimitive } from './primitive.ts';
import { textWidth } from './text-width.ts';
import { type VerdictWord, verdictMark } from './verdict-mark.ts';

const lean: MarginScaleInput = {
  title: 'Lean to recover from',
  unit: '°',
  capability: 9,
  capabilityU: 0.3,
  demand: 6,
  demandU: 0,
  verdict: 'holds',
  marginOfSafety: 0.5,
  lowerBound: 0.42,
};
const draw = (change: Partial<MarginScaleInput> = {}, width = 320): Drawing =>
  marginScale({ ...lean, ...change }, { width });

function points({ steps }: PathPrimitive): [number, number][] {
  return steps.flatMap((step): [number, number][] => {
    const numbers = step.slice(1) as number[];
    return Array.from({ length: numbers.length / 2 }, (_, i) => [
      numbers[2 * i] ?? Number.NaN,
      numbers[2 * i + 1] ?? Number.NaN,
    ]);
  });
}
const paths = (drawing: Drawing): PathPrimitive[] =>
  drawing.primitives.filter((primitive) => primitive.type === 'path');
const texts = (drawing: Drawing): TextPrimitive[] =>
  drawing.primitives.filter((primitive) => primitive.type === 'text');
const tipOf = (path: PathPrimitive | undefined): number =>
  path ? (points(path)[0]?.[0] ?? Number.NaN) : Number.NaN;
const pointer = (drawing: Drawing): number => tipOf(paths(drawing).find(({ fill }) => fill === 'capability'));
const notch = (drawing: Drawing): number =>
  tipOf(paths(drawing).find(({ stroke, fill }) => stroke === 'demand' && fill === 'paper'));

describe('a margin scale', () => {
  it('sets capability and demand on one axis, in proportion from nought', () => {
    const drawing = draw();
    const left = 6; // half a text size
    expect((pointer(drawing) - left) / (notch(drawing) - left)).toBeCloseTo(9 / 6, 6);
  });

  it('shows how far the capability may be off: 1.645 u to either side', () => {
    const drawing = draw();
    const band = paths(drawing).find(({ fill }) => fill === 'band');
    const xs = points(band as PathPrimitive).map(([x]) => x);
    const perDegree = (pointer(drawing) - notch(drawing)) / 3;
    expect((Math.max(...xs) - Math.min(...xs)) / 2 / perDegree).toBeCloseTo(BAND_FACTOR * 0.3, 6);
  });

  it('fills the span when there is something to spare and leaves it open when something is lacking', () => {
    const spans = (drawing: Drawing): PathPrimitive[] =>
      paths(drawing).filter((path) => {
        const xs = points(path).map(([x]) => x);
        return (
          path.steps.length === 5 &&
          Math.abs(Math.max(...xs) - Math.max(pointer(drawing), notch(drawing))) < 0.01
        );
      });
    expect(spans(draw()).map(({ fill }) => fill)).toContain('ink');
    const short = spans(draw({ capability: 4, verdict: 'fails', marginOfSafety: -0.33 }));
    expect(short.map(({ fill }) => fill)).toContain('paper');
    expect(short.map(({ fill }) => fill)).not.toContain('ink');
  });

  it('breaks the axis where one figure dwarfs the other, and keeps both apart', () => {
    const drawing = draw({ capability: 300, demand: 6 });
    expect(pointer(drawing) - notch(drawing)).toBeGreaterThan(60);
    expect(notch(drawing)).toBeGreaterThan(60);
    expect(pointer(drawing)).toBeLessThan(320);
  });

  it('puts a negative capability left of nought', () => {
    const drawing = draw({ capability: -2, verdict: 'fails', marginOfSafety: -1.3 });
    const nought = texts(drawing).find(({ text }) => text === '0');
    expect(pointer(drawing)).toBeLessThan(nought?.x ?? Number.NaN);
    expect(notch(drawing)).toBeGreaterThan(nought?.x ?? Number.NaN);
  });

  it('says what is missing where the verdict is unknown', () => {
    const drawing = marginScale(
      { title: 'Run time', unit: 'min', demand: 20, verdict: 'unknown', reason: 'pack capacity is missing' },
      { width: 320 },
    );
    expect(texts(drawing).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['Run time', 'unknown', 'needs 20 min', 'pack capacity is missing']),
    );
    expect(drawing.description).toContain('Verdict: unknown');
  });

  it('tells the verdicts apart by shape, without colour', () => {
    const words: VerdictWord[] = ['holds', 'in doubt', 'fails', 'unknown'];
    const shapes = words.map((word) =>
      JSON.stringify(
        verdictMark(word, 0, 10, 12).map((mark) =>
          mark.type === 'path' ? [mark.steps, mark.dash, !mark.fill] : 0,
        ),
      ),
    );
    expect(new Set(shapes).size).toBe(4);
    for (const word of words) {
      for (const mark of verdictMark(word, 0, 10, 12)) {
        expect(mark.type === 'path' && [undefined, 'ink', 'paper'].includes(mark.fill)).toBe(true);
      }
    }
  });

  it('keeps every line and letter inside the picture, whatever the figures', () => {
    const figure = fc.double({ min: -1e5, max: 1e5, noNaN: true });
    const u = fc.double({ min: 0, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(
        figure,
        u,
        figure,
        u,
        fc.integer({ min: 240, max: 700 }),
        (capability, cu, demand, du, width) => {
          const drawing = marginScale(
            { ...lean, capability, capabilityU: cu, demand, demandU: du },
            { width },
          );
          for (const primitive of drawing.primitives) {
            if (primitive.type === 'text') {
              const extent = textWidth(primitive.text, primitive.size, primitive.weight);
              const start =
                primitive.x -
                (primitive.anchor === 'middle' ? extent / 2 : primitive.anchor === 'end' ? extent : 0);
              expect(start).toBeGreaterThanOrEqual(-0.01);
              expect(start + extent).toBeLessThanOrEqual(width + 0.01);
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
