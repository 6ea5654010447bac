/**
 * A run's checklist as a state machine over the run record. Nothing here writes: each step gives the change to be
 * made, or the reason why it may not be made. The rules:
 *
 * - nothing beyond a hold point is answered until the hold point is met (within its phase);
 * - the run is cleared only when every item before it is met, on the revision that the list was made from;
 * - once the revision differs, only making safe goes on; clearing it again takes a new run;
 * - stopping is possible at every moment and asks for nothing but a name.
 */
import {
  type Change,
  type ChecklistAnswer,
  type ChecklistItem,
  fingerprint,
  type Json,
  type KnownQuantity,
  type Revision,
  type Run,
  set,
  type TestCard,
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

  const { at, initials, second, reading, choice, note } = given;
  const answer: ChecklistAnswer = {
    at,
    initials: initials.trim(),
    ...(second === undefined || second.trim() === '' ? {} : { second: second.trim() }),
    ...(reading === undefined || !item.measured ? {} : { reading }),
    ...(choice === undefined || !item.choices ? {} : { choice }),
    ...(note === undefined || note.trim() === '' ? {} : { note: note.trim() }),
    met: given.met ?? true,
  };
  const faults = faultsOf(item, answer);
  const unreadable = faults.find(({ code }) => REFUSED.has(code));
  if (unreadable) return { ok: false, problem: unreadable };
  const met = answer.met && faults.length === 0;
  return good(set('run', id, { [`answers/${item.id}`]: { ...answer, met } as Json }));
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

/** What a new run is made from. */
export interface Beginning {
  readonly cardId: string;
  readonly card: TestCard;
  readonly revision: Revision;
  readonly items: readonly ChecklistItem[];
  /** Counts up within the prototype. */
  readonly number: number;
  readonly by: string;
  readonly at: string;
}

/** The record of a new run. The card has to be issued, on the revision as it is now. */
export function beginRun({ cardId, card, revision, items, number, by, at }: Beginning): Result<Run> {
  if (card.status !== 'issued') return bad('card.not-issued', card.title);
  const now = fingerprint(revision);
  if (card.fingerprint !== now) return bad('card.stale', card.title, { letter: revision.letter });
  if (items.every((item) => item.phase !== 'before')) return bad('checklist.empty', card.title);
  return good({
    prototype: card.prototype,
    revision: card.revision,
    card: cardId,
    number,
    startedAt: at,
    startedBy: by,
    fingerprint: now,
    items: [...items],
    answers: {},
    status: 'checklist',
    summary: '',
    readings: {},
    notes: {},
    attachments: {},
  });
}

/** Faults with which an answer is not even recorded: it would say nothing. The others are recorded as not met. */
const REFUSED: ReadonlySet<Problem['code']> = new Set([
  'checklist.initials',
  'checklist.second-person',
  'checklist.missing-reading',
  'checklist.unknown-choice',
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
    .find((earlier) => earlier.hold && faultsOf(earlier, run.answers[earlier.id]).length > 0);
  return hold && { code: 'checklist.held', place: item.text, figures: { hold: hold.text } };
}

/** A hold point that was answered as not met is not turned into a met one without a word. */
function unspokenRepeat(run: Run, item: ChecklistItem, given: Given): Problem | undefined {
  const earlier = run.answers[item.id];
  if (!item.hold || earlier === undefined || faultsOf(item, earlier).length === 0) return undefined;
  return (given.note ?? '').trim() === ''
    ? { code: 'checklist.note-needed', place: item.text, figures: {} }
    : undefined;
}

/** The record has room for eight characters. */
const LONGEST_INITIALS = 8;

function noName(item: ChecklistItem, { initials, second = '' }: Given): Problem | undefined {
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
