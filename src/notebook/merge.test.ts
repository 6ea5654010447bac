import { describe, expect, it } from 'vitest';
import { type Change, create, type Json, set } from './change.ts';
import { type Choose, type Merge, merge } from './merge.ts';
import type { ChainedEntry } from './merge-fork.ts';
import { continued, written } from './merge-sample.ts';
import { AT, creations, quantity } from './sample.ts';
import { type NotebookState, replay } from './state.ts';

const base = continued([], Object.values(creations));
const ours = (...changes: readonly Change[]) => continued(base, changes, 'B');
const theirs = (...changes: readonly Change[]) => continued(base, changes, 'C');
const stateOf = (entries: readonly ChainedEntry[]): NotebookState => {
  const { state, refused } = replay(entries);
  expect(refused).toEqual([]);
  return state;
};
const revised = (settings: Readonly<Record<string, Json | undefined>>): Change =>
  set('revision', 'r', settings);
const notes = (merged: Merge) => (merged.kind === 'combined' ? merged.notes.map(({ code }) => code) : []);
const conflicts = (merged: Merge) => (merged.kind === 'combined' ? merged.conflicts : []);
const takeOurs: Choose = () => 'ours';
const takeTheirs: Choose = () => 'theirs';
const entry = (id: string, number: number, text: string): Change =>
  create('entry', id, { prototype: 'p', revision: 'r', number, title: text, at: AT, author: 'B', text });

describe('merging changes of different places', () => {
  it('keeps both, theirs with author, time and origin', () => {
    const one = ours(revised({ 'parts/frame/mass': quantity(1) }));
    const other = theirs(revised({ 'parts/frame/z': quantity(2) }), set('failure', 'f', { effect: 'noise' }));
    const merged = merge(one, other);
    expect(conflicts(merged)).toEqual([]);
    const after = written(one, merged);
    const [first] = other.slice(-2);
    expect(after.at(-2)).toMatchObject({ by: 'C', at: AT, merged: { seq: first?.seq, hash: first?.hash } });
    const { revision, failure } = stateOf(after);
    expect(revision.r?.parts.frame).toMatchObject({ mass: quantity(1), z: quantity(2) });
    expect(failure.f?.effect).toBe('noise');
  });

  it('takes the same value set on both sides for no conflict', () => {
    const change = revised({ reason: 'lighter' });
    const merged = merge(ours(change), theirs(change));
    expect(conflicts(merged)).toEqual([]);
  });

  it('takes later work of theirs on top of an earlier merge', () => {
    const other = theirs(revised({ 'parts/frame/z': quantity(2) }), entry('e2', 2, 'theirs'));
    const one = written(ours(entry('e9', 2, 'ours')), merge(ours(entry('e9', 2, 'ours')), other));
    const more = continued(other, [set('entry', 'e2', { text: 'more' })], 'C');
    const merged = merge(one, more);
    expect(merged).toMatchObject({ kind: 'combined', conflicts: [], notes: [], additions: [{ by: 'C' }] });
    expect(stateOf(written(one, merged)).entry.e2).toMatchObject({ text: 'more', number: 3 });
  });
});

describe('merging changes of the same place', () => {
  const one = ours(revised({ reason: 'ours' }));
  const other = theirs(revised({ reason: 'between' }), revised({ reason: 'theirs' }));

  it('asks, and adds nothing while it is not decided', () => {
    expect(merge(one, other)).toMatchObject({
      additions: [],
      conflicts: [{ kind: 'revision', id: 'r', path: 'reason', ours: 'ours', theirs: 'theirs' }],
    });
  });

  it.each([
    [takeOurs, 'ours'],
    [takeTheirs, 'theirs'],
  ])('leaves the chosen value standing, and the other in the history', (choose, value) => {
    const after = written(one, merge(one, other, choose));
    expect(stateOf(after).revision.r?.reason).toBe(value);
    const said = after.flatMap(({ change }) =>
      change.op === 'set' ? change.set.map((each) => each.value) : [],
    );
    expect(said).toEqual(expect.arrayContaining(['ours', 'between', 'theirs']));
    expect(merge(after, other)).toMatchObject({ kind: 'nothing new' });
  });

  it('asks about the wider place where one side took away what the other changed in', () => {
    const away = ours(revised({ 'parts/frame': undefined }));
    const changed = theirs(revised({ 'parts/frame/mass': quantity(9) }));
    const [conflict, ...others] = conflicts(merge(away, changed));
    expect(others).toEqual([]);
    expect(conflict).toMatchObject({ path: 'parts/frame', theirs: { name: 'Frame', mass: quantity(9) } });
    expect(conflict).not.toHaveProperty('ours');
    expect(stateOf(written(away, merge(away, changed, takeOurs))).revision.r?.parts.frame).toBeUndefined();
    const back = stateOf(written(away, merge(away, changed, takeTheirs))).revision.r?.parts.frame;
    expect(back).toMatchObject({ name: 'Frame', mass: quantity(9) });
  });

  it('asks about a list as a whole', () => {
    const shorter = ours(set('failure', 'f', { 'causes/0': undefined }));
    const longer = theirs(set('failure', 'f', { 'causes/2': 'Wrong drill' }));
    expect(conflicts(merge(shorter, longer))).toMatchObject([{ path: 'causes' }]);
    const after = stateOf(written(shorter, merge(shorter, longer, takeTheirs)));
    expect(after.failure.f?.causes).toEqual(['It moved', 'The seat is wide', 'Wrong drill']);
  });

  it('asks about the whole where two places only fit together as one side had them', () => {
    const box = ours(
      revised({
        'parts/disc/body/shape': 'point',
        'parts/disc/body/axis': undefined,
        'parts/disc/body/diameter': undefined,
      }),
    );
    const longer = theirs(revised({ 'parts/disc/body/length': quantity(0.02) }));
    expect(conflicts(merge(box, longer))).toMatchObject([{ path: 'parts/disc/body' }]);
    const body = stateOf(written(box, merge(box, longer, takeTheirs))).revision.r?.parts.disc?.body;
    expect(body).toMatchObject({ shape: 'cylinder', length: quantity(0.02) });
  });
});

describe('merging what both sides made', () => {
  it('gives a number that is taken up to the next one, and says so', () => {
    const one = ours(entry('ea', 2, 'ours'), entry('eb', 3, 'ours'));
    const other = theirs(entry('ec', 2, 'theirs'), entry('ed', 4, 'theirs'));
    const merged = merge(one, other);
    expect(merged).toMatchObject({
      notes: [{ code: 'merge.renumbered', place: 'entry', figures: { was: 2, number: 5 } }],
    });
    const numbers = Object.values(stateOf(written(one, merged)).entry).map(({ number }) => number);
    expect(numbers).toEqual([1, 2, 3, 5, 4]);
  });

  it('gives a revision letter that is taken the next one', () => {
    const made = (id: string): Change =>
      create('revision', id, { prototype: 'p', letter: 'B', createdAt: AT });
    const merged = merge(ours(made('rb')), theirs(made('rc')));
    expect(merged).toMatchObject({
      notes: [{ code: 'merge.relettered', figures: { was: 'B', letter: 'C' } }],
    });
  });

  it('keeps two different records of one name under two names, and what refers to theirs with it', () => {
    const one = ours(create('card', 'k', { ...card, number: 2, title: 'Ours' }));
    const other = theirs(
      create('card', 'k', { ...card, number: 3, title: 'Theirs' }),
      set('card', 'k', { purpose: 'x' }),
      create('run', 'k1', { ...run, card: 'k', number: 2 }),
      set('run', 'k1', { summary: 'went well' }),
    );
    const merged = merge(one, other);
    expect(notes(merged)).toEqual(['merge.renamed']);
    const state = stateOf(written(one, merged));
    expect(state.card.k?.title).toBe('Ours');
    expect(state.card['k-2']).toMatchObject({ title: 'Theirs', purpose: 'x' });
    expect(state.run.k1).toMatchObject({ card: 'k-2', summary: 'went well' });
  });

  it('takes the same record made alike on both sides once', () => {
    const one = ours(entry('e2', 2, 'alike'));
    const other = theirs(entry('e2', 2, 'alike'), set('entry', 'e2', { title: 'T' }));
    const merged = merge(one, other);
    expect(merged).toMatchObject({ notes: [], additions: [{ change: { op: 'set' } }] });
  });
});

describe('merging a revision that was issued', () => {
  const issue = (by: string): Change => revised({ status: 'issued', issuedAt: AT, issuedBy: by });

  it('by ours and changed by theirs lets theirs go on as a new one', () => {
    const one = ours(issue('B'));
    const other = theirs(revised({ weighedMass: quantity(3) }), entry('e2', 2, 'with it'));
    const moved = continued(other, [set('entry', 'e', { revision: 'r' })], 'C');
    const merged = merge(one, moved);
    expect(notes(merged)).toEqual(['merge.relettered', 'merge.issued-apart'].toReversed());
    const state = stateOf(written(one, merged));
    expect(state.revision.r).toMatchObject({ status: 'issued', weighedMass: quantity(2.3, 'kg') });
    expect(state.revision['r-2']).toMatchObject({
      letter: 'B',
      from: 'r',
      status: 'draft',
      weighedMass: quantity(3),
    });
    expect(state.entry.e2?.revision, 'what they did was done with theirs').toBe('r-2');
  });

  it('by theirs and changed by ours never issues what nobody has issued', () => {
    const one = ours(revised({ weighedMass: quantity(3) }));
    const other = theirs(revised({ reason: 'final' }), issue('C'));
    const state = stateOf(written(one, merge(one, other)));
    expect(state.revision.r).toMatchObject({ status: 'draft', weighedMass: quantity(3) });
    expect(state.revision['r-2']).toMatchObject({
      status: 'issued',
      reason: 'final',
      weighedMass: quantity(2.3, 'kg'),
    });
  });

  it('by theirs and left alone by ours is issued', () => {
    const one = ours(set('notebook', 'n', { name: 'Other' }));
    const state = stateOf(written(one, merge(one, theirs(issue('C')))));
    expect(state.revision.r?.issuedBy).toBe('C');
  });

  it('by both with the same content stands as ours, and is told', () => {
    const merged = merge(ours(issue('B')), theirs(issue('C')));
    expect(merged).toMatchObject({ kind: 'combined', additions: [], conflicts: [] });
    expect(notes(merged)).toEqual(['merge.issued-twice']);
  });

  it('takes later changes of theirs to the new one', () => {
    const one = ours(issue('B'));
    const other = theirs(revised({ weighedMass: quantity(3) }));
    const after = written(one, merge(one, other));
    const more = continued(other, [revised({ reason: 'later' })], 'C');
    const state = stateOf(written(after, merge(after, more)));
    expect(state.revision['r-2']).toMatchObject({ reason: 'later', weighedMass: quantity(3) });
    expect(Object.keys(state.revision)).toEqual(['r', 'r-2']);
  });
});

const card = {
  prototype: 'p',
  revision: 'r',
  template: 'bench-spin',
  purpose: '',
  setUp: '',
  prerequisites: '',
  steps: [],
  createdAt: AT,
};
const run = {
  prototype: 'p',
  revision: 'r',
  startedAt: AT,
  startedBy: 'C',
  fingerprint: '0123456789abcdef',
  items: [],
};
