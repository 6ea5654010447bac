import { describe, expect, it } from 'vitest';
import { change, recordKind } from '../../notebook/index.ts';
import { newId, now } from './record-id.ts';

/** A moment seen from a place whose clocks are ahead of UTC by so many minutes. */
function seenFrom(minutesAhead: number, moment: string): Date {
  const date = new Date(moment);
  date.getTimezoneOffset = () => -minutesAhead;
  return date;
}

describe('the name of a new record', () => {
  it.each(recordKind.options)('says that it is a %s, and is one that a change may carry', (kind) => {
    const id = newId(kind);
    expect(id.startsWith(`${kind}-`)).toBe(true);
    expect(change.safeParse({ op: 'create', kind, id, value: {} }).success).toBe(true);
  });

  it('is not given twice, and has no letter that is read as another', () => {
    const names = Array.from({ length: 5000 }, () => newId('part').slice('part-'.length));
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z2-9]{12}$/);
    expect(names.join('')).not.toMatch(/[lo01]/);
  });

  it('uses every letter about as often: none carries less than its share', () => {
    const counts = new Map<string, number>();
    const letters = Array.from({ length: 4000 }, () => newId('part').slice('part-'.length)).join('');
    for (const letter of letters) counts.set(letter, (counts.get(letter) ?? 0) + 1);
    expect(counts.size).toBe(32);
    // 48 000 letters, 1500 of each with a standard deviation of 38: ten of them is no accident.
    for (const [letter, count] of counts) expect(Math.abs(count - 1500), letter).toBeLessThan(380);
  });
});

describe('the time as records keep it', () => {
  it.each([
    [0, '2026-03-01T09:00:00.000Z', '2026-03-01T09:00:00Z'],
    [60, '2026-03-01T09:00:00.999Z', '2026-03-01T10:00:00+01:00'],
    [330, '2026-03-01T20:00:00Z', '2026-03-02T01:30:00+05:30'],
    [345, '2026-03-01T20:00:00Z', '2026-03-02T01:45:00+05:45'],
    [-210, '2026-03-01T02:00:00Z', '2026-02-28T22:30:00-03:30'],
    [-720, '2026-01-01T11:59:59Z', '2025-12-31T23:59:59-12:00'],
    [840, '2025-12-31T12:00:00Z', '2026-01-01T02:00:00+14:00'],
    [-30, '2026-03-01T00:10:00Z', '2026-02-28T23:40:00-00:30'],
  ])('%i minutes ahead, %s is %s', (ahead, moment, written) => {
    const kept = now(seenFrom(ahead, moment));
    expect(kept).toBe(written);
    expect(Math.floor(Date.parse(kept) / 1000)).toBe(Math.floor(Date.parse(moment) / 1000));
  });

  it('is that of this moment where none is named', () => {
    const before = Math.floor(Date.now() / 1000) * 1000;
    const kept = Date.parse(now());
    expect(kept).toBeGreaterThanOrEqual(before);
    expect(kept).toBeLessThanOrEqual(Date.now());
  });
});
