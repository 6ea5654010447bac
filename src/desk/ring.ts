/**
 * Which copies stay. The newest of each hour for a day, of each day for a week, of each week for a year: the newest of
 * a week is the newest of its day and of its hour too, so that thinning out often keeps what thinning out once would.
 */

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;
const YEAR = 52 * WEEK;
/** The clock begins on a Thursday, weeks on a Monday. */
const MONDAY = 3 * DAY;

/**
 * The times that stay, in the order given. The newest of all stays however old it is, and so does whatever lies in the
 * future, because then the clock is not to be trusted.
 * @param times  milliseconds since 1970 in UTC, in any order
 */
export function timesKept(times: readonly number[], now: number): readonly number[] {
  const newest = new Map<string, number>();
  const hold = (slot: string, time: number): void => {
    newest.set(slot, Math.max(newest.get(slot) ?? Number.NEGATIVE_INFINITY, time));
  };
  for (const time of times) for (const slot of slotsOf(time, now)) hold(slot, time);
  const kept = new Set(newest.values());
  return times.filter((time) => kept.has(time));
}

function slotsOf(time: number, now: number): readonly string[] {
  const age = now - time;
  return [
    'newest of all',
    ...(age < 0 ? [`at ${time}`] : []),
    ...(age >= 0 && age < DAY ? [`hour ${Math.floor(time / HOUR)}`] : []),
    ...(age >= 0 && age < WEEK ? [`day ${Math.floor(time / DAY)}`] : []),
    ...(age >= 0 && age < YEAR ? [`week ${Math.floor((time + MONDAY) / WEEK)}`] : []),
  ];
}
