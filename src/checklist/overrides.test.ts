import { describe, expect, it } from 'vitest';
import { apply, create, emptyState, type NotebookState, type Run, set } from '../notebook/index.ts';
import { canClear, nextItem } from './obstacles.ts';
import type { Decision } from './overrides.ts';
import { answerItem, clear, overrideItem } from './run.ts';
import { known, samplePrototype } from './sample.ts';
import { draftRevision, runOf, testItems } from './sample-run.ts';

const AT = '2025-03-02T10:00:00Z';
const decision: Decision = { name: 'A. Builder', reason: 'Meter broken; read at the charger', at: AT };

class Bench {
  state: NotebookState;

  constructor(run: Run = runOf(testItems)) {
    this.state = [
      create('prototype', 'p1', samplePrototype),
      create('revision', 'r1', draftRevision),
      create('run', 'run1', run),
    ].reduce((state, change) => {
      const next = apply(state, change);
      if (!next.ok) throw new Error(next.problem.code);
      return next.value;
    }, emptyState);
  }

  get run(): Run {
    return this.state.run.run1 ?? runOf(testItems);
  }

  take(result: ReturnType<typeof answerItem>): string | undefined {
    if (!result.ok) return result.problem.code;
    const next = apply(this.state, result.value);
    if (!next.ok) return next.problem.code;
    this.state = next.value;
    return undefined;
  }

  answer(item: string, given: object = {}): string | undefined {
    return this.take(answerItem('run1', this.run, draftRevision, item, { initials: 'AB', at: AT, ...given }));
  }

  override(item: string, changes: Partial<Decision> = {}): string | undefined {
    return this.take(overrideItem('run1', this.run, draftRevision, item, { ...decision, ...changes }));
  }
}

describe('an item is gone past', () => {
  it('by name and with a reason, and the run then clears with it on record', () => {
    const bench = new Bench();
    bench.answer('tick');
    bench.answer('hold');
    bench.answer('measured', { reading: known(13) });
    bench.answer('choice', { choice: 'Fine' });
    bench.answer('two', { second: 'CD' });
    expect(clear('run1', bench.run, draftRevision, 'AB', AT).ok).toBe(false);
    expect(bench.override('measured')).toBeUndefined();
    expect(canClear(bench.run, draftRevision)).toEqual([]);
    expect(clear('run1', bench.run, draftRevision, 'AB', AT).ok).toBe(true);
    expect(bench.run.overrides).toMatchObject({
      'override-1': {
        code: 'checklist.out-of-limits',
        subject: 'measured',
        name: 'A. Builder',
        reason: decision.reason,
      },
    });
    expect(bench.run.overrides?.['override-1']?.what).toContain('13');
    expect(bench.run.answers.measured?.met, 'the answer itself stays what it was').toBe(false);
  });

  it.each([
    ['a reason', { reason: '' }],
    ['a reason in letters', { reason: '—' }],
    ['a name', { name: '  ' }],
  ])('not without %s', (_, changes) => {
    const bench = new Bench();
    expect(bench.override('tick', changes)).toBe('override.unsigned');
    expect(bench.run.overrides).toBeUndefined();
  });

  it('for what it says and nothing else: another reading, another word', () => {
    const bench = new Bench();
    bench.answer('tick');
    bench.answer('hold');
    bench.answer('measured', { reading: known(13) });
    bench.override('measured');
    const open = () => canClear(bench.run, draftRevision).filter(({ item }) => item === 'measured');
    expect(open()).toEqual([]);
    bench.answer('measured', { reading: known(99) });
    expect(open()).toHaveLength(1);
    expect(bench.override('measured')).toBeUndefined();
    expect(Object.keys(bench.run.overrides ?? {})).toEqual(['override-1', 'override-2']);
  });

  it('open, and is open again once it is answered as not met', () => {
    const bench = new Bench();
    bench.override('tick');
    expect(nextItem(bench.run)?.id).toBe('hold');
    bench.answer('tick', { met: false });
    expect(nextItem(bench.run)?.id).toBe('tick');
  });

  it('not behind a hold point that is neither met nor gone past', () => {
    const bench = new Bench();
    expect(bench.override('measured')).toBe('checklist.held');
    expect(bench.override('hold')).toBeUndefined();
    expect(bench.override('measured')).toBeUndefined();
  });

  it('not where nothing stands in its way, is no item, or the revision has changed', () => {
    const bench = new Bench();
    bench.answer('tick');
    expect(bench.override('tick')).toBe('override.nothing');
    expect(bench.override('none')).toBe('checklist.unknown-item');
    const changed = { ...draftRevision, weighedMass: known(2) };
    expect(overrideItem('run1', bench.run, changed, 'hold', decision)).toMatchObject({
      problem: { code: 'checklist.stale' },
    });
  });

  it('not after the clearance, for an item before it', () => {
    const bench = new Bench({ ...runOf(testItems), status: 'cleared' });
    expect(bench.override('tick')).toBe('checklist.closed');
  });

  it('also where a figure is missing', () => {
    const bench = new Bench(
      runOf(testItems.map((item) => (item.id === 'tick' ? { ...item, missing: ['cg_height'] } : item))),
    );
    bench.answer('tick');
    expect(bench.override('tick')).toBeUndefined();
    expect(canClear(bench.run, draftRevision).filter(({ item }) => item === 'tick')).toEqual([]);
  });
});

it('a record of an override without a name or a reason, however it came there, covers nothing', () => {
  const bench = new Bench();
  bench.override('tick');
  const record = bench.run.overrides?.['override-1'];
  if (!record) throw new Error('no override');
  for (const hollow of [
    { ...record, reason: '...' },
    { ...record, name: '-' },
    { ...record, subject: 'hold' },
    { ...record, what: 'tick: something else' },
  ]) {
    bench.take({ ok: true, value: set('run', 'run1', { 'overrides/override-1': hollow }) });
    expect(nextItem(bench.run)?.id).toBe('tick');
  }
});
