/**
 * Typeset equations and symbols of the page. The same symbol stands in it a hundred times: its outline is kept once,
 * at the end, and used wherever it belongs.
 */
import { drawingToSvg, type EquationDrawing, equationDrawing, svgText } from '../../report/index.ts';
import { escaped, type Markup } from './markup.ts';

/** Type size that the outlines are laid out at; the page scales them to its own text. */
const SIZE = 11;

export interface Outline {
  readonly picture: Markup;
  /** In multiples of the type size. */
  readonly width: number;
  /** How far its lower edge is below the baseline, negative as a style wants it. */
  readonly below: number;
}

export class Outlines {
  private readonly kept = new Map<string, { readonly id: string; readonly drawing: EquationDrawing }>();

  /** @returns undefined for an equation that has not been typeset */
  outline(tex: string, spoken: string): Outline | undefined {
    const drawing = equationDrawing(tex, SIZE);
    if (!drawing) return undefined;
    const { id } = this.kept.get(tex) ?? { id: `e${this.kept.size + 1}` };
    this.kept.set(tex, { id, drawing });
    const { width, height, baseline } = drawing;
    const box = `0 0 ${width.toFixed(2)} ${height.toFixed(2)}`;
    const label = escaped(spoken);
    return {
      picture: {
        markup: `<svg viewBox="${box}" role="img" aria-label="${label}"><use href="#${id}"/></svg>`,
      },
      width: width / SIZE,
      below: (baseline - height) / SIZE,
    };
  }

  /** The outlines themselves, shown nowhere; to stand once in the page. */
  definitions(): Markup {
    const symbols = [...this.kept.values()].map(({ id, drawing }) => {
      const paths = drawingToSvg(drawing).children.map((child) =>
        typeof child === 'string' ? '' : svgText(child),
      );
      return `<g id="${id}">${paths.join('')}</g>`;
    });
    return { markup: `<svg hidden><defs>${symbols.join('')}</defs></svg>` };
  }
}
