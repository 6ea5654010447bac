/** Opening a notebook from the command line, and finding what is named in it. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { errorCode, fileReason, readJournal } from '../desk/index.ts';
import {
  type JournalEntry,
  type NotebookState,
  type Prototype,
  type Revision,
  replay,
} from '../notebook/index.ts';
import { sentence } from '../quantity/index.ts';
import { DAMAGED, Stop, stopAt, type Terminal, USAGE } from './terminal.ts';

export interface ReadNotebook {
  /** Identity of the notebook. */
  readonly id: string;
  /** Every sound line of the journal, as it stands. */
  readonly journal: Uint8Array;
  readonly entries: readonly JournalEntry[];
  readonly state: NotebookState;
  readonly newest: JournalEntry | undefined;
}

/** Reads without a lock and without touching anything: looking is always possible. */
export async function readNotebook(folder: string, terminal: Terminal): Promise<ReadNotebook> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(join(folder, 'journal.jsonl'));
  } catch (error) {
    if (!['ENOENT', 'ENOTDIR'].includes(errorCode(error) ?? ''))
      throw new Stop(
        DAMAGED,
        `${folder}: the journal cannot be read (${fileReason(error)}). Check the folder and the disk.`,
      );
    throw new Stop(
      USAGE,
      `${folder}: there is no notebook in this folder (no journal.jsonl). Name the folder of one.`,
    );
  }
  const read = readJournal(bytes);
  if (!read.ok) throw stopAt(DAMAGED, read.problem);
  const { heading, entries, damage, torn, soundLength } = read.value;
  if (damage)
    throw new Stop(
      DAMAGED,
      `${folder}: line ${damage.line} of the journal is damaged: ${damage.detail}. See: verify`,
    );
  if (torn) terminal.err(`${folder}: the last line of the journal is torn and was not read. See: rebuild\n`);
  const { state, refused } = replay(entries);
  for (const each of refused) terminal.err(`entry ${each.seq} not taken: ${sentence(each.problem)}\n`);
  const journal = bytes.subarray(0, soundLength);
  return { id: heading.notebook, journal, entries, state, newest: entries.at(-1) };
}

export interface Found {
  readonly revisionId: string;
  readonly revision: Revision;
  readonly prototype: Prototype;
}

/** The prototype that is named by its name or id; it may be left out where there is only one. */
export function findPrototype(
  state: NotebookState,
  prototypeName: string | undefined,
): { readonly prototypeId: string; readonly prototype: Prototype } {
  const prototypes = Object.entries(state.prototype).filter(
    ([id, { name }]) => prototypeName === undefined || id === prototypeName || name === prototypeName,
  );
  const [only, ...others] = prototypes;
  const names = Object.values(state.prototype).map(({ name }) => `“${name}”`);
  if (!only)
    throw new Stop(
      USAGE,
      `there is no prototype “${prototypeName ?? ''}”. There are: ${names.join(', ') || 'none'}.`,
    );
  if (others.length > 0) {
    // By their ids too, because two may have the same name.
    const choices = prototypes.map(([id, { name }]) => `“${name}” (${id})`);
    throw new Stop(USAGE, `name one prototype with --prototype: ${choices.join(', ')}.`);
  }
  return { prototypeId: only[0], prototype: only[1] };
}

/**
 * The revision that is named by its letter or id, of the prototype that is named by its name or id. Either may be
 * left out where there is no choice; the newest revision is then meant.
 */
export function findRevision(
  state: NotebookState,
  prototypeName: string | undefined,
  revisionName: string | undefined,
): Found {
  const { prototypeId, prototype } = findPrototype(state, prototypeName);
  const revisions = Object.entries(state.revision).filter(([, each]) => each.prototype === prototypeId);
  const found =
    revisionName === undefined
      ? revisions.at(-1)
      : revisions.find(([id, { letter }]) => id === revisionName || letter === revisionName);
  if (!found) {
    const letters = revisions.map(([, { letter }]) => letter).join(', ');
    throw new Stop(
      USAGE,
      `“${prototype.name}” has no revision ${revisionName ?? ''}. It has: ${letters || 'none'}.`,
    );
  }
  return { revisionId: found[0], revision: found[1], prototype };
}
