/** The demo notebook for tests: its story, its journal, its state, and the figures of its revisions. */
import { readFileSync } from 'node:fs';
import { hashOf } from '../../src/desk/attachments.ts';
import { demoEntries } from '../../src/desk/demo-notebook.ts';
import type { Story } from '../../src/desk/demo-story.ts';
import { type Assessment, assess } from '../../src/margins/index.ts';
import { isKnown, type QuantityField, type Revision, replay } from '../../src/notebook/index.ts';
import { standardUncertainty } from '../../src/quantity/index.ts';

const templates = new URL('../../templates/demo/', import.meta.url);

export const storyText = readFileSync(new URL('story.json', templates), 'utf8');
export const story = JSON.parse(storyText) as Story;
export const picture = readFileSync(new URL('first-weighing.png', templates));
export const attached = new Map([['first-weighing.png', { sha256: hashOf(picture), size: picture.length }]]);
export const entries = demoEntries(story, attached).map((entry, index) => ({ ...entry, seq: index + 1 }));
export const { state, refused } = replay(entries);
export const letters = Object.values(state.revision).map(({ letter }) => letter);

export function revisionOf(letter: string): Revision {
  const found = Object.values(state.revision).find((revision) => revision.letter === letter);
  if (!found) throw new Error(`no revision ${letter}`);
  return found;
}

export function assessmentOf(letter: string): Assessment {
  const revision = revisionOf(letter);
  const prototype = state.prototype[revision.prototype];
  if (!prototype) throw new Error('no prototype');
  return assess(prototype, revision);
}

/** @throws Error where the revision does not give it */
export function figure(letter: string, name: string): { value: number; u: number } {
  const result = assessmentOf(letter).figures.get(name)?.result;
  if (!result?.ok) throw new Error(`${name} of ${letter} is not known`);
  return { value: result.value.value, u: standardUncertainty(result.value) };
}

/** @throws Error where the field is blank or not measured */
export function si(field: QuantityField | undefined): number {
  if (!isKnown(field)) throw new Error('a field of the demo is blank');
  return field.si;
}
