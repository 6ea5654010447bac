/** From asking for the window to a usable page, with the demo notebook: the host's answer, first paint, margins drawn. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { deskHandlers, writeDemo } from '../../src/desk/index.ts';
import { startHost } from '../../src/host/index.ts';
import e2e from '../e2e/playwright.config.ts';
import { report } from './timing/percentiles.ts';

const home = await mkdtemp(join(tmpdir(), 'counterpoise-bench-'));
await writeDemo(join(home, 'Demo'));
const desk = deskHandlers({ home });
const folder = fileURLToPath(new URL('../../out/renderer', import.meta.url));
const host = await startHost({ desk: desk.handlers, folder, port: 0 });
const browser = await chromium.launch(e2e.use?.launchOptions ?? {});

const toStart: number[] = [];
const toMargins: number[] = [];
for (let round = 0; round < 12; round += 1) {
  const context = await browser.newContext();
  const page = await context.newPage();
  const started = performance.now();
  await page.goto(host.address);
  await page.getByRole('button', { name: 'Demo', exact: true }).waitFor();
  const shown = performance.now();
  await page.getByRole('button', { name: 'Demo', exact: true }).click();
  await page.locator('.margin').first().waitFor();
  toStart.push(shown - started);
  toMargins.push(performance.now() - shown);
  await context.close();
}
await browser.close();
await host.close();
await desk.closeAll();
await rm(home, { recursive: true });

report('address asked for to start screen', toStart.slice(2));
report('notebook pressed to margins drawn', toMargins.slice(2));
