/**
 * Whatever people do in whatever order, and whatever their clock does meanwhile: a run that is cleared had every item
 * met at that moment, or gone past by name and with a reason for just that, on the revision that its list was made
 * from. The judge here is written apart from the code that it judges: it keeps its own time.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  apply,
  type Change,
  type ChecklistItem,
  create,
  emptyState,
  fingerprint,
  type NotebookState,
  type Run,
  set,
} from '../notebook/index.ts';
import { type Result, sentence } from '../quantity/index.ts';
import { faultsOf } from './answer.ts';
import { nextItem } from './obstacles.ts';
import { abort, answerItem, beginWait, clear, declareVoid, finish, type Given, overrideItem } from './run.ts';
import { known } from './sample.ts';
import { allKinds, draftRevision, runOf, SHA256 } from './sample-run.ts';
import type { Clock } from './wait.ts';

const AT = '2025-03-02T10:00:00Z';

type Action =
  | { readonly do: 'answer'; readonly item: string; readonly given: Given }
  | { readonly do: 'clear' | 'abort' | 'void'; readonly by: string }
  | { readonly do: 'finish'; readonly outcome: 'passed' | 'failed' }
  | { readonly do: 'next' }
  | { readonly do: 'weigh'; readonly mass: number }
  | { readonly do: 'read'; readonly seconds: number }
  | { readonly do: 'override'; readonly item: string; readonly name: string; readonly reason: string }
  | { readonly do: 'begin wait' }
  /** Time passes. */
  | { readonly do: 'sit'; readonly seconds: number }
  /** Somebody sets the clock on the wall. */
  | { readonly do: 'set the clock'; readonly seconds: number }
  /** The window is closed and opened again. */
  | { readonly do: 'close' }
  | { readonly do: 'attach' };

/** The room: the time that has truly passed, how wrong the wall clock is, and which session the window is in. */
interface Room {
  passed: number;
  wall: number;
  session: number;
  openedAt: number;
}

function clockIn(room: Room): Clock {
  return { session: `session ${room.session}`, reading: room.passed - room.openedAt };
}

function wallIn(room: Room): string {
  return new Date(Date.parse(AT) + (room.passed + room.wall) * 1000).toISOString();
}

const initials = fc.constantFrom('AB', 'ab', 'A.B.', 'CD', ' ', '.');
const anyAnswer: fc.Arbitrary<Action> = fc
  .record({
    item: fc.constantFrom(...allKinds.map(({ id }) => id), 'no-such-item'),
    initials,
    second: fc.option(initials, { nil: undefined }),
    volts: fc.option(
      fc.constantFrom(8.9, 9 - 1e-6, 9, 12, 12.6, 12.6 + 1e-6, 99, Number.NaN, Number.POSITIVE_INFINITY),
      { nil: undefined },
    ),
    choice: fc.constantFrom(undefined, 'Fine', 'Cracked', 'Other'),
    met: fc.option(fc.boolean(), { nil: undefined }),
    note: fc.constantFrom(undefined, ' ', 'put right'),
    photo: fc.constantFrom(undefined, SHA256, 'b'.repeat(64)),
  })
  .map(({ item, volts, second, choice, met, note, photo, ...given }) => ({
    do: 'answer',
    item,
    given: {
      at: AT,
      ...given,
      ...(second === undefined ? {} : { second }),
      ...(volts === undefined ? {} : { reading: known(volts) }),
      ...(choice === undefined ? {} : { choice }),
      ...(met === undefined ? {} : { met }),
      ...(note === undefined ? {} : { note }),
      ...(photo === undefined ? {} : { photo }),
    },
  }));

/** What a careful pair would answer to whatever comes next, so that many sequences do come to a clearance. */
const GOOD: Given = {
  at: AT,
  initials: 'AB',
  second: 'CD',
  reading: known(12),
  choice: 'Fine',
  note: 'put right',
  photo: SHA256,
};

const words = fc.constantFrom('', '…', 'A. Builder', 'Meter broken', 'Agreed by both');

const action: fc.Arbitrary<Action> = fc.oneof(
  { weight: 10, arbitrary: anyAnswer },
  { weight: 40, arbitrary: fc.constant({ do: 'next' } as const) },
  { weight: 10, arbitrary: fc.record({ do: fc.constant('clear' as const), by: initials }) },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constantFrom('abort' as const, 'void' as const), by: initials }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('finish' as const),
      outcome: fc.constantFrom('passed' as const, 'failed' as const),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({ do: fc.constant('weigh' as const), mass: fc.constantFrom(0.3, 0.3, 0.31) }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('read' as const),
      seconds: fc.constantFrom(10, 10, 40, 200),
    }),
  },
  {
    weight: 12,
    arbitrary: fc.record({
      do: fc.constant('override' as const),
      item: fc.constantFrom('next', 'next', 'next', ...allKinds.map(({ id }) => id)),
      name: words,
      reason: words,
    }),
  },
  { weight: 10, arbitrary: fc.constant({ do: 'begin wait' } as const) },
  {
    weight: 8,
    arbitrary: fc.record({ do: fc.constant('sit' as const), seconds: fc.constantFrom(1, 14.9, 15, 60, 300) }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('set the clock' as const),
      seconds: fc.constantFrom(-86_400, -60, 60, 86_400),
    }),
  },
  { weight: 1, arbitrary: fc.constant({ do: 'close' } as const) },
  { weight: 4, arbitrary: fc.constant({ do: 'attach' } as const) },
);

const PICTURE = { sha256: SHA256, name: 'p.png', mediaType: 'image/png', size: 1, caption: '', order: 1 };

function begin(missing: readonly string[]): NotebookState {
  const items = allKinds.map((item) =>
    missing.includes(item.id) ? { ...item, missing: ['rotor_speed'] } : item,
  );
  const revision = { ...draftRevision, parts: { ...draftRevision.parts } };
  return [create('revision', 'r1', revision), create('run', 'run1', runOf(items))].reduce((state, change) => {
    const next = apply(state, change);
    if (!next.ok) throw new Error(next.problem.code);
    return next.value;
  }, emptyState);
}

function stepFrom(
  run: Run,
  revision: typeof draftRevision,
  action: Action,
  room: Room,
): Result<Change> | undefined {
  const clock = clockIn(room);
  const at = wallIn(room);
  switch (action.do) {
    case 'answer':
      return answerItem('run1', run, revision, action.item, { ...action.given, at, clock });
    case 'next':
      return answerItem('run1', run, revision, nextItem(run)?.id ?? 'none', { ...GOOD, at, clock });
    case 'clear':
      return clear('run1', run, revision, action.by, AT);
    case 'abort':
      return abort('run1', run, 'reason', action.by, AT);
    case 'void':
      return declareVoid('run1', run, revision, AT);
    case 'finish':
      return finish('run1', run, action.outcome, AT);
    case 'weigh': {
      // 0.3 kg with its uncertainty is what the list was made from
      const mass = action.mass === 0.3 ? known(0.3, 0.0005) : known(action.mass);
      return { ok: true, value: set('revision', 'r1', { 'parts/rotor/mass': mass }) };
    }
    case 'read':
      return { ok: true, value: set('run', 'run1', { 'readings/coast': known(action.seconds) }) };
    case 'override':
      return overrideItem(
        'run1',
        run,
        revision,
        action.item === 'next' ? (nextItem(run)?.id ?? 'none') : action.item,
        {
          name: action.name,
          reason: action.reason,
          at,
        },
      );
    case 'begin wait':
      return beginWait('run1', run, revision, 'wait', { initials: 'AB', at, clock });
    case 'attach':
      return { ok: true, value: set('run', 'run1', { 'attachments/one': PICTURE }) };
    case 'sit':
      room.passed += action.seconds;
      return undefined;
    case 'set the clock':
      room.wall += action.seconds;
      return undefined;
    case 'close':
      room.session += 1;
      room.openedAt = room.passed;
      return undefined;
  }
}

/** What the judge has seen with its own eyes: when the wait was last started, and how long the answer had waited. */
interface Seen {
  begun?: { readonly passed: number; readonly session: number };
  waited?: number;
}

/** Somebody went past just this, with letters in name and reason. */
function isGonePast(item: ChecklistItem, run: Run): boolean {
  const faults = faultsOf(item, run.answers[item.id], run);
  return faults.every((fault) =>
    Object.values(run.overrides ?? {}).some(
      ({ subject, what, name, reason }) =>
        subject === item.id && what === sentence(fault) && /[a-z]/i.test(name) && /[a-z]/i.test(reason),
    ),
  );
}

/** The judge: what is wrong with an item, by the words of the rules. */
function wrongWith(item: ChecklistItem, run: Run, seen: Seen): string | undefined {
  const wrong = wrongInItself(item, run, seen);
  return wrong !== undefined && faultsOf(item, run.answers[item.id], run).length > 0 && isGonePast(item, run)
    ? undefined
    : wrong;
}

function wrongInItself(item: ChecklistItem, run: Run, seen: Seen): string | undefined {
  if (item.missing.length > 0) return 'a figure is missing';
  if (item.phase !== 'before') return undefined;
  const answer = run.answers[item.id];
  if (!answer) return 'open';
  if (!answer.met) return 'not met';
  const letters = (text: string): string => text.toLowerCase().replaceAll(/[^a-z]/g, '');
  if (letters(answer.initials) === '') return 'no initials';
  if (item.kind === 'two-person') {
    const second = letters(answer.second ?? '');
    if (second === '' || second === letters(answer.initials)) return 'no second person';
  }
  if (item.kind === 'measured') {
    const volts = answer.reading?.si ?? Number.NaN;
    if (!(volts >= 9 && volts <= 12.6 + 1e-7)) return `reads ${volts}`;
  }
  if (item.kind === 'choice' && answer.choice !== 'Fine') return 'stopped';
  if (item.kind === 'photo' && (answer.photo !== SHA256 || !run.attachments.one)) return 'no picture';
  if (item.kind === 'wait') {
    const coast = run.readings.coast?.si ?? Number.NaN;
    if (!((seen.waited ?? -1) >= 1.5 * coast - 1e-9)) return `waited ${seen.waited} s of 1.5 × ${coast} s`;
  }
  return undefined;
}

it('no sequence of actions clears a run with anything open, missing, out of limits or stale', () => {
  let cleared = 0;
  let changed = 0;
  let waited = 0;
  let gonePast = 0;
  fc.assert(
    fc.property(
      fc.array(action, { maxLength: 120, size: 'max' }),
      fc.oneof(
        { weight: 8, arbitrary: fc.constant([]) },
        { weight: 1, arbitrary: fc.subarray(allKinds.map(({ id }) => id)) },
      ),
      (actions, missing) => {
        let state = begin(missing);
        const room: Room = { passed: 0, wall: 0, session: 1, openedAt: 0 };
        const seen: Seen = {};
        for (const action of actions) {
          const run = state.run.run1;
          const revision = state.revision.r1;
          if (!run || !revision) throw new Error('a record is gone');
          const result = stepFrom(run, revision, action, room);
          if (!result?.ok) continue;
          const next = apply(state, result.value);
          if (!next.ok) throw new Error(`the notebook refuses the change: ${next.problem.code}`);
          state = next.value;
          const after = state.run.run1;
          if (after?.waits?.wait !== run.waits?.wait) {
            seen.begun = { passed: room.passed, session: room.session };
          }
          const answer = after?.answers.wait;
          if (answer !== run.answers.wait && answer?.met) {
            // in another session nothing is known of the time before
            seen.waited = seen.begun?.session === room.session ? room.passed - seen.begun.passed : -1;
          }
          if (run.status === 'checklist' && after?.status === 'cleared') {
            cleared += 1;
            expect(after.items.map((item) => wrongWith(item, after, seen)).filter(Boolean)).toEqual([]);
            if (after.answers.wait?.met) waited += 1;
            if (after.overrides) gonePast += 1;
            expect(fingerprint(revision)).toBe(after.fingerprint);
            expect(after.clearedBy?.replaceAll(/[^A-Za-z]/g, '')).not.toBe('');
          } else if (after?.status === 'cleared') {
            expect(run.status).toBe('cleared');
          }
          if (action.do === 'weigh') changed += 1;
        }
      },
    ),
    { numRuns: 300 },
  );
  // The property would hold of a machine that never clears anything; this one does.
  expect(cleared).toBeGreaterThan(20);
  expect(changed).toBeGreaterThan(20);
  expect(waited).toBeGreaterThan(4);
  expect(gonePast).toBeGreaterThan(10);
});
