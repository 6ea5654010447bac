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

  async function append(
    after: number,
    by: string,
    changes: readonly Change[],
  ): Promise<Result<readonly JournalEntry[]>> {
    if (stopped) return { ok: false, problem: stopped };
    if (after !== entries.length) {
      return bad('journal.changed-elsewhere', 'Notebook', { known: after, last: entries.length });
    }
    state ??= replay(entries).state;
    const applied = applyAll(state, changes);
    if (!applied.ok) return applied;
    const moved = await changedOutside();
    if (moved !== undefined) return stop('journal.changed-outside', moved);

    const at = timeStamp(now());
    const added = changes.map((change, index) => ({ seq: entries.length + 1 + index, at, by, change }));
    const group = sealGroup(added, head);
    try {
      const written = await file.write(group.bytes, length);
      if (written !== group.bytes.length) throw Object.assign(new Error('short write'), { code: 'ENOSPC' });
      await file.sync();
    } catch (error) {
      return takeBack(fileReason(error));
    }
    entries.push(...added);
    head = group.hash;
    length += group.bytes.length;
    state = applied.value;
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
    append: (after, by, changes) => inTurn(() => append(after, by, changes)),
    close: () =>
      inTurn(async () => {
        stopped ??= { code: 'notebook.not-open', place: 'Notebook', figures: {} };
        await file.close();
      }),
  };
}
