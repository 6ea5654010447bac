import { describe, expect, it } from 'vitest';
import { readFonts } from '../../../tests/fonts.ts';
import type { Typefaces } from './canvas.ts';
import { splitFigure } from './decimal.ts';
import { staysTogether } from './glue.ts';
import { instant } from './instant.ts';
import { type Line, LineBreaker } from './lines.ts';
import { outlineTree } from './outline.ts';
import { paginate, type Strip } from './strip.ts';
import { Typeface } from './typeface.ts';

const fonts = readFonts();
const faces: Typefaces = {
  regular: new Typeface(fonts.regular),
  semibold: new Typeface(fonts.semibold),
  italic: new Typeface(fonts.italic),
};
const textOf = (line: Line): string =>
  line.words
    .map(({ pieces, space }, index) => {
      const text = pieces.map((piece) => (piece.kind === 'text' ? piece.text : '□')).join('');
      return index > 0 && space > 0 ? ` ${text}` : text;
    })
    .join('');

describe('filling pages', () => {
  const strip = (height: number, change: Partial<Strip> = {}): Strip => ({
    height,
    before: 0,
    keep: false,
    draw: () => undefined,
    ...change,
  });
  const pages = (strips: Strip[]): number[] => paginate(strips, 0, 100).map(({ page }) => page);

  it('goes on to the next page when a strip does not fit', () => {
    expect(pages([strip(60), strip(40), strip(1)])).toEqual([0, 0, 1]);
  });

  it('takes a heading along with what follows it', () => {
    expect(pages([strip(70), strip(20, { keep: true }), strip(20)])).toEqual([0, 1, 1]);
  });

  it('drops the space above at the head of a page', () => {
    const [, second] = paginate([strip(95), strip(20, { before: 12 })], 0, 100);
    expect(second).toMatchObject({ page: 1, top: 0 });
  });

  it('keeps the space above everywhere else', () => {
    expect(paginate([strip(30), strip(20, { before: 12 })], 0, 100)[1]).toMatchObject({ page: 0, top: 42 });
  });

  it('repeats the head of a table that goes on, and makes room for it', () => {
    const continuation = { height: 15, draw: () => undefined };
    const rows = [strip(15, { keep: true }), ...Array.from({ length: 5 }, () => strip(30, { continuation }))];
    const placed = paginate(rows, 0, 100);
    expect(placed.map(({ page }) => page)).toEqual([0, 0, 0, 1, 1, 2]);
    expect(placed[3]).toMatchObject({ continuationTop: 0, top: 15 });
    expect(placed[1]?.continuationTop).toBeUndefined();
  });

  it('divides what keeps together only when it is taller than a page', () => {
    const tall = Array.from({ length: 8 }, (_, index) => strip(20, { keep: index < 7 }));
    expect(pages(tall)).toEqual([0, 0, 0, 0, 0, 1, 1, 1]);
  });

  it('never lets a strip run off the page unless it is taller than one itself', () => {
    const strips = Array.from({ length: 40 }, (_, index) =>
      strip(7 + ((index * 13) % 29), { keep: index % 3 === 0, before: index % 5 }),
    );
    for (const { strip: placed, top } of paginate(strips, 0, 100))
      expect(top + placed.height).toBeLessThanOrEqual(100.01);
  });
});

describe('breaking lines', () => {
  const breaker = new LineBreaker(faces);
  const text = 'The rotor was spun up to 8500 rpm with the guard closed and the wheels locked on the cradle.';

  it('fits every line into the measure and loses no word', () => {
    for (const width of [60, 97, 130, 222]) {
      const lines = breaker.lines([text], 10, width);
      for (const line of lines) expect(line.width).toBeLessThanOrEqual(width + 1e-6);
      expect(lines.map(textOf).join(' ')).toBe(text);
    }
  });

  it('keeps a figure and its unit on one line', () => {
    for (let width = 80; width < 300; width += 1) {
      expect(
        breaker
          .lines([text], 10, width)
          .map(textOf)
          .some((line) => line.endsWith('8500')),
      ).toBe(false);
    }
  });

  it('cuts a word that is longer than a line, without losing a letter', () => {
    const hash = '4f1c09ab77de21034f1c09ab77de21034f1c09ab77de2103';
    const lines = breaker.lines([`fingerprint ${hash}`], 10, 90);
    expect(lines.length).toBeGreaterThan(2);
    for (const line of lines) expect(line.width).toBeLessThanOrEqual(90 + 1e-6);
    expect(lines.map(textOf).join('')).toBe(`fingerprint${hash}`);
  });

  it('sets words of several faces without a gap where there was none', () => {
    const [line] = breaker.lines(
      ['a ', { strong: 'bold' }, ', ', { emphasis: 'slanted' }, ' ', { code: 'x = 1' }, '.'],
      10,
      400,
    );
    expect(line && textOf(line)).toBe('a bold, slanted x = 1.');
    expect(line?.words[1]?.pieces.map((piece) => piece.kind === 'text' && piece.face)).toEqual([
      'semibold',
      'regular',
    ]);
  });

  it('sets a registered symbol as a drawing and another one as text', () => {
    const [line] = breaker.lines(
      [{ math: 'm_b', spoken: 'm b' }, ' and ', { math: 'q_{17}', spoken: 'q' }],
      10,
      400,
    );
    expect(line?.words[0]?.pieces[0]?.kind).toBe('math');
    expect(line && textOf(line)).toBe('□ and q_17');
  });

  it('kerns: a pair is narrower than its letters', () => {
    expect(faces.regular.width('AV', 10)).toBeLessThan(
      faces.regular.width('A', 10) + faces.regular.width('V', 10),
    );
  });
});

describe('what stays together', () => {
  it.each([
    ['8500', 'rpm', true],
    ['9.43(31)', 'kg·m²,', true],
    ['73', '±', true],
    ['±', '0.5', true],
    ['Figure', '3.', true],
    ['revision', 'C', true],
    ['8500', 'times', false],
    ['the', 'rpm', false],
  ])('%s %s: %s', (before, after, expected) => {
    expect(staysTogether(before, after)).toBe(expected);
  });
});

describe('the decimal point of a column', () => {
  it.each([
    ['0.0742(12)', '0', '.0742(12)'],
    ['−12.5', '−12', '.5'],
    ['890', '890', ''],
    ['9.4°', '9', '.4°'],
    ['1 250.0', '1 250', '.0'],
    ['1.2 × 10³', '1', '.2 × 10³'],
  ])('%s', (text, whole, rest) => {
    expect(splitFigure(text)).toEqual({ whole, rest });
  });

  it('is not looked for in words', () => {
    expect(splitFigure('not measured')).toBeUndefined();
    expect(splitFigure('–')).toBeUndefined();
  });
});

describe('a moment in time', () => {
  it('is written as PDF and as XMP, with its offset', () => {
    expect(instant('2026-11-25T10:30:00+01:00')).toEqual({
      pdf: "D:20261125103000+01'00'",
      xmp: '2026-11-25T10:30:00+01:00',
      day: '2026-11-25',
    });
    expect(instant('2026-11-25T10:30:00.123Z')?.pdf).toBe('D:20261125103000Z');
    expect(instant('2026-11-25')?.xmp).toBe('2026-11-25T00:00:00Z');
  });

  it('is nothing when it cannot be read', () => {
    expect(instant('yesterday')).toBeUndefined();
    expect(instant('25.11.2026')).toBeUndefined();
  });
});

describe('the outline', () => {
  it('hangs each heading below the last one of a higher level', () => {
    const entry = (level: number, text: string) => ({ level, text, page: 0, top: 0 });
    const tree = outlineTree([entry(1, 'A'), entry(2, 'A1'), entry(3, 'A1a'), entry(2, 'A2'), entry(1, 'B')]);
    const shape = (nodes: typeof tree): unknown[] =>
      nodes.map(({ entry: { text }, children }) => [text, shape(children)]);
    expect(shape(tree)).toEqual([
      [
        'A',
        [
          ['A1', [['A1a', []]]],
          ['A2', []],
        ],
      ],
      ['B', []],
    ]);
  });
});
