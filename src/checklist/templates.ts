/**
 * Reading templates that a club has written for itself: their form, and then their sense. A template with a name
 * that no figure has, a unit that nobody knows or an item without a source is refused as a whole, before it can put
 * a wrong limit in front of people.
 */
import type { z } from 'zod';
import { bad, good, type Problem, type Result } from '../quantity/index.ts';
import { measuredUnits } from './measured.ts';
import {
  checkCondition,
  checkExample,
  checkFigureName,
  checkLimit,
  checkText,
  checkUnit,
  checkWait,
} from './sense.ts';
import {
  type CardTemplate,
  type ChecklistTemplate,
  cardTemplate,
  checklistTemplate,
  type TemplateItem,
  type TemplatePause,
} from './template.ts';

/** Five to nine items a pause: longer ones are not read to the end (digests of the surgical checklist studies). */
export const SHORTEST_PAUSE = 5;
export const LONGEST_PAUSE = 9;

/** Something that works but is better changed. */
export interface Warning {
  readonly place: string;
  readonly text: string;
}

export type Template = { readonly warnings: readonly Warning[] } & (
  | { readonly kind: 'checklist'; readonly template: ChecklistTemplate }
  | { readonly kind: 'card'; readonly template: CardTemplate }
);

/** A template from the data of its file: a checklist where it has pauses, else a card. */
export function readTemplate(json: unknown): Result<Template> {
  const isChecklist = typeof json === 'object' && json !== null && 'pauses' in json;
  return isChecklist ? readChecklistTemplate(json) : readCardTemplate(json);
}

export function readChecklistTemplate(json: unknown): Result<Extract<Template, { kind: 'checklist' }>> {
  const read = readForm(checklistTemplate, json);
  if (!read.ok) return read;
  const template = read.value;
  const items = template.pauses.flatMap((pause) => pause.items);
  const fault = firstFault([
    () => repeated(items, `checklist ${template.id}`),
    ...items.map((item) => () => faultOfItem(item, `${template.id}, item ${item.id}`)),
  ]);
  if (fault) return { ok: false, problem: fault };
  const warnings = template.pauses.flatMap((pause) => warningsOf(template, pause));
  return good({ kind: 'checklist', template, warnings });
}

/** @param checklists  ids of the checklists that a card may name; left out, any id is taken */
export function readCardTemplate(
  json: unknown,
  checklists?: readonly string[],
): Result<Extract<Template, { kind: 'card' }>> {
  const read = readForm(cardTemplate, json);
  if (!read.ok) return read;
  const template = read.value;
  const place = `card ${template.id}`;
  const fault = firstFault([
    () => repeated(template.abortLimits, `${place}, abort limits`),
    () => repeated(template.readings, `${place}, readings`),
    ...[template.purpose, template.setUp, template.prerequisites, ...template.steps].map(
      (text) => () => checkText(text, place),
    ),
    ...template.predictions.map((name) => () => checkFigureName(name, `${place}, predictions`)),
    ...template.abortLimits.map(
      ({ id, text, when }) =>
        () =>
          checkText(text, `${place}, abort limit ${id}`) ??
          (when === undefined ? undefined : checkCondition(when, `${place}, abort limit ${id}`)),
    ),
    ...template.readings.map(
      ({ id, unit, name, measures, when }) =>
        () =>
          checkUnit(unit, `${place}, reading ${id}`) ??
          (measures === undefined ? undefined : checkMeasures(measures, unit, `${place}, reading ${id}`)) ??
          (name === undefined ? undefined : checkLimit(name, unit, `${place}, reading ${id}`)) ??
          (when === undefined ? undefined : checkCondition(when, `${place}, reading ${id}`)),
    ),
    () => unknownChecklist(template, checklists, place),
  ]);
  return fault ? { ok: false, problem: fault } : good({ kind: 'card', template, warnings: [] });
}

/** The data in the form asked for, or the first thing that is wrong with its form. */
export function readForm<T>(schema: z.ZodType<T>, json: unknown): Result<T> {
  const parsed = schema.safeParse(json);
  if (parsed.success) return good(parsed.data);
  const [issue] = parsed.error.issues;
  const path = (issue?.path ?? []).map(String);
  if (path.at(-1) === 'source') return bad('template.no-source', placeOf(json, path));
  return bad('template.not-the-form', idOf(json) ?? 'template', {
    path: path.length > 0 ? path.join(' / ') : 'the top',
    detail: (issue?.message ?? 'it does not have the expected form').replace(/\.$/, ''),
  });
}

/** The id of the item that a path of the form leads into, where it has one. */
function placeOf(json: unknown, path: readonly string[]): string {
  let here: unknown = json;
  let last: string | undefined;
  for (const segment of path) {
    here = typeof here === 'object' && here !== null ? (here as Record<string, unknown>)[segment] : undefined;
    last = idOf(here) ?? last;
  }
  return [idOf(json) ?? 'template', last === undefined ? path.join(' / ') : `item ${last}`].join(', ');
}

function idOf(value: unknown): string | undefined {
  const id = typeof value === 'object' && value !== null && 'id' in value ? value.id : undefined;
  return typeof id === 'string' ? id.slice(0, 60) : undefined;
}

/** The first of the checks that finds something. */
export function firstFault(checks: readonly (() => Problem | undefined)[]): Problem | undefined {
  for (const check of checks) {
    const fault = check();
    if (fault) return fault;
  }
  return undefined;
}

function faultOfItem(item: TemplateItem, place: string): Problem | undefined {
  const lacks = (field: string): Problem => ({
    code: 'template.lacks',
    place,
    figures: { kind: item.kind, field },
  });
  if (item.source.trim() === '') return { code: 'template.no-source', place, figures: {} };
  if (item.kind === 'measured' && item.measured === undefined) return lacks('measured');
  if (item.kind === 'choice' && item.choices === undefined) return lacks('choices');
  if ((item.kind === 'wait') !== (item.wait !== undefined)) return lacks('wait');
  if (item.measures && !item.measured) return lacks('measured');
  if ([item.measured, item.choices, item.wait].filter(Boolean).length > 1) {
    return lacks('only one of measured, choices and wait');
  }
  const { measured, measures, when, text, detail, wait } = item;
  return firstFault([
    () => (when === undefined ? undefined : checkCondition(when, place)),
    () => checkText(text, place),
    () => (detail === undefined ? undefined : checkText(detail, place)),
    () => (measured ? checkUnit(measured.unit, place) : undefined),
    () => (measured ? checkExample(measured.example, measured.unit, place) : undefined),
    ...[measured?.low, measured?.high].map(
      (limit) => () =>
        measured && limit !== undefined ? checkLimit(limit, measured.unit, place) : undefined,
    ),
    () => (measured && measures ? checkMeasures(measures, measured.unit, place) : undefined),
    () => (wait ? checkWait(wait.time, place) : undefined),
    () => (wait?.otherwise === undefined ? undefined : checkLimit(wait.otherwise, 's', place)),
    () => sameChoice(item, place),
  ]);
}

/** A reading that measures a name is of the kind that the name is. */
function checkMeasures(name: keyof typeof measuredUnits, unit: string, place: string): Problem | undefined {
  return checkLimit(`1 ${measuredUnits[name]}`, unit, place);
}

function sameChoice({ choices = [] }: TemplateItem, place: string): Problem | undefined {
  const texts = choices.map(({ text }) => text);
  const twice = texts.find((text, index) => texts.indexOf(text) !== index);
  return twice === undefined ? undefined : { code: 'template.duplicate', place, figures: { id: twice } };
}

/** An id that is used twice. */
export function repeated(entries: readonly { readonly id: string }[], place: string): Problem | undefined {
  const seen = new Set<string>();
  for (const { id } of entries) {
    if (seen.has(id)) return { code: 'template.duplicate', place, figures: { id } };
    seen.add(id);
  }
  return undefined;
}

function unknownChecklist(
  template: CardTemplate,
  known: readonly string[] | undefined,
  place: string,
): Problem | undefined {
  const stranger = known && template.checklists.find((id) => !known.includes(id));
  return stranger === undefined
    ? undefined
    : {
        code: 'template.unknown-checklist',
        place,
        figures: { id: stranger, known: known?.join(', ') ?? '' },
      };
}

function warningsOf(template: ChecklistTemplate, pause: TemplatePause): readonly Warning[] {
  const place = `${template.id}, ${pause.title}`;
  const count = largestCount(pause);
  const warnings: Warning[] = [];
  if (count > LONGEST_PAUSE) {
    warnings.push({
      place,
      text: `${count} items may come in one pause; more than ${LONGEST_PAUSE} are not read to the end. Divide it.`,
    });
  }
  const firstOther = pause.items.findIndex((item) => !item.critical);
  if (firstOther >= 0 && pause.items.slice(firstOther).some((item) => item.critical)) {
    warnings.push({ place, text: 'a killer item stands behind an ordinary one. Put killer items first.' });
  }
  return warnings;
}

/**
 * How many items of the pause can come at once: items whose conditions begin with the same words and end in opposite
 * comparisons (`a > b`, `a <= b`) exclude one another and count once.
 */
function largestCount(pause: TemplatePause): number {
  const conditions = new Set(pause.items.flatMap((item) => item.when ?? []));
  const opposites = [
    [' < ', ' >= '],
    [' > ', ' <= '],
  ] as const;
  const excluded = pause.items.filter(({ when }) =>
    opposites.some(
      ([sign, opposite]) => when?.includes(sign) && conditions.has(when.replace(sign, opposite)),
    ),
  );
  return pause.items.length - excluded.length;
}
