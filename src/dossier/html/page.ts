/**
 * The design as one page for any browser, offline: style inside, no script, nothing loaded, not even from beside it.
 * It shows what the printed reports show, from the same trees.
 */
import { assess, type Verdict } from '../../margins/index.ts';
import type { NotebookState, Prototype, Revision } from '../../notebook/index.ts';
import type { Fonts, ReportDocument } from '../../report/index.ts';
import type { AttachedFile } from '../attached-files.ts';
import type { Question } from '../questions.ts';
import { newestRevision, ofPrototype } from '../selection.ts';
import { type BlockContext, blockElements, tableElement } from './blocks.ts';
import { type Content, element, escaped, inside, type Markup } from './markup.ts';
import { Outlines } from './outlines.ts';
import { pictureRoom } from './pictures.ts';
import { styleWith } from './style.ts';

export interface PageSource {
  /** Records of this prototype. */
  readonly state: NotebookState;
  readonly prototypeId: string;
  readonly questions: readonly Question[];
  /** Design record by id, of the revisions that are shown in full, in their order. */
  readonly records: ReadonlyMap<string, ReportDocument>;
  /** Path of the printed report by id of the revision or run. */
  readonly reports: ReadonlyMap<string, string>;
  readonly files: readonly AttachedFile[];
  readonly fonts: Fonts;
  /** Hash of the last line of the journal. */
  readonly head: string;
  /** Time and author of the newest entry. */
  readonly at: string;
  readonly by: string;
}

export function designPage(source: PageSource): string {
  const { state, prototypeId } = source;
  const prototype = state.prototype[prototypeId];
  if (!prototype) throw new Error('a page needs its prototype');
  const pathOf = new Map(source.files.map(({ content, path }) => [content, path]));
  const context: BlockContext = { picture: pictureRoom(pathOf), outlines: new Outlines() };
  const shown = [...source.records].reverse();
  const body = [
    element(
      'header',
      {},
      element('h1', {}, prototype.name),
      element('p', { class: 'quiet' }, prototype.kind),
      prototype.description === '' ? '' : element('p', {}, prototype.description),
      titleBlock(source, prototype),
      navigation(),
    ),
    element(
      'main',
      {},
      section('questions', 'What you may want to ask', questionList(source.questions)),
      section('revisions', 'Revisions', revisionTable(source, prototype)),
      shown.map(([id, document], index) =>
        revisionDetails(state.revision[id], document, index === 0, context),
      ),
      section('failures', 'Failures', failureTable(state)),
      section('runs', 'Runs', runTable(source)),
      section('files', 'Attached files', fileTable(source.files)),
    ),
    element(
      'footer',
      {},
      element(
        'p',
        {},
        'Made from the notebook; figures are those that were entered, and what follows from them. It proves no design safe and approves no test. The page runs nothing and loads nothing.',
      ),
    ),
  ];
  return [
    '<!doctype html>',
    '<html lang="en-GB">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(prototype.name)}</title>`,
    `<style>${styleWith(source.fonts)}</style>`,
    '</head>',
    `<body>${inside([...body, context.outlines.definitions()])}</body>`,
    '</html>',
    '',
  ].join('\n');
}

function section(id: string, title: string, ...content: readonly Content[]): Markup {
  return element('section', { id }, element('h2', {}, title), ...content);
}

function navigation(): Markup {
  const places = [
    ['questions', 'Questions'],
    ['revisions', 'Revisions'],
    ['failures', 'Failures'],
    ['runs', 'Runs'],
    ['files', 'Files'],
  ] as const;
  const links = places.map(([id, title]) => element('li', {}, element('a', { href: `#${id}` }, title)));
  return element('nav', { 'aria-label': 'Parts of this page' }, element('ul', {}, links));
}

function titleBlock({ state, prototypeId, head, at, by }: PageSource, prototype: Prototype): Markup {
  const newest = newestRevision(state, prototypeId)?.revision;
  const pairs: readonly (readonly [string, string])[] = [
    ['Prototype', prototype.name],
    ['Newest revision', newest ? `${newest.letter}, ${newest.status}` : 'none'],
    ['Recorded up to', at],
    ['Last entry by', by],
    ['Head of the journal', head],
  ];
  const cells = pairs.map(([label, value]) =>
    element('div', {}, element('dt', {}, label), element('dd', {}, value)),
  );
  return element('dl', { class: 'title-block' }, cells);
}

function questionList(questions: readonly Question[]): Markup {
  if (questions.length === 0) return element('p', {}, 'Nothing is known to be open.');
  return element(
    'ul',
    {},
    questions.map(({ kind, text }) => element('li', {}, element('strong', {}, `${kind}: `), text)),
  );
}

function revisionTable({ state, prototypeId, reports }: PageSource, prototype: Prototype): Markup {
  const rows = ofPrototype(state.revision, prototypeId).map(([id, revision]): Content[] => {
    const from = revision.from === undefined ? undefined : state.revision[revision.from];
    return [
      revision.letter,
      revision.status,
      from?.letter ?? '–',
      day(revision.createdAt),
      revision.reason,
      verdictsInWords(prototype, revision),
      reportLink(reports.get(id)),
    ];
  });
  return tableElement('', ['Revision', 'Status', 'From', 'Begun', 'Reason', 'Margins', 'Printed'], rows);
}

const VERDICTS: readonly Verdict[] = ['fails', 'in doubt', 'unknown', 'holds'];

function verdictsInWords(prototype: Prototype, revision: Revision): string {
  const { margins } = assess(prototype, revision);
  const counts = VERDICTS.map(
    (verdict) => [verdict, margins.filter((margin) => margin.verdict === verdict).length] as const,
  );
  const words = counts.filter(([, count]) => count > 0).map(([verdict, count]) => `${count} ${verdict}`);
  return words.length === 0 ? 'none' : words.join(', ');
}

function revisionDetails(
  revision: Revision | undefined,
  { blocks, titleBlock: pairs }: ReportDocument,
  open: boolean,
  context: BlockContext,
): Markup {
  const letter = revision?.letter ?? '';
  const cells = pairs.map(([label, value]) =>
    element('div', {}, element('dt', {}, label), element('dd', {}, value)),
  );
  return element(
    'details',
    { open },
    element('summary', {}, element('h2', {}, `Revision ${letter}`)),
    element('dl', { class: 'title-block' }, cells),
    ...blockElements(blocks, context),
  );
}

function failureTable(state: NotebookState): Markup {
  const failures = Object.values(state.failure).sort((a, b) => a.number - b.number);
  if (failures.length === 0) return element('p', {}, 'None on record.');
  const letter = (id: string | undefined): string =>
    id === undefined ? '–' : (state.revision[id]?.letter ?? '–');
  return tableElement(
    '',
    ['No.', 'What broke', 'Status', 'Revision', 'Corrected in', 'Verified by run'],
    failures.map((failure) => [
      String(failure.number),
      failure.title,
      failure.status,
      letter(failure.revision),
      letter(failure.correctedIn),
      failure.verifiedBy === undefined ? '–' : String(state.run[failure.verifiedBy]?.number ?? '–'),
    ]),
  );
}

function runTable({ state, reports }: PageSource): Markup {
  const runs = Object.entries(state.run).sort(([, a], [, b]) => a.number - b.number);
  if (runs.length === 0) return element('p', {}, 'None on record.');
  return tableElement(
    '',
    ['Run', 'Revision', 'Test card', 'Begun', 'Outcome', 'Summary', 'Printed'],
    runs.map(([id, run]) => [
      String(run.number),
      state.revision[run.revision]?.letter ?? '–',
      state.card[run.card]?.title ?? '–',
      day(run.startedAt),
      run.outcome ?? run.status,
      run.summary,
      reportLink(reports.get(id)),
    ]),
  );
}

/** Not linked: an attached file may be anything, and a browser would open it. */
function fileTable(files: readonly AttachedFile[]): Markup {
  if (files.length === 0) return element('p', {}, 'None.');
  return tableElement(
    'Where they are in the dossier',
    ['File', 'As attached', 'Caption', 'Bytes'],
    files.map(({ path, name, caption, content }) => [
      element('code', {}, path),
      name,
      caption,
      String(content.length),
    ]),
    [false, false, false, true],
  );
}

function reportLink(path: string | undefined): Content {
  return path === undefined ? '–' : element('a', { href: path }, 'PDF');
}

function day(at: string): string {
  return at.slice(0, 10);
}
