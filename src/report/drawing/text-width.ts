/**
 * Width of lettering without a font engine, so that a drawing can be laid out anywhere: the advance widths of the
 * typeface, from its files (generated), without kerning. The PDF and the window draw with the same typeface.
 */
import widths from './advance-widths.generated.json' with { type: 'json' };

type Weight = 'regular' | 'semibold';

const TABLES: Readonly<Record<Weight, Readonly<Record<string, number>>>> = widths;
/** For a character that is not in the table: a wide letter, rather too much room than too little. */
const UNKNOWN = 600;

/** Width of a line of lettering in the unit of `size`. */
export function textWidth(text: string, size: number, weight: Weight = 'regular'): number {
  const table = TABLES[weight];
  let thousandths = 0;
  for (const character of text) thousandths += table[character] ?? UNKNOWN;
  return (thousandths * size) / 1000;
}

/** The text cut to a width, with an ellipsis where something was left out. */
export function fittedText(text: string, width: number, size: number, weight: Weight = 'regular'): string {
  if (textWidth(text, size, weight) <= width) return text;
  const characters = [...text];
  while (characters.length > 1 && textWidth(`${characters.join('')}…`, size, weight) > width)
    characters.pop();
  return `${characters.join('').trimEnd()}…`;
}
