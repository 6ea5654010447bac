/** Every file that is generated and committed, with the text that it should have now. */
import { registry } from '../../src/margins/index.ts';
import { readFonts } from '../fonts.ts';
import { advanceWidthsFile } from './advance-widths.ts';
import { checksPage } from './checks-page.ts';
import { type EquationSource, equationsFile } from './equations.ts';
import { figureNamesPage } from './figure-names.ts';
import { handbookPage } from './handbook.ts';

export interface GeneratedFile {
  readonly path: string;
  readonly text: string;
}

export function generatedFiles(): GeneratedFile[] {
  return [
    { path: 'src/report/drawing/advance-widths.generated.json', text: advanceWidthsFile(readFonts()) },
    { path: 'src/report/equation/glyphs.generated.json', text: equationsFile(equationSources()) },
    { path: 'docs/figure-names.md', text: figureNamesPage() },
    { path: 'docs/handbook.md', text: handbookPage() },
    { path: 'docs/checks.md', text: checksPage() },
  ];
}

/** What a notebook page or a report may have to set: the equation of every calculation, and each of its symbols. */
function equationSources(): EquationSource[] {
  const calculations = [...registry.values()];
  return [
    ...calculations.map(({ equation }) => ({ tex: equation, display: true })),
    ...calculations
      .flatMap(({ inputs, outputs }) => [...Object.values(inputs), ...Object.values(outputs)])
      .map(({ symbol }) => ({ tex: symbol, display: false })),
  ];
}
