/** The head of the first page: title, subject and the title block, a ruled grid of labels and values as on a drawing. */
import type { ReportDocument } from '../tree.ts';
import { drawLines, lineStrips } from './lay-text.ts';
import type { Line } from './lines.ts';
import { INK_COLOURS } from './palette.ts';
import type { Setting } from './setting.ts';
import type { Strip } from './strip.ts';
import type { StructureElement } from './structure.ts';
import { BODY, LABEL, RULE, SUBJECT, TITLE } from './style.ts';

const COLUMNS = 3;
const PAD = { x: 7, top: 4, bottom: 5 } as const;

interface GridCell {
  readonly label: string;
  readonly lines: readonly Line[];
  readonly left: number;
  readonly width: number;
  readonly labelElement: StructureElement;
  readonly valueElement: StructureElement;
}

export function layTitle(document: ReportDocument, setting: Setting): Strip[] {
  const title = setting.breaker.lines([document.title], TITLE.size, setting.width, 'semibold');
  const subject =
    document.subject === '' ? [] : setting.breaker.lines([document.subject], SUBJECT.size, setting.width);
  return [
    ...lineStrips(title, setting.parent.add('P'), TITLE, { x: setting.left, before: 0, keepLast: true }),
    ...lineStrips(subject, setting.parent.add('P'), SUBJECT, {
      x: setting.left,
      before: 3,
      colour: INK_COLOURS.quiet,
      keepLast: true,
    }),
    ...gridStrips(document.titleBlock, setting),
  ];
}

function gridStrips(pairs: ReportDocument['titleBlock'], setting: Setting): Strip[] {
  if (pairs.length === 0) return [];
  const list = setting.parent.add('L');
  const rows = gridRows(pairs, list, setting);
  return rows.map((cells, index): Strip => {
    const most = Math.max(1, ...cells.map(({ lines }) => lines.length));
    const height = PAD.top + LABEL.leading + most * BODY.leading + PAD.bottom;
    const first = index === 0;
    const last = index === rows.length - 1;
    return {
      height,
      before: first ? 16 : 0,
      keep: !last,
      draw: (canvas, top) => {
        const right = setting.left + setting.width;
        canvas.artifact(() => {
          if (first) canvas.rule(setting.left, right, top, RULE.broad, INK_COLOURS.ink);
          canvas.rule(
            setting.left,
            right,
            top + height,
            last ? RULE.broad : RULE.thin,
            last ? INK_COLOURS.ink : INK_COLOURS.quiet,
          );
          for (const x of [setting.left, ...cells.slice(1).map(({ left }) => left), right]) {
            const outer = x === setting.left || x === right;
            canvas.path(
              [
                ['M', x, top],
                ['L', x, top + height],
              ],
              { stroke: outer ? INK_COLOURS.ink : INK_COLOURS.quiet, width: outer ? RULE.broad : RULE.thin },
            );
          }
        });
        for (const cell of cells) {
          const x = cell.left + PAD.x;
          canvas.tagged(cell.labelElement, () =>
            canvas.text(
              'regular',
              LABEL.size,
              x,
              top + PAD.top + LABEL.size * 0.95,
              cell.label,
              INK_COLOURS.quiet,
            ),
          );
          drawLines(canvas, cell.valueElement, cell.lines, BODY, x, top + PAD.top + LABEL.leading);
        }
      },
    };
  });
}

/** Cells side by side; a value too long for one takes two or the whole width rather than many lines. */
function gridRows(
  pairs: ReportDocument['titleBlock'],
  list: StructureElement,
  setting: Setting,
): GridCell[][] {
  const unit = setting.width / COLUMNS;
  const spanOf = (value: string): number => {
    const width = setting.faces.regular.width(value, BODY.size) + 2 * PAD.x;
    return Math.max(1, Math.min(COLUMNS, Math.ceil(width / unit)));
  };
  const rows: { span: number; label: string; value: string }[][] = [];
  let used = COLUMNS;
  for (const [label, value] of pairs) {
    const span = spanOf(value);
    if (used + span > COLUMNS) {
      rows.push([]);
      used = 0;
    }
    rows.at(-1)?.push({ span, label, value });
    used += span;
  }
  return rows.map((row) => {
    const total = row.reduce((sum, { span }) => sum + span, 0);
    let left = setting.left;
    return row.map(({ span, label, value }, index): GridCell => {
      // the last cell of a row takes up what is left of it
      const width = (span + (index === row.length - 1 ? COLUMNS - total : 0)) * unit;
      const item = list.add('LI');
      const cell: GridCell = {
        label,
        lines: setting.breaker.lines([value], BODY.size, width - 2 * PAD.x),
        left,
        width,
        labelElement: item.add('Lbl'),
        valueElement: item.add('LBody'),
      };
      left += width;
      return cell;
    });
  });
}
