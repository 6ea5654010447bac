/** Where two copies of one notebook parted, what each has that the other has not, and how each of them stands. */
import type { JournalEntry, Json } from './change.ts';
import type { RecordKind } from './kinds.ts';
import { isRecord, type Renaming } from './merge-names.ts';
import { type NotebookState, replay } from './state.ts';

/** An entry with the hash of its line, by which it is known in every copy. */
export interface ChainedEntry extends JournalEntry {
  readonly hash: string;
}

/** Two journals of one notebook, and the states on the way. */
export interface Fork {
  readonly ours: readonly ChainedEntry[];
  /** Theirs that ours has not, and ours that theirs has not. */
  readonly news: readonly ChainedEntry[];
  readonly own: readonly ChainedEntry[];
  readonly base: NotebookState;
  readonly oursNow: NotebookState;
  readonly theirsNow: NotebookState;
  /** Theirs just before the first of the new entries. */
  readonly theirsBefore: NotebookState;
  readonly renaming: Renaming;
}

/** How many entries both begin with. */
export function commonLength(ours: readonly ChainedEntry[], theirs: readonly ChainedEntry[]): number {
  const differs = ours.findIndex(({ hash }, index) => theirs[index]?.hash !== hash);
  return differs < 0 ? ours.length : differs;
}

/** A change keeps the hash that it was first written with through every merge. */
export function origin({ hash, merged }: ChainedEntry): string {
  return merged?.hash ?? hash;
}

/** @param common  as `commonLength` says */
export function forkOf(ours: readonly ChainedEntry[], theirs: readonly ChainedEntry[], common: number): Fork {
  const inOurs = new Set(ours.map(origin));
  const inTheirs = new Map(theirs.map((entry) => [origin(entry), entry]));
  const base = replay(ours.slice(0, common)).state;
  const isNew = (entry: ChainedEntry): boolean => !inOurs.has(origin(entry));
  const first = theirs.findIndex((entry, index) => index >= common && isNew(entry));
  const theirsBefore = replay(theirs.slice(common, Math.max(common, first)), base).state;
  const renaming: Renaming = new Map();
  for (const entry of ours.slice(common)) {
    const there = inTheirs.get(origin(entry))?.change;
    // An earlier merge took their record under another name, which it keeps.
    if (there?.kind === entry.change.kind && there.id !== entry.change.id) {
      renaming.set(`${there.kind}/${there.id}`, entry.change.id);
    }
  }
  return {
    ours,
    news: first < 0 ? [] : theirs.slice(first).filter(isNew),
    own: ours.slice(common).filter((entry) => !inTheirs.has(origin(entry))),
    base,
    oursNow: replay(ours.slice(common), base).state,
    theirsNow: first < 0 ? theirsBefore : replay(theirs.slice(first), theirsBefore).state,
    theirsBefore,
    renaming,
  };
}

/** The records that the entries set something in, in the order of their first change. */
export function changedRecords(entries: readonly ChainedEntry[]) {
  const records = new Map<
    string,
    { readonly kind: RecordKind; readonly id: string; readonly entries: ChainedEntry[] }
  >();
  for (const entry of entries) {
    const { op, kind, id } = entry.change;
    if (op !== 'set') continue;
    const found = records.get(`${kind}/${id}`) ?? { kind, id, entries: [] };
    found.entries.push(entry);
    records.set(`${kind}/${id}`, found);
  }
  return [...records.values()];
}

/** The record, where it is there. */
export function recordOf(
  state: NotebookState,
  kind: RecordKind,
  id: string,
): Readonly<Record<string, Json | undefined>> | undefined {
  const record = Object.hasOwn(state[kind], id) ? (state[kind][id] as Json) : undefined;
  return isRecord(record) ? record : undefined;
}
