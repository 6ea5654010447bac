/**
 * Typesets every equation and symbol of the registered calculations once, so that neither the window nor a report
 * carries a typesetting engine: glyph outlines, each stored once, and where they stand.
 */

import type { LiteElement } from 'mathjax-full/js/adaptors/lite/Element.js';
import { liteAdaptor } from 'mathjax-full/js/adaptors/liteAdaptor.js';
import { RegisterHTMLHandler } from 'mathjax-full/js/handlers/html.js';
import { TeX } from 'mathjax-full/js/input/tex.js';
import { mathjax } from 'mathjax-full/js/mathjax.js';
import { SVG } from 'mathjax-full/js/output/svg.js';
import 'mathjax-full/js/input/tex/base/BaseConfiguration.js';
import 'mathjax-full/js/input/tex/ams/AmsConfiguration.js';

export interface Typeset {
  /** Thousandths of the type size: width, height above and depth below the baseline. */
  readonly box: readonly [width: number, height: number, depth: number];
  /** Glyph, then place and size, y upwards from the baseline. */
  readonly glyphs: readonly (readonly [glyph: number, x: number, y: number, scale: number])[];
  /** Bars of fractions and roots: left, bottom, width, height. */
  readonly rules: readonly (readonly [number, number, number, number])[];
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

const adaptor = liteAdaptor();
RegisterHTMLHandler(adaptor);
const page = mathjax.document('', {
  InputJax: new TeX({ packages: ['base', 'ams'], formatError: refuse }),
  OutputJax: new SVG({ fontCache: 'none' }),
});

function refuse(_: unknown, error: { message: string }): never {
  throw new Error(error.message);
}

export interface EquationSource {
  readonly tex: string;
  readonly display: boolean;
}

/** The generated file: `{ outlines: path data by glyph, equations: TeX → Typeset }`. */
export function equationsFile(sources: readonly EquationSource[]): string {
  const outlines: string[] = [];
  const numbers = new Map<string, number>();
  const number = (outline: string): number => {
    const known = numbers.get(outline);
    if (known !== undefined) return known;
    numbers.set(outline, outlines.length);
    outlines.push(outline);
    return outlines.length - 1;
  };
  const equations: Record<string, Typeset> = {};
  for (const { tex, display } of sources) {
    try {
      equations[tex] ??= typeset(tex, display, number);
    } catch (error) {
      throw new Error(`cannot typeset ${tex}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  const lines = Object.entries(equations).map(
    ([tex, value]) => `  ${JSON.stringify(tex)}: ${JSON.stringify(value)}`,
  );
  return `{"outlines": ${JSON.stringify(outlines)},\n"equations": {\n${lines.join(',\n')}\n}}\n`;
}

function typeset(tex: string, display: boolean, number: (outline: string) => number): Typeset {
  const container = page.convert(tex, { display }) as LiteElement;
  const svg = container.children[0] as LiteElement;
  const [, top = 0, width = 0, height = 0] = String(svg.attributes.viewBox).split(' ').map(Number);
  const glyphs: (readonly [number, number, number, number])[] = [];
  const rules: (readonly [number, number, number, number])[] = [];
  const walk = (node: LiteElement, outer: Place): void => {
    const place = moved(outer, node.attributes.transform as string | undefined);
    switch (node.kind) {
      case 'g':
        for (const child of node.children) walk(child as LiteElement, place);
        return;
      case 'path': {
        const outline = String(node.attributes.d ?? '');
        if (outline !== '')
          glyphs.push([number(outline), round(place.x), round(place.y), round(place.scale, 4)]);
        return;
      }
      case 'rect': {
        const [x = 0, y = 0, w = 0, h = 0] = ['x', 'y', 'width', 'height'].map((name) =>
          Number(node.attributes[name] ?? 0),
        );
        rules.push([
          round(place.x + place.scale * x),
          round(place.y + place.scale * y),
          round(place.scale * w),
          round(place.scale * h),
        ]);
        return;
      }
      case 'svg':
        rules.push(extender(node, place));
        return;
      default:
        throw new Error(`<${node.kind}> has no counterpart among our primitives`);
    }
  };
  for (const child of svg.children) walk(child as LiteElement, { x: 0, y: 0, scale: 1 });
  return { box: [round(width), round(-top), round(height + top)], glyphs, rules };
}

/**
 * The straight middle of a tall bracket comes as a glyph stretched inside a window of its own. It is an upright bar:
 * as wide as the glyph, as high as the window.
 */
function extender(window: LiteElement, place: Place): readonly [number, number, number, number] {
  const attribute = (name: string): number => Number(window.attributes[name] ?? 0);
  const [viewLeft = 0] = String(window.attributes.viewBox).split(' ').map(Number);
  const glyph = find(window, 'path');
  const xs = horizontals(String(glyph?.attributes.d ?? ''));
  if (xs.length === 0) throw new Error('a stretched bracket without an outline');
  const left = Math.min(...xs) - viewLeft + attribute('x');
  return [
    round(place.x + place.scale * left),
    round(place.y + place.scale * attribute('y')),
    round(place.scale * (Math.max(...xs) - Math.min(...xs))),
    round(place.scale * attribute('height')),
  ];
}

function find(node: LiteElement, kind: string): LiteElement | undefined {
  if (node.kind === kind) return node;
  for (const child of node.children) {
    const found = find(child as LiteElement, kind);
    if (found) return found;
  }
  return undefined;
}

/** x of every point of an outline. */
function horizontals(data: string): number[] {
  const xs: number[] = [];
  for (const [, letter, list = ''] of data.matchAll(/([MLHVQTCZ])([^MLHVQTCZ]*)/g)) {
    const numbers = list.match(/-?\d*\.?\d+/g)?.map(Number) ?? [];
    if (letter === 'H') xs.push(...numbers);
    else if (letter !== 'V') xs.push(...numbers.filter((_, index) => index % 2 === 0));
  }
  return xs;
}

function moved(outer: Place, transform: string | undefined): Place {
  let { x, y, scale } = outer;
  for (const [, name, list = ''] of (transform ?? '').matchAll(/(\w+)\(([^)]*)\)/g)) {
    const [a = 0, b = 0] = list.split(/[ ,]+/).map(Number);
    if (name === 'translate') {
      x += scale * a;
      y += scale * b;
    } else if (name === 'scale') {
      if (list === '1,-1') continue; // the flip of the whole picture: y stays upwards here
      scale *= a;
    } else throw new Error(`transform ${name} is not expected`);
  }
  return { x, y, scale };
}

function round(value: number, digits = 1): number {
  return Number(value.toFixed(digits)) + 0;
}
