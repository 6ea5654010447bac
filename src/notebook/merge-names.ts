/** Names, numbers and letters that two people gave away twice: the second bearer gets the next one that is free. */
import type { Problem } from '../quantity/index.ts';
import type { Change, Json, Setting } from './change.ts';
import type { RecordKind } from './kinds.ts';
import { revisionLetter, revisionNumber } from './letters.ts';
import type { NotebookState } from './state.ts';

/** Members that name another record, and what kind of record they name. */
const references: Readonly<Record<string, RecordKind>> = {
  prototype: 'prototype',
  revision: 'revision',
  from: 'revision',
  correctedIn: 'revision',
  card: 'card',
  run: 'run',
  verifiedBy: 'run',
};

type Members = Readonly<Record<string, Json | undefined>>;

/** New names by `kind/id` of the other journal. */
export type Renaming = Map<string, string>;

export function renamed(renaming: Renaming, kind: RecordKind, id: string): string {
  return renaming.get(`${kind}/${id}`) ?? id;
}

/** The change under its new names: the record's own, and those of the records that it refers to. */
export function underNewNames(change: Change, renaming: Renaming): Change {
  const reference = (name: string, value: Json | undefined): Json | undefined => {
    const kind = Object.hasOwn(references, name) ? references[name] : undefined;
    return kind !== undefined && typeof value === 'string' ? renamed(renaming, kind, value) : value;
  };
  const id = renamed(renaming, change.kind, change.id);
  if (change.op === 'set') {
    const set = change.set.map(({ path, value }): Setting => {
      const changed = reference(path, value);
      return changed === undefined ? { path } : { path, value: changed };
    });
    return { ...change, id, set };
  }
  if (!isRecord(change.value)) return { ...change, id };
  const members = Object.entries(change.value).map(([name, value]) => [name, reference(name, value)]);
  return { ...change, id, value: Object.fromEntries(members) as Json };
}

/** `id-2`, `id-3` …: the first that no record has, in any of the states. */
export function freeId(
  kind: RecordKind,
  id: string,
  states: readonly NotebookState[],
  taken: Renaming,
): string {
  const given = new Set(taken.values());
  for (let count = 2; ; count++) {
    const end = `-${count}`;
    const name = id.slice(0, 64 - end.length) + end;
    if (!given.has(name) && states.every((state) => !Object.hasOwn(state[kind], name))) return name;
  }
}

/** A creation whose number or letter is taken gets the next one after all that either side gave away, with a note. */
export function underFreeNumber(
  change: Change,
  state: NotebookState,
  theirs: NotebookState,
): { readonly change: Change; readonly note?: Problem } {
  if (change.op !== 'create' || !isRecord(change.value)) return { change };
  const { kind, value } = change;
  const given = (in_: NotebookState): readonly Members[] => Object.values(in_[kind]) as unknown as Members[];
  if (typeof value.number === 'number') {
    if (!given(state).some(({ number }) => number === value.number)) return { change };
    const largest = [...given(state), ...given(theirs)].map(({ number }) => Number(number ?? 0));
    const number = largest.reduce((most, each) => Math.max(most, each), 0) + 1;
    const note: Problem = { code: 'merge.renumbered', place: kind, figures: { was: value.number, number } };
    return { change: { ...change, value: { ...value, number } }, note };
  }
  if (kind === 'revision' && typeof value.letter === 'string') {
    const ofOne = (in_: NotebookState) => given(in_).filter(({ prototype }) => prototype === value.prototype);
    if (!ofOne(state).some(({ letter }) => letter === value.letter)) return { change };
    const counts = [...ofOne(state), ...ofOne(theirs)].map(
      ({ letter }) => revisionNumber(String(letter)) ?? 0,
    );
    const letter = revisionLetter(counts.reduce((most, each) => Math.max(most, each), 0) + 1);
    const note: Problem = {
      code: 'merge.relettered',
      place: 'revision',
      figures: { was: value.letter, letter },
    };
    return { change: { ...change, value: { ...value, letter } }, note };
  }
  return { change };
}

export function isRecord(value: Json | undefined): value is Members {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
