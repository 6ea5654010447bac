/**
 * The calculations as the tables of checks use them: by their registered ids, through the same door as the page and the
 * command line. Which ids a check went through is noted, so that each calculation can be shown with the checks that
 * hold it.
 */
import { type Calculation, mechanicsCalculations } from '../../../src/mechanics/index.ts';
import type { PublishedCheck } from './published-check.ts';

const byId = new Map(mechanicsCalculations.map((calculation) => [calculation.id, calculation]));
const used = new Set<string>();

type Inputs = Calculation['example'];

/** One output of a calculation as a function of its inputs, all in SI or in any one consistent system of units. */
export function through(id: string, output: string): (inputs: Inputs) => number {
  const calculation = byId.get(id);
  if (!calculation?.outputs[output]) throw new Error(`no calculation ${id} with an output ${output}`);
  return (inputs) => {
    used.add(id);
    return calculation.compute(inputs)[output] ?? Number.NaN;
  };
}

/** The figure of a check and the ids of the calculations that it went through. */
export function traced(check: PublishedCheck): { computed: number; ids: readonly string[] } {
  used.clear();
  const computed = check.computed();
  return { computed, ids: [...used] };
}
