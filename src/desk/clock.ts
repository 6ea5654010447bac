/** Time stamps for people. Order comes from sequence numbers alone, so a clock that goes back does no harm. */

/** RFC 3339 with the local offset, to the millisecond: `2026-03-29T10:15:00.250+02:00`. */
export function timeStamp(at: Date): string {
  const offset = -at.getTimezoneOffset();
  const local = new Date(at.getTime() + offset * 60_000).toISOString().slice(0, -1);
  const size = Math.abs(offset);
  return `${local}${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** UTC without punctuation, for names of files: `20260329T081500Z`. */
export function fileStamp(at: Date): string {
  return `${at.toISOString().slice(0, 19).replaceAll('-', '').replaceAll(':', '')}Z`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}
