/** What somebody finds who has never seen the program: what to enter first, ways from page to page, a title. */
import { expect, openDemo, test, type } from './fixture.ts';

test('the first steps lead from page to page, and go as they are done', async ({ window }) => {
  await window.getByLabel("Its name, and its notebook's").fill('Rig one');
  await window.getByRole('button', { name: 'New prototype' }).click();
  const steps = window.getByRole('region', { name: 'First steps' });
  await expect(steps).toContainText('Say what it has to reach');
  await type(window, 'lean to recover from', '4°');
  await expect(steps).not.toContainText('Say what it has to reach');
  await expect(steps).toContainText('1 of 9 done');

  await steps.getByRole('button', { name: 'Weigh the parts' }).click();
  await expect(window.getByRole('heading', { level: 1 })).toHaveText('Masses');
  await expect(window.getByText(/No parts yet/)).toBeVisible();
  await window.getByRole('button', { name: 'Add a part' }).click();
  await type(window, 'Part 1: mass', '2 kg');
  await type(window, 'Part 1: distance forward', '120 mm');
  await type(window, 'Part 1: height', '130 mm');
  await expect(steps).not.toContainText('Weigh the parts');

  await steps.getByRole('button', { name: 'Describe the ballast' }).click();
  await expect(window.getByRole('heading', { level: 1 })).toHaveText('Ballast');
  await expect(window.getByRole('main')).toBeFocused();
});

test('a revision that was made from another, or is issued, needs no first steps', async ({ window }) => {
  await openDemo(window);
  await expect(window.getByRole('region', { name: 'First steps' })).toHaveCount(0);
  await window.getByRole('button', { name: 'New revision from this one' }).click();
  await window.getByRole('button', { name: 'Masses', exact: true }).click();
  await expect(window.getByRole('region', { name: 'First steps' })).toHaveCount(0);
});

test('what is missing for a figure leads to where it is entered', async ({ window }) => {
  await window.getByLabel("Its name, and its notebook's").fill('Rig one');
  await window.getByRole('button', { name: 'New prototype' }).click();
  await type(window, 'lean to recover from', '4°');
  await window.locator('[data-margin="lean"]').click();
  await window.getByRole('dialog').getByRole('button', { name: 'Ballast' }).first().click();
  await expect(window.getByRole('dialog')).toHaveCount(0);
  await expect(window.getByRole('heading', { level: 1 })).toHaveText('Ballast');
});

test('a run leads to its card and to what broke on it, and the report back to its run', async ({
  window,
}) => {
  await openDemo(window);
  await window.getByRole('button', { name: 'Runs', exact: true }).click();
  await window
    .getByRole('row', { name: /broken off/ })
    .getByRole('button')
    .click();
  await window.getByRole('button', { name: /^Report 1: / }).click();
  await expect(window.getByRole('heading', { level: 1 })).toHaveText('Failures');
  await window.getByRole('button', { name: 'run 2', exact: true }).click();
  await expect(window.getByRole('region', { name: 'Run 2' })).toBeVisible();
  await window.getByRole('button', { name: /^Test card \d/ }).click();
  const card = window.getByRole('region', { name: /^Test card/ });
  await expect(card).toBeVisible();
  await card.getByRole('button', { name: 'Run 2' }).click();
  await expect(window.getByRole('region', { name: 'Run 2' })).toBeVisible();
});

test('the title says prototype, revision and page', async ({ window }) => {
  await expect(window).toHaveTitle('Counterpoise');
  await openDemo(window);
  await expect(window).toHaveTitle('Sandpiper tool cart C: Masses – Counterpoise');
  await window.getByRole('button', { name: 'Loop', exact: true }).click();
  await expect(window).toHaveTitle('Sandpiper tool cart C: Loop – Counterpoise');
  await window.getByRole('button', { name: 'Close notebook' }).click();
  await expect(window).toHaveTitle('Counterpoise');
});

test('common values fit their fields', async ({ window }) => {
  await openDemo(window);
  await window.getByRole('button', { name: 'New revision from this one' }).click();
  await window.getByRole('button', { name: 'Masses', exact: true }).click();
  await type(window, 'Frame: distance forward', '170 mm ± 3 mm');
  for (const name of ['Requirements', 'Masses', 'Rotor and gimbal', 'Ballast', 'Loop', 'Power']) {
    await window.getByRole('button', { name, exact: true }).click();
    const cut = await window
      .locator('.quantity-value')
      .evaluateAll((fields) =>
        fields
          .filter((field) => field.scrollWidth > field.clientWidth)
          .map((field) => (field as HTMLInputElement).value || (field as HTMLInputElement).placeholder),
      );
    expect(cut).toEqual([]);
  }
});
