/** The window in the person's browser, from the printed line to Ctrl+C. */
import { type DeskSpec, deskHandlers } from '../desk/index.ts';
import type { Desk } from '../preload/index.ts';
import { type Host, startHost } from './server.ts';

export interface BrowserRun {
  readonly desk: Omit<DeskSpec, 'saveFile'>;
  /** The built window. */
  readonly folder: string;
  /** As the person chose it; `undefined` tries the usual one first. */
  readonly port: number | undefined;
  /** Why a browser, as the beginning of the one line that is printed. */
  readonly because: string;
  readonly print: (line: string) => void;
  readonly openBrowser: (address: string) => void;
  /** Resolves when the person wants to end. */
  readonly ended: Promise<unknown>;
}

/**
 * The port is part of the address under which a browser keeps the window's working copy, so the same one is
 * tried first each time.
 */
const usualPort = 41_973;

/** @returns the exit code, once notebooks are closed and their locks given back */
export async function runInBrowser(run: BrowserRun): Promise<number> {
  const { folder, port, because, print, openBrowser, ended } = run;
  const desk = deskHandlers(run.desk);
  const host = await serve(desk.handlers, folder, port);
  if (host instanceof Error) {
    print(`The window cannot be served: ${host.message}`);
    return 1;
  }
  print(`${because} the window in your browser at ${host.address} (Ctrl+C ends)`);
  openBrowser(host.address);
  await ended;
  await host.close();
  await desk.closeAll();
  return 0;
}

async function serve(desk: Desk, folder: string, port: number | undefined): Promise<Host | Error> {
  const on = (number: number): Promise<Host | Error> =>
    startHost({ desk, folder, port: number }).catch((error: Error) => error);
  if (port !== undefined) return on(port);
  const usual = await on(usualPort);
  return usual instanceof Error ? on(0) : usual;
}
