/**
 * A notebook that somebody handed over, put on the disk as a new folder: all of it is written and synced under another
 * name first, and only then gets its own. Whatever goes wrong before, nothing is left.
 */
import { randomBytes } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { bad, good, type Result } from '../quantity/index.ts';
import { attachmentPath, hashOf } from './attachments.ts';
import { fileReason, nodeFiles } from './files.ts';
import { readJournal } from './journal-reading.ts';
import { notebookName } from './names.ts';
import type { Ground } from './notebook-folder.ts';
import { ensureFolder, unfinished, writeNew } from './write-whole.ts';

export interface ReceivedNotebook {
  /** `journal.jsonl`, byte by byte. */
  readonly journal: Uint8Array;
  /** By SHA-256. */
  readonly attachments: ReadonlyMap<string, Uint8Array>;
}

/**
 * @param folder  of the new notebook; nothing may be there yet, and its parent has to exist
 * Fails with `dossier.into-existing`, `notebook.bad-name`, or `file.failed` for what the disk says.
 */
export async function receiveNotebook(
  folder: string,
  { journal, attachments }: ReceivedNotebook,
  { files = nodeFiles }: Ground = {},
): Promise<Result<null>> {
  const name = notebookName(basename(folder));
  if (!name.ok) return name;
  const fault = faultIn(journal, attachments);
  if (fault !== undefined) return bad('dossier.invalid', 'dossier', { detail: fault });
  // A dot at its beginning: should the power go meanwhile, it is not taken for a notebook.
  const beside = join(dirname(folder), `.${basename(folder)}.${randomBytes(6).toString('hex')}${unfinished}`);
  let made = false;
  try {
    if ((await files.facts(folder)) !== undefined) return bad('dossier.into-existing', folder);
    await files.makeFolder(beside);
    made = true;
    await ensureFolder(files, join(beside, 'attachments'));
    for (const [sha256, content] of attachments) {
      const path = attachmentPath(beside, sha256);
      await ensureFolder(files, dirname(path));
      await writeNew(files, path, content);
      await files.syncFolder(dirname(path));
    }
    await writeNew(files, join(beside, 'journal.jsonl'), journal);
    await files.syncFolder(beside);
    await files.rename(beside, folder);
    await files.syncFolder(dirname(folder));
    return good(null);
  } catch (error) {
    if (made) await rm(beside, { recursive: true, force: true }).catch(() => undefined);
    return bad('file.failed', folder, { detail: fileReason(error) });
  }
}

/** The last look before anything is written: names that become paths are hashes, and each is that of its content. */
function faultIn(journal: Uint8Array, attachments: ReceivedNotebook['attachments']): string | undefined {
  const read = readJournal(journal);
  if (!read.ok || read.value.torn || read.value.damage) return 'its journal is not sound';
  for (const [sha256, content] of attachments) {
    if (hashOf(content) !== sha256)
      return `an attached file is not what its name says (${sha256.slice(0, 12)})`;
  }
  return undefined;
}
