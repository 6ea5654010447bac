/**
 * Every physical input of a prototype and a revision by name, apart from the rows of the mass table and the
 * sections of the rotor: what the pages build their forms from, and where every calculation begins.
 */
import type { Revision } from '../notebook/index.ts';
import type { DriveFamily, FactSpec } from './fact-row.ts';
import { hardwareFacts } from './hardware-facts.ts';
import { requirementFacts } from './requirement-facts.ts';

export type { DriveFamily, FactPage, FactSpec } from './fact-row.ts';

/** The one list of every physical input field apart from the mass table and the rotor's sections. */
export const factSpecs: readonly FactSpec[] = [...requirementFacts, ...hardwareFacts];

/** Arm or slide; undefined while nobody has said how the ballast moves. */
export function driveFamily(revision: Pick<Revision, 'ballast'>): DriveFamily | undefined {
  const kind = revision.ballast?.kind;
  return kind === undefined ? undefined : kind === 'slide' ? 'slide' : 'arm';
}

/** Whether the field belongs to the kind of ballast drive that the revision has. */
export function factApplies(spec: FactSpec, revision: Pick<Revision, 'ballast'>): boolean {
  return spec.drive === undefined || spec.drive === driveFamily(revision);
}

/** The field with the units that the revision's ballast drive gives it. An undescribed drive reads as an arm. */
export function resolveFact(spec: FactSpec, revision: Pick<Revision, 'ballast'>): FactSpec {
  return spec.onSlide && driveFamily(revision) === 'slide' ? { ...spec, ...spec.onSlide } : spec;
}
