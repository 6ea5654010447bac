/**
 * Any number, explained: its equation, its inputs with their sources, its uncertainty by input, and which of them
 * is worth measuring better.
 */
import type { Calculation } from '../mechanics/index.ts';
import { isKnown } from '../notebook/index.ts';
import { bad, good, type Result, standardUncertainty, type Uncertain } from '../quantity/index.ts';
import type { Assessment, Figure, Margin } from './figure.ts';
import { marginOfSafetyCalculation } from './margin-of-safety.ts';
import { isRowFigure } from './part-figures.ts';
import { registry } from './registry.ts';
import { contributionName, type FactFigure, factsBehind, inputLabel, isFact } from './trace.ts';

/** What one input adds to the uncertainty of a result. */
export interface BudgetLine {
  /** Name of the fact's figure. */
  readonly name: string;
  /** `mass of Tray, measured`. */
  readonly label: string;
  /** (∂y/∂x)·u(x), signed, in the SI unit of the result. */
  readonly contribution: number;
  /** Of the variance of the result, from 0 to 1. */
  readonly share: number;
}

export interface ExplainedInput {
  /** Name in the calculation. */
  readonly input: string;
  /** TeX. */
  readonly symbol: string;
  readonly meaning: string;
  /** What was fed in; several for a list, none where the calculation's default was taken. */
  readonly figures: readonly Figure[];
  /** The default, in SI, where it was taken. */
  readonly taken?: number;
}

export interface Explanation {
  readonly title: string;
  /** What gives it; absent for a fact or a constant. */
  readonly calculation?: Calculation;
  readonly inputs: readonly ExplainedInput[];
  /** Greatest share first; empty while the result is unknown or where no input states an uncertainty. */
  readonly budget: readonly BudgetLine[];
  /** Inputs that state no uncertainty although they were measured, estimated or read from a data sheet. */
  readonly takenAsExact: readonly Figure[];
  /** In a sentence, which input to measure better; absent where nothing is to be said. */
  readonly advice?: string;
}

/** @returns the explanation, or a problem for a name that the assessment does not have */
export function explainFigure(assessment: Assessment, name: string): Result<Explanation> {
  const figure = assessment.figures.get(name);
  if (!figure) return bad('figure.unknown', name, { name });
  const calculation =
    figure.trace.kind === 'calculation' ? registry.get(figure.trace.calculation) : undefined;
  const feeds = figure.trace.kind === 'calculation' ? figure.trace.inputs : {};
  const value = figure.result.ok ? figure.result.value : undefined;
  return good({
    title: figure.title,
    ...(calculation ? { calculation } : {}),
    inputs: calculation ? inputsOf(assessment, calculation, feeds) : [],
    ...uncertaintyOf(assessment, value, [name]),
  });
}

/** @returns the explanation, or a problem where the revision has no such margin */
export function explainMargin(assessment: Assessment, id: string): Result<Explanation> {
  const margin = assessment.margins.find((candidate) => candidate.id === id);
  if (!margin) return bad('margin.unknown', id, { id });
  const { capability, demand } = margin;
  return good({
    title: margin.title,
    calculation: marginOfSafetyCalculation,
    inputs: inputsOf(assessment, marginOfSafetyCalculation, { capability, demand }),
    ...uncertaintyOf(assessment, safetyOf(margin), [capability, demand]),
  });
}

function safetyOf(margin: Margin): Uncertain | undefined {
  return margin.verdict === 'unknown' ? undefined : margin.marginOfSafety;
}

function inputsOf(
  assessment: Assessment,
  calculation: Calculation,
  feeds: Readonly<Record<string, string | readonly string[]>>,
): ExplainedInput[] {
  return Object.entries(calculation.inputs).map(([input, { symbol, meaning, default: fallback }]) => {
    const names = feeds[input];
    const figures = (names === undefined ? [] : [names].flat())
      .map((name) => assessment.figures.get(name))
      .filter((figure) => figure !== undefined);
    const defaulted = fallback !== undefined && !figures.some((figure) => figure.result.ok);
    return { input, symbol, meaning, figures, ...(defaulted ? { taken: fallback } : {}) };
  });
}

function uncertaintyOf(
  assessment: Assessment,
  value: Uncertain | undefined,
  roots: readonly string[],
): Pick<Explanation, 'budget' | 'takenAsExact' | 'advice'> {
  const budget = value ? budgetOf(assessment, value) : [];
  const facts = roots.flatMap((name) => factsBehind(assessment, name));
  const takenAsExact = [...new Set(facts)].filter(
    ({ trace }) => trace.record === 'revision' && isKnown(trace.field) && trace.field.u === 0,
  );
  const advice = adviceFrom(assessment, budget);
  return { budget, takenAsExact, ...(advice === undefined ? {} : { advice }) };
}

/** The uncertainty of a value by input, greatest share of the variance first (JCGM 100:2008, 5.1 and 7.2.7). */
export function budgetOf(assessment: Assessment, value: Uncertain): readonly BudgetLine[] {
  const variance = standardUncertainty(value) ** 2;
  if (!(variance > 0)) return [];
  const facts = factsByContribution(assessment);
  return [...value.contributions]
    .filter(([, contribution]) => contribution !== 0)
    .map(([key, contribution]) => {
      const figure = facts.get(key);
      return {
        name: figure?.name ?? key,
        label: figure ? inputLabel(figure) : key,
        contribution,
        share: contribution ** 2 / variance,
      };
    })
    .sort((a, b) => b.share - a.share);
}

const indexed = new WeakMap<Assessment, ReadonlyMap<string, FactFigure>>();

/** Facts by the name under which they contribute; a part's own row goes before the role that it plays. */
export function factsByContribution(assessment: Assessment): ReadonlyMap<string, FactFigure> {
  const before = indexed.get(assessment);
  if (before) return before;
  const facts = new Map<string, FactFigure>();
  for (const figure of assessment.figures.values()) {
    if (!isFact(figure)) continue;
    const key = contributionName(figure.trace);
    if (!facts.has(key) || isRowFigure(figure.name)) facts.set(key, figure);
  }
  indexed.set(assessment, facts);
  return facts;
}

/** Below this share of the variance no single input is worth pointing at. */
const WORTH_NAMING = 0.2;

function adviceFrom(assessment: Assessment, budget: readonly BudgetLine[]): string | undefined {
  const [first] = budget;
  if (!first) return undefined;
  if (first.share < WORTH_NAMING) {
    return 'The uncertainty is spread over many inputs; no single measurement would narrow it much.';
  }
  const figure = assessment.figures.get(first.name);
  const field = figure && isFact(figure) ? figure.trace.field : undefined;
  const title = figure?.title ?? first.label;
  const verb = isKnown(field) && field.basis === 'measured' ? 'Measure it better' : 'Measure it';
  const narrowed = Math.round((1 - Math.sqrt(1 - Math.min(first.share, 1))) * 100);
  const share = Math.round(first.share * 100);
  return `Most comes from the ${title}, ${share} % of the variance. ${verb}: without its share the uncertainty would be ${narrowed} % smaller.`;
}
