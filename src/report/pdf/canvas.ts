/**
 * One page being drawn: content-stream operators as text, in page coordinates that run down from the top left
 * corner. Colour and font are written only when they change; every mark is tagged or an artifact.
 */
import type { PathStep } from '../drawing/primitive.ts';
import type { Face } from '../fonts.ts';
import type { Colour } from './palette.ts';
import type { StructureElement } from './structure.ts';
import type { Typeface } from './typeface.ts';

export type Typefaces = Readonly<Record<Face, Typeface>>;

export const FONT_NAMES: Readonly<Record<Face, string>> = { regular: 'FR', semibold: 'FS', italic: 'FI' };

export interface PathPaint {
  readonly fill?: Colour;
  readonly stroke?: Colour;
  readonly width?: number;
  readonly dash?: readonly number[];
}

export class Canvas {
  /** The element of each marked content, in order of its number: one row of the parent tree. */
  readonly marks: StructureElement[] = [];
  /** Resource names of the pictures drawn. */
  readonly pictures = new Set<string>();
  private readonly out: string[] = [];
  private fill = '';
  private stroke = '';
  private font = '';
  private lineWidth = '';
  private dash = '';

  constructor(
    readonly page: number,
    readonly width: number,
    readonly height: number,
    readonly faces: Typefaces,
  ) {
    this.out.push('1 j'); // round joins
  }

  content(): string {
    return this.out.join('\n');
  }

  /** What `paint` draws belongs to the element. Not to be nested. */
  tagged(element: StructureElement, paint: () => void): void {
    this.out.push(`/${element.role} <</MCID ${this.marks.length}>> BDC`);
    element.children.push({ page: this.page, mark: this.marks.length });
    this.marks.push(element);
    paint();
    this.out.push('EMC');
  }

  /** What `paint` draws is no part of the text: rules, panels, page head and foot. */
  artifact(paint: () => void, pagination = false): void {
    this.out.push(pagination ? '/Artifact <</Type /Pagination>> BDC' : '/Artifact BMC');
    paint();
    this.out.push('EMC');
  }

  text(face: Face, size: number, x: number, baseline: number, text: string, colour: Colour): void {
    if (text === '') return;
    this.fillColour(colour);
    this.out.push(
      `BT ${this.fontOperator(face, size)}${number(x)} ${number(this.height - baseline)} Td [${this.faces[face].codes(text)}] TJ ET`,
    );
  }

  /** Text turned anticlockwise by an angle in degrees about its starting point. */
  turnedText(
    face: Face,
    size: number,
    [x, baseline]: readonly [number, number],
    angle: number,
    text: string,
    colour: Colour,
  ): void {
    this.fillColour(colour);
    const cos = number(Math.cos((angle * Math.PI) / 180), 4);
    const sin = number(Math.sin((angle * Math.PI) / 180), 4);
    const back = number(-Math.sin((angle * Math.PI) / 180), 4);
    this.out.push(
      `BT ${this.fontOperator(face, size)}${cos} ${sin} ${back} ${cos} ${number(x)} ${number(this.height - baseline)} Tm [${this.faces[face].codes(text)}] TJ ET`,
    );
  }

  /** Text that is not seen but searched, copied and read aloud, stretched over what stands for it. */
  hiddenText(size: number, x: number, baseline: number, width: number, spoken: string): void {
    const text = [...spoken].filter((letter) => this.faces.regular.has(letter.codePointAt(0) ?? 0)).join('');
    const natural = this.faces.regular.width(text, size);
    if (natural <= 0) return;
    const stretch = number((100 * width) / natural);
    this.out.push(
      `BT 3 Tr ${stretch} Tz ${this.fontOperator('regular', size)}${number(x)} ${number(this.height - baseline)} Td [${this.faces.regular.codes(text)}] TJ 0 Tr 100 Tz ET`,
    );
  }

  /** Draws steps whose coordinates are taken through (x·scale + dx, y·scale + dy) on the page. */
  path(steps: readonly PathStep[], paint: PathPaint, dx = 0, dy = 0, scale = 1): void {
    if (paint.fill) this.fillColour(paint.fill);
    if (paint.stroke) this.strokeStyle(paint.stroke, (paint.width ?? 1) * scale, paint.dash ?? [], scale);
    this.out.push(pathOperators(steps, dx, this.height - dy, scale));
    this.out.push(paint.fill ? (paint.stroke ? 'B' : 'f') : 'S');
  }

  box(left: number, top: number, width: number, height: number, paint: PathPaint): void {
    if (paint.fill) this.fillColour(paint.fill);
    if (paint.stroke) this.strokeStyle(paint.stroke, paint.width ?? 1, paint.dash ?? [], 1);
    this.out.push(
      `${number(left)} ${number(this.height - top - height)} ${number(width)} ${number(height)} re ${paint.fill ? (paint.stroke ? 'B' : 'f') : 'S'}`,
    );
  }

  rule(fromX: number, toX: number, y: number, width: number, colour: Colour): void {
    this.strokeStyle(colour, width, [], 1);
    const level = number(this.height - y);
    this.out.push(`${number(fromX)} ${level} m ${number(toX)} ${level} l S`);
  }

  /** @param turns  quarter turns to the right, for a picture that was taken with the camera on its side */
  picture(
    name: string,
    left: number,
    top: number,
    width: number,
    height: number,
    turns: 0 | 1 | 2 | 3 = 0,
  ): void {
    this.pictures.add(name);
    const [w, h, x, y] = [width, height, left, this.height - top - height];
    const matrix = (
      [
        [w, 0, 0, h, x, y],
        [0, -h, w, 0, x, y + h],
        [-w, 0, 0, -h, x + w, y + h],
        [0, h, -w, 0, x + w, y],
      ] as const
    )[turns];
    this.out.push(`q ${matrix.map((value) => number(value)).join(' ')} cm /${name} Do Q`);
  }

  private fillColour(colour: Colour): void {
    const operator = `${colour.map((part) => number(part, 3)).join(' ')} rg`;
    if (operator === this.fill) return;
    this.fill = operator;
    this.out.push(operator);
  }

  private strokeStyle(colour: Colour, width: number, dash: readonly number[], scale: number): void {
    const operator = `${colour.map((part) => number(part, 3)).join(' ')} RG`;
    if (operator !== this.stroke) {
      this.stroke = operator;
      this.out.push(operator);
    }
    const widthOperator = `${number(width)} w`;
    if (widthOperator !== this.lineWidth) {
      this.lineWidth = widthOperator;
      this.out.push(widthOperator);
    }
    const dashOperator = `[${dash.map((length) => number(length * scale)).join(' ')}] 0 d`;
    if (dashOperator !== this.dash) {
      if (this.dash !== '' || dash.length > 0) this.out.push(dashOperator);
      this.dash = dashOperator;
    }
  }

  private fontOperator(face: Face, size: number): string {
    const operator = `/${FONT_NAMES[face]} ${number(size)} Tf `;
    if (operator === this.font) return '';
    this.font = operator;
    return operator;
  }
}

function pathOperators(steps: readonly PathStep[], dx: number, top: number, scale: number): string {
  const atX = (x: number): string => number(dx + x * scale);
  const atY = (y: number): string => number(top - y * scale);
  const parts: string[] = [];
  let x = 0;
  let y = 0;
  for (const step of steps) {
    switch (step[0]) {
      case 'M':
      case 'L':
        parts.push(atX(step[1]), atY(step[2]), step[0] === 'M' ? 'm' : 'l');
        [, x, y] = step;
        break;
      case 'C':
        parts.push(atX(step[1]), atY(step[2]), atX(step[3]), atY(step[4]), atX(step[5]), atY(step[6]), 'c');
        [, , , , , x, y] = step;
        break;
      case 'Q': {
        // a quadratic curve as a cubic: control points two thirds of the way to its own
        const [, cx, cy, ex, ey] = step;
        parts.push(
          atX(x + (2 / 3) * (cx - x)),
          atY(y + (2 / 3) * (cy - y)),
          atX(ex + (2 / 3) * (cx - ex)),
          atY(ey + (2 / 3) * (cy - ey)),
          atX(ex),
          atY(ey),
          'c',
        );
        x = ex;
        y = ey;
        break;
      }
      case 'Z':
        parts.push('h');
        break;
    }
  }
  return parts.join(' ');
}

/** A number as PDF writes it: at most so many decimals, no exponent, no minus nought. */
export function number(value: number, decimals = 2): string {
  const power = 10 ** decimals;
  const rounded = Math.round(value * power) / power;
  return Number.isFinite(rounded) ? String(rounded + 0) : '0';
}
