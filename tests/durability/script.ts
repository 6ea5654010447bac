/** A short working day at the desk, the same each time, that remembers what it was promised. */
import {
  createNotebook,
  type Ground,
  type NotebookFolder,
  openNotebook,
  type Processes,
} from '../../src/desk/index.ts';
import { type Change, create, type JournalEntry, set } from '../../src/notebook/index.ts';

export const folder = '/home/Tilt car';

/** A process of its own: its locks are stale to every other one after a power cut. */
export function processNumbered(pid: number): Processes {
  return { pid, host: 'garage', isAlive: (other) => other === pid, began: () => '', wait: async () => {} };
}

const prototype = (name: string): Change =>
  create('prototype', name, {
    name,
    kind: 'monorail car',
    createdAt: '2026-03-01T08:00:00+00:00',
  });

/** Groups of changes in the order in which they are asked for; each stands or falls as a whole. */
export const groups: readonly (readonly Change[])[] = [
  [prototype('first')],
  [prototype('second'), set('prototype', 'second', { name: 'renamed' }), prototype('third')],
  [set('prototype', 'first', { name: 'Ω ≥ 30°' })],
];

export const attached = new TextEncoder().encode('time,lean\n0,0.1\n');

export interface Promises {
  created: boolean;
  /** Entries acknowledged, the notebook's own first one included. */
  entries: number;
  attachment: string | undefined;
}

/** Runs to the end, or as far as the disk lets it; a problem ends nothing, an exception everything. */
export async function workingDay(ground: Ground, promises: Promises): Promise<void> {
  const created = await createNotebook(folder, { author: 'B' }, ground);
  if (!created.ok) return;
  promises.created = true;
  promises.entries = 1;
  const opened = await openNotebook(folder, ground);
  if (!opened.ok) return;
  const notebook = opened.value;
  for (const changes of groups) await append(notebook, changes, promises);
  const added = await notebook.addAttachment(attached);
  if (added.ok) promises.attachment = added.value.sha256;
  await notebook.close();
}

async function append(
  notebook: NotebookFolder,
  changes: readonly Change[],
  promises: Promises,
): Promise<void> {
  const outcome = await notebook.append(notebook.entries.length, 'B', changes);
  if (outcome.ok) promises.entries += changes.length;
}

/** Entries that a day without any fault leaves, the notebook's own first one included. */
export const wholeDay = 1 + groups.flat().length;

/** Whether the entries after the notebook's own are groups from the list, in its order, each of them whole. */
export function areWholeGroups(entries: readonly JournalEntry[]): boolean {
  const found = entries.slice(1).map(({ change }) => JSON.stringify(change));
  for (const group of groups) {
    const wanted = group.map((change) => JSON.stringify(change));
    if (wanted.every((text, index) => text === found[index])) found.splice(0, wanted.length);
  }
  return found.length === 0;
}
