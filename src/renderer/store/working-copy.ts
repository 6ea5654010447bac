/**
 * The fast indexed copy of the notebook in the window's own database. It is never the truth: its name carries
 * the schema and the notebook's generation, and one that is old, newer, damaged or missing is filled again from
 * the journal's state, in the background and in grouped records: the cost is per record written, hardly per byte.
 */
import Dexie, { type Table } from 'dexie';
import type { JournalEntry, NotebookState, RecordKind } from '../../notebook/index.ts';
import type { NotebookStore } from './notebook-store.ts';

const CACHE_SCHEMA = 2;
const GROUP_SIZE = 50;
const QUIET = 400; // ms without changes before the copy is brought up to date

/** Up to `GROUP_SIZE` records of one kind that belong to one prototype, in the order of their making. */
export interface Group {
  /** `kind/prototype id/number of the group`. */
  readonly key: string;
  readonly kind: RecordKind;
  readonly records: Readonly<Record<string, unknown>>;
}

/** The journal entry that the copy stands at. */
interface Head {
  readonly key: 'head';
  readonly seq: number;
  /** Two copies of a notebook that went their own ways have entries of the same number, hardly of the same time. */
  readonly at: string;
}

export class WorkingCopy extends Dexie {
  declare readonly groups: Table<Group, string>;
  declare readonly heads: Table<Head, string>;

  constructor(notebook: string, generation: number) {
    super(`${prefix(notebook)}${CACHE_SCHEMA}-${generation}`, {
      chromeTransactionDurability: 'relaxed',
      cache: 'immutable',
    });
    this.version(1).stores({ groups: 'key, kind', heads: 'key' });
  }

  /** Whether the copy was filled from exactly this; content is not compared, only what it must be made of. */
  async holds(state: NotebookState, last: JournalEntry | undefined): Promise<boolean> {
    const head = await this.heads.get('head');
    if (head?.seq !== last?.seq || head?.at !== last?.at) return false;
    const keys = await this.groups.toCollection().primaryKeys();
    return (
      keys.join() ===
      groupsOf(state)
        .map(({ key }) => key)
        .sort()
        .join()
    );
  }

  /** Writes the groups that differ from what was written last, and the head, in one transaction. */
  async fill(
    state: NotebookState,
    last: JournalEntry | undefined,
    known: NotebookState | undefined,
  ): Promise<void> {
    const groups = groupsOf(state);
    const before = known ? new Map(groupsOf(known).map((group) => [group.key, group.records])) : undefined;
    const changed = groups.filter((group) => !before || !sameRecords(before.get(group.key), group.records));
    await this.transaction('rw', this.groups, this.heads, async () => {
      if (!known) await this.groups.clear();
      await this.groups.bulkPut(changed);
      if (last) await this.heads.put({ key: 'head', seq: last.seq, at: last.at });
    });
  }
}

export function groupsOf(state: NotebookState): Group[] {
  const groups = new Map<string, { kind: RecordKind; records: Record<string, unknown> }>();
  const counts = new Map<string, number>();
  for (const [kind, records] of Object.entries(state) as [RecordKind, Record<string, object>][]) {
    for (const [id, record] of Object.entries(records)) {
      const owner = 'prototype' in record && typeof record.prototype === 'string' ? record.prototype : id;
      const count = counts.get(`${kind}/${owner}`) ?? 0;
      counts.set(`${kind}/${owner}`, count + 1);
      const key = `${kind}/${owner}/${Math.floor(count / GROUP_SIZE)}`;
      const group = groups.get(key) ?? { kind, records: {} };
      group.records[id] = record;
      groups.set(key, group);
    }
  }
  return [...groups].map(([key, group]) => ({ key, ...group }));
}

/**
 * Keeps the copy of an open notebook up to date; failures cost speed, never data.
 *
 * @returns what ends it, when the notebook is let go
 */
export function keepWorkingCopy(store: NotebookStore): () => void {
  const { id, generation } = store.getState();
  const copy = new WorkingCopy(id, generation);
  let known: NotebookState | undefined;
  let waiting: number | undefined;
  let ended = false;

  async function bringUpToDate(): Promise<void> {
    const { recorded, entries, saving } = store.getState();
    const last = entries.at(-1);
    if (ended || saving.status !== 'saved') return; // only what the desk has acknowledged
    try {
      if (known === undefined && (await copy.holds(recorded, last))) known = recorded;
      if (known !== recorded) await copy.fill(recorded, last, known);
      known = recorded;
    } catch {
      ended = true; // full disk, private window: the window goes on from memory
    }
  }

  const leave = store.subscribe(() => {
    window.clearTimeout(waiting);
    waiting = window.setTimeout(() => void bringUpToDate(), QUIET);
  });
  void discardOthers(id, copy.name).then(bringUpToDate);
  return () => {
    leave();
    window.clearTimeout(waiting);
    ended = true;
    copy.close();
  };
}

/** Copies of the same notebook under another schema or generation. */
async function discardOthers(notebook: string, keep: string): Promise<void> {
  try {
    const names = await Dexie.getDatabaseNames();
    const start = prefix(notebook);
    const old = names.filter(
      (name) => name.startsWith(start) && /^\d+-\d+$/.test(name.slice(start.length)) && name !== keep,
    );
    await Promise.all(old.map((name) => Dexie.delete(name)));
  } catch {
    // listing is not possible everywhere; an old copy then only takes up room
  }
}

function prefix(notebook: string): string {
  return `notebook-${notebook}-c`;
}

function sameRecords(a: Group['records'] | undefined, b: Group['records']): boolean {
  if (!a) return false;
  const ids = Object.keys(b);
  return ids.length === Object.keys(a).length && ids.every((id) => a[id] === b[id]);
}
