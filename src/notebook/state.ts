/**
 * The notebook in memory: every record by kind and id, made from the journal by `apply` alone. Values are
 * immutable and share whatever a change left alone, so that derived figures can be remembered by identity.
 */
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import type { Change, JournalEntry, Json } from './change.ts';
import { checked, checkedAgain, shortened } from './checked.ts';
import type { RecordKind, RecordOf } from './kinds.ts';
import { isPlace, restoring, withSetting } from './path.ts';

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

/** The state after the change, or why it cannot be made. */
export function apply(state: NotebookState, change: Change): Result<NotebookState> {
  const record = recordAfter(state, change);
  if (!record.ok) return record;
  const { kind, id } = change;
  return good({ ...state, [kind]: withRecord(state[kind], id, record.value) } as NotebookState);
}

/**
 * The state after all of the changes, or why the first that does not fit cannot be made. The records of a kind are
 * copied once, however many of them change.
 */
export function applyAll(state: NotebookState, changes: readonly Change[]): Result<NotebookState> {
  const [first] = changes;
  if (first === undefined) return good(state);
  if (changes.length === 1) return apply(state, first);
  const draft: { [K in RecordKind]: Readonly<Record<string, unknown>> } = { ...state };
  const copied = new Set<RecordKind>();
  for (const change of changes) {
    const { kind, id } = change;
    const record = recordAfter(draft as NotebookState, change);
    if (!record.ok) return record;
    if (copied.has(kind) && id !== '__proto__') (draft[kind] as Record<string, unknown>)[id] = record.value;
    else draft[kind] = withRecord(draft[kind], id, record.value);
    copied.add(kind); // nobody else sees the copy yet: it may be written into
  }
  return good(draft as NotebookState);
}

/**
 * The records of one kind with one of them replaced or added. Ten thousand names copied one by one take half the time
 * of `{...records}`; only a record named `__proto__` would not survive it as a member.
 */
function withRecord(
  records: Readonly<Record<string, unknown>>,
  id: string,
  value: unknown,
): Readonly<Record<string, unknown>> {
  if (id === '__proto__' || Object.hasOwn(records, '__proto__')) return { ...records, [id]: value };
  const copy: Record<string, unknown> = {};
  for (const each in records) copy[each] = records[each];
  copy[id] = value;
  return copy;
}

function recordAfter(state: NotebookState, change: Change): Result<unknown> {
  const before = recordAt(state, change);
  if (change.op === 'create') {
    if (before !== undefined) return bad('record.exists', change.kind, { kind: change.kind, id: change.id });
    return checked(change.kind, change.value);
  }
  if (before === undefined) return bad('record.unknown', change.kind, { kind: change.kind, id: change.id });
  const locked = lockedBy(state, change);
  if (locked) return { ok: false, problem: locked };
  let after = before;
  for (const setting of change.set) {
    if (!isPlace(after, setting.path)) {
      return bad('record.invalid', change.kind, {
        detail: `there is no place “${shortened(setting.path)}” in it`,
      });
    }
    after = withSetting(after, setting);
  }
  return checkedAgain(change.kind, after, change.set);
}

function recordAt(state: NotebookState, { kind, id }: Change): Json | undefined {
  return Object.hasOwn(state[kind], id) ? (state[kind][id] as Json) : undefined;
}

/** The change that undoes `change`, given the state before it. A creation has no inverse: it stays on record. */
export function invert(state: NotebookState, change: Change): Change | undefined {
  const before = recordAt(state, change);
  if (change.op === 'create' || before === undefined) return undefined;
  return { ...change, set: change.set.toReversed().map(({ path }) => restoring(before, path)) };
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
