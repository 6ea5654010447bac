/**
 * `npm start`: the window in Electron where its program file is installed, else the same window in the
 * person's browser. `--browser` asks for the second in any case.
 */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { homeFolder, writeDemo } from '../desk/index.ts';
import { openBrowser } from './browser.ts';
import { electronProgram } from './electron-program.ts';
import { runInBrowser } from './run-in-browser.ts';
import { buildWindow, staleBuild } from './window-build.ts';

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

function inBrowser(absent: boolean): Promise<number> {
  const port = process.env.COUNTERPOISE_PORT;
  return runInBrowser({
    desk: { home: homeFolder(), demo: writeDemo },
    folder: join(root, 'out', 'renderer'),
    port: port === undefined || port === '' ? undefined : Number(port),
    because: absent ? "Electron's program file is not installed: opening" : 'Opening',
    print: (line) => process.stdout.write(`${line}\n`),
    openBrowser: process.env.COUNTERPOISE_NO_BROWSER === '1' ? () => undefined : openBrowser,
    ended: new Promise((resolve) => {
      for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, resolve); // once more does no harm
    }),
  });
}

process.exitCode = await start();
