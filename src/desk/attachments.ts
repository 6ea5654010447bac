/** Files attached to records, kept once each under the SHA-256 of their content, so that nothing can drift. */
import { createHash } from 'node:crypto';
import { dirname, join } from 'node:path';
import type { JournalEntry, Json } from '../notebook/index.ts';
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import { errorCode, type Files, fileReason } from './files.ts';
import { ensureFolder, writeWhole } from './write-whole.ts';

/** Bytes that one attachment may have. */
export const largestAttachment = 100 * 1024 * 1024;

/** What the records say about an attached file. */
export interface AttachmentNote {
  readonly name: string;
  /** Bytes; `undefined` where no record says. */
  readonly size?: number;
}

/** `attachments/<first two digits>/<sha256>` in the folder of the notebook. */
export function attachmentPath(folder: string, sha256: string): string {
  return join(folder, 'attachments', sha256.slice(0, 2), sha256);
}

/** Stores the bytes durably; the same bytes twice are stored once. */
export async function addAttachment(
  files: Files,
  folder: string,
  bytes: Uint8Array,
): Promise<Result<{ sha256: string; size: number }>> {
  if (bytes.length > largestAttachment) {
    const megabytes = (count: number): number => Math.round(count / 1024 / 102.4) / 10;
    return bad('attachment.too-large', 'Attachment', {
      size: megabytes(bytes.length),
      limit: megabytes(largestAttachment),
    });
  }
  const sha256 = hashOf(bytes);
  const path = attachmentPath(folder, sha256);
  try {
    const present = await contentFault(files, path, sha256);
    if (present !== undefined) {
      await ensureFolder(files, join(folder, 'attachments'));
      await ensureFolder(files, dirname(path));
      await writeWhole(files, path, bytes);
    }
  } catch (error) {
    return bad('file.failed', 'Attachment', { detail: fileReason(error) });
  }
  return good({ sha256, size: bytes.length });
}

/**
 * The bytes, checked against their name.
 * @param notes  what the records say about attachments; asked only for the message when something is wrong
 */
export async function readAttachment(
  files: Files,
  folder: string,
  sha256: string,
  notes: () => ReadonlyMap<string, AttachmentNote>,
): Promise<Result<Uint8Array>> {
  const short = sha256.slice(0, 12);
  const figures = () => ({ name: notes().get(sha256)?.name ?? short, sha256: short });
  try {
    const bytes = await files.read(attachmentPath(folder, sha256));
    if (hashOf(bytes) === sha256) return good(bytes);
    return bad('attachment.altered', 'Attachment', { ...figures(), detail: 'its content differs' });
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return bad('attachment.missing', 'Attachment', figures());
    return bad('file.failed', `Attachment “${figures().name}”`, { detail: fileReason(error) });
  }
}

/** Quick look at opening: is each file that the records name there, with the size they give? */
export async function missingAttachments(
  files: Files,
  folder: string,
  notes: ReadonlyMap<string, AttachmentNote>,
): Promise<readonly Problem[]> {
  const problems: Problem[] = [];
  for (const [sha256, { name, size }] of notes) {
    const figures = { name, sha256: sha256.slice(0, 12) };
    const facts = await files.facts(attachmentPath(folder, sha256)).catch(() => undefined);
    if (facts?.kind !== 'file') {
      problems.push({ code: 'attachment.missing', place: 'Attachment', figures });
    } else if (size !== undefined && facts.size !== size) {
      const detail = `it has ${facts.size} bytes instead of ${size}`;
      problems.push({ code: 'attachment.altered', place: 'Attachment', figures: { ...figures, detail } });
    }
  }
  return problems;
}

/** Each attachment that the changes ever named, by SHA-256. */
export function attachmentNotes(entries: Iterable<JournalEntry>): ReadonlyMap<string, AttachmentNote> {
  const notes = new Map<string, AttachmentNote>();
  for (const { change } of entries) {
    if (change.op === 'create') collect(change.value, notes);
    else for (const { value } of change.set) if (value !== undefined) collect(value, notes);
  }
  return notes;
}

export function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

function collect(value: Json, notes: Map<string, AttachmentNote>): void {
  if (typeof value !== 'object' || value === null) return;
  if ('sha256' in value && typeof value.sha256 === 'string' && /^[0-9a-f]{64}$/.test(value.sha256)) {
    const { sha256, name, size } = value as Readonly<Record<string, Json>>;
    notes.set(String(sha256), {
      name: typeof name === 'string' ? name : String(sha256).slice(0, 12),
      ...(typeof size === 'number' ? { size } : {}),
    });
  }
  for (const member of Object.values(value)) collect(member as Json, notes);
}

async function contentFault(files: Files, path: string, sha256: string): Promise<string | undefined> {
  const facts = await files.facts(path);
  if (facts?.kind !== 'file') return 'it is missing';
  return hashOf(await files.read(path)) === sha256 ? undefined : 'its content differs';
}
