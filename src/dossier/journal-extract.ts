/**
 * The journal inside a dossier, read without mercy: every line has its newline, its number and its hash, every change
 * fits the records before it. A notebook that is being opened may have a torn end, which the desk sets aside; what
 * somebody hands over may not. Written from docs/journal.md, apart from the desk's own reader; a test holds the two
 * against each other.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { z } from 'zod';
import { change, type JournalEntry, type NotebookState, replay } from '../notebook/index.ts';
import { bad, good, type Result, sentence } from '../quantity/index.ts';
import { readJson } from './json.ts';

export interface JournalExtract {
  /** Identity of the notebook. */
  readonly notebook: string;
  readonly createdAt: string;
  readonly entries: readonly JournalEntry[];
  /** Hash of the last line. */
  readonly head: string;
  readonly state: NotebookState;
}

const VERSION = 1;

const heading = z.object({
  format: z.literal('counterpoise journal'),
  version: z.number().int().positive(),
  notebook: z.string().min(1).max(64),
  createdAt: z.string().max(40),
});

const entryLine = z.object({
  seq: z.number().int().positive(),
  at: z.string().max(40),
  by: z.string().max(1000),
  more: z.number().int().positive().optional(),
  merged: z.object({ seq: z.number().int().positive(), hash: z.string().regex(/^[0-9a-f]{64}$/) }).optional(),
  change,
});

/** Bytes of `,"hash":"` + 64 digits + `"}`, which every line ends with. */
const SEAL = 75;
const NEWLINE = 10;
const BRACE = utf8ToBytes('}');

/** Fails with `dossier.invalid` or `dossier.newer`, the line as its place. */
export function readJournalExtract(bytes: Uint8Array): Result<JournalExtract> {
  const lines = linesOf(bytes);
  if (lines === undefined) return invalid(1, 'it is empty or has no end');
  const [first = new Uint8Array(), ...later] = lines;
  let before = '0'.repeat(64);
  const opened = unsealed(first, before);
  if (typeof opened === 'string') return invalid(1, opened);
  const begun = heading.safeParse(opened.value);
  if (!begun.success) return invalid(1, 'it is not the heading of a journal');
  const { version, notebook, createdAt } = begun.data;
  if (version > VERSION) return bad('dossier.newer', 'journal, line 1', { version, known: VERSION });
  before = opened.hash;

  const entries: JournalEntry[] = [];
  let awaited = 0; // lines of the same group that are still to come
  for (const [index, bytesOfLine] of later.entries()) {
    const line = unsealed(bytesOfLine, before);
    if (typeof line === 'string') return invalid(index + 2, line);
    const parsed = entryLine.safeParse(line.value);
    if (!parsed.success) return invalid(index + 2, 'it is not an entry that this program knows');
    const { more = 0, ...entry } = parsed.data;
    if (entry.seq !== index + 1)
      return invalid(index + 2, `its number is ${entry.seq} where ${index + 1} is due`);
    if (awaited > 0 && more !== awaited - 1)
      return invalid(index + 2, 'it does not belong to the line before');
    entries.push(entry);
    awaited = more;
    before = line.hash;
  }
  if (awaited > 0) return invalid(lines.length, `${awaited} more lines of its group are missing`);
  const { state, refused } = replay(entries);
  const [refusal] = refused;
  if (refusal) {
    const why = sentence(refusal.problem).replace(/[.\s]+$/, '');
    return invalid(refusal.seq + 1, `it does not fit what was recorded before it (${why})`);
  }
  return good({ notebook, createdAt, entries, head: before, state });
}

function invalid(line: number, detail: string): Result<never> {
  return bad('dossier.invalid', `journal, line ${line}`, { detail });
}

/** Lines without their newlines; undefined where the last one has none. */
function linesOf(bytes: Uint8Array): readonly Uint8Array[] | undefined {
  if (bytes.at(-1) !== NEWLINE) return undefined;
  const lines: Uint8Array[] = [];
  for (let start = 0; start < bytes.length; ) {
    const end = bytes.indexOf(NEWLINE, start);
    lines.push(bytes.subarray(start, end));
    start = end + 1;
  }
  return lines;
}

/** The object of a line and its hash, or what is wrong with it. */
function unsealed(
  line: Uint8Array,
  before: string,
): { readonly value: unknown; readonly hash: string } | string {
  const cut = line.length - SEAL;
  const seal = new TextDecoder('latin1').decode(line.subarray(Math.max(0, cut)));
  const [, hash] = /^,"hash":"([0-9a-f]{64})"\}$/.exec(seal) ?? [];
  if (hash === undefined) return 'it has no hash at its end';
  const sum = sha256
    .create()
    .update(utf8ToBytes(before))
    .update(line.subarray(0, cut))
    .update(BRACE)
    .digest();
  if (bytesToHex(sum) !== hash) return 'its hash does not match its content and the line before';
  const value = readJson(line);
  return value.ok ? { value: value.value, hash } : value.reason;
}
