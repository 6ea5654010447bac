/**
 * Records that two people's changes cannot simply be put together in: theirs goes on under a name of its own. What was
 * issued stays exactly what its author issued.
 */
import type { Problem } from '../quantity/index.ts';
import type { Change, Json } from './change.ts';
import type { RecordKind } from './kinds.ts';
import { changedRecords, type Fork, origin, recordOf } from './merge-fork.ts';
import { freeId, type Renaming, renamed } from './merge-names.ts';
import { sameJson } from './merge-paths.ts';

/** What becomes of records that cannot simply be combined, decided before anything is. */
export interface Parting {
  readonly renaming: Renaming;
  /** Origins that are not added, because ours holds the very same already. */
  readonly skipped: ReadonlySet<string>;
  /** Records that go on under a new name: made again from theirs before its first new change. */
  readonly branches: readonly Change[];
  readonly notes: readonly Problem[];
}

const issuable: readonly RecordKind[] = ['revision', 'card'];

/** Records of one name with different content, and what was issued on one side and changed on the other. */
export function partWays({
  ours,
  news,
  own,
  base,
  oursNow,
  theirsNow,
  theirsBefore,
  renaming: known,
}: Fork): Parting {
  const renaming: Renaming = new Map(known);
  const skipped = new Set<string>();
  const branches: Change[] = [];
  const notes: Problem[] = [];
  const states = [oursNow, theirsNow];

  const created = new Map(
    ours.flatMap(({ change }) =>
      change.op === 'create' ? [[`${change.kind}/${change.id}`, change.value]] : [],
    ),
  );
  for (const entry of news) {
    const { change } = entry;
    const key = `${change.kind}/${change.id}`;
    if (change.op !== 'create' || !created.has(key) || renaming.has(key)) continue;
    if (sameJson(created.get(key), change.value)) skipped.add(origin(entry));
    else {
      const id = freeId(change.kind, change.id, states, renaming);
      renaming.set(key, id);
      notes.push({ code: 'merge.renamed', place: change.kind, figures: { was: change.id, id } });
    }
  }

  for (const { kind, id, entries } of changedRecords(news)) {
    if (!issuable.includes(kind)) continue;
    const here = renamed(renaming, kind, id);
    const touched = own.some(
      ({ change }) => change.op === 'set' && change.kind === kind && change.id === here,
    );
    const mine = recordOf(oursNow, kind, here);
    const their = recordOf(theirsNow, kind, id);
    const isIssued = mine?.status === 'issued' || their?.status === 'issued';
    if (!touched || !isIssued || recordOf(base, kind, id)?.status === 'issued') continue;
    const letter = String(mine?.letter ?? mine?.number ?? here);
    if (sameJson(withoutIssue(mine), withoutIssue(their))) {
      for (const entry of entries) skipped.add(origin(entry));
      notes.push({ code: 'merge.issued-twice', place: kind, figures: { letter } });
      continue;
    }
    const before = recordOf(theirsBefore, kind, id);
    if (before === undefined) continue; // made by them: nothing of ours is in the way
    const branch = freeId(kind, id, states, renaming);
    renaming.set(`${kind}/${id}`, branch);
    branches.push({
      op: 'create',
      kind,
      id: branch,
      value: kind === 'revision' ? { ...before, from: here } : before,
    });
    notes.push({ code: 'merge.issued-apart', place: kind, figures: { letter } });
  }
  return { renaming, skipped, branches, notes };
}

function withoutIssue(record: Readonly<Record<string, Json | undefined>> | undefined): unknown {
  const { issuedAt: _at, issuedBy: _by, ...rest } = record ?? {};
  return rest;
}
