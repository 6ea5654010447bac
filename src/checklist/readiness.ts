/**
 * What stands in the way of a run, before it is begun: margins that do not hold, rungs of the ladder that have not been
 * passed, failures of high severity that are not closed, figures that the checklist lacks, another run under way. A
 * named person may go past most of them, in writing; two runs at once, a draft card or a changed revision nobody can.
 *
 * The questions are those of a test readiness review (US Defense Acquisition University; NASA NPR 7123.1D, appendix G);
 * severities I and II as in MIL-STD-882E table I. That exactly these block a run is a project choice.
 */
import { assess, COVERAGE_FACTOR, type Margin } from '../margins/index.ts';
import {
  type ChecklistItem,
  fingerprint,
  type NotebookState,
  type Run,
  type TestCard,
} from '../notebook/index.ts';
import { bad, good, type Problem, phrase, type Result, sentence } from '../quantity/index.ts';
import { builtinCards, builtinChecklists, builtinLadders, checklistsOf } from './builtin.ts';
import type { Subject } from './card.ts';
import { generateChecklist } from './generate.ts';
import type { Ladder, Rung } from './ladder-template.ts';
import { isStale, itemsOf } from './obstacles.ts';
import { type Decision, type Override, openFaults, overrideOf } from './overrides.ts';
import { inWords, ladderFor, rungResult, rungsFor } from './rung-standing.ts';
import type { CardTemplate, ChecklistTemplate } from './template.ts';

/** One thing that stands in the way. */
export interface Hindrance {
  /** What it is about: id of a margin, a rung, a failure report, a run, or of the card itself. */
  readonly subject: string;
  /** Code, words and figures. */
  readonly problem: Problem;
  /** Whether a named person may go past it in writing. */
  readonly canBeOverridden: boolean;
}

/** A decision about one hindrance. */
export interface OverrideOf extends Decision {
  readonly code: Problem['code'];
  readonly subject: string;
}

/** Templates of one's own in the place of those that come with the program. */
export interface Templates {
  readonly cards?: readonly CardTemplate[];
  readonly checklists?: readonly ChecklistTemplate[];
  readonly ladders?: readonly Ladder[];
}

export interface Readiness {
  /** In order: what nobody can go past, then margins, rungs, failures, the checklist. Empty: the run may begin. */
  readonly hindrances: readonly Hindrance[];
  /** Where the card stands on the ladder for this vehicle. */
  readonly rung?: Rung;
  /** Margins that the rung names and that this prototype asks nothing of: nothing holds them, and nothing tests them. */
  readonly notAsked: readonly string[];
}

/** What stands in the way of a run of this card now. */
export function readinessOf(state: NotebookState, cardId: string, templates: Templates = {}): Readiness {
  const found = subjectOf(state, cardId);
  const card = state.card[cardId];
  const rung = found && card && rungOf(card, found, templates);
  const present = found?.assessment.margins.map(({ id }) => id) ?? [];
  return {
    hindrances: hindrancesOf(state, cardId, templates),
    ...(rung ? { rung } : {}),
    notAsked: rung?.margins.filter((id) => !present.includes(id)) ?? [],
  };
}

/** @param given.items  the checklist of the run that is to begin; left out, it is made from the card's template */
export function hindrancesOf(
  state: NotebookState,
  cardId: string,
  given: Templates & { readonly items?: readonly ChecklistItem[] } = {},
): readonly Hindrance[] {
  const card = state.card[cardId];
  const subject = subjectOf(state, cardId);
  if (card === undefined || subject === undefined) {
    return [firm(cardId, { code: 'record.unknown', place: 'card', figures: { kind: 'card', id: cardId } })];
  }
  return [
    ...ofCard(cardId, card, subject),
    ...ofOtherRuns(state, card),
    ...ofLadder(state, cardId, card, subject, given),
    ...ofFailures(state, card),
    ...ofChecklist(cardId, card, subject, given),
  ];
}

/**
 * The record of the decisions by which everything in the way was gone past; the first thing that was not is the reason
 * why the run does not begin. A decision about what does not stand in the way is left out.
 */
export function accepted(
  hindrances: readonly Hindrance[],
  decisions: readonly OverrideOf[],
  place: string,
): Result<readonly Override[]> {
  const overrides: Override[] = [];
  const left: Problem[] = [];
  for (const { problem, subject, canBeOverridden } of hindrances) {
    const decision = decisions.find((each) => each.code === problem.code && each.subject === subject);
    if (decision === undefined) {
      left.push(problem);
    } else if (!canBeOverridden) {
      return bad('override.refused', place, { what: phrase(problem).reason });
    } else {
      const override = overrideOf(problem, subject, decision);
      if (!override.ok) return override;
      overrides.push(override.value);
    }
  }
  const [first] = left;
  if (first === undefined) return good(overrides);
  if (left.length === 1) return { ok: false, problem: first };
  return bad('readiness.not-ready', place, { count: left.length, first: sentence(first) });
}

function subjectOf(state: NotebookState, cardId: string): Subject | undefined {
  const card = state.card[cardId];
  const revision = card && state.revision[card.revision];
  const prototype = card && state.prototype[card.prototype];
  return revision && prototype && { prototype, revision, assessment: assess(prototype, revision) };
}

function rungOf(card: TestCard, subject: Subject, templates: Templates): Rung | undefined {
  const ladder = ladderFor(subject, templates.ladders ?? builtinLadders);
  return ladder && rungsFor(ladder, subject).find((rung) => rung.cards.includes(card.template));
}

function ofCard(cardId: string, card: TestCard, { revision }: Subject): readonly Hindrance[] {
  if (card.status !== 'issued') {
    return [firm(cardId, { code: 'card.not-issued', place: card.title, figures: {} })];
  }
  return card.fingerprint === fingerprint(revision)
    ? []
    : [firm(cardId, { code: 'card.stale', place: card.title, figures: { letter: revision.letter } })];
}

/** One vehicle, one run: also while the last one, broken off, still turns. */
function ofOtherRuns(state: NotebookState, card: TestCard): readonly Hindrance[] {
  return Object.entries(state.run)
    .filter(([, run]) => run.prototype === card.prototype)
    .flatMap(([id, run]): readonly Hindrance[] => {
      const figures = { number: run.number };
      if (isUnderWay(state, run)) {
        return [firm(id, { code: 'readiness.run-under-way', place: card.title, figures })];
      }
      if (isLeftUnsafe(run)) {
        return [open(id, { code: 'readiness.not-safe', place: card.title, figures })];
      }
      return [];
    });
}

/** A checklist whose revision has changed can never be cleared: it is over. A run that was cleared is not. */
function isUnderWay(state: NotebookState, run: Run): boolean {
  if (run.status === 'cleared') return true;
  const revision = state.revision[run.revision];
  return run.status === 'checklist' && (revision === undefined || !isStale(run, revision));
}

function isLeftUnsafe(run: Run): boolean {
  return (
    run.status === 'aborted' &&
    run.clearedAt !== undefined &&
    run.signedAt === undefined &&
    itemsOf(run, 'after').some((item) => item.hold && openFaults(run, item).length > 0)
  );
}

function ofLadder(
  state: NotebookState,
  cardId: string,
  card: TestCard,
  subject: Subject,
  templates: Templates,
): readonly Hindrance[] {
  const ladder = ladderFor(subject, templates.ladders ?? builtinLadders);
  const rungs = ladder ? rungsFor(ladder, subject) : [];
  const at = rungs.findIndex((rung) => rung.cards.includes(card.template));
  const rung = rungs[at];
  if (rung === undefined) {
    return [open(cardId, { code: 'readiness.no-ladder', place: card.title, figures: {} })];
  }
  const margins = subject.assessment.margins.filter(
    ({ id, verdict }) => rung.margins.includes(id) && verdict !== 'holds',
  );
  const { letter } = subject.revision;
  return [
    ...margins.map((margin) =>
      open(margin.id, {
        code: 'readiness.margin',
        place: card.title,
        figures: { title: margin.title, standing: standingOf(margin) },
      }),
    ),
    ...rungs.slice(0, at).flatMap((earlier) => {
      const { standing } = rungResult(state, earlier, card.revision);
      const figures = { title: earlier.title, standing: inWords(standing), letter };
      return standing === 'passed'
        ? []
        : [open(earlier.id, { code: 'readiness.rung', place: card.title, figures })];
    }),
  ];
}

function standingOf(margin: Margin): string {
  switch (margin.verdict) {
    case 'unknown': {
      const missing = margin.missing.map((name) => name.replaceAll('_', ' ')).join(', ');
      return missing === '' ? 'is not known' : `is not known for want of ${missing}`;
    }
    case 'in doubt':
      return `is in doubt: ${signed(margin.marginOfSafety.value)}, and ${signed(margin.lowerBound)} with ${COVERAGE_FACTOR} standard uncertainties taken off`;
    case 'fails':
      return `fails: ${signed(margin.marginOfSafety.value)}`;
    case 'holds':
      return 'holds';
  }
}

function signed(value: number): string {
  return `${value < 0 ? '\u2212' : '+'}${Math.abs(value).toFixed(3)}`;
}

/** Severity I and II: death, permanent harm, several people in hospital. */
function ofFailures(state: NotebookState, card: TestCard): readonly Hindrance[] {
  return Object.entries(state.failure)
    .filter(
      ([, { prototype, status, severity }]) =>
        prototype === card.prototype && status !== 'closed' && (severity === 'I' || severity === 'II'),
    )
    .toSorted(([, a], [, b]) => a.number - b.number)
    .map(([id, { number, title, severity }]) =>
      open(id, { code: 'readiness.failure', place: card.title, figures: { number, title, severity } }),
    );
}

function ofChecklist(
  cardId: string,
  card: TestCard,
  { prototype, revision, assessment }: Subject,
  given: Templates & { readonly items?: readonly ChecklistItem[] },
): readonly Hindrance[] {
  const template = (given.cards ?? builtinCards).find(({ id }) => id === card.template);
  const lists = template ? checklistsOf(template, given.checklists ?? builtinChecklists) : [];
  const items = given.items ?? generateChecklist(lists, prototype, revision, assessment);
  const hindrances: Hindrance[] = [];
  if (items.every(({ phase }) => phase !== 'before')) {
    hindrances.push(firm(cardId, { code: 'checklist.empty', place: card.title, figures: {} }));
  }
  const names = [...new Set(items.flatMap(({ missing }) => missing))].map((name) =>
    name.replaceAll('_', ' '),
  );
  if (names.length > 0) {
    const figures = { names: names.join(', ') };
    hindrances.push(open(cardId, { code: 'readiness.checklist', place: card.title, figures }));
  }
  return hindrances;
}

function firm(subject: string, problem: Problem): Hindrance {
  return { subject, problem, canBeOverridden: false };
}

function open(subject: string, problem: Problem): Hindrance {
  return { subject, problem, canBeOverridden: true };
}
