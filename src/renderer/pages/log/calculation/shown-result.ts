/** What stands under a calculation: one line for each expression, with its value or with what is wrong with it. */

export type ShownLine =
  | { readonly kind: 'value'; readonly name: string; readonly value: string }
  | {
      readonly kind: 'problem';
      /** Counted from 1 within the block; absent where the whole block is meant. */
      readonly line?: number;
      readonly reason: string;
      readonly remedy: string;
      /** The characters of the block's code concerned. */
      readonly range?: readonly [from: number, to: number];
    };

/** The line as one sentence, for a screen reader and for the title of an underline. */
export function spoken(line: ShownLine): string {
  if (line.kind === 'value') return `${line.name} = ${line.value}`;
  return `${placeOf(line)}${line.reason} ${line.remedy}`;
}

/** `line 3: `, or the calculation where no line is to blame. */
export function placeOf(line: Extract<ShownLine, { kind: 'problem' }>): string {
  return line.line === undefined ? 'calculation: ' : `line ${line.line}: `;
}
