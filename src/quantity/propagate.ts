/**
 * Carries uncertainty through functions of plain numbers, as the calculations of `mechanics/` are.
 *
 * Source: JCGM 100:2008 5.1.2 (law of propagation), 5.1.3 note 2 (numerical sensitivity coefficients).
 */
import { combine, standardUncertainty, type Uncertain } from './uncertain.ts';

export type Values = Readonly<Record<string, number | readonly number[]>>;
export type UncertainValues = Readonly<Record<string, Uncertain | readonly Uncertain[]>>;

/**
 * Carries the uncertainty of the inputs through a function of plain numbers.
 *
 * @param compute   numbers in, numbers out, all SI; throws a RangeError where it is not defined
 * @param inputs    single figures or lists of figures, by name
 * @param partials  exact partial derivatives by output, input and (for a list) position; where one is absent it is
 *                  found by central differences with a step well inside the input's own uncertainty
 * @returns         every output with its contributions
 * @throws          what `compute` throws at the values themselves, or on both sides of an uncertain input
 */
export function propagate(
  compute: (values: Values) => Readonly<Record<string, number>>,
  inputs: UncertainValues,
  partials?: (values: Values) => Readonly<Record<string, Values>>,
): Record<string, Uncertain> {
  const values: Record<string, number | number[]> = {};
  for (const [name, input] of Object.entries(inputs)) {
    values[name] = isList(input) ? input.map((item) => item.value) : input.value;
  }
  const outputs = Object.entries(compute(values));
  const known = partials?.(values) ?? {};
  const terms = new Map<string, [slope: number, item: Uncertain][]>(outputs.map(([output]) => [output, []]));

  for (const [name, input] of Object.entries(inputs)) {
    const items = isList(input) ? input : [input];
    for (const [index, item] of items.entries()) {
      if (item.contributions.size === 0) continue;
      const at: Position = { name, index: isList(input) ? index : undefined };
      let differences: ReadonlyMap<string, number> | undefined;
      for (const [output] of outputs) {
        let slope = slopeFrom(known[output]?.[name], at.index);
        if (slope === undefined) {
          differences ??= slopesByDifference(compute, values, outputs, at, item);
          slope = differences.get(output) ?? 0;
        }
        terms.get(output)?.push([slope, item]);
      }
    }
  }
  return Object.fromEntries(
    outputs.map(([output, value]) => [output, combine(value, terms.get(output) ?? [])]),
  );
}

function isList(input: Uncertain | readonly Uncertain[]): input is readonly Uncertain[] {
  return Array.isArray(input);
}

/** Which number is varied: an input, or one of a list. */
interface Position {
  readonly name: string;
  readonly index: number | undefined;
}

function slopeFrom(
  slopes: number | readonly number[] | undefined,
  index: number | undefined,
): number | undefined {
  if (typeof slopes === 'number') return slopes;
  return index === undefined ? undefined : slopes?.[index];
}

/** Step of a thousandth of the input's own uncertainty: small against curvature, large against rounding. */
const STEP_OF_UNCERTAINTY = 1e-3;
const SMALLEST_RELATIVE_STEP = 1e-7;

/**
 * Central differences; at the edge of the domain, where one side throws or is not finite, a one-sided one.
 *
 * @throws  what `compute` throws, where it is defined on neither side: an uncertainty of nought would be a lie
 */
function slopesByDifference(
  compute: (values: Values) => Readonly<Record<string, number>>,
  values: Readonly<Record<string, number | number[]>>,
  outputs: readonly (readonly [output: string, centre: number])[],
  { name, index }: Position,
  item: Uncertain,
): ReadonlyMap<string, number> {
  const step = Math.max(
    STEP_OF_UNCERTAINTY * standardUncertainty(item),
    SMALLEST_RELATIVE_STEP * Math.abs(item.value),
  );
  const side = (value: number): Side => {
    const list = values[name];
    const moved = index !== undefined && Array.isArray(list) ? list.with(index, value) : value;
    try {
      return { distance: value - item.value, results: compute({ ...values, [name]: moved }) };
    } catch (error) {
      if (error instanceof RangeError) return { distance: 0, thrown: error };
      throw error;
    }
  };
  const above = side(item.value + step);
  const below = side(item.value - step);
  if (above.thrown && below.thrown) throw above.thrown;
  return new Map(outputs.map(([output, centre]) => [output, slopeBetween(above, below, output, centre)]));
}

/** The function a step to one side, or that it is not defined there. */
interface Side {
  /** As it came out in floating point, signed; 0 where it is not defined. */
  readonly distance: number;
  readonly results?: Readonly<Record<string, number>>;
  readonly thrown?: RangeError;
}

function slopeBetween(above: Side, below: Side, output: string, centre: number): number {
  if (!Number.isFinite(centre)) return 0; // for ever, whatever the input: nothing to carry
  const [high, low] = [above, below].map(({ distance, results }) => {
    const result = results?.[output];
    return result !== undefined && Number.isFinite(result)
      ? { distance, result }
      : { distance: 0, result: centre };
  });
  const width = (high?.distance ?? 0) - (low?.distance ?? 0);
  return width > 0 ? ((high?.result ?? centre) - (low?.result ?? centre)) / width : Number.POSITIVE_INFINITY;
}
