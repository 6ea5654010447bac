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

/**
 * An independent input with its standard uncertainty (same unit as the value). Two inputs of one name are one input.
 *
 * @throws RangeError  for an uncertainty that is negative or no finite number: taken for exact it would be a lie
 */
export function independent(name: string, value: number, standardUncertainty: number): Uncertain {
  if (!(standardUncertainty >= 0 && Number.isFinite(standardUncertainty))) {
    throw new RangeError(`the standard uncertainty of ${name} is ${standardUncertainty}`);
  }
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
