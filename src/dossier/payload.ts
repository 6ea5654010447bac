/** Every file of a dossier, from records to page: what stands in `data/` of the bag, by its path there. */
import { builtinCards, builtinChecklists, builtinLadders } from '../checklist/index.ts';
import type { NotebookState, RecordKind } from '../notebook/index.ts';
import { good, type Result } from '../quantity/index.ts';
import {
  type Fonts,
  type ReportDocument,
  type ReportSource,
  revisionReport,
  runReport,
} from '../report/index.ts';
import { renderPdf } from '../report/pdf/index.ts';
import type { AttachedFiles } from './attached-files.ts';
import {
  DESCRIPTION,
  type DossierDescription,
  dossierFormat,
  dossierVersion,
  JOURNAL,
} from './description.ts';
import { FreePaths, plainName } from './file-name.ts';
import { designPage } from './html/page.ts';
import { csvText } from './interchange/csv.ts';
import { type ExportForm, exportEndings, exportRevision } from './interchange/export-as.ts';
import { failuresCsv, logCsv, marginsCsv, massTableCsv, readingsCsv, runsCsv } from './interchange/tables.ts';
import type { JournalExtract } from './journal-extract.ts';
import { jsonBytes } from './json.ts';
import type { Question } from './questions.ts';
import { readme } from './readme.ts';
import { roCrate } from './ro-crate.ts';
import { recordFileSchema } from './schemas.ts';
import { ofPrototype, stateOfPrototype } from './selection.ts';

export interface PayloadSource {
  readonly journal: Uint8Array;
  readonly extract: JournalExtract;
  readonly prototypeId: string;
  readonly attached: AttachedFiles;
  readonly questions: readonly Question[];
  readonly fonts: Fonts;
  readonly paper: ReportSource['paper'];
}

export interface Payload {
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly description: DossierDescription;
}

export async function payloadOf(source: PayloadSource): Promise<Result<Payload>> {
  const { journal, extract, prototypeId, attached, questions } = source;
  const state = stateOfPrototype(extract.state, prototypeId);
  const prototype = state.prototype[prototypeId];
  if (!prototype) throw new Error('a dossier needs its prototype');
  const files = new Map<string, Uint8Array>();
  const put = (path: string, text: string): void => void files.set(path, new TextEncoder().encode(text));

  files.set(JOURNAL, journal);
  for (const { path, content } of [...attached.own, ...attached.others]) files.set(path, content);
  for (const [path, content] of recordFiles(state)) files.set(path, content);
  for (const [path, text] of tableFiles(state, prototypeId, attached)) put(path, text);
  for (const [path, content] of templateFiles()) files.set(path, content);

  const printed = await printedReports(source, state);
  if (!printed.ok) return printed;
  for (const [path, content] of printed.value.files) files.set(path, content);
  const { at = '', by = '' } = extract.entries.at(-1) ?? {};
  const { records, reports } = printed.value;
  put(
    'index.html',
    designPage({
      state,
      prototypeId,
      questions,
      records,
      reports,
      files: attached.own,
      fonts: source.fonts,
      head: extract.head,
      at,
      by,
    }),
  );

  const description = descriptionOf(source, prototype.name, at, by);
  files.set(DESCRIPTION, jsonBytes(description));
  const others = Object.entries(extract.state.prototype).filter(([id]) => id !== prototypeId);
  put(
    'README.txt',
    readme({
      ...description,
      kind: prototype.kind,
      revisions: Object.values(state.revision).map(({ letter }) => letter),
      others: others.map(([, { name }]) => name),
    }),
  );
  const names = new Map([...attached.own, ...attached.others].map(({ path, name }) => [path, name]));
  const crate = roCrate({
    name: prototype.name,
    description: `Design record of ${prototype.name}, ${prototype.kind}: measured facts, margins, runs, failures and log.`,
    datePublished: at === '' ? extract.createdAt : at,
    author: by,
    identifier: `urn:counterpoise:notebook:${extract.notebook}`,
    files: [...files]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([path, content]) => ({ path, bytes: content.length, name: names.get(path) })),
  });
  files.set('ro-crate-metadata.json', jsonBytes(crate));
  return good({ files, description });
}

function descriptionOf(
  { extract, prototypeId, attached, questions }: PayloadSource,
  name: string,
  at: string,
  by: string,
): DossierDescription {
  return {
    format: dossierFormat,
    version: dossierVersion,
    notebook: extract.notebook,
    head: extract.head,
    entries: extract.entries.length,
    at,
    by,
    prototype: { id: prototypeId, name },
    questions: questions.map(({ kind, text }) => ({ kind, text })),
    files: [...attached.own, ...attached.others].map((file) => ({
      sha256: file.sha256,
      path: file.path,
      name: file.name,
    })),
    missing: [...attached.missing],
  };
}

function recordFiles(state: NotebookState): (readonly [string, Uint8Array])[] {
  return (Object.keys(state) as RecordKind[]).flatMap((kind) => [
    [`schemas/${kind}.schema.json`, jsonBytes(recordFileSchema(kind))] as const,
    [
      `records/${kind}.json`,
      jsonBytes({ $schema: `../schemas/${kind}.schema.json`, kind, records: state[kind] }),
    ] as const,
  ]);
}

const FOR_PROGRAMS: readonly ExportForm[] = ['c', 'python', 'json'];

function tableFiles(
  state: NotebookState,
  prototypeId: string,
  { own }: AttachedFiles,
): (readonly [string, string])[] {
  const prototype = state.prototype[prototypeId];
  const folders = new FreePaths();
  const revisions = ofPrototype(state.revision, prototypeId).flatMap(([, revision]) => {
    if (!prototype) return [];
    const folder = folders.path(`revision-${plainName(revision.letter, 'x')}`, '');
    const tables = [
      [`tables/${folder}/mass-table.csv`, massTableCsv(revision)],
      [`tables/${folder}/figures.csv`, exportRevision(prototype, revision, 'csv')],
      [`tables/${folder}/margins.csv`, marginsCsv(prototype, revision)],
    ] as const;
    const programs = FOR_PROGRAMS.map(
      (form) =>
        [
          `firmware/${folder}/design.${exportEndings[form]}`,
          exportRevision(prototype, revision, form),
        ] as const,
    );
    return [...tables, ...programs];
  });
  const runs = Object.values(state.run);
  return [
    ...revisions,
    ['tables/log.csv', logCsv(state, Object.values(state.entry))],
    ['tables/runs.csv', runsCsv(state, runs)],
    ['tables/readings.csv', readingsCsv(state, runs)],
    ['tables/failures.csv', failuresCsv(state, Object.values(state.failure))],
    [
      'tables/files.csv',
      csvText(
        ['path', 'name_as_attached', 'caption', 'media_type_as_stated', 'size_bytes', 'sha256'],
        own.map(({ path, name, caption, mediaType, content, sha256 }) => [
          path,
          name,
          caption,
          mediaType,
          content.length,
          sha256,
        ]),
      ),
    ],
  ];
}

function templateFiles(): (readonly [string, Uint8Array])[] {
  const sets = { checklists: builtinChecklists, cards: builtinCards, ladders: builtinLadders };
  return Object.entries(sets).flatMap(([folder, templates]) =>
    templates.map((template) => [`templates/${folder}/${template.id}.json`, jsonBytes(template)] as const),
  );
}

interface Printed {
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly records: ReadonlyMap<string, ReportDocument>;
  readonly reports: ReadonlyMap<string, string>;
}

/** Printing takes about a second a report; after years of work nobody wants to wait for hundreds of them. */
export const mostPrinted = { revisions: 12, runs: 24 } as const;

/** A design record for each of the newest revisions, a report for each of the newest runs that came to an end. */
async function printedReports(
  { extract, prototypeId, attached, fonts, paper }: PayloadSource,
  state: NotebookState,
): Promise<Result<Printed>> {
  const contents = new Map(
    [...attached.own, ...attached.others].map(({ sha256, content }) => [sha256, content]),
  );
  const { at = extract.createdAt, by = '' } = extract.entries.at(-1) ?? {};
  const source: ReportSource = {
    state,
    author: by,
    now: at,
    paper,
    attachment: async (sha256) => contents.get(sha256),
  };
  const files = new Map<string, Uint8Array>();
  const records = new Map<string, ReportDocument>();
  const reports = new Map<string, string>();
  const paths = new FreePaths();
  async function print(id: string, stem: string, document: ReportDocument): Promise<Result<null>> {
    const drawn = await renderPdf(document, fonts);
    if (!drawn.ok) return drawn;
    const path = paths.path(`reports/${stem}`, '.pdf');
    reports.set(id, path);
    files.set(path, drawn.value);
    return good(null);
  }
  for (const [id, { letter }] of ofPrototype(state.revision, prototypeId).slice(-mostPrinted.revisions)) {
    const built = await revisionReport(source, id);
    if (!built.ok) return built;
    records.set(id, built.value);
    const done = await print(id, `revision-${plainName(letter, 'x')}`, built.value);
    if (!done.ok) return done;
  }
  const ended = ofPrototype(state.run, prototypeId).filter(
    ([, { status }]) => status === 'finished' || status === 'aborted',
  );
  for (const [id, { number }] of ended.slice(-mostPrinted.runs)) {
    const built = await runReport(source, id);
    if (!built.ok) continue; // its card or revision is not on record; the run itself is in the tables
    const done = await print(id, `run-${number}`, built.value);
    if (!done.ok) return done;
  }
  return good({ files, records, reports });
}
