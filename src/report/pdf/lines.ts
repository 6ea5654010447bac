/**
 * Breaks a paragraph into lines: words of one or more faces with typeset symbols among them, measured once each.
 * Lines are set ragged right; a word longer than a whole line is cut where it has to be.
 */
import { type EquationDrawing, equationDrawing } from '../equation/equation-drawing.ts';
import { linearEquation } from '../equation/linear.ts';
import type { Face } from '../fonts.ts';
import type { Inline } from '../tree.ts';
import type { Typefaces } from './canvas.ts';
import { staysTogether } from './glue.ts';

export type Piece =
  | {
      readonly kind: 'text';
      readonly face: Face;
      readonly text: string;
      readonly width: number;
      readonly shaded: boolean;
    }
  | {
      readonly kind: 'math';
      readonly drawing: EquationDrawing;
      readonly spoken: string;
      readonly width: number;
    };

interface Word {
  readonly pieces: Piece[];
  width: number;
  /** Width of the space before it, nought where it continues a cut word. */
  space: number;
}

export interface Line {
  readonly words: readonly Word[];
  readonly width: number;
}

/** A symbol is set a little larger than the text, so that its small letters look as large. */
const MATH_SCALE = 1.06;

export class LineBreaker {
  constructor(private readonly faces: Typefaces) {}

  /**
   * @param base  the face of plain runs: table heads and captions are set in another than the body
   */
  lines(content: readonly Inline[], size: number, width: number, base: Face = 'regular'): Line[] {
    const words = this.words(content, size, base).flatMap((word) =>
      word.width > width ? this.cut(word, size, width) : [word],
    );
    const lines: Line[] = [];
    let current: Word[] = [];
    let used = 0;
    for (const group of groups(words, width)) {
      const inside = widthOf(group);
      const space = group[0]?.space ?? 0;
      if (current.length > 0 && used + space + inside > width + 1e-6) {
        lines.push({ words: current, width: used });
        current = [...group];
        used = inside;
      } else {
        used += (current.length > 0 ? space : 0) + inside;
        current.push(...group);
      }
    }
    if (current.length > 0) lines.push({ words: current, width: used });
    return lines.length > 0 ? lines : [{ words: [], width: 0 }];
  }

  private words(content: readonly Inline[], size: number, base: Face): Word[] {
    const words: Word[] = [];
    let open: Word | undefined;
    let space = 0;
    const add = (piece: Piece): void => {
      if (!open) {
        open = { pieces: [], width: 0, space };
        words.push(open);
      }
      open.pieces.push(piece);
      open.width += piece.width;
    };
    for (const run of content) {
      if (typeof run === 'object' && 'math' in run) {
        add(this.math(run, size));
        continue;
      }
      const [face, text, shaded] = plain(run, base);
      text.split(/[ \t\r\n]+/).forEach((part, index) => {
        if (index > 0) {
          open = undefined;
          space = this.faces[face].width(' ', size);
        }
        if (part !== '') add(this.text(face, part, size, shaded));
      });
    }
    return words;
  }

  private text(face: Face, text: string, size: number, shaded: boolean): Piece {
    return { kind: 'text', face, text, width: this.faces[face].width(text, size), shaded };
  }

  private math(run: { readonly math: string; readonly spoken: string }, size: number): Piece {
    const drawing = equationDrawing(run.math, size * MATH_SCALE);
    return drawing
      ? { kind: 'math', drawing, spoken: run.spoken, width: drawing.width }
      : this.text('italic', linearEquation(run.math).replaceAll(' ', '\u00a0'), size, false);
  }

  /** Cuts a word that is wider than a line: before a separator if there is one in reach, else between letters. */
  private cut(word: Word, size: number, width: number): Word[] {
    const result: Word[] = [];
    let open: Word = { pieces: [], width: 0, space: word.space };
    const close = (): void => {
      if (open.pieces.length > 0) result.push(open);
      open = { pieces: [], width: 0, space: 0 };
    };
    for (const piece of word.pieces) {
      if (piece.kind === 'math') {
        if (open.width + piece.width > width) close();
        open.pieces.push(piece);
        open.width += piece.width;
        continue;
      }
      let rest = [...piece.text];
      while (rest.length > 0) {
        const count = this.fitting(rest, piece.face, size, width - open.width);
        if (count === 0 && open.width > 0) {
          close();
          continue;
        }
        const taken = rest.slice(0, Math.max(1, count)).join('');
        rest = rest.slice(Math.max(1, count));
        const part = this.text(piece.face, taken, size, piece.shaded);
        open.pieces.push(part);
        open.width += part.width;
        if (rest.length > 0) close();
      }
    }
    close();
    return result;
  }

  private fitting(letters: readonly string[], face: Face, size: number, room: number): number {
    let low = 0;
    let high = letters.length;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (this.faces[face].width(letters.slice(0, middle).join(''), size) <= room) low = middle;
      else high = middle - 1;
    }
    if (low === letters.length) return low;
    const separator = letters.slice(0, low).findLastIndex((letter) => /[-–/_,;:.]/.test(letter));
    return separator > low / 2 ? separator + 1 : low;
  }
}

/** Words that stay on one line, as long as they fit one. */
function groups(words: readonly Word[], width: number): Word[][] {
  const result: Word[][] = [];
  for (const word of words) {
    const open = result.at(-1);
    const before = open?.at(-1);
    if (
      open &&
      before &&
      staysTogether(textOf(before), textOf(word)) &&
      widthOf(open) + word.space + word.width <= width
    ) {
      open.push(word);
    } else result.push([word]);
  }
  return result;
}

function widthOf(group: readonly Word[]): number {
  return group.reduce((sum, word, index) => sum + word.width + (index > 0 ? word.space : 0), 0);
}

function textOf(word: Word): string {
  return word.pieces.map((piece) => (piece.kind === 'text' ? piece.text : '')).join('');
}

function plain(run: Exclude<Inline, { math: string }>, base: Face): readonly [Face, string, boolean] {
  if (typeof run === 'string') return [base, run, false];
  if ('strong' in run) return ['semibold', run.strong, false];
  if ('emphasis' in run) return ['italic', run.emphasis, false];
  return [base, run.code, true];
}
