/** Merging as an algebra: whatever two people did, nothing of either is lost, and doing it again changes nothing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Change, create, type Json, type Setting } from './change.ts';
import { merge, type Side } from './merge.ts';
import type { ChainedEntry } from './merge-fork.ts';
import { sameJson } from './merge-paths.ts';
import { continued, written } from './merge-sample.ts';
import { valueAt } from './path.ts';
import { AT, creations, quantity } from './sample.ts';
import { apply, type NotebookState, replay } from './state.ts';

const base = continued([], Object.values(creations));
const stateOf = (entries: readonly ChainedEntry[]): NotebookState => replay(entries).state;

const field = fc.option(
  fc.integer({ min: 1, max: 4 }).map((si): Json => quantity(si)),
  { nil: undefined },
);
const settingOf = (path: string, values: fc.Arbitrary<Json | undefined>): fc.Arbitrary<Setting> =>
  values.map((value) => (value === undefined ? { path } : { path, value }));
const revisionSetting = fc.oneof(
  ...[
    'parts/frame/mass',
    'parts/frame/z',
    'parts/disc/body/diameter',
    'weighedMass',
    'rotor/density',
    'loop/delay',
  ].map((path) => settingOf(path, field)),
  settingOf(
    'parts/frame',
    fc.constantFrom<Json | undefined>(undefined, { name: 'Box', order: 1, mass: quantity(7) }),
  ),
  settingOf('parts/disc/body', fc.constantFrom<Json>({ shape: 'point' }, { shape: 'rod', axis: 'x' })),
  settingOf('parts/disc/body/length', field),
  settingOf('reason', fc.constantFrom('a', 'b', 'c')),
  settingOf('rotor', fc.constantFrom<Json | undefined>(undefined, { sections: {} })),
);
const failureSetting = fc.oneof(
  settingOf('effect', fc.constantFrom('a', 'b')),
  ...['causes/0', 'causes/1', 'causes/2'].map((path) =>
    settingOf(path, fc.constantFrom('x', 'y', undefined)),
  ),
);
const settings = (
  kind: 'revision' | 'failure',
  id: string,
  one: fc.Arbitrary<Setting>,
): fc.Arbitrary<Change> =>
  fc.array(one, { minLength: 1, maxLength: 2 }).map((set): Change => ({ op: 'set', kind, id, set }));
const setOnly = fc.oneof(
  settings('revision', 'r', revisionSetting),
  settings('failure', 'f', failureSetting),
);
const entry = fc
  .tuple(fc.constantFrom('e2', 'e3', 'e4'), fc.integer({ min: 2, max: 4 }), fc.constantFrom('a', 'b'))
  .map(
    ([id, number, title]): Change =>
      create('entry', id, { prototype: 'p', revision: 'r', number, title, at: AT, author: 'B', text: '' }),
  );
const anyChange = fc.oneof(
  { weight: 6, arbitrary: setOnly },
  { weight: 2, arbitrary: entry },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom('entry', 'e3')
      .map((): Change => ({ op: 'set', kind: 'entry', id: 'e3', set: [{ path: 'text', value: 'more' }] })),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('B', 'C').map(
      (by): Change => ({
        op: 'set',
        kind: 'revision',
        id: 'r',
        set: [
          { path: 'status', value: 'issued' },
          { path: 'issuedBy', value: by },
        ],
      }),
    ),
  },
);

/** Only what a window would have written: each change fits what stands before it. */
function worked(
  from: readonly ChainedEntry[],
  changes: readonly Change[],
  by: string,
): readonly ChainedEntry[] {
  let state = stateOf(from);
  const fitting = changes.filter((change) => {
    const next = apply(state, change);
    if (next.ok) state = next.value;
    return next.ok;
  });
  return continued(from, fitting, by);
}
const work = (change: fc.Arbitrary<Change>) => fc.array(change, { maxLength: 6 });
const side = fc.constantFrom<Side>('ours', 'theirs');
const origins = (entries: readonly ChainedEntry[]): ReadonlySet<string> =>
  new Set(entries.map(({ hash, merged }) => merged?.hash ?? hash));

/** Ours after the merge, whatever kind of merge it was; fails where a choice stayed open. */
function joined(
  ours: readonly ChainedEntry[],
  theirs: readonly ChainedEntry[],
  choice: Side,
): readonly ChainedEntry[] {
  const merged = merge(ours, theirs, () => choice);
  if (merged.kind === 'nothing new') return ours;
  return merged.kind === 'fast-forward' ? theirs : written(ours, merged);
}

describe('merging', () => {
  it('with a continuation is the continuation, with a beginning changes nothing', () => {
    fc.assert(
      fc.property(work(anyChange), work(anyChange), side, (one, more, choice) => {
        const ours = worked(base, one, 'B');
        const longer = worked(ours, more, 'C');
        expect(joined(ours, longer, choice)).toEqual(longer);
        expect(merge(longer, ours)).toEqual({ kind: 'nothing new', common: ours.length });
        expect(merge(ours, ours).kind).toBe('nothing new');
      }),
    );
  });

  it('loses no entry of either side, and leaves ours as it stands', () => {
    let both = 0;
    fc.assert(
      fc.property(work(anyChange), work(anyChange), side, (one, other, choice) => {
        const ours = worked(base, one, 'B');
        const theirs = worked(base, other, 'C');
        const after = joined(ours, theirs, choice);
        if (ours.length > base.length && theirs.length > base.length) both += 1;
        expect(after.slice(0, ours.length)).toEqual(
          ours.length > base.length ? ours : after.slice(0, ours.length),
        );
        const held = origins(after);
        const records = after.map(({ change }) => JSON.stringify(change));
        for (const each of theirs) {
          const { change, hash } = each;
          const issuedAlike = change.kind === 'revision' && stateOf(after).revision.r?.status === 'issued';
          expect(held.has(hash) || records.includes(JSON.stringify(change)) || issuedAlike).toBe(true);
        }
        expect(replay(after).refused).toEqual([]);
        const merged = merge(ours, theirs, () => choice);
        const left = merged.kind === 'combined' && merged.notes.some(({ code }) => code === 'merge.left-out');
        expect(left).toBe(false);
      }),
      { numRuns: 400 },
    );
    expect(both, 'the case has come up').toBeGreaterThan(200);
  });

  it('a second time adds nothing', () => {
    fc.assert(
      fc.property(work(anyChange), work(anyChange), side, side, (one, other, choice, again) => {
        const ours = worked(base, one, 'B');
        const theirs = worked(base, other, 'C');
        const after = joined(ours, theirs, choice);
        const merged = merge(after, theirs, () => again);
        expect(merged.kind === 'combined' ? [merged.additions, merged.conflicts] : []).toEqual(
          merged.kind === 'combined' ? [[], []] : [],
        );
      }),
      { numRuns: 300 },
    );
  });

  it('gives the same each time', () => {
    fc.assert(
      fc.property(work(anyChange), work(anyChange), side, (one, other, choice) => {
        const ours = worked(base, one, 'B');
        const theirs = worked(base, other, 'C');
        expect(merge(ours, theirs, () => choice)).toEqual(merge(ours, theirs, () => choice));
      }),
    );
  });

  it('from either side comes to the same state when the same values are chosen', () => {
    fc.assert(
      fc.property(work(setOnly), work(setOnly), (one, other) => {
        const ours = worked(base, one, 'B');
        const theirs = worked(base, other, 'C');
        expect(stateOf(joined(ours, theirs, 'ours'))).toEqual(stateOf(joined(theirs, ours, 'theirs')));
      }),
      { numRuns: 400 },
    );
  });

  it('leaves at each place what its only author set, and what was chosen where there were two', () => {
    let asked = 0;
    fc.assert(
      fc.property(work(setOnly), work(setOnly), side, (one, other, choice) => {
        const ours = worked(base, one, 'B');
        const theirs = worked(base, other, 'C');
        const merged = merge(ours, theirs, () => choice);
        if (merged.kind !== 'combined') return;
        const [mine, their, after] = [ours, theirs, written(ours, merged)].map(stateOf);
        const at = (state: NotebookState | undefined, path: string): Json | undefined =>
          valueAt(state?.revision.r as unknown as Json, path);
        for (const conflict of merged.conflicts) {
          asked += 1;
          if (conflict.kind === 'revision') {
            const chosen = choice === 'ours' ? mine : their;
            expect(sameJson(at(after, conflict.path), at(chosen, conflict.path))).toBe(true);
          }
        }
        for (const path of ['weighedMass', 'reason', 'loop/delay']) {
          const [before, a, b] = [at(stateOf(base), path), at(mine, path), at(their, path)];
          const settledBy = sameJson(a, before) ? b : sameJson(b, before) ? a : undefined;
          if (settledBy !== undefined && !merged.conflicts.some((each) => each.path === path)) {
            expect(at(after, path)).toEqual(settledBy);
          }
        }
      }),
      { numRuns: 400 },
    );
    expect(asked, 'there were conflicts').toBeGreaterThan(100);
  });

  it('back and forth between two people comes to rest', () => {
    fc.assert(
      fc.property(work(setOnly), work(setOnly), work(setOnly), (one, other, more) => {
        let ours = worked(base, one, 'B');
        let theirs = worked(base, other, 'C');
        ours = joined(ours, theirs, 'ours');
        theirs = worked(theirs, more, 'C');
        theirs = joined(theirs, ours, 'theirs');
        ours = joined(ours, theirs, 'ours');
        theirs = joined(theirs, ours, 'theirs');
        ours = joined(ours, theirs, 'theirs');
        const rest = merge(ours, theirs, () => 'ours');
        expect(rest.kind === 'combined' ? rest.additions.filter(({ merged }) => merged) : []).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});
