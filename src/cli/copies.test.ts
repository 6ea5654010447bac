import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createNotebook } from '../desk/index.ts';
import { captured } from './captured.ts';
import { DAMAGED, GOOD, USAGE } from './terminal.ts';

let home: string;
let notebook: string;
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'counterpoise-copies-'));
  notebook = join(home, 'Rig');
  await createNotebook(notebook, { author: 'B' });
});
afterEach(() => rm(home, { recursive: true, force: true }));

const call = (...args: string[]) => captured(args);

describe('copies on the command line', () => {
  it('are made, listed, not made again without a change, and restored', async () => {
    const first = await call('copies', notebook, '--to', home);
    expect(first).toMatchObject({ code: GOOD, err: '' });
    const [, , path = ''] = first.out.trimEnd().split('\t');
    const again = await call('copies', notebook, '--to', home);
    expect(again).toEqual({ ...first, err: 'Nothing has changed since the newest copy.\n' });

    const back = join(home, 'Back');
    expect(await call('restore', path, '--into', back)).toMatchObject({ code: GOOD });
    expect(await readFile(join(back, 'journal.jsonl'))).toEqual(await readFile(path));
    expect(await call('restore', path, '--into', back)).toMatchObject({ code: USAGE });
  });

  it('say what is wrong with the names and with the content', async () => {
    expect((await call('copies')).code).toBe(USAGE);
    expect((await call('copies', join(home, 'none'), '--to', home)).code).toBe(USAGE);
    expect((await call('copies', notebook, '--to', join(home, 'none'))).code).toBe(DAMAGED);
    expect((await call('restore', notebook)).code).toBe(USAGE);
    await writeFile(join(home, 'letter.jsonl'), 'Dear all\n');
    expect((await call('restore', join(home, 'letter.jsonl'), '--into', join(home, 'New'))).code).toBe(
      DAMAGED,
    );
  });
});
