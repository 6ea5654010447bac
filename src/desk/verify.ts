/**
 * A notebook examined from end to end without touching it, and a notebook rebuilt: its journal replayed, a
 * torn end set aside, every working copy made from it declared out of date.
 */
import { basename, join } from 'node:path';
import { type JournalEntry, type NotebookState, replay } from '../notebook/index.ts';
import type { RecordCounts, Verification } from '../preload/index.ts';
import { bad, good, type Problem, type Result, sentence } from '../quantity/index.ts';
import { attachmentNotes, readAttachment } from './attachments.ts';
import { fileReason, nodeFiles } from './files.ts';
import { readJournal } from './journal-reading.ts';
import { type Ground, openNotebook } from './notebook-folder.ts';
import { nextGeneration } from './working-copy.ts';

/** Reads the journal line by line and each attachment in full. Fails only when there is no journal to read. */
export async function verify(
  folder: string,
  { files = nodeFiles }: Ground = {},
): Promise<Result<Verification>> {
  const bytes = await files.read(join(folder, 'journal.jsonl')).catch((error: unknown) => fileReason(error));
  if (typeof bytes === 'string') return bad('notebook.not-found', bytes, { name: basename(folder) });
  const read = readJournal(bytes);
  if (!read.ok) return read;
  const { heading, entries, head, soundLines, torn, damage } = read.value;

  const problems: Problem[] = [];
  if (torn !== undefined) {
    const figures = { line: torn.line, bytes: torn.bytes.length };
    problems.push({ code: 'journal.torn-tail-left', place: 'Journal', figures });
  }
  if (damage !== undefined) {
    const figures = { line: damage.line, detail: damage.detail, sound: soundLines };
    problems.push({ code: 'journal.damaged', place: 'Journal', figures });
  }
  const { state, refusals } = replayed(entries);
  problems.push(...refusals);
  const notes = attachmentNotes(entries);
  let sound = 0;
  for (const sha256 of notes.keys()) {
    const content = await readAttachment(files, folder, sha256, () => notes);
    if (content.ok) sound++;
    else problems.push(content.problem);
  }
  return good({
    name: basename(folder),
    id: heading.notebook,
    lines: soundLines,
    entries: entries.length,
    head,
    chain: damage ? 'damaged' : torn ? 'torn at the end' : 'whole',
    attachments: { named: notes.size, sound },
    records: counts(state),
    problems,
  });
}

export interface Rebuilding {
  readonly generation: number;
  readonly entries: number;
  readonly records: RecordCounts;
  /** What was found and done: a torn end set aside, entries that do not fit, attachments missing. */
  readonly problems: readonly Problem[];
}

/** Fails, changing nothing, when the notebook is open elsewhere or damaged in the middle. */
export async function rebuild(folder: string, ground: Ground = {}): Promise<Result<Rebuilding>> {
  const opened = await openNotebook(folder, ground);
  if (!opened.ok) return opened;
  const notebook = opened.value;
  try {
    const hindrance = notebook.problems.find(
      ({ code }) =>
        code === 'notebook.locked' || code === 'notebook.cannot-write' || code === 'journal.damaged',
    );
    if (hindrance !== undefined) return { ok: false, problem: hindrance };
    const generation = await nextGeneration(ground.files ?? nodeFiles, folder);
    const { state, refusals } = replayed(notebook.entries);
    return good({
      generation,
      entries: notebook.entries.length,
      records: counts(state),
      problems: [...notebook.problems, ...refusals],
    });
  } catch (error) {
    return bad('file.failed', 'Notebook', { detail: fileReason(error) });
  } finally {
    await notebook.close();
  }
}

function replayed(entries: readonly JournalEntry[]): { state: NotebookState; refusals: readonly Problem[] } {
  const { state, refused } = replay(entries);
  const refusals = refused.map(({ seq, problem }): Problem => {
    // The heading is line 1, so that entry n stands on line n + 1.
    return {
      code: 'journal.refused',
      place: `Journal, line ${seq + 1}`,
      figures: { seq, detail: sentence(problem) },
    };
  });
  return { state, refusals };
}

function counts(state: NotebookState): RecordCounts {
  const pairs = Object.entries(state).map(([kind, records]) => [kind, Object.keys(records).length]);
  return Object.fromEntries(pairs) as RecordCounts;
}
