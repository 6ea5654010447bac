import { describe, expect, it } from 'vitest';
import {
  apply,
  create,
  emptyState,
  fingerprint,
  type NotebookState,
  type Run,
  set,
} from '../notebook/index.ts';
import { beginRun } from './begin.ts';
import { builtinCards, checklistsOf } from './builtin.ts';
import { freeze, generateCard } from './card.ts';
import { generateChecklist } from './generate.ts';
import { canClear, canFinish, nextItem, standing } from './obstacles.ts';
import { abort, answerItem, clear, declareVoid, finish, type Given } from './run.ts';
import { known, sample, samplePrototype, sampleRevision } from './sample.ts';
import { draftRevision, runOf, testItems } from './sample-run.ts';

const AT = '2025-03-02T10:00:00Z';

/** A run under test: the record as the notebook would keep it. */
class Bench {
  state: NotebookState;
  readonly problems: string[] = [];

  constructor(run: Run = runOf(testItems)) {
    this.state = [
      create('prototype', 'p1', samplePrototype),
      create('revision', 'r1', draftRevision),
      create('run', 'run1', run),
    ].reduce((state, change) => must(apply(state, change)), emptyState);
  }

  get run(): Run {
    return this.state.run.run1 ?? runOf(testItems);
  }

  get revision() {
    return this.state.revision.r1 ?? draftRevision;
  }

  take(result: ReturnType<typeof clear>): string | undefined {
    if (!result.ok) return result.problem.code;
    this.state = must(apply(this.state, result.value));
    return undefined;
  }

  answer(item: string, given: Partial<Given> = {}): string | undefined {
    const whole = { initials: 'AB', at: AT, ...given };
    return this.take(answerItem('run1', this.run, this.revision, item, whole));
  }

  answerAllBefore(): void {
    this.answer('tick');
    this.answer('hold');
    this.answer('measured', { reading: known(12) });
    this.answer('choice', { choice: 'Fine' });
    this.answer('two', { second: 'CD' });
  }

  clear(by = 'AB'): string | undefined {
    return this.take(clear('run1', this.run, this.revision, by, AT));
  }

  changeRevision(reason: 'parts' | 'back'): void {
    const mass = reason === 'parts' ? known(0.31) : known(0.3, 0.0005);
    this.state = must(apply(this.state, set('revision', 'r1', { 'parts/rotor/mass': mass })));
  }
}

function must<T>(result: { ok: true; value: T } | { ok: false; problem: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

function codes(obstacles: ReturnType<typeof canClear>): string[] {
  return obstacles.map(({ item, problem }) => (item ? `${item}: ${problem.code}` : problem.code));
}

describe('a run is cleared', () => {
  it('when every item before it is met', () => {
    const bench = new Bench();
    bench.answerAllBefore();
    expect(canClear(bench.run, bench.revision)).toEqual([]);
    expect(bench.clear()).toBeUndefined();
    expect(bench.run).toMatchObject({ status: 'cleared', clearedBy: 'AB', clearedAt: AT });
  });

  it('not while an item is open, and says which', () => {
    const bench = new Bench();
    expect(codes(canClear(bench.run, bench.revision))).toEqual([
      'tick: checklist.open',
      'hold: checklist.open',
      'measured: checklist.open',
      'choice: checklist.open',
      'two: checklist.open',
    ]);
    expect(bench.clear()).toBe('checklist.not-clear');
    expect(bench.run.status).toBe('checklist');
  });

  it('not on a reading outside its limits, which is recorded all the same', () => {
    const bench = new Bench();
    bench.answerAllBefore();
    expect(bench.answer('measured', { reading: known(13) })).toBeUndefined();
    expect(bench.run.answers.measured).toMatchObject({ met: false, reading: { si: 13 } });
    expect(codes(canClear(bench.run, bench.revision))).toEqual(['measured: checklist.out-of-limits']);
    expect(bench.clear()).toBe('checklist.out-of-limits');
  });

  it('on a reading that lies on its limit, rounding of the last bit or not', () => {
    const bench = new Bench();
    bench.answerAllBefore();
    expect(bench.answer('measured', { reading: known(12.6) })).toBeUndefined();
    expect(bench.answer('measured', { reading: known(4.2 * 3) })).toBeUndefined();
    expect(bench.answer('measured', { reading: known(9) })).toBeUndefined();
    expect(bench.clear()).toBeUndefined();
  });

  it('not on a choice that stops', () => {
    const bench = new Bench();
    bench.answerAllBefore();
    bench.answer('choice', { choice: 'Cracked' });
    expect(bench.clear()).toBe('checklist.stopped');
  });

  it('not where a stored answer claims to be met and is not', () => {
    const answers = {
      tick: { at: AT, initials: 'AB', met: true },
      hold: { at: AT, initials: 'AB', met: true },
      measured: { at: AT, initials: 'AB', met: true, reading: known(99) },
      choice: { at: AT, initials: 'AB', met: true, choice: 'Cracked' },
      two: { at: AT, initials: 'AB', second: 'a.b.', met: true },
    };
    const bench = new Bench({ ...runOf(testItems), answers });
    expect(codes(canClear(bench.run, bench.revision))).toEqual([
      'measured: checklist.out-of-limits',
      'choice: checklist.stopped',
      'two: checklist.second-person',
    ]);
  });

  it('not once the revision has been changed, and again when it has been changed back', () => {
    const bench = new Bench();
    bench.answerAllBefore();
    bench.changeRevision('parts');
    expect(standing(bench.run, bench.revision)).toBe('void');
    expect(codes(canClear(bench.run, bench.revision))).toEqual(['checklist.stale']);
    expect(bench.clear()).toBe('checklist.stale');
    bench.changeRevision('back');
    expect(bench.clear()).toBeUndefined();
  });

  it('not with an item that lacks a figure, even one that comes later', () => {
    const items = testItems.map((item) =>
      item.id === 'during' ? { ...item, missing: ['rotor_speed'] } : item,
    );
    const bench = new Bench(runOf(items));
    bench.answerAllBefore();
    expect(codes(canClear(bench.run, bench.revision))).toEqual(['during: checklist.missing-figure']);
  });

  it('not without items, not twice, not without initials', () => {
    const empty = new Bench(runOf(testItems.filter(({ phase }) => phase !== 'before')));
    expect(empty.clear()).toBe('checklist.empty');
    const bench = new Bench();
    bench.answerAllBefore();
    expect(bench.clear(' . ')).toBe('checklist.initials');
    bench.clear();
    expect(bench.clear()).toBe('checklist.closed');
  });
});

describe('an answer', () => {
  it('beyond a hold point is refused until the hold point is met', () => {
    const bench = new Bench();
    bench.answer('tick');
    expect(bench.answer('measured', { reading: known(12) })).toBe('checklist.held');
    bench.answer('hold', { met: false });
    expect(bench.answer('measured', { reading: known(12) })).toBe('checklist.held');
    bench.answer('hold', { met: true, note: 'tightened' });
    expect(bench.answer('measured', { reading: known(12) })).toBeUndefined();
  });

  it('that turns a hold point from not met to met needs a note', () => {
    const bench = new Bench();
    bench.answer('hold', { met: false });
    expect(bench.answer('hold', { met: true })).toBe('checklist.note-needed');
    expect(bench.answer('hold', { met: true, note: ' ' })).toBe('checklist.note-needed');
    expect(bench.answer('hold', { met: true, note: 'tightened' })).toBeUndefined();
  });

  it('of two people needs two different people', () => {
    const bench = new Bench();
    bench.answer('hold');
    expect(bench.answer('two')).toBe('checklist.second-person');
    expect(bench.answer('two', { second: 'ab' })).toBe('checklist.second-person');
    expect(bench.answer('two', { second: 'A.B.' })).toBe('checklist.second-person');
    expect(bench.answer('two', { second: 'CD' })).toBeUndefined();
  });

  it('without initials is not recorded', () => {
    const bench = new Bench();
    expect(bench.answer('tick', { initials: '  ' })).toBe('checklist.initials');
    expect(bench.run.answers).toEqual({});
  });

  it('to a measured item needs a reading, to a choice one of its answers', () => {
    const bench = new Bench();
    bench.answer('hold');
    expect(bench.answer('measured')).toBe('checklist.missing-reading');
    expect(bench.answer('choice', { choice: 'Whatever' })).toBe('checklist.unknown-choice');
    expect(bench.answer('nothing')).toBe('checklist.unknown-item');
  });

  it('to an item under way waits for the clearance, and is refused once the revision has changed', () => {
    const bench = new Bench();
    expect(bench.answer('during')).toBe('checklist.not-cleared');
    bench.answerAllBefore();
    bench.clear();
    bench.changeRevision('parts');
    expect(bench.answer('during')).toBe('checklist.stale');
    expect(bench.answer('after-hold')).toBeUndefined();
  });

  it('before the run cannot be changed after the clearance', () => {
    const bench = new Bench();
    bench.answerAllBefore();
    bench.clear();
    expect(bench.answer('tick')).toBe('checklist.closed');
  });
});

describe('a run ends', () => {
  function cleared(): Bench {
    const bench = new Bench();
    bench.answerAllBefore();
    bench.clear();
    return bench;
  }

  it('passed, when everything under way and after it is met', () => {
    const bench = cleared();
    expect(codes(canFinish(bench.run, 'passed'))).toEqual([
      'during: checklist.open',
      'after-hold: checklist.open',
      'after: checklist.open',
    ]);
    bench.answer('during');
    bench.answer('after-hold');
    bench.answer('after');
    expect(bench.take(finish('run1', bench.run, 'passed', AT))).toBeUndefined();
    expect(bench.run).toMatchObject({ status: 'finished', outcome: 'passed', finishedAt: AT });
  });

  it('failed, with items under way open, but made safe', () => {
    const bench = cleared();
    expect(bench.take(finish('run1', bench.run, 'failed', AT))).toBe('checklist.not-clear');
    bench.answer('after-hold', { met: false });
    bench.answer('after-hold', { note: 'waited longer' });
    bench.answer('after', { met: false });
    expect(canFinish(bench.run, 'passed')).not.toEqual([]);
    expect(bench.take(finish('run1', bench.run, 'failed', AT))).toBeUndefined();
    expect(bench.run.outcome).toBe('failed');
  });

  it('broken off at any moment, whatever is open, with nothing but a name', () => {
    for (const bench of [new Bench(), cleared()]) {
      expect(bench.take(abort('run1', bench.run, 'smoke', 'AB', AT))).toBeUndefined();
      expect(bench.run).toMatchObject({ status: 'aborted', outcome: 'aborted' });
      expect(bench.run.notes.abort).toEqual({ at: AT, author: 'AB', text: 'smoke' });
    }
  });

  it('broken off even when the checklist is void, and is still made safe by the list', () => {
    const bench = cleared();
    bench.changeRevision('parts');
    expect(bench.take(abort('run1', bench.run, 'changed', 'AB', AT))).toBeUndefined();
    expect(bench.answer('after-hold')).toBeUndefined();
    expect(bench.answer('during')).toBe('checklist.closed');
    expect(bench.clear()).toBe('checklist.closed');
  });

  it('only once', () => {
    const bench = new Bench();
    bench.take(abort('run1', bench.run, 'smoke', 'AB', AT));
    expect(bench.take(abort('run1', bench.run, 'again', 'AB', AT))).toBe('checklist.closed');
    expect(bench.take(finish('run1', bench.run, 'failed', AT))).toBe('checklist.closed');
  });

  it('void, only where the revision has changed', () => {
    const bench = new Bench();
    expect(bench.take(declareVoid('run1', bench.run, bench.revision, AT))).toBe('checklist.closed');
    bench.changeRevision('parts');
    expect(bench.take(declareVoid('run1', bench.run, bench.revision, AT))).toBeUndefined();
    expect(bench.run.status).toBe('void');
  });
});

describe('the next item', () => {
  it('is the first that is not met, then those under way, then those after', () => {
    const bench = new Bench();
    expect(nextItem(bench.run)?.id).toBe('tick');
    bench.answer('tick');
    expect(nextItem(bench.run)?.id).toBe('hold');
    bench.answerAllBefore();
    expect(nextItem(bench.run)).toBeUndefined();
    bench.clear();
    expect(nextItem(bench.run)?.id).toBe('during');
    bench.answer('during');
    bench.answer('after-hold');
    expect(nextItem(bench.run)?.id).toBe('after');
    bench.answer('after', { met: false });
    expect(nextItem(bench.run)).toBeUndefined();
  });

  it('of a run that was broken off is the first of making safe', () => {
    const bench = new Bench();
    bench.take(abort('run1', bench.run, 'smoke', 'AB', AT));
    expect(nextItem(bench.run)?.id).toBe('after-hold');
  });
});

describe('a run begins', () => {
  const subject = sample();
  const template = builtinCards.find(({ id }) => id === 'captive-spin-up');
  if (!template) throw new Error('no card');
  const { card: draft } = generateCard(template, {
    ...subject,
    prototypeId: 'p1',
    revisionId: 'r1',
    number: 1,
    at: AT,
  });
  const issued = must(freeze(draft, { ...subject, by: 'A. Builder', at: AT }));
  const items = generateChecklist(
    checklistsOf(template),
    subject.prototype,
    subject.revision,
    subject.assessment,
  );
  const beginning = {
    cardId: 'c1',
    card: issued,
    revision: sampleRevision,
    items,
    number: 1,
    by: 'AB',
    at: AT,
  };

  it('from an issued card, on the revision that the card was issued for', () => {
    const run = must(beginRun(beginning));
    expect(run).toMatchObject({ card: 'c1', status: 'checklist', fingerprint: fingerprint(sampleRevision) });
    expect(apply(emptyState, create('run', 'run1', run)).ok).toBe(true);
  });

  it('not from a draft', () => {
    expect(beginRun({ ...beginning, card: draft })).toMatchObject({ problem: { code: 'card.not-issued' } });
  });

  it('not on a revision that has changed since', () => {
    const revision = { ...sampleRevision, weighedMass: known(2) };
    expect(beginRun({ ...beginning, revision })).toMatchObject({ problem: { code: 'card.stale' } });
  });

  it('not with nothing to check', () => {
    expect(beginRun({ ...beginning, items: [] })).toMatchObject({ problem: { code: 'checklist.empty' } });
  });
});
