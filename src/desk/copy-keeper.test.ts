import { beforeEach, describe, expect, it } from 'vitest';
import { processNumbered } from '../../tests/durability/script.ts';
import { type SimulatedDisk, simulatedDisk } from '../../tests/durability/simulated-disk.ts';
import { set } from '../notebook/index.ts';
import { listCopies } from './copies.ts';
import { type CopyKeeper, copyKeeper } from './copy-keeper.ts';
import { createNotebook, type NotebookFolder, openNotebook } from './notebook-folder.ts';

const folder = '/home/Rig';
const away = '/home/stick';
let disk: SimulatedDisk;
let clock: number;
let chosen: string;
let keeper: CopyKeeper;
let notebook: NotebookFolder;

beforeEach(async () => {
  disk = simulatedDisk();
  clock = Date.UTC(2026, 2, 18, 9);
  chosen = away;
  const ground = { files: disk.files, now: () => new Date(clock), processes: processNumbered(1) };
  await disk.files.makeFolder(away);
  await createNotebook(folder, { author: 'B' }, ground);
  const opened = await openNotebook(folder, ground);
  if (!opened.ok) throw new Error('not opened');
  notebook = opened.value;
  keeper = copyKeeper(disk.files, ground.now, async () => chosen);
});

/** A change `minutes` later, and whatever copying follows from it. */
async function change(minutes: number): Promise<readonly string[]> {
  clock += minutes * 60_000;
  const count = notebook.entries.length;
  const added = await notebook.append(count, 'B', [set('notebook', 'notebook', { name: `Rig ${count}` })]);
  expect(added.ok).toBe(true);
  keeper.consider(folder);
  await keeper.settled();
  const listed = await listCopies(disk.files, away);
  return listed.ok ? listed.value.map(({ at }) => at.slice(11, 16)) : [];
}

describe('automatic copies', () => {
  it('are made at most one an hour', async () => {
    expect(await change(0)).toEqual(['09:00']);
    expect(await change(20)).toEqual(['09:00']);
    expect(await change(39)).toEqual(['09:00']);
    expect(await change(1)).toEqual(['10:00', '09:00']);
  });

  it('are made one after the other when several changes come at once', async () => {
    for (let count = 0; count < 5; count++) keeper.consider(folder);
    expect(await change(0)).toHaveLength(1);
  });

  it('are not made where no folder is chosen, and begin with the next change after one is', async () => {
    chosen = '';
    expect(await change(0)).toEqual([]);
    chosen = away;
    expect(await change(1)).toEqual(['09:01']);
  });

  it('that fail are told until one succeeds, tried again after five minutes, and stop no writing', async () => {
    await change(0);
    await disk.files.rename(away, '/home/unplugged');
    await change(60);
    expect(keeper.failure).toMatchObject({ code: 'copies.failed', figures: { folder: away } });
    await disk.files.makeFolder(away);
    expect(await change(1)).toEqual(['09:00']);
    expect(await change(5)).toEqual(['10:06', '09:00']);
    expect(keeper.failure).toBeUndefined();
  });

  it('go on when the clock goes back by more than an hour', async () => {
    await change(0);
    expect(await change(-180)).toEqual(['09:00', '06:00']);
  });

  it('made by hand do not wait for the hour', async () => {
    await change(0);
    await change(5);
    expect(await keeper.make(folder, away)).toMatchObject({ ok: true, value: { isNew: true } });
    expect(await keeper.make(folder, '')).toMatchObject({ ok: false });
  });
});
