import { describe, expect, it } from 'vitest';
import { type Change, create, type JournalEntry, set } from './change.ts';
import { apply, applyAll, emptyState, replay } from './state.ts';

const at = '2026-03-01T09:00:00+00:00';
const changes: readonly Change[] = [
  create('notebook', 'n', { name: 'Rig', createdAt: at }),
  create('prototype', 'p', { name: 'p', kind: 'pendulum rig', createdAt: at }),
  set('prototype', 'none', { name: 'x' }),
  set('prototype', 'p', { description: 'on one wheel' }),
  create('prototype', 'p', { name: 'again', kind: 'pendulum rig', createdAt: at }),
  set('prototype', 'p', { kind: 'boat' }),
  create('prototype', '__proto__', { name: 'odd', kind: 'pendulum rig', createdAt: at }),
  set('prototype', 'constructor', { name: 'x' }),
];
const entries = changes.map((change, index): JournalEntry => ({ seq: index + 1, at, by: 'B', change }));

describe('replaying a journal', () => {
  it('gives what its changes give one by one, and names the ones that do not fit', () => {
    let state = emptyState;
    const refused: number[] = [];
    for (const { seq, change } of entries) {
      const next = apply(state, change);
      if (next.ok) state = next.value;
      else refused.push(seq);
    }
    const replayed = replay(entries);
    expect(replayed.state).toEqual(state);
    expect(replayed.refused.map(({ seq }) => seq)).toEqual(refused);
    expect(refused).toEqual([3, 5, 6, 8]);
  });

  it('goes on from a state without touching it', () => {
    const before = replay(entries.slice(0, 2)).state;
    const kept = structuredClone(before);
    const after = replay(entries.slice(2), before).state;
    expect(before).toEqual(kept);
    expect(after).toEqual(replay(entries).state);
    expect(after.notebook.n, 'what did not change is shared').toBe(before.notebook.n);
  });

  it('takes a record name from the journal as a name, whatever it means elsewhere', () => {
    const { state } = replay(entries);
    expect(Object.getPrototypeOf(state.prototype)).toBe(Object.prototype);
    expect(Object.keys(state.prototype)).toEqual(['p', '__proto__']);
    const more = [
      create('prototype', 'q', { name: 'q', kind: 'pendulum rig', createdAt: at }),
      set('prototype', '__proto__', { description: 'still odd' }),
    ];
    const after = applyAll(state, more);
    expect(after.ok && Object.keys(after.value.prototype)).toEqual(['p', '__proto__', 'q']);
    expect(after.ok && Object.getPrototypeOf(after.value.prototype)).toBe(Object.prototype);
  });
});
