import { cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createNotebook, openNotebook } from '../desk/index.ts';
import { set } from '../notebook/index.ts';
import { captured } from './captured.ts';
import { GOOD, NO, USAGE } from './terminal.ts';

let home: string;
let ours: string;
let theirs: string;
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'counterpoise-merge-'));
  ours = join(home, 'Rig');
  theirs = join(home, 'Copy');
  await createNotebook(ours, { author: 'B' });
  await cp(ours, theirs, { recursive: true });
});
afterEach(() => rm(home, { recursive: true, force: true }));

async function rename(folder: string, name: string): Promise<void> {
  const opened = await openNotebook(folder);
  if (!opened.ok) throw new Error('not opened');
  await opened.value.append(opened.value.entries.length, 'B', [set('notebook', 'notebook', { name })]);
  await opened.value.close();
}

describe('merging on the command line', () => {
  it('goes forward where only one side went on', async () => {
    await rename(theirs, 'Longer');
    expect(await captured(['merge', ours, theirs])).toEqual({
      code: GOOD,
      out: 'fast-forward: 1 entries in common, 1 added\n',
      err: '',
    });
    expect((await captured(['merge', ours, theirs])).out).toBe('nothing new: 2 entries in common, 0 added\n');
  });

  it('lists what is to decide, writes nothing, and writes once it is decided', async () => {
    await rename(ours, 'One');
    await rename(theirs, 'Two');
    const before = await readFile(join(ours, 'journal.jsonl'));
    const asked = await captured(['merge', ours, theirs]);
    expect(asked.code).toBe(NO);
    expect(asked.out).toBe('notebook notebook\tname\tours "One"\ttheirs "Two"\topen\n');
    expect(asked.err).toMatch(/1 to decide/);
    expect(await readFile(join(ours, 'journal.jsonl'))).toEqual(before);
    expect((await captured(['merge', ours, theirs, '--theirs'])).code).toBe(GOOD);
    expect((await captured(['merge', ours, theirs])).code).toBe(GOOD);
  });

  it('takes two copies of one notebook and one choice', async () => {
    await createNotebook(join(home, 'Other'), { author: 'B' });
    expect((await captured(['merge', ours])).code).toBe(USAGE);
    expect((await captured(['merge', ours, theirs, '--ours', '--theirs'])).code).toBe(USAGE);
    expect((await captured(['merge', ours, join(home, 'Other')])).code).toBe(USAGE);
  });
});
