/**
 * The whole journal read and checked, without touching it: what is sound, and whether the rest is a write cut
 * short (which may be set aside) or damage (which nobody but the person may mend).
 */
import type { JournalEntry } from '../notebook/index.ts';
import { bad, good, type Result } from '../quantity/index.ts';
import { type JournalHeading, type LineFault, readEntry, readHeading } from './journal-line.ts';

export interface JournalReading {
  readonly heading: JournalHeading;
  readonly entries: readonly JournalEntry[];
  /** Bytes of the whole file. */
  readonly length: number;
  /** Bytes from the start of the file that are sound. */
  readonly soundLength: number;
  /** Sound lines, the heading included. */
  readonly soundLines: number;
  /** Hash of the last sound line. */
  readonly head: string;
  /** The end of a write that was cut short: from this line on, these bytes. Never acknowledged. */
  readonly torn?: { readonly line: number; readonly bytes: Uint8Array };
  /** The first damaged line. */
  readonly damage?: { readonly line: number; readonly detail: string };
}

/** A line of the file; `ended` false for a last line without its newline. */
interface RawLine {
  readonly bytes: Uint8Array;
  readonly start: number;
  readonly ended: boolean;
}

/** Fails only when the first line is not the heading of a journal that this program can read. */
export function readJournal(bytes: Uint8Array): Result<JournalReading> {
  const lines = split(bytes);
  const first = lines[0];
  if (first === undefined || !first.ended) {
    return bad('journal.not-a-journal', 'Journal, line 1', { detail: 'it is empty or cut short' });
  }
  const read = readHeading(first.bytes);
  if (!read.ok) return read;

  const entries: JournalEntry[] = [];
  let head = read.value.hash;
  let awaited = 0; // lines of the group being read that are still to come
  /** Where the group being read began: a group is visible as a whole or not at all. */
  let group = { index: 1, entries: 0, head };

  const reading = (end: number, rest: Pick<JournalReading, 'torn' | 'damage'>): Result<JournalReading> =>
    good({
      heading: read.value.heading,
      entries,
      length: bytes.length,
      soundLength: lines[end]?.start ?? bytes.length,
      soundLines: end,
      head,
      ...rest,
    });
  const tornFromGroup = (): Result<JournalReading> => {
    entries.length = group.entries;
    head = group.head;
    const start = lines[group.index]?.start ?? bytes.length;
    return reading(group.index, { torn: { line: group.index + 1, bytes: bytes.subarray(start) } });
  };

  for (let index = 1; index < lines.length; index++) {
    const line = lines[index] as RawLine;
    if (awaited === 0) group = { index, entries: entries.length, head };
    const result = readEntry(line.bytes, head, entries.length + 1);
    const broken = line.ended ? (result.ok ? undefined : result.fault) : unended;
    if (broken !== undefined) {
      if (isCutShort(lines, index, broken)) return tornFromGroup();
      return reading(index, { damage: { line: index + 1, detail: broken.detail } });
    }
    if (!result.ok) break; // cannot be: a fault was dealt with above
    const { entry, more } = result.value;
    if (awaited > 0 && more !== awaited - 1) {
      return reading(index, { damage: { line: index + 1, detail: 'it does not belong to the line before' } });
    }
    entries.push(entry);
    head = result.hash;
    awaited = more;
  }
  return awaited > 0 ? tornFromGroup() : reading(lines.length, {});
}

const unended: LineFault = { detail: 'it has no end', json: false, more: 0 };

/**
 * Whether everything from the broken line on can be the remains of one single write. A write that the power
 * cut leaves a line without its end, an end that is not JSON, or a hole of zero bytes before later lines of
 * the same group; a line that is JSON but does not fit the chain was changed by somebody.
 */
function isCutShort(lines: readonly RawLine[], index: number, broken: LineFault): boolean {
  if (broken.json) return false;
  const line = lines[index];
  const isLast = index === lines.length - 1;
  if (!isLast && !line?.bytes.includes(0)) return false;
  for (let later = index + 1; later < lines.length; later++) {
    const { bytes, ended } = lines[later] as RawLine;
    if (!ended) continue;
    const result = readEntry(bytes, '', 0);
    const readable = result.ok || result.fault.json;
    const endsGroup = readable && (result.ok ? result.value.more : result.fault.more) === 0;
    if (endsGroup !== (readable && later === lines.length - 1)) return false;
  }
  return true;
}

function split(bytes: Uint8Array): readonly RawLine[] {
  const lines: RawLine[] = [];
  let start = 0;
  while (start < bytes.length) {
    const newline = bytes.indexOf(10, start);
    const end = newline < 0 ? bytes.length : newline;
    lines.push({ bytes: bytes.subarray(start, end), start, ended: newline >= 0 });
    start = end + 1;
  }
  return lines;
}
