/**
 * A run's checklist as a state machine over the run record. Nothing here writes: each step gives the change to be
 * made, or the reason why it may not be made. The rules:
 *
 * - nothing beyond a hold point is answered until the hold point is met (within its phase);
 * - the run is cleared only when every item before it is met, on the revision that the list was made from;
 * - once the revision differs, only making safe goes on; clearing it again takes a new run;
 * - a timed wait is answered when its time has passed, by a clock that nobody can set;
 * - what stands in the way is gone past only by a named person, with a reason, on the record of the run;
 * - stopping is possible at every moment and asks for nothing but a name.
 */
import {
  type Change,
  type ChecklistAnswer,
  type ChecklistItem,
  type Json,
  type KnownQuantity,
  type Revision,
  type Run,
  set,
} from '../notebook/index.ts';
import { bad, good, type Problem, type Result, sentence } from '../quantity/index.ts';
import { faultsOf, plainInitials } from './answer.ts';
import {
  canClear,
  canFinish,
  closed,
  isStale,
  itemsOf,
  notCleared,
  type Obstacle,
  stale,
  standing,
} from './obstacles.ts';
import { type Decision, type Override, openFaults, overrideOf, recordOverrides } from './overrides.ts';
import { type Clock, startOfWait, waitedSince } from './wait.ts';

/** What a person gives in answer to an item. */
export interface Given {
  readonly initials: string;
  /** RFC 3339. */
  readonly at: string;
  readonly second?: string;
  readonly reading?: KnownQuantity;
  readonly choice?: string;
  /** False where a tick, a hold point or a two-person item is answered “no”. Taken as true when left out. */
  readonly met?: boolean;
  readonly note?: string;
  /** SHA-256 of an attachment of the run: the picture that a photo item asks for. */
  readonly photo?: string;
  /** Read at the moment of the answer; a timed wait cannot be answered without it. */
  readonly clock?: Clock;
}

/** The change that records an answer; out-of-limit readings and stopping choices are recorded too, as not met. */
export function answerItem(
  id: string,
  run: Run,
  revision: Revision,
  itemId: string,
  given: Given,
): Result<Change> {
  const item = run.items.find((candidate) => candidate.id === itemId);
  if (item === undefined) return bad('checklist.unknown-item', 'checklist', { id: itemId });
  const refusal =
    whyNotNow(run, revision, item) ??
    heldBy(run, item) ??
    unspokenRepeat(run, item, given) ??
    noName(item, given);
  if (refusal) return { ok: false, problem: refusal };

  const { at, initials, second, reading, choice, note, photo } = given;
  const waited =
    item.kind === 'wait' && given.met !== false ? waitedSince(item, run, at, given.clock) : undefined;
  if (waited?.ok === false) return waited;
  const answer: ChecklistAnswer = {
    at,
    initials: initials.trim(),
    ...(second === undefined || second.trim() === '' ? {} : { second: second.trim() }),
    ...(reading === undefined || !item.measured ? {} : { reading }),
    ...(choice === undefined || !item.choices ? {} : { choice }),
    ...(photo === undefined || item.kind !== 'photo' ? {} : { photo }),
    ...(waited === undefined ? {} : { waited: waited.value }),
    ...(note === undefined || note.trim() === '' ? {} : { note: note.trim() }),
    met: given.met ?? true,
  };
  const faults = faultsOf(item, answer, run);
  const unreadable = faults.find(({ code }) => REFUSED.has(code));
  if (unreadable) return { ok: false, problem: unreadable };
  const met = answer.met && faults.length === 0;
  return good(set('run', id, { [`answers/${item.id}`]: { ...answer, met } as Json }));
}

/**
 * The change that starts the time of a wait, or starts it again: after the window was closed in the middle, its time
 * cannot be told.
 */
export function beginWait(
  id: string,
  run: Run,
  revision: Revision,
  itemId: string,
  given: Pick<Given, 'initials' | 'at'> & { readonly clock: Clock },
): Result<Change> {
  const item = run.items.find((candidate) => candidate.id === itemId);
  if (item === undefined) return bad('checklist.unknown-item', 'checklist', { id: itemId });
  const { initials, at, clock } = given;
  const isOver = item.kind !== 'wait' || openFaults(run, item).length === 0;
  const idle: Problem | undefined = isOver
    ? { code: 'checklist.no-wait', place: item.text, figures: {} }
    : undefined;
  const refusal = idle ?? whyNotNow(run, revision, item) ?? heldBy(run, item) ?? noName(item, given);
  if (refusal) return { ok: false, problem: refusal };
  return good(startOfWait(id, item, initials, at, clock));
}

/**
 * The change by which a named person goes past an item as it stands, for a reason. It covers the faults that the item
 * has now and no others, and is printed in the report. A changed revision cannot be gone past, nor an earlier hold
 * point that is neither met nor itself gone past.
 */
export function overrideItem(
  id: string,
  run: Run,
  revision: Revision,
  itemId: string,
  decision: Decision,
): Result<Change> {
  const item = run.items.find((candidate) => candidate.id === itemId);
  if (item === undefined) return bad('checklist.unknown-item', 'checklist', { id: itemId });
  const refusal = whyNotNow(run, revision, item) ?? heldBy(run, item);
  if (refusal) return { ok: false, problem: refusal };
  const faults = openFaults(run, item);
  if (faults.length === 0) return bad('override.nothing', item.text);
  const overrides: Override[] = [];
  for (const fault of faults) {
    const override = overrideOf(fault, item.id, decision);
    if (!override.ok) return override;
    overrides.push(override.value);
  }
  return good(recordOverrides(id, run, overrides));
}

/** The change that clears the run, by the initials of the person who leads. */
export function clear(id: string, run: Run, revision: Revision, by: string, at: string): Result<Change> {
  if (plainInitials(by) === '') return bad('checklist.initials', 'clearance');
  const refusal = firstOf(canClear(run, revision), 'clearance');
  if (refusal) return { ok: false, problem: refusal };
  return good(set('run', id, { status: 'cleared', clearedAt: at, clearedBy: by.trim() }));
}

/** The change that ends a cleared run that went to its end. */
export function finish(id: string, run: Run, outcome: 'passed' | 'failed', at: string): Result<Change> {
  const refusal = firstOf(canFinish(run, outcome), 'end of the run');
  if (refusal) return { ok: false, problem: refusal };
  return good(set('run', id, { status: 'finished', finishedAt: at, outcome }));
}

/**
 * The change that breaks the run off, before or under way. Asks for nothing but a name, whatever is open; the items
 * of making safe can still be answered.
 */
export function abort(id: string, run: Run, reason: string, by: string, at: string): Result<Change> {
  if (run.status !== 'checklist' && run.status !== 'cleared') return { ok: false, problem: closed(run) };
  return good(
    set('run', id, {
      status: 'aborted',
      finishedAt: at,
      outcome: 'aborted',
      'notes/abort': { at, author: by, text: reason } as Json,
    }),
  );
}

/** The change that marks a checklist as void because its revision has changed; refused while it has not. */
export function declareVoid(id: string, run: Run, revision: Revision, at: string): Result<Change> {
  if (standing(run, revision) !== 'void' || run.status === 'void') return { ok: false, problem: closed(run) };
  return good(set('run', id, { status: 'void', finishedAt: at }));
}

/** Faults with which an answer is not even recorded: it would say nothing. The others are recorded as not met. */
const REFUSED: ReadonlySet<Problem['code']> = new Set([
  'checklist.initials',
  'checklist.second-person',
  'checklist.missing-reading',
  'checklist.unknown-choice',
  'checklist.missing-photo',
]);

function whyNotNow(run: Run, revision: Revision, item: ChecklistItem): Problem | undefined {
  if (item.phase === 'after') {
    if (run.status === 'checklist') return notCleared(item.text);
    return run.status === 'cleared' || (run.status === 'aborted' && run.signedAt === undefined)
      ? undefined
      : closed(run);
  }
  if (item.phase === 'during' && run.status === 'checklist') return notCleared(item.text);
  const wanted = item.phase === 'before' ? 'checklist' : 'cleared';
  if (run.status !== wanted) return closed(run);
  return isStale(run, revision) ? stale(revision) : undefined;
}

/** The hold point before the item, in its phase, that is not met. */
function heldBy(run: Run, item: ChecklistItem): Problem | undefined {
  const phase = itemsOf(run, item.phase);
  const hold = phase
    .slice(0, phase.indexOf(item))
    .find((earlier) => earlier.hold && openFaults(run, earlier).length > 0);
  return hold && { code: 'checklist.held', place: item.text, figures: { hold: hold.text } };
}

/** A hold point that was answered as not met is not turned into a met one without a word. */
function unspokenRepeat(run: Run, item: ChecklistItem, given: Given): Problem | undefined {
  const earlier = run.answers[item.id];
  if (!item.hold || earlier === undefined || faultsOf(item, earlier, run).length === 0) return undefined;
  return (given.note ?? '').trim() === ''
    ? { code: 'checklist.note-needed', place: item.text, figures: {} }
    : undefined;
}

/** The record has room for eight characters. */
const LONGEST_INITIALS = 8;

function noName(
  item: ChecklistItem,
  { initials, second = '' }: Pick<Given, 'initials' | 'second'>,
): Problem | undefined {
  const tooLong = [initials, second].some((text) => text.trim().length > LONGEST_INITIALS);
  return tooLong || plainInitials(initials) === ''
    ? { code: 'checklist.initials', place: item.text, figures: {} }
    : undefined;
}

function firstOf(obstacles: readonly Obstacle[], place: string): Problem | undefined {
  const [first] = obstacles;
  if (first === undefined) return undefined;
  if (obstacles.length === 1) return first.problem;
  return {
    code: 'checklist.not-clear',
    place,
    figures: { count: obstacles.length, first: sentence(first.problem) },
  };
}
