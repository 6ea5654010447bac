/** Which facts are drawn at random, and from what: every fact that carries an uncertainty, by how that was stated. */
import { isKnown, type KnownQuantity } from '../notebook/index.ts';
import {
  bad,
  type DistributionShape,
  good,
  parseQuantity,
  type Result,
  type StatedAs,
  shapeOf,
} from '../quantity/index.ts';
import type { Origins } from './origin.ts';
import { contributionName } from './trace.ts';

export interface RandomInput {
  /** Best estimate and standard uncertainty, SI. */
  readonly value: number;
  readonly u: number;
  readonly shape: DistributionShape;
  /** Number of its stream of random numbers: what it draws depends on the seed, not on what else is drawn. */
  readonly stream: number;
}

/** By the name under which the fact contributes: a fact that stands under two names is drawn once. */
export type RandomInputs = ReadonlyMap<string, RandomInput>;

/** @returns the facts to draw, none where all are exact; a problem for an uncertainty that is none */
export function randomInputs(origins: Origins): Result<RandomInputs> {
  const inputs = new Map<string, RandomInput>();
  for (const origin of origins.values()) {
    if (origin.kind !== 'fact' || !isKnown(origin.field)) continue;
    const { field, spec } = origin;
    if (!(field.u >= 0 && Number.isFinite(field.u))) {
      return bad('calculation.bad-uncertainty', spec.title, { name: spec.title, value: field.u });
    }
    const key = contributionName(origin);
    if (field.u === 0 || inputs.has(key)) continue;
    const shape = shapeOf(statedAs(field, spec.display));
    inputs.set(key, { value: field.si, u: field.u, shape, stream: inputs.size });
  }
  return good(inputs);
}

/**
 * How the uncertainty of a field was stated: apart from the value, or with it, as ± (a bound) or in brackets. Where
 * nobody can say any more, the standard uncertainty itself is all that is known.
 *
 * @param unit  the unit in which the field is read
 */
export function statedAs({ uncertainty, typed }: KnownQuantity, unit: string): StatedAs {
  if (uncertainty) return uncertainty.kind;
  const read = parseQuantity(typed, unit, '');
  return (read.ok ? read.value.uncertainty?.kind : undefined) ?? 'standard';
}
