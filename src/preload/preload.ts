/**
 * Runs in the window before the page, sandboxed: hands the page one function a channel and nothing of
 * Electron's own. Built to one plain script.
 */
import { contextBridge, ipcRenderer } from 'electron';
import { channelNames } from './channel-names.ts';

const desk = Object.fromEntries(
  channelNames.map((channel) => [channel, (args: unknown) => ipcRenderer.invoke(`desk:${channel}`, args)]),
);
const surroundings = { kind: 'electron', version: process.versions.electron ?? '' };

contextBridge.exposeInMainWorld('counterpoise', Object.freeze({ desk: Object.freeze(desk), surroundings }));
