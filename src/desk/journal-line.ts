/**
 * One line of the journal, written and read: JSON whose last member is a SHA-256 over the line before and
 * over its own bytes. The exact form is in docs/journal.md; other programs may rely on it.
 */
import { createHash } from 'node:crypto';
import { z } from 'zod';
import { change, type JournalEntry } from '../notebook/index.ts';
import { bad, good, type Result } from '../quantity/index.ts';

export const journalFormat = 'counterpoise journal';
export const journalVersion = 1;

/** Stands for the hash before the first line. */
export const noHash = '0'.repeat(64);

const heading = z.object({
  format: z.literal(journalFormat),
  version: z.number().int().positive(),
  notebook: z.string().min(1).max(64),
  createdAt: z.string(),
});
export type JournalHeading = z.infer<typeof heading>;

const entryLine = z.object({
  seq: z.number().int().positive(),
  at: z.string(),
  by: z.string(),
  more: z.number().int().positive().optional(),
  merged: z.object({ seq: z.number().int().positive(), hash: z.string().regex(/^[0-9a-f]{64}$/) }).optional(),
  change,
});

/** A line with its hash, ready to be written, newline included. */
export interface SealedLine {
  readonly bytes: Uint8Array;
  readonly hash: string;
}

/** The object as a line that follows the line with hash `before`. */
export function seal(content: object, before: string): SealedLine {
  const body = JSON.stringify(content);
  const hash = chainHash(before, Buffer.from(body));
  return { bytes: Buffer.from(`${body.slice(0, -1)},"hash":"${hash}"}\n`), hash };
}

/**
 * Several entries that stand or fall together: each line but the last says how many of the group follow, so
 * that a group cut short by a crash is recognised and left out as a whole.
 */
export function sealGroup(entries: readonly JournalEntry[], before: string): SealedLine {
  let hash = before;
  const lines = entries.map(({ seq, at, by, merged, change: made }, index) => {
    const more = entries.length - 1 - index;
    const rest = { ...(more > 0 ? { more } : {}), ...(merged ? { merged } : {}) };
    const line = seal({ seq, at, by, ...rest, change: made }, hash);
    hash = line.hash;
    return line.bytes;
  });
  return { bytes: Buffer.concat(lines), hash };
}

/** What is wrong with a line; `json` false when it is not even JSON, as after a write cut short. */
export interface LineFault {
  readonly detail: string;
  readonly json: boolean;
  /** Lines of the same group that follow, as far as the line can be read. */
  readonly more: number;
}

export type LineReading<T> =
  | { readonly ok: true; readonly value: T; readonly hash: string }
  | { readonly ok: false; readonly fault: LineFault };

/** The first line, without its newline. */
export function readHeading(line: Uint8Array): Result<{ heading: JournalHeading; hash: string }> {
  const opened = unseal(line, noHash);
  const place = 'Journal, line 1';
  if (!opened.ok) return bad('journal.not-a-journal', place, { detail: opened.fault.detail });
  const parsed = heading.safeParse(opened.value);
  if (!parsed.success)
    return bad('journal.not-a-journal', place, { detail: 'its members are not as expected' });
  if (parsed.data.version > journalVersion) {
    return bad('journal.newer', place, { version: parsed.data.version, known: journalVersion });
  }
  return good({ heading: parsed.data, hash: opened.hash });
}

/** A later line, without its newline; `before` is the hash of the line before it, `seq` the number due. */
export function readEntry(
  line: Uint8Array,
  before: string,
  seq: number,
): LineReading<{ entry: JournalEntry; more: number }> {
  const opened = unseal(line, before);
  if (!opened.ok) return opened;
  const parsed = entryLine.safeParse(opened.value);
  if (!parsed.success) return fault('it is not an entry that this program knows', opened.value);
  const { more = 0, ...entry } = parsed.data;
  if (entry.seq !== seq) return fault(`its number is ${entry.seq} where ${seq} is due`, opened.value);
  return { ok: true, value: { entry, more }, hash: opened.hash };
}

const sealStart = ',"hash":"';
const sealLength = sealStart.length + 64 + '"}'.length;
const sealForm = /^,"hash":"([0-9a-f]{64})"\}$/;
const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

function unseal(line: Uint8Array, before: string): LineReading<unknown> {
  let value: unknown;
  try {
    value = JSON.parse(utf8.decode(line));
  } catch {
    return { ok: false, fault: { detail: 'it is not JSON', json: false, more: 0 } };
  }
  if (sealOf(line) === undefined) return fault('it has no hash at its end', value);
  const written = sealedHash(line, before);
  if (written === undefined) {
    return fault('its hash does not match its content and the line before', value);
  }
  return { ok: true, value, hash: written };
}

/** The hash that a line bears, without its newline, where it follows from its content and the line before. */
export function sealedHash(line: Uint8Array, before: string): string | undefined {
  const written = sealOf(line);
  if (written === undefined) return undefined;
  const hash = createHash('sha256').update(before, 'latin1');
  hash.update(line.subarray(0, line.length - sealLength)).update('}');
  return hash.digest('hex') === written ? written : undefined;
}

function sealOf(line: Uint8Array): string | undefined {
  const end = line.subarray(Math.max(0, line.length - sealLength));
  return sealForm.exec(Buffer.from(end).toString('latin1'))?.[1];
}

function fault(detail: string, value: unknown): { ok: false; fault: LineFault } {
  const more = typeof value === 'object' && value !== null && 'more' in value ? value.more : undefined;
  return { ok: false, fault: { detail, json: true, more: typeof more === 'number' ? more : 0 } };
}

function chainHash(before: string, body: Uint8Array): string {
  return createHash('sha256').update(before, 'latin1').update(body).digest('hex');
}
