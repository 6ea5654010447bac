/** The real program, each time with folders of its own; and why it cannot be started, where it cannot. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron, type ElectronApplication, type Page } from '@playwright/test';
import { electronProgram } from '../../src/host/electron-program.ts';
import { staleBuild } from '../../src/host/window-build.ts';

export const root = fileURLToPath(new URL('../..', import.meta.url));
/** Looked for with file calls; loading the package `electron` would try to download it. */
export const program = electronProgram(root);

/** `undefined` when the real program can be started here. */
export function hindrance(): string | undefined {
  if (program === undefined) return 'no Electron binary';
  const { DISPLAY, WAYLAND_DISPLAY } = process.env;
  if (process.platform === 'linux' && !DISPLAY && !WAYLAND_DISPLAY) return 'no display (try xvfb-run)';
  return undefined;
}

export interface Running {
  readonly app: ElectronApplication;
  readonly page: Page;
  readonly home: string;
  /** Lines that the page wrote as errors. */
  readonly errors: string[];
}

/** Starts the built program, hands it to `use`, and removes its folders afterwards. */
export async function running(use: (running: Running) => Promise<void>, sandboxed = false): Promise<void> {
  const stale = staleBuild(root);
  if (stale !== undefined) throw new Error(`The window has to be built first (${stale}): npm run build`);
  const folder = await mkdtemp(join(tmpdir(), 'counterpoise-electron-'));
  const home = join(folder, 'home');
  const app = await _electron.launch({
    ...(program === undefined ? {} : { executablePath: program }),
    args: [root],
    chromiumSandbox: sandboxed,
    env: environment(home, join(folder, 'user data')),
  });
  try {
    const errors: string[] = [];
    const page = await app.firstWindow();
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    page.on('pageerror', (error) => errors.push(error.message));
    await page.waitForLoadState();
    await use({ app, page, home, errors });
  } finally {
    await app.close().catch(() => undefined); // a test may have closed it
    await rm(folder, { recursive: true, force: true });
  }
}

/** Folders of its own, so that no test meets another one's lock or working copy. */
export function environment(home: string, userData: string): Record<string, string> {
  const inherited = Object.entries(process.env).filter((entry): entry is [string, string] => {
    return entry[1] !== undefined;
  });
  return {
    ...Object.fromEntries(inherited),
    COUNTERPOISE_HOME: home,
    COUNTERPOISE_USER_DATA: userData,
  };
}
