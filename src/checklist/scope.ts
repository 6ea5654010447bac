/**
 * What the expressions of a template may use for one revision: its figures by name, and its equipment as noughts
 * and ones. A figure that the revision should have but does not give yet is missing from `known` and found in
 * `figures`, so that an item which needs it can ask for it instead of vanishing.
 */
import { type Assessment, type Figure, scopeOf } from '../margins/index.ts';
import type { Prototype, Revision } from '../notebook/index.ts';
import { dimension, exact, type Scope, type ScopeValue } from '../quantity/index.ts';

/** Equipment that conditions may ask for; 1 where the revision has it, else 0. */
export const equipmentNames = [
  'has_radio',
  'has_independent_kill',
  'is_driven',
  'has_rotor',
  'has_gimbal',
  'has_ballast',
  'has_pack',
  'is_arm',
] as const;
export type EquipmentName = (typeof equipmentNames)[number];

/** Names that stand for words, not figures; only as `{{revision_letter}}` in a text. */
export const wordNames = ['prototype_name', 'revision_letter'] as const;
export type WordName = (typeof wordNames)[number];

export interface TemplateScope {
  /** Everything that is known, by name. */
  readonly known: Scope;
  /** Every figure that belongs to the revision, known or not. */
  readonly figures: ReadonlyMap<string, Figure>;
  readonly words: Readonly<Record<WordName, string>>;
}

export function scopeFor(prototype: Prototype, revision: Revision, assessment: Assessment): TemplateScope {
  const known = new Map<string, ScopeValue>(scopeOf(assessment));
  for (const [name, fitted] of Object.entries(equipmentOf(revision))) {
    known.set(name, { value: exact(fitted ? 1 : 0), dimension: dimension('1') });
  }
  return {
    known,
    figures: assessment.figures,
    words: { prototype_name: prototype.name, revision_letter: revision.letter },
  };
}

/** A part in the mass table counts as equipment even where its own page is still blank: better one item too many. */
function equipmentOf(revision: Revision): Readonly<Record<EquipmentName, boolean>> {
  const roles = new Set(Object.values(revision.parts).map((part) => part.role));
  return {
    has_radio: revision.fittings.radio,
    has_independent_kill: revision.fittings.independentKill,
    is_driven: revision.fittings.driven,
    has_rotor: revision.rotor !== undefined || roles.has('rotor'),
    has_gimbal: revision.gimbal !== undefined,
    has_ballast: revision.ballast !== undefined || roles.has('ballast'),
    has_pack: revision.pack !== undefined || roles.has('pack'),
    is_arm: revision.ballast !== undefined && revision.ballast.kind !== 'slide',
  };
}
