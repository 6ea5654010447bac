/** Equations, vector illustrations and pictures as strips, never larger than the column. */
import { drawOnPage } from '../drawing/to-pdf.ts';
import { equationDrawing } from '../equation/equation-drawing.ts';
import { linearEquation } from '../equation/linear.ts';
import type { Equation, Illustration, Picture } from '../tree.ts';
import { baselineOf, drawLines } from './lay-text.ts';
import { drawLine } from './line-marks.ts';
import { INK_COLOURS } from './palette.ts';
import type { Setting } from './setting.ts';
import type { Strip } from './strip.ts';
import type { StructureElement } from './structure.ts';
import { BLOCK_SPACE, BODY, PARAGRAPH_SPACE, SMALL } from './style.ts';

const EQUATION_INDENT = 22;
const EQUATION_SIZE = BODY.size * 1.06;

/** On a line of its own, indented; the same on one line of text where the table of typeset equations does not know it. */
export function layEquation({ tex, spoken }: Equation, setting: Setting): Strip[] {
  const drawing = equationDrawing(tex, EQUATION_SIZE);
  const element = setting.parent.add('Formula', { alternate: spoken });
  const x = setting.left + EQUATION_INDENT;
  const room = setting.width - EQUATION_INDENT;
  if (!drawing) {
    const lines = setting.breaker.lines([{ emphasis: linearEquation(tex) }], BODY.size, room);
    return lines.map((line, index) => ({
      height: BODY.leading,
      before: index === 0 ? PARAGRAPH_SPACE : 0,
      keep: index < lines.length - 1,
      draw: (canvas, top) => drawLine(canvas, element, line, BODY.size, x, top + baselineOf(BODY)),
    }));
  }
  const scale = Math.min(1, room / drawing.width);
  const height = drawing.height * scale;
  return [
    {
      height: height + 2,
      before: PARAGRAPH_SPACE + 1,
      keep: true, // what follows explains its symbols
      draw: (canvas, top) => {
        const bottom = canvas.height - top - height;
        element.box = [x, bottom, x + drawing.width * scale, bottom + height];
        canvas.tagged(element, () => {
          drawOnPage(canvas, drawing, x, top, scale);
          const baseline = top + drawing.baseline * scale;
          canvas.hiddenText(BODY.size, x, baseline, drawing.width * scale, drawing.description);
        });
      },
    },
  ];
}

export function layIllustration({ drawing, caption }: Illustration, setting: Setting): Strip[] {
  const captionRoom = caption === '' ? 0 : 3 * SMALL.leading;
  const scale = Math.min(
    1,
    setting.width / drawing.width,
    (setting.pageHeight - captionRoom) / drawing.height,
  );
  const size = { width: drawing.width * scale, height: drawing.height * scale };
  const alternate = `${drawing.title}. ${drawing.description}`;
  return figureStrips(caption, alternate, size, setting, (canvas, element, x, top) =>
    canvas.tagged(element, () => drawOnPage(canvas, drawing, x, top, scale)),
  );
}

/** Pictures are printed at this many pixels an inch at most, and no higher than this share of the page. */
const PIXELS_PER_INCH = 150;
const LARGEST_SHARE = 0.48;

export function layPicture({ bytes, caption }: Picture, setting: Setting): Strip[] {
  const picture = setting.pictures.get(bytes);
  if (!picture) return [];
  const natural = {
    width: (picture.width * 72) / PIXELS_PER_INCH,
    height: (picture.height * 72) / PIXELS_PER_INCH,
  };
  const scale = Math.min(
    1,
    setting.width / natural.width,
    (setting.pageHeight * LARGEST_SHARE) / natural.height,
  );
  const size = { width: natural.width * scale, height: natural.height * scale };
  return figureStrips(
    caption,
    caption === '' ? 'Picture without a caption' : caption,
    size,
    setting,
    (canvas, element, x, top) =>
      canvas.tagged(element, () =>
        canvas.picture(picture.name, x, top, size.width, size.height, picture.turns),
      ),
  );
}

function figureStrips(
  caption: string,
  alternate: string,
  size: { readonly width: number; readonly height: number },
  setting: Setting,
  paint: (canvas: Parameters<Strip['draw']>[0], element: StructureElement, x: number, top: number) => void,
): Strip[] {
  const group = setting.parent.add('Div');
  const figure = group.add('Figure', { alternate });
  const captionElement = caption === '' ? undefined : group.add('Caption');
  const lines = caption === '' ? [] : setting.breaker.lines([caption], SMALL.size, setting.width);
  const x = setting.left;
  return [
    {
      height: size.height + (lines.length > 0 ? 5 + lines.length * SMALL.leading : 0) + 2,
      before: BLOCK_SPACE,
      keep: false,
      draw: (canvas, top) => {
        const bottom = canvas.height - top - size.height;
        figure.box = [x, bottom, x + size.width, bottom + size.height];
        paint(canvas, figure, x, top);
        if (captionElement) {
          drawLines(canvas, captionElement, lines, SMALL, x, top + size.height + 5, INK_COLOURS.quiet);
        }
      },
    },
  ];
}
