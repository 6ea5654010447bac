import { beforeEach, describe, expect, it } from 'vitest';
import { processNumbered } from '../../tests/durability/script.ts';
import { type SimulatedDisk, simulatedDisk } from '../../tests/durability/simulated-disk.ts';
import { set } from '../notebook/index.ts';
import type { CopyListing, CopyMade } from '../preload/index.ts';
import type { Result } from '../quantity/index.ts';
import { attachmentPath, hashOf } from './attachments.ts';
import { listCopies, makeCopy } from './copies.ts';
import type { Files } from './files.ts';
import { readJournal } from './journal-reading.ts';
import { createNotebook, type Ground, type NotebookFolder, openNotebook } from './notebook-folder.ts';
import { restoreNotebook } from './restore.ts';

const folder = '/home/Tilt car';
const away = '/home/stick';
const picture = Buffer.from('picture');
let disk: SimulatedDisk;
let clock: Date;
let ground: Ground;
let notebook: NotebookFolder;

beforeEach(async () => {
  disk = simulatedDisk();
  clock = new Date('2026-03-18T09:00:00Z');
  ground = { files: disk.files, now: () => clock, processes: { ...processNumbered(1), isAlive: () => true } };
  await disk.files.makeFolder(away);
  await createNotebook(folder, { author: 'B' }, ground);
  notebook = value(await openNotebook(folder, ground));
});

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}
async function rename(name: string): Promise<void> {
  value(await notebook.append(notebook.entries.length, 'B', [set('notebook', 'notebook', { name })]));
}
const copy = (files: Files = disk.files): Promise<Result<CopyMade>> => makeCopy(files, folder, away, clock);
const listed = async (on = disk): Promise<readonly CopyListing[]> => value(await listCopies(on.files, away));
const pathOf = ({ shelf, file }: CopyListing): string => `${away}/${shelf}/${file}`;
const later = (minutes: number): void => {
  clock = new Date(clock.getTime() + minutes * 60_000);
};

describe('a copy', () => {
  it('is the whole journal under its time and head, on a shelf of the notebook', async () => {
    const made = value(await copy());
    expect(made).toMatchObject({ isNew: true, problems: [] });
    expect(made.copy.shelf).toMatch(/^Tilt car [0-9a-f]{8}$/);
    expect(made.copy).toMatchObject({ name: 'Tilt car', at: '2026-03-18T09:00:00Z' });
    expect(disk.peek(pathOf(made.copy))).toEqual(disk.peek(`${folder}/journal.jsonl`));
    const { head } = value(readJournal(disk.peek(pathOf(made.copy))));
    expect(made.copy.file).toBe(`journal-20260318T090000Z-${head.slice(0, 12)}.jsonl`);
    expect(await listed()).toEqual([made.copy]);
  });

  it('is made only after changes', async () => {
    const first = value(await copy());
    later(90);
    expect(value(await copy())).toEqual({ ...first, isNew: false });
    await rename('Other');
    expect(value(await copy())).toMatchObject({ isNew: true, copy: { at: '2026-03-18T10:30:00Z' } });
    expect(await listed()).toHaveLength(2);
  });

  it('keeps the shelf when the notebook is renamed', async () => {
    const first = value(await copy());
    const bytes = disk.peek(`${folder}/journal.jsonl`);
    await disk.files.makeFolder('/home/New name');
    disk.poke('/home/New name/journal.jsonl', bytes);
    expect(value(await makeCopy(disk.files, '/home/New name', away, clock)).copy).toEqual(first.copy);
  });

  it('holds each attachment once, whatever the number of copies', async () => {
    const { sha256 } = value(await notebook.addAttachment(picture));
    const { shelf } = value(await copy()).copy;
    expect(Buffer.from(disk.peek(attachmentPath(`${away}/${shelf}`, sha256)))).toEqual(picture);
    await rename('Other');
    later(60);
    const from = disk.log.length;
    value(await copy());
    expect(disk.log.slice(from).filter((line) => line.includes('/attachments/'))).toEqual([]);
  });

  it('does not take an attachment that is not what its name says, and tells', async () => {
    const { sha256 } = value(await notebook.addAttachment(picture));
    disk.poke(attachmentPath(folder, sha256), Buffer.from('Picture'));
    expect(value(await copy())).toMatchObject({ isNew: true, problems: [{ code: 'attachment.altered' }] });
  });

  it('ends with the last whole group while the next is being written', async () => {
    const sound = disk.peek(`${folder}/journal.jsonl`);
    disk.poke(`${folder}/journal.jsonl`, Buffer.concat([sound, Buffer.from('{"seq":2,')]));
    expect(disk.peek(pathOf(value(await copy()).copy))).toEqual(sound);
  });

  it('is not made of a damaged journal, and the sound ones stay', async () => {
    const first = value(await copy());
    await rename('number one');
    await rename('number two');
    const damaged = Buffer.from(disk.peek(`${folder}/journal.jsonl`));
    damaged.write('letters', damaged.indexOf('number one'));
    disk.poke(`${folder}/journal.jsonl`, damaged);
    expect(await copy()).toMatchObject({ ok: false, problem: { code: 'copies.failed' } });
    expect(await listed()).toEqual([first.copy]);
  });

  it('of a journal that has lost what an earlier one holds is told, and removes nothing', async () => {
    const early = disk.peek(`${folder}/journal.jsonl`);
    const names: string[] = [];
    for (let count = 0; count < 3; count++) {
      await rename(`Name ${count}`);
      later(1);
      names.push(value(await copy()).copy.file); // all within one hour: each replaces the one before
    }
    expect((await listed()).map(({ file }) => file)).toEqual([names[2]]);
    disk.poke(`${folder}/journal.jsonl`, early); // as a synchronising program might put it back
    later(1);
    expect(value(await copy())).toMatchObject({
      isNew: true,
      problems: [{ code: 'copies.not-continued', figures: { at: '2026-03-18T09:03:00Z' } }],
    });
    expect(await listed()).toHaveLength(2);
  });

  it('goes into no folder of its own making when the disk is not there', async () => {
    const elsewhere = await makeCopy(disk.files, folder, '/home/other stick', clock);
    expect(elsewhere).toMatchObject({
      ok: false,
      problem: { code: 'copies.failed', figures: { folder: '/home/other stick' } },
    });
    expect(await disk.files.facts('/home/other stick')).toBeUndefined();
  });

  it('that reads back as something else does not count and is removed', async () => {
    const lying: Files = {
      ...disk.files,
      async read(path) {
        const bytes = await disk.files.read(path);
        if (path.startsWith(away)) bytes[bytes.length - 3] = 48;
        return bytes;
      },
    };
    expect(await copy(lying)).toMatchObject({ ok: false, problem: { code: 'copies.failed' } });
    expect(await listed()).toEqual([]);
  });

  it('on a disk that refuses any call leaves the notebook alone, and on the shelf what is whole', async () => {
    const { sha256 } = value(await notebook.addAttachment(picture));
    const journal = disk.peek(`${folder}/journal.jsonl`);
    let refused = 0;
    for (const plan of ['once', 'short', 'for ever'] as const) {
      for (let call = 1; call < 30; call++) {
        disk.plan(
          plan === 'short'
            ? { shortWriteAt: { call, bytes: 20 } }
            : { failAt: { call, code: 'ENOSPC', forEver: plan === 'for ever' } },
        );
        const made = await copy();
        disk.plan({});
        if (!made.ok) refused += 1;
        expect(disk.peek(`${folder}/journal.jsonl`)).toEqual(journal);
        for (const each of await listed()) {
          const read = readJournal(disk.peek(pathOf(each)));
          expect(read.ok && read.value.soundLength).toBe(disk.peek(pathOf(each)).length);
          const beside = attachmentPath(`${away}/${each.shelf}`, sha256);
          expect(Buffer.from(disk.peek(beside))).toEqual(picture);
          await disk.files.remove(pathOf(each)); // for the next round
          await disk.files.remove(beside);
        }
      }
    }
    expect(refused, 'it did refuse').toBeGreaterThan(10);
  });
});

describe('restoring', () => {
  async function kept(): Promise<CopyListing> {
    const { sha256, size } = value(await notebook.addAttachment(picture));
    const file = { sha256, size, name: 'rig.png', mediaType: 'image/png', order: 1 };
    const at = '2026-03-18T09:00:00Z';
    const entry = { prototype: 'p', revision: 'r', number: 1, title: 'x', at, author: 'B', text: '' };
    value(
      await notebook.append(1, 'B', [
        { op: 'create', kind: 'entry', id: 'e', value: { ...entry, attachments: { a: file } } },
      ]),
    );
    return value(await copy()).copy;
  }

  it('makes the notebook as it was, with its attachments and its identity', async () => {
    const path = pathOf(await kept());
    await rename('Later');
    expect(value(await restoreNotebook(path, '/home/Back', ground))).toEqual({ entries: 2, problems: [] });
    const back = value(await openNotebook('/home/Back', ground));
    expect(back).toMatchObject({ id: notebook.id, readOnly: false, problems: [] });
    expect(back.entries).toEqual(notebook.entries.slice(0, 2));
    const content = value(await back.readAttachment(hashOf(picture)));
    expect(Buffer.from(content)).toEqual(picture);
  });

  it('takes the folder of a copied notebook as well', async () => {
    await kept();
    expect(value(await restoreNotebook(folder, '/home/Back', ground)).entries).toBe(2);
  });

  it('never writes where something is', async () => {
    const path = pathOf(await kept());
    const before = disk.log.length;
    expect(await restoreNotebook(path, folder, ground)).toMatchObject({
      ok: false,
      problem: { code: 'notebook.exists' },
    });
    expect(disk.log.slice(before)).toEqual([`make folder ${folder}`]); // refused by the disk
  });

  it('says which attachments the copy has not, and restores the rest', async () => {
    const made = await kept();
    await disk.files.remove(attachmentPath(`${away}/${made.shelf}`, hashOf(picture)));
    expect(value(await restoreNotebook(pathOf(made), '/home/Back', ground))).toMatchObject({
      problems: [{ code: 'attachment.missing', figures: { name: 'rig.png' } }],
    });
  });

  it('refuses a damaged copy and a place where none is, and makes no folder', async () => {
    await kept();
    await rename('Later');
    later(60);
    const path = pathOf(value(await copy()).copy);
    const damaged = Buffer.from(disk.peek(path));
    damaged.write('x', damaged.indexOf('"seq":1') + 40);
    disk.poke(path, damaged);
    expect(await restoreNotebook(path, '/home/Back', ground)).toMatchObject({
      ok: false,
      problem: { code: 'journal.damaged', figures: { line: 2 } },
    });
    expect(await restoreNotebook('/home/none', '/home/Back', ground)).toMatchObject({
      ok: false,
      problem: { code: 'copies.not-found' },
    });
    expect(await disk.files.facts('/home/Back')).toBeUndefined();
  });

  it('cut short at any call leaves no notebook or the whole one, and can be done again', async () => {
    const path = pathOf(await kept());
    for (let call = 1; call < 25; call++) {
      const back = `/home/Back ${call}`;
      disk.plan({ failAt: { call, code: 'EIO', forEver: true } });
      const restored = await restoreNotebook(path, back, ground);
      disk.plan({});
      const opened = await openNotebook(back, ground);
      if (opened.ok) {
        expect(opened.value.entries).toHaveLength(2);
        await opened.value.close();
      } else {
        expect(restored.ok).toBe(false);
        expect((await restoreNotebook(path, back, ground)).ok, `after call ${call}`).toBe(true);
      }
    }
  });
});
