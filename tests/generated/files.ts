/** Every file that is generated and committed, with the text that it should have now. */
import { readFonts } from '../fonts.ts';
import { advanceWidthsFile } from './advance-widths.ts';

export interface GeneratedFile {
  readonly path: string;
  readonly text: string;
}

export function generatedFiles(): GeneratedFile[] {
  return [{ path: 'src/report/drawing/advance-widths.generated.json', text: advanceWidthsFile(readFonts()) }];
}
