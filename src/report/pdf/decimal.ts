/** Splits a figure at its decimal point, so that a column can be lined up on it. */

export interface SplitFigure {
  /** Up to the decimal point, and what follows from the point on: `0` and `.0742(12)`. */
  readonly whole: string;
  readonly rest: string;
}

const FIGURE = /^([+−-]?(?:\d[\d \u00a0\u202f]*)?\d)(.*)$/;

/** Undefined for text that does not begin with a figure: it is not lined up. */
export function splitFigure(text: string): SplitFigure | undefined {
  const match = FIGURE.exec(text);
  if (!match) return undefined;
  const [, whole = '', rest = ''] = match;
  return { whole, rest };
}
