/** Attaching: the desk stores the bytes, then one change of the entry names them all. */
import { type Attachment, type Json, set } from '../../../../notebook/index.ts';
import type { Desk } from '../../../../preload/index.ts';
import { bad, good, type Problem, type Result } from '../../../../quantity/index.ts';
import type { NotebookStore } from '../../../store/notebook-store.ts';
import { newId } from '../../../store/record-id.ts';
import { attachmentOf } from './attachments.ts';

/** @returns one problem for each file that could not be attached; the others are */
export async function attachFiles(
  desk: Desk,
  store: NotebookStore,
  entry: string,
  files: readonly File[],
): Promise<readonly Problem[]> {
  const problems: Problem[] = [];
  const stored: { file: File; sha256: string; size: number }[] = [];
  for (const file of files) {
    const bytes = await bytesOf(file);
    const added = bytes.ok
      ? await desk['attachment.add']({ session: store.getState().session, bytes: bytes.value })
      : bytes;
    if (added.ok) stored.push({ file, ...added.value });
    else problems.push({ ...added.problem, place: `Attachment “${file.name}”` });
  }
  if (stored.length === 0) return problems;
  // Only now: whatever was attached meanwhile is there to be counted.
  const attachments: Record<string, Attachment> = {
    ...store.getState().recorded.entry[entry]?.attachments,
  };
  const settings: Record<string, Json> = {};
  for (const { file, ...bytes } of stored) {
    const id = newId('item');
    const attachment = attachmentOf(file, bytes, attachments);
    attachments[id] = attachment;
    settings[`attachments/${id}`] = attachment;
  }
  const done = store.change([set('entry', entry, settings)]);
  return done.ok ? problems : [...problems, done.problem];
}

async function bytesOf(file: File): Promise<Result<Uint8Array<ArrayBuffer>>> {
  try {
    return good(new Uint8Array(await file.arrayBuffer()));
  } catch (error) {
    return bad('file.failed', file.name, { detail: error instanceof Error ? error.message : String(error) });
  }
}
