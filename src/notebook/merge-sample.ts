/** Journals for the tests of merging: chained in the manner of the real ones, each hash over all that stands before. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Change } from './change.ts';
import type { Merge } from './merge.ts';
import type { ChainedEntry } from './merge-fork.ts';
import { AT } from './sample.ts';

/** The entries with the changes after them, chained as a journal chains them. */
export function continued(
  before: readonly ChainedEntry[],
  changes: readonly (Change | Omit<ChainedEntry, 'seq' | 'hash'>)[],
  by = 'B',
): readonly ChainedEntry[] {
  const entries = [...before];
  for (const each of changes) {
    const entry = 'op' in each ? { at: AT, by, change: each } : each;
    const text = `${entries.at(-1)?.hash ?? ''}${JSON.stringify(entry)}`;
    const hash = bytesToHex(sha256(utf8ToBytes(text)));
    entries.push({ seq: entries.length + 1, ...entry, hash });
  }
  return entries;
}

/** Ours with the merge written. */
export function written(ours: readonly ChainedEntry[], merged: Merge): readonly ChainedEntry[] {
  if (merged.kind !== 'combined') throw new Error(merged.kind);
  return continued(
    ours,
    merged.additions.map((addition) => ({ at: AT, by: 'M', ...addition })),
  );
}
