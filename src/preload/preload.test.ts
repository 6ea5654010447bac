import { beforeAll, describe, expect, it } from 'vitest';
import { controls, ipcMain } from '../../tests/stand-in/electron.ts';
import { channels } from './bridge.ts';
import { channelNames } from './channel-names.ts';

interface Exposed {
  readonly desk: Readonly<Record<string, (...args: unknown[]) => Promise<unknown>>>;
  readonly surroundings: Readonly<Record<string, unknown>>;
}
let exposed: Exposed;
beforeAll(async () => {
  await import('./preload.ts');
  exposed = controls.mainWorld.get('counterpoise') as Exposed;
});

describe('what the page gets', () => {
  it('is one frozen object under one name', () => {
    expect([...controls.mainWorld.keys()]).toEqual(['counterpoise']);
    expect(Object.keys(exposed)).toEqual(['desk', 'surroundings']);
    expect(Object.isFrozen(exposed) && Object.isFrozen(exposed.desk)).toBe(true);
    expect(exposed.surroundings.kind).toBe('electron');
  });

  it('is a function for each channel and for nothing else', () => {
    expect(Object.keys(exposed.desk)).toEqual(Object.keys(channels));
    expect(channelNames).toEqual(Object.keys(channels));
  });

  it('carries one argument to the channel of that name, and no more', async () => {
    const calls: unknown[][] = [];
    for (const name of channelNames) {
      ipcMain.handle(`desk:${name}`, (_event, ...args: unknown[]) => {
        calls.push([name, ...args]);
      });
    }
    await controls.becomeReady();
    const { BrowserWindow, protocol } = await import('../../tests/stand-in/electron.ts');
    protocol.handle('app', () => new Response('page'));
    await new BrowserWindow({}).loadURL('app://window/');
    for (const name of channelNames) await exposed.desk[name]?.({ of: name }, 'more', { event: 1 });
    expect(calls).toEqual(channelNames.map((name) => [name, { of: name }]));
  });
});
