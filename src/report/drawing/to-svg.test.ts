import { describe, expect, it } from 'vitest';
import type { Drawing } from './primitive.ts';
import { drawingToSvg, pathData, svgText } from './to-svg.ts';

const drawing: Drawing = {
  width: 100,
  height: 50,
  title: 'A & B',
  description: 'Two things.',
  primitives: [
    { type: 'path', steps: [['M', 0, 0], ['L', 10.123, 20], ['Z']], stroke: 'ink', width: 0.5, dash: [3, 1] },
    { type: 'path', steps: [['M', 0, 0]], fill: 'band', tint: 0.4 },
    {
      type: 'text',
      x: 5,
      y: 9,
      text: '<5 mm',
      size: 8,
      anchor: 'end',
      weight: 'semibold',
      ink: 'quiet',
      rotate: 90,
    },
  ],
};

describe('a drawing as SVG', () => {
  const svg = drawingToSvg(drawing);

  it('scales with its container and has a name for those who cannot see it', () => {
    expect(svg.attributes).toMatchObject({
      viewBox: '0 0 100 50',
      role: 'img',
      'aria-label': 'A & B. Two things.',
    });
    expect(svg.attributes).not.toHaveProperty('width');
  });

  it('leaves colours to the theme, tints as solid mixes with the paper', () => {
    const [outline, band] = svg.children;
    expect(outline).toMatchObject({
      attributes: { stroke: 'var(--draw-ink)', fill: 'none', strokeDasharray: '3 1' },
    });
    expect(band).toMatchObject({
      attributes: { fill: 'color-mix(in srgb, var(--draw-band) 40%, var(--draw-paper))' },
    });
  });

  it('turns text anticlockwise about its anchor', () => {
    expect(svg.children[2]).toMatchObject({
      tag: 'text',
      attributes: { textAnchor: 'end', fontWeight: 600, transform: 'rotate(-90 5 9)' },
      children: ['<5 mm'],
    });
  });

  it('writes well-formed text with names as in the standard', () => {
    const text = svgText(svg);
    expect(text).toContain('viewBox="0 0 100 50"');
    expect(text).toContain('stroke-dasharray="3 1"');
    expect(text).toContain('&lt;5 mm');
    expect(text).toContain('aria-label="A &amp; B. Two things."');
  });

  it('rounds coordinates to hundredths', () => {
    expect(
      pathData([
        ['M', 1 / 3, -0.001],
        ['C', 1, 2, 3, 4, 5.005, 6],
      ]),
    ).toBe('M0.33 0C1 2 3 4 5.01 6');
  });
});
