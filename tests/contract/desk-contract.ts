/**
 * What every way to the desk has to do alike: inside Electron, over loopback, with the stand-in and with the
 * real program. Plain assertions, so that any test runner can hold a desk to it.
 */
import assert from 'node:assert/strict';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { create, set } from '../../src/notebook/index.ts';
import type { Desk, Outcome } from '../../src/preload/index.ts';

export interface DeskPromise {
  readonly title: string;
  /** `name` is one that no other promise uses. */
  run(desk: Desk, name: string): Promise<void>;
}

const at = '2026-03-01T09:00:00+00:00';

export const deskContract: readonly DeskPromise[] = [
  {
    title: 'a notebook is created, opened, added to, closed and found again',
    async run(desk, name) {
      const made = value(await desk['notebook.create']({ name, author: 'Ω' }));
      assert.equal(made.entries.length, 1);
      assert.equal(made.readOnly, false);
      assert.deepEqual(made.problems, []);
      const added = value(
        await desk['notebook.append']({
          session: made.session,
          after: 1,
          by: 'Ω',
          changes: [
            create('prototype', 'p', { name: 'Tilt “car” 30°', kind: 'pendulum rig', createdAt: at }),
            set('prototype', 'p', { description: 'line\nline\u2028\u0000\ud83d\ude80' }),
          ],
        }),
      );
      assert.deepEqual(
        added.map(({ seq, by }) => [seq, by]),
        [
          [2, 'Ω'],
          [3, 'Ω'],
        ],
      );
      assert.equal(value(await desk['notebook.close']({ session: made.session })), null);
      const again = value(await desk['notebook.open']({ name }));
      assert.equal(again.id, made.id);
      assert.deepEqual(again.entries.slice(1), added);
      const listed = value(await desk['notebooks.list']({}));
      assert.ok(listed.some((each) => each.name === name));
      value(await desk['notebook.close']({ session: again.session }));
    },
  },
  {
    title: 'attached bytes come back as they went, every value of a byte among them',
    async run(desk, name) {
      const { session } = value(await desk['notebook.create']({ name, author: 'B' }));
      const bytes = Uint8Array.from({ length: 70_000 }, (_, index) => (index * 31 + (index >> 8)) % 256);
      const { sha256, size } = value(await desk['attachment.add']({ session, bytes }));
      assert.equal(size, bytes.length);
      const back = value(await desk['attachment.read']({ session, sha256 }));
      assert.ok(back instanceof Uint8Array);
      assert.deepEqual(Buffer.from(back), Buffer.from(bytes));
      const none = value(await desk['attachment.add']({ session, bytes: new Uint8Array() }));
      assert.equal(value(await desk['attachment.read']({ session, sha256: none.sha256 })).length, 0);
      value(await desk['notebook.close']({ session }));
    },
  },
  {
    title: 'a problem arrives as a value with its code, place and figures',
    async run(desk, name) {
      const made = value(await desk['notebook.create']({ name, author: 'B' }));
      assert.deepEqual(problem(await desk['notebook.create']({ name, author: 'B' })), {
        code: 'notebook.exists',
        place: 'Name of the notebook',
        figures: { name },
      });
      const stale = { session: made.session, after: 7, by: 'B', changes: [set('notebook', 'notebook', {})] };
      const changes = [set('notebook', 'notebook', { name: 'x' })];
      assert.deepEqual(problem(await desk['notebook.append']({ ...stale, changes })), {
        code: 'journal.changed-elsewhere',
        place: 'Notebook',
        figures: { known: 7, last: 1 },
      });
      value(await desk['notebook.close']({ session: made.session }));
    },
  },
  {
    title: 'arguments that the schema does not allow are refused, and nothing is done',
    async run(desk, name) {
      const wrong = { name, author: 'B', folder: '/elsewhere' };
      assert.equal(problem(await desk['notebook.create'](wrong)).code, 'desk.bad-request');
      const listed = value(await desk['notebooks.list']({}));
      assert.ok(!listed.some((each) => each.name === name));
    },
  },
  {
    title: 'settings are written and read',
    async run(desk) {
      const chosen = { author: 'B', theme: 'high contrast', paper: 'Letter', copiesFolder: '' } as const;
      assert.deepEqual(value(await desk['settings.write'](chosen)), chosen);
      assert.deepEqual(value(await desk['settings.read']({})), chosen);
    },
  },
  {
    title: 'a notebook is verified while it is open',
    async run(desk, name) {
      const { session, id } = value(await desk['notebook.create']({ name, author: 'B' }));
      const { head, ...found } = value(await desk['notebook.verify']({ session }));
      assert.match(head, /^[0-9a-f]{64}$/);
      assert.deepEqual(found, {
        name,
        id,
        lines: 2,
        entries: 1,
        chain: 'whole',
        attachments: { named: 0, sound: 0 },
        records: { notebook: 1, prototype: 0, revision: 0, entry: 0, card: 0, run: 0, failure: 0 },
        problems: [],
      });
      value(await desk['notebook.close']({ session }));
    },
  },
  {
    title: 'a copy is made, listed and restored under another name',
    async run(desk, name) {
      const stick = await mkdtemp(join(tmpdir(), 'counterpoise-copies-'));
      const before = value(await desk['settings.read']({}));
      try {
        value(await desk['settings.write']({ ...before, copiesFolder: stick }));
        const { session, id } = value(await desk['notebook.create']({ name, author: 'B' }));
        const { copy, problems } = value(await desk['copies.make']({ session }));
        assert.deepEqual(problems, []);
        const listed = value(await desk['copies.list']({}));
        assert.deepEqual(listed, { folder: stick, copies: [copy] });
        const { shelf, file } = copy;
        const back = value(await desk['copies.restore']({ shelf, file, name: `${name} back` }));
        assert.equal(back.id, id);
        assert.equal(back.entries.length, 1);
        value(await desk['notebook.close']({ session: back.session }));
        value(await desk['notebook.close']({ session }));
      } finally {
        value(await desk['settings.write'](before));
        await rm(stick, { recursive: true, force: true });
      }
    },
  },
  {
    title: 'calls made at the same time are each answered with their own outcome',
    async run(desk, name) {
      const { session } = value(await desk['notebook.create']({ name, author: 'B' }));
      const texts = Array.from({ length: 20 }, (_, index) => `file ${index}`);
      const added = await Promise.all(
        texts.map((text) => desk['attachment.add']({ session, bytes: new TextEncoder().encode(text) })),
      );
      const back = await Promise.all(
        added.map((outcome) => desk['attachment.read']({ session, sha256: value(outcome).sha256 })),
      );
      assert.deepEqual(
        back.map((outcome) => new TextDecoder().decode(value(outcome))),
        texts,
      );
      value(await desk['notebook.close']({ session }));
    },
  },
];

function value<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) assert.fail(JSON.stringify(outcome.problem));
  return outcome.value;
}

function problem(outcome: Outcome<unknown>) {
  if (outcome.ok) assert.fail('the outcome is no problem');
  return outcome.problem;
}
