/** From the facts of a revision to every margin with its uncertainty: the demo's revision, and one of 200 parts. */
import { readFileSync } from 'node:fs';
import { demoEntries } from '../../src/desk/demo-notebook.ts';
import type { Story } from '../../src/desk/demo-story.ts';
import { assess } from '../../src/margins/index.ts';
import { type Prototype, type Revision, replay } from '../../src/notebook/index.ts';
import { report } from './timing/percentiles.ts';

const story = JSON.parse(
  readFileSync(new URL('../../templates/demo/story.json', import.meta.url), 'utf8'),
) as Story;
const entries = demoEntries(story, new Map()).map((entry, index) => ({ ...entry, seq: index + 1 }));
const { state } = replay(entries);
const prototype = Object.values(state.prototype)[0] as Prototype;
const revision = Object.values(state.revision).at(-1) as Revision;

/** Each time another object and another mass, as after a keystroke: nothing remembered applies. */
function typed(source: Revision, count: number): Revision {
  const [id, part] = Object.entries(source.parts)[0] ?? [];
  if (!id || !part?.mass || !('si' in part.mass)) throw new Error('the demo has no weighed part');
  return {
    ...source,
    parts: { ...source.parts, [id]: { ...part, mass: { ...part.mass, si: part.mass.si + count * 1e-6 } } },
  };
}

function many(source: Revision, times: number): Revision {
  const parts = Array.from({ length: times }, (_, copy) =>
    Object.entries(source.parts)
      .filter(([, part]) => part.role === 'structure' || copy === 0)
      .map(([id, part]) => [`${id}-${copy}`, part] as const),
  );
  return { ...source, parts: Object.fromEntries(parts.flat()) };
}

for (const [name, subject] of [
  [`demo revision, ${Object.keys(revision.parts).length} parts`, revision],
  [`${Object.keys(many(revision, 28).parts).length} parts`, many(revision, 28)],
] as const) {
  const times = Array.from({ length: 300 }, (_, count) => {
    const next = typed(subject, count);
    const started = performance.now();
    assess(prototype, next);
    return performance.now() - started;
  });
  report(`assess, ${name}`, times.slice(50));
}
