/** A prototype's requirements and a revision's measured facts, turned into figures, margins and notices. Pure. */
import type { Prototype, Revision } from '../notebook/index.ts';
import { originsOf } from './binding.ts';
import { evaluation } from './evaluate.ts';
import type { Assessment, Figure } from './figure.ts';
import { marginOf, marginSpecsOf } from './margin.ts';
import { noticesOf } from './notices.ts';

/** Remembered by identity: records are immutable, so the same two give the same assessment for good. */
const known = new WeakMap<Revision, WeakMap<Prototype, Assessment>>();

/**
 * Every figure of the revision that its facts allow, and those that they do not allow with what is missing; the
 * margins that exist; and what the data say about themselves. The same two records give the same object.
 */
export function assess(prototype: Prototype, revision: Revision): Assessment {
  const byPrototype = known.get(revision) ?? new WeakMap<Prototype, Assessment>();
  known.set(revision, byPrototype);
  const before = byPrototype.get(prototype);
  if (before) return before;
  const made = assessAfresh(prototype, revision);
  byPrototype.set(prototype, made);
  return made;
}

function assessAfresh(prototype: Prototype, revision: Revision): Assessment {
  const origins = originsOf(prototype, revision);
  const { figure } = evaluation(origins);
  const figures = new Map<string, Figure>();
  for (const name of origins.keys()) {
    const made = figure(name);
    if (made) figures.set(name, made);
  }
  const margins = marginSpecsOf(prototype, revision).map((spec) => marginOf(spec, figure));
  return { figures, margins, notices: noticesOf(prototype, revision, figures) };
}
