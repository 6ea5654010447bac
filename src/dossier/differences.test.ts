/** Somebody’s notebook beside one’s own. */
import { describe, expect, it } from 'vitest';
import { type Change, replay, set } from '../notebook/index.ts';
import { creations, entriesOf } from '../notebook/sample.ts';
import { type Compared, differencesOf } from './differences.ts';

const base: readonly Change[] = [creations.notebook, creations.prototype, creations.revision];
const notebookOf = (changes: readonly Change[], notebook = 'n'): Compared => {
  const entries = entriesOf(changes);
  return { notebook, entries, state: replay(entries).state };
};

const named = (name: string): Change => set('prototype', 'p', { name });

describe('two copies of a notebook', () => {
  it.each([
    ['the same', base, base, 3, []],
    ['theirs continues yours', [...base, creations.entry], base, 3, ['only theirs entry']],
    ['yours continues theirs', base, [...base, creations.failure], 3, ['only yours failure']],
    ['grown apart', [...base, named('X')], [...base, named('Y')], 3, ['different prototype']],
    ['grown apart', [...base, named('X')], [...base, named('Y'), named('X')], 3, []],
  ] as const)('are %s', (relation, theirs, yours, common, records) => {
    const found = differencesOf(notebookOf(theirs), notebookOf(yours));
    expect([found.relation, found.common]).toEqual([relation, common]);
    expect([found.onlyTheirs, found.onlyYours]).toEqual([theirs.length - common, yours.length - common]);
    expect(found.records.map(({ how, kind }) => `${how} ${kind}`)).toEqual(records);
  });

  it('are not copies where their identities differ', () => {
    expect(differencesOf(notebookOf(base), notebookOf(base, 'm')).relation).toBe('another notebook');
  });
});
