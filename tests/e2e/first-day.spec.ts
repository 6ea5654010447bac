/**
 * The whole chain once, by somebody who has never seen the program: a prototype with requirements, its parts
 * weighed, rotor, gimbal, ballast, loop and pack described, a calculation in the log, a captive spin-up with its
 * checklist, what broke, the next revision, and the report to hand over.
 */
import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { expect, saved, test, type } from './fixture.ts';
import { fitting } from './readings.ts';

const page = (window: Page, name: string) => window.getByRole('button', { name, exact: true }).click();

const requirements = [
  ['lean to recover from', '4°'],
  ['lateral acceleration to withstand', '0.5 m/s²'],
  ['turn radius', '3 m'],
  ['speed in that turn', '3 mph'],
  ['cross slope to stand on', '2°'],
  ['run time', '10 min'],
  ['overspeed factor that the rotor is judged at', '1.2'],
  ['gain margin to keep', '1.3'],
  ['delay margin to keep', '5 ms'],
] as const;

/** Name, mass, forward, height; the ballast's height follows from its drive. */
const parts = [
  ['Body', '1.95 kg ± 5 g', '120 mm ± 2 mm', '130 mm ± 2 mm'],
  ['Rotor', '395 g ± 1 g', '120 mm ± 2 mm', '140 mm ± 2 mm'],
  ['Ballast', '0.75 kg ± 2 g', '120 mm ± 2 mm', ''],
] as const;

test('from an empty notebook to a printed report', async ({ window }) => {
  test.setTimeout(180_000);

  await test.step('a new prototype with requirements', async () => {
    await window.getByLabel('Your name').fill('Mara Lindqvist');
    await window.getByLabel("Its name, and its notebook's").fill('Bench rig one');
    await window.getByRole('button', { name: 'New prototype' }).click();
    await expect(window.getByRole('heading', { level: 1, name: 'Requirements' })).toBeVisible();
    for (const [label, text] of requirements) await type(window, label, text);
    await saved(window);
    await expect(window.getByLabel('speed in that turn', { exact: true })).toHaveValue('3 mph');
  });

  await test.step('the mass table', async () => {
    await page(window, 'Masses');
    for (const [index, [name, mass, forward, height]] of parts.entries()) {
      await window.getByRole('button', { name: 'Add a part' }).click();
      await type(window, `Part ${index + 1}: mass`, mass);
      await type(window, `Part ${index + 1}: distance forward`, forward);
      if (height !== '') await type(window, `Part ${index + 1}: height`, height);
      await window.getByLabel('Name of the part').nth(index).fill(name);
      await window.getByLabel('Name of the part').nth(index).blur();
    }
    for (const [name, role] of [
      ['Rotor', 'rotor'],
      ['Ballast', 'ballast'],
    ] as const) {
      await window.getByRole('button', { name: new RegExp(`^${name}: role and body`) }).click();
      await window.getByLabel(/what it is in the sums/i).selectOption(role);
    }
    await expect(window.getByRole('row', { name: /total mass of the parts/ })).toContainText('3.095');
  });

  await test.step('rotor and gimbal', async () => {
    await page(window, 'Rotor and gimbal');
    await window.getByRole('button', { name: 'Add a disc or annulus' }).click();
    await type(window, 'rim: outer diameter', '80 mm');
    await type(window, 'rim: bore diameter', '50 mm');
    await type(window, 'rim: thickness', '16 mm');
    await window
      .getByLabel('material', { exact: true })
      .selectOption({ label: 'Steel S235JR, up to 16 mm thick' });
    await type(window, 'largest working speed of the rotor', '8500 rpm');
    await type(window, 'speed constant of the spin motor', '1000 rpm/V');
    await type(window, 'travel of the gimbal to each side', '±45°');
    await type(window, 'inertia of gimbal and rotor about the tilt axis', '8e-4 kg·m²');
    await type(window, 'viscous friction of the gimbal', '0.006 N·m·s/rad');
    await expect(window.getByRole('row', { name: /energy of the rotor/ })).toContainText('J');
  });

  await test.step('ballast and its actuator', async () => {
    await page(window, 'Ballast');
    await window.getByLabel('the ballast rides on').selectOption('slide');
    await type(window, 'height of the slide', '3 in');
    await type(window, 'travel of the slide to each side', '±55 mm ± 1 mm');
    await type(window, 'stall force of the actuator', '40 N');
    await type(window, 'no-load speed of the actuator', '0.5 m/s');
    await type(window, 'natural frequency of the actuator', '32 rad/s');
    await type(window, 'damping ratio of the actuator', '0.85');
    const lean = window.locator('[data-margin="lean"]');
    await expect(lean).toHaveAttribute('data-verdict', 'holds');
  });

  await test.step('loop and pack', async () => {
    await page(window, 'Loop');
    await type(window, 'gain on the lean', '0.75 m/rad');
    await type(window, 'gain on the lean rate', '0.01 m·s/rad');
    await type(window, 'gain on the gimbal tilt', '0.07 m/rad');
    await type(window, 'sample time of the loop', '5 ms');
    await type(window, 'delay of the loop (computing and actuator frame)', '18 ms');
    await type(window, 'lag of the lean sensor', '8 ms');
    await page(window, 'Power');
    await type(window, 'cells in series', '3');
    await type(window, 'capacity of the pack', '2200 mAh');
    await type(window, 'resistance of the pack with its leads', '50 mΩ');
    await type(window, 'largest continuous current of the pack', '33 A');
    await type(window, 'mean current over a run', '5 A');
    await type(window, 'peak current', '18 A');
    await type(window, 'usable share of the capacity', '80 %');
    await type(window, 'rating of the fuse', '20 A');
    await expect(window.locator('.margin')).toHaveCount(11);
    await expect(window.locator('[data-verdict="unknown"]')).toHaveCount(0);
  });

  await test.step('a number explains itself', async () => {
    await window.locator('[data-margin="lean"]').click();
    const sheet = window.getByRole('dialog');
    await expect(sheet).toContainText('What goes in');
    await expect(sheet).toContainText('How sure it is');
    await sheet.getByRole('button', { name: 'Work it out' }).click();
    await expect(sheet).toContainText('Turns at');
    await window.keyboard.press('Escape');
  });

  await test.step('a log entry that computes', async () => {
    await page(window, 'Log');
    await window.getByRole('button', { name: 'New entry' }).click();
    const editor = window.locator('.cm-content');
    await editor.click();
    await window.keyboard.insertText(
      '# Sums\n\n```calc\nT = ballast_mass * g_n * ballast_offset_max\nbad = nonsense_name + 1\n```\n',
    );
    await expect(window.locator('.cm-editor')).toContainText('N·m');
    await expect(window.locator('.cm-editor')).toContainText('nonsense_name');
    await saved(window);
  });

  await test.step('a card, a run, its checklist', async () => {
    await page(window, 'Test cards');
    await window.getByLabel('kind of test').selectOption({ label: 'Captive spin-up' });
    await window.getByRole('button', { name: 'Make a test card' }).click();
    await window.getByRole('button', { name: 'Issue the card' }).click();
    await window.getByRole('button', { name: 'Start a run' }).click();
    await goThroughChecklist(window);
    await expect(window.getByText('Ended: passed.')).toBeVisible();
  });

  await test.step('measured beside predicted, and signed', async () => {
    await type(window, 'Speed reached', '8480 rpm ± 30 rpm');
    await type(window, 'What happened', 'Smooth to full speed.');
    await window.getByRole('button', { name: 'Sign the run as Mara Lindqvist' }).click();
    await expect(window.getByText(/^Signed .* by Mara Lindqvist/)).toBeVisible();
  });

  await test.step('what broke, and the next revision', async () => {
    await window.getByRole('button', { name: 'Report a failure' }).click();
    await type(window, 'What broke, in a line', 'Lower bearing rubs');
    await type(window, 'Corrective action', 'Retaining plate over the bearing');
    await window.getByRole('button', { name: 'Issue revision A' }).click();
    await window
      .getByRole('alertdialog')
      .getByRole('button', { name: /^Issue/ })
      .click();
    await window.getByRole('button', { name: 'New revision from this one' }).click();
    await page(window, 'Ballast');
    await type(window, 'travel of the slide to each side', '±65 mm ± 1 mm');
    await page(window, 'Compare');
    await window.getByLabel('revision B against revision').selectOption({ label: 'A' });
    await expect(window.getByRole('row', { name: /travel of the slide/ })).toContainText('±65 mm ± 1 mm');
    await expect(window.getByRole('row', { name: /Lean to recover from/ })).toContainText('holds');
  });

  await test.step('the printed report', async () => {
    await page(window, 'Runs');
    await window.getByRole('button', { name: 'Captive spin-up' }).click();
    const download = window.waitForEvent('download');
    await window
      .getByRole('region', { name: /Run 1/ })
      .getByRole('button', { name: 'Report as PDF' })
      .click();
    const bytes = await readFile(await (await download).path());
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    expect(bytes.length).toBeGreaterThan(30_000);
  });
});

/** Answers every item as it is put, clears the run, and ends it as passed. */
async function goThroughChecklist(window: Page): Promise<void> {
  const screen = window.getByRole('dialog', { name: /Checklist of run/ });
  await screen.getByLabel('Reads').fill('ML');
  await screen.getByLabel('Answers').fill('TB');
  for (let guard = 0; guard < 80; guard += 1) {
    const clearance = screen.getByRole('button', { name: 'Clear the run, by ML' });
    const passed = screen.getByRole('button', { name: 'End: passed' });
    if (await clearance.isVisible()) {
      await press(clearance);
      continue;
    }
    if (await passed.isVisible()) {
      await press(passed);
      return;
    }
    const item = await screen.locator('.item-text').textContent();
    await answer(window);
    await expect(screen.locator('.item-text').filter({ hasText: item ?? '' })).toHaveCount(0);
  }
  throw new Error('the checklist has no end');
}

/** Buttons that have only just appeared are not for pressing yet. */
async function press(button: Locator): Promise<void> {
  await expect(button).toBeEnabled();
  await button.click();
}

/** Readings that fit the limits shown; else the first answer that lets the run go on. */
async function answer(window: Page): Promise<void> {
  const wait = window.getByRole('button', { name: 'Start the wait' });
  if (await wait.isVisible()) {
    await window.getByLabel('Coast-down from full speed').last().fill('2 s');
    await window.getByRole('button', { name: 'Take it' }).click();
    await wait.click();
    await expect(window.getByText('The time has passed.')).toBeVisible({ timeout: 20_000 });
  }
  const reading = window.locator('.reading');
  if (await reading.isVisible()) {
    const input = reading.locator('input');
    const limits = (await reading.locator('span').first().textContent()) ?? '';
    const example = ((await input.getAttribute('placeholder')) ?? '').replace(/^.*example\s*/, '');
    await input.fill(fitting(limits) ?? example);
    await window.getByRole('button', { name: 'Read', exact: true }).click();
    return;
  }
  await window.locator('.answers button').first().click();
}
