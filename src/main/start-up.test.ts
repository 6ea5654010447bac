import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createElectron, type StandIn } from '../../tests/stand-in/create-electron.ts';
import { openNotebook } from '../desk/index.ts';
import { channelNames, type OpenNotebook, type Outcome } from '../preload/index.ts';
import { startUp } from './start-up.ts';

const folder = fileURLToPath(new URL('../../tests/stand-in/window', import.meta.url));
let home: string;
let electron: StandIn;
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'counterpoise-main-'));
  electron = createElectron();
});
afterEach(() => rm(home, { recursive: true, force: true }));

const spec = () => ({ electron, home, folder, preload: '/out/preload/preload.cjs', platform: 'linux' });

async function started(extra: { userData?: string } = {}) {
  const start = startUp({ ...spec(), ...extra });
  await electron.controls.becomeReady();
  const window = await start;
  if (window === undefined) throw new Error('no window');
  return window;
}

describe('the start', () => {
  it('does first what has to be done before the app is ready', async () => {
    await started();
    const { log } = electron.controls;
    expect(log.slice(0, 5)).toEqual([
      'app.enableSandbox',
      'app.commandLine.appendSwitch',
      'protocol.registerSchemesAsPrivileged',
      'app.requestSingleInstanceLock',
      'protocol.handle app',
    ]);
    expect(log.at(-1)).toBe('new BrowserWindow');
    expect(log.filter((line) => line.startsWith('ipcMain.handle'))).toEqual(
      channelNames.map((channel) => `ipcMain.handle desk:${channel}`),
    );
  });

  it('leads no name to an address', async () => {
    await started();
    expect(electron.controls.switches.get('host-resolver-rules')).toBe('MAP * ~NOTFOUND');
  });

  it('makes the scheme standard and secure, and gives it no way round the policy', async () => {
    await started();
    expect(electron.controls.privileged).toEqual([
      {
        scheme: 'app',
        privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true },
      },
    ]);
  });

  it('keeps what Electron stores elsewhere when it is told so, before anything else', async () => {
    await started({ userData: '/elsewhere' });
    expect(electron.controls.log[0]).toBe('app.setPath userData');
    expect(electron.controls.paths.get('userData')).toBe('/elsewhere');
  });

  it('shows the window once its first picture is drawn', async () => {
    const window = await started();
    expect(electron.controls.windowOptions[0]?.show).toBe(false);
    expect((window as unknown as { isShown: boolean }).isShown).toBe(true);
    expect(window.webContents.mainFrame.url).toBe('app://window/');
    expect(electron.controls.menus).toHaveLength(1);
  });
});

describe('a second start', () => {
  it('gives way before it touches anything', async () => {
    electron.controls.otherInstance = true;
    expect(await startUp(spec())).toBeUndefined();
    expect(electron.controls.quitDone).toBe(true);
    expect(electron.controls.log.at(-1)).toBe('app.quit');
    expect(electron.controls.windows).toEqual([]);
  });

  it('brings the window of the first to the front', async () => {
    const window = await started();
    window.minimize();
    const focused = vi.fn();
    window.on('focus', focused);
    electron.controls.emit('second-instance', {}, [], '');
    expect(window.isMinimized()).toBe(false);
    expect(focused).toHaveBeenCalledOnce();
  });
});

describe('the end', () => {
  it('comes with the last window, and waits until notebooks are closed', async () => {
    const window = await started();
    const event = { sender: window.webContents, senderFrame: window.webContents.mainFrame };
    const made = (await electron.controls.invoke('desk:notebook.create', event, {
      name: 'Rig',
      author: 'B',
    })) as Outcome<OpenNotebook>;
    expect(made.ok && made.value.readOnly).toBe(false);
    window.close();
    expect(electron.controls.quitDone).toBe(false);
    await vi.waitUntil(() => electron.controls.quitDone);
    const again = await openNotebook(join(home, 'Rig'));
    expect(again.ok && again.value.readOnly).toBe(false);
    if (again.ok) await again.value.close();
  });
});
