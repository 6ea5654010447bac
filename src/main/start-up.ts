/** The start of the program inside Electron, in the order in which things have to happen. */
import type * as Electron from 'electron';
import { type DeskSpec, deskHandlers } from '../desk/index.ts';
import { setupCrashes } from './crashes.ts';
import { setupDeskCalls } from './desk-calls.ts';
import { setupMenu } from './menu.ts';
import { setupNavigation } from './navigation.ts';
import { windowAddress } from './own-address.ts';
import { setupPermissions } from './permissions.ts';
import { setupRequests } from './requests.ts';
import { saveFile } from './save-dialog.ts';
import { registerScheme, serveWindow } from './serve-window.ts';
import { windowOptions } from './window-options.ts';

export interface StartSpec extends Omit<DeskSpec, 'saveFile'> {
  /** The members of the package `electron` that are used. */
  readonly electron: Pick<
    typeof Electron,
    'app' | 'BrowserWindow' | 'dialog' | 'ipcMain' | 'Menu' | 'protocol' | 'session'
  >;
  /** The built window. */
  readonly folder: string;
  /** The built preload script. */
  readonly preload: string;
  readonly platform: string;
  /** Another place for what Electron keeps for itself; tests use one each. */
  readonly userData?: string;
}

/** Resolves when the window exists, or `undefined` when the program runs already and this start gives way. */
export async function startUp(spec: StartSpec): Promise<Electron.BrowserWindow | undefined> {
  const { electron, folder, preload, platform, userData, ...deskSpec } = spec;
  const { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } = electron;

  // Before the program is ready.
  if (userData !== undefined) app.setPath('userData', userData);
  app.enableSandbox();
  app.commandLine.appendSwitch('host-resolver-rules', 'MAP * ~NOTFOUND'); // no name leads anywhere
  registerScheme(protocol);
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return undefined;
  }
  let window: Electron.BrowserWindow | undefined;
  app.on('second-instance', () => {
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  setupNavigation(app);
  const desk = deskHandlers({ ...deskSpec, saveFile: saveFile({ dialog, app, window: () => window }) });
  app.on('window-all-closed', () => app.quit());
  closeBeforeQuitting(app, desk.closeAll);

  await app.whenReady();
  setupPermissions(session.defaultSession);
  setupRequests(session.defaultSession, app.isPackaged);
  serveWindow(protocol, folder);
  setupDeskCalls(ipcMain, desk.handlers);
  setupMenu(Menu, platform);

  const opened = new BrowserWindow(windowOptions(preload, app.isPackaged));
  window = opened;
  opened.once('ready-to-show', () => opened.show());
  opened.once('closed', () => {
    window = undefined;
  });
  setupCrashes({ window: opened, dialog, quit: () => app.quit(), now: () => Date.now() });
  await opened.loadURL(windowAddress);
  return opened;
}

/** Quitting waits until the journals are closed and the locks given back. */
function closeBeforeQuitting(app: Electron.App, closeAll: () => Promise<void>): void {
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    void closeAll().finally(() => {
      closed = true;
      app.quit();
    });
  });
}
