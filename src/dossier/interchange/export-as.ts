/** The four forms in which the figures of a revision go out to other programs. */
import type { Prototype, Revision } from '../../notebook/index.ts';
import { cHeader } from './c-header.ts';
import { type DesignFigures, designFigures } from './design-figures.ts';
import { designJson } from './design-json.ts';
import { pythonConstants } from './python-constants.ts';
import { figuresCsv } from './tables.ts';

export const exportForms = ['c', 'python', 'csv', 'json'] as const;
export type ExportForm = (typeof exportForms)[number];

const WRITERS: Readonly<Record<ExportForm, (design: DesignFigures) => string>> = {
  c: cHeader,
  python: pythonConstants,
  csv: figuresCsv,
  json: (design) => `${JSON.stringify(designJson(design), undefined, 2)}\n`,
};

/** Ending of a file in that form. */
export const exportEndings: Readonly<Record<ExportForm, string>> = {
  c: 'h',
  python: 'py',
  csv: 'csv',
  json: 'json',
};

/** All figures and the mass table of a revision, as the text of a file. */
export function exportRevision(prototype: Prototype, revision: Revision, form: ExportForm): string {
  return WRITERS[form](designFigures(prototype, revision));
}
