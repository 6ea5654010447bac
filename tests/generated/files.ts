/** Every file that is generated and committed, with the text that it should have now. */
import { readFonts } from '../fonts.ts';
import { advanceWidthsFile } from './advance-widths.ts';
import { type EquationSource, equationsFile } from './equations.ts';

export interface GeneratedFile {
  readonly path: string;
  readonly text: string;
}

export function generatedFiles(): GeneratedFile[] {
  return [
    { path: 'src/report/drawing/advance-widths.generated.json', text: advanceWidthsFile(readFonts()) },
    { path: 'src/report/equation/glyphs.generated.json', text: equationsFile(equationSources()) },
  ];
}

/** What a notebook page or a report may have to set. */
function equationSources(): EquationSource[] {
  return [
    { tex: '\\tan\\varphi_\\mathrm{max} = \\frac{m_b\\,e}{M_0 + m_b\\,z_b}', display: true },
    { tex: '\\tau_0 = \\sqrt{\\frac{I}{g\\,M}}', display: true },
    { tex: 'I = \\sum_i \\left[ I_i + m_i \\left( y_i^2 + z_i^2 \\right) \\right]', display: true },
    {
      tex: '\\sigma = \\frac{3+\\nu}{4}\\,\\rho\\,\\omega^2\\left(r_o^2 + \\frac{1-\\nu}{3+\\nu}\\,r_i^2\\right)',
      display: true,
    },
    { tex: '\\varphi_\\mathrm{max}', display: false },
    { tex: 'm_b', display: false },
  ];
}
