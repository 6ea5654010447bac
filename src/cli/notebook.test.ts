/** Commands on a notebook: the demo, copies of it, and copies that somebody spoiled. */
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createNotebook, openNotebook } from '../desk/index.ts';
import { create, type JournalEntry, set } from '../notebook/index.ts';
import { captured } from './captured.ts';
import { DAMAGED, GOOD, NO, USAGE } from './terminal.ts';

let home: string;
let demo: string;
let copies = 0;
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'counterpoise-'));
  demo = join(home, 'Demo cart');
  await captured(['demo', demo]);
});
afterAll(() => rm(home, { recursive: true, force: true }));

/** A copy of the demo that may be spoiled. */
async function copy(): Promise<string> {
  copies += 1;
  const folder = join(home, `copy ${copies}`);
  await cp(demo, folder, { recursive: true });
  return folder;
}
async function spoilJournal(change: (bytes: Buffer) => Buffer): Promise<string> {
  const folder = await copy();
  const path = join(folder, 'journal.jsonl');
  await writeFile(path, change(await readFile(path)));
  return folder;
}
/** Everything in the folder, to see whether looking left a trace. */
async function content(folder: string): Promise<Record<string, string>> {
  const names = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = names.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  return Object.fromEntries(
    await Promise.all(files.sort().map(async (file) => [file, (await readFile(file)).toString('base64')])),
  );
}

const AT = '2026-03-01T09:00:00+00:00';
async function notebookOf(name: string, changes: readonly JournalEntry['change'][]): Promise<string> {
  const folder = join(home, name);
  const entries = changes.map((change) => ({ at: AT, by: 'B', change }));
  const made = await createNotebook(folder, { name, author: 'B', entries });
  if (!made.ok) throw new Error(made.problem.code);
  return folder;
}
const prototype = (id: string, name: string) =>
  create('prototype', id, { name, kind: 'pendulum rig', createdAt: AT });
const revision = (id: string, of: string, letter: string) =>
  create('revision', id, { prototype: of, letter, createdAt: AT });

describe('demo', () => {
  it('writes a notebook that verifies', async () => {
    const folder = join(home, 'another demo');
    const { code, out, err } = await captured(['demo', folder]);
    expect([code, out, err]).toEqual([GOOD, `Wrote the demo notebook to ${folder}\n`, '']);
    expect((await captured(['verify', folder])).code).toBe(GOOD);
  });

  it('does not write over anything', async () => {
    const before = await content(demo);
    const { code, out, err } = await captured(['demo', demo]);
    expect([code, out]).toEqual([USAGE, '']);
    expect(err).toMatch(/“Demo cart” is there already\. Choose another name\./);
    expect(await content(demo)).toEqual(before);
  });

  it('needs the folder above', async () => {
    const { code, err } = await captured(['demo', join(home, 'none', 'demo')]);
    expect(code).toBe(DAMAGED);
    expect(err).toMatch(/not there/);
  });
});

describe('margins', () => {
  it('are those of the newest revision, one a line, and good where none fails', async () => {
    const { code, out, err } = await captured(['margins', demo]);
    expect([code, err]).toEqual([GOOD, '']);
    const [heading, ...lines] = out.trimEnd().split('\n');
    expect(heading).toBe('Sandpiper tool cart, revision C');
    const margins = lines.filter((line) => !line.startsWith('note: ')).map((line) => line.split('\t'));
    expect(margins).toHaveLength(12);
    for (const cells of margins) {
      expect(cells).toHaveLength(4);
      expect(cells[1]).toMatch(/ against /);
      expect(cells[2]).toBe('holds');
      expect(cells[3]).toMatch(/^MS \d.*, at least \d+\.\d{3}$/);
    }
  });

  it.each([
    ['A', NO, 'fails'],
    ['B', GOOD, 'in doubt'],
    ['C', GOOD, 'holds'],
    ['revision-b', GOOD, 'in doubt'],
  ])('of revision %s end with %i: lean %s', async (name, expected, verdict) => {
    const { code, out } = await captured(['margins', demo, '--revision', name]);
    expect(code).toBe(expected);
    expect(out).toMatch(new RegExp(`^Lean to recover from\\t.*\\t${verdict}\\t`, 'm'));
  });

  it('are written with one kind of minus sign', async () => {
    const { out } = await captured(['margins', demo, '--revision', 'A']);
    expect(out).toMatch(/MS −0\.\d+.*, at least −0\.\d{3}/);
    expect(out).not.toMatch(/(^|\s)-\d/m);
  });

  it('as JSON have the figures, in SI, with uncertainties', async () => {
    const { code, out } = await captured([
      'margins',
      demo,
      '--prototype',
      'Sandpiper tool cart',
      '--revision',
      'C',
      '--json',
    ]);
    expect(code).toBe(GOOD);
    const printed = JSON.parse(out);
    expect(printed).toMatchObject({ prototype: 'Sandpiper tool cart', revision: 'C' });
    const lean = printed.margins.find(({ id }: { id: string }) => id === 'lean');
    // tan φ = m_b e / M, from the figures beside it
    const { ballast_mass, ballast_offset_max, first_moment } = printed.figures;
    const held = Math.atan((ballast_mass.value * ballast_offset_max.value) / first_moment.value);
    expect(lean.capability.value).toBeCloseTo(held, 9);
    expect(lean.demand.value).toBeCloseTo(Math.PI / 36, 12);
    const { value, standardUncertainty } = lean.marginOfSafety;
    expect(value).toBeCloseTo(held / (Math.PI / 36) - 1, 9);
    expect(lean.lowerBound).toBeCloseTo(value - 1.645 * standardUncertainty, 9);
    expect(lean.unit).toBe('rad');
    expect(printed.notices.join()).toMatch(/no centring/);
  });

  it('that lack a figure are unknown and say what to enter; that is no failure', async () => {
    const folder = await notebookOf('bare', [
      prototype('p', 'Bare'),
      set('prototype', 'p', {
        'requirements/leanToRecover': { typed: '5°', si: 0.0873, u: 0, basis: 'measured' },
      }),
      revision('r', 'p', 'A'),
    ]);
    const plain = await captured(['margins', folder]);
    expect(plain.code).toBe(GOOD);
    expect(plain.out).toMatch(/Lean to recover from\tunknown against 5(\.0\d*)?°\tunknown: /);
    const { margins } = JSON.parse((await captured(['margins', folder, '--json'])).out);
    expect(margins[0]).toMatchObject({ id: 'lean', verdict: 'unknown' });
    expect(margins[0].missing.length).toBeGreaterThan(0);
    expect(margins[0].reason).not.toBe('');
  });

  it('need a choice where there is one', async () => {
    const folder = await notebookOf('two', [
      prototype('p', 'Cart'),
      prototype('q', 'Rig'),
      prototype('o', 'Cart'),
      revision('r', 'p', 'A'),
      revision('s', 'q', 'B'),
    ]);
    expect(await captured(['margins', folder])).toMatchObject({
      code: USAGE,
      err: expect.stringMatching(/--prototype: “Cart” \(p\), “Rig” \(q\), “Cart” \(o\)/),
    });
    expect(await captured(['margins', folder, '--prototype', 'Cart'])).toMatchObject({
      code: USAGE,
      err: expect.stringMatching(/“Cart” \(p\), “Cart” \(o\)/),
    });
    expect((await captured(['margins', folder, '--prototype', 'p'])).out).toMatch(/^Cart, revision A/);
    expect((await captured(['margins', folder, '--prototype', 'Rig'])).out).toMatch(/^Rig, revision B/);
    expect(await captured(['margins', folder, '--prototype', 'o'])).toMatchObject({
      code: USAGE,
      err: expect.stringMatching(/“Cart” has no revision.*none/),
    });
  });

  it.each([
    [['--revision', 'Z'], /“Sandpiper tool cart” has no revision Z\. It has: A, B, C\./],
    [['--revision', 'constructor'], /no revision constructor/],
    [['--prototype', 'Wren'], /no prototype “Wren”\. There are: “Sandpiper tool cart”\./],
    [['--prototype', '__proto__'], /no prototype “__proto__”/],
  ])('of %j, which is not there, name what there is', async (words, message) => {
    const { code, out, err } = await captured(['margins', demo, ...words]);
    expect([code, out]).toEqual([USAGE, '']);
    expect(err).toMatch(message);
  });

  it('of an empty notebook say so', async () => {
    const folder = await notebookOf('empty', [create('notebook', 'n', { name: 'empty', createdAt: AT })]);
    expect((await captured(['margins', folder])).err).toMatch(/There are: none/);
  });

  it('leave no trace in the notebook, not even while it is open elsewhere', async () => {
    const folder = await copy();
    const opened = await openNotebook(folder);
    if (!opened.ok) throw new Error('not opened');
    const before = await content(folder);
    expect((await captured(['margins', folder])).code).toBe(GOOD);
    expect((await captured(['verify', folder])).code).toBe(GOOD);
    expect(await content(folder)).toEqual(before);
    await opened.value.close();
  });

  it('of a journal with an entry that does not fit are given without it, and with a word about it', async () => {
    const folder = await notebookOf('odd', [
      prototype('p', 'Cart'),
      revision('r', 'p', 'A'),
      set('revision', 'none', { reason: 'x' }),
    ]);
    const { code, out, err } = await captured(['margins', folder]);
    expect(code).toBe(GOOD);
    expect(out).toMatch(/^Cart, revision A/);
    expect(err).toMatch(/^entry 3 not taken: .*none/);
  });
});

describe('a folder that is no notebook', () => {
  it.each(['margins', 'verify', 'rebuild'])('is told by %s', async (command) => {
    for (const folder of [join(home, 'nowhere'), home]) {
      const { code, out, err } = await captured([command, folder]);
      expect([code, out]).toEqual([USAGE, '']);
      expect(err).toMatch(/no notebook/);
    }
  });

  it.each([
    ['a text', 'Dear diary,\n'],
    ['nothing', ''],
    ['another program’s lines', '{"format":"other","version":1}\n'],
  ])('but has a journal.jsonl of %s is told apart from one that is', async (_what, text) => {
    const folder = join(home, `no journal ${text.length}`);
    await mkdir(folder);
    await writeFile(join(folder, 'journal.jsonl'), text);
    for (const command of ['margins', 'verify', 'rebuild']) {
      const { code, out, err } = await captured([command, folder]);
      expect([code, out], command).toEqual([DAMAGED, '']);
      expect(err).toMatch(/heading of a journal/);
    }
    expect(await readFile(join(folder, 'journal.jsonl'), 'utf8')).toBe(text);
  });

  it('has a folder where the journal should be', async () => {
    const folder = join(home, 'folder for a journal');
    await mkdir(join(folder, 'journal.jsonl'), { recursive: true });
    const { code, err } = await captured(['margins', folder]);
    expect(code).toBe(DAMAGED);
    expect(err).toMatch(/^.*folder for a journal: the journal cannot be read/);
  });
});

describe('verify', () => {
  it('of a sound notebook counts what is in it', async () => {
    const { code, out, err } = await captured(['verify', demo]);
    expect([code, err]).toEqual([GOOD, '']);
    const lines = (await readFile(join(demo, 'journal.jsonl'), 'utf8')).trimEnd().split('\n');
    const head = JSON.parse(lines.at(-1) ?? '{}').hash;
    expect(out).toContain(`Demo cart: ${lines.length} lines, chain whole, head ${head}\n`);
    expect(out).toContain('attachments: 1 of 1 sound\n');
    expect(out).toContain(
      'records: 1 notebook, 1 prototype, 3 revision, 4 entry, 4 card, 3 run, 1 failure\n',
    );
  });

  it('finds a torn last line, and leaves it', async () => {
    const folder = await spoilJournal((bytes) => bytes.subarray(0, bytes.length - 20));
    const before = await content(folder);
    const { code, out, err } = await captured(['verify', folder]);
    expect(code).toBe(DAMAGED);
    expect(out).toMatch(/chain torn at the end/);
    expect(err).toMatch(/^Journal: .*never completely written\. Nothing was changed/);
    expect(await content(folder)).toEqual(before);
    expect(await captured(['margins', folder])).toMatchObject({
      code: GOOD,
      err: expect.stringMatching(/torn and was not read\. See: rebuild/),
    });
  });

  it.each([0.2, 0.5, 0.8])('finds a flipped byte %f of the way through', async (share) => {
    const folder = await spoilJournal((bytes) => {
      const at = Math.floor(bytes.length * share);
      bytes[at] = (bytes[at] ?? 0) ^ 1;
      return bytes;
    });
    const { code, out, err } = await captured(['verify', folder]);
    expect(code).toBe(DAMAGED);
    expect(out).toMatch(/chain damaged/);
    expect(err).toMatch(/line \d+ is damaged: .+ Put back the file from a copy/s);
    expect(await captured(['margins', folder])).toMatchObject({
      code: DAMAGED,
      out: '',
      err: expect.stringMatching(/line \d+ of the journal is damaged.*See: verify/s),
    });
  });

  it('finds a line that was taken out', async () => {
    const folder = await spoilJournal((bytes) => {
      const lines = bytes.toString('utf8').split('\n');
      lines.splice(100, 1);
      return Buffer.from(lines.join('\n'));
    });
    expect(await captured(['verify', folder])).toMatchObject({
      code: DAMAGED,
      err: expect.stringMatching(/line 101 is damaged/),
    });
  });

  it('finds an attachment that is missing, and one that was altered', async () => {
    const missing = await copy();
    const [file = ''] = Object.keys(await content(join(missing, 'attachments')));
    await rm(file);
    expect(await captured(['verify', missing])).toMatchObject({
      code: DAMAGED,
      out: expect.stringContaining('attachments: 0 of 1 sound'),
      err: expect.stringMatching(/“first-weighing\.png”.*is missing\. Put it back/),
    });
    const altered = await copy();
    const [other = ''] = Object.keys(await content(join(altered, 'attachments')));
    await writeFile(other, 'x');
    expect(await captured(['verify', altered])).toMatchObject({
      code: DAMAGED,
      err: expect.stringMatching(/“first-weighing\.png”.*is not what was attached/),
    });
  });
});

describe('rebuild', () => {
  it('of a sound notebook changes nothing but the generation of its copies', async () => {
    const folder = await copy();
    const journal = await readFile(join(folder, 'journal.jsonl'));
    const { code, out, err } = await captured(['rebuild', folder]);
    expect([code, err]).toEqual([GOOD, '']);
    expect(out).toMatch(/^records: 1 notebook, .* 1 failure; working copies of generation 2 from now on\n$/);
    expect(await readFile(join(folder, 'journal.jsonl'))).toEqual(journal);
    expect((await captured(['rebuild', folder])).out).toMatch(/generation 3/);
    expect((await captured(['verify', folder])).code).toBe(GOOD);
  });

  it('sets a torn end aside, after which the notebook verifies', async () => {
    const folder = await spoilJournal((bytes) => bytes.subarray(0, bytes.length - 20));
    const torn = (await readFile(join(folder, 'journal.jsonl'))).toString('utf8').split('\n').at(-1) ?? '';
    const { code, err } = await captured(['rebuild', folder]);
    expect(code).toBe(GOOD);
    expect(err).toMatch(/never completely written\. It was moved to/);
    expect(await captured(['verify', folder])).toMatchObject({ code: GOOD, err: '' });
    const kept = Object.values(await content(folder)).map((text) =>
      Buffer.from(text, 'base64').toString('utf8'),
    );
    expect(
      kept.some((text) => text === torn),
      'nothing is lost',
    ).toBe(true);
  });

  it('does not touch a journal that is damaged in the middle', async () => {
    const folder = await spoilJournal((bytes) => {
      bytes[5000] = (bytes[5000] ?? 0) ^ 1;
      return bytes;
    });
    const before = await content(folder);
    const { code, out, err } = await captured(['rebuild', folder]);
    expect([code, out]).toEqual([DAMAGED, '']);
    expect(err).toMatch(/is damaged/);
    expect(await content(folder)).toEqual(before);
  });

  it('waits for its turn where the notebook is open elsewhere', async () => {
    const folder = await copy();
    const opened = await openNotebook(folder);
    if (!opened.ok) throw new Error('not opened');
    const { code, out, err } = await captured(['rebuild', folder]);
    expect([code, out]).toEqual([NO, '']);
    expect(err).toMatch(/open in another place/);
    await opened.value.close();
    expect((await captured(['rebuild', folder])).code).toBe(GOOD);
  });
});
