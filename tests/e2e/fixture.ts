/**
 * What every end-to-end test gets: a host of its own with an empty home, the window open in Chromium, and the
 * promise that nothing was asked of any network, no content policy was violated and no error went to the console.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { test as base, expect, type Page } from '@playwright/test';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Program {
  /** Folder of the notebooks. */
  readonly home: string;
  /** Address with the key behind it. */
  address: string;
  /** Kills the host without a word to it. */
  kill(): Promise<void>;
  /** Starts it again on the same home. */
  start(): Promise<void>;
}

export const test = base.extend<{ program: Program; window: Page }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names that a fixture asks for out of this pattern
  program: async ({}, use) => {
    const home = await mkdtemp(join(tmpdir(), 'counterpoise-'));
    let child: ChildProcess | undefined;
    const program: Program = {
      home,
      address: '',
      async start() {
        const started = await startHost(home);
        child = started.child;
        program.address = started.address;
      },
      async kill() {
        if (!child || child.exitCode !== null || child.signalCode !== null) return;
        const gone = once(child, 'exit');
        child.kill('SIGKILL');
        await gone;
      },
    };
    await program.start();
    await use(program);
    await program.kill();
    await rm(home, { recursive: true, force: true });
  },

  window: async ({ page, program }, use) => {
    const faults: string[] = [];
    page.on('request', (request) => {
      const { protocol, origin } = new URL(request.url());
      const own = ['blob:', 'data:'].includes(protocol) || origin === new URL(program.address).origin;
      if (!own) faults.push(`asked ${request.url()}`);
    });
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(`console: ${message.text()}`);
    });
    page.on('pageerror', (error) => faults.push(`page: ${error.message}`));
    await page.addInitScript(() => {
      document.addEventListener('securitypolicyviolation', (event) => {
        console.error(`content policy: ${event.violatedDirective} ${event.blockedURI}`);
      });
    });
    await page.goto(program.address);
    await use(page);
    expect(faults).toEqual([]);
  },
});

export { expect };

async function startHost(home: string): Promise<{ child: ChildProcess; address: string }> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/host/start.ts', '--browser'], {
    cwd: root,
    env: { ...process.env, COUNTERPOISE_HOME: home, COUNTERPOISE_PORT: '0', COUNTERPOISE_NO_BROWSER: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  for await (const piece of child.stdout) {
    text += String(piece);
    const found = /http:\S+/.exec(text)?.[0];
    if (found) return { child, address: found };
  }
  throw new Error(`the host ended before it had an address: ${text}`);
}

/** Opens the demo notebook from the start screen. */
export async function openDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo notebook' }).click();
  await expect(page.getByRole('complementary', { name: 'Margins' })).toContainText('Lean to recover from');
}

/** Types into a field as a person does, and leaves it. */
export async function type(page: Page, label: string | RegExp, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: typeof label === 'string' });
  await field.fill(text);
  await field.blur();
}

/** Waits until everything typed is on the medium. */
export async function saved(page: Page): Promise<void> {
  await expect(page.getByText(/^saved, at \d+$/)).toBeVisible();
}
