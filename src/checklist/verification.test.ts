import { describe, expect, it } from 'vitest';
import type { KnownQuantity, NotebookState, Prototype, Revision } from '../notebook/index.ts';
import { carryOver } from './ladder.ts';
import { known, samplePrototype, sampleRevision } from './sample.ts';
import { AT, notebook, withCard, withRun } from './sample-notebook.ts';
import { verificationMatrix } from './verification.ts';

const prototype: Prototype = {
  ...samplePrototype,
  requirements: {
    overspeedFactor: known(1.2),
    leanToRecover: known(0.06),
    runTime: known(600),
    gainMargin: known(1.5),
    crossSlope: known(0.5),
  },
};
const base = notebook({ r1: sampleRevision }, prototype);

function cell(state: NotebookState, requirement: string, letter = 'C') {
  const row = verificationMatrix(state, 'p1').find((each) => each.requirement === requirement);
  return row?.cells.find((each) => each.letter === letter);
}

function tested(
  template: string,
  readings: Readonly<Record<string, KnownQuantity>>,
  outcome: 'passed' | 'failed' = 'passed',
): NotebookState {
  return withRun(withCard(base, 'c1', template), 'x1', 'c1', { readings, outcome });
}

describe('the verification matrix', () => {
  it('has a row for each requirement that has a figure, and a column for each revision by letter', () => {
    const two = notebook({ r2: { ...sampleRevision, letter: 'AA' }, r1: sampleRevision }, prototype);
    const rows = verificationMatrix(two, 'p1');
    expect(rows.map(({ requirement }) => requirement).toSorted()).toEqual(
      Object.keys(prototype.requirements).toSorted(),
    );
    for (const { cells } of rows) expect(cells.map(({ letter }) => letter)).toEqual(['C', 'AA']);
    expect(verificationMatrix(two, 'p9')).toEqual([]);
  });

  it('leaves out a requirement without a figure', () => {
    const asked = { ...prototype, requirements: { runTime: { notMeasured: true as const } } };
    expect(verificationMatrix(notebook({ r1: sampleRevision }, asked), 'p1')).toEqual([]);
  });

  it('says by calculation where only the margin holds, and not verified where it does not', () => {
    expect(cell(base, 'leanToRecover')).toMatchObject({
      verification: 'by calculation',
      margins: [{ id: 'lean', verdict: 'holds' }],
      evidence: [],
    });
    expect(cell(base, 'crossSlope')).toMatchObject({
      verification: 'not verified',
      margins: [{ id: 'cross-slope', verdict: 'fails' }],
    });
  });

  it('says by test where the run passed and its reading meets the figure by more than its uncertainty', () => {
    const state = tested('endurance', { 'time-run': known(700, 10) });
    expect(cell(state, 'runTime')).toMatchObject({
      verification: 'by test',
      evidence: [{ run: 'x1', letter: 'C', outcome: 'passed', verdict: 'holds' }],
    });
  });

  it.each([
    ['in doubt', known(610, 10), 'by calculation'],
    ['fails', known(590, 1), 'not met'],
    ['unknown', undefined, 'by calculation'],
    ['unknown', known(Number.NaN), 'by calculation'],
  ] as const)('a passed run whose reading is %s verifies nothing', (verdict, reading, verification) => {
    const state = tested('endurance', reading ? { 'time-run': reading } : {});
    expect(cell(state, 'runTime')).toMatchObject({ verification, evidence: [{ verdict }] });
  });

  it('asks for every reading of a requirement', () => {
    const raised = { 'gain-raised': known(2) };
    expect(cell(tested('captive-balance', raised), 'gainMargin')?.evidence[0]?.verdict).toBe('unknown');
    expect(
      cell(tested('captive-balance', { ...raised, 'gain-lowered': known(1.2) }), 'gainMargin'),
    ).toMatchObject({
      verification: 'not met',
    });
    expect(
      cell(tested('captive-balance', { ...raised, 'gain-lowered': known(1.7) }), 'gainMargin'),
    ).toMatchObject({
      verification: 'by test',
    });
  });

  it('holds a radius that may be at most so large from the other side', () => {
    const driven: Revision = { ...sampleRevision, fittings: { ...sampleRevision.fittings, driven: true } };
    const asked = {
      ...prototype,
      requirements: { ...prototype.requirements, turnRadius: known(2), turnSpeed: known(1) },
    };
    const turned = (radius: number) => {
      const carded = withCard(notebook({ r1: driven }, asked), 'c1', 'free-turning');
      return cell(
        withRun(carded, 'x1', 'c1', { readings: { 'turn-radius': known(radius, 0.05) } }),
        'turnRadius',
      );
    };
    expect(turned(1.8)?.verification).toBe('by test');
    expect(turned(2.2)?.verification).toBe('not met');
  });

  it('goes by the latest run', () => {
    const first = tested('endurance', { 'time-run': known(700, 10) });
    const failed = withRun(first, 'x2', 'c1', { outcome: 'failed' });
    expect(cell(failed, 'runTime')).toMatchObject({ verification: 'not met' });
    expect(cell(failed, 'runTime')?.evidence.map(({ run }) => run)).toEqual(['x2', 'x1']);
  });

  it('takes no word from a run on another state of the revision, or one under way', () => {
    const readings = { 'time-run': known(700, 10) };
    const carded = withCard(base, 'c1', 'endurance');
    for (const changes of [{ fingerprint: 'old' }, { status: 'cleared' }, { status: 'void' }] as const) {
      expect(cell(withRun(carded, 'x1', 'c1', { readings, ...changes }), 'runTime')?.evidence).toEqual([]);
    }
  });

  it('shows a carried run in the column that it was carried to, with the revision that was run', () => {
    const next: Revision = { ...sampleRevision, letter: 'D', from: 'r1', weighedMass: known(1.9) };
    const passed = withRun(
      withCard(notebook({ r1: sampleRevision, r2: next }, prototype), 'c1', 'endurance'),
      'x1',
      'c1',
      { readings: { 'time-run': known(700, 10) } },
    );
    const carded = withCard(passed, 'c2', 'endurance', 'r2');
    expect(cell(carded, 'runTime', 'D')?.verification).toBe('by calculation');
    const change = carryOver(carded, 'c2', {
      run: 'x1',
      name: 'AB',
      reason: 'Same pack, same drive',
      at: AT,
    });
    const carriedFrom = { run: 'x1', by: 'AB', reason: 'Same pack, same drive', at: AT };
    expect(change.ok).toBe(true);
    const card = carded.card.c2;
    if (!card) throw new Error('no card');
    const carried = { ...carded, card: { ...carded.card, c2: { ...card, carriedFrom } } };
    expect(cell(carried, 'runTime', 'D')).toMatchObject({
      verification: 'by test',
      evidence: [{ run: 'x1', letter: 'C', carriedOn: 'c2' }],
    });
  });
});
