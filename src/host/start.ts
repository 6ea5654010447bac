/**
 * `npm start`: the window in Electron where its program file is installed, else the same window in the
 * person's browser. `--browser` asks for the second in any case.
 */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deskHandlers, homeFolder, writeDemo } from '../desk/index.ts';
import type { Desk } from '../preload/index.ts';
import { openBrowser } from './browser.ts';
import { electronProgram } from './electron-program.ts';
import { type Host, startHost } from './server.ts';
import { buildWindow, staleBuild } from './window-build.ts';

const usualPort = 41_973;
const root = fileURLToPath(new URL('../..', import.meta.url));

async function start(): Promise<number> {
  const stale = staleBuild(root);
  if (stale !== undefined) {
    process.stdout.write(`Building the window (${stale}) …\n`);
    if (!buildWindow(root)) return 1;
  }
  const program = electronProgram(root);
  return program === undefined || process.argv.includes('--browser')
    ? inBrowser(program === undefined)
    : inElectron(program);
}

function inElectron(program: string): Promise<number> {
  const child = spawn(program, [root, ...process.argv.slice(2)], { stdio: 'inherit', cwd: root });
  // Ctrl+C reaches the child by itself; this process only waits for it to close its notebooks.
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  return new Promise((resolve) => {
    child.on('error', (error) => {
      process.stderr.write(`Electron's program file does not start: ${error.message}\n`);
      resolve(1);
    });
    child.on('exit', (code) => resolve(code ?? 0));
  });
}

async function inBrowser(absent: boolean): Promise<number> {
  const desk = deskHandlers({ home: homeFolder(), demo: writeDemo });
  const host = await serve(desk.handlers);
  if (host instanceof Error) {
    process.stderr.write(`The window cannot be served: ${host.message}\n`);
    return 1;
  }
  const why = absent ? "Electron's program file is not installed: opening" : 'Opening';
  process.stdout.write(`${why} the window in your browser at ${host.address} (Ctrl+C ends)\n`);
  if (process.env.COUNTERPOISE_NO_BROWSER !== '1') openBrowser(host.address);

  await new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, resolve);
  });
  await host.close();
  await desk.closeAll();
  return 0;
}

/**
 * The port is part of the address under which a browser keeps the window's working copy, so the same one is
 * tried first each time; `COUNTERPOISE_PORT` (0 for any free one) chooses another.
 */
async function serve(desk: Desk): Promise<Host | Error> {
  const chosen = process.env.COUNTERPOISE_PORT;
  const folder = join(root, 'out', 'renderer');
  const on = (port: number): Promise<Host | Error> =>
    startHost({ desk, folder, port }).catch((error: Error) => error);
  if (chosen !== undefined && chosen !== '') return on(Number(chosen));
  const usual = await on(usualPort);
  return usual instanceof Error ? on(0) : usual;
}

process.exitCode = await start();
