/** The same promises, held over loopback and through the calls of the window inside Electron. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, it, vi } from 'vitest';
import { deskHandlers, type OpenDesk } from '../../src/desk/index.ts';
import { hostDesk } from '../../src/host/client.ts';
import { type Host, startHost } from '../../src/host/index.ts';
import { startUp } from '../../src/main/start-up.ts';
import type { Desk } from '../../src/preload/index.ts';
import { fetchAsPageOf } from './browser-fetch.ts';
import { deskContract } from './desk-contract.ts';

const folder = fileURLToPath(new URL('../stand-in/window', import.meta.url));
let home: string;
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'counterpoise-contract-'));
});
afterAll(() => rm(home, { recursive: true, force: true }));

function holdTo(way: string, desk: () => Desk): void {
  for (const [index, { title, run }] of deskContract.entries()) {
    it(title, () => run(desk(), `${way} ${index}`));
  }
}

describe('the desk over loopback', () => {
  let open: OpenDesk;
  let host: Host;
  beforeAll(async () => {
    open = deskHandlers({ home: join(home, 'loopback') });
    host = await startHost({ desk: open.handlers, folder, port: 0 });
  });
  afterAll(async () => {
    await host.close();
    await open.closeAll();
  });
  fetchAsPageOf(() => host.origin);
  holdTo('Loopback', () => hostDesk(host.key, host.origin));
});

describe('the desk inside Electron, by the preload script', () => {
  let controls: typeof import('../stand-in/electron.ts').controls;
  beforeAll(async () => {
    vi.resetModules();
    const electron = await import('../stand-in/electron.ts');
    controls = electron.controls;
    const started = startUp({
      electron,
      home: join(home, 'electron'),
      folder,
      preload: '/preload.cjs',
      platform: 'linux',
    });
    await controls.becomeReady();
    await started;
    await import('../../src/preload/preload.ts');
  });
  afterAll(async () => {
    controls.emit('will-quit', { preventDefault() {} });
    await vi.waitUntil(() => controls.quitDone);
  });
  holdTo('Electron', () => (controls.mainWorld.get('counterpoise') as { desk: Desk }).desk);
});
