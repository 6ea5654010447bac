import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Dialog, SaveDialogOptions } from 'electron';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { saveFile } from './save-dialog.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'counterpoise-save-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** A dialog that gives the answers in order and remembers what it was asked. */
function dialogs(...answers: (string | null)[]) {
  const asked: string[] = [];
  const showSaveDialog = async (options: SaveDialogOptions) => {
    asked.push(options.defaultPath ?? '');
    const filePath = answers.shift() ?? null;
    return { canceled: filePath === null, filePath: filePath ?? '' };
  };
  const dialog = { showSaveDialog } as unknown as Pick<Dialog, 'showSaveDialog'>;
  return {
    asked,
    save: saveFile({ dialog, app: { getPath: () => '/documents' }, window: () => undefined }),
  };
}

describe('saving', () => {
  it('writes the file where the person says, and begins there the next time', async () => {
    const path = join(folder, 'Rig B.pdf');
    const { asked, save } = dialogs(path, null);
    expect(await save('Rig B.pdf', Uint8Array.of(1, 2))).toEqual({ ok: true, value: path });
    expect(await readFile(path)).toEqual(Buffer.of(1, 2));
    expect(await save('other.pdf', new Uint8Array())).toEqual({ ok: true, value: null });
    expect(asked).toEqual([join('/documents', 'Rig B.pdf'), join(folder, 'other.pdf')]);
    expect(await readdir(folder), 'nothing half written is left').toEqual(['Rig B.pdf']);
  });

  it.each([
    ['../../outside.pdf', '-..-outside.pdf'],
    ['/etc/passwd', '-etc-passwd'],
    ['C:\\x\u0000.pdf', 'C--x-.pdf'],
    ['..', 'Counterpoise'],
  ])('suggests a name and never a place: %j', async (suggested, name) => {
    const { asked, save } = dialogs(null);
    await save(suggested, new Uint8Array());
    expect(asked).toEqual([join('/documents', name)]);
  });

  it('that fails is a problem with the reason', async () => {
    const { save } = dialogs(join(folder, 'none', 'x.pdf'));
    expect(await save('x.pdf', new Uint8Array())).toMatchObject({
      ok: false,
      problem: {
        code: 'file.failed',
        place: 'x.pdf',
        figures: { detail: 'the file or folder is not there (ENOENT)' },
      },
    });
  });
});
