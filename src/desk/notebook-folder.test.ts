import { describe, expect, it } from 'vitest';
import { processNumbered } from '../../tests/durability/script.ts';
import { type SimulatedDisk, simulatedDisk } from '../../tests/durability/simulated-disk.ts';
import { type Change, create, set } from '../notebook/index.ts';
import { attachmentPath, hashOf, largestAttachment } from './attachments.ts';
import { createNotebook, type Ground, type NotebookFolder, openNotebook } from './notebook-folder.ts';

const folder = '/home/Tilt car';
const journalPath = `${folder}/journal.jsonl`;
const renamed = (name: string): Change => set('notebook', 'notebook', { name });

function ground(disk: SimulatedDisk, pid = 1): Ground {
  return {
    files: disk.files,
    now: () => new Date('2026-03-01T09:00:00Z'),
    processes: { ...processNumbered(pid), isAlive: () => true },
  };
}

async function newDisk(): Promise<SimulatedDisk> {
  const disk = simulatedDisk();
  expect(await createNotebook(folder, { author: 'B' }, ground(disk))).toEqual({ ok: true, value: null });
  return disk;
}

async function opened(disk: SimulatedDisk, pid = 1): Promise<NotebookFolder> {
  const result = await openNotebook(folder, ground(disk, pid));
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

const codes = (notebook: NotebookFolder): readonly string[] => notebook.problems.map(({ code }) => code);

describe('a new notebook', () => {
  it('begins with its own record', async () => {
    const notebook = await opened(await newDisk());
    expect(notebook.entries).toEqual([
      {
        seq: 1,
        at: '2026-03-01T09:00:00.000+00:00',
        by: 'B',
        change: create('notebook', 'notebook', {
          name: 'Tilt car',
          createdAt: '2026-03-01T09:00:00.000+00:00',
        }),
      },
    ]);
    expect(notebook).toMatchObject({ readOnly: false, problems: [], generation: 1 });
    expect(notebook.id).toMatch(/^[0-9a-f-]{36}$/);
  });

  it('is not made over another one', async () => {
    const disk = await newDisk();
    const before = disk.peek(journalPath);
    expect(await createNotebook(folder, { author: 'C' }, ground(disk))).toMatchObject({
      ok: false,
      problem: { code: 'notebook.exists' },
    });
    expect(disk.peek(journalPath)).toEqual(before);
  });

  it('is not made in a folder of somebody else, but in one that a crash left without a journal', async () => {
    const disk = simulatedDisk();
    await disk.files.makeFolder(folder);
    await disk.files.makeFolder(`${folder}/attachments`);
    disk.poke(`${folder}/journal.jsonl.0123456789ab.unfinished`, new Uint8Array(3));
    expect((await createNotebook(folder, { author: 'B' }, ground(disk))).ok).toBe(true);

    const other = simulatedDisk();
    await other.files.makeFolder(folder);
    other.poke(`${folder}/letter.txt`, new Uint8Array(3));
    expect((await createNotebook(folder, { author: 'B' }, ground(other))).ok).toBe(false);
  });
});

describe('an open notebook', () => {
  it('keeps what was added, with the time of each change and in order', async () => {
    const disk = await newDisk();
    const notebook = await opened(disk);
    const outcome = await notebook.append(1, 'Ω', [renamed('a'), renamed('b')]);
    expect(outcome.ok && outcome.value.map(({ seq, by }) => [seq, by])).toEqual([
      [2, 'Ω'],
      [3, 'Ω'],
    ]);
    await notebook.close();
    const again = await opened(disk);
    expect(again.entries.slice(1)).toEqual(outcome.ok && outcome.value);
  });

  it('orders by number, so that a clock that goes back does no harm', async () => {
    const disk = await newDisk();
    const hours = ['12', '11', '10'];
    const result = await openNotebook(folder, {
      ...ground(disk),
      now: () => new Date(`2026-03-01T${hours.shift() ?? '09'}:00:00Z`),
    });
    if (!result.ok) throw new Error('not opened');
    await result.value.append(1, 'B', [renamed('a')]);
    await result.value.append(2, 'B', [renamed('b')]);
    await result.value.close();
    const { entries, problems } = await opened(disk);
    expect(problems).toEqual([]);
    expect(entries.map(({ seq }) => seq)).toEqual([1, 2, 3]);
    expect(entries[2]?.at.localeCompare(entries[1]?.at ?? '')).toBe(-1);
  });

  it('refuses a change that cannot be applied, with all others of its group, and writes nothing', async () => {
    const disk = await newDisk();
    const notebook = await opened(disk);
    const before = disk.peek(journalPath);
    const outcome = await notebook.append(1, 'B', [renamed('a'), set('prototype', 'none', { name: 'x' })]);
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'record.unknown' } });
    expect(disk.peek(journalPath)).toEqual(before);
    expect((await notebook.append(1, 'B', [renamed('b')])).ok).toBe(true);
  });

  it('refuses a change made without knowing of the last one', async () => {
    const notebook = await opened(await newDisk());
    await notebook.append(1, 'B', [renamed('a')]);
    expect(await notebook.append(1, 'C', [renamed('b')])).toMatchObject({
      ok: false,
      problem: { code: 'journal.changed-elsewhere', figures: { known: 1, last: 2 } },
    });
    expect(notebook.readOnly).toBe(false);
  });

  it('writes calls made at the same time one after the other', async () => {
    const notebook = await opened(await newDisk());
    const outcomes = await Promise.all([
      notebook.append(1, 'B', [renamed('a')]),
      notebook.append(2, 'B', [renamed('b'), renamed('c')]),
      notebook.append(4, 'B', [renamed('d')]),
    ]);
    expect(outcomes.map(({ ok }) => ok)).toEqual([true, true, true]);
    expect(notebook.entries).toHaveLength(5);
  });

  it('makes one write and one sync of a group', async () => {
    const disk = await newDisk();
    const notebook = await opened(disk);
    const from = disk.log.length;
    await notebook.append(1, 'B', [renamed('a'), renamed('b'), renamed('c')]);
    expect(disk.log.slice(from)).toEqual([`write ${journalPath}`, `sync ${journalPath}`]);
  });

  it('takes no more once it is closed', async () => {
    const notebook = await opened(await newDisk());
    await notebook.close();
    expect(await notebook.append(1, 'B', [renamed('a')])).toMatchObject({
      ok: false,
      problem: { code: 'notebook.not-open' },
    });
  });
});

describe('a write that fails', () => {
  const lastWrite = (disk: SimulatedDisk, call: number) => disk.log[disk.log.length - 1 + call];

  it.each(['ENOSPC', 'EIO'])('with %s is taken back, and the next one goes through', async (code) => {
    const disk = await newDisk();
    const notebook = await opened(disk);
    const before = disk.peek(journalPath);
    disk.plan({ failAt: { call: 1, code } });
    expect(await notebook.append(1, 'B', [renamed('a')])).toMatchObject({
      ok: false,
      problem: { code: 'journal.write-failed' },
    });
    expect(disk.peek(journalPath)).toEqual(before);
    expect(notebook.readOnly).toBe(false);
    expect((await notebook.append(1, 'B', [renamed('b')])).ok).toBe(true);
  });

  it('half way is taken back', async () => {
    const disk = await newDisk();
    const notebook = await opened(disk);
    const before = disk.peek(journalPath);
    disk.plan({ shortWriteAt: { call: 1, bytes: 40 } });
    expect(await notebook.append(1, 'B', [renamed('a')])).toMatchObject({
      ok: false,
      problem: { code: 'journal.write-failed', figures: { detail: 'the disk is full (ENOSPC)' } },
    });
    expect(disk.peek(journalPath)).toEqual(before);
  });

  it('in the sync is not acknowledged and taken back', async () => {
    const disk = await newDisk();
    const notebook = await opened(disk);
    const before = disk.peek(journalPath);
    disk.plan({ failAt: { call: 2, code: 'EIO' } });
    expect((await notebook.append(1, 'B', [renamed('a')])).ok).toBe(false);
    expect(lastWrite(disk, 0)).toBe(`sync ${journalPath}`);
    expect(disk.peek(journalPath)).toEqual(before);
    expect(notebook.entries).toHaveLength(1);
  });

  it('and cannot be taken back leaves the notebook read-only', async () => {
    const disk = await newDisk();
    const notebook = await opened(disk);
    disk.plan({ failAt: { call: 2, code: 'EIO', forEver: true } });
    const outcome = await notebook.append(1, 'B', [renamed('a')]);
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'notebook.read-only' } });
    disk.plan({});
    expect(notebook.readOnly).toBe(true);
    expect(await notebook.append(1, 'B', [renamed('b')])).toEqual(outcome);
    expect(await notebook.addAttachment(new Uint8Array(1))).toEqual(outcome);
  });
});

describe('two processes on one notebook', () => {
  it('the second reads, with a problem that says who writes', async () => {
    const disk = await newDisk();
    const first = await opened(disk, 1);
    const second = await opened(disk, 2);
    expect(second.readOnly).toBe(true);
    expect(second.problems).toMatchObject([{ code: 'notebook.locked', figures: { pid: 1, host: 'garage' } }]);
    expect(await second.append(1, 'C', [renamed('x')])).toMatchObject({
      ok: false,
      problem: { code: 'notebook.locked' },
    });
    expect((await first.append(1, 'B', [renamed('a')])).ok).toBe(true);
    await second.close();
    expect((await first.append(2, 'B', [renamed('b')])).ok).toBe(true);
  });

  it('the second leaves a line alone that the first is just writing', async () => {
    const disk = await newDisk();
    await opened(disk, 1);
    disk.poke(journalPath, Buffer.concat([disk.peek(journalPath), Buffer.from('{"seq":2')]));
    const before = disk.peek(journalPath);
    const second = await opened(disk, 2);
    expect(codes(second)).toEqual(['notebook.locked']);
    expect(second.entries).toHaveLength(1);
    expect(disk.peek(journalPath)).toEqual(before);
  });

  it.each([
    ['another journal was put in its place', journalPath, 0],
    ['the journal has grown', journalPath, 2],
    ['another lock was put in place', `${folder}/lock`, 2],
  ])('the first stops when %s', async (_what, path, grown) => {
    const disk = await newDisk();
    const notebook = await opened(disk);
    if (path === journalPath && grown > 0) {
      const file = await disk.files.open(path, 'existing');
      await file.write(new Uint8Array(grown), disk.peek(path).length);
    } else disk.poke(path, Buffer.concat([disk.peek(path), new Uint8Array(grown)]));
    expect(await notebook.append(1, 'B', [renamed('a')])).toMatchObject({
      ok: false,
      problem: { code: 'journal.changed-outside' },
    });
    expect(notebook.readOnly).toBe(true);
  });
});

describe('opening after a crash', () => {
  it('moves a torn end aside, says so, and starts a new working copy', async () => {
    const disk = await newDisk();
    const sound = disk.peek(journalPath);
    const torn = Buffer.from('{"seq":2,"at":"2026-03-');
    disk.poke(journalPath, Buffer.concat([sound, torn]));
    const notebook = await opened(disk);
    expect(notebook.problems).toEqual([
      {
        code: 'journal.torn-tail',
        place: 'Journal',
        figures: { line: 3, bytes: torn.length, file: 'set-aside/journal-tail-20260301T090000Z.txt' },
      },
    ]);
    expect(notebook).toMatchObject({ readOnly: false, generation: 2 });
    expect(disk.peek(journalPath)).toEqual(sound);
    expect(Buffer.from(disk.peek(`${folder}/set-aside/journal-tail-20260301T090000Z.txt`))).toEqual(torn);
    expect((await notebook.append(1, 'B', [renamed('a')])).ok).toBe(true);
  });

  it('keeps the copies of two torn ends within one second apart', async () => {
    const disk = await newDisk();
    for (const text of ['first', 'second']) {
      disk.poke(journalPath, Buffer.concat([disk.peek(journalPath), Buffer.from(text)]));
      await (await opened(disk)).close();
    }
    expect(await disk.files.list(`${folder}/set-aside`)).toEqual([
      'journal-tail-20260301T090000Z.txt',
      'journal-tail-20260301T090000Z-2.txt',
    ]);
  });

  it('shortens the journal only after the copy is on the medium', async () => {
    const disk = await newDisk();
    disk.poke(journalPath, Buffer.concat([disk.peek(journalPath), Buffer.from('torn')]));
    await opened(disk);
    const aside = `${folder}/set-aside/journal-tail-20260301T090000Z.txt`;
    const order = disk.log
      .filter((line) => line.includes('set-aside') || line.endsWith(journalPath))
      .slice(-6);
    expect(order).toEqual([
      `create ${aside}`,
      `write ${aside}`,
      `sync ${aside}`,
      `sync folder ${folder}/set-aside`,
      `truncate ${journalPath}`,
      `sync ${journalPath}`,
    ]);
  });

  it('reads only, and changes nothing, where the end cannot be set aside', async () => {
    const disk = await newDisk();
    disk.poke(journalPath, Buffer.concat([disk.peek(journalPath), Buffer.from('torn')]));
    const before = disk.peek(journalPath);
    disk.plan({ failAt: { call: 4, code: 'ENOSPC', forEver: true } }); // the lock can still be written
    const notebook = await opened(disk);
    expect(notebook.readOnly).toBe(true);
    expect(codes(notebook)).toEqual(['journal.torn-tail-left', 'notebook.cannot-write']);
    expect(notebook.entries).toHaveLength(1);
    expect(disk.peek(journalPath)).toEqual(before);
  });

  it('gives out what stands before a damaged line and never writes', async () => {
    const disk = await newDisk();
    const first = await opened(disk);
    await first.append(1, 'B', [renamed('number one')]);
    await first.append(2, 'B', [renamed('number two')]);
    await first.close();
    const damaged = Buffer.from(disk.peek(journalPath));
    damaged.write('letters', damaged.indexOf('number one'));
    disk.poke(journalPath, damaged);
    const notebook = await opened(disk);
    expect(notebook.readOnly).toBe(true);
    expect(notebook.problems).toMatchObject([{ code: 'journal.damaged', figures: { line: 3, sound: 2 } }]);
    expect(notebook.entries).toHaveLength(1);
    expect(await notebook.append(1, 'B', [renamed('x')])).toMatchObject({
      ok: false,
      problem: { code: 'journal.damaged' },
    });
    await notebook.close();
    expect(Buffer.from(disk.peek(journalPath))).toEqual(damaged);
  });

  it('reads where the folder cannot be written', async () => {
    const disk = await newDisk();
    disk.plan({ failAt: { call: 1, code: 'EACCES', forEver: true } });
    const notebook = await opened(disk);
    expect(notebook.readOnly).toBe(true);
    expect(codes(notebook)).toEqual(['notebook.cannot-write']);
    expect(notebook.entries).toHaveLength(1);
  });

  it('cuts nothing off a journal that another program is adding to', async () => {
    const disk = await newDisk();
    disk.poke(journalPath, Buffer.concat([disk.peek(journalPath), Buffer.from('torn')]));
    const longer = Buffer.concat([disk.peek(journalPath), Buffer.from(' and more')]);
    const read = disk.files.read.bind(disk.files);
    const result = await openNotebook(folder, {
      ...ground(disk),
      files: {
        ...disk.files,
        async read(path) {
          const bytes = await read(path);
          if (path === journalPath) disk.poke(journalPath, longer);
          return bytes;
        },
      },
    });
    expect(result).toMatchObject({
      ok: true,
      value: { readOnly: true, problems: [{ code: 'journal.changed-outside' }] },
    });
    expect(Buffer.from(disk.peek(journalPath))).toEqual(longer);
  });

  it('finds no notebook where there is no journal', async () => {
    const disk = simulatedDisk();
    await disk.files.makeFolder(folder);
    expect(await openNotebook(folder, ground(disk))).toMatchObject({
      ok: false,
      problem: { code: 'notebook.not-found', figures: { name: 'Tilt car' } },
    });
    expect(await disk.files.list(folder)).toEqual([]);
  });
});

describe('attachments', () => {
  const bytes = Buffer.from('lean,time\n');
  const sha256 = hashOf(bytes);
  const failure = (size: number): Change =>
    create('entry', 'e1', {
      prototype: 'p',
      revision: 'r',
      number: 1,
      title: 'Bracket',
      at: '2026-03-01T09:00:00+00:00',
      author: 'B',
      text: '',
      attachments: { a: { sha256, name: 'run 3.csv', mediaType: 'text/csv', size, order: 1 } },
    });

  async function withAttachment(size = bytes.length): Promise<SimulatedDisk> {
    const disk = await newDisk();
    const notebook = await opened(disk);
    expect(await notebook.addAttachment(bytes)).toEqual({ ok: true, value: { sha256, size: bytes.length } });
    expect((await notebook.append(1, 'B', [failure(size)])).ok).toBe(true);
    await notebook.close();
    return disk;
  }

  it('are kept under the hash of their content and read back', async () => {
    const disk = await withAttachment();
    expect(attachmentPath(folder, sha256)).toBe(`${folder}/attachments/${sha256.slice(0, 2)}/${sha256}`);
    const notebook = await opened(disk);
    expect(notebook.problems).toEqual([]);
    const content = await notebook.readAttachment(sha256);
    expect(content.ok && Buffer.from(content.value)).toEqual(bytes);
  });

  it('are written once, and again only when the file is not what it should be', async () => {
    const disk = await withAttachment();
    const notebook = await opened(disk);
    const from = disk.log.length;
    await notebook.addAttachment(bytes);
    expect(disk.log).toHaveLength(from);
    disk.poke(attachmentPath(folder, sha256), Buffer.from('other'));
    expect((await notebook.addAttachment(bytes)).ok).toBe(true);
    expect(Buffer.from(disk.peek(attachmentPath(folder, sha256)))).toEqual(bytes);
  });

  it('that are missing are reported by name when the notebook is opened', async () => {
    const disk = await withAttachment();
    await disk.files.remove(attachmentPath(folder, sha256));
    const notebook = await opened(disk);
    expect(notebook.problems).toMatchObject([{ code: 'attachment.missing', figures: { name: 'run 3.csv' } }]);
    expect(notebook.readOnly).toBe(false);
    expect(await notebook.readAttachment(sha256)).toMatchObject({
      ok: false,
      problem: { code: 'attachment.missing', figures: { name: 'run 3.csv' } },
    });
  });

  it('of another size are reported when the notebook is opened, of other content when they are read', async () => {
    const disk = await withAttachment();
    disk.poke(attachmentPath(folder, sha256), Buffer.from('short'));
    expect((await opened(disk)).problems).toMatchObject([
      { code: 'attachment.altered', figures: { name: 'run 3.csv', detail: 'it has 5 bytes instead of 10' } },
    ]);
    disk.poke(attachmentPath(folder, sha256), Buffer.from('Lean,time\n'));
    const notebook = await opened(disk, 2);
    expect(await notebook.readAttachment(sha256)).toMatchObject({
      ok: false,
      problem: { code: 'attachment.altered', figures: { detail: 'its content differs' } },
    });
  });

  it('above the limit are refused with their size', async () => {
    const notebook = await opened(await newDisk());
    expect(await notebook.addAttachment(new Uint8Array(largestAttachment + 1))).toMatchObject({
      ok: false,
      problem: { code: 'attachment.too-large', figures: { limit: 100 } },
    });
  });

  it('on a full disk are refused, and nothing is left behind', async () => {
    const disk = await newDisk();
    const notebook = await opened(disk);
    disk.plan({ shortWriteAt: { call: 5, bytes: 3 } });
    expect(await notebook.addAttachment(bytes)).toMatchObject({
      ok: false,
      problem: { code: 'file.failed', figures: { detail: 'the disk is full (ENOSPC)' } },
    });
    expect(await disk.files.list(`${folder}/attachments/${sha256.slice(0, 2)}`)).toEqual([]);
  });
});
