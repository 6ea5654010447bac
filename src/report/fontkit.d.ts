/** What we use of `fontkit`, which ships without types. */
declare module 'fontkit' {
  export interface Glyph {
    readonly id: number;
    readonly advanceWidth: number;
    readonly codePoints: readonly number[];
  }
  export interface GlyphRun {
    readonly glyphs: readonly Glyph[];
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number }[];
  }
  export interface Subset {
    /** Adds a glyph and gives its number in the subset. */
    includeGlyph(glyph: Glyph): number;
    encode(): Uint8Array;
  }
  export interface Font {
    readonly postscriptName: string;
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    readonly capHeight: number;
    readonly xHeight: number;
    readonly italicAngle: number;
    readonly bbox: {
      readonly minX: number;
      readonly minY: number;
      readonly maxX: number;
      readonly maxY: number;
    };
    hasGlyphForCodePoint(code: number): boolean;
    glyphForCodePoint(code: number): Glyph;
    layout(text: string): GlyphRun;
    createSubset(): Subset;
  }
  export function create(bytes: Uint8Array): Font;
}
