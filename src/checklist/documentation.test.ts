/** The page for people who write their own templates says what the program does. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { builtinChecklists } from './builtin.ts';
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

  it('shows a card that is taken', () => {
    const ids = [...builtinChecklists.map(({ id }) => id), 'club-spin-up'];
    expect(readCardTemplate(examples[1], ids)).toMatchObject({ ok: true });
  });

  it('names every piece of equipment and every word that a template may use', () => {
    for (const name of [...equipmentNames, ...wordNames]) expect(page).toContain(name);
  });
});
