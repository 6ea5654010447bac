/**
 * A typeface at work: measures and encodes text word by word, each word once, with its kerning, and keeps the
 * glyphs used so that only those are embedded. Shaping is what a long report would otherwise spend its time on.
 */
import { create, type Font, type Glyph } from 'fontkit';

interface ShapedWord {
  /** Thousandths of the type size. */
  readonly width: number;
  /** Inside of a TJ array: hexadecimal glyph codes with kerning between them. */
  readonly codes: string;
}

export interface EmbeddedGlyph {
  readonly code: number;
  /** Thousandths of the type size. */
  readonly width: number;
  readonly unicode: string;
}

export class Typeface {
  readonly name: string;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
  readonly italicAngle: number;
  readonly box: readonly [number, number, number, number];

  private readonly font: Font;
  private readonly subset: ReturnType<Font['createSubset']>;
  private readonly words = new Map<string, ShapedWord>();
  private readonly used = new Map<number, EmbeddedGlyph>();
  private readonly perThousand: number;

  constructor(bytes: Uint8Array) {
    this.font = create(bytes);
    this.subset = this.font.createSubset();
    this.perThousand = 1000 / this.font.unitsPerEm;
    this.name = this.font.postscriptName;
    this.ascent = this.font.ascent * this.perThousand;
    this.descent = this.font.descent * this.perThousand;
    this.capHeight = this.font.capHeight * this.perThousand;
    this.xHeight = this.font.xHeight * this.perThousand;
    this.italicAngle = this.font.italicAngle;
    const { minX, minY, maxX, maxY } = this.font.bbox;
    this.box = [minX, minY, maxX, maxY].map(
      (value) => value * this.perThousand,
    ) as unknown as Typeface['box'];
    // Several characters may share a glyph; the plain ones name it for copying and searching.
    this.shaped(' ');
    this.shaped('-');
  }

  has(code: number): boolean {
    return this.font.hasGlyphForCodePoint(code);
  }

  /** Width of a text in points; `text` is shaped word by word, spaces between. */
  width(text: string, size: number): number {
    let thousandths = 0;
    text.split(' ').forEach((word, index) => {
      thousandths += (index > 0 ? this.shaped(' ').width : 0) + (word === '' ? 0 : this.shaped(word).width);
    });
    return (thousandths * size) / 1000;
  }

  /** The text as the inside of a TJ array. */
  codes(text: string): string {
    const space = this.shaped(' ').codes;
    return text
      .split(' ')
      .map((word) => (word === '' ? '' : this.shaped(word).codes))
      .join(space)
      .replaceAll('><', '');
  }

  /** Glyphs used so far, by their codes. */
  glyphs(): EmbeddedGlyph[] {
    return [...this.used.values()].sort((a, b) => a.code - b.code);
  }

  /** The font file with the glyphs used so far. */
  file(): Uint8Array {
    return this.subset.encode();
  }

  private shaped(word: string): ShapedWord {
    const known = this.words.get(word);
    if (known) return known;
    const { glyphs, positions } = this.font.layout(word);
    let width = 0;
    let codes = '<';
    glyphs.forEach((glyph, index) => {
      // a mark over a letter is set back over it; its height is right for small letters
      const shift = Math.round((positions[index]?.xOffset ?? 0) * this.perThousand);
      const code = this.code(glyph).toString(16).padStart(4, '0');
      codes += shift === 0 ? code : `>${-shift}<${code}>${shift}<`;
      const advance = positions[index]?.xAdvance ?? glyph.advanceWidth;
      const kern = Math.round((glyph.advanceWidth - advance) * this.perThousand);
      if (kern !== 0) codes += `>${kern}<`;
      width += glyph.advanceWidth * this.perThousand - kern;
    });
    const shaped = { width, codes: `${codes}>`.replaceAll('<>', '') };
    this.words.set(word, shaped);
    return shaped;
  }

  private code(glyph: Glyph): number {
    const code = this.subset.includeGlyph(glyph);
    if (!this.used.has(code)) {
      this.used.set(code, {
        code,
        width: glyph.advanceWidth * this.perThousand,
        unicode: String.fromCodePoint(...glyph.codePoints),
      });
    }
    return code;
  }
}
