/**
 * The page of the window gone: loaded again once, because what was acknowledged is on the disk; a second time
 * within a minute the person decides.
 */
import type { BrowserWindow, Dialog } from 'electron';

export interface CrashSpec {
  readonly window: BrowserWindow;
  readonly dialog: Pick<Dialog, 'showMessageBox'>;
  readonly quit: () => void;
  /** Milliseconds. */
  readonly now: () => number;
}

export function setupCrashes({ window, dialog, quit, now }: CrashSpec): void {
  let last = Number.NEGATIVE_INFINITY;
  window.webContents.on('render-process-gone', async (_event, { reason }) => {
    if (reason === 'clean-exit') return;
    const again = now() - last < 60_000;
    last = now();
    if (again) {
      const { response } = await dialog.showMessageBox(window, {
        type: 'error',
        message: `The window stopped twice within a minute (${reason}).`,
        detail: 'What was acknowledged is on the disk. It can be loaded once more, or the program can end.',
        buttons: ['Load again', 'End'],
        defaultId: 0,
        cancelId: 1,
      });
      if (response === 1) return quit();
    }
    window.webContents.reload();
  });
}
