/**
 * From templates and a revision to the checklist of a run: the items that apply, their texts and limits filled in.
 * An item that cannot be decided or put for want of a figure stays on the list and asks for it.
 */
import type { Assessment } from '../margins/index.ts';
import type { ChecklistItem, Prototype, Revision } from '../notebook/index.ts';
import { conditionIn, figureIn, wordingIn } from './evaluate.ts';
import { scopeFor, type TemplateScope } from './scope.ts';
import type { ChecklistTemplate, TemplateItem, TemplatePause } from './template.ts';
import { waitFor } from './wait.ts';

const PHASES = ['before', 'during', 'after'] as const;

/**
 * The items that the people of a run answer, in order: all that come before it, then those under way, then making
 * safe, each in the order of the templates. Templates that are only read are left out (`readingList`).
 */
export function generateChecklist(
  templates: readonly ChecklistTemplate[],
  prototype: Prototype,
  revision: Revision,
  assessment: Assessment,
): ChecklistItem[] {
  const items = itemsOf(templates, 'ticked', scopeFor(prototype, revision, assessment));
  return PHASES.flatMap((phase) => items.filter((item) => item.phase === phase));
}

/** The items of the templates that are kept in view and read aloud, never ticked: the stop procedure. */
export function readingList(
  templates: readonly ChecklistTemplate[],
  prototype: Prototype,
  revision: Revision,
  assessment: Assessment,
): ChecklistItem[] {
  return itemsOf(templates, 'read', scopeFor(prototype, revision, assessment));
}

function itemsOf(
  templates: readonly ChecklistTemplate[],
  use: ChecklistTemplate['use'],
  scope: TemplateScope,
): ChecklistItem[] {
  const once = new Map(templates.map((template) => [template.id, template]));
  return [...once.values()]
    .filter((template) => template.use === use)
    .flatMap((template) =>
      template.pauses.flatMap((pause) =>
        pause.items.flatMap((item) => itemFor(template, pause, item, scope) ?? []),
      ),
    );
}

/** The item as it is put to the people; undefined where its condition is known not to hold. */
function itemFor(
  template: ChecklistTemplate,
  pause: TemplatePause,
  item: TemplateItem,
  scope: TemplateScope,
): ChecklistItem | undefined {
  const applies = item.when === undefined ? undefined : conditionIn(item.when, scope);
  if (applies?.state === 'known' && !applies.value) return undefined;

  const text = wordingIn(item.text, scope);
  const detail = item.detail === undefined ? undefined : wordingIn(item.detail, scope);
  const low = item.measured?.low === undefined ? undefined : figureIn(item.measured.low, scope);
  const high = item.measured?.high === undefined ? undefined : figureIn(item.measured.high, scope);
  const wait = item.wait && waitFor(item.wait, scope);
  const parts = [applies, text, detail, low, high, wait];
  const undecided = applies !== undefined && applies.state !== 'known';

  return {
    id: `${template.id}.${item.id}`,
    pause: pause.title,
    phase: pause.phase,
    kind: item.kind,
    hold: item.hold || item.kind === 'hold',
    critical: item.critical,
    text: undecided ? `If it applies, which is not known yet: ${text.text}` : text.text,
    detail: detail?.text ?? '',
    source: item.source,
    figures: unique(parts.flatMap((part) => part?.figures ?? [])),
    missing: unique(parts.flatMap((part) => part?.missing ?? [])),
    ...(item.measured
      ? {
          measured: {
            unit: item.measured.unit,
            example: item.measured.example,
            ...(low?.state === 'known' ? { low: low.value.si } : {}),
            ...(high?.state === 'known' ? { high: high.value.si } : {}),
          },
        }
      : {}),
    ...(item.measures ? { measures: item.measures } : {}),
    ...(wait ? { wait: wait.wait } : {}),
    ...(item.choices ? { choices: item.choices.map((choice) => ({ ...choice })) } : {}),
  };
}

function unique(names: readonly string[]): string[] {
  return [...new Set(names)];
}
