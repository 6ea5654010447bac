import { describe, expect, it } from 'vitest';
import { difference } from './difference.ts';

describe('a text from elsewhere', () => {
  it.each([
    ['abc', 'abXc', { from: 2, to: 2, insert: 'X' }],
    ['abXc', 'abc', { from: 2, to: 3, insert: '' }],
    ['aa', 'aaa', { from: 2, to: 2, insert: 'a' }],
    ['', 'new', { from: 0, to: 0, insert: 'new' }],
    ['all', '', { from: 0, to: 3, insert: '' }],
    ['same', 'same', { from: 4, to: 4, insert: '' }],
  ])('from %j to %j changes one stretch', (before, after, change) => {
    expect(difference(before, after)).toEqual(change);
    expect(before.slice(0, change.from) + change.insert + before.slice(change.to)).toBe(after);
  });
});
