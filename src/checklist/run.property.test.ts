/**
 * Whatever people do in whatever order: a run that is cleared had every item met at that moment, on the revision
 * that its list was made from. The judge here is written apart from the code that it judges.
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
import type { Result } from '../quantity/index.ts';
import { nextItem } from './obstacles.ts';
import { abort, answerItem, clear, declareVoid, finish, type Given } from './run.ts';
import { known } from './sample.ts';
import { draftRevision, runOf, testItems } from './sample-run.ts';

const AT = '2025-03-02T10:00:00Z';

type Action =
  | { readonly do: 'answer'; readonly item: string; readonly given: Given }
  | { readonly do: 'clear' | 'abort' | 'void'; readonly by: string }
  | { readonly do: 'finish'; readonly outcome: 'passed' | 'failed' }
  | { readonly do: 'next' }
  | { readonly do: 'weigh'; readonly mass: number };

const initials = fc.constantFrom('AB', 'ab', 'A.B.', 'CD', ' ', '.');
const anyAnswer: fc.Arbitrary<Action> = fc
  .record({
    item: fc.constantFrom(...testItems.map(({ id }) => id), 'no-such-item'),
    initials,
    second: fc.option(initials, { nil: undefined }),
    volts: fc.option(
      fc.constantFrom(8.9, 9 - 1e-6, 9, 12, 12.6, 12.6 + 1e-6, 99, Number.NaN, Number.POSITIVE_INFINITY),
      { nil: undefined },
    ),
    choice: fc.constantFrom(undefined, 'Fine', 'Cracked', 'Other'),
    met: fc.option(fc.boolean(), { nil: undefined }),
    note: fc.constantFrom(undefined, ' ', 'put right'),
  })
  .map(({ item, volts, second, choice, met, note, ...given }) => ({
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
};

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
);

function begin(missing: readonly string[]): NotebookState {
  const items = testItems.map((item) =>
    missing.includes(item.id) ? { ...item, missing: ['rotor_speed'] } : item,
  );
  const revision = { ...draftRevision, parts: { ...draftRevision.parts } };
  return [create('revision', 'r1', revision), create('run', 'run1', runOf(items))].reduce((state, change) => {
    const next = apply(state, change);
    if (!next.ok) throw new Error(next.problem.code);
    return next.value;
  }, emptyState);
}

function stepFrom(run: Run, revision: typeof draftRevision, action: Action): Result<Change> {
  switch (action.do) {
    case 'answer':
      return answerItem('run1', run, revision, action.item, action.given);
    case 'next':
      return answerItem('run1', run, revision, nextItem(run)?.id ?? 'none', GOOD);
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
  }
}

/** The judge: what is wrong with an item, by the words of the rules. */
function wrongWith(item: ChecklistItem, run: Run): string | undefined {
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
  return undefined;
}

it('no sequence of actions clears a run with anything open, missing, out of limits or stale', () => {
  let cleared = 0;
  let changed = 0;
  fc.assert(
    fc.property(
      fc.array(action, { maxLength: 60, size: 'max' }),
      fc.oneof(
        { weight: 8, arbitrary: fc.constant([]) },
        { weight: 1, arbitrary: fc.subarray(testItems.map(({ id }) => id)) },
      ),
      (actions, missing) => {
        let state = begin(missing);
        for (const action of actions) {
          const run = state.run.run1;
          const revision = state.revision.r1;
          if (!run || !revision) throw new Error('a record is gone');
          const result = stepFrom(run, revision, action);
          if (!result.ok) continue;
          const next = apply(state, result.value);
          if (!next.ok) throw new Error(`the notebook refuses the change: ${next.problem.code}`);
          state = next.value;
          const after = state.run.run1;
          if (run.status === 'checklist' && after?.status === 'cleared') {
            cleared += 1;
            expect(after.items.map((item) => wrongWith(item, after)).filter(Boolean)).toEqual([]);
            expect(fingerprint(revision)).toBe(after.fingerprint);
            expect(after.clearedBy?.replaceAll(/[^A-Za-z]/g, '')).not.toBe('');
          } else if (after?.status === 'cleared') {
            expect(run.status).toBe('cleared');
          }
          if (action.do === 'weigh') changed += 1;
        }
      },
    ),
    { numRuns: 400 },
  );
  // The property would hold of a machine that never clears anything; this one does.
  expect(cleared).toBeGreaterThan(20);
  expect(changed).toBeGreaterThan(20);
});
