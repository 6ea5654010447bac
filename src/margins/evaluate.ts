/**
 * Computes figures from their origins, each once and in the order in which they depend on one another. Facts
 * become independent inputs named after their place in the records, so that whatever two figures share stays
 * shared; a figure that lacks an input names the facts to enter.
 */

import type { Calculation } from '../mechanics/index.ts';
import { DomainError } from '../mechanics/index.ts';
import { isKnown, type KnownQuantity } from '../notebook/index.ts';
import { exact, independent, type Problem, propagate, type Uncertain } from '../quantity/index.ts';
import type { Figure, FigureResult, Trace } from './figure.ts';
import {
  type BoundFeed,
  type CalculationOrigin,
  type CalculationUse,
  type ChoiceSpec,
  choiceSpecs,
  type FactOrigin,
  type Origin,
  type Origins,
} from './origin.ts';
import { registry } from './registry.ts';
import { remembered } from './remembered.ts';
import { contributionName } from './trace.ts';

export interface Evaluation {
  /** The figure of that name, computed when first asked for; undefined where none applies. */
  figure(name: string): Figure | undefined;
}

/** @param standardUncertaintyOf  the uncertainty to carry for each fact; its own unless told otherwise */
export function evaluation(
  origins: Origins,
  standardUncertaintyOf: (field: KnownQuantity) => number = (field) => field.u,
): Evaluation {
  const figures = new Map<string, Figure>();
  const uses = new Map<CalculationUse, UseResult>();

  const figure = (name: string): Figure | undefined => {
    const known = figures.get(name);
    if (known) return known;
    const origin = origins.get(name);
    if (!origin) return undefined;
    const made: Figure = { ...origin.spec, result: resultOf(origin), trace: traceOf(origin) };
    figures.set(name, made);
    return made;
  };

  const resultOf = (origin: Origin): FigureResult => {
    switch (origin.kind) {
      case 'constant':
        return { ok: true, value: exact(origin.value) };
      case 'fact':
        return factResult(origin, standardUncertaintyOf);
      case 'undecided':
        return missingResult([origin.choice], origin.spec.title, origins);
      case 'calculation': {
        const made = uses.get(origin.use) ?? compute(origin);
        uses.set(origin.use, made);
        return outputResult(made, origin);
      }
    }
  };

  const compute = ({ use, spec }: CalculationOrigin): UseResult => {
    const calculation = registry.get(use.calculation);
    if (!calculation)
      throw new Error(`figure ${spec.name} is wired to “${use.calculation}”, which is not registered`);
    const inputs: Record<string, Uncertain | readonly Uncertain[]> = {};
    const missing = new Set<string>();
    let fault: Problem | undefined;
    for (const [input, symbol] of Object.entries(calculation.inputs)) {
      const feed = use.inputs[input];
      const fed = feed ? gather(feed, figure) : NOTHING;
      if (fed.ok) inputs[input] = fed.value;
      else if (symbol.default !== undefined && (!feed || feed.optional))
        inputs[input] = exact(symbol.default);
      else {
        for (const name of fed.missing) missing.add(name);
        if (fed.missing.length === 0) fault ??= fed.problem;
      }
    }
    if (missing.size > 0) return missingResult([...missing], spec.title, origins);
    if (fault) return { ok: false, problem: fault, missing: [] };
    const single = Object.keys(calculation.outputs).length === 1;
    return run(calculation, inputs, single ? spec.title : calculation.title);
  };

  return { figure };
}

type UseResult =
  | { readonly ok: true; readonly values: Readonly<Record<string, Uncertain>> }
  | Extract<FigureResult, { ok: false }>;

type Gathered =
  | { readonly ok: true; readonly value: Uncertain | readonly Uncertain[] }
  | Extract<FigureResult, { ok: false }>;

/** An input that nothing feeds and that has no default: a fault of the wiring, which a test rules out. */
const NOTHING: Gathered = {
  ok: false,
  problem: { code: 'figure.not-applicable', place: 'calculation', figures: { name: 'an input' } },
  missing: [],
};

function gather(feed: BoundFeed, figure: Evaluation['figure']): Gathered {
  if (typeof feed.from === 'string') return resultNamed(feed.from, figure);
  if (feed.from.length === 0) {
    return {
      ok: false,
      problem: notApplicable(feed.empty ?? 'list'),
      missing: feed.empty ? [feed.empty] : [],
    };
  }
  const values: Uncertain[] = [];
  const missing: string[] = [];
  let fault: Problem | undefined;
  for (const name of feed.from) {
    const result = resultNamed(name, figure);
    if (result.ok) values.push(result.value);
    else {
      missing.push(...result.missing);
      if (result.missing.length === 0) fault ??= result.problem;
    }
  }
  if (missing.length === 0 && !fault) return { ok: true, value: values };
  return { ok: false, problem: fault ?? notApplicable('list'), missing };
}

function resultNamed(name: string, figure: Evaluation['figure']): FigureResult {
  return figure(name)?.result ?? { ok: false, problem: notApplicable(name), missing: [] };
}

export function notApplicable(name: string): Problem {
  return { code: 'figure.not-applicable', place: name, figures: { name } };
}

function factResult(
  origin: FactOrigin,
  standardUncertaintyOf: (field: KnownQuantity) => number,
): FigureResult {
  const { field, spec } = origin;
  if (origin.count !== undefined) return { ok: true, value: exact(origin.count) };
  if (isKnown(field)) {
    const name = contributionName(origin);
    return { ok: true, value: independent(name, field.si, standardUncertaintyOf(field)) };
  }
  if (field === undefined && origin.blank !== undefined) return { ok: true, value: exact(origin.blank) };
  return { ok: false, problem: missingProblem(origin, spec.title, 0), missing: [spec.name] };
}

/** The result of a figure that waits for facts or choices: the first is named, the rest are counted. */
export function missingResult(
  missing: readonly string[],
  place: string,
  origins: Origins,
): Extract<FigureResult, { ok: false }> {
  const [first = ''] = missing;
  const origin = origins.get(first);
  const choice = choiceSpecs.find(({ name }) => name === first);
  const problem =
    origin?.kind === 'fact'
      ? missingProblem(origin, place, missing.length - 1)
      : choice
        ? missingProblem(choice, place, missing.length - 1)
        : notApplicable(first);
  return { ok: false, problem, missing };
}

function missingProblem(what: FactOrigin | ChoiceSpec, place: string, others: number): Problem {
  const title = 'spec' in what ? what.spec.title : what.title;
  const notMeasured = 'field' in what && what.field !== undefined;
  return {
    code: notMeasured ? 'calculation.not-measured' : 'calculation.missing',
    place,
    figures: { name: others > 0 ? `${title} (with ${others} more)` : title, page: what.page },
  };
}

function run(
  calculation: Calculation,
  inputs: Readonly<Record<string, Uncertain | readonly Uncertain[]>>,
  place: string,
): UseResult {
  try {
    const { compute, partials } = remembered(calculation);
    return { ok: true, values: propagate(compute, inputs, partials) };
  } catch (error) {
    if (error instanceof DomainError) return { ok: false, problem: outOfDomain(error, place), missing: [] };
    throw error;
  }
}

export function outOfDomain(error: DomainError, place: string): Problem {
  return {
    code: 'calculation.out-of-domain',
    place,
    figures: { name: error.quantity, value: error.written, requirement: error.requirement },
  };
}

function outputResult(made: UseResult, origin: CalculationOrigin): FigureResult {
  if (!made.ok) return made;
  const value = made.values[origin.output];
  if (value === undefined || Number.isNaN(value.value)) {
    throw new Error(`calculation ${origin.use.calculation} gave no ${origin.output}`);
  }
  return { ok: true, value };
}

function traceOf(origin: Origin): Trace {
  switch (origin.kind) {
    case 'constant':
      return { kind: 'constant', source: origin.source };
    case 'fact':
      return { kind: 'fact', record: origin.record, path: origin.path, field: origin.field };
    case 'undecided': {
      const choice = choiceSpecs.find(({ name }) => name === origin.choice);
      return { kind: 'fact', record: 'revision', path: choice?.path ?? '', field: undefined };
    }
    case 'calculation': {
      const inputs: Record<string, string | readonly string[]> = {};
      for (const [input, feed] of Object.entries(origin.use.inputs)) inputs[input] = feed.from;
      return { kind: 'calculation', calculation: origin.use.calculation, output: origin.output, inputs };
    }
  }
}
