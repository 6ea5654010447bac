/** What we use of `fontkit`, which ships without types. */
declare module 'fontkit' {
  export interface Glyph {
    readonly id: number;
    readonly advanceWidth: number;
    readonly codePoints: readonly number[];
  }
  export interface GlyphRun {
    readonly glyphs: readonly Glyph[];
    readonly positions: readonly {
      readonly xAdvance: number;
      readonly xOffset: number;
      readonly yOffset: number;
    }[];
  }
  export interface Font {
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    readonly capHeight: number;
    readonly xHeight: number;
    readonly characterSet: readonly number[];
    hasGlyphForCodePoint(code: number): boolean;
    glyphForCodePoint(code: number): Glyph;
    layout(text: string, features?: Readonly<Record<string, boolean>>): GlyphRun;
  }
  export function create(bytes: Uint8Array, postscriptName?: string): Font;
}
