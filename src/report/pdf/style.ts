/** Sizes and distances of the page, points: one place for all of the typography. */
import type { ReportDocument } from '../tree.ts';

export const PAPER: Readonly<Record<ReportDocument['paper'], readonly [width: number, height: number]>> = {
  A4: [595.28, 841.89],
  Letter: [612, 792],
};

const MM = 72 / 25.4;

/** Margins leave a line of 160 mm on A4, which at the body's size is under 90 characters on average. */
export const MARGIN = { side: 25 * MM, top: 30 * MM, bottom: 26 * MM } as const;
/** Baselines of page head and foot, from the edges of the sheet. */
export const HEAD_BASELINE = 17 * MM;
export const FOOT_BASELINE = 14 * MM;

export interface TextStyle {
  readonly size: number;
  /** Distance of baselines. */
  readonly leading: number;
}

export const BODY: TextStyle = { size: 10.5, leading: 14.6 };
export const SMALL: TextStyle = { size: 9, leading: 12.4 };
export const RUNNING: TextStyle = { size: 8.5, leading: 11 };
export const LABEL: TextStyle = { size: 7.8, leading: 10 };
export const TITLE: TextStyle = { size: 22, leading: 27 };
export const SUBJECT: TextStyle = { size: 12, leading: 16.5 };
export const HEADINGS: Readonly<Record<1 | 2 | 3, TextStyle & { before: number; after: number }>> = {
  1: { size: 16, leading: 20, before: 24, after: 7 },
  2: { size: 12.5, leading: 16.5, before: 17, after: 4 },
  3: { size: 10.5, leading: 14.6, before: 12, after: 2 },
};

/** Space after a paragraph, and around blocks that stand apart. */
export const PARAGRAPH_SPACE = 6;
export const BLOCK_SPACE = 11;

export const RULE = { broad: 0.9, thin: 0.5, hair: 0.25 } as const;
