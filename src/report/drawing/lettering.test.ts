import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { readFonts } from '../../../tests/fonts.ts';
import { fixedText, niceStep, roundedText } from './number-text.ts';
import { fittedText, textWidth } from './text-width.ts';

describe('the width of lettering', () => {
  it.each(['Lean to recover from', '9.43° ≥ 6.0°', 'Ω τ₀ ± 12 m/s²'])(
    'is that of the typeface: %s',
    (text) => {
      const font = create(readFonts().semibold);
      const advances = [...text].map(
        (letter) => font.glyphForCodePoint(letter.codePointAt(0) ?? 0).advanceWidth,
      );
      const expected = (advances.reduce((sum, width) => sum + width, 0) * 10) / font.unitsPerEm;
      expect(textWidth(text, 10, 'semibold')).toBeCloseTo(expected, 6);
    },
  );

  it('decides where a text is cut', () => {
    expect(fittedText('short', 100, 10)).toBe('short');
    const cut = fittedText('a rather long name for a part', 60, 10);
    expect(cut).toMatch(/…$/);
    expect(textWidth(cut, 10)).toBeLessThanOrEqual(60);
  });
});

describe('a figure on a drawing', () => {
  it.each([
    [9.43, 0.31, '9.4'],
    [1.62, 0.09, '1.62'],
    [12.347, 0.012, '12.35'],
    [276, 5, '276'],
    [6, 0, '6'],
    [0.1 + 0.2, 0, '0.3'],
    [-1.3, 0.4, '−1.3'],
    [2.5e7, 0, '2.50 × 10⁷'],
    [0, 0, '0'],
    [-0.0001, 0.2, '0.0'],
  ])('%f with u = %f reads %s', (value, u, expected) => {
    expect(roundedText(value, u)).toBe(expected);
  });

  it('has no minus nought', () => {
    expect(fixedText(-0.004, 2)).toBe('0.00');
  });

  it.each([
    [10, 5, 2],
    [7, 4, 2],
    [0.9, 3, 0.5],
    [1200, 10, 200],
  ])('a span of %f in at most %i steps goes by %f', (span, count, expected) => {
    expect(niceStep(span, count)).toBeCloseTo(expected, 9);
  });
});
