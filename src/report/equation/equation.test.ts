import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { readFonts } from '../../../tests/fonts.ts';
import { registry } from '../../margins/index.ts';
import { equationDrawing } from './equation-drawing.ts';
import { linearEquation } from './linear.ts';
import { outlineSteps } from './outline.ts';

const calculations = [...registry.values()];

describe('a glyph outline', () => {
  it('is placed, scaled and turned y down', () => {
    const steps = outlineSteps('M10 20H30V0L10 0Z', { x: 100, y: 50, scale: 0.5 });
    expect(steps).toEqual([['M', 105, 40], ['L', 115, 40], ['L', 115, 50], ['L', 105, 50], ['Z']]);
  });

  it('continues a curve smoothly by the mirrored control point', () => {
    const steps = outlineSteps('M0 0Q10 20 20 0T40 0', { x: 0, y: 0, scale: 1 });
    expect(steps[2]).toEqual(['Q', 30, 20, 40, 0]);
  });
});

describe('a typeset equation', () => {
  it.each(calculations.map(({ id, equation }) => [id, equation]))('%s is in the table', (_, equation) => {
    const drawing = equationDrawing(equation, 11);
    expect(drawing?.primitives).toHaveLength(1);
    expect(drawing?.width).toBeGreaterThan(5);
    expect(drawing?.baseline).toBeLessThan(drawing?.height ?? 0);
  });

  it('grows with the type size, and its outlines stay in their box', () => {
    const [first] = calculations;
    const small = equationDrawing(first?.equation ?? '', 10);
    const large = equationDrawing(first?.equation ?? '', 20);
    expect(large?.width).toBeCloseTo(2 * (small?.width ?? 0), 9);
    for (const primitive of large?.primitives ?? []) {
      if (primitive.type !== 'path') continue;
      for (const step of primitive.steps) {
        const [x, y] = step.slice(-2) as [number, number];
        if (step[0] === 'Z') continue;
        expect(x).toBeGreaterThan(-1);
        expect(x).toBeLessThan((large?.width ?? 0) + 1);
        expect(y).toBeGreaterThan(-0.01);
        expect(y).toBeLessThan((large?.height ?? 0) + 0.01);
      }
    }
  });

  it('is not made up where the table does not know it', () => {
    expect(equationDrawing('E = m c^2')).toBeUndefined();
    expect(equationDrawing('toString')).toBeUndefined();
  });
});

describe('an equation on one line', () => {
  it('needs no letter that the typeface lacks', () => {
    const font = create(readFonts().regular);
    const texts = calculations.flatMap(({ equation, inputs, outputs }) => [
      equation,
      ...[...Object.values(inputs), ...Object.values(outputs)].map(({ symbol }) => symbol),
    ]);
    for (const tex of texts) {
      const lacking = [...linearEquation(tex)].filter(
        (letter) => !font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0),
      );
      expect(lacking, linearEquation(tex)).toEqual([]);
      expect(linearEquation(tex), tex).not.toMatch(/[\\\\{}]|[a-z]{9,}/);
    }
  });

  it.each([
    [String.raw`\tan\varphi_{\max} = \frac{m_b\, e}{M_0 + m_b z_b}`, 'tan φ_max = (m_b e)/(M_0 + m_b z_b)'],
    [String.raw`\tau_0 = \sqrt{\frac{I}{gM}}`, 'τ_0 = √(I/(g M))'],
    [String.raw`E = \tfrac{1}{2} I_s \Omega^2`, 'E = 1/2 I_s Ω²'],
    [String.raw`I = \sum_i \left[ I_i + m_i y_i^2 \right]`, 'I = ∑_i[I_i + m_i y_i²]'],
    [String.raw`\dot\theta_0`, 'd/dt θ_0'],
    [String.raw`90^\circ`, '90°'],
    [String.raw`x^{n-1} \quad \text{in volts}`, 'x^(n − 1) in volts'],
  ])('%s reads %s', (tex, expected) => {
    expect(linearEquation(tex)).toBe(expected);
  });
});
