import { describe, expect, it } from 'vitest';
import type { LogEntry } from '../../../notebook/index.ts';
import { entriesOf, filterEntries, nextNumber } from './entry-search.ts';

const entry = (part: Partial<LogEntry>): LogEntry => ({
  prototype: 'p',
  revision: 'r',
  number: 1,
  title: '',
  at: '2026-11-01T10:00:00Z',
  author: 'Ada',
  text: '',
  attachments: {},
  ...part,
});

describe('the list of entries', () => {
  const entries = {
    old: entry({ number: 1, title: 'First spin', text: 'The set screw came loose.' }),
    new: entry({
      number: 3,
      at: '2026-11-03T10:00:00Z',
      title: 'Heavier ballast',
      text: 'Spin at 6000 rpm.',
    }),
    other: entry({ number: 2, prototype: 'q', at: '2026-11-04T10:00:00Z' }),
    zone: entry({ number: 4, at: '2026-11-03T12:30:00+03:00', title: 'Earlier than it looks' }),
  };
  const ids = (filter: string): string[] => filterEntries(entriesOf(entries, 'p'), filter).map(([id]) => id);

  it('shows the prototype’s own entries, newest first, whatever the time zone they were written in', () => {
    expect(ids('')).toEqual(['new', 'zone', 'old']);
  });

  it('a filter asks for every word, in any order and case', () => {
    expect(ids('SPIN')).toEqual(['new', 'old']);
    expect(ids('spin screw')).toEqual(['old']);
    expect(ids('spin absent')).toEqual([]);
  });

  it('number, date and author are searched as well', () => {
    expect(ids('#3')).toEqual(['new']);
    expect(ids('2026-11-01')).toEqual(['old']);
    expect(ids('ada')).toHaveLength(3);
  });

  it('the next number counts over the whole notebook', () => {
    expect(nextNumber(entries)).toBe(5);
    expect(nextNumber({})).toBe(1);
  });
});
