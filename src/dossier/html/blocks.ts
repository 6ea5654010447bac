/** The blocks of a report as elements of the page: the same tree that is printed, in the same words. */
import {
  type Block,
  type Cell,
  type Column,
  drawingToSvg,
  type Inline,
  linearEquation,
  svgText,
} from '../../report/index.ts';
import { type Content, element, type Markup } from './markup.ts';
import type { Outline, Outlines } from './outlines.ts';

/** How a picture gets into the page: as an address in it, or in words where it is too large. */
export type PictureContent = (
  picture: Extract<Block, { type: 'picture' }>,
) => { readonly src: string } | { readonly words: string };

/** What the blocks of one page share. */
export interface BlockContext {
  readonly picture: PictureContent;
  readonly outlines: Outlines;
}

/** A report’s first level is the third of the page. */
const HEADINGS = { 1: 'h3', 2: 'h4', 3: 'h5' } as const;

/** Blocks that belong together: a heading and its text, a table with its caption. */
export function blockElements(blocks: readonly Block[], context: BlockContext): readonly Markup[] {
  return blocks.map((block) => blockElement(block, context));
}

function blockElement(block: Block, context: BlockContext): Markup {
  const { picture, outlines } = context;
  switch (block.type) {
    case 'heading':
      return element(HEADINGS[block.level], {}, block.text);
    case 'paragraph':
      return element('p', {}, inlines(block.content, outlines));
    case 'table':
      return tableElement(
        block.caption,
        block.columns.map(({ title }) => title),
        block.rows.map((row) => row.map((cell) => cellContent(cell, outlines))),
        block.columns.map(isNumber),
      );
    case 'equation':
      return equationElement(block.tex, outlines.outline(block.tex, block.spoken));
    case 'illustration':
      return figureElement(
        { markup: svgText(drawingToSvg(block.drawing)) },
        block.caption,
        block.drawing.width,
      );
    case 'picture': {
      const content = picture(block);
      if ('words' in content) return element('p', {}, `${block.caption}: ${content.words}`);
      return figureElement(element('img', { src: content.src, alt: block.caption }), block.caption);
    }
    case 'list':
      return element(
        block.ordered ? 'ol' : 'ul',
        {},
        block.items.map((item) => element('li', {}, inlines(item, outlines))),
      );
    case 'caution':
      return element(
        'div',
        { class: `signal ${block.signal}` },
        element('strong', {}, block.signal),
        block.texts.map((text) => element('p', {}, text)),
      );
    case 'rule':
      return element('hr', {});
  }
}

/** The first cell of a row names it. */
export function tableElement(
  caption: string,
  titles: readonly string[],
  rows: readonly (readonly Content[])[],
  numbers: readonly boolean[] = [],
): Markup {
  const look = (index: number) => (numbers[index] ? { class: 'number' } : {});
  const head = titles.map((title, index) => element('th', { scope: 'col', ...look(index) }, title));
  const body = rows.map((row) =>
    element(
      'tr',
      {},
      row.map((cell, index) =>
        index === 0
          ? element('th', { scope: 'row', ...look(index) }, cell)
          : element('td', look(index), cell),
      ),
    ),
  );
  return element(
    'div',
    { class: 'wide' },
    element(
      'table',
      {},
      caption === '' ? '' : element('caption', {}, caption),
      element('thead', {}, element('tr', {}, head)),
      element('tbody', {}, body),
    ),
  );
}

function isNumber({ align }: Column): boolean {
  return align !== 'left';
}

function cellContent(cell: Cell, outlines: Outlines): Content {
  return typeof cell === 'string' ? cell : inlines(cell, outlines);
}

function inlines(runs: readonly Inline[], outlines: Outlines): Content {
  return runs.map((run): Content => {
    if (typeof run === 'string') return run;
    if ('strong' in run) return element('strong', {}, run.strong);
    if ('emphasis' in run) return element('em', {}, run.emphasis);
    if ('code' in run) return element('code', {}, run.code);
    return symbolElement(run.math, outlines.outline(run.math, run.spoken));
  });
}

function equationElement(tex: string, outline: Outline | undefined): Markup {
  if (!outline) return element('p', { class: 'equation' }, linearEquation(tex));
  return element('span', { class: 'equation', style: `width:${ems(1.15 * outline.width)}` }, outline.picture);
}

function symbolElement(tex: string, outline: Outline | undefined): Content {
  if (!outline) return element('em', {}, linearEquation(tex));
  const style = `width:${ems(outline.width)};vertical-align:${ems(outline.below)}`;
  return element('span', { class: 'symbol', style }, outline.picture);
}

function ems(width: number): string {
  return `${width.toFixed(3)}em`;
}

/** @param width  natural width in points; a drawing is not made larger than reads well */
function figureElement(content: Markup, caption: string, width?: number): Markup {
  const sized =
    width === undefined
      ? content
      : element('div', { style: `max-width:${(1.6 * width).toFixed(0)}px` }, content);
  return element('figure', {}, sized, caption === '' ? '' : element('figcaption', {}, caption));
}
