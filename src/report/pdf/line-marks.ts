/** Draws a broken line: runs of one face in one piece, symbols as outlines, a light ground behind code. */
import { drawOnPage } from '../drawing/to-pdf.ts';
import type { Face } from '../fonts.ts';
import type { Canvas } from './canvas.ts';
import type { Line, Piece } from './lines.ts';
import { type Colour, INK_COLOURS, tinted } from './palette.ts';
import type { StructureElement } from './structure.ts';

interface Run {
  readonly face: Face;
  text: string;
  readonly x: number;
}

type Mark = Run | { readonly math: Extract<Piece, { kind: 'math' }>; readonly x: number };

export function drawLine(
  canvas: Canvas,
  element: StructureElement,
  line: Line,
  size: number,
  x: number,
  baseline: number,
  colour: Colour = INK_COLOURS.ink,
): void {
  const { marks, shades } = arrange(line, x);
  if (shades.length > 0) {
    canvas.artifact(() => {
      for (const [from, to] of shades) {
        canvas.box(from - 1.2, baseline - size * 0.78, to - from + 2.4, size * 1.04, {
          fill: tinted('faint', 0.38),
        });
      }
    });
  }
  let texts: Run[] = [];
  const flush = (): void => {
    if (texts.length === 0) return;
    const runs = texts;
    texts = [];
    canvas.tagged(element, () => {
      for (const run of runs) canvas.text(run.face, size, run.x, baseline, run.text, colour);
    });
  };
  for (const mark of marks) {
    if (!('math' in mark)) {
      texts.push(mark);
      continue;
    }
    flush();
    const { drawing, spoken } = mark.math;
    const formula = element.add('Formula', { alternate: spoken });
    formula.placement = 'Inline';
    const top = baseline - drawing.baseline;
    formula.box = [mark.x, canvas.height - top - drawing.height, mark.x + drawing.width, canvas.height - top];
    canvas.tagged(formula, () => {
      drawOnPage(canvas, drawing, mark.x, top);
      canvas.hiddenText(size, mark.x, baseline, drawing.width, drawing.description);
    });
  }
  flush();
}

function arrange(line: Line, start: number): { marks: Mark[]; shades: (readonly [number, number])[] } {
  const marks: Mark[] = [];
  const shades: [number, number][] = [];
  let x = start;
  let shadeOpen = false;
  line.words.forEach((word, index) => {
    const space = index > 0 ? word.space : 0;
    const spaceAt = x;
    x += space;
    word.pieces.forEach((piece, place) => {
      if (piece.kind === 'math') {
        const before = marks.at(-1);
        if (place === 0 && space > 0 && before && !('math' in before)) before.text += ' ';
        marks.push({ math: piece, x });
        shadeOpen = false;
      } else {
        const before = marks.at(-1);
        const gap = place === 0 && space > 0 ? ' ' : '';
        // the space belongs to the run before it when the face goes on, so that copied text keeps its spaces
        if (before && !('math' in before) && before.face === piece.face) before.text += gap + piece.text;
        else if (gap !== '' && before && !('math' in before)) {
          before.text += gap;
          marks.push({ face: piece.face, text: piece.text, x });
        } else if (gap !== '') marks.push({ face: piece.face, text: gap + piece.text, x: spaceAt });
        else marks.push({ face: piece.face, text: piece.text, x });
        if (piece.shaded) {
          const last = shades.at(-1);
          if (shadeOpen && last) last[1] = x + piece.width;
          else shades.push([x, x + piece.width]);
        }
        shadeOpen = piece.shaded;
      }
      x += piece.width;
    });
  });
  return { marks, shades };
}
