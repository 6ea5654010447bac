/** The demo notebook in memory: a whole story with three revisions, runs that passed and one that did not. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { demoEntries } from '../src/desk/demo-notebook.ts';
import type { Story } from '../src/desk/demo-story.ts';
import { type NotebookState, replay } from '../src/notebook/index.ts';

const folder = new URL('../templates/demo/', import.meta.url);

export interface DemoState {
  readonly state: NotebookState;
  /** Content of the attachments by their SHA-256. */
  readonly attachments: ReadonlyMap<string, Uint8Array>;
}

export function readDemoState(): DemoState {
  const story = JSON.parse(readFileSync(new URL('story.json', folder), 'utf8')) as Story;
  const attached = new Map<string, { sha256: string; size: number }>();
  const attachments = new Map<string, Uint8Array>();
  for (const event of story.events) {
    if (event.do !== 'entry' || !event.picture) continue;
    const bytes = new Uint8Array(readFileSync(new URL(event.picture.file, folder)));
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    attached.set(event.picture.file, { sha256, size: bytes.length });
    attachments.set(sha256, bytes);
  }
  const entries = demoEntries(story, attached).map((entry, index) => ({ ...entry, seq: index + 1 }));
  const { state, refused } = replay(entries);
  if (refused.length > 0)
    throw new Error(`the demo story has ${refused.length} entries that cannot be taken`);
  return { state, attachments };
}
