/** Windows and their pages, for the stand-in for Electron. */
import { EventEmitter } from 'node:events';
import type * as Electron from 'electron';
import type { Controls } from './create-electron.ts';
import { strict } from './strict.ts';

export interface StandInContents extends EventEmitter {
  /** The frame object keeps its identity, as the real one does while the page lives. */
  readonly mainFrame: { url: string };
  openHandler: ((details: { url: string }) => { action: 'deny' | 'allow' }) | undefined;
  reloads: number;
}

interface Surroundings {
  readonly controls: Controls;
  readonly after: (what: string) => void;
  readonly load: (contents: StandInContents, address: string) => Promise<Response>;
  readonly created: (contents: StandInContents) => void;
  readonly allClosed: () => void;
}

/** The class BrowserWindow. */
export function windowsOf({
  controls,
  after,
  load,
  created,
  allClosed,
}: Surroundings): typeof Electron.BrowserWindow {
  class Window extends EventEmitter {
    readonly webContents: StandInContents;
    isShown: boolean;
    #minimized = false;

    constructor(options: Electron.BrowserWindowConstructorOptions) {
      super();
      after('new BrowserWindow');
      this.isShown = options.show ?? true;
      this.webContents = contentsOf();
      controls.windowOptions.push(options);
      controls.windows.push(this as unknown as Electron.BrowserWindow);
      created(this.webContents);
    }

    async loadURL(address: string): Promise<void> {
      const answer = await load(this.webContents, address);
      if (!answer.ok) throw new Error(`ERR_FAILED (${answer.status}) loading '${address}'`);
      this.webContents.mainFrame.url = address;
      this.emit('ready-to-show');
    }

    show(): void {
      this.isShown = true;
    }

    minimize(): void {
      this.#minimized = true;
    }

    isMinimized(): boolean {
      return this.#minimized;
    }

    restore(): void {
      this.#minimized = false;
    }

    focus(): void {
      this.emit('focus');
    }

    close(): void {
      const index = controls.windows.indexOf(this as unknown as Electron.BrowserWindow);
      if (index < 0) return;
      controls.windows.splice(index, 1);
      this.emit('closed');
      if (controls.windows.length === 0) allClosed();
    }
  }
  return Window as unknown as typeof Electron.BrowserWindow;
}

function contentsOf(): StandInContents {
  const emitter = new EventEmitter();
  const members = {
    mainFrame: { url: 'about:blank' },
    openHandler: undefined as StandInContents['openHandler'],
    reloads: 0,
  };
  const contents: StandInContents = Object.assign(emitter, members, {
    setWindowOpenHandler(handler: NonNullable<StandInContents['openHandler']>) {
      contents.openHandler = handler;
    },
    reload() {
      contents.reloads += 1;
    },
  });
  return strict('webContents', contents);
}
