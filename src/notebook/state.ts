/**
 * The notebook in memory: every record by kind and id, made from the journal by `apply` alone. Values are
 * immutable and share whatever a change left alone, so that derived figures can be remembered by identity.
 */
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import type { Change, JournalEntry, Json, Setting } from './change.ts';
import { type RecordKind, type RecordOf, schemas } from './kinds.ts';

export type NotebookState = {
  readonly [K in RecordKind]: Readonly<Record<string, RecordOf<K>>>;
};

export const emptyState: NotebookState = {
  notebook: {},
  prototype: {},
  revision: {},
  entry: {},
  card: {},
  run: {},
  failure: {},
};

/** The state after the change, or why it cannot be made. The record is checked as a whole. */
export function apply(state: NotebookState, change: Change): Result<NotebookState> {
  const record = recordAfter(state, change);
  if (!record.ok) return record;
  const { kind, id } = change;
  return good({ ...state, [kind]: { ...state[kind], [id]: record.value } } as NotebookState);
}

function recordAfter(state: NotebookState, change: Change): Result<unknown> {
  const before = Object.hasOwn(state[change.kind], change.id) ? state[change.kind][change.id] : undefined;
  if (change.op === 'create') {
    if (before !== undefined) return bad('record.exists', change.kind, { kind: change.kind, id: change.id });
    return checked(change.kind, change.value);
  }
  if (before === undefined) return bad('record.unknown', change.kind, { kind: change.kind, id: change.id });
  const locked = lockedBy(state, change);
  if (locked) return { ok: false, problem: locked };
  return checked(change.kind, setAll(before as Json, change.set));
}

/** The change that undoes `change`, given the state before it. A creation has no inverse: it stays on record. */
export function invert(state: NotebookState, change: Change): Change | undefined {
  const before = state[change.kind][change.id];
  if (change.op === 'create' || before === undefined) return undefined;
  return {
    ...change,
    set: change.set.toReversed().map(({ path }) => {
      const value = valueAt(before as Json, path);
      return value === undefined ? { path } : { path, value };
    }),
  };
}

export interface Replay {
  readonly state: NotebookState;
  /** Entries that could not be applied, each with its reason; none in a sound journal. */
  readonly refused: readonly { readonly seq: number; readonly problem: Problem }[];
}

export function replay(entries: Iterable<JournalEntry>, from: NotebookState = emptyState): Replay {
  // Written into while nobody else sees it: a copy of all records for each entry would take minutes for a long journal.
  const draft = Object.fromEntries(
    Object.entries(from).map(([kind, records]) => [kind, Object.assign(Object.create(null), records)]),
  ) as { [K in RecordKind]: Record<string, unknown> };
  const refused: { seq: number; problem: Problem }[] = [];
  for (const { seq, change } of entries) {
    const record = recordAfter(draft as NotebookState, change);
    if (record.ok) draft[change.kind][change.id] = record.value;
    else refused.push({ seq, problem: record.problem });
  }
  const kinds = Object.entries(draft).map(([kind, records]) => [kind, { ...records }]);
  return { state: Object.fromEntries(kinds) as NotebookState, refused };
}

function checked(kind: RecordKind, value: Json): Result<unknown> {
  const parsed = schemas[kind].safeParse(value);
  if (parsed.success) return good(parsed.data);
  const issue = parsed.error.issues[0];
  const path = issue?.path.join('/') ?? '';
  return bad('record.invalid', path === '' ? kind : `${kind}, ${path}`, {
    detail: issue?.message ?? 'the record does not have the expected form',
  });
}

/** An issued revision never changes; issuing it is the last change that it takes. */
function lockedBy(state: NotebookState, change: Change): Problem | undefined {
  if (change.kind !== 'revision') return undefined;
  const revision = state.revision[change.id];
  if (revision?.status !== 'issued') return undefined;
  return {
    code: 'record.issued',
    place: `revision ${revision.letter}`,
    figures: { letter: revision.letter },
  };
}

function setAll(record: Json, settings: readonly Setting[]): Json {
  return settings.reduce((value, { path, value: leaf }) => setAt(value, path.split('/'), leaf), record);
}

function setAt(value: Json | undefined, path: readonly string[], leaf: Json | undefined): Json {
  const [head, ...rest] = path;
  if (head === undefined) return leaf ?? null;
  if (Array.isArray(value)) {
    const copy: Json[] = [...value];
    const index = Number(head);
    if (rest.length === 0 && leaf === undefined) copy.splice(index, 1);
    else copy[index] = setAt(copy[index], rest, leaf);
    return copy;
  }
  const object = (typeof value === 'object' && value !== null ? value : {}) as Readonly<Record<string, Json>>;
  if (rest.length === 0 && leaf === undefined) {
    const { [head]: _, ...others } = object;
    return others;
  }
  return { ...object, [head]: setAt(object[head], rest, leaf) };
}

/** What stands at a path of a record, segments joined by `/`; undefined where nothing does. */
export function valueAt(value: Json, path: string): Json | undefined {
  let here: Json | undefined = value;
  for (const segment of path.split('/')) {
    if (typeof here !== 'object' || here === null) return undefined;
    here = (here as Readonly<Record<string, Json>>)[segment];
  }
  return here;
}
