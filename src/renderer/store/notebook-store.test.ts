import { describe, expect, it, vi } from 'vitest';
import { type Change, create, type Json, replay, set } from '../../notebook/index.ts';
import { type FakeDesk, fakeDesk } from './fake-desk.ts';
import { type NotebookStore, openStore } from './notebook-store.ts';

const AT = '2026-03-01T09:00:00Z';
const begin: readonly Change[] = [
  create('notebook', 'n', { name: 'Rig', createdAt: AT }),
  create('prototype', 'p', { name: 'Rig', kind: 'pendulum rig', createdAt: AT }),
  create('revision', 'r', { prototype: 'p', letter: 'A', createdAt: AT }),
];
const reason = (text: string): Change => set('revision', 'r', { reason: text });
const describing = (text: string): Change => set('prototype', 'p', { description: text });

function opened(fake: FakeDesk = fakeDesk(begin)): { fake: FakeDesk; store: NotebookStore } {
  return { fake, store: openStore(fake.desk, fake.opened(), () => 'Ada') };
}
const texts = (changes: readonly Change[]): unknown[] =>
  changes.map((change) => (change.op === 'set' ? change.set[0]?.value : change.id));
const asked = (fake: FakeDesk): unknown[][] => fake.asked.map(({ changes }) => texts(changes));
const reasonIn = (store: NotebookStore): string | undefined => store.getState().state.revision.r?.reason;

/** What the window shows is what the journal says, once nothing is under way. */
function expectTheSame(fake: FakeDesk, store: NotebookStore): void {
  const { recorded, entries } = store.getState();
  expect(entries).toEqual(fake.journal);
  expect(recorded).toEqual(replay(fake.journal).state);
}

describe('a change', () => {
  it('is shown at once and acknowledged later', async () => {
    const { fake, store } = opened();
    fake.slow = true;
    expect(store.change([reason('heavier')])).toEqual({ ok: true, value: null });
    expect(reasonIn(store)).toBe('heavier');
    expect(store.getState().saving.status).toBe('saving');
    expect(store.getState().entries).toHaveLength(3);
    fake.answer();
    await store.settled();
    expect(store.getState().saving).toEqual({ status: 'saved' });
    expect(store.getState().entries).toHaveLength(4);
    expectTheSame(fake, store);
  });

  it('is signed with the author of the moment, and says what the window knew', async () => {
    const fake = fakeDesk(begin);
    let author = 'Ada';
    const store = openStore(fake.desk, fake.opened(), () => author);
    store.change([reason('one')]);
    await store.settled();
    author = 'Bo';
    store.change([reason('two')]);
    await store.settled();
    expect(fake.asked.map(({ by, after }) => [by, after])).toEqual([
      ['Ada', 3],
      ['Bo', 4],
    ]);
  });

  it('that cannot be made is refused with its reason, and nothing of it is sent', async () => {
    const { fake, store } = opened();
    const before = store.getState().recorded;
    const refused = store.change([reason('good'), set('revision', 'r', { letter: 'I' })]);
    expect(refused).toMatchObject({
      ok: false,
      problem: { code: 'record.invalid', place: 'revision, letter' },
    });
    expect(store.getState().recorded).toBe(before);
    expect(store.getState().state).toBe(before);
    expect(store.getState().canUndo).toBe(false);
    await store.settled();
    expect(fake.asked).toEqual([]);
  });

  it('is refused in a notebook that can only be read, with the reason for that', async () => {
    const fake = fakeDesk(begin);
    const problems = [
      { code: 'notebook.locked', place: 'Notebook', figures: { pid: 7, host: 'here', since: 'noon' } },
    ] as const;
    const store = openStore(fake.desk, fake.opened({ readOnly: true, problems }), () => 'Ada');
    const refused = store.change([reason('x')]);
    expect(refused).toMatchObject({ ok: false, problem: { code: 'notebook.read-only' } });
    expect(refused.ok || String(refused.problem.figures.detail)).toContain('process 7');
    expect(reasonIn(store)).toBe('');
    await store.settled();
    expect(fake.asked).toEqual([]);
  });

  it('tells everybody who asked, and nobody who no longer wants to know', async () => {
    const { store } = opened();
    const seen = vi.fn();
    const leave = store.subscribe(seen);
    store.change([reason('x')]);
    expect(seen).toHaveBeenCalled();
    await store.settled();
    leave();
    seen.mockClear();
    store.change([reason('y')]);
    await store.settled();
    expect(seen).not.toHaveBeenCalled();
  });
});

describe('changes while a write is under way', () => {
  it('wait, and go together and in order', async () => {
    const { fake, store } = opened();
    fake.slow = true;
    store.change([reason('one')]);
    store.change([reason('two')]);
    store.change([reason('three'), describing('four')]);
    expect(asked(fake)).toEqual([['one']]);
    fake.answer();
    await vi.waitFor(() => expect(fake.asked).toHaveLength(2));
    expect(asked(fake)[1]).toEqual(['two', 'three', 'four']);
    expect(store.getState().saving.status).toBe('saving');
    fake.answer();
    await store.settled();
    expectTheSame(fake, store);
    expect(reasonIn(store)).toBe('three');
  });

  it('that are made by whoever is told that all is saved are written too', async () => {
    const { fake, store } = opened();
    let told = false;
    store.subscribe(({ saving }) => {
      if (saving.status !== 'saved' || told || store.getState().entries.length === 3) return;
      told = true;
      store.change([reason('afterwards')]);
    });
    store.change([reason('first')]);
    await store.settled();
    expect(asked(fake)).toEqual([['first'], ['afterwards']]);
    expect(store.getState().saving.status).toBe('saved');
    expectTheSame(fake, store);
  });

  it('go at most a thousand at a time, none twice and none left out', async () => {
    const { fake, store } = opened();
    fake.slow = true;
    store.change([reason('first')]);
    for (let n = 0; n < 2345; n++) store.change([reason(String(n))]);
    for (let n = 0; n < 4; n++) {
      fake.answer();
      await vi.waitFor(() =>
        expect(fake.asked.length > n + 1 || store.getState().saving.status === 'saved').toBe(true),
      );
    }
    await store.settled();
    expect(fake.asked.map(({ changes }) => changes.length)).toEqual([1, 1000, 1000, 345]);
    expect(texts(fake.journal.slice(3).map(({ change }) => change))).toEqual([
      'first',
      ...Array.from({ length: 2345 }, (_, n) => String(n)),
    ]);
    expectTheSame(fake, store);
  });

  it('that were made together are not parted between two writes', async () => {
    const { fake, store } = opened();
    fake.slow = true;
    store.change([reason('first')]);
    store.change(Array.from({ length: 600 }, () => reason('a')));
    store.change(Array.from({ length: 600 }, () => reason('b')));
    store.change([reason('c')]);
    fake.answer();
    await vi.waitFor(() => expect(fake.asked).toHaveLength(2));
    fake.answer();
    await vi.waitFor(() => expect(fake.asked).toHaveLength(3));
    fake.answer();
    await store.settled();
    expect(fake.asked.map(({ changes }) => changes.length)).toEqual([1, 600, 601]);
    expectTheSame(fake, store);
  });

  it('more than a thousand made together are all written', async () => {
    const { fake, store } = opened();
    store.change(Array.from({ length: 1500 }, (_, n) => reason(String(n))));
    await store.settled();
    expect(fake.asked.map(({ changes }) => changes.length)).toEqual([1000, 500]);
    expectTheSame(fake, store);
  });
});

describe('a desk that refuses', () => {
  it('is told with its reason; what was typed stays shown, and later changes join it', async () => {
    const { fake, store } = opened();
    fake.next = 'refuse';
    store.change([reason('one')]);
    await store.settled();
    expect(store.getState().saving).toMatchObject({
      status: 'not saved',
      problem: { code: 'journal.write-failed' },
    });
    expect(reasonIn(store)).toBe('one');
    store.change([reason('two')]);
    await store.settled();
    expect(store.getState().saving.status).toBe('not saved');
    expect(fake.journal).toHaveLength(3);

    fake.next = 'write';
    store.retry();
    expect(store.getState().saving.status).toBe('saving');
    await store.settled();
    expect(store.getState().saving.status).toBe('saved');
    expect(texts(fake.journal.slice(3).map(({ change }) => change))).toEqual(['one', 'two']);
    expectTheSame(fake, store);
  });

  it('is offered everything again by the next change, once and in order', async () => {
    const { fake, store } = opened();
    fake.next = 'refuse';
    store.change([reason('one')]);
    store.change([reason('two')]);
    await store.settled();
    fake.next = 'write';
    store.change([reason('three')]);
    await store.settled();
    expect(texts(fake.journal.slice(3).map(({ change }) => change))).toEqual(['one', 'two', 'three']);
    expectTheSame(fake, store);
  });

  it('may be asked again with nothing to write', async () => {
    const { fake, store } = opened();
    store.retry();
    await store.settled();
    expect(fake.asked).toEqual([]);
    expect(store.getState().saving.status).toBe('saved');
    store.change([reason('x')]);
    await store.settled();
    expectTheSame(fake, store);
  });

  it('retried twice at once writes once', async () => {
    const { fake, store } = opened();
    fake.next = 'refuse';
    store.change([reason('one')]);
    await store.settled();
    fake.next = 'write';
    store.retry();
    store.retry();
    await store.settled();
    expect(fake.journal).toHaveLength(4);
    expectTheSame(fake, store);
  });

  it('does not get undoing out of step', async () => {
    const { fake, store } = opened();
    fake.next = 'refuse';
    store.change([reason('one')]);
    store.change([reason('two')]);
    await store.settled();
    store.undo();
    await store.settled();
    expect(reasonIn(store)).toBe('one');
    fake.next = 'write';
    store.redo();
    store.undo();
    store.undo();
    await store.settled();
    expect(reasonIn(store)).toBe('');
    expect(texts(fake.journal.slice(3).map(({ change }) => change))).toEqual([
      'one',
      'two',
      'one',
      'two',
      'one',
      '',
    ]);
    expectTheSame(fake, store);
  });
});

describe('a desk that goes away', () => {
  it('by an exception is told like any other failure, and the queue is kept', async () => {
    const { fake, store } = opened();
    fake.next = 'throw';
    store.change([reason('one')]);
    await store.settled();
    expect(store.getState().saving).toMatchObject({
      status: 'not saved',
      problem: { code: 'desk.defect', figures: { detail: 'the line is dead' } },
    });
    fake.next = 'write';
    store.retry();
    await store.settled();
    expect(store.getState().saving.status).toBe('saved');
    expectTheSame(fake, store);
  });

  it('after it wrote, but before it answered, never makes the window write twice', async () => {
    const { fake, store } = opened();
    fake.next = 'write and lose the answer';
    store.change([reason('one')]);
    await store.settled();
    expect(store.getState().saving).toMatchObject({ problem: { code: 'desk.unreachable' } });
    fake.next = 'write';
    store.retry();
    await store.settled();
    expect(store.getState().saving).toMatchObject({ problem: { code: 'journal.changed-elsewhere' } });
    expect(texts(fake.journal.slice(3).map(({ change }) => change))).toEqual(['one']);
  });

  it('that acknowledges nothing, or more than it was given, is not believed and not asked for ever', async () => {
    for (const count of [0, 2]) {
      const fake = fakeDesk(begin);
      const entries = fake.journal.slice(0, count);
      const append = vi.fn(async () => ({ ok: true, value: entries }) as const);
      const store = openStore({ ...fake.desk, 'notebook.append': append }, fake.opened(), () => 'Ada');
      store.change([reason('one')]);
      await store.settled();
      expect(append).toHaveBeenCalledTimes(1);
      expect(store.getState().saving).toMatchObject({
        status: 'not saved',
        problem: { code: 'desk.defect' },
      });
      expect(store.getState().entries).toHaveLength(3);
    }
  });

  it('that acknowledges a part is given the rest', async () => {
    const fake = fakeDesk(begin);
    const whole = fake.desk['notebook.append'];
    const desk = {
      ...fake.desk,
      'notebook.append': ((args) => whole({ ...args, changes: args.changes.slice(0, 2) })) as typeof whole,
    };
    const store = openStore(desk, fake.opened(), () => 'Ada');
    store.change([1, 2, 3, 4, 5].map((n) => reason(String(n))));
    await store.settled();
    expect(fake.asked.map(({ changes }) => changes.length)).toEqual([2, 2, 1]);
    expectTheSame(fake, store);
  });
});

describe('a journal that another window wrote', () => {
  it('is never written over: the change is kept, and the window is told', async () => {
    const { fake, store } = opened();
    fake.elsewhere(describing('theirs'));
    store.change([reason('mine')]);
    await store.settled();
    const { saving } = store.getState();
    expect(saving).toMatchObject({
      status: 'not saved',
      problem: { code: 'journal.changed-elsewhere', figures: { last: 4, known: 3 } },
    });
    expect(fake.journal).toHaveLength(4);
    expect(reasonIn(store), 'still shown').toBe('mine');
    store.retry();
    await store.settled();
    expect(fake.journal, 'nor by trying again').toHaveLength(4);
  });
});

describe('undoing and redoing', () => {
  it('go back and forth, each as a change of its own in the journal', async () => {
    const { fake, store } = opened();
    for (const text of ['one', 'two', 'three']) store.change([reason(text)]);
    store.undo();
    store.undo();
    expect(reasonIn(store)).toBe('one');
    store.redo();
    expect(reasonIn(store)).toBe('two');
    expect(store.getState()).toMatchObject({ canUndo: true, canRedo: true });
    store.redo();
    expect(store.getState()).toMatchObject({ canUndo: true, canRedo: false });
    store.redo();
    expect(reasonIn(store)).toBe('three');
    for (let n = 0; n < 5; n++) store.undo();
    expect(reasonIn(store)).toBe('');
    expect(store.getState()).toMatchObject({ canUndo: false, canRedo: true });
    await store.settled();
    expect(texts(fake.journal.slice(3).map(({ change }) => change))).toEqual([
      ...['one', 'two', 'three'],
      ...['two', 'one', 'two', 'three', 'two', 'one', ''],
    ]);
    expectTheSame(fake, store);
  });

  it('take together what was changed together', () => {
    const { store } = opened();
    store.change([
      reason('heavier'),
      describing('cart'),
      set('revision', 'r', { 'loop/leanGain': { notMeasured: true } }),
    ]);
    const before = store.getState().recorded;
    store.undo();
    expect(store.getState().recorded.revision.r).toMatchObject({ reason: '' });
    expect(store.getState().recorded.revision.r?.loop).toBeUndefined();
    expect(store.getState().recorded.prototype.p?.description).toBe('');
    store.redo();
    expect(store.getState().recorded).toEqual(before);
  });

  it('forget what could be redone when something else is changed', () => {
    const { store } = opened();
    store.change([reason('one')]);
    store.undo();
    expect(store.getState().canRedo).toBe(true);
    store.change([describing('other')]);
    expect(store.getState().canRedo).toBe(false);
    store.redo();
    expect(reasonIn(store)).toBe('');
  });

  it('pass over the making of a record, which stays', () => {
    const { store } = opened();
    store.change([reason('one')]);
    store.change([create('revision', 's', { prototype: 'p', letter: 'B', createdAt: AT })]);
    expect(store.getState().canUndo).toBe(true);
    store.undo();
    expect(reasonIn(store)).toBe('');
    expect(store.getState().recorded.revision.s).toBeDefined();
    expect(store.getState().canUndo).toBe(false);
  });

  it('do not reach behind the issuing of a revision, and say so before they are tried', () => {
    const { store } = opened();
    store.change([reason('one')]);
    expect(store.getState().canUndo).toBe(true);
    store.change([set('revision', 'r', { status: 'issued' })]);
    expect(store.getState().canUndo).toBe(false);
    store.undo();
    expect(store.getState().recorded.revision.r).toMatchObject({ status: 'issued', reason: 'one' });
    store.change([describing('later')]);
    store.undo();
    expect(store.getState().recorded.prototype.p?.description).toBe('');
    expect(store.getState().canUndo).toBe(false);
  });

  it('remember the last two hundred changes', async () => {
    const { fake, store } = opened();
    for (let n = 1; n <= 250; n++) store.change([reason(String(n))]);
    let undone = 0;
    for (; store.getState().canUndo; undone++) store.undo();
    expect(undone).toBe(200);
    expect(reasonIn(store)).toBe('50');
    await store.settled();
    expectTheSame(fake, store);
  });

  it('do nothing where there is nothing', async () => {
    const { fake, store } = opened();
    store.undo();
    store.redo();
    await store.settled();
    expect(fake.asked).toEqual([]);
  });
});

describe('a preview', () => {
  const typing = (store: NotebookStore, value: Json): void =>
    store.preview('revision', 'r', [{ path: 'reason', value }]);

  it('is shown, and never reaches the journal or the undoing', async () => {
    const { fake, store } = opened();
    const before = store.getState().recorded;
    for (const text of ['h', 'he', 'hea']) typing(store, text);
    expect(reasonIn(store)).toBe('hea');
    expect(store.getState().recorded).toBe(before);
    expect(store.getState().canUndo).toBe(false);
    store.dropPreview();
    expect(store.getState().state).toBe(before);
    await store.settled();
    expect(fake.asked).toEqual([]);
  });

  it('is replaced by the next one, not added to', () => {
    const { store } = opened();
    typing(store, 'x');
    store.preview('prototype', 'p', [{ path: 'description', value: 'y' }]);
    expect(reasonIn(store)).toBe('');
    expect(store.getState().state.prototype.p?.description).toBe('y');
  });

  it('is dropped by the next change, made or refused', () => {
    const { store } = opened();
    typing(store, 'x');
    store.change([describing('cart')]);
    expect(reasonIn(store)).toBe('');
    typing(store, 'x');
    store.change([set('revision', 'r', { letter: 'I' })]);
    expect(reasonIn(store)).toBe('');
  });

  it('of what could not be recorded shows what is recorded, not the preview before', () => {
    const { store } = opened();
    typing(store, 'x');
    typing(store, 7);
    expect(reasonIn(store)).toBe('');
  });

  it('is still shown when an earlier change is acknowledged', async () => {
    const { fake, store } = opened();
    fake.slow = true;
    store.change([describing('cart')]);
    typing(store, 'being typed');
    fake.answer();
    await store.settled();
    expect(reasonIn(store)).toBe('being typed');
  });
});

describe('letting go of the notebook', () => {
  it('waits for what is under way, then closes it at the desk', async () => {
    const { fake, store } = opened();
    fake.slow = true;
    store.change([reason('last words')]);
    const gone = store.dispose();
    await Promise.resolve();
    expect(fake.closed).toEqual([]);
    fake.answer();
    await gone;
    expect(fake.closed).toEqual(['s']);
    expectTheSame(fake, store);
  });

  it('does not fail where the desk does', async () => {
    const fake = fakeDesk(begin);
    const desk = { ...fake.desk, 'notebook.close': () => Promise.reject(new Error('gone')) };
    await expect(openStore(desk, fake.opened(), () => '').dispose()).resolves.toBeUndefined();
  });
});

describe('what has settled', () => {
  it('is everything that was changed until then, the next write included', async () => {
    const { fake, store } = opened();
    fake.slow = true;
    store.change([reason('one')]);
    store.change([reason('two')]);
    let settled = false;
    const waiting = store.settled().then(() => {
      settled = true;
    });
    fake.answer();
    await vi.waitFor(() => expect(fake.asked).toHaveLength(2));
    expect(settled).toBe(false);
    fake.answer();
    await waiting;
    expectTheSame(fake, store);
  });

  it('is nothing where nothing is under way', async () => {
    await expect(opened().store.settled()).resolves.toBeUndefined();
  });
});
