/** The page for people who write their own templates says what the program does. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { builtinCards, builtinChecklists } from './builtin.ts';
import { readLadder } from './ladder-template.ts';
import { measuredNames } from './measured.ts';
import type { RungStanding } from './rung-standing.ts';
import { equipmentNames, wordNames } from './scope.ts';
import { readCardTemplate, readChecklistTemplate } from './templates.ts';

const page = readFileSync(new URL('../../docs/templates.md', import.meta.url), 'utf8');
const examples = [...page.matchAll(/```json\n([\s\S]*?)```/g)].map(
  ([, json = '']) => JSON.parse(json) as unknown,
);

describe('docs/templates.md', () => {
  it('shows a checklist that is taken without a warning', () => {
    expect(readChecklistTemplate(examples[0])).toMatchObject({ ok: true, value: { warnings: [] } });
  });

  it('shows a timed wait that is taken in a checklist', () => {
    const template = {
      id: 'w',
      version: 1,
      title: 'W',
      purpose: 'W.',
      pauses: [{ title: 'W', items: [examples[1]] }],
    };
    expect(readChecklistTemplate(template)).toMatchObject({ ok: true, value: { warnings: [] } });
  });

  it('shows a card that is taken', () => {
    const ids = [...builtinChecklists.map(({ id }) => id), 'club-spin-up'];
    expect(readCardTemplate(examples[2], ids)).toMatchObject({ ok: true });
  });

  it('shows a ladder that is taken', () => {
    expect(readLadder(examples[3], builtinCards)).toMatchObject({ ok: true });
  });

  it('names every standing of a rung and every measured name', () => {
    const standings = [
      'planned',
      'ready',
      'run',
      'passed',
      'failed',
      'aborted',
      'void',
    ] satisfies RungStanding[];
    for (const name of standings) expect(page).toContain(`*${name}*`);
    for (const name of measuredNames) expect(page).toContain(name);
  });

  it('names every piece of equipment and every word that a template may use', () => {
    for (const name of [...equipmentNames, ...wordNames]) expect(page).toContain(name);
  });
});
