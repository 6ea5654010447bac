/** What the window may do, as data: the defaults are stated rather than trusted. */
import type { BrowserWindowConstructorOptions } from 'electron';

export function windowOptions(preload: string, isPackaged: boolean): BrowserWindowConstructorOptions {
  return {
    width: 1360,
    height: 860,
    minWidth: 720,
    minHeight: 480,
    show: false, // until the first picture is drawn
    title: 'Counterpoise',
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      safeDialogs: true,
      spellcheck: false, // would fetch dictionaries from a network
      devTools: !isPackaged,
    },
  };
}
