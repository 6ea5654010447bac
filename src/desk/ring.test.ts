import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { timesKept } from './ring.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const at = (text: string): number => Date.parse(`${text}Z`);
const now = at('2026-03-18T12:30:00'); // a Wednesday

describe('the ring of copies', () => {
  it('keeps the newest of each hour for a day', () => {
    const times = ['12:05', '12:25', '11:00', '10:59', '10:01'].map((time) => at(`2026-03-18T${time}:00`));
    expect(timesKept(times, now)).toEqual([times[1], times[2], times[3]]);
  });

  it('keeps the newest of each day for a week, and the newest of each week for a year', () => {
    const times = [
      ...['2026-03-18T12:00:00', '2026-03-17T09:00:00', '2026-03-17T08:00:00'], // the last more than a day ago
      ...['2026-03-15T23:59:00', '2026-03-15T10:00:00'], // Sunday
      ...['2026-03-10T10:00:00', '2026-03-09T10:00:00'], // the week before, longer than seven days ago
      '2025-04-01T10:00:00',
    ].map(at);
    expect(timesKept(times, now)).toEqual([times[0], times[1], times[3], times[7]]);
  });

  it('begins a week on Monday', () => {
    const sunday = at('2026-02-01T23:59:59');
    const monday = at('2026-02-02T00:00:00');
    expect(timesKept([sunday, monday], now)).toEqual([sunday, monday]);
    expect(timesKept([monday, monday + 6 * DAY], now)).toEqual([monday + 6 * DAY]);
  });

  it('never holds more than 24 or 25 of a day, 8 of days, 53 of weeks', () => {
    const times = Array.from({ length: 20_000 }, (_, index) => now - index * 30 * MINUTE);
    const kept = timesKept(times, now);
    expect(kept.length).toBeLessThanOrEqual(25 + 8 + 53);
    expect(kept.length).toBeGreaterThan(24 + 6 + 50);
  });

  it('keeps the newest of all, however old, and all from the future', () => {
    expect(timesKept([now - 900 * DAY, now - 800 * DAY], now)).toEqual([now - 800 * DAY]);
    expect(timesKept([now + HOUR, now + HOUR + 1, now - 900 * DAY], now)).toEqual([
      now + HOUR,
      now + HOUR + 1,
    ]);
    expect(timesKept([], now)).toEqual([]);
  });

  it('thinned out at each copy holds the same as thinned out once at the end', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 20 * DAY }), { maxLength: 60 }), (gaps) => {
        let time = now;
        let held: readonly number[] = [];
        const all: number[] = [];
        for (const gap of gaps) {
          time += gap;
          all.push(time);
          held = timesKept([...held, time], time);
        }
        expect(held).toEqual(timesKept(all, time));
      }),
    );
  });
});
