/** Asks where a report or a dossier goes, and writes it there whole. */
import { basename, dirname, join } from 'node:path';
import type { App, BaseWindow, Dialog } from 'electron';
import { fileReason, nodeFiles, writeWhole } from '../desk/index.ts';
import type { Outcome } from '../preload/index.ts';
import { bad, good } from '../quantity/index.ts';

export interface SaveDialogSpec {
  readonly dialog: Pick<Dialog, 'showSaveDialog'>;
  readonly app: Pick<App, 'getPath'>;
  /** The window that the question belongs to. */
  readonly window: () => BaseWindow | undefined;
}

/** The function behind the channel `file.save`; it remembers the folder of the last answer. */
export function saveFile({ dialog, app, window }: SaveDialogSpec) {
  let folder: string | undefined;
  return async (suggestedName: string, bytes: Uint8Array): Promise<Outcome<string | null>> => {
    const options = { defaultPath: join(folder ?? app.getPath('documents'), plainName(suggestedName)) };
    const owner = window();
    const { canceled, filePath } = await (owner
      ? dialog.showSaveDialog(owner, options)
      : dialog.showSaveDialog(options));
    if (canceled || filePath === '') return good(null);
    folder = dirname(filePath);
    try {
      await writeWhole(nodeFiles, filePath, bytes);
    } catch (error) {
      return bad('file.failed', basename(filePath), { detail: fileReason(error) });
    }
    return good(filePath);
  };
}

/** A suggestion is a name and never a place. */
function plainName(suggested: string): string {
  const name = suggested.replace(/[/\\:*?"<>|\p{Cc}]/gu, '-').replace(/^\.+/, '');
  return name === '' ? 'Counterpoise' : name;
}
