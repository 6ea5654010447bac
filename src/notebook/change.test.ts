import { describe, expect, it } from 'vitest';
import { change, create, set } from './change.ts';

const setting = (value: unknown, path = 'reason'): unknown => ({
  op: 'set',
  kind: 'revision',
  id: 'r',
  set: [{ path, value }],
});
const nested = (levels: number): unknown => {
  let value: unknown = 'x';
  for (let level = 0; level < levels; level++) value = level % 2 === 0 ? [value] : { a: value };
  return value;
};
const taken = (value: unknown): boolean => change.safeParse(value).success;

describe('a change as it comes in', () => {
  it('is taken in the two forms that there are', () => {
    expect(taken(create('notebook', 'n', { name: 'Rig', createdAt: '' }))).toBe(true);
    expect(taken(set('revision', 'r', { reason: 'x', from: undefined }))).toBe(true);
  });

  it.each([
    ['nothing', undefined],
    ['an unknown operation', { op: 'delete', kind: 'revision', id: 'r' }],
    ['an unknown kind', { op: 'create', kind: 'part', id: 'r', value: {} }],
    ['a kind that every object has', { op: 'create', kind: 'constructor', id: 'r', value: {} }],
    ['a name with a slash', { op: 'create', kind: 'run', id: 'a/b', value: {} }],
    ['a name that is too long', { op: 'create', kind: 'run', id: 'a'.repeat(65), value: {} }],
    ['no name', { op: 'create', kind: 'run', id: '', value: {} }],
    ['no value', { op: 'create', kind: 'run', id: 'r' }],
    ['nothing to set', { op: 'set', kind: 'run', id: 'r', set: [] }],
    ['no path', setting('x', '')],
    ['a path that is too long', setting('x', 'a'.repeat(401))],
    ['more members than there are', { ...(setting('x') as object), by: 'B' }],
    ['a number that is none', setting(Number.NaN)],
    ['a number without end', setting(Number.POSITIVE_INFINITY)],
    ['a function', setting(() => 1)],
    ['a date', setting(new Date(0))],
    ['a map', setting(new Map())],
    ['bytes', setting(new Uint8Array(2))],
    ['a big number', setting(1n)],
    ['a list with a hole', setting([1, undefined])],
    ['a member named __proto__', setting(JSON.parse('{"__proto__": {"polluted": true}}'))],
    ['one further in', setting([{ a: JSON.parse('{"__proto__": 1}') }])],
    ['forty levels', setting(nested(40))],
    ['a hundred thousand levels', setting(nested(100_000))],
  ])('%s is refused', (_what, value) => {
    expect(taken(value)).toBe(false);
  });

  it('may carry any plain data, members without a value included', () => {
    expect(taken(setting({ a: [1, 'x', null, true, { b: undefined }], constructor: 'Otto' }))).toBe(true);
    expect(taken(setting(nested(20)))).toBe(true);
    expect(taken(setting(undefined))).toBe(true);
  });
});
