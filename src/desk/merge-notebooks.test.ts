import { beforeEach, describe, expect, it } from 'vitest';
import { processNumbered } from '../../tests/durability/script.ts';
import { type SimulatedDisk, simulatedDisk } from '../../tests/durability/simulated-disk.ts';
import { type Change, create, replay, set } from '../notebook/index.ts';
import type { Result } from '../quantity/index.ts';
import { hashOf } from './attachments.ts';
import { readJournal } from './journal-reading.ts';
import { mergeNotebooks } from './merge-notebooks.ts';
import { createNotebook, type Ground, openNotebook } from './notebook-folder.ts';
import { restoreNotebook } from './restore.ts';
import { verify } from './verify.ts';

const ours = '/home/Rig';
const theirs = '/home/Rig of a friend';
const at = '2026-03-18T09:00:00Z';
const picture = Buffer.from('picture');
let disk: SimulatedDisk;
let ground: Ground;

beforeEach(async () => {
  disk = simulatedDisk();
  ground = {
    files: disk.files,
    now: () => new Date(at),
    processes: { ...processNumbered(1), isAlive: () => true },
  };
  await createNotebook(ours, { author: 'B' }, ground);
  await work(ours, 'B', [create('prototype', 'p', { name: 'p', kind: 'pendulum rig', createdAt: at })]);
  value(await restoreNotebook(ours, theirs, ground));
});

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}
async function work(
  folder: string,
  by: string,
  changes: readonly Change[],
  bytes?: Uint8Array,
): Promise<void> {
  const notebook = value(await openNotebook(folder, ground));
  if (bytes) value(await notebook.addAttachment(bytes));
  value(await notebook.append(notebook.entries.length, by, changes));
  await notebook.close();
}
const described = (description: string): Change => set('prototype', 'p', { description });
const merging = (choose?: 'ours' | 'theirs', other = theirs) =>
  mergeNotebooks(ours, other, { by: 'M', ...(choose ? { choose: () => choose } : {}) }, ground);
const journal = (folder: string): Uint8Array => disk.peek(`${folder}/journal.jsonl`);
const entriesOf = (folder: string) => value(readJournal(journal(folder))).entries;
const withPicture = create('entry', 'e', {
  ...{ prototype: 'p', revision: 'r', number: 1, title: 'x', at, author: 'C', text: '' },
  attachments: { a: { sha256: hashOf(picture), size: 7, name: 'rig.png', mediaType: 'image/png', order: 1 } },
});

describe('merging two notebooks', () => {
  it('takes over the lines of a continuation as they stand, with what is attached', async () => {
    await work(theirs, 'C', [described('longer'), withPicture], picture);
    expect(value(await merging())).toMatchObject({ merge: { kind: 'fast-forward', common: 2 }, added: 2 });
    expect(journal(ours)).toEqual(journal(theirs));
    expect(value(await verify(ours, ground))).toMatchObject({
      problems: [],
      attachments: { named: 1, sound: 1 },
    });
    expect(value(await merging())).toMatchObject({ merge: { kind: 'nothing new' }, added: 0 });
  });

  it('adds theirs after ours with author, time and origin, as one group', async () => {
    await work(ours, 'B', [described('ours')]);
    await work(theirs, 'C', [set('prototype', 'p', { name: 'theirs' }), withPicture], picture);
    const before = journal(ours);
    expect(value(await merging())).toMatchObject({ merge: { kind: 'combined' }, added: 2, problems: [] });
    expect(journal(ours).subarray(0, before.length)).toEqual(before);
    const entries = entriesOf(ours);
    expect(entries.slice(-2)).toMatchObject([
      { seq: 4, by: 'C', merged: { seq: 3 } },
      { seq: 5, by: 'C', merged: { seq: 4 } },
    ]);
    expect(replay(entries).state.prototype.p).toMatchObject({ name: 'theirs', description: 'ours' });
    expect(value(await verify(ours, ground))).toMatchObject({
      problems: [],
      attachments: { named: 1, sound: 1 },
    });
    expect(value(await merging())).toMatchObject({ added: 0 });
  });

  it('writes nothing while a choice is open, and all of it once it is made', async () => {
    await work(ours, 'B', [described('ours')]);
    await work(theirs, 'C', [described('theirs'), set('prototype', 'p', { name: 'theirs' })]);
    const before = journal(ours);
    expect(value(await merging())).toMatchObject({
      added: 0,
      merge: { conflicts: [{ path: 'description', ours: 'ours', theirs: 'theirs' }] },
    });
    expect(journal(ours)).toEqual(before);
    value(await merging('ours'));
    const { state, refused } = replay(entriesOf(ours));
    expect(refused).toEqual([]);
    expect(state.prototype.p).toMatchObject({ name: 'theirs', description: 'ours' });
    expect(entriesOf(ours).at(-1)?.by, 'the choice is the merging person’s').toBe('M');
    expect(value(await merging()).added, 'the choice stays made').toBe(0);
  });

  it('takes the journal that a synchronising program left beside ours, which opening tells of', async () => {
    await work(ours, 'B', [described('ours')]);
    await work(theirs, 'C', [set('prototype', 'p', { name: 'theirs' })]);
    const left = `${ours}/journal (copy of the other computer).jsonl`;
    disk.poke(left, journal(theirs));
    const opened = value(await openNotebook(ours, ground));
    expect(opened).toMatchObject({ readOnly: false, problems: [{ code: 'journal.beside' }] });
    expect(opened.entries).toHaveLength(3);
    await opened.close();
    expect(value(await merging(undefined, left))).toMatchObject({ merge: { kind: 'combined' }, added: 1 });
    expect(disk.peek(left)).toEqual(journal(theirs));
  });

  it('never writes to theirs', async () => {
    await work(ours, 'B', [described('ours')]);
    await work(theirs, 'C', [described('theirs')]);
    const before = disk.log.length;
    value(await merging('theirs'));
    expect(disk.log.slice(before).filter((line) => line.includes(theirs))).toEqual([]);
  });

  it('refuses another notebook, a damaged one, and one that is not there', async () => {
    await createNotebook('/home/Other', { author: 'B' }, ground);
    expect(await merging('ours', '/home/Other')).toMatchObject({ problem: { code: 'merge.other-notebook' } });
    expect(await merging('ours', '/home/none')).toMatchObject({ problem: { code: 'notebook.not-found' } });
    const damaged = Buffer.from(journal(theirs));
    damaged.write('x', damaged.indexOf('"seq":1') + 40);
    disk.poke(`${theirs}/journal.jsonl`, damaged);
    expect(await merging('ours')).toMatchObject({ problem: { code: 'journal.damaged' } });
  });

  it('waits for nobody: a notebook that is open elsewhere is left alone', async () => {
    await work(theirs, 'C', [described('theirs')]);
    const open = value(await openNotebook(ours, { ...ground, processes: processNumbered(1) }));
    const elsewhere = { ...ground, processes: { ...processNumbered(2), isAlive: () => true } };
    expect(await mergeNotebooks(ours, theirs, { by: 'M' }, elsewhere)).toMatchObject({
      ok: false,
      problem: { code: 'notebook.locked' },
    });
    await open.close();
  });

  it('on a disk that refuses any call is written whole or not at all, and can be done again', async () => {
    await work(ours, 'B', [described('ours')]);
    await work(theirs, 'C', [described('theirs'), withPicture], picture);
    const before = entriesOf(ours).length;
    for (let call = 1; call < 30; call++) {
      disk.plan({ failAt: { call, code: 'EIO' } });
      const merged = await merging('theirs');
      disk.plan({});
      const count = entriesOf(ours).length;
      if (!merged.ok) expect(count).toBe(before);
      else if (merged.value.added > 0) break;
    }
    value(await merging('theirs'));
    expect(replay(entriesOf(ours)).state.prototype.p?.description).toBe('theirs');
    expect(value(await verify(ours, ground)).problems).toEqual([]);
  });
});
