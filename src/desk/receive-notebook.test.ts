/** A received notebook on the disk: whole, where it was meant to be, or not at all. */
import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  attachedBytes,
  attachedSum,
  attaching,
  journalOf,
  smallChanges,
} from '../../tests/specimen/dossier.ts';
import { entriesOf } from '../notebook/sample.ts';
import { type Files, nodeFiles, type OpenFile } from './files.ts';
import { receiveNotebook } from './receive-notebook.ts';
import { verify } from './verify.ts';

const journal = journalOf(
  entriesOf([...smallChanges, attaching('lean.csv', attachedSum, attachedBytes.length)]),
);
const received = { journal, attachments: new Map([[attachedSum, attachedBytes]]) };

let home = '';
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'receive-'));
});
afterEach(() => rm(home, { recursive: true }));

describe('a received notebook', () => {
  it('is a notebook of its own, sound and whole', async () => {
    expect(await receiveNotebook(join(home, 'Theirs'), received)).toMatchObject({ ok: true });
    expect(await verify(join(home, 'Theirs'))).toMatchObject({
      ok: true,
      value: { chain: 'whole', entries: 6, attachments: { named: 1, sound: 1 }, problems: [] },
    });
    expect(await readdir(home)).toEqual(['Theirs']);
  });

  it.each([
    ['a notebook', async (place: string) => void (await receiveNotebook(place, received))],
    ['an empty folder', (place: string) => mkdir(place)],
    ['a file', (place: string) => writeFile(place, 'mine')],
  ])('does not go where %s is', async (_id, make) => {
    const place = join(home, 'Mine');
    await make(place);
    expect(await receiveNotebook(place, received)).toMatchObject({
      ok: false,
      problem: { code: 'dossier.into-existing' },
    });
    expect(await readdir(home)).toEqual(['Mine']);
  });

  it.each(['CON', '.hidden', 'a:b'])('does not get the name %s', async (name) => {
    expect(await receiveNotebook(join(home, name), received)).toMatchObject({
      ok: false,
      problem: { code: 'notebook.bad-name' },
    });
    expect(await readdir(home)).toEqual([]);
  });

  it.each([
    ['a name that is a path', new Map([['../../escaped', attachedBytes]])],
    ['another content than its name says', new Map([[attachedSum, new Uint8Array([1])]])],
  ])('is refused where an attached file has %s', async (_id, attachments) => {
    expect(await receiveNotebook(join(home, 'Theirs'), { journal, attachments })).toMatchObject({
      ok: false,
    });
    expect(await readdir(home)).toEqual([]);
  });

  it('is refused where its journal is torn', async () => {
    const torn = { ...received, journal: journal.subarray(0, -3) };
    expect(await receiveNotebook(join(home, 'Theirs'), torn)).toMatchObject({ ok: false });
    expect(await readdir(home)).toEqual([]);
  });

  it('needs a folder to be in', async () => {
    const result = await receiveNotebook(join(home, 'nowhere', 'Theirs'), received);
    expect(result).toMatchObject({ ok: false, problem: { code: 'file.failed' } });
  });
});

/** Every call that touches the disk, counted; the one at `failAt` fails as on a full disk. */
function failing(failAt: number): { readonly files: Files; readonly calls: () => number } {
  let calls = 0;
  const tick = (): void => {
    calls += 1;
    if (calls === failAt) throw Object.assign(new Error('no room'), { code: 'ENOSPC' });
  };
  const counted =
    <A extends unknown[], R>(call: (...args: A) => Promise<R>) =>
    async (...args: A): Promise<R> => {
      tick();
      return call(...args);
    };
  const opened = (file: OpenFile): OpenFile => ({
    ...file,
    write: counted(file.write),
    sync: counted(file.sync),
  });
  const files: Files = {
    ...nodeFiles,
    makeFolder: counted(nodeFiles.makeFolder),
    open: async (path, mode) => {
      tick();
      return opened(await nodeFiles.open(path, mode));
    },
    rename: counted(nodeFiles.rename),
    syncFolder: counted(nodeFiles.syncFolder),
  };
  return { files, calls: () => calls };
}

it('whichever call of the disk fails, either all of it is there or nothing', async () => {
  const { files, calls } = failing(0);
  await receiveNotebook(join(home, 'Count'), received, { files });
  const total = calls();
  expect(total).toBeGreaterThan(8);
  for (let failAt = 1; failAt <= total; failAt++) {
    const place = join(home, `Try${failAt}`);
    const result = await receiveNotebook(place, received, { files: failing(failAt).files });
    const there = (await readdir(home)).filter((name) => name.includes(`Try${failAt}`) && name.length <= 6);
    expect(result.ok, `call ${failAt}`).toBe(false);
    // Only the last call comes after the name: the notebook is whole then, and said not to be safe yet.
    expect(there.length, `call ${failAt}`).toBe(failAt === total ? 1 : 0);
    if (there.length > 0) expect(await verify(place)).toMatchObject({ ok: true, value: { problems: [] } });
  }
  expect((await readdir(home)).filter((name) => name.startsWith('.'))).toEqual([]);
});
