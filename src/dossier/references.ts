/**
 * Records name each other, and their own rows, by identities. One that is not on record is harmless: it shows as a
 * dash. One that is called like something every object brings along (`constructor`) would be found where nothing is,
 * and is refused.
 */
import type { NotebookState, RecordKind } from '../notebook/index.ts';

const REFERENCES: readonly (readonly [from: RecordKind, member: string, to: RecordKind])[] = [
  ['revision', 'prototype', 'prototype'],
  ['revision', 'from', 'revision'],
  ...(['entry', 'card', 'run', 'failure'] as const).flatMap(
    (kind) =>
      [
        [kind, 'prototype', 'prototype'],
        [kind, 'revision', 'revision'],
      ] as const,
  ),
  ['run', 'card', 'card'],
  ['failure', 'run', 'run'],
  ['failure', 'correctedIn', 'revision'],
  ['failure', 'verifiedBy', 'run'],
];

/** What is wrong, as the end of a sentence; undefined where nothing is. */
export function impossibleReference(state: NotebookState): string | undefined {
  for (const [kind, member, to] of REFERENCES) {
    for (const [id, record] of Object.entries(state[kind])) {
      const name: unknown = (record as Readonly<Record<string, unknown>>)[member];
      if (isImpossible(name, state[to])) return inWords(kind, id, `a ${to}`, name);
    }
  }
  for (const [id, { part, revision }] of Object.entries(state.failure)) {
    if (isImpossible(part, state.revision[revision]?.parts ?? {}))
      return inWords('failure', id, 'a part', part);
  }
  for (const [id, run] of Object.entries(state.run)) {
    const item = run.items.find((each) => isImpossible(each.id, run.answers));
    if (item) return inWords('run', id, 'an item', item.id);
  }
  for (const [id, card] of Object.entries(state.card)) {
    const reading = Object.values(card.readings).find(({ name }) => isImpossible(name, card.predictions));
    if (reading) return inWords('card', id, 'a figure', reading.name);
  }
  return undefined;
}

function isImpossible(name: unknown, among: object): boolean {
  return typeof name === 'string' && name in {} && !Object.hasOwn(among, name);
}

function inWords(kind: RecordKind, id: string, what: string, name: unknown): string {
  return `the ${kind} “${id}” names ${what} “${name}”, which cannot be one`;
}
