import { mkdir, mkdtemp, readdir, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fetchAsPageOf } from '../../tests/contract/browser-fetch.ts';
import { browserCommand } from './browser.ts';
import { hostDesk } from './client.ts';
import { electronProgram } from './electron-program.ts';
import { runInBrowser } from './run-in-browser.ts';
import { startHost } from './server.ts';
import { staleBuild } from './window-build.ts';

const folder = fileURLToPath(new URL('../../tests/stand-in/window', import.meta.url));
let root: string;
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'counterpoise-start-'));
});
afterEach(() => rm(root, { recursive: true, force: true }));

async function put(path: string, seconds = 1_000_000): Promise<void> {
  await mkdir(dirname(join(root, path)), { recursive: true });
  await writeFile(join(root, path), path.endsWith('path.txt') ? 'electron\n' : '');
  await utimes(join(root, path), seconds, seconds);
}

describe("Electron's program file", () => {
  it('is found where the package says', async () => {
    expect(electronProgram(root, {}, 'linux')).toBeUndefined();
    await put('node_modules/electron/index.js');
    await put('node_modules/electron/path.txt');
    expect(electronProgram(root, {}, 'linux'), 'the name alone is no program').toBeUndefined();
    await put('node_modules/electron/dist/electron');
    expect(electronProgram(root, {}, 'linux')).toBe(join(root, 'node_modules/electron/dist/electron'));
  });

  it('is found in a folder of its own', async () => {
    await put('own/electron.exe');
    const environment = { ELECTRON_OVERRIDE_DIST_PATH: join(root, 'own') };
    expect(electronProgram(root, environment, 'win32')).toBe(join(root, 'own', 'electron.exe'));
    expect(electronProgram(root, environment, 'darwin')).toBeUndefined();
  });
});

describe('the built window', () => {
  const products = ['out/main/index.js', 'out/preload/preload.cjs', 'out/renderer/index.html'];

  it('is stale where a part is missing', async () => {
    await put('src/renderer/main.tsx');
    for (const product of products) {
      expect(staleBuild(root)).toBe('it was not built yet');
      await put(product, 1_000_010);
    }
    expect(staleBuild(root)).toBeUndefined();
  });

  it.each(['src/deep/inside/x.ts', 'templates/cards/x.json', 'package.json', 'electron.vite.config.ts'])(
    'is stale when %s is newer',
    async (source) => {
      for (const product of products) await put(product, 1_000_010);
      await put(source, 1_000_009);
      expect(staleBuild(root)).toBeUndefined();
      await put(source, 1_000_011);
      expect(staleBuild(root)).toBe('its sources have changed');
    },
  );

  it('does not depend on tests', async () => {
    for (const product of products) await put(product, 1_000_010);
    await put('src/renderer/main.test.tsx', 1_000_011);
    expect(staleBuild(root)).toBeUndefined();
  });
});

describe('the browser', () => {
  it.each([
    ['linux', 'xdg-open'],
    ['darwin', 'open'],
    ['win32', 'rundll32'],
  ])('on %s is opened by %s, the address one argument of its own', (platform, program) => {
    const address = 'http://127.0.0.1:1/#key=a&b';
    const [name, args] = browserCommand(address, platform);
    expect(name).toBe(program);
    expect(args.at(-1)).toBe(address);
  });
});

describe('running in the browser', () => {
  fetchAsPageOf(() => origin);
  let origin = '';

  function run(port: number | undefined) {
    const lines: string[] = [];
    const opened: string[] = [];
    let end: () => void = () => undefined;
    const ended = new Promise<void>((resolve) => {
      end = resolve;
    });
    let ready: () => void = () => undefined;
    const isReady = new Promise<void>((resolve) => {
      ready = resolve;
    });
    const code = runInBrowser({
      desk: { home: join(root, 'home') },
      folder,
      port,
      because: "Electron's program file is not installed: opening",
      print: (line) => lines.push(line),
      openBrowser: (address) => {
        opened.push(address);
        ready();
      },
      ended,
    });
    return { lines, opened, end, code, isReady };
  }

  it('prints one line, opens that address, and gives the locks back at the end', async () => {
    const { lines, opened, end, code, isReady } = run(0);
    await isReady;
    expect(lines).toEqual([
      `Electron's program file is not installed: opening the window in your browser at ${opened[0]} (Ctrl+C ends)`,
    ]);
    const address = new URL(opened[0] ?? '');
    origin = address.origin;
    const desk = hostDesk(new URLSearchParams(address.hash.slice(1)).get('key') ?? '', origin);
    const made = await desk['notebook.create']({ name: 'Rig', author: 'B' });
    expect(made.ok).toBe(true);
    expect(await readdir(join(root, 'home', 'Rig'))).toContain('lock');
    end();
    expect(await code).toBe(0);
    expect(await readdir(join(root, 'home', 'Rig'))).not.toContain('lock');
    expect((await desk['notebooks.list']({})).ok).toBe(false);
  });

  it('says why when a chosen port is taken', async () => {
    const desk = {} as never;
    const other = await startHost({ desk, folder, port: 0 });
    const { lines, code } = run(Number(new URL(other.origin).port));
    expect(await code).toBe(1);
    expect(lines[0]).toMatch(/^The window cannot be served: .*EADDRINUSE/);
    await other.close();
  });

  it('takes any free port when the usual one is taken', async () => {
    const first = run(undefined);
    const second = run(undefined);
    await Promise.all([first.isReady, second.isReady]);
    expect(first.opened[0]).not.toBe(second.opened[0]);
    first.end();
    second.end();
    expect(await Promise.all([first.code, second.code])).toEqual([0, 0]);
  });
});
