/** The stand-in itself: as strict as the program it stands for. What Electron does is cited from its documentation. */
import { describe, expect, it, vi } from 'vitest';
import { createElectron } from './create-electron.ts';

describe('the order of things', () => {
  it('allows before the app is ready only what Electron allows then', async () => {
    const { app, protocol, session, BrowserWindow, controls } = createElectron();
    expect(() => protocol.handle('app', () => new Response())).toThrow('before the app is ready');
    expect(() => session.defaultSession).toThrow('when app is ready');
    expect(() => new BrowserWindow({})).toThrow('before the app is ready');
    app.enableSandbox();
    await controls.becomeReady();
    expect(() => app.enableSandbox()).toThrow('before the app is ready');
    expect(() => app.setPath('userData', '/x')).toThrow('before the app is ready');
    expect(() => app.commandLine.appendSwitch('x')).toThrow('before the app is ready');
    expect(() => protocol.registerSchemesAsPrivileged([])).toThrow('before the app is ready');
    expect(controls.log[0]).toBe('app.enableSandbox');
  });

  it('resolves whenReady for early and for late callers', async () => {
    const { app, controls } = createElectron();
    const early = app.whenReady();
    await controls.becomeReady();
    await expect(Promise.all([early, app.whenReady()])).resolves.toHaveLength(2);
  });

  it('quits by before-quit, windows, will-quit, quit, and tells nobody that all windows are closed', async () => {
    const { app, BrowserWindow, controls } = createElectron();
    await controls.becomeReady();
    const order: string[] = [];
    for (const event of ['before-quit', 'window-all-closed', 'will-quit', 'quit'] as const) {
      app.on(event as 'quit', () => order.push(event));
    }
    new BrowserWindow({}).on('closed', () => order.push('closed'));
    app.quit();
    expect(order).toEqual(['before-quit', 'closed', 'will-quit', 'quit']);
  });

  it('stays when will-quit is prevented, and quits when asked again', async () => {
    const { app, controls } = createElectron();
    app.once('will-quit', (event) => event.preventDefault());
    app.quit();
    expect(controls.quitDone).toBe(false);
    app.quit();
    expect(controls.quitDone).toBe(true);
  });

  it('says that all windows are closed when the person closes the last one', async () => {
    const { app, BrowserWindow, controls } = createElectron();
    await controls.becomeReady();
    const said = vi.fn();
    app.on('window-all-closed', said);
    new BrowserWindow({}).close();
    expect(said).toHaveBeenCalledOnce();
  });
});

describe('what is not provided', () => {
  it('throws when it is touched', async () => {
    const { app, ipcMain, session, dialog, BrowserWindow, controls } = createElectron();
    expect(() => app.relaunch()).toThrow('no app.relaunch');
    expect(() => ipcMain.on('x', () => undefined)).toThrow('no ipcMain.on');
    await controls.becomeReady();
    expect(() => session.defaultSession.clearCache()).toThrow('no session.clearCache');
    expect(() => new BrowserWindow({}).webContents.openDevTools()).toThrow('no webContents.openDevTools');
    expect(() => {
      (dialog as { showSaveDialog: unknown }).showSaveDialog = () => undefined;
    }).toThrow('cannot be set');
  });

  it('is a path that Electron does not know', () => {
    const { app } = createElectron();
    expect(() => app.getPath('nowhere' as 'home')).toThrow("Failed to get 'nowhere' path");
  });

  it('is an answer that nobody gave', async () => {
    const { dialog } = createElectron();
    await expect(dialog.showMessageBox({ message: 'x' })).rejects.toThrow('nobody answers');
  });
});

describe('calls between page and program', () => {
  it('have one handler a channel', () => {
    const { ipcMain } = createElectron();
    ipcMain.handle('desk:x', () => 1);
    expect(() => ipcMain.handle('desk:x', () => 2)).toThrow('second handler');
  });

  it('carry copies, and no functions', async () => {
    const { ipcMain, controls } = createElectron();
    const seen: unknown[] = [];
    ipcMain.handle('desk:x', (_event, value) => {
      seen.push(value);
      return value;
    });
    const sent = { list: [1] };
    expect(await controls.invoke('desk:x', {}, sent)).toEqual(sent);
    expect(seen[0]).not.toBe(sent);
    await expect(controls.invoke('desk:x', {}, () => 1)).rejects.toThrow('could not be cloned');
    await expect(controls.invoke('desk:y', {})).rejects.toThrow("No handler registered for 'desk:y'");
  });

  it('reduce an exception to a line of text', async () => {
    const { ipcMain, controls } = createElectron();
    ipcMain.handle('desk:x', () => {
      throw Object.assign(new Error('inner'), { code: 7 });
    });
    const error: unknown = await controls.invoke('desk:x', {}).catch((thrown: unknown) => thrown);
    expect(String(error)).toContain("Error invoking remote method 'desk:x'");
    expect(error).not.toHaveProperty('code');
  });

  it('reach the page frozen and once', () => {
    const { contextBridge, controls } = createElectron();
    contextBridge.exposeInMainWorld('x', { a: { b: 1 } });
    const world = controls.mainWorld.get('x') as { a: { b: number } };
    expect(Object.isFrozen(world) && Object.isFrozen(world.a)).toBe(true);
    expect(() => contextBridge.exposeInMainWorld('x', {})).toThrow('existing property');
    expect(() => contextBridge.exposeInMainWorld('y', { map: new Map() })).toThrow('plain objects');
  });
});

describe('requests of the page', () => {
  it('are normalised as for a standard scheme before the program sees them', async () => {
    const { protocol, controls } = createElectron();
    await controls.becomeReady();
    protocol.handle('app', ({ url }) => new Response(url));
    const seen = async (address: string) => (await controls.fetch(address)).text();
    expect(await seen('app://WINDOW/a/../b')).toBe('app://window/b');
    expect(await seen('app://window/a\\b')).toBe('app://window/a/b');
    expect(await seen('app://window/%2e%2e/b')).toBe('app://window/b');
    await expect(controls.fetch('file:///etc/passwd')).rejects.toThrow('ERR_UNKNOWN_URL_SCHEME');
    expect(() => protocol.handle('app', () => new Response())).toThrow('handled already');
  });
});
