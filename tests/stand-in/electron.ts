/**
 * What `import … from 'electron'` finds in tests: one stand-in for each load of this module. Reset the test
 * runner's modules to get a fresh one.
 */
import { createElectron } from './create-electron.ts';

export const {
  app,
  BrowserWindow,
  contextBridge,
  dialog,
  ipcMain,
  ipcRenderer,
  Menu,
  protocol,
  session,
  controls,
} = createElectron();
