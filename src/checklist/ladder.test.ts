import { describe, expect, it } from 'vitest';
import { apply, type NotebookState, type Revision } from '../notebook/index.ts';
import { phrase } from '../quantity/index.ts';
import { builtinCards, builtinLadders } from './builtin.ts';
import { carryOver, ladderOf } from './ladder.ts';
import { readLadder } from './ladder-template.ts';
import { known, sampleRevision } from './sample.ts';
import { AT, notebook, withCard, withPassed, withRun } from './sample-notebook.ts';
import { draftRevision } from './sample-run.ts';

function standings(state: NotebookState, revision = 'r1'): Record<string, string> {
  const rungs = ladderOf(state, revision)?.rungs ?? [];
  return Object.fromEntries(rungs.map(({ rung, standing }) => [rung.id, standing]));
}

describe('the ladder for a vehicle', () => {
  const rungs = (revision: Revision): string[] =>
    ladderOf(notebook({ r1: revision }), 'r1')?.rungs.map(({ rung }) => rung.id) ?? [];

  it('goes from the bench spin to the free turn where it is driven', () => {
    const driven = rungs({ ...sampleRevision, fittings: { ...sampleRevision.fittings, driven: true } });
    expect(driven[0]).toBe('bench-spin');
    expect(driven.at(-1)).toBe('free-turning');
    expect(driven.indexOf('captive-balance')).toBeLessThan(driven.indexOf('free-balance'));
  });

  it('ends with standing by itself where it has no drive', () => {
    expect(rungs(sampleRevision).at(-1)).toBe('endurance');
  });

  it('leaves out the rotor’s rungs where there is none, and the ballast’s on a rig with the rotor alone', () => {
    const { rotor: _r, gimbal: _g, ballast: _b, ...bare } = sampleRevision;
    const { rotor: rotorPart, ballast: ballastPart, ...frame } = sampleRevision.parts;
    const noRotor = { ...sampleRevision, parts: { ...frame, ...(ballastPart ? { ballastPart } : {}) } };
    const { rotor: _2, gimbal: _3, ...rotorless } = noRotor;
    expect(rungs(rotorless)[0]).toBe('ballast-drive');
    const alone = {
      ...bare,
      ...(sampleRevision.rotor ? { rotor: sampleRevision.rotor } : {}),
      parts: { ...frame, ...(rotorPart ? { rotorPart } : {}) },
    };
    expect(ladderOf(notebook({ r1: alone }), 'r1')?.ladder.id).toBe('rotor-alone');
    expect(rungs(alone)).not.toContain('captive-balance');
  });

  it('is none for a vehicle with neither, or a revision that is not there', () => {
    const { rotor: _r, gimbal: _g, ballast: _b, ...bare } = sampleRevision;
    expect(ladderOf(notebook({ r1: { ...bare, parts: {} } }), 'r1')).toBeUndefined();
    expect(ladderOf(notebook(), 'r9')).toBeUndefined();
  });
});

describe('a rung stands as', () => {
  const carded = withCard(notebook({ r1: draftRevision }), 'c1', 'bench-spin');

  it('planned, without a card that can be run', () => {
    expect(standings(notebook())['bench-spin']).toBe('planned');
    expect(standings(withCard(notebook(), 'c1', 'bench-spin', 'r1', { status: 'draft' }))['bench-spin']).toBe(
      'planned',
    );
    expect(standings(withCard(notebook(), 'c1', 'captive-spin-up'))['captive-spin-up']).toBe('planned');
  });

  it('ready, when its card may begin', () => {
    expect(standings(carded)['bench-spin']).toBe('ready');
  });

  it.each([
    ['run', { status: 'checklist' }],
    ['run', { status: 'cleared' }],
    ['passed', {}],
    ['failed', { outcome: 'failed' }],
    ['aborted', { status: 'aborted', outcome: 'aborted' }],
    ['void', { status: 'void' }],
    ['void', { fingerprint: 'another' }],
  ] as const)('%s, after a run that is %j', (standing, changes) => {
    expect(standings(withRun(carded, 'x1', 'c1', changes))['bench-spin']).toBe(standing);
  });

  it('aborted, where its only run was broken off before the clearance', () => {
    const { clearedAt: _, ...run } =
      withRun(carded, 'x1', 'c1', { status: 'aborted', outcome: 'aborted' }).run.x1 ?? {};
    const state = { ...carded, run: { x1: run as NotebookState['run'][string] } };
    expect(standings(state)['bench-spin']).toBe('aborted');
    // which takes nothing from a pass
    const passed = { ...withRun(carded, 'x0', 'c1', { number: 1 }) };
    const both = {
      ...passed,
      run: { ...passed.run, x1: { ...run, number: 2 } as NotebookState['run'][string] },
    };
    expect(standings(both)['bench-spin']).toBe('passed');
  });

  it('what its latest run says', () => {
    const failed = withRun(carded, 'x1', 'c1', { outcome: 'failed' });
    expect(standings(withRun(failed, 'x2', 'c1'))['bench-spin']).toBe('passed');
    const passed = withRun(carded, 'x1', 'c1');
    expect(standings(withRun(passed, 'x2', 'c1', { outcome: 'failed' }))['bench-spin']).toBe('failed');
  });

  it('passed only after as many runs in a row as it asks for', () => {
    let state = withCard(notebook(), 'c1', 'captive-balance');
    const once = (outcome: 'passed' | 'failed'): string | undefined => {
      state = withRun(state, `x${Object.keys(state.run).length}`, 'c1', { outcome });
      return standings(state)['captive-balance'];
    };
    expect([once('passed'), once('passed'), once('failed')]).toEqual(['run', 'run', 'failed']);
    expect([once('passed'), once('passed'), once('passed')]).toEqual(['run', 'run', 'passed']);
  });

  it('void on a draft that has been changed since', () => {
    const passed = withRun(carded, 'x1', 'c1');
    const changed = { ...passed, revision: { r1: { ...draftRevision, weighedMass: known(2) } } };
    expect(standings(changed)['bench-spin']).toBe('void');
  });
});

describe('a run of an earlier revision', () => {
  const next: Revision = { ...sampleRevision, letter: 'D', from: 'r1', weighedMass: known(1.9) };
  const other: Revision = { ...sampleRevision, letter: 'E' };
  const passed = withPassed(notebook({ r1: sampleRevision, r2: next, r3: other }), ['bench-spin']);
  const state = withCard(passed, 'c2', 'bench-spin', 'r2');
  const argument = { run: 'run-1', name: 'A. Builder', reason: 'Rotor, hub and bearings untouched', at: AT };

  function carried(from: NotebookState = state): NotebookState {
    const change = carryOver(from, 'c2', argument);
    const made = change.ok ? apply(from, change.value) : change;
    if (!made.ok) throw new Error(made.problem.code);
    return made.value;
  }

  it('does not count by itself', () => {
    expect(standings(state, 'r2')['bench-spin']).toBe('ready');
  });

  it('counts where somebody argues for it by name', () => {
    const after = carried();
    expect(standings(after, 'r2')['bench-spin']).toBe('passed');
    expect(ladderOf(after, 'r2')?.rungs[0]).toMatchObject({ carriedOn: 'c2', runs: [] });
    expect(after.card.c2?.carriedFrom).toEqual({
      run: 'run-1',
      by: 'A. Builder',
      reason: argument.reason,
      at: AT,
    });
  });

  it('gives way to a run of the revision’s own', () => {
    expect(standings(withRun(carried(), 'own', 'c2', { outcome: 'failed' }), 'r2')['bench-spin']).toBe(
      'failed',
    );
  });

  it('ceases to count when the test fails there later', () => {
    const after = withRun(carried(), 'later', 'bench-spin-r1', { outcome: 'failed' });
    expect(standings(after, 'r2')['bench-spin']).toBe('ready');
  });

  it.each([
    ['without a reason', { reason: ' ' }, 'override.unsigned'],
    ['without a name', { name: '-' }, 'override.unsigned'],
    ['where there is no such run', { run: 'run-9' }, 'ladder.not-carried'],
  ])('is not taken %s', (_, changes, code) => {
    expect(carryOver(state, 'c2', { ...argument, ...changes })).toMatchObject({ problem: { code } });
  });

  it('is not taken from a revision that is no ancestor, from another test, or where it did not pass', () => {
    const stranger = withCard(passed, 'c2', 'bench-spin', 'r3');
    const otherTest = withCard(passed, 'c2', 'overspeed-run', 'r2');
    const failed = withRun(state, 'run-1', 'bench-spin-r1', { outcome: 'failed', number: 1 });
    for (const [from, words] of [
      [stranger, 'not one that this revision was made from'],
      [otherTest, 'of another test'],
      [failed, 'did not pass'],
    ] as const) {
      const result = carryOver(from, 'c2', argument);
      expect(result.ok ? '' : phrase(result.problem).reason).toContain(words);
    }
  });

  it('ends the search in a circle of revisions', () => {
    const circle = { ...state, revision: { ...state.revision, r2: { ...next, from: 'r2' } } };
    expect(carryOver(circle, 'c2', argument)).toMatchObject({ problem: { code: 'ladder.not-carried' } });
  });
});

describe('a ladder of one’s own', () => {
  const ladder = builtinLadders[0];
  const rung = ladder?.rungs[1];
  const withRung = (changes: object): unknown => ({ ...ladder, rungs: [{ ...rung, ...changes }] });

  it('is taken where it makes sense', () => {
    expect(readLadder(ladder, builtinCards)).toMatchObject({ ok: true });
  });

  it.each([
    ['a card that is not there', withRung({ cards: ['club'] }), 'ladder.unknown'],
    ['a margin that is not there', withRung({ margins: ['luck'] }), 'ladder.unknown'],
    [
      'a requirement that is not there',
      withRung({ verifies: [{ requirement: 'luck', reading: 'proof-factor', sense: 'at least' }] }),
      'ladder.unknown',
    ],
    [
      'a reading that its cards do not take',
      withRung({ verifies: [{ requirement: 'overspeedFactor', reading: 'luck', sense: 'at least' }] }),
      'ladder.unknown',
    ],
    [
      'a reading of another kind than the requirement',
      withRung({ verifies: [{ requirement: 'runTime', reading: 'proof-factor', sense: 'at least' }] }),
      'template.unit-mismatch',
    ],
    ['a condition over no figure', withRung({ when: 'has_wings' }), 'template.unknown-name'],
    ['a rung twice', { ...ladder, rungs: [rung, rung] }, 'template.duplicate'],
    ['no rungs', { ...ladder, rungs: [] }, 'template.not-the-form'],
    ['no source', withRung({ source: undefined }), 'template.no-source'],
    ['text', 'ladder', 'template.not-the-form'],
  ])('is refused for %s', (_, json, code) => {
    const read = readLadder(json, builtinCards);
    expect(read).toMatchObject({ ok: false, problem: { code } });
    expect(read.ok ? '' : phrase(read.problem).reason).not.toMatch(/\{\w+\}/);
  });
});
