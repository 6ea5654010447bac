/** Whole notebooks for the tests of readiness, ladder, matrix and failures: the sample vehicle with cards and runs. */
import { assess } from '../margins/index.ts';
import {
  emptyState,
  type FailureReport,
  fingerprint,
  type NotebookState,
  type Prototype,
  type Revision,
  type Run,
  type TestCard,
} from '../notebook/index.ts';
import { builtinCards } from './builtin.ts';
import { freeze, generateCard } from './card.ts';
import { samplePrototype, sampleRevision } from './sample.ts';
import { runOf } from './sample-run.ts';

export const AT = '2025-03-02T10:00:00Z';

/** A notebook of one prototype; revisions by id, made from one another where they say so. */
export function notebook(
  revisions: Readonly<Record<string, Revision>> = { r1: sampleRevision },
  prototype: Prototype = samplePrototype,
): NotebookState {
  return { ...emptyState, prototype: { p1: prototype }, revision: revisions };
}

/** The notebook with an issued card of a template, its id given. Figures that are not known are left off the card. */
export function withCard(
  state: NotebookState,
  id: string,
  template: string,
  revisionId = 'r1',
  changes: Partial<TestCard> = {},
): NotebookState {
  const made = builtinCards.find((each) => each.id === template);
  const revision = state.revision[revisionId];
  const prototype = state.prototype.p1;
  if (!made || !revision || !prototype) throw new Error(`no card ${template} for ${revisionId}`);
  const subject = { prototype, revision, assessment: assess(prototype, revision) };
  const number = Object.keys(state.card).length + 1;
  const { card } = generateCard(made, { ...subject, prototypeId: 'p1', revisionId, number, at: AT });
  const issued = freeze(card, { ...subject, by: 'A. Builder', at: AT });
  if (!issued.ok) throw new Error(`${issued.problem.code} ${JSON.stringify(issued.problem.figures)}`);
  return { ...state, card: { ...state.card, [id]: { ...issued.value, ...changes } } };
}

/** The notebook with a run of a card; finished and passed where nothing else is said. */
export function withRun(
  state: NotebookState,
  id: string,
  cardId: string,
  changes: Partial<Run> = {},
): NotebookState {
  const card = state.card[cardId];
  const revision = card && state.revision[card.revision];
  if (!card || !revision) throw new Error(`no card ${cardId}`);
  const run: Run = {
    ...runOf([]),
    card: cardId,
    revision: card.revision,
    number: Object.keys(state.run).length + 1,
    fingerprint: fingerprint(revision),
    status: 'finished',
    outcome: 'passed',
    clearedAt: AT,
    ...changes,
  };
  return { ...state, run: { ...state.run, [id]: run } };
}

/** The notebook with cards and passed runs of these templates, in order. */
export function withPassed(
  state: NotebookState,
  templates: readonly string[],
  revisionId = 'r1',
): NotebookState {
  return templates.reduce((before, template) => {
    const card = `${template}-${revisionId}`;
    const carded = before.card[card] ? before : withCard(before, card, template, revisionId);
    return withRun(carded, `run-${Object.keys(carded.run).length + 1}`, card);
  }, state);
}

export function withFailure(
  state: NotebookState,
  id: string,
  changes: Partial<FailureReport> = {},
): NotebookState {
  const report: FailureReport = {
    prototype: 'p1',
    revision: 'r1',
    number: Object.keys(state.failure).length + 1,
    at: AT,
    author: 'A. Builder',
    title: `Failure ${id}`,
    observed: '',
    moment: '',
    effect: '',
    severity: 'III',
    probability: 'C',
    evidence: '',
    causes: [],
    correctiveAction: '',
    status: 'open',
    attachments: {},
    ...changes,
  };
  return { ...state, failure: { ...state.failure, [id]: report } };
}
