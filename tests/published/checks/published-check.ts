/**
 * What a check against a publication is, and when a computed figure agrees with a printed one: no wider and no narrower
 * than it is printed. Plain data and arithmetic, so that the tests and the page of checks use the same tables.
 */

export interface PublishedCheck {
  /** Short name, stable. */
  readonly id: string;
  /** Work, edition, section or example; or `common practice, no source`, `from memory`. */
  readonly source: string;
  /** What is computed, in the trade's words. */
  readonly what: string;
  /** As printed: its last digit is the tolerance. `5.26e5` where the figure ends in noughts that mean nothing. */
  readonly printed: string;
  /** The same figure by our calculation, in the unit of the source. */
  readonly computed: () => number;
}

/** How much a printed figure is worth as evidence. */
export const statuses = {
  read: 'inputs and answer read in the work itself',
  companion: 'inputs of the book, answer as an open companion to it prints it',
  data: 'open measured data with published results',
  statement: 'inputs read, answer from memory',
  memory: 'inputs and answer from memory',
  independent: 'computed independently of this program; no publication',
  practice: 'common practice, no source',
} as const;

/** A check of the mechanics, with how its figure was seen. */
export interface MechanicsCheck extends PublishedCheck {
  readonly status: keyof typeof statuses;
}

/** Whether the figure stands in a publication that somebody can open, as against memory, practice or our own second opinion. */
export function isPublished({ status }: MechanicsCheck): boolean {
  return status === 'read' || status === 'companion' || status === 'data';
}

const WRITTEN = /^-?\d+(?:\.(?<decimals>\d+))?(?:e(?<exponent>-?\d+))?$/;

/** One unit of the last digit as printed: 0.01 for `2.34`, 1e3 for `5.263e6`. */
export function lastDigit(printed: string): number {
  const groups = WRITTEN.exec(printed)?.groups;
  if (!groups) throw new Error(`not a printed figure: ${printed}`);
  return Number(`1e${Number(groups.exponent ?? 0) - (groups.decimals?.length ?? 0)}`);
}

/** Whether the figure, rounded as the source rounds, is the printed one; a tie may have gone either way. */
export function agreesToPrintedDigits(computed: number, printed: string): boolean {
  const published = Number(printed);
  const rounding = 8 * Number.EPSILON * Math.abs(published);
  return Math.abs(computed - published) <= 0.5 * lastDigit(printed) + rounding;
}

/** The value at which a rising function reaches a level; for sources that print the answer to the inverse question. */
export function solveRising(f: (x: number) => number, level: number, low: number, high: number): number {
  let [below, above] = [low, high];
  if (!(f(below) <= level && level <= f(above)))
    throw new Error(`${level} is not reached between ${low} and ${high}`);
  for (let i = 0; i < 200; i++) {
    const middle = (below + above) / 2;
    if (f(middle) <= level) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}
