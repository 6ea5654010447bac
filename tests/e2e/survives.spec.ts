/** Killing the program at any instant loses nothing that was acknowledged, and the working copy follows the journal. */
import { appendFile, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, openDemo, saved, test, type } from './fixture.ts';

async function journal(home: string): Promise<string> {
  return readFile(join(home, (await notebookFolder(home)) ?? '', 'journal.jsonl'), 'utf8');
}

async function notebookFolder(home: string): Promise<string | undefined> {
  return (await readdir(home, { withFileTypes: true })).find((each) => each.isDirectory())?.name;
}

async function nextDraft(window: Page): Promise<void> {
  await window.getByRole('button', { name: 'New revision from this one' }).click();
  await window.getByRole('button', { name: 'Masses', exact: true }).click();
}

test('what is shown as saved is there after the program was killed', async ({ window, program }) => {
  await openDemo(window);
  await nextDraft(window);
  await type(window, 'Tray with fence: mass', '611 g ± 2 g');
  await saved(window);
  await program.kill();
  await program.start();
  await window.goto(program.address);
  await window.getByRole('button', { name: 'Demo', exact: true }).click();
  await expect(window.getByLabel('Tray with fence: mass')).toHaveValue('611 g ± 2 g');
});

test('a change that the desk cannot take is kept, told, and written when it can', async ({
  page,
  program,
}) => {
  await page.goto(program.address);
  await openDemo(page);
  await nextDraft(page);
  await saved(page);
  await program.kill();
  await type(page, 'Tray with fence: mass', '612 g');
  await expect(page.getByRole('alert')).toContainText('Not saved');
  await expect(page.getByLabel('Tray with fence: mass')).toHaveValue('612 g');
  expect(await journal(program.home)).not.toContain('612 g');
});

test('a torn last line is set aside and told, and the rest opens', async ({ window, program }) => {
  await openDemo(window);
  await saved(window);
  await window.getByRole('button', { name: 'Close notebook' }).click();
  const folder = join(program.home, (await notebookFolder(program.home)) ?? '');
  await appendFile(join(folder, 'journal.jsonl'), '{"seq":211,"at":"2026-03-16T09:00:00Z","by":"In');
  await window.getByRole('button', { name: 'Demo', exact: true }).click();
  await expect(window.getByRole('listitem').filter({ hasText: /set-aside/ })).toBeVisible();
  expect((await readdir(join(folder, 'set-aside'))).length).toBe(1);
  expect((await journal(program.home)).endsWith('}\n')).toBe(true);
});

test('a flipped byte in the middle opens for reading, up to the line before, and names the line', async ({
  window,
  program,
}) => {
  await openDemo(window);
  await saved(window);
  await window.getByRole('button', { name: 'Close notebook' }).click();
  const path = join(program.home, (await notebookFolder(program.home)) ?? '', 'journal.jsonl');
  const bytes = await readFile(path);
  const at = bytes.indexOf('585 g');
  bytes[at] = '6'.charCodeAt(0);
  await writeFile(path, bytes);
  await window.getByRole('button', { name: 'Demo', exact: true }).click();
  await expect(
    window
      .getByRole('listitem')
      .filter({ hasText: /line \d+/i })
      .first(),
  ).toBeVisible();
  await expect(window.getByText(/^read only/)).toBeVisible();
  expect(await readFile(path)).toEqual(bytes);
});

test('the working copy in the browser equals the journal, and is made anew when it is thrown away', async ({
  window,
}) => {
  await openDemo(window);
  await nextDraft(window);
  await type(window, 'Frame: mass', '590 g');
  await saved(window);
  await expect.poll(() => workingCopy(window)).toEqual(expect.arrayContaining(['590 g']));
  await window.getByRole('button', { name: 'Close notebook' }).click();
  await window.evaluate(async () => {
    for (const { name } of await indexedDB.databases()) if (name) indexedDB.deleteDatabase(name);
  });
  await window.reload();
  await window.getByRole('button', { name: 'Demo', exact: true }).click();
  await expect.poll(() => workingCopy(window)).toEqual(expect.arrayContaining(['590 g', '585 g ± 5 g']));
});

/** Masses of the frame in every revision, as the browser's database has them. */
function workingCopy(window: Page): Promise<string[]> {
  return window.evaluate(async () => {
    const [first] = await indexedDB.databases();
    if (!first?.name) return [];
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open(first.name ?? '');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const groups = await new Promise<{ kind: string; records: Record<string, unknown> }[]>((resolve) => {
      const all = database.transaction('groups').objectStore('groups').getAll();
      all.onsuccess = () => resolve(all.result);
    });
    database.close();
    return groups
      .filter(({ kind }) => kind === 'revision')
      .flatMap(({ records }) => Object.values(records))
      .map(
        (record) =>
          (record as { parts: Record<string, { mass?: { typed: string } }> }).parts.frame?.mass?.typed ?? '',
      );
  });
}
