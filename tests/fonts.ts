/** The font files, for tests and for the scripts that generate from them. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type Face, type Fonts, fontFiles, fontPackage } from '../src/report/index.ts';

export function readFonts(): Fonts {
  const folder = dirname(createRequire(import.meta.url).resolve(`${fontPackage}/package.json`));
  const read = (face: Face): Uint8Array => new Uint8Array(readFileSync(join(folder, fontFiles[face])));
  return { regular: read('regular'), semibold: read('semibold'), italic: read('italic') };
}
