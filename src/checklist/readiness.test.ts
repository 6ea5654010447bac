import { describe, expect, it } from 'vitest';
import { apply, create, emptyState, type NotebookState, type Revision, type Run } from '../notebook/index.ts';
import { beginRun } from './begin.ts';
import type { OverrideOf } from './readiness.ts';
import { readinessOf } from './readiness.ts';
import { known, samplePrototype, sampleRevision } from './sample.ts';
import { AT, notebook, withCard, withFailure, withPassed, withRun } from './sample-notebook.ts';
import { draftRevision, testItems } from './sample-run.ts';

function codes(state: NotebookState, card: string): string[] {
  return readinessOf(state, card).hindrances.map(({ subject, problem }) => `${problem.code} ${subject}`);
}

/** A run begun from a card of the notebook, with the sample items as its list. */
function begin(state: NotebookState, cardId: string, overrides: readonly OverrideOf[] = []) {
  const card = state.card[cardId];
  const revision = card && state.revision[card.revision];
  if (!card || !revision) throw new Error('no card');
  return beginRun({
    cardId,
    card,
    revision,
    items: testItems,
    number: 9,
    by: 'AB',
    at: AT,
    state,
    overrides,
  });
}

/** Yield so near to the stress that the margin is in doubt. */
const weak: Revision = {
  ...sampleRevision,
  rotor: { material: 'steel', sections: {}, ...sampleRevision.rotor, yieldStrength: known(40e6, 4e6) },
};
const brittle: Revision = {
  ...sampleRevision,
  rotor: { material: 'steel', sections: {}, ...sampleRevision.rotor, yieldStrength: known(20e6) },
};
const unknownStrength: Revision = {
  ...sampleRevision,
  rotor: { material: 'steel', sections: {}, ...sampleRevision.rotor, yieldStrength: { notMeasured: true } },
};

describe('a card is ready', () => {
  const ready = withCard(notebook(), 'c1', 'bench-spin');

  it('on the first rung, when the margins that it names hold and nothing is open', () => {
    expect(codes(ready, 'c1')).toEqual([]);
    expect(readinessOf(ready, 'c1').rung?.id).toBe('bench-spin');
    expect(begin(ready, 'c1')).toMatchObject({ ok: true });
  });

  it('not as a draft, nor on a revision that has changed: nobody goes past that', () => {
    const draft = withCard(notebook(), 'c1', 'bench-spin', 'r1', { status: 'draft' });
    const changed = { ...ready, revision: { r1: { ...sampleRevision, weighedMass: known(2) } } };
    expect(codes(draft, 'c1')).toEqual(['card.not-issued c1']);
    expect(codes(changed, 'c1')).toEqual(['card.stale c1']);
    for (const state of [draft, changed]) {
      expect(readinessOf(state, 'c1').hindrances.map((each) => each.canBeOverridden)).toEqual([false]);
      expect(begin(state, 'c1')).toMatchObject({ ok: false });
    }
  });

  it('not where there is no such card', () => {
    expect(codes(ready, 'c9')).toEqual(['record.unknown c9']);
  });

  it.each([
    ['in doubt', weak, /is in doubt: \+0\.0\d\d, and −0\.\d+/],
    ['failing', brittle, /fails: −0\.\d+/],
    ['unknown', unknownStrength, /not known for want of rotor yield strength/],
  ])('not while a margin that it names is %s', (_, revision, words) => {
    const state = withCard(notebook({ r1: revision }), 'c1', 'bench-spin');
    const [first] = readinessOf(state, 'c1').hindrances;
    expect(first).toMatchObject({ subject: 'rotor-strength', canBeOverridden: true });
    expect(String(first?.problem.figures.standing)).toMatch(words);
  });

  it('whatever a margin says that its rung does not name', () => {
    const slack = notebook(
      { r1: sampleRevision },
      { ...samplePrototype, requirements: { overspeedFactor: known(1.2), leanToRecover: known(0.5) } },
    );
    expect(codes(withCard(slack, 'c1', 'bench-spin'), 'c1')).toEqual([]);
  });

  it('and says which of its margins nothing is asked of', () => {
    const state = withCard(notebook(), 'c1', 'captive-balance');
    expect(readinessOf(state, 'c1').notAsked).toEqual(['gain-up', 'gain-down', 'delay']);
  });

  it('not before the rungs below it have passed on this revision', () => {
    const state = withCard(notebook(), 'c1', 'captive-spin-up');
    expect(codes(state, 'c1')).toEqual([
      'readiness.rung bench-spin',
      'readiness.rung overspeed-proof',
      'readiness.rung ballast-drive',
    ]);
    expect(codes(withPassed(state, ['bench-spin', 'overspeed-run']), 'c1')).toEqual([
      'readiness.rung ballast-drive',
    ]);
    expect(codes(withPassed(state, ['bench-spin', 'overspeed-run', 'ballast-drive']), 'c1')).toEqual([]);
  });

  it('not while a failure of severity I or II of this prototype is not closed', () => {
    const open = withFailure(ready, 'f1', { severity: 'II', title: 'Hub split' });
    expect(codes(open, 'c1')).toEqual(['readiness.failure f1']);
    expect(codes(withFailure(ready, 'f1', { severity: 'I', status: 'action taken' }), 'c1')).toHaveLength(1);
    for (const harmless of [
      { severity: 'II', status: 'closed' },
      { severity: 'III' },
      { severity: 'I', prototype: 'p2' },
    ] as const) {
      expect(codes(withFailure(ready, 'f1', harmless), 'c1')).toEqual([]);
    }
  });

  it('not while its checklist lacks figures', () => {
    const { fuseRating: _, ...pack } = sampleRevision.pack ?? { chemistry: 'lithium-ion' as const };
    const state = withCard(notebook({ r1: { ...sampleRevision, pack } }), 'c1', 'ballast-drive');
    const passed = withPassed(state, ['bench-spin', 'overspeed-run']);
    expect(readinessOf(passed, 'c1').hindrances).toMatchObject([
      { problem: { code: 'readiness.checklist', figures: { names: 'fuse rating' } }, canBeOverridden: true },
    ]);
  });

  it('not from a template that stands on no ladder', () => {
    const state = withCard(notebook(), 'c1', 'bench-spin', 'r1', { template: 'club-spin' });
    expect(codes(state, 'c1')).toContain('readiness.no-ladder c1');
  });
});

describe('two runs at once on one prototype', () => {
  const ready = withCard(notebook({ r1: draftRevision }), 'c1', 'bench-spin');
  const decision = { name: 'A. Builder', reason: 'no matter', at: AT };

  it('are refused, and nobody goes past that', () => {
    for (const status of ['checklist', 'cleared'] as const) {
      const { outcome: _, ...underWay } = withRun(ready, 'x1', 'c1', { status }).run.x1 ?? {};
      const state = { ...ready, run: { x1: underWay as NotebookState['run'][string] } };
      expect(codes(state, 'c1')).toContain('readiness.run-under-way x1');
      const overrides = [{ ...decision, code: 'readiness.run-under-way' as const, subject: 'x1' }];
      expect(begin(state, 'c1', overrides)).toMatchObject({ problem: { code: 'override.refused' } });
    }
  });

  it('are no hindrance once the first has ended, or belongs to another prototype', () => {
    for (const changes of [
      { status: 'finished' },
      { status: 'void' },
      { prototype: 'p2', status: 'cleared' },
    ] as const) {
      expect(codes(withRun(ready, 'x1', 'c1', changes), 'c1')).toEqual([]);
    }
  });

  it('are no hindrance where the first is a checklist that a changed revision has made void', () => {
    expect(codes(withRun(ready, 'x1', 'c1', { status: 'checklist', fingerprint: 'old' }), 'c1')).toEqual([]);
    // cleared, it may still turn
    expect(codes(withRun(ready, 'x1', 'c1', { status: 'cleared', fingerprint: 'old' }), 'c1')).toHaveLength(
      1,
    );
  });

  it('wait until a run that was broken off under way has been made safe', () => {
    const brokenOff: Partial<Run> = { status: 'aborted', outcome: 'aborted', items: [...testItems] };
    const state = withRun(ready, 'x1', 'c1', brokenOff);
    expect(codes(state, 'c1')).toEqual(['readiness.not-safe x1']);
    const safe = { 'after-hold': { at: AT, initials: 'AB', met: true } };
    expect(codes(withRun(ready, 'x1', 'c1', { ...brokenOff, answers: safe }), 'c1')).toEqual([]);
  });
});

describe('what stands in the way is gone past', () => {
  const state = withFailure(withCard(notebook({ r1: weak }), 'c1', 'bench-spin'), 'f1', { severity: 'II' });
  const decision = { name: 'A. Builder', reason: 'Yield taken from the worst bar of three', at: AT };
  const margin = { ...decision, code: 'readiness.margin', subject: 'rotor-strength' } as const;
  const failure = { ...decision, code: 'readiness.failure', subject: 'f1' } as const;

  it('by name and with a reason for each, which the run then carries', () => {
    const run = begin(state, 'c1', [failure, margin]);
    if (!run.ok) throw new Error(run.problem.code);
    expect(Object.values(run.value.overrides ?? {})).toMatchObject([
      {
        code: 'readiness.margin',
        subject: 'rotor-strength',
        name: 'A. Builder',
        reason: decision.reason,
        at: AT,
      },
      { code: 'readiness.failure', subject: 'f1' },
    ]);
    expect(run.value.overrides?.['override-1']?.what).toContain('Strength of the rotor');
    expect(apply(emptyState, create('run', 'x', run.value)).ok).toBe(true);
  });

  it('not without, and the run says how much stands in the way', () => {
    expect(begin(state, 'c1')).toMatchObject({
      problem: { code: 'readiness.not-ready', figures: { count: 2 } },
    });
    expect(begin(state, 'c1', [margin])).toMatchObject({ problem: { code: 'readiness.failure' } });
  });

  it.each([
    ['no reason', { reason: '' }],
    ['a reason of blanks and points', { reason: ' … ' }],
    ['no name', { name: ' ' }],
  ])('not with %s', (_, changes) => {
    expect(begin(state, 'c1', [{ ...margin, ...changes }, failure])).toMatchObject({
      problem: { code: 'override.unsigned' },
    });
  });

  it('not by a decision about something else', () => {
    expect(begin(state, 'c1', [{ ...margin, subject: 'lean' }, failure])).toMatchObject({
      problem: { code: 'readiness.margin' },
    });
  });

  it('and a decision about nothing leaves no trace', () => {
    const calm = withCard(notebook(), 'c1', 'bench-spin');
    const run = begin(calm, 'c1', [margin]);
    expect(run.ok && run.value.overrides).toBeUndefined();
  });
});
