/**
 * Going on although something stands in the way: never in silence. An override names who decided and why, and covers
 * exactly what it says: the problem in its words and figures as they stood. Read another value, and it covers nothing.
 */
import { type Change, type ChecklistItem, type Json, type Run, set } from '../notebook/index.ts';
import { bad, good, type Problem, type Result, sentence } from '../quantity/index.ts';
import { faultsOf } from './answer.ts';

/** What was gone past, by whom and why, as the run keeps it. */
export type Override = NonNullable<Run['overrides']>[string];

/** A person's decision to go on. */
export interface Decision {
  readonly name: string;
  readonly reason: string;
  /** RFC 3339. */
  readonly at: string;
}

/** The record of a decision; refused without a name and a reason in letters. */
export function overrideOf(problem: Problem, subject: string, decision: Decision): Result<Override> {
  const name = decision.name.trim();
  const reason = decision.reason.trim();
  if (![name, reason].every((text) => /\p{L}/u.test(text))) return bad('override.unsigned', problem.place);
  return good({ code: problem.code, subject, what: sentence(problem), name, reason, at: decision.at });
}

/** Whether the problem, as it stands now, was gone past by somebody. An unsigned record covers nothing. */
export function isOverridden(run: Run, subject: string, problem: Problem): boolean {
  const what = sentence(problem);
  return Object.values(run.overrides ?? {}).some(
    (override) =>
      override.code === problem.code &&
      override.subject === subject &&
      override.what === what &&
      [override.name, override.reason].every((text) => /\p{L}/u.test(text)),
  );
}

/** What keeps the item from being met, less what was gone past. */
export function openFaults(run: Run, item: ChecklistItem): readonly Problem[] {
  return faultsOf(item, run.answers[item.id], run).filter((problem) => !isOverridden(run, item.id, problem));
}

/** The change that records decisions on a run beside those that are there. */
export function recordOverrides(id: string, run: Run, overrides: readonly Override[]): Change {
  return set('run', id, numbered(overrides, Object.keys(run.overrides ?? {}).length) as Record<string, Json>);
}

function numbered(overrides: readonly Override[], from: number): Record<string, Override> {
  return Object.fromEntries(
    overrides.map((override, index) => [`overrides/${keyOf(from + index + 1)}`, override]),
  );
}

/** Overrides of a run that is not on record yet. */
export function asRecord(overrides: readonly Override[]): Record<string, Override> {
  return Object.fromEntries(overrides.map((override, index) => [keyOf(index + 1), override]));
}

function keyOf(number: number): string {
  return `override-${number}`;
}
