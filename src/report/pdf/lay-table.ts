/**
 * Tables as strips, one a row: caption above, head repeated where the table goes on, figures lined up on the decimal
 * point, few rules. A row is divided only when it is taller than a page.
 */
import type { Cell, Column, Inline, Table } from '../tree.ts';
import { type SplitFigure, splitFigure } from './decimal.ts';
import { baselineOf } from './lay-text.ts';
import { drawLine } from './line-marks.ts';
import type { Line } from './lines.ts';
import { INK_COLOURS } from './palette.ts';
import type { Draw, Setting } from './setting.ts';
import type { Strip } from './strip.ts';
import type { StructureElement } from './structure.ts';
import { BLOCK_SPACE, RULE, SMALL } from './style.ts';

const GAP = 11;
const PADDING = 3;

interface Lane {
  readonly column: Column;
  readonly left: number;
  readonly width: number;
  /** For a column of figures that fits: where the decimal points stand, and the edges of the block of figures. */
  readonly figures?: { readonly point: number; readonly begin: number; readonly end: number };
}

interface LaidCell {
  readonly lines: readonly Line[];
  readonly figure?: SplitFigure;
  readonly lane: Lane;
}

export function layTable(table: Table, setting: Setting): Strip[] {
  const lanes = lanesOf(table, setting);
  const element = setting.parent.add('Table');
  const caption = captionStrips(table, element, setting);
  const head = headStrip(table, lanes, element, setting);
  const body = element.add('TBody');
  const rows = table.rows.map((row) => lanes.map((lane, index) => layCell(row[index] ?? '', lane, setting)));
  const strips = rows.flatMap((cells, index) =>
    rowStrips(cells, body.add('TR'), setting, head, {
      first: index === 0,
      last: index === rows.length - 1,
      // two rows at least before and after a page break
      keep: rows.length > 1 && (index === 0 || index === rows.length - 2),
      leastHeight: table.leastRowHeight ?? 0,
    }),
  );
  return [...caption, { ...head.strip, keep: strips.length > 0 }, ...strips];
}

function lanesOf(table: Table, setting: Setting): Lane[] {
  const shares = table.columns.reduce((sum, { share }) => sum + share, 0) || 1;
  const room = setting.width - GAP * (table.columns.length - 1);
  let left = setting.left;
  return table.columns.map((column, index) => {
    const width = (room * column.share) / shares;
    const lane = { column, left, width };
    left += width + GAP;
    if (column.align !== 'decimal') return lane;
    const figures = figuresIn(table.rows, index, lane, setting);
    return figures ? { ...lane, figures } : lane;
  });
}

/** In a wide lane the block of figures comes this near to the column before it, rather than far to the right. */
const LARGEST_INDENT = 30;

function figuresIn(
  rows: readonly (readonly Cell[])[],
  index: number,
  lane: { readonly left: number; readonly width: number },
  setting: Setting,
): Lane['figures'] {
  let whole = 0;
  let rest = 0;
  for (const row of rows) {
    const cell = row[index];
    const figure = typeof cell === 'string' ? splitFigure(cell) : undefined;
    if (!figure) continue;
    whole = Math.max(whole, setting.faces.regular.width(figure.whole, SMALL.size));
    rest = Math.max(rest, setting.faces.regular.width(figure.rest, SMALL.size));
  }
  const total = whole + rest;
  if (total === 0 || total > lane.width) return undefined;
  const begin = lane.left + Math.min(lane.width - total, LARGEST_INDENT);
  return { point: begin + whole, begin, end: begin + total };
}

function layCell(cell: Cell, lane: Lane, setting: Setting): LaidCell {
  const content: readonly Inline[] = typeof cell === 'string' ? [cell] : cell;
  const figure = lane.figures && typeof cell === 'string' ? splitFigure(cell) : undefined;
  const lines = setting.breaker.lines(content, SMALL.size, lane.width);
  return figure ? { lines, figure, lane } : { lines, lane };
}

function captionStrips(table: Table, element: StructureElement, setting: Setting): Strip[] {
  if (table.caption === '') return [];
  const caption = element.add('Caption');
  const lines = setting.breaker.lines([table.caption], SMALL.size, setting.width, 'semibold');
  return lines.map((line, index) => ({
    height: SMALL.leading + (index === lines.length - 1 ? 3 : 0),
    before: index === 0 ? BLOCK_SPACE : 0,
    keep: true,
    draw: (canvas, top) => drawLine(canvas, caption, line, SMALL.size, setting.left, top + baselineOf(SMALL)),
  }));
}

interface Head {
  readonly strip: Strip;
  readonly continuation: NonNullable<Strip['continuation']>;
}

function headStrip(table: Table, lanes: readonly Lane[], element: StructureElement, setting: Setting): Head {
  const row = element.add('THead').add('TR');
  const cells = lanes.map((lane) => ({
    element: row.add('TH', { scope: 'Column' }),
    lane,
    lines: setting.breaker.lines([lane.column.title], SMALL.size, lane.width, 'semibold'),
  }));
  const most = Math.max(1, ...cells.map(({ lines }) => lines.length));
  const height = most * SMALL.leading + 2 * PADDING;
  const right = setting.left + setting.width;
  const rules: Draw = (canvas, top) => {
    canvas.rule(setting.left, right, top, RULE.broad, INK_COLOURS.ink);
    canvas.rule(setting.left, right, top + height, RULE.thin, INK_COLOURS.ink);
  };
  const place = (lane: Lane, line: Line): number => {
    if (lane.column.align === 'left') return lane.left;
    // above the figures: from where they begin, or as far to the right as the head itself needs
    return Math.min(lane.figures?.begin ?? Number.POSITIVE_INFINITY, lane.left + lane.width - line.width);
  };
  // heads stand on a common foot, next to the figures that they name
  const baseline = (top: number, lines: number, index: number): number =>
    top + PADDING + (most - lines + index) * SMALL.leading + baselineOf(SMALL);
  return {
    strip: {
      height,
      before: table.caption === '' ? BLOCK_SPACE : 0,
      keep: true,
      draw: (canvas, top) => {
        canvas.artifact(() => rules(canvas, top));
        for (const cell of cells) {
          cell.lines.forEach((line, index) => {
            drawLine(
              canvas,
              cell.element,
              line,
              SMALL.size,
              place(cell.lane, line),
              baseline(top, cell.lines.length, index),
            );
          });
        }
      },
    },
    continuation: {
      height,
      draw: (canvas, top) =>
        canvas.artifact(() => {
          rules(canvas, top);
          for (const cell of cells) {
            cell.lines.forEach((line, index) => {
              canvas.text(
                'semibold',
                SMALL.size,
                place(cell.lane, line),
                baseline(top, cell.lines.length, index),
                lineText(line),
                INK_COLOURS.ink,
              );
            });
          }
        }, true),
    },
  };
}

function lineText(line: Line): string {
  return line.words
    .map((word) => word.pieces.map((piece) => (piece.kind === 'text' ? piece.text : '')).join(''))
    .join(' ');
}

function rowStrips(
  cells: readonly LaidCell[],
  row: StructureElement,
  setting: Setting,
  head: Head,
  at: {
    readonly first: boolean;
    readonly last: boolean;
    readonly keep: boolean;
    readonly leastHeight: number;
  },
): Strip[] {
  const elements = cells.map((_, index) => (index === 0 ? row.add('TH', { scope: 'Row' }) : row.add('TD')));
  const most = Math.max(1, ...cells.map(({ lines }) => lines.length));
  const perStrip = Math.max(
    4,
    Math.floor((setting.pageHeight - head.continuation.height - 2 * PADDING) / SMALL.leading),
  );
  const strips: Strip[] = [];
  for (let from = 0; from < most; from += perStrip) {
    const to = Math.min(most, from + perStrip);
    const opens = from === 0;
    const closes = to === most;
    const height = Math.max(
      at.leastHeight,
      (to - from) * SMALL.leading + (opens ? PADDING : 0) + (closes ? PADDING : 0),
    );
    strips.push({
      height,
      before: 0,
      keep: closes && at.keep,
      continuation: head.continuation,
      draw: (canvas, top) => {
        if (closes) {
          canvas.artifact(() =>
            canvas.rule(
              setting.left,
              setting.left + setting.width,
              top + height,
              at.last ? RULE.broad : RULE.hair,
              at.last ? INK_COLOURS.ink : INK_COLOURS.faint,
            ),
          );
        }
        cells.forEach((cell, index) => {
          const element = elements[index];
          if (!element) return;
          cell.lines.slice(from, to).forEach((line, place) => {
            const baseline = top + (opens ? PADDING : 0) + place * SMALL.leading + baselineOf(SMALL);
            drawLine(canvas, element, line, SMALL.size, cellX(cell, line, setting), baseline);
          });
        });
      },
    });
  }
  return strips;
}

function cellX({ lane, figure }: LaidCell, line: Line, setting: Setting): number {
  const { figures, left, width, column } = lane;
  if (figure && figures) return figures.point - setting.faces.regular.width(figure.whole, SMALL.size);
  if (column.align === 'left') return left;
  // a dash or a word among figures ends where they end
  return Math.max(left, (figures?.end ?? left + width) - line.width);
}
