/** Handing over and receiving from the command line. */
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { craftedZip } from '../../tests/specimen/crafted-zip.ts';
import { writeDemo } from '../desk/index.ts';
import { captured } from './captured.ts';
import { DAMAGED, GOOD, NO, USAGE } from './terminal.ts';

let home = '';
let demo = '';
let file = '';
let handedOver: Awaited<ReturnType<typeof captured>>;
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'dossier-'));
  demo = join(home, 'Demo');
  file = join(home, 'dossier.zip');
  await writeDemo(demo);
  handedOver = await captured(['dossier', demo, '--out', file]);
}, 60_000);
afterAll(() => rm(home, { recursive: true }));

const journalIn = (folder: string): Promise<Buffer> => readFile(join(folder, 'journal.jsonl'));

describe('dossier NOTEBOOK --out', () => {
  it('says what your collaborator will ask before it says what it wrote', () => {
    expect([handedOver.code, handedOver.err]).toEqual([GOOD, '']);
    const lines = handedOver.out.trim().split('\n');
    expect(lines[0]).toBe('Your collaborator will ask:');
    expect(lines.slice(1, -1).every((line) => line.startsWith('- '))).toBe(true);
    expect(lines.at(-1)).toContain(`Wrote ${file}`);
  });

  it('writes the same file again', async () => {
    const again = join(home, 'again.zip');
    await captured(['dossier', demo, '--out', again]);
    expect(Buffer.compare(await readFile(again), await readFile(file))).toBe(0);
  }, 60_000);

  it('does not know a prototype that is not there', async () => {
    const { code, err } = await captured([
      'dossier',
      demo,
      '--out',
      join(home, 'x.zip'),
      '--prototype',
      'Nobody',
    ]);
    expect(code).toBe(USAGE);
    expect(err).toContain('there is no prototype “Nobody”');
  });
});

describe('dossier --verify', () => {
  it('says what it holds', async () => {
    const { code, out } = await captured(['dossier', '--verify', file]);
    expect(code).toBe(GOOD);
    expect(out).toContain('dossier of “Sandpiper tool cart”');
    expect(out).toContain('3 revision');
    expect(out).toContain(`${file}: sound`);
  });

  it('says how it stands to one’s own notebook', async () => {
    const { code, out } = await captured(['dossier', '--verify', file, '--against', demo]);
    expect(code).toBe(GOOD);
    expect(out).toContain('against yours: the same; ');
  });

  it('names what is wrong with a damaged or hostile one, and with what is not there', async () => {
    const spoilt = await readFile(file);
    const middle = Math.floor(spoilt.length / 2);
    spoilt[middle] = (spoilt[middle] ?? 0) ^ 1;
    const damaged = join(home, 'damaged.zip');
    await writeFile(damaged, spoilt);
    expect(await captured(['dossier', '--verify', damaged])).toMatchObject({ code: DAMAGED, out: '' });

    const hostile = join(home, 'hostile.zip');
    await writeFile(hostile, craftedZip({ files: [{ name: '../outside.txt', content: 'x' }] }));
    const { code, err } = await captured(['dossier', '--receive', hostile, '--into', join(home, 'Hostile')]);
    expect(code).toBe(DAMAGED);
    expect(err).toContain('../outside.txt: the name leads out of its folder.');
    expect(await readdir(home)).not.toContain('outside.txt');
    expect(await readdir(home)).not.toContain('Hostile');

    expect(await captured(['dossier', '--verify', join(home, 'nothing.zip')])).toMatchObject({ code: USAGE });
  });
});

describe('dossier --receive', () => {
  it('makes a notebook that is the same as the one handed over', async () => {
    const into = join(home, 'Theirs');
    const { code, out } = await captured(['dossier', '--receive', file, '--into', into]);
    expect(code).toBe(GOOD);
    expect(out).toContain(`into ${into}`);
    expect(await journalIn(into)).toEqual(await journalIn(demo));
    const [mine, theirs] = [await captured(['verify', demo]), await captured(['verify', into])];
    expect(theirs.code).toBe(GOOD);
    expect(theirs.out.replace('Theirs', 'Demo')).toBe(mine.out);
    expect((await captured(['margins', into])).out).toBe((await captured(['margins', demo])).out);
  });

  it('joins nothing to a notebook that is there', async () => {
    const before = await journalIn(demo);
    const { code, err } = await captured(['dossier', '--receive', file, '--into', demo]);
    expect(code).toBe(USAGE);
    expect(err).toContain('a dossier is not joined to an existing notebook');
    expect(await journalIn(demo)).toEqual(before);
  });

  it('says so where the sender did not have a file', async () => {
    const poor = join(home, 'Poor');
    await captured(['dossier', '--receive', file, '--into', poor]);
    await rm(join(poor, 'attachments'), { recursive: true });
    const lacking = join(home, 'lacking.zip');
    expect((await captured(['dossier', poor, '--out', lacking])).out).toContain(
      '- missing file: Where is the file',
    );
    const { code, err } = await captured(['dossier', '--receive', lacking, '--into', join(home, 'Lacking')]);
    expect(code).toBe(NO);
    expect(err).toContain('the sender did not have the file');
  }, 60_000);
});

it.each([
  [[]],
  [['x']],
  [['--out', 'x.zip']],
  [['x', 'y', '--out', 'x.zip']],
  [['--verify', 'a', '--receive', 'b', '--into', 'c']],
  [['--receive', 'a']],
  [['--into', 'a']],
  [['--verify', 'a', '--letter']],
  [['--verify', 'a', '--into', 'b']],
  [['x', '--verify', 'a']],
])('dossier %j says how it is used', async (args) => {
  const { code, err } = await captured(['dossier', ...args]);
  expect(code).toBe(USAGE);
  expect(err).toContain('dossier takes:');
});

describe('export', () => {
  it.each([
    ['c', '#define DESIGN_REVISION "B"'],
    ['python', 'REVISION = "B"'],
    ['csv', 'LEAN_GAIN_m_per_rad,gain on the lean,0.8,m/rad,'],
    ['json', '"revision": "B"'],
  ])('--as %s gives the figures of the revision', async (form, words) => {
    const { code, out } = await captured(['export', demo, '--as', form, '--revision', 'B']);
    expect(code).toBe(GOOD);
    expect(out).toContain(words);
  });

  it('writes a file where one is named', async () => {
    const header = join(home, 'design.h');
    const { code, out } = await captured(['export', demo, '--as', 'c', '--out', header]);
    expect(code).toBe(GOOD);
    expect(out).toContain(`Wrote ${header}`);
    expect(await readFile(header, 'utf8')).toBe((await captured(['export', demo, '--as', 'c'])).out);
  });

  it.each([[[]], [['--as', 'excel']]])('%j says which forms there are', async (args) => {
    const { code, err } = await captured(['export', demo, ...args]);
    expect(code).toBe(USAGE);
    expect(err).toContain('c, python, csv, json');
  });
});
