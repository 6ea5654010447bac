/**
 * The open journal: entries are added at its end, on the medium before they are acknowledged. A write that
 * fails leaves the file as it was; where even that fails, nothing more is written.
 */
import { applyAll, type Change, type JournalEntry, type NotebookState, replay } from '../notebook/index.ts';
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import { timeStamp } from './clock.ts';
import { type Files, fileReason, type OpenFile } from './files.ts';
import { sealGroup } from './journal-line.ts';
import type { JournalReading } from './journal-reading.ts';

export interface Journal {
  readonly entries: readonly JournalEntry[];
  /** Why nothing more can be written; `undefined` while it can. */
  readonly stopped: Problem | undefined;
  /**
   * Adds the changes as one group, or none of them.
   * @param after  sequence number of the last entry that the caller knows
   */
  append(after: number, by: string, changes: readonly Change[]): Promise<Result<readonly JournalEntry[]>>;
  /** The same for entries that have their author, time and origin already. */
  add(
    after: number,
    additions: readonly Omit<JournalEntry, 'seq'>[],
  ): Promise<Result<readonly JournalEntry[]>>;
  /** Takes over the further lines of another journal as they stand, where it begins with all of this one. */
  continueAs(other: JournalReading, bytes: Uint8Array): Promise<Result<readonly JournalEntry[]>>;
  close(): Promise<void>;
}

export interface JournalSpec {
  readonly files: Files;
  readonly path: string;
  readonly file: OpenFile;
  readonly reading: JournalReading;
  readonly now: () => Date;
  /** Looked at before each write: whether this process still holds the notebook's lock. */
  readonly holdsLock: () => Promise<boolean>;
}

/** Takes over the open file; its length has to be the sound length of the reading. */
export function journal({ files, path, file, reading, now, holdsLock }: JournalSpec): Journal {
  const entries: JournalEntry[] = [...reading.entries];
  let { head, soundLength: length } = reading;
  let state: NotebookState | undefined; // made at the first change: opening has to be quick
  let stopped: Problem | undefined;
  let queue: Promise<unknown> = Promise.resolve();

  async function add(
    after: number,
    additions: readonly Omit<JournalEntry, 'seq'>[],
  ): Promise<Result<readonly JournalEntry[]>> {
    if (stopped) return { ok: false, problem: stopped };
    if (after !== entries.length) {
      return bad('journal.changed-elsewhere', 'Notebook', { known: after, last: entries.length });
    }
    if (additions.length === 0) return good([]);
    state ??= replay(entries).state;
    const added = additions.map((entry, index) => ({ seq: entries.length + 1 + index, ...entry }));
    const applied = applyAll(
      state,
      added.map(({ change }) => change),
    );
    if (!applied.ok) return applied;
    const group = sealGroup(added, head);
    return write(group.bytes, group.hash, added, applied.value);
  }

  async function continueAs(
    other: JournalReading,
    bytes: Uint8Array,
  ): Promise<Result<readonly JournalEntry[]>> {
    if (stopped) return { ok: false, problem: stopped };
    const added = other.entries.slice(entries.length);
    return write(bytes.subarray(length, other.soundLength), other.head, added, undefined);
  }

  /** On the medium before anybody hears of it, or taken back. */
  async function write(
    bytes: Uint8Array,
    hash: string,
    added: readonly JournalEntry[],
    next: NotebookState | undefined,
  ): Promise<Result<readonly JournalEntry[]>> {
    const moved = await changedOutside();
    if (moved !== undefined) return stop('journal.changed-outside', moved);
    try {
      const written = await file.write(bytes, length);
      if (written !== bytes.length) throw Object.assign(new Error('short write'), { code: 'ENOSPC' });
      await file.sync();
    } catch (error) {
      return takeBack(fileReason(error));
    }
    for (const entry of added) entries.push(entry); // a merge may bring more than a call takes as arguments
    head = hash;
    length += bytes.length;
    state = next;
    return good(added);
  }

  /** After a failed write: back to the last good length, so that nothing unacknowledged stays half visible. */
  async function takeBack(detail: string): Promise<Result<never>> {
    try {
      await file.truncate(length);
      await file.sync();
    } catch (error) {
      return stop('notebook.read-only', `${detail}, and taking it back failed: ${fileReason(error)}`);
    }
    return bad('journal.write-failed', 'Journal', { detail });
  }

  async function changedOutside(): Promise<string | undefined> {
    try {
      const [held, named] = await Promise.all([file.facts(), files.facts(path)]);
      // Programs that synchronise folders put a new file in place: what goes into the old one would be lost.
      if (named?.identity !== held.identity) return 'another file stands in its place';
      if (held.size !== length) return `it has ${held.size} bytes instead of ${length}`;
      return (await holdsLock()) ? undefined : 'the lock file was taken away';
    } catch (error) {
      return fileReason(error);
    }
  }

  function stop(code: 'journal.changed-outside' | 'notebook.read-only', detail: string): Result<never> {
    stopped = { code, place: 'Journal', figures: { detail } };
    return { ok: false, problem: stopped };
  }

  /** One write at a time, in the order of the calls. */
  function inTurn<T>(task: () => Promise<T>): Promise<T> {
    const result = queue.then(task);
    queue = result.catch(() => undefined);
    return result;
  }

  return {
    entries,
    get stopped() {
      return stopped;
    },
    append: (after, by, changes) =>
      inTurn(() => {
        const at = timeStamp(now());
        return add(
          after,
          changes.map((change) => ({ at, by, change })),
        );
      }),
    add: (after, additions) => inTurn(() => add(after, additions)),
    continueAs: (other, bytes) => inTurn(() => continueAs(other, bytes)),
    close: () =>
      inTurn(async () => {
        stopped ??= { code: 'notebook.not-open', place: 'Notebook', figures: {} };
        await file.close();
      }),
  };
}
