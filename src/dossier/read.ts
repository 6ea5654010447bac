/**
 * Reads a dossier that somebody else has made. It is verified from the outside in: package, bag, description, journal
 * with its chain and its changes, records, attachments. Whoever gets a value has all of it sound; nothing was written
 * anywhere, and one fault refuses the whole.
 */

import type { JournalEntry, NotebookState, RecordKind } from '../notebook/index.ts';
import { schemas } from '../notebook/index.ts';
import { bad, good, type Result } from '../quantity/index.ts';
import { type ArchiveLimits, archiveLimits } from './archive/limits.ts';
import { shownName } from './archive/safe-path.ts';
import { readZip } from './archive/zip-read.ts';
import { FILES, namedAttachments, OTHER_FILES, sha256Of } from './attached-files.ts';
import { type CheckedBag, checkBag } from './bag/check-bag.ts';
import {
  DESCRIPTION,
  type DossierDescription,
  dossierDescription,
  dossierFormat,
  dossierVersion,
  JOURNAL,
} from './description.ts';
import { readJournalExtract } from './journal-extract.ts';
import { readJson } from './json.ts';
import { impossibleReference } from './references.ts';

export interface Dossier {
  readonly description: DossierDescription;
  /** `journal.jsonl`, byte by byte as it was sent. */
  readonly journal: Uint8Array;
  readonly entries: readonly JournalEntry[];
  readonly head: string;
  /** Records of the whole notebook. */
  readonly state: NotebookState;
  /** By SHA-256. */
  readonly attachments: ReadonlyMap<string, Uint8Array>;
  /** Attachments that the journal names and the sender did not have. */
  readonly missing: readonly { readonly sha256: string; readonly name: string }[];
  /** Every file of the payload, for looking at. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** What is unusual and does no harm. */
  readonly warnings: readonly string[];
}

type Files = ReadonlyMap<string, Uint8Array>;

/**
 * Fails with an `archive.*`, `bag.*` or `dossier.*` problem, the file concerned as its place.
 */
export function readDossier(bytes: Uint8Array, limits: ArchiveLimits = archiveLimits): Result<Dossier> {
  const unpacked = readZip(bytes, limits);
  if (!unpacked.ok) return unpacked;
  const files = bagFolder(unpacked.value);
  const bag = checkBag(files);
  if (!bag.ok) return bag;
  const payload = new Map(
    [...files]
      .filter(([path]) => path.startsWith('data/'))
      .map(([path, content]) => [path.slice(5), content]),
  );
  return readPayload(payload, bag.value);
}

/** The files of the folder that the package holds, or as they are where the bag was packed without its folder. */
function bagFolder(files: Files): Files {
  if (files.has('bagit.txt')) return files;
  const declared = [...files.keys()].filter((path) => /^[^/]+\/bagit\.txt$/.test(path));
  const [only] = declared;
  if (only === undefined || declared.length > 1) return files;
  const folder = only.slice(0, -'bagit.txt'.length);
  // What stands beside the bag is not part of it, such as folders that some packers add.
  const inside = [...files].filter(([path]) => path.startsWith(folder));
  return new Map(inside.map(([path, content]) => [path.slice(folder.length), content]));
}

function readPayload(files: Files, bag: CheckedBag): Result<Dossier> {
  const described = readDescription(files);
  if (!described.ok) return described;
  const description = described.value;
  if (!bag.algorithms.includes('sha512')) {
    return bad('dossier.invalid', 'manifest-sha512.txt', { detail: 'a dossier has checksums by SHA-512' });
  }
  const journal = files.get(JOURNAL);
  if (!journal) return bad('dossier.invalid', JOURNAL, { detail: 'it is missing' });
  const extract = readJournalExtract(journal);
  if (!extract.ok) return extract;
  const { entries, head, state, notebook } = extract.value;
  const disagreement = disagreementOf(description, { entries, head, state, notebook });
  if (disagreement !== undefined) return bad('dossier.invalid', DESCRIPTION, { detail: disagreement });
  const impossible = impossibleReference(state);
  if (impossible !== undefined) return bad('dossier.invalid', JOURNAL, { detail: impossible });
  const records = checkRecords(files);
  if (!records.ok) return records;
  const attached = checkAttachments(files, description, entries);
  if (!attached.ok) return attached;
  const { warnings } = bag;
  return good({ description, journal, entries, head, state, ...attached.value, files, warnings });
}

function readDescription(files: Files): Result<DossierDescription> {
  const bytes = files.get(DESCRIPTION);
  if (!bytes) return bad('dossier.foreign', DESCRIPTION, { detail: 'this file is missing' });
  const read = readJson(bytes);
  if (!read.ok) return bad('dossier.invalid', DESCRIPTION, { detail: read.reason });
  const value = read.value as { format?: unknown; version?: unknown } | null;
  if (typeof value !== 'object' || value?.format !== dossierFormat) {
    return bad('dossier.foreign', DESCRIPTION, { detail: 'this file says something else' });
  }
  if (typeof value.version === 'number' && value.version > dossierVersion) {
    return bad('dossier.newer', DESCRIPTION, { version: value.version, known: dossierVersion });
  }
  const parsed = dossierDescription.safeParse(value);
  if (parsed.success) return good(parsed.data);
  const [issue] = parsed.error.issues;
  const where = shownName(issue?.path.join('/') ?? '');
  return bad('dossier.invalid', DESCRIPTION, {
    detail: `its member “${where}” does not have the expected form`,
  });
}

function disagreementOf(
  description: DossierDescription,
  journal: {
    readonly entries: readonly JournalEntry[];
    readonly head: string;
    readonly state: NotebookState;
    readonly notebook: string;
  },
): string | undefined {
  if (description.notebook !== journal.notebook) return 'it names another notebook than the journal';
  if (description.head !== journal.head) return 'it names another head than that of the journal';
  if (description.entries !== journal.entries.length) return 'it counts other entries than the journal has';
  const { id, name } = description.prototype;
  const known = Object.hasOwn(journal.state.prototype, id) ? journal.state.prototype[id] : undefined;
  if (known?.name !== name) return 'its prototype is not in the journal under that name';
  return undefined;
}

/** Record files are for people and other programs; nothing is taken from them, but they have to be what they seem. */
function checkRecords(files: Files): Result<null> {
  for (const [path, bytes] of files) {
    if (!path.startsWith('records/')) continue;
    const read = readJson(bytes);
    if (!read.ok) return bad('dossier.invalid', shownName(path), { detail: read.reason });
    const { kind, records } = (read.value ?? {}) as { kind?: unknown; records?: unknown };
    const known = typeof kind === 'string' && Object.hasOwn(schemas, kind);
    if (!known || path !== `records/${kind}.json` || typeof records !== 'object' || records === null) {
      return bad('dossier.invalid', shownName(path), { detail: 'it is not a file of records' });
    }
    for (const [id, record] of Object.entries(records)) {
      if (schemas[kind as RecordKind].safeParse(record).success) continue;
      const detail = `its record “${shownName(id)}” does not fit the schema`;
      return bad('dossier.invalid', shownName(path), { detail });
    }
  }
  return good(null);
}

/** Each file that the journal names is there under its hash, or stated as missing; and no other is smuggled in. */
function checkAttachments(
  files: Files,
  description: DossierDescription,
  entries: readonly JournalEntry[],
): Result<Pick<Dossier, 'attachments' | 'missing'>> {
  const named = namedAttachments(entries);
  const attachments = new Map<string, Uint8Array>();
  for (const [path, content] of files) {
    if (!path.startsWith(`${FILES}/`) && !path.startsWith(`${OTHER_FILES}/`)) continue;
    const sum = sha256Of(content);
    if (!named.has(sum)) {
      const detail = 'it is among the attached files, and no entry of the journal names its content';
      return bad('dossier.invalid', shownName(path), { detail });
    }
    attachments.set(sum, content);
  }
  const stated = new Set(description.missing.map(({ sha256 }) => sha256));
  const missing: { sha256: string; name: string }[] = [];
  for (const [sha256, name] of named) {
    if (attachments.has(sha256)) continue;
    if (!stated.has(sha256)) {
      const detail = `the attached file ${shownName(name)} (${sha256.slice(0, 12)}) is missing`;
      return bad('dossier.invalid', FILES, { detail });
    }
    missing.push({ sha256, name });
  }
  return good({ attachments, missing });
}
