/** The tables of a prototype for spreadsheets and scripts: each column's name ends with its unit. */
import { outcomeOf } from '../../checklist/index.ts';
import { assess, type Figure } from '../../margins/index.ts';
import {
  type Body,
  type FailureReport,
  isKnown,
  type LogEntry,
  type NotebookState,
  type Part,
  type Prototype,
  type QuantityField,
  type Revision,
  type Run,
} from '../../notebook/index.ts';
import { standardUncertainty, toDisplay } from '../../quantity/index.ts';
import { type CsvCell, csvText } from './csv.ts';
import type { DesignFigure, DesignFigures } from './design-figures.ts';

/** Every figure and the mass table, one a row, under the names that C and Python have too. */
export function figuresCsv({ figures, parts }: DesignFigures): string {
  const row = ({ identifier, title, value, unit, uncertainty, how }: DesignFigure, of = ''): CsvCell[] => [
    identifier,
    of === '' ? title : `${title} (${of})`,
    value,
    unit,
    uncertainty > 0 ? uncertainty : undefined,
    how,
  ];
  return csvText(
    ['name', 'title', 'value', 'unit', 'standard_uncertainty', 'how'],
    [
      ...figures.map((figure) => row(figure)),
      ...parts.flatMap((part) => part.figures.map((figure) => row(figure, part.name))),
    ],
  );
}

const LENGTHS = ['length', 'width', 'height', 'diameter', 'bore'] as const;

/** The mass table as it was entered; heights of the ballast follow from its drive and are among the figures. */
export function massTableCsv(revision: Revision): string {
  const quantities = ['mass_kg', 'forward_m', 'left_m', 'height_m'].flatMap((name) => {
    const [what = ''] = name.split('_');
    return [name, name.replace('_', '_standard_uncertainty_'), `${what}_as_typed`, `${what}_how`];
  });
  const parts = Object.values(revision.parts).sort((a, b) => a.order - b.order);
  return csvText(
    [
      'number',
      'part',
      'role',
      ...quantities,
      'body',
      'body_axis',
      ...LENGTHS.map((name) => `body_${name}_m`),
      'body_roll_inertia_kg_m2',
      'note',
    ],
    parts.map((part, index) => [
      index + 1,
      part.name,
      part.role,
      ...placeCells(part),
      ...bodyCells(part.body),
      part.note,
    ]),
  );
}

function placeCells({ mass, x, y, z }: Part): CsvCell[] {
  return [mass, x, y, z].flatMap((field) =>
    isKnown(field)
      ? [field.si, field.u > 0 ? field.u : undefined, field.typed, howKnown(field)]
      : [undefined, undefined, undefined, howKnown(field)],
  );
}

function howKnown(field: QuantityField | undefined): string {
  if (field === undefined) return 'blank';
  if (!isKnown(field)) return field.note ? `not measured: ${field.note}` : 'not measured';
  return [field.basis, field.instrument && `with ${field.instrument}`, field.on && `on ${field.on}`]
    .filter(Boolean)
    .join(' ');
}

function bodyCells(body: Body): CsvCell[] {
  const fields = new Map(Object.entries(body));
  const si = (key: string): CsvCell => {
    const field = fields.get(key) as QuantityField | undefined;
    return isKnown(field) ? field.si : undefined;
  };
  return [body.shape, 'axis' in body ? body.axis : '', ...LENGTHS.map(si), si('rollInertia')];
}

export function marginsCsv(prototype: Prototype, revision: Revision): string {
  const { margins, figures } = assess(prototype, revision);
  return csvText(
    [
      'margin',
      'title',
      'verdict',
      'capability',
      'capability_standard_uncertainty',
      'demand',
      'demand_standard_uncertainty',
      'unit',
      'margin_of_safety',
      'margin_of_safety_standard_uncertainty',
      'lower_bound_95_percent',
    ],
    margins.map((margin) => [
      margin.id,
      margin.title,
      margin.verdict,
      ...valueCells(figures.get(margin.capability)),
      ...valueCells(figures.get(margin.demand)),
      margin.unit,
      ...(margin.verdict === 'unknown'
        ? [undefined, undefined, undefined]
        : [margin.marginOfSafety.value, standardUncertainty(margin.marginOfSafety), margin.lowerBound]),
    ]),
  );
}

function valueCells(figure: Figure | undefined): CsvCell[] {
  const result = figure?.result;
  return result?.ok ? [result.value.value, standardUncertainty(result.value)] : [undefined, undefined];
}

function letterOf(state: NotebookState, revision: string): string {
  return state.revision[revision]?.letter ?? '';
}

/** The log, its text as it was written (Markdown). */
export function logCsv(state: NotebookState, entries: readonly LogEntry[]): string {
  return csvText(
    ['number', 'at', 'author', 'revision', 'title', 'text', 'files'],
    entries.map(({ number, at, author, revision, title, text, attachments }) => [
      number,
      at,
      author,
      letterOf(state, revision),
      title,
      text,
      Object.values(attachments)
        .map(({ name }) => name)
        .join('; '),
    ]),
  );
}

export function runsCsv(state: NotebookState, runs: readonly Run[]): string {
  return csvText(
    [
      'number',
      'revision',
      'fingerprint',
      'card',
      'started_at',
      'started_by',
      'status',
      'outcome',
      'finished_at',
      'signed_by',
      'summary',
    ],
    runs.map((run) => [
      run.number,
      letterOf(state, run.revision),
      run.fingerprint,
      state.card[run.card]?.title,
      run.startedAt,
      run.startedBy,
      run.status,
      run.outcome,
      run.finishedAt,
      run.signedBy,
      run.summary,
    ]),
  );
}

/** What was read on each run beside what its card had predicted, in the unit that the card asks for. */
export function readingsCsv(state: NotebookState, runs: readonly Run[]): string {
  return csvText(
    [
      'run',
      'reading',
      'unit',
      'predicted',
      'predicted_standard_uncertainty',
      'read',
      'read_standard_uncertainty',
      'as_read',
      'judgement',
    ],
    runs.flatMap((run) => {
      const card = state.card[run.card];
      return (card ? outcomeOf(card, run) : []).map(
        ({ label, unit, predicted, measured, words }): CsvCell[] => [
          run.number,
          label,
          unit,
          ...(predicted ? inUnit(predicted.value, predicted.u, unit) : [undefined, undefined]),
          ...(measured ? inUnit(measured.si, measured.u, unit) : [undefined, undefined]),
          measured?.typed,
          words,
        ],
      );
    }),
  );
}

/** A width is converted as the difference of two values: a scale need not begin at nought. */
function inUnit(si: number, u: number, unit: string): [value: number, uncertainty: number | undefined] {
  const value = toDisplay(si, unit);
  return [value, u > 0 ? Math.abs(toDisplay(si + u, unit) - value) : undefined];
}

export function failuresCsv(state: NotebookState, failures: readonly FailureReport[]): string {
  const runNumber = (id: string | undefined): CsvCell =>
    id === undefined ? undefined : state.run[id]?.number;
  return csvText(
    [
      'number',
      'at',
      'author',
      'revision',
      'run',
      'part',
      'title',
      'severity',
      'probability',
      'status',
      'observed',
      'effect',
      'causes',
      'corrective_action',
      'corrected_in',
      'verified_by_run',
    ],
    failures.map((failure) => [
      failure.number,
      failure.at,
      failure.author,
      letterOf(state, failure.revision),
      runNumber(failure.run),
      failure.part === undefined ? undefined : state.revision[failure.revision]?.parts[failure.part]?.name,
      failure.title,
      failure.severity,
      failure.probability,
      failure.status,
      failure.observed,
      failure.effect,
      failure.causes.join('\n'),
      failure.correctiveAction,
      failure.correctedIn === undefined ? undefined : letterOf(state, failure.correctedIn),
      runNumber(failure.verifiedBy),
    ]),
  );
}
