/**
 * From a key typed into a mass to every margin drawn anew: in the demo notebook, and in one of 10,000 log entries and
 * 200 revisions. The window is the built one in Chromium, on loopback, with nothing else to do.
 *
 * Two times for each key, both from the time stamp that the browser gave it: until the margins stand in the document
 * and the page is laid out, and until the frame with them is made, which includes waiting for that frame.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from '@playwright/test';
import { createNotebook, deskHandlers, writeDemo } from '../../src/desk/index.ts';
import { startHost } from '../../src/host/index.ts';
import { buildWindow, staleBuild } from '../../src/host/window-build.ts';
import { largeNotebook } from './large-notebook.ts';
import { report } from './timing/percentiles.ts';

const KEYS = 400;
const WARMING = 40; // keys before those that count
const BETWEEN = 60; // ms, a quick hand

interface KeyTimes {
  readonly laidOut: number[];
  readonly framed: number[];
}

/** Runs in the page: notes the two times of every key that changes a field. */
function watchKeys(): void {
  const times: KeyTimes = { laidOut: [], framed: [] };
  Object.assign(globalThis, { keyTimes: times });
  let pressed = 0;
  addEventListener('keydown', (event) => {
    pressed = event.timeStamp;
  });
  // Behind the window's own listener, whose drawing is done in a task of its own kind before this one is.
  addEventListener('input', () => {
    const from = pressed;
    queueMicrotask(() => {
      document.body.getBoundingClientRect();
      times.laidOut.push(performance.now() - from);
    });
    requestAnimationFrame(() => {
      const afterwards = new MessageChannel();
      afterwards.port1.onmessage = () => {
        times.framed.push(performance.now() - from);
        afterwards.port1.close();
      };
      afterwards.port2.postMessage(undefined);
    });
  });
}

/** Types into the first mass of the table, a digit and its removal in turn, so that every key gives another figure. */
async function typeIntoMass(page: Page): Promise<KeyTimes> {
  const field = page.locator('.mass-table .quantity-value').first();
  const margins = page.locator('.margins');
  await field.click();
  await field.press('Home');
  await field.press('ArrowRight');
  const before = await margins.innerHTML();
  await page.keyboard.press('5');
  if ((await margins.innerHTML()) === before) throw new Error('no margin follows the mass');
  await page.keyboard.press('Backspace');
  for (let count = 0; count < KEYS + WARMING; count += 1) {
    await page.keyboard.press(count % 2 === 0 ? String(count % 10) : 'Backspace');
    await page.waitForTimeout(BETWEEN);
  }
  return page.evaluate(() => (globalThis as unknown as { keyTimes: KeyTimes }).keyTimes);
}

async function measure(
  browser: Browser,
  address: string,
  title: string,
  open: (page: Page) => Promise<void>,
) {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.addInitScript(watchKeys);
  await page.goto(address);
  await open(page);
  await page.getByRole('button', { name: 'Masses', exact: true }).click();
  const { laidOut, framed } = await typeIntoMass(page);
  report(`key to margins in the document, ${title}`, laidOut.slice(-KEYS));
  report(`key to margins in a frame, ${title}`, framed.slice(-KEYS));
  await page.close();
}

const root = fileURLToPath(new URL('../..', import.meta.url));
if (staleBuild(root) !== undefined && !buildWindow(root)) throw new Error('the window is not built');
const home = await mkdtemp(join(tmpdir(), 'counterpoise-bench-'));
await createNotebook(join(home, 'Years'), { author: 'Jo', entries: largeNotebook() });
const desk = deskHandlers({ home, demo: writeDemo });
const host = await startHost({ desk: desk.handlers, folder: join(root, 'out', 'renderer'), port: 0 });
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
  ],
});
await measure(browser, host.address, 'demo notebook', async (page) => {
  await page.getByRole('button', { name: 'Open the demo notebook' }).click();
  await page.getByRole('button', { name: 'New revision from this one' }).click();
});
await measure(browser, host.address, '10,000 log entries and 200 revisions', async (page) => {
  await page.getByRole('button', { name: 'Years', exact: true }).click();
  await page.getByRole('button', { name: 'New revision from this one' }).click({ timeout: 60_000 });
});
await browser.close();
await host.close();
await desk.closeAll();
await rm(home, { recursive: true });
