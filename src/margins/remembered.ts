/**
 * Costly calculations are carried out once for the same inputs: typing the name of a part, or the capacity of the
 * pack, does not find the margins of the loop again. The functions stay pure; only their last results are kept.
 */
import type { Calculation } from '../mechanics/index.ts';

export type Carrier = Pick<Calculation, 'compute' | 'partials'>;

type Inputs = Parameters<Calculation['compute']>[0];

/** Calculations that take milliseconds rather than microseconds. */
const COSTLY: ReadonlySet<string> = new Set(['loop.margins']);
/** Enough for two revisions side by side and the typing in one of them. */
const KEPT = 8;

export function isCostly(calculation: string): boolean {
  return COSTLY.has(calculation);
}

const carriers = new Map<Calculation, Carrier>();

/** The calculation, or for a costly one the same with a memory. */
export function remembered(calculation: Calculation): Carrier {
  if (!isCostly(calculation.id)) return calculation;
  const known = carriers.get(calculation);
  if (known) return known;
  const made: Carrier = {
    compute: withMemory(calculation.compute),
    ...(calculation.partials ? { partials: withMemory(calculation.partials) } : {}),
  };
  carriers.set(calculation, made);
  return made;
}

/** Errors are not kept: they are found as fast as they were the first time, and carry their own figures. */
export function withMemory<T>(compute: (inputs: Inputs) => T): (inputs: Inputs) => T {
  const results = new Map<string, T>();
  return (inputs) => {
    const key = keyOf(inputs);
    const known = results.get(key);
    if (known !== undefined) return known;
    const made = compute(inputs);
    const [oldest] = results.keys();
    if (results.size >= KEPT && oldest !== undefined) results.delete(oldest);
    results.set(key, made);
    return made;
  };
}

/** Numbers are written so that equal text means equal numbers. */
function keyOf(inputs: Inputs): string {
  return Object.keys(inputs)
    .sort()
    .map((name) => `${name}=${inputs[name]}`)
    .join(';');
}
