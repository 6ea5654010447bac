/**
 * How a rung of the ladder stands on a revision, by the runs that count for it: the runs of its cards on that revision
 * as it is now, else the run of an earlier revision that somebody has argued to count.
 */
import type { NotebookState, Revision, Run, TestCard } from '../notebook/index.ts';
import { fingerprint } from '../notebook/index.ts';
import type { Subject } from './card.ts';
import { conditionIn } from './evaluate.ts';
import type { Ladder, Rung } from './ladder-template.ts';
import { standing } from './obstacles.ts';
import { scopeFor } from './scope.ts';

/**
 * `planned`: no card, or one that cannot be run yet. `ready`: a card is issued and nothing stands in its way. `run`: a
 * run is under way, or has passed fewer times than asked. `void`: what was run is not the revision as it is now.
 */
export type RungStanding = 'planned' | 'ready' | 'run' | 'passed' | 'failed' | 'aborted' | 'void';

export interface RungResult {
  readonly standing: Exclude<RungStanding, 'ready'>;
  /** Cards of the rung on this revision, by number. */
  readonly cards: readonly string[];
  /** Its runs on this revision, by number. */
  readonly runs: readonly string[];
  /** Passed runs since the last that did not pass. */
  readonly passesInRow: number;
  /** The card on which an earlier run was argued to count, where the rung stands by that. */
  readonly carriedOn?: string;
}

type Records = Pick<NotebookState, 'revision' | 'card' | 'run'>;

/** The ladder that is meant for the vehicle: the first whose condition holds. */
export function ladderFor(subject: Subject, ladders: readonly Ladder[]): Ladder | undefined {
  const scope = scopeFor(subject.prototype, subject.revision, subject.assessment);
  return ladders.find(({ when }) => {
    const meant = conditionIn(when, scope);
    return meant.state === 'known' && meant.value;
  });
}

/** The rungs for this vehicle, in order. One whose condition cannot be decided stays. */
export function rungsFor(ladder: Ladder, subject: Subject): readonly Rung[] {
  const scope = scopeFor(subject.prototype, subject.revision, subject.assessment);
  return ladder.rungs.filter(({ when }) => {
    const applies = when === undefined ? undefined : conditionIn(when, scope);
    return applies?.state !== 'known' || applies.value;
  });
}

/** How the rung stands on the revision. */
export function rungResult(state: Records, rung: Rung, revisionId: string): RungResult {
  const revision = state.revision[revisionId];
  const cards = cardsOf(state, rung, revisionId);
  const runs = runsOf(state, rung, revisionId);
  const own = revision ? ownResult(runs, revision, rung) : { standing: 'planned' as const, passesInRow: 0 };
  const common = { cards: cards.map(([id]) => id), runs: runs.map(([id]) => id) };
  const carrying =
    own.standing === 'planned' || own.standing === 'void'
      ? cards.find(([, card]) => whyNotCarried(state, card, rung, card.carriedFrom?.run) === undefined)
      : undefined;
  if (carrying === undefined) return { ...common, ...own };
  return { ...common, standing: 'passed', passesInRow: rung.passes, carriedOn: carrying[0] };
}

/**
 * Why a run of another revision cannot count for this card, in words; undefined where it can. It has to have been run
 * on an ancestor of the revision, by a card of the same rung, and the rung has to stand there as passed by its own runs.
 */
export function whyNotCarried(
  state: Records,
  card: TestCard,
  rung: Rung,
  runId: string | undefined,
): string | undefined {
  const run = runId === undefined ? undefined : state.run[runId];
  if (run === undefined) return 'there is no such run';
  if (run.prototype !== card.prototype) return 'it was made with another prototype';
  if (!rung.cards.includes(state.card[run.card]?.template ?? '')) return 'it is of another test';
  if (run.outcome !== 'passed') return 'it did not pass';
  if (!ancestorsOf(state, card.revision).includes(run.revision)) {
    return 'its revision is not one that this revision was made from';
  }
  const before = state.revision[run.revision];
  if (before === undefined || run.fingerprint !== fingerprint(before)) {
    return 'its revision has been changed since';
  }
  const there = ownResult(runsOf(state, rung, run.revision), before, rung);
  return there.standing === 'passed' ? undefined : `the test stands there as ${inWords(there.standing)}`;
}

/** The standing as it stands in a sentence: “… is run, not yet passed”. */
export function inWords(standing: RungStanding): string {
  return standing === 'planned' || standing === 'ready'
    ? 'not run'
    : standing === 'run'
      ? 'begun, not passed yet'
      : standing;
}

function ownResult(
  runs: readonly (readonly [string, Run])[],
  revision: Revision,
  rung: Rung,
): { readonly standing: RungResult['standing']; readonly passesInRow: number } {
  if (runs.length === 0) return { standing: 'planned', passesInRow: 0 };
  const told = runs.flatMap(([, run]) => standingOfRun(run, revision) ?? []);
  const last = told.at(-1);
  // broken off before the clearance, or on another state of the revision: nothing was tested
  if (last === undefined) {
    const brokenOff = runs.at(-1)?.[1];
    return {
      standing:
        brokenOff && brokenOff.status === 'aborted' && isCurrent(brokenOff, revision) ? 'aborted' : 'void',
      passesInRow: 0,
    };
  }
  const lastOther = told.findLastIndex((result) => result !== 'passed');
  const passesInRow = told.length - 1 - lastOther;
  return { standing: last === 'passed' && passesInRow < rung.passes ? 'run' : last, passesInRow };
}

/** What a run says about its test; undefined where it tested nothing of the revision as it is now. */
export function standingOfRun(
  run: Run,
  revision: Revision,
): 'run' | 'passed' | 'failed' | 'aborted' | undefined {
  if (!isCurrent(run, revision)) return undefined;
  switch (standing(run, revision)) {
    case 'checklist':
    case 'cleared':
      return 'run';
    case 'finished':
      return run.outcome ?? 'run';
    case 'aborted':
      return run.clearedAt === undefined ? undefined : 'aborted';
    case 'void':
      return undefined;
  }
}

function isCurrent(run: Run, revision: Revision): boolean {
  return run.fingerprint === fingerprint(revision);
}

function cardsOf(state: Records, rung: Rung, revisionId: string): readonly (readonly [string, TestCard])[] {
  return Object.entries(state.card)
    .filter(([, card]) => card.revision === revisionId && rung.cards.includes(card.template))
    .toSorted(([, a], [, b]) => a.number - b.number);
}

function runsOf(state: Records, rung: Rung, revisionId: string): readonly (readonly [string, Run])[] {
  return Object.entries(state.run)
    .filter(
      ([, run]) => run.revision === revisionId && rung.cards.includes(state.card[run.card]?.template ?? ''),
    )
    .toSorted(([, a], [, b]) => a.number - b.number);
}

/** The revisions that this one was made from, nearest first. A circle of them, which no window makes, ends the walk. */
function ancestorsOf(state: Records, revisionId: string): readonly string[] {
  const ancestors: string[] = [];
  let here = state.revision[revisionId]?.from;
  while (here !== undefined && !ancestors.includes(here)) {
    ancestors.push(here);
    here = state.revision[here]?.from;
  }
  return ancestors;
}
