/**
 * `main/`: the program inside Electron: window, scheme, permissions, dialogs, the window's calls to the desk.
 * Thin: it turns Electron's events into calls of the desk and decides nothing else. This file is the entry.
 */
import { join } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron';
import { homeFolder, writeDemo } from '../desk/index.ts';
import { startUp } from './start-up.ts';

const out = join(import.meta.dirname, '..');
const userData = process.env.COUNTERPOISE_USER_DATA;

startUp({
  electron: { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session },
  home: homeFolder(),
  demo: writeDemo,
  folder: join(out, 'renderer'),
  preload: join(out, 'preload', 'preload.cjs'),
  platform: process.platform,
  ...(userData ? { userData } : {}),
}).catch((error: unknown) => {
  dialog.showErrorBox('Counterpoise does not start', error instanceof Error ? error.message : String(error));
  app.quit();
});
