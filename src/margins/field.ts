/** The shape of an input field: what it is called, which unit it is kept and read in, and what it may be. */

/** Limits of a value in SI. `above` and `below` exclude the limit itself, `from` and `to` include it. */
export interface Range {
  readonly above?: number;
  readonly from?: number;
  readonly below?: number;
  readonly to?: number;
}

export interface FieldSpec {
  /** Last segments of its path: `mass`, `body/diameter`. */
  readonly key: string;
  /** In the trade's words, lower case, without its unit. */
  readonly title: string;
  /** SI unit of the stored value. */
  readonly unit: string;
  /** Unit that it is read in until somebody types another. */
  readonly display: string;
  readonly range: Range;
  /** As a person would type it. */
  readonly example: string;
  /** The value, in SI, of a field that nobody has filled in; absent where blank means unknown. */
  readonly blank?: number;
}

export const anyValue: Range = {};
export const positive: Range = { above: 0 };
export const notNegative: Range = { from: 0 };
/** Between upright and lying down, both excluded where an equation would divide by nought. */
export const lessThanRightAngle: Range = { above: 0, below: Math.PI / 2 };

export function within(range: Range, value: number): boolean {
  return (
    Number.isFinite(value) &&
    (range.above === undefined || value > range.above) &&
    (range.from === undefined || value >= range.from) &&
    (range.below === undefined || value < range.below) &&
    (range.to === undefined || value <= range.to)
  );
}
