/** A run with one item of each kind, for the tests of the state machine. */
import { type ChecklistItem, fingerprint, type Revision, type Run } from '../notebook/index.ts';
import { sampleRevision } from './sample.ts';

/** A draft, so that the tests can change it under the run. */
export const draftRevision: Revision = { ...sampleRevision, status: 'draft' };

function item(id: string, more: Partial<ChecklistItem>): ChecklistItem {
  return {
    id,
    pause: 'Pause',
    phase: 'before',
    kind: 'tick',
    hold: false,
    critical: false,
    text: `Item ${id}.`,
    detail: '',
    source: 'project choice',
    figures: [],
    missing: [],
    ...more,
  };
}

export const testItems: readonly ChecklistItem[] = [
  item('tick', {}),
  item('hold', { kind: 'hold', hold: true }),
  item('measured', {
    kind: 'measured',
    measured: { unit: 'V', low: 9, high: 4.2 * 3, example: '11.1 V' },
  }),
  item('choice', {
    kind: 'choice',
    choices: [
      { text: 'Fine', stops: false },
      { text: 'Cracked', stops: true },
    ],
  }),
  item('two', { kind: 'two-person', hold: true }),
  item('during', { phase: 'during', kind: 'hold', hold: true }),
  item('after-hold', { phase: 'after', kind: 'hold', hold: true }),
  item('after', { phase: 'after' }),
];

/** SHA-256 of the one picture that is attached to a run of `allKinds`. */
export const SHA256 = 'a'.repeat(64);

/** One of each kind before the run, with the timed wait and the picture. */
export const allKinds: readonly ChecklistItem[] = testItems.flatMap((each) =>
  each.id === 'two'
    ? [
        item('wait', {
          kind: 'wait',
          hold: true,
          wait: { expression: '1.5 * coast_down_time', given: {}, readings: { coast_down_time: ['coast'] } },
        }),
        item('photo', { kind: 'photo' }),
        each,
      ]
    : [each],
);

export function runOf(items: readonly ChecklistItem[]): Run {
  return {
    prototype: 'p1',
    revision: 'r1',
    card: 'c1',
    number: 1,
    startedAt: '2025-03-02T09:30:00Z',
    startedBy: 'AB',
    fingerprint: fingerprint(draftRevision),
    items: [...items],
    answers: {},
    status: 'checklist',
    summary: '',
    readings: {},
    notes: {},
    attachments: {},
  };
}
