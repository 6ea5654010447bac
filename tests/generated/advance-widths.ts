/** Advance widths of the characters that drawings may letter, read out of the font files. */
import { create } from 'fontkit';
import type { Fonts } from '../../src/report/index.ts';

const RANGES: readonly (readonly [number, number])[] = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x391, 0x3c9],
  [0x2002, 0x200a],
  [0x2010, 0x2026],
  [0x2030, 0x203a],
  [0x2070, 0x209c],
  [0x20ac, 0x20ac],
  [0x2126, 0x2126],
  [0x2190, 0x2193],
  [0x2202, 0x2265],
];

/** The generated file: per face an object of character → width in thousandths of the type size. */
export function advanceWidthsFile(fonts: Fonts): string {
  return `${JSON.stringify({ regular: widths(fonts.regular), semibold: widths(fonts.semibold) })}\n`;
}

function widths(bytes: Uint8Array): Record<string, number> {
  const font = create(bytes);
  const table: Record<string, number> = {};
  for (const [first, last] of RANGES) {
    for (let code = first; code <= last; code += 1) {
      if (!font.hasGlyphForCodePoint(code)) continue;
      table[String.fromCodePoint(code)] = Math.round(
        (font.glyphForCodePoint(code).advanceWidth * 1000) / font.unitsPerEm,
      );
    }
  }
  return table;
}
