/** The figures of a revision as names that an expression may use, in calc blocks, templates and on the command line. */
import { dimension, type Problem, type Scope, type ScopeValue } from '../quantity/index.ts';
import { constantSpecs } from './constants.ts';
import { notApplicable } from './evaluate.ts';
import { factSpecs } from './facts.ts';
import type { Assessment, FigureSpec } from './figure.ts';
import { isRowFigure } from './part-figures.ts';
import { roleFacts } from './role-facts.ts';
import { wiring } from './wiring.ts';

const known = new WeakMap<Assessment, Scope>();

/** Every figure that is known, by name; the figures of single parts and sections are left out. */
export function scopeOf(assessment: Assessment): Scope {
  const before = known.get(assessment);
  if (before) return before;
  const scope = new Map<string, ScopeValue>();
  for (const [name, { result, unit }] of assessment.figures) {
    if (result.ok && !isRowFigure(name)) scope.set(name, { value: result.value, dimension: dimension(unit) });
  }
  known.set(assessment, scope);
  return scope;
}

/** Why a name is not in the scope; undefined where it is. */
export function whyUnknown(assessment: Assessment, name: string): Problem | undefined {
  const figure = isRowFigure(name) ? undefined : assessment.figures.get(name);
  if (figure) return figure.result.ok ? undefined : figure.result.problem;
  if (figureNames.some((entry) => entry.name === name)) return notApplicable(name);
  return { code: 'figure.unknown', place: name, figures: { name } };
}

export interface FigureName extends FigureSpec {
  readonly kind: 'fact' | 'constant' | 'calculated';
  /** Ids of the calculations that give it, one for each kind of hardware that needs its own. */
  readonly calculations: readonly string[];
}

/** Every name that an expression may use, in the order of the handbook. */
export const figureNames: readonly FigureName[] = collect();

function collect(): FigureName[] {
  const names = new Map<string, FigureName>();
  const plain = ({ name, title, unit, display, group }: FigureSpec): FigureSpec => ({
    name,
    title,
    unit,
    display,
    group,
  });
  for (const spec of [...factSpecs, ...roleFacts]) {
    names.set(spec.name, { ...plain(spec), kind: 'fact', calculations: [] });
  }
  for (const spec of constantSpecs)
    names.set(spec.name, { ...plain(spec), kind: 'constant', calculations: [] });
  for (const row of wiring) {
    for (const spec of Object.values(row.gives)) {
      const calculations = new Set([...(names.get(spec.name)?.calculations ?? []), row.calculation]);
      names.set(spec.name, { ...plain(spec), kind: 'calculated', calculations: [...calculations] });
    }
  }
  return [...names.values()];
}
