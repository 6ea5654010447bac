/** Headings, paragraphs, lists, cautions, rules and the end mark as strips. */
import type { Caution, Heading, List, Paragraph } from '../tree.ts';
import type { Canvas } from './canvas.ts';
import { drawLine } from './line-marks.ts';
import type { Line } from './lines.ts';
import { type Colour, INK_COLOURS, SIGNAL_COLOURS, type SignalColours } from './palette.ts';
import type { Setting } from './setting.ts';
import type { Strip } from './strip.ts';
import type { StructureElement } from './structure.ts';
import { BLOCK_SPACE, BODY, HEADINGS, PARAGRAPH_SPACE, RULE, type TextStyle } from './style.ts';

/** Position of the baseline in a line of text, from its top: the rest of the leading is shared out around the letters. */
export function baselineOf({ size, leading }: TextStyle): number {
  return (leading - size) / 2 + size * 0.8;
}

/** Lines as strips, at least two together at either end. */
export function lineStrips(
  lines: readonly Line[],
  element: StructureElement,
  style: TextStyle,
  options: {
    readonly x: number;
    readonly before: number;
    readonly colour?: Colour;
    readonly keepLast?: boolean;
  },
): Strip[] {
  const { x, before, colour = INK_COLOURS.ink, keepLast = false } = options;
  const last = lines.length - 1;
  return lines.map((line, index) => ({
    height: style.leading,
    before: index === 0 ? before : 0,
    keep: index === last ? keepLast : index === 0 || index === last - 1,
    draw: (canvas, top) => drawLine(canvas, element, line, style.size, x, top + baselineOf(style), colour),
  }));
}

export function layHeading({ level, text }: Heading, setting: Setting): Strip[] {
  const style = HEADINGS[level];
  const element = setting.parent.add(level === 1 ? 'H1' : level === 2 ? 'H2' : 'H3');
  const lines = setting.breaker.lines([text], style.size, setting.width, 'semibold');
  return lines.map((line, index) => ({
    height: style.leading + (index === lines.length - 1 ? style.after : 0),
    before: index === 0 ? style.before : 0,
    keep: true,
    draw: (canvas, top) => {
      if (index === 0) setting.outline(level, text, canvas.page, top);
      drawLine(canvas, element, line, style.size, setting.left, top + baselineOf(style));
    },
  }));
}

export function layParagraph({ content }: Paragraph, setting: Setting): Strip[] {
  const lines = setting.breaker.lines(content, BODY.size, setting.width);
  return lineStrips(lines, setting.parent.add('P'), BODY, { x: setting.left, before: PARAGRAPH_SPACE });
}

const LIST_INDENT = 17;

export function layList({ ordered, items }: List, setting: Setting): Strip[] {
  const list = setting.parent.add('L', { numbering: ordered ? 'Decimal' : 'Disc' });
  const widest = ordered ? setting.faces.regular.width(`${items.length}.`, BODY.size) + 6 : 0;
  const indent = Math.max(LIST_INDENT, widest);
  return items.flatMap((item, number) => {
    const element = list.add('LI');
    const label = element.add('Lbl');
    const body = element.add('LBody');
    const lines = setting.breaker.lines(item, BODY.size, setting.width - indent);
    const strips = lineStrips(lines, body, BODY, {
      x: setting.left + indent,
      before: number === 0 ? PARAGRAPH_SPACE : 2.5,
      // two items at least before and after a page break
      keepLast: items.length > 1 && (number === 0 || number === items.length - 2),
    });
    const text = ordered ? `${number + 1}.` : '•';
    const back = ordered ? indent - setting.faces.regular.width(text, BODY.size) - 5 : indent - 11;
    return strips.map(
      (strip, index): Strip =>
        index > 0
          ? strip
          : {
              ...strip,
              draw: (canvas, top) => {
                canvas.tagged(label, () =>
                  canvas.text(
                    'regular',
                    BODY.size,
                    setting.left + back,
                    top + baselineOf(BODY),
                    text,
                    ordered ? INK_COLOURS.ink : INK_COLOURS.quiet,
                  ),
                );
                strip.draw(canvas, top);
              },
            },
    );
  });
}

const PANEL = { height: 20, padding: 8, wordSize: 11.5, gap: 4 } as const;

/** Safety messages: panel with alert symbol and signal word over the framed text, in one piece. */
export function layCaution({ signal, texts }: Caution, setting: Setting): Strip[] {
  const colours = SIGNAL_COLOURS[signal];
  const group = setting.parent.add('Div');
  const word = group.add('P');
  const { left, width } = setting;
  const lines = texts.flatMap((text, index) => {
    const element = group.add('P');
    return setting.breaker
      .lines([text], BODY.size, width - 2 * PANEL.padding)
      .map((line, place) => ({ line, element, gap: index > 0 && place === 0 ? PANEL.gap : 0 }));
  });
  const gaps = lines.reduce((sum, { gap }) => sum + gap, 0);
  const textHeight = lines.length * BODY.leading + gaps + 2 * PANEL.padding - 3;
  return [
    {
      height: PANEL.height + textHeight + 3,
      before: BLOCK_SPACE,
      keep: false,
      draw: (canvas, top) => {
        canvas.artifact(() => drawPanel(canvas, colours, left, top, width, textHeight));
        const wordX = left + PANEL.padding + (colours.alert ? 20 : 0);
        canvas.tagged(word, () =>
          canvas.text('semibold', PANEL.wordSize, wordX, top + PANEL.height / 2 + 4, signal, colours.word),
        );
        let y = top + PANEL.height + PANEL.padding - 2;
        for (const { line, element, gap } of lines) {
          y += gap;
          drawLine(canvas, element, line, BODY.size, left + PANEL.padding, y + baselineOf(BODY));
          y += BODY.leading;
        }
      },
    },
  ];
}

function drawPanel(
  canvas: Canvas,
  colours: SignalColours,
  left: number,
  top: number,
  width: number,
  textHeight: number,
): void {
  canvas.box(left, top, width, PANEL.height, { fill: colours.panel });
  canvas.box(left, top, width, PANEL.height + textHeight, { stroke: colours.panel, width: RULE.broad * 1.3 });
  if (!colours.alert) return;
  const base = top + PANEL.height - 4;
  const x = left + PANEL.padding;
  canvas.path(alertTriangle(x, base, 14), { fill: colours.word });
  canvas.path(exclamation(x + 7, base, 12), { fill: colours.panel });
}

/** Equilateral, its base on `base`. */
function alertTriangle(x: number, base: number, side: number): ['M' | 'L', number, number][] {
  const height = side * 0.866;
  return [
    ['M', x, base],
    ['L', x + side / 2, base - height],
    ['L', x + side, base],
  ];
}

function exclamation(x: number, base: number, height: number): ['M' | 'L', number, number][] {
  const top = base - height * 0.7;
  const foot = base - height * 0.3;
  const dot = height * 0.07;
  return [
    ['M', x - height * 0.085, top],
    ['L', x + height * 0.085, top],
    ['L', x + height * 0.04, foot],
    ['L', x - height * 0.04, foot],
    ['M', x - dot, base - height * 0.2],
    ['L', x + dot, base - height * 0.2],
    ['L', x + dot, base - height * 0.2 + 2 * dot],
    ['L', x - dot, base - height * 0.2 + 2 * dot],
  ];
}

export function layRule(setting: Setting): Strip[] {
  return [
    {
      height: 1,
      before: BLOCK_SPACE,
      keep: false,
      draw: (canvas, top) =>
        canvas.artifact(() =>
          canvas.rule(setting.left, setting.left + setting.width, top + 0.5, RULE.thin, INK_COLOURS.quiet),
        ),
    },
  ];
}

/** After the last block: nothing of this report follows. */
export function layEndMark(text: string, setting: Setting): Strip[] {
  const element = setting.parent.add('P');
  const width = setting.faces.semibold.width(text, BODY.size);
  const x = setting.left + (setting.width - width) / 2;
  return [
    {
      height: BODY.leading + 4,
      before: 22,
      keep: false,
      draw: (canvas, top) => {
        const baseline = top + baselineOf(BODY) + 2;
        const gap = 10;
        canvas.artifact(() => {
          const y = baseline - BODY.size * 0.25;
          canvas.rule(setting.left, x - gap, y, RULE.thin, INK_COLOURS.quiet);
          canvas.rule(x + width + gap, setting.left + setting.width, y, RULE.thin, INK_COLOURS.quiet);
        });
        canvas.tagged(element, () => canvas.text('semibold', BODY.size, x, baseline, text, INK_COLOURS.ink));
      },
    },
  ];
}

/** Text of one face in lines from `top`, for places that are laid out by hand. */
export function drawLines(
  canvas: Canvas,
  element: StructureElement,
  lines: readonly Line[],
  style: TextStyle,
  x: number,
  top: number,
  colour: Colour = INK_COLOURS.ink,
): void {
  lines.forEach((line, index) => {
    drawLine(canvas, element, line, style.size, x, top + index * style.leading + baselineOf(style), colour);
  });
}
