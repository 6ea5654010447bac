/** A received notebook held against one’s own: which of them knows more, and which records are not the same. */
import type { JournalEntry, NotebookState, RecordKind } from '../notebook/index.ts';

/** Of two copies of one notebook, or of two notebooks that have nothing to do with each other. */
export type Relation =
  | 'another notebook'
  | 'the same'
  | 'theirs continues yours'
  | 'yours continues theirs'
  | 'grown apart';

export interface RecordDifference {
  readonly kind: RecordKind;
  readonly id: string;
  readonly how: 'only theirs' | 'only yours' | 'different';
}

export interface Differences {
  readonly relation: Relation;
  /** Entries from the first on that are the same in both. */
  readonly common: number;
  /** Entries behind these. */
  readonly onlyTheirs: number;
  readonly onlyYours: number;
  readonly records: readonly RecordDifference[];
}

export interface Compared {
  /** Identity of the notebook. */
  readonly notebook: string;
  readonly entries: readonly JournalEntry[];
  readonly state: NotebookState;
}

export function differencesOf(theirs: Compared, yours: Compared): Differences {
  const common = commonEntries(theirs.entries, yours.entries);
  const onlyTheirs = theirs.entries.length - common;
  const onlyYours = yours.entries.length - common;
  return {
    relation: theirs.notebook === yours.notebook ? relationOf(onlyTheirs, onlyYours) : 'another notebook',
    common,
    onlyTheirs,
    onlyYours,
    records: recordDifferences(theirs.state, yours.state),
  };
}

function relationOf(onlyTheirs: number, onlyYours: number): Relation {
  if (onlyTheirs === 0) return onlyYours === 0 ? 'the same' : 'yours continues theirs';
  return onlyYours === 0 ? 'theirs continues yours' : 'grown apart';
}

function commonEntries(a: readonly JournalEntry[], b: readonly JournalEntry[]): number {
  const most = Math.min(a.length, b.length);
  for (let index = 0; index < most; index++) {
    if (JSON.stringify(a[index]) !== JSON.stringify(b[index])) return index;
  }
  return most;
}

function recordDifferences(theirs: NotebookState, yours: NotebookState): RecordDifference[] {
  return (Object.keys(theirs) as RecordKind[]).flatMap((kind) => {
    const [there, here] = [theirs[kind], yours[kind]];
    const ids = new Set([...Object.keys(there), ...Object.keys(here)]);
    return [...ids].flatMap((id): RecordDifference[] => {
      if (!Object.hasOwn(here, id)) return [{ kind, id, how: 'only theirs' }];
      if (!Object.hasOwn(there, id)) return [{ kind, id, how: 'only yours' }];
      return canonical(there[id]) === canonical(here[id]) ? [] : [{ kind, id, how: 'different' }];
    });
  });
}

/** Members in order: two copies may have got to the same record by different ways. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_, member: unknown) =>
    typeof member === 'object' && member !== null && !Array.isArray(member)
      ? Object.fromEntries(Object.entries(member).sort(([a], [b]) => (a < b ? -1 : 1)))
      : member,
  );
}
