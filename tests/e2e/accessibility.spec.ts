/**
 * Every page and state of the window under the rules of WCAG 2.2 A and AA and the good practice that axe knows, in each
 * of the three papers: no violation anywhere, no rule switched off. What axe cannot see (order of focus, keys) is in
 * `keyboard.spec.ts`.
 */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openDemo, test } from './fixture.ts';

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** No violation in what is shown now; the place is for the reader of a failure. */
async function sound(page: Page, place: string): Promise<void> {
  // The papers differ in their colours alone: what is said by structure is judged once, on the first of them.
  const light = await page.evaluate(() => document.documentElement.dataset.theme === 'light');
  const axe = new AxeBuilder({ page });
  const { violations } = await (light ? axe.withTags(rules) : axe.withRules(['color-contrast'])).analyze();
  const found = violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${place}: ${id}\n${html}\n${failureSummary}`),
  );
  expect(found).toEqual([]);
}

const turnTo = (page: Page, name: string) =>
  page.getByRole('navigation').getByRole('button', { name, exact: true }).click();

for (const paper of ['light', 'dark', 'high contrast']) {
  test.describe(`on ${paper} paper`, () => {
    test.beforeEach(async ({ window }) => {
      test.setTimeout(300_000);
      await window.getByLabel('Paper and ink').selectOption(paper);
    });

    test('the start screen, and an empty prototype', async ({ window }) => {
      await sound(window, 'start');
      await window.getByRole('button', { name: 'New prototype' }).click();
      await sound(window, 'start, without a name');
      await window.getByLabel("Its name, and its notebook's").fill('Bench rig one');
      await window.getByRole('button', { name: 'New prototype' }).click();
      for (const name of ['Requirements', 'Masses', 'Rotor and gimbal', 'Ballast', 'Test cards', 'Runs']) {
        await turnTo(window, name);
        await sound(window, `${name}, empty`);
      }
    });

    test('every page of the demo', async ({ window }) => {
      // High enough for whole pages: what is out of sight is not judged for its contrast.
      await window.setViewportSize({ width: 1280, height: 2600 });
      await openDemo(window);
      const names = await window.locator('.page-list button').allTextContents();
      for (const name of names) {
        await turnTo(window, name);
        await expect(window.getByRole('heading', { level: 1, name, exact: true })).toBeVisible();
        await sound(window, name);
      }
    });

    test('explanations, dialogs, and a field that cannot be read', async ({ window }) => {
      await openDemo(window);
      await window.locator('[data-margin="lean"]').click();
      await window.getByRole('button', { name: 'Work it out' }).click();
      await expect(window.getByRole('dialog')).toContainText('Turns at');
      await sound(window, 'margin explained');
      await window.getByRole('dialog').locator('.figure-button').first().click();
      await expect(window.getByRole('button', { name: /^Back to/ })).toBeVisible();
      await sound(window, 'figure explained');
      await window.keyboard.press('Escape');

      await window.getByRole('button', { name: 'New prototype' }).click();
      await sound(window, 'new prototype');
      await window.keyboard.press('Escape');

      await window.getByRole('button', { name: 'New revision from this one' }).click();
      await turnTo(window, 'Masses');
      await window.getByRole('button', { name: 'Frame: role and body, structure' }).click();
      await window.getByLabel('Frame: mass').fill('611 gx');
      await window.getByLabel('Frame: mass').blur();
      await expect(window.getByRole('alert')).toContainText('not known');
      await sound(window, 'masses with a part open and a mass that cannot be read');
      await window.getByLabel('Frame: mass').fill('611 g');
      await window.getByRole('button', { name: 'Issue revision D' }).click();
      await sound(window, 'issue a revision');
    });

    test('a card, a run and a failure report', async ({ window }) => {
      await openDemo(window);
      await turnTo(window, 'Runs');
      await window.getByRole('button', { name: 'Captive spin-up' }).first().click();
      await window.getByText(/^Checklist: /).click();
      await sound(window, 'run');
      await turnTo(window, 'Failures');
      await window.getByRole('table').getByRole('button').first().click();
      await sound(window, 'failure report');
      await turnTo(window, 'Test cards');
      await window.getByRole('button', { name: 'Make a test card' }).click();
      await sound(window, 'draft card');
      await window.getByRole('button', { name: 'Issue the card' }).click();
      await sound(window, 'issued card');
    });

    test('the checklist from its first word to making safe', async ({ window }) => {
      await startRun(window);
      await sound(window, 'before the first item');
      const screen = window.getByRole('dialog', { name: /Checklist of run/ });
      await screen.getByLabel('Reads').fill('ML');
      await screen.getByLabel('Answers').fill('TB');
      await screen.getByRole('button', { name: 'Begin the checklist' }).click();
      await sound(window, 'hold point with choices');
      await screen.locator('.answers button').nth(1).click();
      await expect(screen.locator('.item-answered')).toBeVisible();
      await sound(window, 'hold point that is not met');
      await screen.getByLabel('Note').fill('Other pack taken, looked at again.');
      await screen.locator('.answers button').first().click();
      await expect(screen.locator('.reading')).toBeVisible();
      await sound(window, 'reading');
      await screen.locator('.reading input').fill('three');
      await screen.getByRole('button', { name: 'Read', exact: true }).click();
      await expect(screen.getByRole('alert')).toBeVisible();
      await sound(window, 'reading that cannot be read');
      await screen.getByRole('button', { name: 'All items' }).click();
      await sound(window, 'all items');
      await screen.getByRole('button', { name: 'All items' }).click();
      await screen.getByRole('button', { name: 'Break off the run' }).click();
      await expect(screen.getByText('The run is broken off.')).toBeVisible();
      await sound(window, 'making safe');
    });
  });
}

test('in a window of 640 by 400, as at 200 %', async ({ window }) => {
  test.setTimeout(300_000);
  await window.setViewportSize({ width: 640, height: 400 });
  await startRun(window);
  await sound(window, 'checklist');
  await expectNoSideways(window);
  await window.getByRole('button', { name: 'Leave the screen' }).click();
  for (const name of await window.locator('.page-list button').allTextContents()) {
    await turnTo(window, name);
    await sound(window, name);
    await expectNoSideways(window);
  }
});

test('text at 200 % takes the sheet apart as a narrow window does, and nothing goes off the side', async ({
  window,
}) => {
  await openDemo(window);
  await window.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });
  for (const name of await window.locator('.page-list button').allTextContents()) {
    await turnTo(window, name);
    await expectNoSideways(window);
  }
});

/** Two-dimensional content (the mass table) may scroll in its own frame; the window never does (WCAG 1.4.10). */
async function expectNoSideways(page: Page): Promise<void> {
  const over = await page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth - clientWidth;
  });
  expect(over).toBeLessThanOrEqual(0);
}

async function startRun(page: Page): Promise<void> {
  await openDemo(page);
  await turnTo(page, 'Test cards');
  await page.getByRole('table').getByRole('button', { name: 'Captive spin-up' }).click();
  await page.getByRole('button', { name: 'Start a run' }).click();
  await expect(page.getByRole('dialog', { name: /Checklist of run/ })).toBeVisible();
}
