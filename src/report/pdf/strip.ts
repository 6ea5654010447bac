/** The unit of page make-up: a strip of the full width that is never divided. Blocks become strips; pages are filled with them. */
import type { Canvas } from './canvas.ts';

export interface Strip {
  readonly height: number;
  /** Space above, dropped at the head of a page. */
  readonly before: number;
  /** Has to be on the same page as the strip after it: headings, first and last two lines, head and first row. */
  readonly keep: boolean;
  /** Drawn above the strip, as an artifact, where the strip begins a page: the head of a table that goes on. */
  readonly continuation?: { readonly height: number; readonly draw: (canvas: Canvas, top: number) => void };
  readonly draw: (canvas: Canvas, top: number) => void;
}

export interface PlacedStrip {
  readonly strip: Strip;
  readonly page: number;
  readonly top: number;
  /** Where its continuation is drawn, if it begins a page with one. */
  readonly continuationTop?: number;
}

/**
 * Fills pages with strips from the top. Strips that keep together move to the next page together, unless they
 * are taller than a page: then they are divided where the page ends, rather than run off it.
 *
 * @param top, bottom  edges of the text on every page
 */
export function paginate(strips: readonly Strip[], top: number, bottom: number): PlacedStrip[] {
  const placed: PlacedStrip[] = [];
  let page = 0;
  let y = top;
  const fresh = (): boolean => y === top;
  const place = (strip: Strip): void => {
    if (fresh() && strip.continuation && placed.length > 0) {
      placed.push({ strip, page, top: y + strip.continuation.height, continuationTop: y });
      y += strip.continuation.height + strip.height;
      return;
    }
    const above = fresh() ? 0 : strip.before;
    placed.push({ strip, page, top: y + above });
    y += above + strip.height;
  };
  const turn = (): void => {
    page += 1;
    y = top;
  };
  for (const group of groups(strips)) {
    if (!fresh() && y + heightOf(group, false) > bottom + 0.01) {
      // a group taller than a page gains nothing from a new one, unless little of this one would be used
      if (heightOf(group, true) <= bottom - top || bottom - y < (bottom - top) / 3) turn();
    }
    for (const strip of group) {
      const above = fresh() ? (strip.continuation?.height ?? 0) : strip.before;
      if (!fresh() && y + above + strip.height > bottom + 0.01) turn();
      place(strip);
    }
  }
  return placed;
}

function groups(strips: readonly Strip[]): Strip[][] {
  const result: Strip[][] = [];
  let open: Strip[] = [];
  for (const strip of strips) {
    open.push(strip);
    if (strip.keep) continue;
    result.push(open);
    open = [];
  }
  if (open.length > 0) result.push(open);
  return result;
}

function heightOf(group: readonly Strip[], atHead: boolean): number {
  return group.reduce(
    (sum, strip, index) =>
      sum +
      strip.height +
      (index > 0 ? strip.before : atHead ? (strip.continuation?.height ?? 0) : strip.before),
    0,
  );
}
