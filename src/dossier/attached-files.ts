/** Attachments of a notebook with their content, under names that a person finds them by. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import type { Attachment, JournalEntry, Json, NotebookState } from '../notebook/index.ts';
import { FreePaths, plainName } from './file-name.ts';
import { attachmentsOf } from './selection.ts';

export interface AttachedFile {
  /** In the payload. */
  readonly path: string;
  readonly sha256: string;
  /** As it was attached. */
  readonly name: string;
  readonly caption: string;
  readonly mediaType: string;
  readonly content: Uint8Array;
}

export interface AttachedFiles {
  /** Of the prototype, in the order of their records. */
  readonly own: readonly AttachedFile[];
  /** Named by the journal alone: of other prototypes, or taken away again. */
  readonly others: readonly AttachedFile[];
  /** Named, and not there, or not what was attached. */
  readonly missing: readonly { readonly sha256: string; readonly name: string }[];
}

export const FILES = 'files';
export const OTHER_FILES = 'journal/other-files';

export async function attachedFiles(
  state: NotebookState,
  prototypeId: string,
  entries: readonly JournalEntry[],
  attachment: (sha256: string) => Promise<Uint8Array | undefined>,
): Promise<AttachedFiles> {
  const own: AttachedFile[] = [];
  const others: AttachedFile[] = [];
  const missing: { sha256: string; name: string }[] = [];
  const paths = new FreePaths();
  const ofPrototype = attachmentsOf(state, prototypeId);
  for (const { sha256: sum, name, caption, mediaType } of ofPrototype) {
    const content = await soundContent(sum, attachment);
    if (!content) {
      missing.push({ sha256: sum, name });
      continue;
    }
    const plain = plainName(name, 'file');
    const dot = plain.lastIndexOf('.');
    const [stem, ending] = dot > 0 ? [plain.slice(0, dot), plain.slice(dot)] : [plain, ''];
    own.push({
      path: paths.path(`${FILES}/${stem}`, ending),
      sha256: sum,
      name,
      caption,
      mediaType,
      content,
    });
  }
  const done = new Set(ofPrototype.map((each) => each.sha256));
  for (const [sum, name] of namedAttachments(entries)) {
    if (done.has(sum)) continue;
    const content = await soundContent(sum, attachment);
    if (!content) missing.push({ sha256: sum, name });
    else
      others.push({ path: `${OTHER_FILES}/${sum}`, sha256: sum, name, caption: '', mediaType: '', content });
  }
  return { own, others, missing };
}

async function soundContent(
  sum: string,
  attachment: (sha256: string) => Promise<Uint8Array | undefined>,
): Promise<Uint8Array | undefined> {
  const content = await attachment(sum);
  return content && sha256Of(content) === sum ? content : undefined;
}

export function sha256Of(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}

/** SHA-256 and name of every attachment that a change ever named, those taken away again too. */
export function namedAttachments(entries: readonly JournalEntry[]): ReadonlyMap<string, string> {
  const named = new Map<string, string>();
  for (const { change } of entries) {
    if (change.op === 'create') collect(change.value, named);
    else for (const { value } of change.set) collect(value, named);
  }
  return named;
}

function collect(value: Json | undefined, named: Map<string, string>): void {
  if (typeof value !== 'object' || value === null) return;
  const { sha256: sum, name } = value as Partial<Record<keyof Attachment, Json>>;
  if (typeof sum === 'string' && /^[0-9a-f]{64}$/.test(sum)) {
    named.set(sum, typeof name === 'string' ? name : sum.slice(0, 12));
  }
  for (const member of Object.values(value)) collect(member as Json, named);
}
