import { describe, expect, it } from 'vitest';
import { apply, create, emptyState, type NotebookState, type Run } from '../notebook/index.ts';
import { phrase } from '../quantity/index.ts';
import { beginRun } from './begin.ts';
import { generateChecklist } from './generate.ts';
import { measuredBefore } from './measured.ts';
import { canFinish } from './obstacles.ts';
import { answerItem, beginWait } from './run.ts';
import { known, sample, samplePrototype } from './sample.ts';
import { notebook, withCard, withRun } from './sample-notebook.ts';
import { draftRevision, runOf, testItems } from './sample-run.ts';
import { readChecklistTemplate } from './templates.ts';
import { type Clock, clockNotices, passedSince, waitTime } from './wait.ts';

const AT = '2025-03-02T10:00:00Z';
const later = (seconds: number): string => new Date(Date.parse(AT) + seconds * 1000).toISOString();
const clock = (reading: number, session = 'one'): Clock => ({ session, reading });

const [first] = testItems;
if (!first) throw new Error('no items');
const waitItem = {
  ...first,
  id: 'wait',
  phase: 'after' as const,
  kind: 'wait' as const,
  hold: true,
  text: 'Wait.',
  wait: {
    expression: '1.5 * coast_down_time',
    otherwise: 1800,
    given: {},
    readings: { coast_down_time: ['coast'] },
  },
};
const photoItem = { ...first, id: 'photo', phase: 'after' as const, kind: 'photo' as const };

/** A cleared run whose coast-down was read as 100 s: it waits for 150 s. */
class Bench {
  state: NotebookState;

  constructor(changes: Partial<Run> = {}) {
    const run: Run = {
      ...runOf([{ ...first, id: 'before' } as Run['items'][number], waitItem, photoItem]),
      status: 'cleared',
      readings: { coast: known(100) },
      ...changes,
    };
    this.state = must(
      apply(
        must(
          apply(
            must(apply(emptyState, create('prototype', 'p1', samplePrototype))),
            create('revision', 'r1', draftRevision),
          ),
        ),
        create('run', 'run1', run),
      ),
    );
  }

  get run(): Run {
    const run = this.state.run.run1;
    if (!run) throw new Error('no run');
    return run;
  }

  begin(at: string, reading: Clock): string | undefined {
    return this.take(
      beginWait('run1', this.run, draftRevision, 'wait', { initials: 'AB', at, clock: reading }),
    );
  }

  answer(at: string, reading?: Clock): string | undefined {
    const given = { initials: 'AB', at, ...(reading ? { clock: reading } : {}) };
    return this.take(answerItem('run1', this.run, draftRevision, 'wait', given));
  }

  take(result: ReturnType<typeof answerItem>): string | undefined {
    if (!result.ok) return result.problem.code;
    this.state = must(apply(this.state, result.value));
    return undefined;
  }
}

function must<T>(result: { ok: true; value: T } | { ok: false; problem: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
}

describe('a timed wait', () => {
  it('is answered once its time has passed, and not a moment before', () => {
    const bench = new Bench();
    expect(bench.begin(AT, clock(1000))).toBeUndefined();
    expect(bench.answer(later(149.9), clock(1149.9))).toBe('checklist.waiting');
    expect(bench.run.answers).toEqual({});
    expect(bench.answer(later(150), clock(1150))).toBeUndefined();
    expect(bench.run.answers.wait).toMatchObject({ met: true, waited: { seconds: 150, clockShift: 0 } });
    expect(clockNotices(bench.run)).toEqual([]);
  });

  it('says how much has passed of how much', () => {
    const bench = new Bench();
    bench.begin(AT, clock(0));
    const result = answerItem('run1', bench.run, draftRevision, 'wait', {
      initials: 'AB',
      at: later(20),
      clock: clock(20.7),
    });
    expect(result.ok ? '' : phrase(result.problem).reason).toBe('20\u202Fs of 150\u202Fs have passed.');
    expect(passedSince(bench.run.waits?.wait, clock(20.7))).toBeCloseTo(20.7, 9);
  });

  it('cannot be answered without having been started, or without a clock', () => {
    const bench = new Bench();
    expect(bench.answer(later(9999), clock(9999))).toBe('checklist.wait-not-begun');
    bench.begin(AT, clock(0));
    expect(bench.answer(later(9999))).toBe('checklist.wait-not-begun');
  });

  it.each([
    ['forwards', 3600, 'forwards'],
    ['backwards', -86_400, 'backwards'],
  ])('counts the time that passed when the clock on the wall is set %s, and tells', (_, shift, word) => {
    const bench = new Bench();
    bench.begin(AT, clock(0));
    expect(bench.answer(later(60 + shift), clock(60))).toBe('checklist.waiting');
    expect(bench.answer(later(151 + shift), clock(151))).toBeUndefined();
    const [notice] = clockNotices(bench.run);
    expect(notice && phrase(notice).reason).toContain(word);
    expect(notice?.figures.shift).toContain(String(Math.abs(shift)).slice(-3));
  });

  it('begins again after the window was closed in the middle: nobody knows how long it was shut', () => {
    const bench = new Bench();
    bench.begin(AT, clock(500));
    expect(bench.answer(later(600), clock(600, 'two'))).toBe('checklist.wait-not-begun');
    expect(passedSince(bench.run.waits?.wait, clock(600, 'two'))).toBeUndefined();
    expect(bench.begin(later(600), clock(3, 'two'))).toBeUndefined();
    expect(bench.answer(later(740), clock(143, 'two'))).toBe('checklist.waiting');
    expect(bench.answer(later(750), clock(153, 'two'))).toBeUndefined();
  });

  it('is not met by a clock that counts backwards', () => {
    const bench = new Bench();
    bench.begin(AT, clock(500));
    expect(bench.answer(later(600), clock(400))).toBe('checklist.wait-not-begun');
  });

  it('is not met by times that cannot be read', () => {
    const bench = new Bench();
    bench.begin('yesterday', clock(0));
    expect(bench.answer(later(600), clock(600))).toBe('checklist.wait-not-begun');
  });

  it('can be said to be not met at any time', () => {
    const bench = new Bench();
    const given = { initials: 'AB', at: AT, met: false };
    expect(bench.take(answerItem('run1', bench.run, draftRevision, 'wait', given))).toBeUndefined();
    expect(bench.run.answers.wait?.met).toBe(false);
  });

  it('is open again when the run turns out to have taken longer to stand still', () => {
    const bench = new Bench();
    bench.begin(AT, clock(0));
    bench.answer(later(150), clock(150));
    expect(canFinish(bench.run, 'failed').map(({ item }) => item)).toEqual(['photo']);
    const slower = { ...bench.run, readings: { coast: known(120) } };
    expect(canFinish(slower, 'failed').map(({ item }) => item)).toEqual(['wait', 'photo']);
  });

  it('starts only where the item is a wait, and only in its turn', () => {
    const bench = new Bench({ status: 'checklist' });
    expect(bench.begin(AT, clock(0))).toBe('checklist.not-cleared');
    const given = { initials: 'AB', at: AT, clock: clock(0) };
    expect(beginWait('run1', bench.run, draftRevision, 'before', given)).toMatchObject({
      problem: { code: 'checklist.no-wait' },
    });
    expect(beginWait('run1', bench.run, draftRevision, 'none', given)).toMatchObject({
      problem: { code: 'checklist.unknown-item' },
    });
    expect(
      beginWait('run1', new Bench().run, draftRevision, 'wait', { ...given, initials: ' ' }),
    ).toMatchObject({
      problem: { code: 'checklist.initials' },
    });
  });

  it('is not started again once it is met', () => {
    const bench = new Bench();
    bench.begin(AT, clock(0));
    bench.answer(later(150), clock(150));
    expect(bench.begin(later(200), clock(200))).toBe('checklist.no-wait');
  });
});

describe('the length of a wait', () => {
  const timed = (changes: Partial<Run>, item: Run['items'][number] = waitItem) =>
    waitTime({ ...runOf([item]), ...changes }, 'wait');
  const given = { coast_down_time: { si: 80, unit: 's', from: 'run 3' } };

  it('rests on what this run measured, the longest where there are several', () => {
    const measuring = { ...first, id: 'm', measures: 'coast_down_time' } as Run['items'][number];
    const run = {
      ...runOf([measuring, waitItem]),
      readings: { coast: known(100) },
      answers: { m: { at: AT, initials: 'AB', met: true, reading: known(110) } },
    };
    expect(waitTime(run, 'wait')).toMatchObject({ ok: true, value: { seconds: 165 } });
  });

  it('else on what the last run of the revision measured', () => {
    const item = { ...waitItem, wait: { ...waitItem.wait, given } };
    expect(timed({}, item)).toMatchObject({
      value: { seconds: 120, because: 'coast down time 80\u202Fs, from run 3' },
    });
    expect(timed({ readings: { coast: known(100) } }, item)).toMatchObject({ value: { seconds: 150 } });
  });

  it('else on the longest wait of the template, and says so', () => {
    expect(timed({})).toMatchObject({ value: { seconds: 1800 } });
    expect(timed({ readings: { coast: known(Number.NaN) } })).toMatchObject({ value: { seconds: 1800 } });
  });

  it('is not asked of an item that is no wait, or is not there', () => {
    const run = runOf([photoItem]);
    expect(waitTime(run, 'photo')).toMatchObject({ problem: { code: 'checklist.no-wait' } });
    expect(waitTime(run, 'wait')).toMatchObject({ problem: { code: 'checklist.unknown-item' } });
  });

  it('else is not known, and the wait stays open', () => {
    const { otherwise: _, ...wait } = waitItem.wait;
    expect(timed({}, { ...waitItem, wait })).toMatchObject({ problem: { code: 'checklist.wait-unknown' } });
  });

  it('is filled in when a run begins, from the latest run that measured it', () => {
    const template = readChecklistTemplate({
      id: 'club',
      version: 1,
      title: 'Club',
      purpose: 'Ours.',
      pauses: [
        {
          title: 'Wait',
          items: [
            {
              id: 'w',
              kind: 'wait',
              text: 'Wait.',
              wait: { time: '1.5 * coast_down_time + 10 s', otherwise: '30 min' },
              source: 'project choice',
            },
          ],
        },
      ],
    });
    if (!template.ok) throw new Error(template.problem.code);
    const { prototype, revision, assessment } = sample();
    const items = generateChecklist([template.value.template], prototype, revision, assessment);
    let state = withCard(notebook(), 'c1', 'bench-spin');
    state = withRun(state, 'x1', 'c1', { readings: { 'coast-down-full': known(112) } });
    state = withRun(state, 'x2', 'c1', { readings: { 'coast-down-full': known(115) } });
    state = withRun(state, 'x3', 'c1');
    expect(measuredBefore(state, 'r1', 'coast_down_time')).toEqual({ si: 115, from: 'run 2' });
    expect(measuredBefore(state, 'r2', 'coast_down_time')).toBeUndefined();
    const card = state.card.c1;
    if (!card) throw new Error('no card');
    const run = beginRun({ cardId: 'c1', card, revision, items, number: 4, by: 'AB', at: AT, state });
    const [item] = run.ok ? run.value.items : [];
    expect(item?.wait).toMatchObject({ otherwise: 1800, readings: { coast_down_time: ['coast-down-full'] } });
    expect(run.ok && item && waitTime(run.value, item.id)).toMatchObject({ value: { seconds: 182.5 } });
  });

  it.each([
    ['no time', { kind: 'wait', wait: undefined }, 'template.lacks'],
    ['a time on an item that is no wait', { kind: 'tick' }, 'template.lacks'],
    ['a length', { wait: { time: '3 m' } }, 'template.unit-mismatch'],
    ['a name that nobody measures', { wait: { time: 'luck' } }, 'template.unknown-name'],
    [
      'a longest wait that is measured',
      { wait: { time: '3 s', otherwise: 'coast_down_time' } },
      'template.unknown-name',
    ],
  ])('is refused in a template for %s', (_, changes, code) => {
    const item = {
      id: 'w',
      kind: 'wait',
      text: 'Wait.',
      wait: { time: '3 s' },
      source: 'project choice',
      ...changes,
    };
    const template = {
      id: 'club',
      version: 1,
      title: 'Club',
      purpose: 'Ours.',
      pauses: [{ title: 'W', items: [item] }],
    };
    expect(readChecklistTemplate(template)).toMatchObject({ problem: { code } });
  });
});

describe('a photo item', () => {
  const sha256 = 'a'.repeat(64);
  const picture = { sha256, name: 'rotor.jpg', mediaType: 'image/jpeg', size: 9, caption: '', order: 1 };
  const waited = { wait: { at: AT, initials: 'AB', met: true, waited: { seconds: 150, clockShift: 0 } } };
  const answer = (changes: Partial<Run>, photo?: string) =>
    answerItem('run1', new Bench({ answers: waited, ...changes }).run, draftRevision, 'photo', {
      initials: 'AB',
      at: AT,
      ...(photo === undefined ? {} : { photo }),
    });

  it('is met by a picture among the attachments of the run', () => {
    const attachments = { one: picture };
    expect(answer({ attachments }, sha256)).toMatchObject({ ok: true });
    const recorded = { ...waited, photo: { at: AT, initials: 'AB', met: true, photo: sha256 } };
    expect(canFinish(new Bench({ attachments, answers: recorded }).run, 'passed')).toEqual([]);
  });

  it.each([
    ['none is named', { attachments: { one: picture } }, undefined],
    ['it is not attached', {}, sha256],
    ['it is not a picture', { attachments: { one: { ...picture, mediaType: 'text/csv' } } }, sha256],
  ])('is refused where %s', (_, changes, photo) => {
    expect(answer(changes, photo)).toMatchObject({ problem: { code: 'checklist.missing-photo' } });
  });
});
