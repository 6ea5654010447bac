/** Figures and cells as the generated pages write them. */

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const SIGNIFICANT = 6;

/** A number with a real minus sign, six significant digits unless told otherwise, and a power of ten where it is far from 1. */
export function figure(value: number, digits = SIGNIFICANT): string {
  if (!Number.isFinite(value)) throw new Error('a figure in a generated page is not a number');
  const rounded = Number(value.toPrecision(digits));
  const size = Math.abs(rounded);
  if (rounded === 0 || (size >= 1e-4 && size < 10 ** Math.max(SIGNIFICANT, digits)))
    return String(rounded + 0).replace('-', '−');
  return asPrinted(rounded.toExponential());
}

/** A figure in the tables' own writing, `-7.1e-5`, as people write it, no digit more or less. */
export function asPrinted(text: string): string {
  const [mantissa = '', exponent] = text.split('e');
  if (exponent === undefined) return mantissa.replace('-', '−');
  const power = [...String(Math.abs(Number(exponent)))].map((digit) => RAISED[Number(digit)]).join('');
  return `${mantissa.replace('-', '−')} × 10${Number(exponent) < 0 ? '⁻' : ''}${power}`;
}

/** Text inside a table: an upright bar would end the cell. */
export function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}
