/**
 * Every calculation of the program by its id. Adding one means adding it to the list of its own folder; here the
 * lists meet, and a unit that cannot be read or an id that stands twice is found the moment the program starts.
 */
import { controlCalculations } from '../control/index.ts';
import { type Calculation, mechanicsCalculations } from '../mechanics/index.ts';
import { parseUnit, sentence } from '../quantity/index.ts';
import { marginCalculations } from './margin-of-safety.ts';

export const registry: ReadonlyMap<string, Calculation> = register([
  ...mechanicsCalculations,
  ...controlCalculations,
  ...marginCalculations,
]);

/** @throws Error for an id that stands twice or a unit that cannot be read: a bug of ours, not of the person. */
export function register(calculations: Iterable<Calculation>): ReadonlyMap<string, Calculation> {
  const byId = new Map<string, Calculation>();
  for (const calculation of calculations) {
    if (byId.has(calculation.id)) throw new Error(`two calculations are called “${calculation.id}”`);
    for (const [name, symbol] of Object.entries({ ...calculation.inputs, ...calculation.outputs })) {
      const unit = parseUnit(symbol.unit, `${calculation.id}, ${name}`);
      if (!unit.ok) throw new Error(sentence(unit.problem));
    }
    byId.set(calculation.id, calculation);
  }
  return byId;
}
