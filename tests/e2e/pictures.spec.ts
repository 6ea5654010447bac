/**
 * The pictures of the README, taken from the running program. They land in `test-results`; with
 * `COUNTERPOISE_PICTURES=1` in `docs/pictures`, for the ones that are kept.
 */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, openDemo, test } from './fixture.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = join(
  root,
  process.env.COUNTERPOISE_PICTURES === '1' ? 'docs/pictures' : 'test-results/pictures',
);

test.beforeAll(() => mkdir(folder, { recursive: true }));

test('masses, views and margins', async ({ window }) => {
  await openDemo(window);
  await expect(window.getByRole('img', { name: /parts drawn to scale/ })).toBeVisible();
  await window.screenshot({ path: join(folder, 'masses.png') });
});

test('a number explained', async ({ window }) => {
  await openDemo(window);
  await window.locator('[data-margin="lean"]').click();
  await expect(window.getByRole('dialog')).toContainText('What goes in');
  await window.screenshot({ path: join(folder, 'explained.png') });
});

test('a log entry that computes', async ({ window }) => {
  await openDemo(window);
  await window.getByRole('button', { name: 'Log', exact: true }).click();
  await window.getByRole('button', { name: /First weighing/ }).click();
  await expect(window.locator('.cm-editor')).toContainText('N·m');
  await window.screenshot({ path: join(folder, 'log.png') });
});

test('an item of the checklist', async ({ window }) => {
  await openDemo(window);
  await window.getByRole('button', { name: 'Test cards', exact: true }).click();
  await window.getByRole('button', { name: 'Captive spin-up' }).click();
  await window.getByRole('button', { name: 'Start a run' }).click();
  await expect(window.locator('.item-text')).toBeVisible();
  await window.screenshot({ path: join(folder, 'checklist.png') });
});
