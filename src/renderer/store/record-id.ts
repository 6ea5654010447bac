/** Names for new records: short, unique across people who work on copies of one notebook. */
import type { RecordKind } from '../../notebook/index.ts';

const LETTERS = 'abcdefghijkmnpqrstuvwxyz23456789';

/** `part-7f3k…`: 60 random bits after the kind. */
export function newId(kind: RecordKind | 'part' | 'section' | 'item'): string {
  const random = crypto.getRandomValues(new Uint8Array(12));
  return `${kind}-${[...random].map((byte) => LETTERS.charAt(byte % LETTERS.length)).join('')}`;
}

/** The time as the records keep it: RFC 3339 with the offset of this place. */
export function now(date = new Date()): string {
  const offset = -date.getTimezoneOffset();
  const local = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, 19);
  if (offset === 0) return `${local}Z`;
  const pad = (n: number): string => String(Math.floor(Math.abs(n))).padStart(2, '0');
  return `${local}${offset < 0 ? '-' : '+'}${pad(offset / 60)}:${pad(offset % 60)}`;
}
