/** What runs and cards gained later is optional: a record from before reads as it always did. */
import { describe, expect, it } from 'vitest';
import { create, set } from './change.ts';
import { AT, creations, sample } from './sample.ts';
import { apply, emptyState } from './state.ts';

describe('a run from before waits and overrides', () => {
  it('reads without either', () => {
    expect(sample.run.x).not.toHaveProperty('overrides');
    expect(sample.run.x).not.toHaveProperty('waits');
    expect(sample.card.c).not.toHaveProperty('carriedFrom');
    expect(apply(emptyState, creations.run).ok).toBe(true);
  });

  it('takes its first override and its first wait', () => {
    const override = {
      code: 'checklist.open',
      subject: 'list.plug',
      what: 'It is open.',
      name: 'B',
      reason: 'Lost',
      at: AT,
    };
    const wait = { at: AT, by: 'B', session: 'one', reading: 0 };
    const change = set('run', 'x', { 'overrides/override-1': override, 'waits/list.plug': wait });
    const after = apply(sample, change);
    expect(after.ok && after.value.run.x).toMatchObject({
      overrides: { 'override-1': override },
      waits: { 'list.plug': wait },
    });
  });
});

describe('an override', () => {
  const override = { code: 'c', subject: '', what: 'w', name: 'B', reason: 'r', at: AT };
  const taken = (changes: object): boolean =>
    apply(sample, set('run', 'x', { 'overrides/one': { ...override, ...changes } })).ok;

  it.each([{ name: '' }, { reason: '' }, { what: '' }, { note: 'x' }, { at: undefined }])(
    'is no record with %j',
    (changes) => {
      expect(taken({})).toBe(true);
      expect(taken(changes)).toBe(false);
    },
  );
});

it('a wait cannot have begun before its clock', () => {
  const wait = { at: AT, by: 'B', session: 'one', reading: -1 };
  expect(apply(sample, set('run', 'x', { 'waits/list.plug': wait })).ok).toBe(false);
  const run = creations.run.op === 'create' ? (creations.run.value as object) : {};
  const infinite = { ...run, waits: { 'list.plug': { ...wait, reading: Number.POSITIVE_INFINITY } } };
  expect(apply(emptyState, create('run', 'y', infinite as never)).ok).toBe(false);
});
