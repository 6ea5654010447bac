/** The typefaces of reports, from the package that they come in. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type Fonts, fontFiles, fontPackage } from '../report/index.ts';

export async function readFonts(): Promise<Fonts> {
  const find = createRequire(import.meta.url);
  const read = (file: string) => readFile(find.resolve(`${fontPackage}/${file}`));
  const [regular, semibold, italic] = await Promise.all(
    [fontFiles.regular, fontFiles.semibold, fontFiles.italic].map(read),
  );
  if (!regular || !semibold || !italic) throw new Error('a typeface is missing');
  return { regular, semibold, italic };
}
