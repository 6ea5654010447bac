/** What is asked of random draws: a figure, or a margin, read from each draw and summed up at the end. */

import { DomainError } from '../mechanics/index.ts';
import {
  agree,
  bad,
  COVERAGE,
  countFrom,
  type DrawnSpread,
  firstOrderInterval,
  good,
  type Interval,
  type Problem,
  type Result,
  standardUncertainty,
  type Uncertain,
} from '../quantity/index.ts';
import { type DrawBins, drawBins } from './draw-bins.ts';
import type { DrawPlan } from './draw-plan.ts';
import { type Evaluation, notApplicable, outOfDomain } from './evaluate.ts';
import type { MarginSpec } from './figure.ts';
import { leavesNothing, marginOf } from './margin.ts';
import { marginOfSafety } from './margin-of-safety.ts';

interface Drawn {
  readonly name: string;
  readonly title: string;
  /** Of the result: the figure's own, `1` for a margin. */
  readonly unit: string;
  readonly display: string;
  readonly firstOrder: { readonly value: number; readonly u: number; readonly interval: Interval };
  readonly mean: number;
  readonly u: number;
  /** Both for a coverage of 95 %. */
  readonly symmetric: Interval;
  readonly shortest: Interval;
  readonly draws: number;
  /** Draws that left the domain of a calculation and have no value, and why the first of them did. */
  readonly outside: number;
  readonly because?: Problem;
  /** δ, half a unit of the last digit of u. */
  readonly tolerance: number;
  /** Whether mean, u and interval stood still within a fifth of δ before the draws ran out. */
  readonly settled: boolean;
  /** Whether the first-order interval agrees with the drawn one within δ; undefined while that is not settled. */
  readonly confirmed: boolean | undefined;
}

/** A figure as its draws spread; SI. */
export interface DrawnFigure extends Drawn {
  readonly kind: 'figure';
  readonly bins: DrawBins;
}

/** A margin: everything above is of its margin of safety. */
export interface DrawnMargin extends Drawn {
  readonly kind: 'margin';
  /** Part of all draws in which the demand is met. A draw that has no value does not meet it. */
  readonly probability: number;
  /** One-sided lower 95 % bound: MS that is reached in 95 % of the draws that have one. */
  readonly lowerBound: number;
  /** What the two are given in: SI, and as people read it. */
  readonly figures: { readonly unit: string; readonly display: string };
  readonly capability: DrawBins;
  readonly demand: DrawBins;
}

export type DrawnResult = DrawnFigure | DrawnMargin;

export interface DrawSubject {
  readonly name: string;
  /** From the plan's last draw; NaN where it has no value. */
  readonly read: () => number;
  readonly result: (spread: DrawnSpread) => Result<DrawnResult>;
}

/** @returns a problem where the figure is unknown or nothing that it is made from is drawn */
export function figureSubject(
  name: string,
  figure: Evaluation['figure'],
  plan: DrawPlan,
): Result<DrawSubject> {
  const spec = figure(name);
  if (!spec) return bad('draws.unknown', name, { name });
  if (!spec.result.ok) return spec.result;
  const { title, unit, display } = spec;
  const { value } = spec.result;
  const place = plan.place(name);
  if (!plan.varies(place)) return bad('draws.nothing', title);
  let because: Problem | undefined;
  return good({
    name,
    read() {
      const drawn = plan.value(place);
      if (Number.isNaN(drawn)) because ??= plan.problem(place);
      return drawn;
    },
    result(spread) {
      const drawn = drawnFrom({ name, title, unit, display }, value, spread, because);
      return drawn.ok ? good({ ...drawn.value, kind: 'figure', bins: drawBins(spread.values) }) : drawn;
    },
  });
}

/** Draws that the picture of a margin is made from. */
const PICTURED = 100_000;

/** @returns a problem where the margin is unknown or nothing that it is made from is drawn */
export function marginSubject(
  spec: MarginSpec,
  figure: Evaluation['figure'],
  plan: DrawPlan,
): Result<DrawSubject> {
  const margin = marginOf(spec, figure);
  if (margin.verdict === 'unknown') return { ok: false, problem: margin.problem };
  const { id: name, title } = spec;
  const capability = plan.place(spec.capability);
  const demand = plan.place(spec.demand);
  if (!plan.varies(capability) && !plan.varies(demand)) return bad('draws.nothing', title);

  const capabilities = new Float64Array(PICTURED);
  const demands = new Float64Array(PICTURED);
  let pictured = 0;
  let because: Problem | undefined;
  const safety = (able: number, asked: number): number => {
    try {
      return marginOfSafety({ capability: able, demand: asked });
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      because ??= outOfDomain(error, title);
      return Number.NaN;
    }
  };
  return good({
    name,
    read() {
      const asked = plan.value(demand);
      let able = plan.value(capability);
      if (Number.isNaN(able)) {
        const problem = plan.problem(capability);
        if (problem && leavesNothing(spec, problem)) able = 0;
        else because ??= problem;
      }
      if (Number.isNaN(asked)) because ??= plan.problem(demand);
      if (pictured < PICTURED) {
        capabilities[pictured] = able;
        demands[pictured] = asked;
        pictured += 1;
      }
      return Number.isNaN(able) || Number.isNaN(asked) ? Number.NaN : safety(able, asked);
    },
    result(spread) {
      const unitless = { name, title, unit: '1', display: '1' };
      const drawn = drawnFrom(unitless, margin.marginOfSafety, spread, because);
      if (!drawn.ok) return drawn;
      const { values, draws } = spread;
      return good({
        ...drawn.value,
        kind: 'margin',
        probability: countFrom(values, 0) / draws,
        lowerBound: values[Math.floor((1 - COVERAGE) * values.length)] ?? Number.NaN,
        figures: { unit: spec.unit, display: spec.display },
        capability: binsOf(capabilities.subarray(0, pictured)),
        demand: binsOf(demands.subarray(0, pictured)),
      });
    },
  });
}

function binsOf(values: Float64Array): DrawBins {
  return drawBins(values.filter((value) => !Number.isNaN(value)).sort());
}

function drawnFrom(
  spec: Pick<Drawn, 'name' | 'title' | 'unit' | 'display'>,
  stated: Uncertain,
  { values, without, ...spread }: DrawnSpread,
  because: Problem | undefined,
): Result<Drawn> {
  if (values.length === 0) return { ok: false, problem: because ?? notApplicable(spec.name) };
  const u = standardUncertainty(stated);
  const interval = firstOrderInterval(stated.value, u);
  const agrees = agree(interval, spread.symmetric, spread.tolerance);
  return good({
    ...spec,
    firstOrder: { value: stated.value, u, interval },
    ...spread,
    outside: without,
    ...(because ? { because } : {}),
    confirmed: spread.settled ? agrees : undefined,
  });
}
