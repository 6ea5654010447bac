import { describe, expect, it } from 'vitest';
import { processNumbered } from '../../tests/durability/script.ts';
import { type SimulatedDisk, simulatedDisk } from '../../tests/durability/simulated-disk.ts';
import { create, set } from '../notebook/index.ts';
import { attachmentPath, hashOf } from './attachments.ts';
import { createNotebook, type Ground, openNotebook } from './notebook-folder.ts';
import { rebuild, verify } from './verify.ts';

const folder = '/home/Tilt car';
const journalPath = `${folder}/journal.jsonl`;
const at = '2026-03-01T09:00:00+00:00';
const bytes = Buffer.from('picture');
const sha256 = hashOf(bytes);

function ground(disk: SimulatedDisk, pid = 1): Ground {
  return {
    files: disk.files,
    now: () => new Date(at),
    processes: { ...processNumbered(pid), isAlive: () => true },
  };
}

/** A notebook of four entries, of which the third cannot be applied; one attachment. */
async function newDisk({ refused = false, attached = true } = {}): Promise<SimulatedDisk> {
  const disk = simulatedDisk();
  const entry = create('entry', 'e1', {
    prototype: 'p',
    revision: 'r',
    number: 1,
    title: 'Bracket',
    at,
    author: 'B',
    text: '',
    attachments: { a: { sha256, name: 'bracket.png', mediaType: 'image/png', size: 7, order: 1 } },
  });
  const changes = [
    create('notebook', 'notebook', { name: 'Tilt car', createdAt: at }),
    create('prototype', 'p', { name: 'p', kind: 'pendulum rig', createdAt: at }),
    ...(refused ? [set('revision', 'none', { reason: 'x' })] : []),
    entry,
  ];
  const entries = changes.map((change) => ({ at, by: 'B', change }));
  await createNotebook(folder, { author: 'B', entries }, ground(disk));
  if (attached) {
    await disk.files.makeFolder(`${folder}/attachments/${sha256.slice(0, 2)}`);
    disk.poke(attachmentPath(folder, sha256), bytes);
  }
  return disk;
}

describe('verifying a notebook', () => {
  it('counts what is sound and finds nothing wrong', async () => {
    const disk = await newDisk();
    expect(await verify(folder, ground(disk))).toEqual({
      ok: true,
      value: {
        name: 'Tilt car',
        id: expect.stringMatching(/^[0-9a-f-]{36}$/),
        lines: 4,
        entries: 3,
        head: expect.stringMatching(/^[0-9a-f]{64}$/),
        chain: 'whole',
        attachments: { named: 1, sound: 1 },
        records: { notebook: 1, prototype: 1, revision: 0, entry: 1, card: 0, run: 0, failure: 0 },
        problems: [],
      },
    });
  });

  it('changes nothing on the disk, a torn end included', async () => {
    const disk = await newDisk();
    disk.poke(journalPath, Buffer.concat([disk.peek(journalPath), Buffer.from('torn')]));
    const calls = disk.log.length;
    expect(await verify(folder, ground(disk))).toMatchObject({
      ok: true,
      value: {
        chain: 'torn at the end',
        problems: [{ code: 'journal.torn-tail-left', figures: { line: 5 } }],
      },
    });
    expect(disk.log).toHaveLength(calls);
  });

  it('names the damaged line', async () => {
    const disk = await newDisk();
    const damaged = Buffer.from(disk.peek(journalPath));
    damaged.write('gone', damaged.indexOf('rig"') - 1);
    disk.poke(journalPath, damaged);
    expect(await verify(folder, ground(disk))).toMatchObject({
      ok: true,
      value: { chain: 'damaged', entries: 1, problems: [{ code: 'journal.damaged', figures: { line: 3 } }] },
    });
  });

  it('names the line of an entry that does not fit', async () => {
    const disk = await newDisk({ refused: true });
    expect(await verify(folder, ground(disk))).toMatchObject({
      ok: true,
      value: {
        chain: 'whole',
        problems: [{ code: 'journal.refused', place: 'Journal, line 4', figures: { seq: 3 } }],
      },
    });
  });

  it('reads each attachment in full, so that one changed byte is found', async () => {
    const disk = await newDisk();
    disk.poke(attachmentPath(folder, sha256), Buffer.from('Picture'));
    expect(await verify(folder, ground(disk))).toMatchObject({
      ok: true,
      value: {
        attachments: { named: 1, sound: 0 },
        problems: [{ code: 'attachment.altered', figures: { name: 'bracket.png' } }],
      },
    });
  });

  it('finds no notebook where there is none', async () => {
    expect(await verify('/home/none', ground(simulatedDisk()))).toMatchObject({
      ok: false,
      problem: { code: 'notebook.not-found', figures: { name: 'none' } },
    });
  });
});

describe('rebuilding a notebook', () => {
  it('counts the records and declares the old working copy out of date', async () => {
    const disk = await newDisk();
    expect(await rebuild(folder, ground(disk))).toMatchObject({
      ok: true,
      value: { generation: 2, entries: 3, records: { notebook: 1, prototype: 1, entry: 1 }, problems: [] },
    });
    expect(await rebuild(folder, ground(disk))).toMatchObject({ ok: true, value: { generation: 3 } });
    const opened = await openNotebook(folder, ground(disk));
    expect(opened).toMatchObject({ ok: true, value: { generation: 3, readOnly: false } });
  });

  it('sets a torn end aside and says so', async () => {
    const disk = await newDisk();
    const sound = disk.peek(journalPath);
    disk.poke(journalPath, Buffer.concat([sound, Buffer.from('torn')]));
    expect(await rebuild(folder, ground(disk))).toMatchObject({
      ok: true,
      value: { entries: 3, problems: [{ code: 'journal.torn-tail' }] },
    });
    expect(disk.peek(journalPath)).toEqual(sound);
  });

  it('does nothing while another process has the notebook', async () => {
    const disk = await newDisk();
    await openNotebook(folder, ground(disk, 1));
    expect(await rebuild(folder, ground(disk, 2))).toMatchObject({
      ok: false,
      problem: { code: 'notebook.locked' },
    });
    expect(await disk.files.list(folder)).not.toContain('working-copy.json');
  });

  it('does nothing to a journal that is damaged in the middle', async () => {
    const disk = await newDisk();
    const damaged = Buffer.from(disk.peek(journalPath));
    damaged.write('gone', damaged.indexOf('rig"') - 1);
    disk.poke(journalPath, damaged);
    expect(await rebuild(folder, ground(disk))).toMatchObject({
      ok: false,
      problem: { code: 'journal.damaged', figures: { line: 3 } },
    });
    expect(Buffer.from(disk.peek(journalPath))).toEqual(damaged);
  });

  it('starts from 1 when the number of the working copy cannot be read', async () => {
    const disk = await newDisk();
    disk.poke(`${folder}/working-copy.json`, Buffer.from('{"generation":"many"}'));
    expect(await openNotebook(folder, ground(disk))).toMatchObject({ ok: true, value: { generation: 1 } });
  });
});
