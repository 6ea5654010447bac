import 'fake-indexeddb/auto';
import Dexie from 'dexie';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  type Change,
  create,
  type JournalEntry,
  type NotebookState,
  replay,
  set,
} from '../../notebook/index.ts';
import { type FakeDesk, fakeDesk } from './fake-desk.ts';
import { type NotebookStore, openStore } from './notebook-store.ts';
import { groupsOf, keepWorkingCopy, WorkingCopy } from './working-copy.ts';

const AT = '2026-03-01T09:00:00Z';
const entry = (prototype: string, number: number): Change =>
  create('entry', `entry-${prototype}-${number}`, {
    prototype,
    revision: 'r',
    number,
    title: `Entry ${number}`,
    at: AT,
    author: 'B',
    text: 'Weighed.',
  });
const begin: readonly Change[] = [
  create('notebook', 'n', { name: 'Rig', createdAt: AT }),
  create('prototype', 'p', { name: 'Rig', kind: 'pendulum rig', createdAt: AT }),
  create('prototype', 'q', { name: 'Cart', kind: 'monorail car', createdAt: AT }),
  create('revision', 'r', { prototype: 'p', letter: 'A', createdAt: AT }),
  ...Array.from({ length: 120 }, (_, index) => entry('p', index + 1)),
  ...Array.from({ length: 7 }, (_, index) => entry('q', index + 1)),
];

const own = (names: readonly string[]): string[] =>
  names.filter((name) => name.startsWith('notebook-')).sort();
const kept: Dexie[] = [];
function copyOf(notebook = 'id', generation = 1): WorkingCopy {
  const copy = new WorkingCopy(notebook, generation);
  kept.push(copy);
  return copy;
}

/** Everything in the copy, put together again. */
async function content(copy: WorkingCopy): Promise<Record<string, Record<string, unknown>>> {
  const state: Record<string, Record<string, unknown>> = {};
  for (const { kind, records } of await copy.groups.toArray()) state[kind] = { ...state[kind], ...records };
  return state;
}
/** The state without kinds that have no records. */
const filled = (state: NotebookState) =>
  Object.fromEntries(Object.entries(state).filter(([, records]) => Object.keys(records).length > 0));

afterEach(async () => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  for (const copy of kept.splice(0)) copy.close();
  await Promise.all((await Dexie.getDatabaseNames()).map((name) => Dexie.delete(name)));
});

describe('the groups of a state', () => {
  const { state } = replay(begin.map((change, index) => ({ seq: index + 1, at: AT, by: 'B', change })));

  it('hold every record once, at most fifty of one kind and one prototype together', () => {
    const groups = groupsOf(state);
    const sizes = Object.fromEntries(groups.map(({ key, records }) => [key, Object.keys(records).length]));
    expect(sizes).toEqual({
      'notebook/n/0': 1,
      'prototype/p/0': 1,
      'prototype/q/0': 1,
      'revision/p/0': 1,
      'entry/p/0': 50,
      'entry/p/1': 50,
      'entry/p/2': 20,
      'entry/q/0': 7,
    });
  });
});

describe('a working copy', () => {
  const entries: readonly JournalEntry[] = begin.map((change, index) => ({
    seq: index + 1,
    at: AT,
    by: 'B',
    change,
  }));
  const { state } = replay(entries);
  const last = entries.at(-1);

  it('is filled with exactly the state, and knows how far', async () => {
    const copy = copyOf();
    expect(await copy.holds(state, last), 'new').toBe(false);
    await copy.fill(state, last, undefined);
    expect(await content(copy)).toEqual(filled(state));
    expect(await copy.holds(state, last)).toBe(true);
    expect(await copy.heads.get('head')).toMatchObject({ seq: begin.length });
  });

  it('writes only the groups that a change touched', async () => {
    const copy = copyOf();
    await copy.fill(state, last, undefined);
    const more: JournalEntry = {
      seq: begin.length + 1,
      at: AT,
      by: 'B',
      change: set('entry', 'entry-p-60', { text: 'Weighed again.' }),
    };
    const after = replay([more], state).state;
    const put = vi.spyOn(copy.groups, 'bulkPut');
    await copy.fill(after, more, state);
    expect(put.mock.calls.map(([groups]) => groups.map(({ key }) => key))).toEqual([['entry/p/1']]);
    expect(await content(copy)).toEqual(filled(after));
    expect(await copy.holds(after, more)).toBe(true);
    expect(await copy.holds(state, last)).toBe(false);
  });

  it('is filled from nothing over whatever it held', async () => {
    const copy = copyOf();
    await copy.groups.put({ key: 'entry/gone/0', kind: 'entry', records: { x: {} } });
    await copy.fill(state, last, undefined);
    expect(await content(copy)).toEqual(filled(state));
  });

  it('is not taken for this one when it was filled from another history of the same length', async () => {
    const copy = copyOf();
    await copy.fill(state, last, undefined);
    expect(await copy.holds(state, { ...(last as JournalEntry), at: '2026-03-01T09:00:01Z' })).toBe(false);
  });

  it('is not taken for whole when a group is missing, or one is there that is not in the state', async () => {
    const copy = copyOf();
    await copy.fill(state, last, undefined);
    await copy.groups.delete('entry/p/1');
    expect(await copy.holds(state, last)).toBe(false);
    await copy.fill(state, last, undefined);
    await copy.groups.put({ key: 'entry/z/0', kind: 'entry', records: {} });
    expect(await copy.holds(state, last)).toBe(false);
  });
});

describe('keeping the working copy of an open notebook', () => {
  let fake: FakeDesk;
  let store: NotebookStore;
  beforeEach(() => {
    vi.stubGlobal('window', globalThis);
    fake = fakeDesk(begin);
    store = openStore(fake.desk, fake.opened({ id: 'id' }), () => 'Ada');
  });
  const endings: (() => void)[] = [];
  const keep = () => endings.push(keepWorkingCopy(store));
  afterEach(() => {
    for (const end of endings.splice(0)) end();
  });
  const upToDate = (copy: WorkingCopy): Promise<void> =>
    vi.waitFor(
      async () => {
        const { recorded, entries } = store.getState();
        expect(await copy.holds(recorded, entries.at(-1))).toBe(true);
        expect(await content(copy)).toEqual(filled(recorded));
      },
      { timeout: 5000, interval: 50 },
    );

  it('fills it when the notebook is opened, and follows its changes', async () => {
    keep();
    const copy = copyOf();
    await upToDate(copy);
    store.change([set('entry', 'entry-q-3', { text: 'Heavier.' }), entry('q', 8)]);
    await store.settled();
    await upToDate(copy);
  });

  it('leaves out what is being typed and what the desk has not acknowledged', async () => {
    keep();
    const copy = copyOf();
    await upToDate(copy);
    fake.next = 'refuse';
    store.change([set('entry', 'entry-q-3', { text: 'Refused.' })]);
    store.preview('entry', 'entry-q-2', [{ path: 'text', value: 'Typed.' }]);
    await store.settled();
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(await content(copy)).toEqual(filled(replay(fake.journal).state));
    fake.next = 'write';
    store.retry();
    await store.settled();
    await upToDate(copy);
  });

  it('ends when the notebook is let go, whatever is changed afterwards', async () => {
    const end = keepWorkingCopy(store);
    await upToDate(copyOf());
    store.change([set('entry', 'entry-q-3', { text: 'Just before.' })]);
    end();
    store.change([set('entry', 'entry-q-3', { text: 'After.' })]);
    await store.settled();
    await new Promise((resolve) => setTimeout(resolve, 600));
    const records = (await copyOf().groups.get('entry/q/0'))?.records ?? {};
    expect(records['entry-q-3']).toMatchObject({ text: 'Weighed.' });
  });

  it('takes one that was left up to date as it is', async () => {
    const copy = copyOf();
    const { recorded, entries } = store.getState();
    await copy.fill(recorded, entries.at(-1), undefined);
    const clear = vi.spyOn(Dexie.prototype, 'transaction');
    keep();
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(clear).not.toHaveBeenCalled();
    await upToDate(copy);
  });

  it.each([
    [
      'one that stopped earlier',
      async (copy: WorkingCopy) => copy.heads.put({ key: 'head', seq: 3, at: AT }),
    ],
    [
      'one that is further than the journal',
      async (copy: WorkingCopy) => copy.heads.put({ key: 'head', seq: 9999, at: AT }),
    ],
    [
      'one whose head is not one',
      async (copy: WorkingCopy) => copy.heads.put({ key: 'head', seq: 'x' } as never),
    ],
    ['one that lost groups', async (copy: WorkingCopy) => copy.groups.clear()],
  ])('fills %s again', async (_what, damage) => {
    const copy = copyOf();
    const { recorded, entries } = store.getState();
    await copy.fill(recorded, entries.at(-1), undefined);
    await damage(copy);
    keep();
    await upToDate(copy);
  });

  it('throws away those of older and newer schemas and generations, and no other notebook’s', async () => {
    const old = ['notebook-id-c0-1', 'notebook-id-c99-1', 'notebook-id-c2-7'];
    const others = ['notebook-other-c2-1', 'notebook-id-copy-c2-1', 'notebook-id-c2', 'something else'];
    for (const name of [...old, ...others]) {
      const database = new Dexie(name);
      database.version(1).stores({ x: 'y' });
      await database.open();
      database.close();
    }
    keep();
    const copy = copyOf();
    await upToDate(copy);
    expect((await Dexie.getDatabaseNames()).sort()).toEqual([...others, copy.name].sort());
    expect(own(await Dexie.getDatabaseNames())).not.toContain('notebook-id-c2-7');
  });

  it.each([
    [
      'cannot be opened',
      () => vi.spyOn(Dexie.prototype, 'open').mockRejectedValue(new Error('UnknownError')),
    ],
    [
      'cannot be written',
      () => vi.spyOn(WorkingCopy.prototype, 'fill').mockRejectedValue(new Error('QuotaExceededError')),
    ],
    ['cannot be listed', () => vi.spyOn(Dexie, 'getDatabaseNames').mockRejectedValue(new Error('not here'))],
  ])(
    'does without where the database %s: the window goes on and the journal is written',
    async (_what, spoil) => {
      const failures = vi.fn();
      process.on('unhandledRejection', failures);
      spoil();
      keep();
      store.change([set('entry', 'entry-q-3', { text: 'Heavier.' })]);
      await store.settled();
      await new Promise((resolve) => setTimeout(resolve, 600));
      process.off('unhandledRejection', failures);
      expect(failures).not.toHaveBeenCalled();
      expect(store.getState().saving.status).toBe('saved');
      expect(store.getState().recorded.entry['entry-q-3']?.text).toBe('Heavier.');
      expect(fake.journal).toHaveLength(begin.length + 1);
    },
  );

  it('does without a database of its name that was made by something else', async () => {
    vi.spyOn(console, 'warn').mockReturnValue(undefined); // the library says what it tries
    await new Promise<void>((resolve, reject) => {
      const request = indexedDB.open('notebook-id-c2-1', 500);
      request.onupgradeneeded = () => request.result.createObjectStore('groups', { autoIncrement: true });
      request.onsuccess = () => {
        request.result.close();
        resolve();
      };
      request.onerror = () => reject(request.error);
    });
    keep();
    store.change([set('entry', 'entry-q-3', { text: 'Heavier.' })]);
    await store.settled();
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(store.getState().saving.status).toBe('saved');
    expect(fake.journal).toHaveLength(begin.length + 1);
  });
});
