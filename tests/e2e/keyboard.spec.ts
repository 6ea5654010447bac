/**
 * The whole way without a mouse: every step is a key, every focus where a person expects it. From the start screen to
 * an explained margin, through a field that is thought better of, to the checklist of a run.
 */
import type { Locator, Page } from '@playwright/test';
import { expect, saved, test } from './fixture.ts';
import { fitting } from './readings.ts';

const FARTHEST = 150; // tabs to anything that can be reached

/** Tabs on until the thing has the focus. */
async function tabTo(page: Page, target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let count = 0; count < FARTHEST; count += 1) {
    if (await hasFocus(target)) return;
    await page.keyboard.press(key);
  }
  await expect(target).toBeFocused();
}

function hasFocus(target: Locator): Promise<boolean> {
  return target.evaluate((element) => element === document.activeElement);
}

async function press(page: Page, name: string | RegExp, key: 'Enter' | 'Space' = 'Enter'): Promise<void> {
  await tabTo(page, page.getByRole('button', { name, exact: typeof name === 'string' }).first());
  await page.keyboard.press(key);
}

async function openDemo(page: Page): Promise<void> {
  await press(page, 'Open the demo notebook');
  await expect(page.getByRole('complementary', { name: 'Margins' })).toContainText('Lean to recover from');
}

/** Wherever Tab leads, it leads to something inside. */
async function expectFocusKeptIn(page: Page, frame: Locator, tabs: number): Promise<void> {
  for (const key of ['Tab', 'Shift+Tab'] as const) {
    for (let count = 0; count < tabs; count += 1) {
      await page.keyboard.press(key);
      expect(await frame.evaluate((element) => element.contains(document.activeElement))).toBe(true);
    }
  }
}

test('an opened notebook has the focus on its page, and links lead past the list', async ({ window }) => {
  await openDemo(window);
  await expect(window.getByRole('main')).toBeFocused();
  const toMargins = window.getByRole('link', { name: 'To the margins' });
  await tabTo(window, toMargins, 'Shift+Tab');
  await expect(toMargins).toBeInViewport();
  await window.keyboard.press('Enter');
  await expect(window.getByRole('complementary', { name: 'Margins' })).toBeFocused();
  await window.keyboard.press('Tab');
  await expect(window.locator('[data-margin="lean"]')).toBeFocused();
  await tabTo(window, window.getByRole('link', { name: 'To the page' }), 'Shift+Tab');
  await window.keyboard.press('Enter');
  await expect(window.getByRole('main')).toBeFocused();
});

test('a margin is explained down to what was weighed, and the focus comes back to it', async ({ window }) => {
  await openDemo(window);
  const margin = window.locator('[data-margin="lean"]');
  await tabTo(window, margin);
  await window.keyboard.press('Enter');
  const sheet = window.getByRole('dialog');
  await expect(sheet).toContainText('What goes in');
  await expectFocusKeptIn(window, sheet, 12);
  await tabTo(window, sheet.locator('.figure-button').first());
  await window.keyboard.press('Enter');
  await expect(sheet.getByRole('heading', { level: 2 })).toHaveText(/largest lean/i);
  await expect(sheet.getByRole('heading', { level: 2 })).toBeFocused();
  await press(window, /^Back to lean to recover from/);
  await expect(sheet.getByRole('heading', { level: 2 })).toHaveText('Lean to recover from');
  await expect(sheet.getByRole('heading', { level: 2 })).toBeFocused();
  await window.keyboard.press('Escape');
  await expect(sheet).toHaveCount(0);
  await expect(margin).toBeFocused();
});

test('dialogs keep the focus, close by Escape, and give it back', async ({ window }) => {
  await openDemo(window);
  await press(window, 'New prototype');
  const dialog = window.getByRole('dialog');
  await expectFocusKeptIn(window, dialog, 6);
  await window.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  await expect(window.getByRole('button', { name: 'New prototype' })).toBeFocused();

  await press(window, 'New revision from this one');
  await press(window, 'Issue revision D');
  await expect(window.getByRole('alertdialog')).toBeVisible();
  await expect(window.getByRole('button', { name: 'Not yet' })).toBeFocused();
  await window.keyboard.press('Enter');
  await expect(window.getByRole('button', { name: 'Issue revision D' })).toBeFocused();
  await expect(window.getByText('draft', { exact: true }).first()).toBeVisible();
});

test('Escape in a field puts back what stood there, also after it was saved', async ({ window }) => {
  await openDemo(window);
  await press(window, 'New revision from this one');
  await press(window, 'Masses');
  const mass = window.getByLabel('Frame: mass');
  await tabTo(window, mass);
  const before = await mass.inputValue();
  const total = window.getByRole('row', { name: /total mass of the parts/ });
  const figure = (await total.textContent()) ?? '';

  await window.keyboard.type('2 kg');
  await expect(total).not.toHaveText(figure);
  await window.keyboard.press('Escape');
  await expect(mass).toHaveValue(before);
  await expect(mass).toBeFocused();
  expect(await total.textContent()).toBe(figure);

  await mass.press('ControlOrMeta+a');
  await window.keyboard.type('3 kg');
  await window.waitForTimeout(1000); // the pause after which what was typed is recorded
  await saved(window);
  await window.keyboard.press('Escape');
  await expect(mass).toHaveValue(before);
  await saved(window);
  expect(await total.textContent()).toBe(figure);
});

test('a value that cannot be read keeps its text and its message when the field is left', async ({
  window,
}) => {
  await openDemo(window);
  await press(window, 'New revision from this one');
  await press(window, 'Masses');
  const mass = window.getByLabel('Frame: mass');
  const total = window.getByRole('row', { name: /total mass of the parts/ });
  const figure = (await total.textContent()) ?? '';
  await tabTo(window, mass);
  await window.keyboard.type('611 gx');
  await window.keyboard.press('Tab');
  await expect(mass).toHaveValue('611 gx');
  await expect(mass).toHaveAttribute('aria-invalid', 'true');
  await expect(mass).toHaveAccessibleDescription(/“gx” is not known/);
  expect(await total.textContent()).toBe(figure);
});

test('what typing led to is told once it has come to rest', async ({ window }) => {
  await openDemo(window);
  await press(window, 'New revision from this one');
  await press(window, 'Requirements');
  await tabTo(window, window.getByLabel('lean to recover from', { exact: true }));
  await window.keyboard.type('30°');
  await window.keyboard.press('Tab');
  await expect(window.getByRole('status').filter({ hasText: 'Lean to recover from: now fails.' })).toHaveText(
    /^Saved\./,
  );
});

test('the checklist: figures choose, Enter meets, a reading is typed, Escape and a held key skip nothing', async ({
  window,
}) => {
  test.setTimeout(120_000);
  await openDemo(window);
  await press(window, 'Test cards');
  await press(window, 'Captive spin-up');
  await press(window, 'Start a run');
  const screen = window.getByRole('dialog', { name: /Checklist of run/ });
  const item = screen.locator('.item-text');
  const words = screen.locator('.progress-words');
  await expect(item).toHaveText('Before you begin');
  await expectFocusKeptIn(window, screen, 8);

  await tabTo(window, screen.getByLabel('Reads'));
  await window.keyboard.type('ML');
  await window.keyboard.press('Tab');
  await window.keyboard.type('TB');
  await press(window, 'Begin the checklist');

  // A hold point with choices, answered by their figures.
  await expect(words).toHaveText(/^Item 1 of/);
  await settled(screen);
  await window.keyboard.press('Escape');
  await window.keyboard.press('Enter');
  await window.keyboard.press('9');
  await expect(words).toHaveText(/^Item 1 of/);
  await window.keyboard.press('1');

  // A reading, out of its limits first.
  await expect(words).toHaveText(/^Item 2 of/);
  await expect(screen.locator('.reading input')).toBeFocused();
  await window.keyboard.type('4');
  await window.keyboard.press('Enter');
  await expect(screen.locator('.item-answered')).toContainText('not met');
  await expect(words).toHaveText(/^Item 2 of/);
  await screen.locator('.reading input').press('ControlOrMeta+a');
  await window.keyboard.type('3');
  await window.keyboard.press('Enter');
  await expect(words).toHaveText(/^Item 3 of/);

  // On to one that is only met or not.
  await goOn(window, screen, async () => (await screen.getByRole('button', { name: 'Not met' }).count()) > 0);
  const first = (await item.textContent()) ?? '';
  await settled(screen);
  await window.keyboard.down('Enter');
  await window.keyboard.down('Enter'); // held: it repeats
  await window.keyboard.down('Enter');
  await window.keyboard.up('Enter');
  await expect(item).not.toHaveText(first);
  const second = await words.textContent();
  await settled(screen);
  await expect(words).toHaveText(second ?? '');

  // All items, and back to the open one.
  await press(window, 'All items');
  await expect(screen.getByRole('heading', { name: 'All items' })).toBeFocused();
  await press(window, /^1\b.*Hold point/);
  await expect(words).toHaveText(/^Item 1 of/);
  await expect(screen.locator('.item-answered')).toContainText('met');
  await press(window, 'Back to the open item');
  await expect(words).toHaveText(second ?? '');

  // Leaving it, and coming back to it.
  await press(window, 'Leave the screen');
  await expect(screen).toHaveCount(0);
  await expect(window.getByRole('main')).toBeFocused();
  await press(window, 'Back to the checklist');
  await expect(words).toHaveText(second ?? '');
});

/** Buttons that have only just come are not pressed by a finger that bounces. */
async function settled(screen: Locator): Promise<void> {
  await expect(screen.locator('.answers button').first()).toBeEnabled();
}

/** Answers by keys alone until something is so. */
async function goOn(page: Page, screen: Locator, reached: () => Promise<boolean>): Promise<void> {
  const words = screen.locator('.progress-words');
  for (let count = 0; count < 20 && !(await reached()); count += 1) {
    const before = (await words.textContent()) ?? '';
    const input = screen.locator('.reading input');
    if (await input.isVisible()) {
      await expect(input).toBeFocused();
      const limits = (await screen.locator('.reading span').first().textContent()) ?? '';
      const example = ((await input.getAttribute('placeholder')) ?? '').replace(/^.*example\s*/, '');
      await page.keyboard.type(fitting(limits) ?? example);
      await page.keyboard.press('Enter');
    } else {
      await settled(screen);
      await page.keyboard.press('1');
    }
    await expect(words).not.toHaveText(before);
  }
}
