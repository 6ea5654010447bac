/** Two copies of one notebook joined: ours is written to, by the ordinary way of the journal; theirs is only read. */
import { basename, dirname, join } from 'node:path';
import { type ChainedEntry, type Choose, type JournalEntry, type Merge, merge } from '../notebook/index.ts';
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import { attachmentNotes, readAttachment } from './attachments.ts';
import { followChain } from './chain.ts';
import { timeStamp } from './clock.ts';
import { type Files, fileReason, nodeFiles } from './files.ts';
import { type JournalReading, readJournal } from './journal-reading.ts';
import { type Ground, journalName, type NotebookFolder, openNotebook } from './notebook-folder.ts';

export interface Merging {
  readonly merge: Merge;
  /** Entries that were added to ours; 0 while a choice is open. */
  readonly added: number;
  /** Attachments of theirs that could not be taken over. */
  readonly problems: readonly Problem[];
}

/**
 * Adds to the notebook in `folder` what `other` holds besides, all of it or, while a conflict has no choice, nothing.
 * @param other   the folder of another copy, or the journal of a copy
 * @param by      who merges, for what the choices add
 */
export async function mergeNotebooks(
  folder: string,
  other: string,
  { by, choose }: { readonly by: string; readonly choose?: Choose },
  ground: Ground = {},
): Promise<Result<Merging>> {
  const { files = nodeFiles, now = () => new Date() } = ground;
  const theirs = await readCopy(files, other);
  if (!theirs.ok) return theirs;
  const opened = await openNotebook(folder, ground);
  if (!opened.ok) return opened;
  const notebook = opened.value;
  try {
    if (notebook.id !== theirs.value.reading.heading.notebook) {
      return bad('merge.other-notebook', 'Merge', { name: basename(other) });
    }
    const writable = await notebook.add(notebook.entries.length, []);
    if (!writable.ok) return writable;
    // With the lock held and the torn end, if there was one, set aside: what is read now is what will be written to.
    const ours = await readCopy(files, folder);
    if (!ours.ok) return ours;
    const found = merge(ours.value.entries, theirs.value.entries, choose);
    if (found.kind === 'nothing new') return good({ merge: found, added: 0, problems: [] });
    if (found.kind === 'fast-forward') {
      const further = theirs.value.entries.slice(found.common);
      const problems = await takeAttachments(files, notebook, theirs.value.folder, further);
      if (!problems.ok) return problems;
      const added = await notebook.continueAs(theirs.value.reading, theirs.value.bytes);
      return added.ok ? good({ merge: found, added: added.value.length, problems: problems.value }) : added;
    }
    const at = timeStamp(now());
    const additions = found.additions.map((addition) => ({ at, by, ...addition }));
    if (additions.length === 0) return good({ merge: found, added: 0, problems: [] });
    const numbered = additions.map((addition, index) => ({ seq: index + 1, ...addition }));
    const problems = await takeAttachments(files, notebook, theirs.value.folder, numbered);
    if (!problems.ok) return problems;
    const added = await notebook.add(notebook.entries.length, additions);
    return added.ok ? good({ merge: found, added: added.value.length, problems: problems.value }) : added;
  } catch (error) {
    return bad('file.failed', 'Merge', { detail: fileReason(error) });
  } finally {
    await notebook.close();
  }
}

interface ReadCopy {
  readonly folder: string;
  readonly bytes: Uint8Array;
  readonly reading: JournalReading;
  readonly entries: readonly ChainedEntry[];
}

async function readCopy(files: Files, place: string): Promise<Result<ReadCopy>> {
  try {
    const facts = await files.facts(place);
    const path = facts?.kind === 'folder' ? join(place, journalName) : place;
    if ((await files.facts(path))?.kind !== 'file') {
      return bad('notebook.not-found', 'Merge', { name: basename(place) });
    }
    const bytes = await files.read(path);
    const read = readJournal(bytes);
    if (!read.ok) return read;
    const { entries, damage, soundLines } = read.value;
    if (damage !== undefined) {
      const figures = { line: damage.line, detail: damage.detail, sound: soundLines };
      return {
        ok: false,
        problem: { code: 'journal.damaged', place: `Journal of “${basename(place)}”`, figures },
      };
    }
    const { heads } = await followChain(bytes);
    const chained = entries.map((entry, index) => ({ ...entry, hash: heads[index + 1] ?? '' }));
    return good({ folder: dirname(path), bytes, reading: read.value, entries: chained });
  } catch (error) {
    return bad('file.failed', 'Merge', { detail: fileReason(error) });
  }
}

/**
 * Before the entries that name them. What theirs has lost is told and does not hold up the rest; what cannot be written
 * here does, because a second merge would find nothing new and not try again.
 */
async function takeAttachments(
  files: Files,
  notebook: NotebookFolder,
  from: string,
  entries: readonly JournalEntry[],
): Promise<Result<readonly Problem[]>> {
  const notes = attachmentNotes(entries);
  const problems: Problem[] = [];
  for (const sha256 of notes.keys()) {
    const content = await readAttachment(files, from, sha256, () => notes);
    if (!content.ok) {
      problems.push(content.problem);
      continue;
    }
    const added = await notebook.addAttachment(content.value);
    if (!added.ok) return added;
  }
  return good(problems);
}
