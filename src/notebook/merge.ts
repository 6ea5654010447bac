/**
 * Two people continued copies of one notebook: what has to be added to ours so that it holds both, and what only a
 * person can decide. Ours stays as it is; theirs comes after it, each change with its author, its time and its origin,
 * so that nothing of either is lost and the same change is never taken twice.
 */
import type { Problem } from '../quantity/index.ts';
import type { Change, JournalEntry, Json } from './change.ts';
import type { RecordKind } from './kinds.ts';
import {
  type ChainedEntry,
  changedRecords,
  commonLength,
  type Fork,
  forkOf,
  origin,
  recordOf,
} from './merge-fork.ts';
import { renamed, underFreeNumber, underNewNames } from './merge-names.ts';
import { type Parting, partWays } from './merge-parting.ts';
import { outermost, overlaps, sameJson, touchedBy } from './merge-paths.ts';
import { valueAt } from './path.ts';
import { apply, type NotebookState, replay } from './state.ts';

/** An entry to be; without `by` and `at` it is the merging person's own, made now. */
export interface Addition {
  readonly by?: string;
  readonly at?: string;
  readonly change: Change;
  readonly merged?: NonNullable<JournalEntry['merged']>;
}

export type Side = 'ours' | 'theirs';

/** One place of one record that both sides set, to different values. */
export interface Conflict {
  readonly kind: RecordKind;
  /** In our journal. */
  readonly id: string;
  readonly path: string;
  /** Absent where that side took the value away. */
  readonly ours?: Json;
  readonly theirs?: Json;
  readonly choice?: Side;
}

export type Merge =
  /** Ours holds all of theirs already. */
  | { readonly kind: 'nothing new'; readonly common: number }
  /** Theirs continues ours: its further lines are taken over as they stand. */
  | { readonly kind: 'fast-forward'; readonly common: number }
  | {
      readonly kind: 'combined';
      /** Entries that both journals begin with. */
      readonly common: number;
      /** What to add to ours, as one group; empty while a choice is open. */
      readonly additions: readonly Addition[];
      readonly conflicts: readonly Conflict[];
      /** What was given another number, letter or name, and what could not be taken. */
      readonly notes: readonly Problem[];
    };

/** Asked for each conflict; undefined leaves it open. */
export type Choose = (conflict: Conflict) => Side | undefined;

/** Both journals from their first entry on, of one notebook. Deterministic: the same journals and choices give the same. */
export function merge(
  ours: readonly ChainedEntry[],
  theirs: readonly ChainedEntry[],
  choose: Choose = () => undefined,
): Merge {
  const common = commonLength(ours, theirs);
  if (common === theirs.length) return { kind: 'nothing new', common };
  if (common === ours.length) return { kind: 'fast-forward', common };
  const fork = forkOf(ours, theirs, common);
  if (fork.news.length === 0) return { kind: 'nothing new', common };

  const parting = partWays(fork);
  /** Places that turned out not to be combinable although nobody set the very same one. */
  const widened = new Map<string, readonly string[]>();
  for (;;) {
    const attempt = combine(fork, parting, widened, choose);
    if (attempt.widen === undefined) {
      const { additions, conflicts, notes } = attempt;
      const open = conflicts.some(({ choice }) => choice === undefined);
      if (additions.length + conflicts.length + notes.length === 0) return { kind: 'nothing new', common };
      return { kind: 'combined', common, additions: open ? [] : additions, conflicts, notes };
    }
    const { key, paths } = attempt.widen;
    widened.set(key, [...(widened.get(key) ?? []), ...paths]);
  }
}

interface Attempt {
  readonly additions: readonly Addition[];
  readonly conflicts: readonly Conflict[];
  readonly notes: readonly Problem[];
  readonly widen?: { readonly key: string; readonly paths: readonly string[] };
}

function combine(
  fork: Fork,
  { renaming, skipped, branches, notes: partings }: Parting,
  widened: ReadonlyMap<string, readonly string[]>,
  choose: Choose,
): Attempt {
  const { own, oursNow, theirsNow, theirsBefore } = fork;
  const news = fork.news.filter((entry) => !skipped.has(origin(entry)));
  const branched = new Set(branches.map(({ kind, id }) => `${kind}/${id}`));
  const notes = [...partings];
  const additions: Addition[] = [];
  const conflicts: Conflict[] = [];
  let state = oursNow;
  const add = (addition: Addition): boolean => {
    const next = apply(state, addition.change);
    if (!next.ok) return false;
    state = next.value;
    additions.push(addition);
    return true;
  };

  for (const branch of branches) {
    const { change, note } = underFreeNumber(branch, state, theirsNow);
    if (note) notes.push(note);
    add({ change });
  }

  const settled: {
    readonly kind: RecordKind;
    readonly id: string;
    readonly path: string;
    readonly value: Json | undefined;
  }[] = [];
  for (const { kind, id, entries } of changedRecords(news)) {
    const here = renamed(renaming, kind, id);
    const key = `${kind}/${here}`;
    const mine = recordOf(oursNow, kind, here);
    const their = recordOf(theirsNow, kind, id);
    const changes = own.flatMap(({ change }) => (change.kind === kind && change.id === here ? [change] : []));
    if (mine === undefined || their === undefined || changes.length === 0 || branched.has(key)) continue;
    const context =
      recordOf(theirsBefore, kind, id) ?? recordOf(oursCreation(fork, kind, here), kind, here) ?? mine;
    const places = overlaps(
      touchedBy(changes, context),
      touchedBy(
        entries.map(({ change }) => change),
        context,
      ),
    );
    for (const path of outermost([...places, ...(widened.get(key) ?? [])])) {
      const [value, other] = [valueAt(mine, path), valueAt(their, path)];
      let chosen = other;
      if (!sameJson(value, other)) {
        const conflict: Conflict = {
          kind,
          id: here,
          path,
          ...(value === undefined ? {} : { ours: value }),
          ...(other === undefined ? {} : { theirs: other }),
        };
        const choice = choose(conflict);
        conflicts.push({ ...conflict, ...(choice ? { choice } : {}) });
        if (choice !== 'theirs') chosen = value;
      }
      settled.push({ kind, id: here, path, value: chosen });
      // Their changes were made on top of what was there: it is put back, so that each of them fits.
      place(kind, here, path, valueAt(context, path));
    }
  }

  for (const entry of news) {
    const { at, by } = entry;
    const { change, note } = underFreeNumber(underNewNames(entry.change, renaming), state, theirsNow);
    const merged = entry.merged ?? { seq: entry.seq, hash: entry.hash };
    if (add({ at, by, change, merged })) {
      if (note) notes.push(note);
      continue;
    }
    const key = `${change.kind}/${change.id}`;
    const paths = change.op === 'set' ? wider(change, widened.get(key) ?? []) : [];
    if (paths.length > 0) return { additions, conflicts, notes, widen: { key, paths } };
    notes.push({ code: 'merge.left-out', place: change.kind, figures: { seq: entry.seq, by } });
  }
  for (const { kind, id, path, value } of settled) place(kind, id, path, value);
  return { additions, conflicts, notes };

  function place(kind: RecordKind, id: string, path: string, value: Json | undefined): void {
    if (sameJson(valueAt(recordOf(state, kind, id) as Json | undefined, path), value)) return;
    add({ change: { op: 'set', kind, id, set: [value === undefined ? { path } : { path, value }] } });
  }
}

/** The places one level up from those of the change, as far as they are not tried yet. */
function wider(change: Change & { readonly op: 'set' }, tried: readonly string[]): readonly string[] {
  const candidates = change.set.map(({ path }) => {
    let place = path;
    while (tried.includes(place) && place.includes('/')) place = place.slice(0, place.lastIndexOf('/'));
    return place;
  });
  return outermost(candidates).filter((path) => !tried.includes(path));
}

/** A state with the record as ours made it, for one that both sides made alike after the fork. */
function oursCreation({ ours }: Fork, kind: RecordKind, id: string): NotebookState {
  return replay(
    ours.filter(({ change }) => change.op === 'create' && change.kind === kind && change.id === id),
  ).state;
}
