/** A new notebook from a copy: a journal of the ring with the attachments beside it, or any copied notebook folder. */
import { basename, dirname, join } from 'node:path';
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import { addAttachment, attachmentNotes, readAttachment } from './attachments.ts';
import { fileReason, nodeFiles } from './files.ts';
import { readJournal } from './journal-reading.ts';
import { claimFolder, type Ground, journalName } from './notebook-folder.ts';
import { writeWhole } from './write-whole.ts';

export interface Restoring {
  readonly entries: number;
  /** Attachments that the copy names and does not have, or has with another content. */
  readonly problems: readonly Problem[];
}

/**
 * Checks the copy's chain, then writes a new folder; whatever is there is never touched. The notebook keeps its
 * identity: it is the same one at an earlier time.
 * @param copy    the journal of a copy, or a folder with `journal.jsonl` in it
 * @param folder  to be made; its parent must exist
 */
export async function restoreNotebook(
  copy: string,
  folder: string,
  { files = nodeFiles }: Ground = {},
): Promise<Result<Restoring>> {
  try {
    const facts = await files.facts(copy);
    const path = facts?.kind === 'folder' ? join(copy, journalName) : copy;
    if ((await files.facts(path))?.kind !== 'file') {
      return bad('copies.not-found', 'Copy', { name: basename(copy) });
    }
    const bytes = await files.read(path);
    const read = readJournal(bytes);
    if (!read.ok) return read;
    const { entries, damage, soundLength, soundLines } = read.value;
    if (damage !== undefined) {
      const figures = { line: damage.line, detail: damage.detail, sound: soundLines };
      return { ok: false, problem: { code: 'journal.damaged', place: `Copy ${basename(copy)}`, figures } };
    }
    if (!(await claimFolder(files, folder))) {
      return bad('notebook.exists', 'Name of the notebook', { name: basename(folder) });
    }
    const notes = attachmentNotes(entries);
    const problems: Problem[] = [];
    for (const sha256 of notes.keys()) {
      const content = await readAttachment(files, dirname(path), sha256, () => notes);
      const added = content.ok ? await addAttachment(files, folder, content.value) : content;
      if (!added.ok) problems.push(added.problem);
    }
    const disk = problems.find(({ code }) => code === 'file.failed');
    if (disk !== undefined) return { ok: false, problem: disk };
    // Last, because it makes a notebook of the folder: one that stopped half way is none, and may be taken again.
    await writeWhole(files, join(folder, journalName), bytes.subarray(0, soundLength));
    return good({ entries: entries.length, problems });
  } catch (error) {
    return bad('file.failed', `Notebook “${basename(folder)}”`, { detail: fileReason(error) });
  }
}
