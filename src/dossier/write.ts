/**
 * Writes a dossier: one ZIP file that is a valid bag, the same bytes for the same notebook. A door of its own beside
 * `dossier/index.ts`, so that the window loads what prints reports only where it prints them.
 */
import { bad, good, type Result } from '../quantity/index.ts';
import type { Fonts, ReportSource } from '../report/index.ts';
import { archiveLimits, megabytes } from './archive/limits.ts';
import { writeZip } from './archive/zip-write.ts';
import { attachedFiles } from './attached-files.ts';
import { writeBag } from './bag/write-bag.ts';
import type { DossierDescription } from './description.ts';
import { plainName } from './file-name.ts';
import { readJournalExtract } from './journal-extract.ts';
import { payloadOf } from './payload.ts';
import { dossierQuestions, type Question } from './questions.ts';
import { newestRevision } from './selection.ts';

export interface DossierSource {
  /** `journal.jsonl` of the notebook, whole lines only: what a crash has cut short does not belong to it. */
  readonly journal: Uint8Array;
  /** The prototype that reports, tables and page are about. */
  readonly prototypeId: string;
  /** Content of an attachment; undefined where it is missing. */
  readonly attachment: (sha256: string) => Promise<Uint8Array | undefined>;
  readonly fonts: Fonts;
  readonly paper?: ReportSource['paper'];
}

export interface WrittenDossier {
  /** For the file, with its ending. */
  readonly suggestedName: string;
  readonly bytes: Uint8Array;
  /** What your collaborator will ask, missing files included. */
  readonly questions: readonly Question[];
  readonly description: DossierDescription;
}

/**
 * Everything is made from the journal; the clock is never read.
 *
 * Fails with `dossier.invalid` for a journal that is not sound, `record.unknown` for a prototype that is not in it,
 * `dossier.cannot-write` where it would be larger than a receiver takes, or with what stops a report.
 */
export async function writeDossier(source: DossierSource): Promise<Result<WrittenDossier>> {
  const { journal, prototypeId, attachment, fonts, paper = 'A4' } = source;
  const read = readJournalExtract(journal);
  if (!read.ok) return read;
  const extract = read.value;
  const prototype = Object.hasOwn(extract.state.prototype, prototypeId)
    ? extract.state.prototype[prototypeId]
    : undefined;
  if (!prototype) return bad('record.unknown', 'dossier', { kind: 'prototype', id: prototypeId });

  const attached = await attachedFiles(extract.state, prototypeId, extract.entries, attachment);
  const questions = dossierQuestions(extract.state, prototypeId, attached.missing);
  const payload = await payloadOf({ journal, extract, prototypeId, attached, questions, fonts, paper });
  if (!payload.ok) return payload;
  const { files, description } = payload.value;

  const letter = newestRevision(extract.state, prototypeId)?.revision.letter;
  const stem = plainName(prototype.name, 'prototype').toLowerCase();
  const name = ['dossier', stem, letter].filter((part) => part !== undefined).join('-');
  const size = [...files.values()].reduce((sum, { length }) => sum + length, 0);
  const bag = writeBag(files, [
    ['Bagging-Date', description.at.slice(0, 10) || extract.createdAt.slice(0, 10)],
    ['Contact-Name', description.by],
    ['External-Description', `Dossier of ${prototype.name}, ${prototype.kind}`],
    ['External-Identifier', identifierOf(extract.notebook)],
    ['Internal-Sender-Identifier', extract.head],
    ['Internal-Sender-Description', `Head of the journal, ${description.entries} entries`],
    ['Bag-Size', megabytes(size)],
  ]);
  const total = [...bag.values()].reduce((sum, { length }) => sum + length, 0);
  if (total > archiveLimits.unpacked || bag.size > archiveLimits.files) {
    const detail = `it would have ${megabytes(total)} in ${bag.size} files, and a receiver takes ${megabytes(archiveLimits.unpacked)} in ${archiveLimits.files}`;
    return bad('dossier.cannot-write', 'dossier', { detail });
  }
  const inFolder = new Map([...bag].map(([path, content]) => [`${name}/${path}`, content]));
  const bytes = writeZip(inFolder, description.at.slice(0, 10));
  return good({ suggestedName: `${name}.zip`, bytes, questions, description });
}

function identifierOf(notebook: string): string {
  return /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(notebook) ? `urn:uuid:${notebook}` : notebook;
}
