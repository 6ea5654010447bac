import { describe, expect, it } from 'vitest';
import { create } from '../../notebook/index.ts';
import { fakeDesk } from './fake-desk.ts';
import { openStore } from './notebook-store.ts';
import { recordValue, setting } from './record-value.ts';

const AT = '2026-03-01T09:00:00Z';

function opened() {
  const fake = fakeDesk([
    create('prototype', 'p', { name: 'Rig', kind: 'pendulum rig', createdAt: AT }),
    create('revision', 'r', {
      prototype: 'p',
      letter: 'A',
      createdAt: AT,
      gimbal: { travel: { notMeasured: true } },
    }),
  ]);
  return { fake, store: openStore(fake.desk, fake.opened(), () => 'Ada') };
}

describe('recording a value', () => {
  it('sends it to the journal', async () => {
    const { fake, store } = opened();
    expect(recordValue(store, 'revision', 'r', 'reason', 'heavier').ok).toBe(true);
    await store.settled();
    expect(fake.journal.at(-1)?.change).toEqual({
      op: 'set',
      kind: 'revision',
      id: 'r',
      set: [{ path: 'reason', value: 'heavier' }],
    });
  });

  it.each([
    ['the same text', 'letter', 'A'],
    ['an equal object', 'gimbal/travel', { notMeasured: true }],
    ['nothing where nothing is', 'loop/leanGain', undefined],
  ])('that is there already, %s, sends nothing and ends the preview', async (_what, path, value) => {
    const { fake, store } = opened();
    store.preview('revision', 'r', [{ path: 'reason', value: 'typed' }]);
    expect(recordValue(store, 'revision', 'r', path, value).ok).toBe(true);
    await store.settled();
    expect(fake.asked).toEqual([]);
    expect(store.getState().state).toBe(store.getState().recorded);
  });

  it('compares with what is recorded, not with what is being typed', async () => {
    const { fake, store } = opened();
    store.preview('revision', 'r', [{ path: 'reason', value: 'typed' }]);
    recordValue(store, 'revision', 'r', 'reason', 'typed');
    await store.settled();
    expect(fake.asked).toHaveLength(1);
  });

  it('an absent value removes', () => {
    const { store } = opened();
    recordValue(store, 'revision', 'r', 'gimbal', undefined);
    expect(store.getState().recorded.revision.r).not.toHaveProperty('gimbal');
    expect(setting('a/b', undefined)).toEqual({ path: 'a/b' });
    expect(setting('a/b', null)).toEqual({ path: 'a/b', value: null });
  });

  it('that cannot be recorded is told until something is', () => {
    const { store } = opened();
    const refused = recordValue(store, 'revision', 'r', 'reason', 'x'.repeat(4001));
    expect(refused.ok).toBe(false);
    expect(store.getState().refused).toMatchObject({ code: 'record.invalid', place: 'revision, reason' });
    recordValue(store, 'revision', 'r', 'reason', 'x');
    expect(store.getState().refused).toBeUndefined();
  });

  it('of a record that is not there is refused', () => {
    expect(recordValue(opened().store, 'revision', 'none', 'reason', 'x')).toMatchObject({
      ok: false,
      problem: { code: 'record.unknown' },
    });
  });
});
