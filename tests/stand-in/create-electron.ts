/**
 * A stand-in for the package `electron` for tests without its program file: the members that this program uses,
 * with the order and the limits of the real ones, and a set of controls to play the person and the system.
 */
import { EventEmitter } from 'node:events';
import type * as Electron from 'electron';
import { strict } from './strict.ts';
import { type StandInContents, windowsOf } from './windows.ts';

export interface Controls {
  /** What happened, in order: `app.enableSandbox`, `protocol.handle app`, … */
  readonly log: string[];
  readonly switches: Map<string, string>;
  readonly paths: Map<string, string>;
  readonly privileged: Electron.CustomScheme[];
  readonly windows: Electron.BrowserWindow[];
  readonly windowOptions: Electron.BrowserWindowConstructorOptions[];
  /** What the preload script put into the page. */
  readonly mainWorld: Map<string, unknown>;
  readonly session: {
    request?: Parameters<Electron.Session['setPermissionRequestHandler']>[0];
    check?: Parameters<Electron.Session['setPermissionCheckHandler']>[0];
    device?: Parameters<Electron.Session['setDevicePermissionHandler']>[0];
    display?: Parameters<Electron.Session['setDisplayMediaRequestHandler']>[0];
    beforeRequest?: (
      details: Pick<Electron.OnBeforeRequestListenerDetails, 'url'>,
      answer: (response: Electron.CallbackResponse) => void,
    ) => void;
    spellChecker?: boolean;
  };
  /** Answers of the person to the dialogs to come; a dialog without one is an error. */
  readonly answers: object[];
  readonly menus: Electron.MenuItemConstructorOptions[][];
  /** Whether another instance of the program runs already. */
  otherInstance: boolean;
  isPackaged: boolean;
  quitDone: boolean;
  becomeReady(): Promise<void>;
  emit(event: string, ...args: unknown[]): void;
  /** A request of the page through the registered scheme, normalised as for a standard scheme. */
  fetch(address: string, method?: string): Promise<Response>;
  /** A call of the page, as `ipcRenderer.invoke`, with the given sender. */
  invoke(channel: string, event: object, ...args: unknown[]): Promise<unknown>;
}

export type StandIn = Pick<
  typeof Electron,
  | 'app'
  | 'BrowserWindow'
  | 'contextBridge'
  | 'dialog'
  | 'ipcMain'
  | 'ipcRenderer'
  | 'Menu'
  | 'protocol'
  | 'session'
> & { readonly controls: Controls };

const knownPaths = ['home', 'appData', 'userData', 'temp', 'documents', 'downloads', 'desktop', 'logs'];

export function createElectron(): StandIn {
  const log: string[] = [];
  const handlers = new Map<string, (event: Electron.IpcMainInvokeEvent, ...args: unknown[]) => unknown>();
  const schemes = new Map<string, (request: GlobalRequest) => Response | Promise<Response>>();
  const events = new EventEmitter();
  let isReady = false;
  let quitting = false;
  let loaded: StandInContents | undefined;

  const note = (what: string): void => {
    log.push(what);
  };
  const before = (what: string): void => {
    if (isReady) throw new Error(`${what} has to be called before the app is ready`);
    note(what);
  };
  const after = (what: string): void => {
    if (!isReady) throw new Error(`${what} cannot be used before the app is ready`);
    note(what);
  };

  const controls: Controls = {
    log,
    switches: new Map(),
    paths: new Map(knownPaths.map((name) => [name, `/stand-in/${name}`])),
    privileged: [],
    windows: [],
    windowOptions: [],
    mainWorld: new Map(),
    session: {},
    answers: [],
    menus: [],
    otherInstance: false,
    isPackaged: true,
    quitDone: false,
    async becomeReady() {
      isReady = true;
      events.emit('ready', {}, {});
      await new Promise((resolve) => setImmediate(resolve));
    },
    emit: (event, ...args) => void events.emit(event, ...args),
    async fetch(address, method = 'GET') {
      const scheme = address.slice(0, address.indexOf(':'));
      const handler = schemes.get(scheme);
      if (handler === undefined) throw new TypeError(`net::ERR_UNKNOWN_URL_SCHEME ${address}`);
      // A standard scheme is parsed as http is: case of the host, backslashes, dots, percent-encoded dots.
      const normal = new URL(address.replace(`${scheme}:`, 'http:')).href.replace(/^http:/, `${scheme}:`);
      return handler(new Request(normal, { method }) as unknown as GlobalRequest);
    },
    async invoke(channel, event, ...args) {
      const handler = handlers.get(channel);
      if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
      try {
        return structuredClone(await handler(event as Electron.IpcMainInvokeEvent, ...structuredClone(args)));
      } catch (error) {
        // The real one, too, keeps nothing of an error but a line of text.
        throw new Error(`Error invoking remote method '${channel}': ${String(error)}`);
      }
    },
  };

  const app = Object.assign(events, {
    enableSandbox: () => before('app.enableSandbox'),
    commandLine: strict('app.commandLine', {
      appendSwitch(name: string, value = '') {
        before('app.commandLine.appendSwitch');
        controls.switches.set(name, value);
      },
    }),
    setPath(name: string, path: string) {
      if (name === 'userData') before('app.setPath userData');
      if (!controls.paths.has(name)) throw new Error(`Failed to set path: ${name}`);
      controls.paths.set(name, path);
    },
    getPath(name: string) {
      const path = controls.paths.get(name);
      if (path === undefined) throw new Error(`Failed to get '${name}' path`);
      return path;
    },
    requestSingleInstanceLock() {
      note('app.requestSingleInstanceLock');
      return !controls.otherInstance;
    },
    isReady: () => isReady,
    whenReady: () =>
      isReady ? Promise.resolve() : new Promise<void>((resolve) => events.once('ready', () => resolve())),
    isPackaged: true,
    quit() {
      note('app.quit');
      if (controls.quitDone || quitting) return;
      quitting = true;
      if (!isPrevented('before-quit')) {
        for (const window of [...controls.windows]) window.close();
        if (!isPrevented('will-quit')) {
          controls.quitDone = true;
          events.emit('quit', {}, 0);
        }
      }
      quitting = false;
    },
  });
  Object.defineProperty(app, 'isPackaged', { get: () => controls.isPackaged });

  function isPrevented(event: 'before-quit' | 'will-quit'): boolean {
    let prevented = false;
    events.emit(event, {
      preventDefault() {
        prevented = true;
      },
    });
    return prevented;
  }

  const protocol: Pick<Electron.Protocol, 'registerSchemesAsPrivileged' | 'handle'> = {
    registerSchemesAsPrivileged(schemesGiven) {
      before('protocol.registerSchemesAsPrivileged');
      if (controls.privileged.length > 0) throw new Error('schemes are registered once');
      controls.privileged.push(...schemesGiven);
    },
    handle(scheme, handler) {
      after(`protocol.handle ${scheme}`);
      if (schemes.has(scheme)) throw new Error(`the scheme ${scheme} is handled already`);
      schemes.set(scheme, handler);
    },
  };

  const ipcMain: Pick<Electron.IpcMain, 'handle'> = {
    handle(channel, listener) {
      if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`);
      note(`ipcMain.handle ${channel}`);
      handlers.set(channel, listener);
    },
  };

  const ipcRenderer: Pick<Electron.IpcRenderer, 'invoke'> = {
    invoke(channel, ...args) {
      if (loaded === undefined) throw new Error('no page is loaded that could call');
      return controls.invoke(channel, { sender: loaded, senderFrame: loaded.mainFrame }, ...args);
    },
  };

  const contextBridge: Pick<Electron.ContextBridge, 'exposeInMainWorld'> = {
    exposeInMainWorld(key, api: unknown) {
      if (controls.mainWorld.has(key)) throw new Error('Cannot bind an API on top of an existing property');
      controls.mainWorld.set(key, carriedOver(api));
    },
  };

  const defaultSession: Pick<
    Electron.Session,
    | 'setPermissionRequestHandler'
    | 'setPermissionCheckHandler'
    | 'setDevicePermissionHandler'
    | 'setDisplayMediaRequestHandler'
    | 'setSpellCheckerEnabled'
    | 'webRequest'
  > = {
    setPermissionRequestHandler(handler) {
      controls.session.request = handler;
    },
    setPermissionCheckHandler(handler) {
      controls.session.check = handler;
    },
    setDevicePermissionHandler(handler) {
      controls.session.device = handler;
    },
    setDisplayMediaRequestHandler(handler) {
      controls.session.display = handler;
    },
    setSpellCheckerEnabled(enabled) {
      controls.session.spellChecker = enabled;
    },
    webRequest: strict('session.webRequest', {
      onBeforeRequest(listener: NonNullable<typeof controls.session.beforeRequest>) {
        controls.session.beforeRequest = listener;
      },
    }) as Electron.WebRequest,
  };
  const session = {
    get defaultSession() {
      if (!isReady) throw new Error('Session can only be received when app is ready');
      return strict('session', defaultSession);
    },
  };

  const ask = (what: string) => async (): Promise<never> => {
    note(what);
    const answer = controls.answers.shift();
    if (answer === undefined) throw new Error(`nobody answers ${what}`);
    return answer as never;
  };
  const dialog: Pick<Electron.Dialog, 'showSaveDialog' | 'showMessageBox' | 'showErrorBox'> = {
    showSaveDialog: ask('dialog.showSaveDialog'),
    showMessageBox: ask('dialog.showMessageBox'),
    showErrorBox: (title, content) => note(`dialog.showErrorBox ${title}: ${content}`),
  };

  const menu = {
    buildFromTemplate: (template: Electron.MenuItemConstructorOptions[]) => template,
    setApplicationMenu(template: Electron.MenuItemConstructorOptions[]) {
      controls.menus.push(template);
    },
  };

  const BrowserWindow = windowsOf({
    controls,
    after,
    load: async (contents, address) => {
      loaded = contents;
      return controls.fetch(address);
    },
    created: (contents) => events.emit('web-contents-created', {}, contents),
    allClosed: () => {
      if (!quitting) events.emit('window-all-closed'); // as in Electron: not while quitting
    },
  });

  // Whole types from here on: what is not provided throws as soon as it is touched.
  return {
    app: strict('app', app) as unknown as Electron.App,
    BrowserWindow,
    contextBridge: strict('contextBridge', contextBridge) as Electron.ContextBridge,
    dialog: strict('dialog', dialog) as Electron.Dialog,
    ipcMain: strict('ipcMain', ipcMain) as Electron.IpcMain,
    ipcRenderer: strict('ipcRenderer', ipcRenderer) as Electron.IpcRenderer,
    Menu: strict('Menu', menu) as unknown as typeof Electron.Menu,
    protocol: strict('protocol', protocol) as Electron.Protocol,
    session: strict('session', session) as unknown as typeof Electron.session,
    controls,
  };
}

/** What crosses from the preload script into the page: plain data and functions, copied and frozen. */
function carriedOver(value: unknown): unknown {
  if (typeof value === 'function') {
    return async (...args: unknown[]) => structuredClone(await value(...structuredClone(args)));
  }
  if (typeof value !== 'object' || value === null) return value;
  if (Object.getPrototypeOf(value) !== Object.prototype)
    throw new Error('only plain objects cross the bridge');
  return Object.freeze(
    Object.fromEntries(Object.entries(value).map(([key, member]) => [key, carriedOver(member)])),
  );
}
