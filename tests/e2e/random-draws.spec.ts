/** A margin drawn at random from its own sheet, in a worker that the content policy lets start. */
import { expect, openDemo, test } from './fixture.ts';

test('a margin in doubt is drawn, and says how often it holds', async ({ window }) => {
  await openDemo(window);
  await window
    .getByRole('button', { name: /^(Revision )?B\b/ })
    .first()
    .click();
  await expect(window.locator('[data-margin="lean"]')).toHaveAttribute('data-verdict', 'in doubt');
  await window.locator('[data-margin="lean"]').click();
  const sheet = window.getByRole('dialog');
  await sheet.getByRole('button', { name: 'Draw it' }).click();
  // first order has MS = 0.013(12): the demand is met with a probability of Φ(1.1)
  await expect(sheet.getByText(/The demand is met in 8\d\.\d\s% of \d+\s000 draws/)).toBeVisible();
  await expect(sheet.getByText(/First order is confirmed/)).toBeVisible();
  await expect(sheet.getByRole('img', { name: /^Draws: Lean to recover from/ })).toBeVisible();
  await expect(sheet.getByRole('button', { name: 'Draw again, from another seed' })).toBeFocused();
});

test('drawing can be stopped, and the sheet closed while it draws', async ({ window }) => {
  await openDemo(window);
  await window.locator('[data-margin="delay"]').click();
  const sheet = window.getByRole('dialog');
  await sheet.getByRole('button', { name: 'Draw it' }).click();
  await sheet.getByRole('button', { name: 'Stop drawing' }).click();
  await expect(sheet.getByRole('button', { name: 'Draw it' })).toBeFocused();
  await sheet.getByRole('button', { name: 'Draw it' }).click();
  await window.keyboard.press('Escape');
  await expect(sheet).toBeHidden();
  await expect.poll(() => window.workers().length).toBeLessThanOrEqual(1); // the one of the log's calculations may stay
});
