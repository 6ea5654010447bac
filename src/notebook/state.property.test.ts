/** Changes as an algebra: whatever is set, in whatever order, can be taken back, and a refused change did nothing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Change, change as changeSchema, type Json, type Setting } from './change.ts';
import { valueAt } from './path.ts';
import { entriesOf, quantity, sample } from './sample.ts';
import { apply, applyAll, emptyState, invert, type NotebookState, replay } from './state.ts';

const field = fc.oneof(
  fc.double({ noDefaultInfinity: true, noNaN: true }).map((si): Json => quantity(si)),
  fc.constant<Json>({ notMeasured: true }),
);
const wrong = fc.constantFrom<Json>(null, '', 7, [], {}, { si: 1 }, 'slide', [['x']]);
const value = fc.option(fc.oneof({ weight: 4, arbitrary: field }, wrong), { nil: undefined });

const partField = fc.constantFrom(
  'mass',
  'x',
  'y',
  'z',
  'name',
  'order',
  'role',
  'body',
  'body/diameter',
  'note',
);
const revisionPath = fc.oneof(
  fc
    .tuple(fc.constantFrom('frame', 'disc', 'new', 'constructor'), partField)
    .map(([id, name]) => `parts/${id}/${name}`),
  fc.constantFrom(
    'parts',
    'parts/frame',
    'parts/disc',
    'weighedMass',
    'weighedMass/u',
    'reason',
    'from',
    'letter',
  ),
  fc.constantFrom(
    'rotor',
    'rotor/density',
    'rotor/sections',
    'rotor/sections/rim',
    'gimbal',
    'gimbal/travel',
  ),
  fc.constantFrom(
    'loop/leanGain',
    'loop/delay',
    'loop',
    'pack/capacity',
    'actuator/stallForce',
    'ballast/travel',
  ),
  fc.constantFrom(
    '__proto__/x',
    'constructor',
    'parts/__proto__',
    'status/x',
    'parts//mass',
    'nothing/at/all',
  ),
);
const listPath = fc.constantFrom(
  'causes',
  'causes/0',
  'causes/1',
  'causes/2',
  'causes/3',
  'causes/x',
  'title',
  'status',
);
const text = fc.option(fc.constantFrom<Json>('why', '', 'open', 'closed', 3, ['a', 'b', 'c'], []), {
  nil: undefined,
});

const settingOf = (
  path: fc.Arbitrary<string>,
  value: fc.Arbitrary<Json | undefined>,
): fc.Arbitrary<Setting> =>
  fc.tuple(path, value).map(([at, held]) => (held === undefined ? { path: at } : { path: at, value: held }));

const change: fc.Arbitrary<Change> = fc.oneof(
  fc
    .array(settingOf(revisionPath, value), { minLength: 1, maxLength: 4 })
    .map((set): Change => ({ op: 'set', kind: 'revision', id: 'r', set })),
  fc
    .array(settingOf(listPath, text), { minLength: 1, maxLength: 4 })
    .map((set): Change => ({ op: 'set', kind: 'failure', id: 'f', set })),
);
/** Mostly changes of one field, which are mostly taken. */
const likely: fc.Arbitrary<Change> = fc.oneof(
  {
    weight: 3,
    arbitrary: settingOf(
      fc.constantFrom(
        'parts/frame/mass',
        'parts/disc/z',
        'parts/disc/body/diameter',
        'loop/leanGain',
        'loop/delay',
        'gimbal/travel',
        'rotor/density',
        'weighedMass',
        'pack/capacity',
        'actuator/stallForce',
      ),
      fc.option(field, { nil: undefined }),
    ).map((one): Change => ({ op: 'set', kind: 'revision', id: 'r', set: [one] })),
  },
  { weight: 1, arbitrary: change },
);

function made(state: NotebookState, changes: readonly Change[]): NotebookState {
  return changes.reduce((before, each) => {
    const next = apply(before, each);
    return next.ok ? next.value : before;
  }, state);
}

describe('changes', () => {
  it('followed by their inverse give the state back', () => {
    let taken = 0;
    fc.assert(
      fc.property(fc.array(likely, { maxLength: 6 }), likely, (earlier, change) => {
        const before = made(sample, earlier);
        const taking = apply(before, change);
        fc.pre(taking.ok);
        taken += 1;
        const inverse = invert(before, change);
        const back = taking.ok && inverse && apply(taking.value, inverse);
        expect(back?.ok && back.value).toEqual(before);
      }),
      { numRuns: 600 },
    );
    expect(taken, 'or nothing was tried').toBeGreaterThan(500);
  });

  it('undone from the last to the first give the beginning back, and redone the end', () => {
    fc.assert(
      fc.property(fc.array(likely, { maxLength: 12 }), (changes) => {
        let state = sample;
        const undoing: Change[] = [];
        for (const each of changes) {
          const taking = apply(state, each);
          if (!taking.ok) continue;
          undoing.unshift(invert(state, each) as Change);
          state = taking.value;
        }
        const redoing: Change[] = [];
        let back = state;
        for (const each of undoing) {
          redoing.unshift(invert(back, each) as Change);
          back = made(back, [each]);
        }
        expect(back).toEqual(sample);
        expect(made(back, redoing)).toEqual(state);
      }),
    );
  });

  it('never alter the state that they are made from, refused or not', () => {
    const kept = JSON.stringify(sample);
    fc.assert(
      fc.property(change, (each) => {
        apply(sample, each);
        invert(sample, each);
        expect(JSON.stringify(sample)).toBe(kept);
      }),
      { numRuns: 500 },
    );
  });

  it('set what they say', () => {
    fc.assert(
      fc.property(likely, (each) => {
        const taking = apply(sample, each);
        fc.pre(taking.ok && each.op === 'set' && each.set.length === 1);
        if (!taking.ok || each.op !== 'set') return;
        const [setting] = each.set;
        fc.pre(setting?.value !== undefined && setting.path !== 'rotor' && !setting.path.endsWith('body'));
        expect(valueAt(taking.value[each.kind][each.id] as Json, setting?.path ?? '')).toMatchObject(
          setting?.value as object,
        );
      }),
    );
  });

  it('of different places give the same in either order', () => {
    const mass = settingOf(
      fc.constantFrom('parts/frame/mass', 'loop/delay', 'rotor/density'),
      fc.option(field, { nil: undefined }),
    );
    const height = settingOf(
      fc.constantFrom('parts/frame/z', 'loop/leanGain', 'gimbal/travel'),
      fc.option(field, { nil: undefined }),
    );
    fc.assert(
      fc.property(mass, height, (one, other) => {
        const change = (set: readonly Setting[]): Change => ({
          op: 'set',
          kind: 'revision',
          id: 'r',
          set: [...set],
        });
        const together = made(sample, [change([one, other])]);
        expect(made(sample, [change([one]), change([other])])).toEqual(together);
        expect(made(sample, [change([other]), change([one])])).toEqual(together);
      }),
    );
  });

  it('made all at once give what they give one by one, or nothing when one of them does not fit', () => {
    fc.assert(
      fc.property(fc.array(likely, { maxLength: 6 }), (changes) => {
        const kept = JSON.stringify(sample);
        const together = applyAll(sample, changes);
        const unfit = changes.find((each, index) => !apply(made(sample, changes.slice(0, index)), each).ok);
        expect(together.ok).toBe(unfit === undefined);
        if (together.ok) expect(together.value).toEqual(made(sample, changes));
        expect(JSON.stringify(sample)).toBe(kept);
      }),
      { numRuns: 300 },
    );
  });

  it('share all records that they leave alone, and all kinds', () => {
    const change: Change = { op: 'set', kind: 'entry', id: 'e', set: [{ path: 'title', value: 'Other' }] };
    const next = applyAll(sample, [
      change,
      { op: 'set', kind: 'run', id: 'x', set: [{ path: 'summary', value: 's' }] },
    ]);
    if (!next.ok) throw new Error('refused');
    expect(next.value.entry).not.toBe(sample.entry);
    for (const kind of ['notebook', 'prototype', 'revision', 'card', 'failure'] as const)
      expect(next.value[kind]).toBe(sample[kind]);
  });

  it('replayed from the journal give what they give one by one', () => {
    fc.assert(
      fc.property(fc.array(likely, { maxLength: 10 }), (changes) => {
        const replayed = replay(entriesOf(changes), sample);
        expect(replayed.state).toEqual(made(sample, changes));
        const refused = changes.filter(
          (each, index) => !apply(made(sample, changes.slice(0, index)), each).ok,
        );
        expect(replayed.refused.length).toBe(refused.length);
      }),
    );
  });

  it('that went through the text of a journal line give the same', () => {
    fc.assert(
      fc.property(likely, (each) => {
        const read = changeSchema.parse(JSON.parse(JSON.stringify(each)));
        expect(apply(sample, read)).toEqual(apply(sample, JSON.parse(JSON.stringify(each)) as Change));
      }),
    );
  });

  it('replayed on nothing are all refused when they change what is not there', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 5 }), (changes) => {
        const { state, refused } = replay(entriesOf(changes));
        expect(state).toEqual(emptyState);
        expect(refused.map(({ seq }) => seq)).toEqual(changes.map((_, index) => index + 1));
      }),
    );
  });
});
