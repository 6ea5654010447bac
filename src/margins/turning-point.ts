/**
 * What would have to change for a verdict to turn: for each of the inputs that matter most, alone, the value at
 * which it does. Found by assessing again with that one fact replaced; for a question that somebody asks, not for
 * every keystroke.
 */
import type { Prototype, Revision } from '../notebook/index.ts';
import { bad, good, type Result, standardUncertainty } from '../quantity/index.ts';
import { originsOf } from './binding.ts';
import { fieldAt } from './check-field.ts';
import { evaluation } from './evaluate.ts';
import { anyValue, type Range, within } from './field.ts';
import type { Figure, Margin, MarginSpec, Verdict } from './figure.ts';
import { marginOf, marginSpecsOf } from './margin.ts';
import type { Origins } from './origin.ts';
import { isRowFigure } from './part-figures.ts';
import { contributionName, type FactFigure, inputLabel, isFact } from './trace.ts';

export interface TurningPoint {
  /** Name of the fact's figure, and its label: `mass of Tray, measured`. */
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly display: string;
  /** SI. */
  readonly now: number;
  readonly turnsAt: number;
  readonly verdict: Verdict;
}

export interface TurningPointLimits {
  /** How many inputs are tried, the most influential first. */
  readonly inputs: number;
  /** How far an input may be moved, as a multiple of what it is. */
  readonly factor: number;
}

const LIMITS: TurningPointLimits = { inputs: 6, factor: 10 };

/**
 * @returns for each influential input the nearest value at which the verdict turns, most influential first; inputs
 *          that cannot turn it within the limits are left out. A problem where the verdict is unknown.
 */
export function turningPoints(
  prototype: Prototype,
  revision: Revision,
  id: string,
  limits: TurningPointLimits = LIMITS,
): Result<readonly TurningPoint[]> {
  const spec = marginSpecsOf(prototype, revision).find((candidate) => candidate.id === id);
  if (!spec) return bad('margin.unknown', id, { id });
  const records: Records = { prototype, revision };
  const margin = marginIn(records, spec);
  if (margin.verdict === 'unknown') return { ok: false, problem: margin.problem };
  return good(
    influences(records, spec)
      .slice(0, limits.inputs)
      .map((influence) => turningPoint(records, spec, margin.verdict, influence, limits))
      .filter((point) => point !== undefined),
  );
}

interface Records {
  readonly prototype: Prototype;
  readonly revision: Revision;
}

function marginIn({ prototype, revision }: Records, spec: MarginSpec): Margin {
  return marginOf(spec, evaluation(originsOf(prototype, revision)).figure);
}

interface Influence {
  readonly fact: FactFigure;
  readonly now: number;
  /** ∂MS/∂x. */
  readonly slope: number;
}

/** Carried through the propagation instead of each input's own uncertainty, every slope comes out at once. */
const TRIAL_SHARE = 1e-3;

/** Inputs by how much MS moves when they change by the same share of themselves; nought has no share. */
function influences({ prototype, revision }: Records, spec: MarginSpec): Influence[] {
  const origins = originsOf(prototype, revision);
  const { figure } = evaluation(origins, (field) => TRIAL_SHARE * Math.abs(field.si));
  const margin = marginOf(spec, figure);
  if (margin.verdict === 'unknown') return [];
  const facts = factsIn(origins, figure);
  return [...margin.marginOfSafety.contributions]
    .sort(([, a], [, b]) => Math.abs(b) - Math.abs(a))
    .flatMap(([key, contribution]) => {
      const fact = facts.get(key);
      if (!fact?.result.ok || contribution === 0) return [];
      const { value } = fact.result;
      return [{ fact, now: value.value, slope: contribution / standardUncertainty(value) }];
    });
}

function factsIn(
  origins: Origins,
  figure: (name: string) => Figure | undefined,
): ReadonlyMap<string, FactFigure> {
  const facts = new Map<string, FactFigure>();
  for (const [name, origin] of origins) {
    const made = origin.kind === 'fact' ? figure(name) : undefined;
    if (!made || !isFact(made)) continue;
    const key = contributionName(made.trace);
    if (!facts.has(key) || isRowFigure(name)) facts.set(key, made);
  }
  return facts;
}

/** What is nought where the verdict turns. */
type Measure = 'marginOfSafety' | 'lowerBound';

function turningPoint(
  records: Records,
  spec: MarginSpec,
  verdict: Verdict,
  influence: Influence,
  limits: TurningPointLimits,
): TurningPoint | undefined {
  const { fact, now } = influence;
  const at = (value: number): Margin => marginIn(withFact(records, fact, value), spec);
  const measures: readonly Measure[] =
    verdict === 'holds'
      ? ['lowerBound']
      : verdict === 'fails'
        ? ['marginOfSafety']
        : ['lowerBound', 'marginOfSafety'];
  const found = measures
    .map((measure) => root(at, measure, influence, rangeOf(records, fact), limits.factor))
    .filter((value) => value !== undefined)
    .map((value) => ({ value, verdict: at(value).verdict }))
    .filter((candidate) => candidate.verdict !== verdict && candidate.verdict !== 'unknown')
    .sort((a, b) => Math.abs(a.value - now) - Math.abs(b.value - now));
  const [nearest] = found;
  if (!nearest) return undefined;
  return {
    name: fact.name,
    label: inputLabel(fact),
    unit: fact.unit,
    display: fact.display,
    now,
    turnsAt: nearest.value,
    verdict: nearest.verdict,
  };
}

function rangeOf(records: Records, { trace }: FactFigure): Range {
  return fieldAt(trace.record, trace.path, records[trace.record])?.range ?? anyValue;
}

function withFact(records: Records, { trace }: FactFigure, si: number): Records {
  return { ...records, [trace.record]: withSi(records[trace.record], trace.path.split('/'), si) };
}

function withSi(value: object, path: readonly string[], si: number): object {
  const [head, ...rest] = path;
  if (head === undefined) return { ...value, si };
  const member = (value as Readonly<Record<string, object>>)[head] ?? {};
  return { ...value, [head]: withSi(member, rest, si) };
}

const LARGEST_STEPS = 24;
/** Of the value itself; a turning point is read to three or four digits. */
const CLOSE_ENOUGH = 1e-5;

type Measured = (value: number) => number | undefined;

/** A value of the input with what is measured there. */
interface Sample {
  readonly at: number;
  readonly measure: number;
}

/**
 * The nearest value on which `measure` is past nought, walking from `now` the way in which it falls to nought (or
 * rises to it): first where the slope points, then with steps that grow. A step that leaves the domain is shortened.
 */
function root(
  at: (value: number) => Margin,
  measure: Measure,
  { now, slope }: Influence,
  range: Range,
  factor: number,
): number | undefined {
  const measured: Measured = (value) => {
    if (!within(range, value) || Math.abs(value) > factor * Math.abs(now)) return undefined;
    const margin = at(value);
    if (margin.verdict === 'unknown') return undefined;
    return measure === 'lowerBound' ? margin.lowerBound : margin.marginOfSafety.value;
  };
  const start = measured(now);
  if (start === undefined) return undefined;
  const away = Math.sign(-start * slope) || -Math.sign(slope);
  let inside: Sample = { at: now, measure: start };
  let step = Math.max(1.1 * Math.abs(start / slope), 1e-4 * Math.abs(now));
  for (let count = 0; count < LARGEST_STEPS && step > 1e-6 * Math.abs(now); count++) {
    const next = inside.at + away * step;
    const value = measured(next);
    if (value === undefined) step /= 4;
    else if (isPast(inside, { at: next, measure: value })) {
      return narrowed(measured, inside, { at: next, measure: value });
    } else {
      inside = { at: next, measure: value };
      step *= 2;
    }
  }
  return undefined;
}

/** From at least nought to below it, or the other way. */
function isPast(inside: Sample, sample: Sample): boolean {
  return inside.measure >= 0 !== sample.measure >= 0;
}

/**
 * Narrows the bracket by false position, with the weight of a side that stays halved (the Illinois rule), each guess
 * moved a hair towards the side that stayed, so that both sides close in. Gives the far side, where the verdict is
 * the new one.
 */
function narrowed(measured: Measured, inside: Sample, outside: Sample): number {
  let [near, far] = [inside, outside];
  let [nearWeight, farWeight] = [1, 1];
  let towards = 0;
  for (let count = 0; count < 4 * LARGEST_STEPS; count++) {
    const width = far.at - near.at;
    const hair = CLOSE_ENOUGH * Math.abs(far.at);
    if (Math.abs(width) <= 3 * hair) break;
    const share = (near.measure * nearWeight) / (near.measure * nearWeight - far.measure * farWeight);
    const guess =
      near.at + width * (Number.isFinite(share) ? share : 0.5) + towards * Math.sign(width) * hair;
    const clear = hair / Math.abs(width);
    const at = near.at + width * Math.min(Math.max((guess - near.at) / width, clear), 1 - clear);
    const value = measured(at);
    const sample = { at, measure: value ?? near.measure };
    if (value !== undefined && isPast(near, sample)) {
      far = sample;
      [nearWeight, farWeight] = [towards < 0 ? nearWeight / 2 : 1, 1];
      towards = -1;
    } else {
      near = sample;
      [nearWeight, farWeight] = [1, towards > 0 ? farWeight / 2 : 1];
      towards = 1;
    }
  }
  return far.at;
}
