/**
 * The verification matrix: which requirement is met on which revision, and by what. A test verifies a requirement when
 * its run passed and the reading that its rung holds against the requirement lies on the right side of it, by more than
 * its uncertainty; a margin that holds verifies it by calculation only; all else leaves it unverified.
 */
import { assess, COVERAGE_FACTOR, factsBehind, type Margin, type Verdict } from '../margins/index.ts';
import {
  isKnown,
  type KnownQuantity,
  type NotebookState,
  type Prototype,
  type QuantityField,
  type Revision,
  type Run,
  revisionNumber,
} from '../notebook/index.ts';
import { isWithin } from './answer.ts';
import { builtinLadders } from './builtin.ts';
import { type RequirementFigure, type Rung, requirementFigures } from './ladder-template.ts';
import type { Templates } from './readiness.ts';
import { ladderFor, rungResult, rungsFor, standingOfRun } from './rung-standing.ts';

/** `by test`: a passed run shows it. `not met`: the latest run shows the contrary. `by calculation`: a margin holds. */
export type Verification = 'by test' | 'not met' | 'by calculation' | 'not verified';

/** One run that has something to say about a requirement. */
export interface Evidence {
  readonly run: string;
  readonly number: number;
  /** The revision that was run; another than the column's where the run was carried over. */
  readonly revision: string;
  readonly letter: string;
  readonly outcome: 'passed' | 'failed' | 'aborted';
  /** How the readings stand against the requirement; `unknown` where one was not read. */
  readonly verdict: Verdict;
  readonly readings: readonly { readonly id: string; readonly measured?: KnownQuantity }[];
  /** The card on which the run was argued to count for this revision. */
  readonly carriedOn?: string;
}

export interface VerificationCell {
  readonly revision: string;
  readonly letter: string;
  readonly verification: Verification;
  /** Latest first. */
  readonly evidence: readonly Evidence[];
  /** Margins in which the requirement is the demand. */
  readonly margins: readonly { readonly id: string; readonly verdict: Verdict }[];
}

export interface VerificationRow extends RequirementFigure {
  readonly required: KnownQuantity;
  /** One a revision, in the order of their letters. */
  readonly cells: readonly VerificationCell[];
}

/** A row for each requirement that the prototype has a figure for. */
export function verificationMatrix(
  state: NotebookState,
  prototypeId: string,
  templates: Templates = {},
): readonly VerificationRow[] {
  const prototype = state.prototype[prototypeId];
  if (prototype === undefined) return [];
  const revisions = Object.entries(state.revision)
    .filter(([, revision]) => revision.prototype === prototypeId)
    .toSorted(([, a], [, b]) => (revisionNumber(a.letter) ?? 0) - (revisionNumber(b.letter) ?? 0));
  const required: Readonly<Record<string, QuantityField | undefined>> = prototype.requirements;
  return requirementFigures.flatMap((figure) => {
    const field = required[figure.requirement];
    if (!isKnown(field)) return [];
    const cells = revisions.map(([id, revision]) =>
      cellOf(state, { id, prototype, revision }, figure, field, templates),
    );
    return [{ ...figure, required: field, cells }];
  });
}

interface Column {
  readonly id: string;
  readonly prototype: Prototype;
  readonly revision: Revision;
}

function cellOf(
  state: NotebookState,
  column: Column,
  figure: RequirementFigure,
  required: KnownQuantity,
  templates: Templates,
): VerificationCell {
  const { id, prototype, revision } = column;
  const assessment = assess(prototype, revision);
  const margins = marginsOf(assessment, figure.requirement);
  const evidence = evidenceOf(state, column, figure.requirement, required, templates);
  const [latest] = evidence;
  const holds = margins.length > 0 && margins.every(({ verdict }) => verdict === 'holds');
  const verification =
    latest?.outcome === 'passed' && latest.verdict === 'holds'
      ? 'by test'
      : latest && (latest.outcome === 'failed' || latest.verdict === 'fails')
        ? 'not met'
        : holds
          ? 'by calculation'
          : 'not verified';
  return {
    revision: id,
    letter: revision.letter,
    verification,
    evidence,
    margins: margins.map((margin) => ({ id: margin.id, verdict: margin.verdict })),
  };
}

/** Margins whose demand rests on the requirement; where it enters no demand, those whose capability does. */
function marginsOf(assessment: ReturnType<typeof assess>, requirement: string): readonly Margin[] {
  const path = `requirements/${requirement}`;
  const restsOn = (name: string): boolean =>
    factsBehind(assessment, name).some(({ trace }) => trace.record === 'prototype' && trace.path === path);
  const demanding = assessment.margins.filter(({ demand }) => restsOn(demand));
  return demanding.length > 0
    ? demanding
    : assessment.margins.filter(({ capability }) => restsOn(capability));
}

function evidenceOf(
  state: NotebookState,
  { id, prototype, revision }: Column,
  requirement: string,
  required: KnownQuantity,
  templates: Templates,
): readonly Evidence[] {
  const subject = { prototype, revision, assessment: assess(prototype, revision) };
  const ladder = ladderFor(subject, templates.ladders ?? builtinLadders);
  const rungs = ladder ? rungsFor(ladder, subject) : [];
  return rungs
    .flatMap((rung) => {
      const asked = rung.verifies.filter((each) => each.requirement === requirement);
      if (asked.length === 0) return [];
      const { runs, carriedOn } = rungResult(state, rung, id);
      const carried = carriedOn === undefined ? undefined : state.card[carriedOn]?.carriedFrom?.run;
      return [
        ...runs.map((run) => [run, undefined] as const),
        ...(carried === undefined ? [] : [[carried, carriedOn] as const]),
      ].flatMap(([runId, card]) => {
        const found = evidence(state, runId, asked, required);
        return found ? [card === undefined ? found : { ...found, carriedOn: card }] : [];
      });
    })
    .toSorted((a, b) => b.number - a.number);
}

/** Nothing where the run tested nothing: under way, void, or broken off before it was cleared. */
function evidence(
  state: NotebookState,
  runId: string,
  asked: Rung['verifies'],
  required: KnownQuantity,
): Evidence | undefined {
  const run = state.run[runId];
  const revision = run && state.revision[run.revision];
  if (run === undefined || revision === undefined) return undefined;
  const outcome = standingOfRun(run, revision);
  if (outcome === undefined || outcome === 'run') return undefined;
  return {
    run: runId,
    number: run.number,
    revision: run.revision,
    letter: revision.letter,
    outcome,
    verdict: worst(asked.map(({ reading, sense }) => against(run.readings[reading], required, sense))),
    readings: asked.map(({ reading }) => ({ id: reading, ...measured(run, reading) })),
  };
}

function measured(run: Run, reading: string): { readonly measured?: KnownQuantity } {
  const value = run.readings[reading];
  return value ? { measured: value } : {};
}

/**
 * A reading against what is required, by the rule of the margins: it holds where the value less 1.645 of the combined
 * standard uncertainty still does (guarded acceptance, JCGM 106:2012 8.3.2); the two are independent.
 */
function against(
  reading: KnownQuantity | undefined,
  required: KnownQuantity,
  sense: Rung['verifies'][number]['sense'],
): Verdict {
  if (reading === undefined || !Number.isFinite(reading.si)) return 'unknown';
  const guard = COVERAGE_FACTOR * Math.hypot(reading.u, required.u);
  const lies = (limit: number): boolean =>
    sense === 'at least' ? isWithin(reading.si, limit, undefined) : isWithin(reading.si, undefined, limit);
  if (!lies(required.si)) return 'fails';
  return lies(sense === 'at least' ? required.si + guard : required.si - guard) ? 'holds' : 'in doubt';
}

const WORST_FIRST: readonly Verdict[] = ['fails', 'unknown', 'in doubt', 'holds'];

function worst(verdicts: readonly Verdict[]): Verdict {
  return WORST_FIRST.find((verdict) => verdicts.includes(verdict)) ?? 'unknown';
}
