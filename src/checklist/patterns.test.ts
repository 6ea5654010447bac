import { describe, expect, it } from 'vitest';
import type { NotebookState } from '../notebook/index.ts';
import {
  failuresByCause,
  failuresByPart,
  openFailures,
  paretoOfCauses,
  repeatedFailures,
  rootCause,
  similarity,
} from './patterns.ts';
import { sampleRevision } from './sample.ts';
import { notebook, withFailure } from './sample-notebook.ts';

function told(...causes: readonly (readonly string[])[]): NotebookState {
  return causes.reduce(
    (state, chain, index) => withFailure(state, `f${index + 1}`, { causes: [...chain] }),
    notebook(),
  );
}

describe('the root cause', () => {
  it('is the last that says something', () => {
    expect(rootCause({ causes: ['It shook', 'The set screw was loose', '  '] })).toBe(
      'The set screw was loose',
    );
    expect(rootCause({ causes: [] })).toBeUndefined();
    expect(rootCause({ causes: ['…'] })).toBeUndefined();
  });
});

describe('two causes are alike', () => {
  // Dice: 2 · shared / (words of both)
  it.each([
    ['set screw loose', 'The set screws were loose', 1],
    ['Set screw not locked', 'set screw loose', 2 / 3],
    ['bearing seat too wide', 'bearing too hot', 2 / 5],
    ['Vis desserrée', 'vis desserree', 1],
    ['', 'anything', 0],
  ])('“%s” and “%s” by %d', (one, other, share) => {
    expect(similarity(one, other)).toBeCloseTo(share, 12);
    expect(similarity(other, one)).toBeCloseTo(share, 12);
  });
});

describe('failures by cause', () => {
  const state = told(
    ['Rotor came loose', 'Set screw not locked'],
    ['Servo reset', 'Supply dips under load'],
    ['Hub walked', 'The set screws were not locked'],
    ['It tipped'],
  );

  it('stand together where enough words are the same, and show which', () => {
    expect(failuresByCause(state, 'p1')[0]).toEqual({
      label: 'The set screws were not locked',
      failures: ['f1', 'f3'],
      words: ['set', 'screw', 'locked'],
      returned: false,
    });
    expect(repeatedFailures(state, 'p1').byCause).toHaveLength(1);
  });

  it('join two groups that a third cause lies between', () => {
    const chain = told(['set screw loose'], ['witness line missing'], ['set screw witness line']);
    expect(failuresByCause(chain, 'p1').map(({ failures }) => failures)).toEqual([['f1', 'f2', 'f3']]);
  });

  it('make a Pareto that adds up to all of them', () => {
    const bars = paretoOfCauses(state, 'p1');
    expect(bars.map(({ count }) => count)).toEqual([2, 1, 1]);
    expect(bars.map(({ cumulative }) => cumulative)).toEqual([0.5, 0.75, 1]);
    const without = paretoOfCauses(withFailure(state, 'f5'), 'p1').at(-1);
    expect(without).toMatchObject({ label: 'no cause found yet', count: 1, cumulative: 1, failures: ['f5'] });
    expect(paretoOfCauses(notebook(), 'p1')).toEqual([]);
  });

  it('tell when one came back after an earlier report of it was closed', () => {
    const cause = { causes: ['Set screw not locked'] };
    const once = withFailure(notebook(), 'f1', { ...cause, status: 'closed' });
    expect(failuresByCause(once, 'p1')[0]?.returned).toBe(false);
    expect(failuresByCause(withFailure(once, 'f2', cause), 'p1')[0]?.returned).toBe(true);
  });
});

describe('failures by part', () => {
  it('follow the part through revisions, by its name where it was made anew', () => {
    const again = {
      ...sampleRevision,
      letter: 'D',
      parts: { other: { ...sampleRevision.parts.rotor, name: 'rotor', order: 1 } },
    } as typeof sampleRevision;
    const state = withFailure(
      withFailure(withFailure(notebook({ r1: sampleRevision, r2: again }), 'f1', { part: 'rotor' }), 'f2', {
        part: 'other',
        revision: 'r2',
      }),
      'f3',
      { part: 'frame' },
    );
    expect(failuresByPart(state, 'p1').map(({ failures }) => failures)).toEqual([['f1', 'f2'], ['f3']]);
    expect(repeatedFailures(state, 'p1').byPart).toMatchObject([{ label: 'rotor' }]);
  });

  it('leave out reports without a part, and those of another prototype', () => {
    const state = withFailure(withFailure(notebook(), 'f1'), 'f2', { part: 'rotor', prototype: 'p2' });
    expect(failuresByPart(state, 'p1')).toEqual([]);
  });
});

it('open failures are listed by risk, then severity, then number', () => {
  const state = [
    { severity: 'IV', probability: 'A' }, // Medium
    { severity: 'I', probability: 'E' }, // Medium
    { severity: 'III', probability: 'A' }, // Serious
    { severity: 'II', probability: 'B' }, // High
    { severity: 'II', probability: 'A', status: 'closed' },
    { severity: 'II', probability: 'C', status: 'action taken' }, // Serious
  ].reduce((before, changes, index) => withFailure(before, `f${index + 1}`, changes as object), notebook());
  expect(openFailures(state, 'p1').map(({ id, risk }) => `${id} ${risk}`)).toEqual([
    'f4 High',
    'f6 Serious',
    'f3 Serious',
    'f2 Medium',
    'f1 Medium',
  ]);
});
