/**
 * A notebook as a folder: created, opened, written, closed. Opening finds what a crash or a damaged disk left
 * behind, mends what may be mended without loss, and says what it found.
 */
import { randomUUID } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { type Change, create, type JournalEntry } from '../notebook/index.ts';
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import { addAttachment, attachmentNotes, missingAttachments, readAttachment } from './attachments.ts';
import { timeStamp } from './clock.ts';
import { errorCode, type Files, fileReason, nodeFiles, type OpenFile } from './files.ts';
import { type Journal, journal } from './journal.ts';
import { journalFormat, journalVersion, noHash, seal, sealGroup } from './journal-line.ts';
import { type JournalReading, readJournal } from './journal-reading.ts';
import { type Lock, type Processes, takeLock } from './lock.ts';
import { setAside } from './set-aside.ts';
import { nextGeneration, readGeneration } from './working-copy.ts';
import { ensureFolder, unfinished, writeWhole } from './write-whole.ts';

/** What the desk stands on; every member has the real thing as its default. */
export interface Ground {
  readonly files?: Files;
  readonly now?: () => Date;
  readonly processes?: Processes;
}

export interface NotebookFolder {
  readonly id: string;
  readonly folder: string;
  readonly entries: readonly JournalEntry[];
  readonly problems: readonly Problem[];
  readonly generation: number;
  /** Changes while open when a write could not be taken back or somebody else has written. */
  readonly readOnly: boolean;
  append(after: number, by: string, changes: readonly Change[]): Promise<Result<readonly JournalEntry[]>>;
  /** Adds entries of another copy, which have their author, time and origin already; as one group or not at all. */
  add(
    after: number,
    additions: readonly Omit<JournalEntry, 'seq'>[],
  ): Promise<Result<readonly JournalEntry[]>>;
  /** Takes over the further lines of another copy as they stand; it has to begin with all of this one. */
  continueAs(other: JournalReading, bytes: Uint8Array): Promise<Result<readonly JournalEntry[]>>;
  addAttachment(bytes: Uint8Array): Promise<Result<{ sha256: string; size: number }>>;
  readAttachment(sha256: string): Promise<Result<Uint8Array>>;
  /** Waits for writes under way, closes the journal and gives the lock back. */
  close(): Promise<void>;
}

export interface NewNotebook {
  /** Shown to people; the folder's name when absent. */
  readonly name?: string;
  readonly author: string;
  /** What the journal begins with, in place of the notebook's own record. Sequence numbers are given here. */
  readonly entries?: readonly Omit<JournalEntry, 'seq'>[];
}

/** The file that makes a folder a notebook. */
export const journalName = 'journal.jsonl';
const leftovers = new RegExp(`^(attachments|lock|journal\\.jsonl\\..*\\${unfinished})$`);

/** Makes the folder (its parent must exist) and a journal in it. Nothing is opened or locked. */
export async function createNotebook(
  folder: string,
  { name = basename(folder), author, entries }: NewNotebook,
  { files = nodeFiles, now = () => new Date() }: Ground = {},
): Promise<Result<null>> {
  const createdAt = timeStamp(now());
  const first = { at: createdAt, by: author, change: create('notebook', 'notebook', { name, createdAt }) };
  const heading = seal(
    { format: journalFormat, version: journalVersion, notebook: randomUUID(), createdAt },
    noHash,
  );
  const numbered = (entries ?? [first]).map((entry, index) => ({ ...entry, seq: index + 1 }));
  let head = heading.hash;
  const lines = numbered.map((entry) => {
    const line = sealGroup([entry], head);
    head = line.hash;
    return line.bytes;
  });
  try {
    if (!(await claimFolder(files, folder))) return bad('notebook.exists', 'Name of the notebook', { name });
    await writeWhole(files, join(folder, journalName), Buffer.concat([heading.bytes, ...lines]));
  } catch (error) {
    return bad('file.failed', `Notebook “${name}”`, { detail: fileReason(error) });
  }
  return good(null);
}

/**
 * Makes the folder of a new notebook, with room for attachments; the journal comes last and makes a notebook of it.
 * False, with nothing done, where there is something already.
 * @throws the operating system's error
 */
export async function claimFolder(files: Files, folder: string): Promise<boolean> {
  try {
    await files.makeFolder(folder);
  } catch (error) {
    if (errorCode(error) !== 'EEXIST') throw error;
    // A crash between folder and journal leaves a folder that is no notebook yet: it may be taken.
    const there = await files.list(folder);
    if (!there.every((entry) => leftovers.test(entry))) return false;
  }
  await files.syncFolder(dirname(folder));
  await ensureFolder(files, join(folder, 'attachments'));
  return true;
}

/** Opens for writing where possible, else for reading with the reason among the problems. */
export async function openNotebook(folder: string, ground: Ground = {}): Promise<Result<NotebookFolder>> {
  const { files = nodeFiles, now = () => new Date() } = ground;
  const path = join(folder, journalName);
  if ((await files.facts(path).catch(() => undefined))?.kind !== 'file') {
    return bad('notebook.not-found', 'Notebook', { name: basename(folder) });
  }
  const problems: Problem[] = [];
  let lock: Lock | undefined;
  try {
    const taken = await takeLock(files, folder, now(), ground.processes);
    if (taken.ok) lock = taken.value;
    else problems.push(taken.problem);
  } catch (error) {
    problems.push({
      code: 'notebook.cannot-write',
      place: 'Notebook',
      figures: { detail: fileReason(error) },
    });
  }
  let file: OpenFile | undefined;
  let opened: NotebookFolder | undefined;
  try {
    const reading = readJournal(await files.read(path));
    if (!reading.ok) return reading;
    const { damage, soundLines } = reading.value;
    if (damage !== undefined) {
      const figures = { line: damage.line, detail: damage.detail, sound: soundLines };
      problems.push({ code: 'journal.damaged', place: 'Journal', figures });
    } else if (lock !== undefined) {
      file = await openForWriting(files, folder, path, reading.value, now(), problems);
    }
    problems.push(...(await journalsBeside(files, folder)));
    problems.push(...(await missingAttachments(files, folder, attachmentNotes(reading.value.entries))));
    const generation = await readGeneration(files, folder);
    opened = notebookFolder({ files, folder, now, reading: reading.value, file, lock, problems, generation });
    return good(opened);
  } catch (error) {
    return bad('file.failed', 'Notebook', { detail: fileReason(error) });
  } finally {
    if (opened === undefined) {
      await file?.close().catch(() => undefined);
      await lock?.release();
    }
  }
}

/**
 * Where two computers wrote, a synchronising program keeps one journal and puts the other beside it under a longer name.
 * Nothing in it is part of the notebook until somebody merges it.
 */
async function journalsBeside(files: Files, folder: string): Promise<readonly Problem[]> {
  const names = await files.list(folder);
  return names
    .filter((name) => name !== journalName && /^journal.*\.jsonl$/i.test(name))
    .map((file) => ({ code: 'journal.beside', place: 'Journal', figures: { file } }));
}

/** The journal ready for more, its torn end set aside; `undefined`, with the reason, when it must not be written. */
async function openForWriting(
  files: Files,
  folder: string,
  path: string,
  reading: JournalReading,
  now: Date,
  problems: Problem[],
): Promise<OpenFile | undefined> {
  const { torn } = reading;
  let file: OpenFile | undefined;
  try {
    file = await files.open(path, 'existing');
    const { size } = await file.facts();
    if (size !== reading.length) {
      const figures = { detail: `it has ${size} bytes instead of ${reading.length}` };
      problems.push({ code: 'journal.changed-outside', place: 'Journal', figures });
      await file.close();
      return undefined;
    }
    if (torn !== undefined) {
      await nextGeneration(files, folder); // the window may have shown more than what will be left
      problems.push(await setAside(files, folder, file, reading, torn, now));
    }
    return file;
  } catch (error) {
    await file?.close().catch(() => undefined);
    if (torn !== undefined) {
      const figures = { line: torn.line, bytes: torn.bytes.length };
      problems.push({ code: 'journal.torn-tail-left', place: 'Journal', figures });
    }
    problems.push({
      code: 'notebook.cannot-write',
      place: 'Notebook',
      figures: { detail: fileReason(error) },
    });
    return undefined;
  }
}

interface Opened {
  readonly files: Files;
  readonly folder: string;
  readonly now: () => Date;
  readonly reading: JournalReading;
  readonly file: OpenFile | undefined;
  readonly lock: Lock | undefined;
  readonly problems: readonly Problem[];
  readonly generation: number;
}

function notebookFolder(opened: Opened): NotebookFolder {
  const { files, folder, now, reading, file, lock, problems, generation } = opened;
  const writer: Journal | undefined =
    file && lock
      ? journal({
          files,
          path: join(folder, journalName),
          file,
          reading,
          now,
          holdsLock: () => lock.isHeld(),
        })
      : undefined;
  const entries = writer?.entries ?? reading.entries;
  const refusal = (): Problem => writer?.stopped ?? problems.find(({ code }) => stops.has(code)) ?? notOpen;
  return {
    id: reading.heading.notebook,
    folder,
    entries,
    problems,
    generation,
    get readOnly() {
      return writer === undefined || writer.stopped !== undefined;
    },
    append: async (after, by, changes) =>
      writer === undefined ? { ok: false, problem: refusal() } : writer.append(after, by, changes),
    add: async (after, additions) =>
      writer === undefined ? { ok: false, problem: refusal() } : writer.add(after, additions),
    continueAs: async (other, bytes) =>
      writer === undefined ? { ok: false, problem: refusal() } : writer.continueAs(other, bytes),
    addAttachment: async (bytes) =>
      writer === undefined || writer.stopped !== undefined
        ? { ok: false, problem: refusal() }
        : addAttachment(files, folder, bytes),
    readAttachment: (sha256) => readAttachment(files, folder, sha256, () => attachmentNotes(entries)),
    async close() {
      await writer?.close();
      if (writer === undefined) await file?.close();
      await lock?.release();
    },
  };
}

/** Problems of opening that leave the notebook read-only. */
const stops: ReadonlySet<Problem['code']> = new Set([
  'notebook.locked',
  'notebook.cannot-write',
  'journal.changed-outside',
  'journal.damaged',
]);
const notOpen: Problem = { code: 'notebook.not-open', place: 'Notebook', figures: {} };
