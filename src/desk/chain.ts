/**
 * The chain of a journal's bytes followed without reading what the lines say, a piece at a time: copying years of work
 * must not hold up the writing of the next change.
 */
import { setImmediate as breath } from 'node:timers/promises';
import { noHash, sealedHash } from './journal-line.ts';

export interface Chain {
  /** Bytes from the start that are sound and end with a whole group; 0 where not even the heading is sound. */
  readonly length: number;
  /** Hash of the last line of these. */
  readonly head: string;
  /** The first line that does not fit, where it cannot be a write cut short or under way. */
  readonly damagedLine?: number;
  /** Hashes of the lines, the heading's first; entry n has the one at n. */
  readonly heads: readonly string[];
}

const LINES_AT_ONCE = 2000;

/** Follows the chain from the first line on, as far as it goes. */
export async function followChain(bytes: Uint8Array): Promise<Chain> {
  const ends: { readonly end: number; readonly head: string }[] = [];
  let head = noHash;
  let start = 0;
  let damagedLine: number | undefined;
  for (;;) {
    if (ends.length % LINES_AT_ONCE === LINES_AT_ONCE - 1) await breath();
    const newline = bytes.indexOf(10, start);
    if (newline < 0) break;
    const hash = sealedHash(bytes.subarray(start, newline), head);
    if (hash === undefined) {
      damagedLine = ends.length + 1;
      break;
    }
    head = hash;
    start = newline + 1;
    ends.push({ end: start, head });
  }
  const whole = ends.findLast(({ end }, index) => isWhole(bytes.subarray(ends[index - 1]?.end ?? 0, end)));
  return {
    length: whole?.end ?? 0,
    head: whole?.head ?? noHash,
    ...(damagedLine === undefined ? {} : { damagedLine }),
    heads: ends.map((each) => each.head),
  };
}

/** Whether no line of the same group is still to come. */
function isWhole(line: Uint8Array): boolean {
  const read: unknown = JSON.parse(Buffer.from(line).toString('utf8'));
  return !(
    typeof read === 'object' &&
    read !== null &&
    'more' in read &&
    typeof read.more === 'number' &&
    read.more > 0
  );
}
