/**
 * A number with its first-order uncertainty, kept as the contribution of each independent input. Because the
 * contributions carry their sign and the name of the input, correlations look after themselves: one weighed
 * mass that enters the total, the first moment and the inertia is one name in all three.
 *
 * Source: JCGM 100:2008 5.1.2 (law of propagation) and 5.2.2 (correlated inputs: here by tracing every figure
 * back to independent inputs).
 */

export interface Uncertain {
  /** In SI units. */
  readonly value: number;
  /** Input name → (∂y/∂xᵢ)·u(xᵢ), in the unit of `value`. Empty for an exact number. */
  readonly contributions: ReadonlyMap<string, number>;
}

const NONE: ReadonlyMap<string, number> = new Map();

export function exact(value: number): Uncertain {
  return { value, contributions: NONE };
}

/** An independent input with its standard uncertainty (same unit as the value, ≥ 0). */
export function independent(name: string, value: number, standardUncertainty: number): Uncertain {
  return standardUncertainty > 0
    ? { value, contributions: new Map([[name, standardUncertainty]]) }
    : exact(value);
}

/** u(y) = √Σ cᵢ²; JCGM 100 equation (10) with the contributions as they are kept here. */
export function standardUncertainty(y: Uncertain): number {
  let sum = 0;
  for (const contribution of y.contributions.values()) sum += contribution * contribution;
  return Math.sqrt(sum);
}

/** Covariance of two figures that share inputs, in the product of their units. */
export function covariance(a: Uncertain, b: Uncertain): number {
  let sum = 0;
  for (const [name, contribution] of a.contributions) sum += contribution * (b.contributions.get(name) ?? 0);
  return sum;
}

/** Σ ∂ₖ·xₖ over uncertain terms: the linear step that every propagation ends in. */
export function combine(
  value: number,
  terms: Iterable<readonly [partial: number, term: Uncertain]>,
): Uncertain {
  let contributions: Map<string, number> | undefined;
  for (const [partial, term] of terms) {
    if (partial === 0 || term.contributions.size === 0) continue;
    contributions ??= new Map();
    for (const [name, contribution] of term.contributions) {
      contributions.set(name, (contributions.get(name) ?? 0) + partial * contribution);
    }
  }
  return { value, contributions: contributions ?? NONE };
}

export type Values = Readonly<Record<string, number | readonly number[]>>;
export type UncertainValues = Readonly<Record<string, Uncertain | readonly Uncertain[]>>;

/**
 * Carries the uncertainty of the inputs through a function of plain numbers.
 *
 * @param compute   numbers in, numbers out, all SI; may throw where it is not defined
 * @param inputs    single figures or lists of figures, by name
 * @param partials  exact partial derivatives by output, input and (for a list) position; where it is absent they
 *                  are found by central differences with a step well inside the input's own uncertainty
 * @returns         every output with its contributions
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
  const outputs = compute(values);
  const terms: Record<string, [number, Uncertain][]> = {};
  for (const name of Object.keys(outputs)) terms[name] = [];

  const known = partials?.(values);
  for (const [name, input] of Object.entries(inputs)) {
    const items = isList(input) ? input : [input];
    items.forEach((item, index) => {
      if (item.contributions.size === 0) return;
      const slopes = known
        ? slopesFrom(known, name, isList(input) ? index : undefined)
        : slopesByDifference(compute, values, outputs, name, isList(input) ? index : undefined, item);
      for (const [output, slope] of Object.entries(slopes)) terms[output]?.push([slope, item]);
    });
  }
  return Object.fromEntries(
    Object.entries(outputs).map(([name, value]) => [name, combine(value, terms[name] ?? [])]),
  );
}

function isList(input: Uncertain | readonly Uncertain[]): input is readonly Uncertain[] {
  return Array.isArray(input);
}

function slopesFrom(
  known: Readonly<Record<string, Values>>,
  name: string,
  index: number | undefined,
): Record<string, number> {
  const slopes: Record<string, number> = {};
  for (const [output, byInput] of Object.entries(known)) {
    const slope = byInput[name];
    slopes[output] = typeof slope === 'number' ? slope : index === undefined ? 0 : (slope?.[index] ?? 0);
  }
  return slopes;
}

/** Step of a thousandth of the input's own uncertainty: small against curvature, large against rounding. */
const STEP_OF_UNCERTAINTY = 1e-3;
const SMALLEST_RELATIVE_STEP = 1e-7;

function slopesByDifference(
  compute: (values: Values) => Readonly<Record<string, number>>,
  values: Record<string, number | number[]>,
  centre: Readonly<Record<string, number>>,
  name: string,
  index: number | undefined,
  item: Uncertain,
): Record<string, number> {
  const step = Math.max(
    STEP_OF_UNCERTAINTY * standardUncertainty(item),
    SMALLEST_RELATIVE_STEP * Math.abs(item.value),
  );
  const at = (value: number): Readonly<Record<string, number>> | undefined => {
    const list = values[name];
    const moved = index !== undefined && Array.isArray(list) ? list.with(index, value) : value;
    try {
      return compute({ ...values, [name]: moved });
    } catch {
      return undefined; // outside the domain on this side: a one-sided difference serves
    }
  };
  const above = at(item.value + step);
  const below = at(item.value - step);
  const width = (above ? step : 0) + (below ? step : 0);
  const slopes: Record<string, number> = {};
  for (const output of Object.keys(centre)) {
    const high = (above ?? centre)[output] ?? 0;
    const low = (below ?? centre)[output] ?? 0;
    slopes[output] = width > 0 ? (high - low) / width : 0;
  }
  return slopes;
}
