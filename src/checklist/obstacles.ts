/**
 * What a run stands at and what keeps it from going on. Everything is decided afresh from the record and the revision
 * as they are now; nothing is remembered from an earlier look.
 */
import {
  type ChecklistItem,
  type ChecklistPhase,
  fingerprint,
  type Revision,
  type Run,
} from '../notebook/index.ts';
import type { Problem } from '../quantity/index.ts';
import { openFaults } from './overrides.ts';

/** Something that keeps the run from going on, and the item that it is about, where it is about one. */
export interface Obstacle {
  readonly item?: string;
  readonly problem: Problem;
}

/** What the run amounts to now: `void` from the moment that the revision is no longer the one on the list. */
export function standing(run: Run, revision: Revision): Run['status'] {
  const underWay = run.status === 'checklist' || run.status === 'cleared';
  return underWay && isStale(run, revision) ? 'void' : run.status;
}

/**
 * Everything that keeps the run from being cleared, worst first: a changed revision, then item by item in order,
 * then later items that lack a figure (they could not be put under way). Empty means that it may be cleared.
 */
export function canClear(run: Run, revision: Revision): readonly Obstacle[] {
  if (run.status !== 'checklist') return [{ problem: closed(run) }];
  const obstacles: Obstacle[] = isStale(run, revision) ? [{ problem: stale(revision) }] : [];
  const before = itemsOf(run, 'before');
  if (before.length === 0) {
    obstacles.push({ problem: { code: 'checklist.empty', place: 'checklist', figures: {} } });
  }
  const later = run.items.filter((item) => item.phase !== 'before' && item.missing.length > 0);
  return [...obstacles, ...obstaclesIn(run, before), ...obstaclesIn(run, later).filter(asksForFigure)];
}

/**
 * Everything that keeps the run from being finished with this outcome. A passed run has every item met; a failed one
 * may have broken off under way, but is made safe: each item after it answered, its hold points met.
 */
export function canFinish(run: Run, outcome: 'passed' | 'failed'): readonly Obstacle[] {
  if (run.status !== 'cleared') return [{ problem: run.status === 'checklist' ? notCleared() : closed(run) }];
  const after = itemsOf(run, 'after');
  if (outcome === 'passed') return obstaclesIn(run, [...itemsOf(run, 'during'), ...after]);
  return obstaclesIn(
    run,
    after.filter((item) => isPending(run, item)),
  );
}

/**
 * The item to be put to the people next: the first in order that is not met, of the phase that the run is in; after
 * the phase “during” come the items of making safe. Undefined where there is nothing more to answer.
 */
export function nextItem(run: Run): ChecklistItem | undefined {
  const phases: Readonly<Record<Run['status'], readonly ChecklistPhase[]>> = {
    checklist: ['before'],
    cleared: ['during', 'after'],
    aborted: ['after'],
    finished: [],
    void: [],
  };
  return phases[run.status].flatMap((phase) => itemsOf(run, phase)).find((item) => isPending(run, item));
}

/** What is found while making safe is written down and left at that; only a hold point has to be met there. */
function isPending(run: Run, item: ChecklistItem): boolean {
  const isWrittenDown = item.phase === 'after' && !item.hold && run.answers[item.id] !== undefined;
  return !isWrittenDown && openFaults(run, item).length > 0;
}

export function itemsOf(run: Run, phase: ChecklistPhase): readonly ChecklistItem[] {
  return run.items.filter((item) => item.phase === phase);
}

function obstaclesIn(run: Run, items: readonly ChecklistItem[]): readonly Obstacle[] {
  return items.flatMap((item) => openFaults(run, item).map((problem) => ({ item: item.id, problem })));
}

function asksForFigure({ problem }: Obstacle): boolean {
  return problem.code === 'checklist.missing-figure';
}

export function isStale(run: Run, revision: Revision): boolean {
  return fingerprint(revision) !== run.fingerprint;
}

export function stale(revision: Revision): Problem {
  return { code: 'checklist.stale', place: 'checklist', figures: { letter: revision.letter } };
}

export function closed(run: Run): Problem {
  const words: Readonly<Record<Run['status'], string>> = {
    checklist: 'at its checklist',
    cleared: 'cleared and under way',
    finished: 'finished',
    aborted: 'broken off',
    void: 'void',
  };
  return { code: 'checklist.closed', place: 'run', figures: { status: words[run.status] } };
}

export function notCleared(place = 'run'): Problem {
  return { code: 'checklist.not-cleared', place, figures: {} };
}
