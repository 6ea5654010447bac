/** The records that a new prototype begins with. */
import { create, type Prototype } from '../../notebook/index.ts';
import type { Result } from '../../quantity/index.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { newId, now } from '../store/record-id.ts';

export const prototypeKinds: readonly Prototype['kind'][] = [
  'inline two-wheeler',
  'monorail car',
  'pendulum rig',
];

/** Makes the prototype and its revision A; returns the id of the revision. */
export function makePrototype(store: NotebookStore, name: string, kind: Prototype['kind']): Result<string> {
  const prototype = newId('prototype');
  const revision = newId('revision');
  const createdAt = now();
  const made = store.change([
    create('prototype', prototype, { name, kind, createdAt }),
    create('revision', revision, { prototype, letter: 'A', createdAt, reason: 'First build.' }),
  ]);
  return made.ok ? { ok: true, value: revision } : made;
}
