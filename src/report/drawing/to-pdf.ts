/** A drawing on a page of the PDF: the same primitives as in the window, with the palette of the paper. */
import type { Canvas } from '../pdf/canvas.ts';
import { tinted } from '../pdf/palette.ts';
import type { Drawing, TextPrimitive } from './primitive.ts';

/** @param left, top  corner of the drawing on the page, points from the top left; `scale` shrinks it to its column */
export function drawOnPage(canvas: Canvas, drawing: Drawing, left: number, top: number, scale = 1): void {
  for (const primitive of drawing.primitives) {
    if (primitive.type === 'text') {
      drawLettering(canvas, primitive, left, top, scale);
      continue;
    }
    const { steps, fill, tint, stroke, width, dash } = primitive;
    if (!fill && !stroke) continue;
    canvas.path(
      steps,
      {
        ...(fill ? { fill: tinted(fill, tint) } : {}),
        ...(stroke ? { stroke: tinted(stroke) } : {}),
        ...(width === undefined ? {} : { width }),
        ...(dash ? { dash } : {}),
      },
      left,
      top,
      scale,
    );
  }
}

function drawLettering(canvas: Canvas, text: TextPrimitive, left: number, top: number, scale: number): void {
  const face = text.weight === 'semibold' ? 'semibold' : 'regular';
  const size = text.size * scale;
  const width = canvas.faces[face].width(text.text, size);
  const back = text.anchor === 'start' ? 0 : text.anchor === 'middle' ? width / 2 : width;
  const x = left + text.x * scale;
  const y = top + text.y * scale;
  const colour = tinted(text.ink);
  if (!text.rotate) {
    canvas.text(face, size, x - back, y, text.text, colour);
    return;
  }
  const angle = (text.rotate * Math.PI) / 180;
  const start = [x - back * Math.cos(angle), y + back * Math.sin(angle)] as const;
  canvas.turnedText(face, size, start, text.rotate, text.text, colour);
}
