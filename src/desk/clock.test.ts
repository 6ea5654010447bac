import { afterEach, describe, expect, it } from 'vitest';
import { fileStamp, timeStamp } from './clock.ts';

const zone = process.env.TZ;
afterEach(() => {
  process.env.TZ = zone;
});

describe('a time stamp', () => {
  // Offsets of the zones on these days: IANA time zone database.
  it.each([
    ['UTC', '2026-03-01T09:00:00.250Z', '2026-03-01T09:00:00.250+00:00'],
    ['Europe/Berlin', '2026-03-29T00:59:59Z', '2026-03-29T01:59:59.000+01:00'],
    ['Europe/Berlin', '2026-03-29T01:00:00Z', '2026-03-29T03:00:00.000+02:00'],
    ['America/St_Johns', '2026-01-01T00:00:00Z', '2025-12-31T20:30:00.000-03:30'],
    ['Asia/Kathmandu', '2026-01-01T00:00:00Z', '2026-01-01T05:45:00.000+05:45'],
  ])('in %s carries the offset of that moment', (place, instant, expected) => {
    process.env.TZ = place;
    expect(timeStamp(new Date(instant))).toBe(expected);
    expect(new Date(expected).getTime()).toBe(new Date(instant).getTime());
  });

  it('in a name of a file is UTC without punctuation', () => {
    process.env.TZ = 'Asia/Kathmandu';
    expect(fileStamp(new Date('2026-03-01T09:05:07.999Z'))).toBe('20260301T090507Z');
  });
});
