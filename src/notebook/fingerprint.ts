/**
 * A short name for what a revision physically is: changes whenever a figure, a part or a setting does, and not with
 * what is said about the revision (its letter, status, dates, reason) or with the order in which rows are shown.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Revision } from './revision.ts';

/** First 16 hexadecimal digits of the SHA-256 of the revision's physical data, keys in order. */
export function fingerprint(revision: Revision): string {
  const {
    status: _s,
    issuedAt: _at,
    issuedBy: _by,
    createdAt: _c,
    reason: _r,
    from: _f,
    letter: _l,
    ...data
  } = revision;
  return bytesToHex(sha256(utf8ToBytes(canonical(data)))).slice(0, 16);
}

/** JSON with sorted keys, no white space and no row order, so that equal data give equal text. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    return `{${Object.entries(value)
      .filter(([key, member]) => key !== 'order' && member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([key, member]) => `${JSON.stringify(key)}:${canonical(member)}`)
      .join(',')}}`;
  }
  return JSON.stringify(value);
}
