/**
 * Test cards. A draft keeps the names of figures in its texts (`{{rotor_energy}}`), so that it follows the revision;
 * `freeze` puts the figures in and fixes the predictions, so that nobody can say afterwards that they knew.
 */
import type { Assessment } from '../margins/index.ts';
import {
  type Change,
  type FrozenFigure,
  fingerprint,
  type Json,
  type Prototype,
  type Revision,
  set,
  type TestCard,
} from '../notebook/index.ts';
import { bad, good, type Problem, type Result, standardUncertainty } from '../quantity/index.ts';
import { conditionIn, missingFor, wordingIn } from './evaluate.ts';
import { scopeFor } from './scope.ts';
import type { CardTemplate } from './template.ts';

/** The thing under test, as it stands. */
export interface Subject {
  readonly prototype: Prototype;
  readonly revision: Revision;
  readonly assessment: Assessment;
}

export interface NewCard extends Subject {
  readonly prototypeId: string;
  readonly revisionId: string;
  /** Counts up within the prototype. */
  readonly number: number;
  readonly at: string;
}

export interface DraftCard {
  readonly card: TestCard;
  /** Figures that the template would predict, that belong to this revision, and that it does not give yet. */
  readonly unpredicted: readonly string[];
  /** What to enter for them. */
  readonly missing: readonly string[];
}

/**
 * A draft from a template: the abort limits and readings that apply (one whose condition is not known stays, to be
 * struck out by hand), the predictions that the revision gives now. Figures that do not belong to this revision at
 * all, a gimbal's where there is none, are left out without a word.
 */
export function generateCard(template: CardTemplate, given: NewCard): DraftCard {
  const { prototype, revision, assessment } = given;
  const scope = scopeFor(prototype, revision, assessment);
  const applies = (when: string | undefined): boolean => {
    const result = when === undefined ? undefined : conditionIn(when, scope);
    return result?.state !== 'known' || result.value;
  };
  const belongs = template.predictions.filter((name) => assessment.figures.has(name));
  const unpredicted = belongs.filter((name) => frozen(name, assessment) === undefined);

  return {
    card: {
      prototype: given.prototypeId,
      revision: given.revisionId,
      number: given.number,
      template: template.id,
      title: template.title,
      purpose: template.purpose,
      setUp: template.setUp,
      prerequisites: template.prerequisites,
      steps: [...template.steps],
      predictions: predictionsOf(belongs, assessment),
      abortLimits: byId(
        template.abortLimits.filter(({ when }) => applies(when)),
        ({ label, text }, order) => ({ label, text, order }),
      ),
      readings: byId(
        template.readings.filter(({ when }) => applies(when)),
        ({ label, unit, name, measures }, order) => ({
          label,
          unit,
          order,
          ...(name === undefined ? {} : { name }),
          ...(measures === undefined ? {} : { measures }),
        }),
      ),
      status: 'draft',
      createdAt: given.at,
    },
    unpredicted,
    missing: [...new Set(unpredicted.flatMap((name) => missingFor(name, scope)))],
  };
}

export interface ReadableCard {
  readonly card: TestCard;
  /** Names of the figures that the texts use. */
  readonly figures: readonly string[];
  readonly missing: readonly string[];
  readonly problems: readonly Problem[];
}

/** The card with the figures of the moment in its texts and predictions; an issued card is given back as it is. */
export function readableCard(card: TestCard, { prototype, revision, assessment }: Subject): ReadableCard {
  if (card.status === 'issued') return { card, figures: [], missing: [], problems: [] };
  const scope = scopeFor(prototype, revision, assessment);
  const figures = new Set<string>();
  const missing = new Set<string>();
  const problems: Problem[] = [];
  const put = (text: string): string => {
    const wording = wordingIn(text, scope);
    for (const name of wording.figures) figures.add(name);
    for (const name of wording.missing) missing.add(name);
    problems.push(...wording.problems);
    return wording.text;
  };
  const names = namesPredicted(card);
  for (const name of names) for (const fact of missingFor(name, scope)) missing.add(fact);

  return {
    card: {
      ...card,
      purpose: put(card.purpose),
      setUp: put(card.setUp),
      prerequisites: put(card.prerequisites),
      steps: card.steps.map(put),
      abortLimits: Object.fromEntries(
        Object.entries(card.abortLimits).map(([id, limit]) => [id, { ...limit, text: put(limit.text) }]),
      ),
      predictions: predictionsOf(names, assessment),
    },
    figures: [...figures],
    missing: [...missing],
    problems,
  };
}

export interface Issue extends Subject {
  readonly by: string;
  readonly at: string;
}

/**
 * The issued card: texts and predictions with the figures as they stand, and the fingerprint of the revision that
 * they belong to. Refused while a text or a prediction needs a figure that is not known.
 */
export function freeze(card: TestCard, issue: Issue): Result<TestCard> {
  if (card.status === 'issued') return bad('card.issued', card.title, { by: card.issuedBy ?? 'somebody' });
  const readable = readableCard(card, issue);
  const [problem] = readable.problems;
  if (problem) return { ok: false, problem };
  if (readable.missing.length > 0) {
    return bad('card.figure-unknown', card.title, { names: readable.missing.join(', ') });
  }
  return good({
    ...readable.card,
    status: 'issued',
    issuedAt: issue.at,
    issuedBy: issue.by,
    fingerprint: fingerprint(issue.revision),
  });
}

/** `freeze` as the one change to be recorded on the card. */
export function issueCard(id: string, card: TestCard, issue: Issue): Result<Change> {
  const issued = freeze(card, issue);
  if (!issued.ok) return issued;
  const { purpose, setUp, prerequisites, steps, predictions, abortLimits } = issued.value;
  return good(
    set('card', id, {
      purpose,
      setUp,
      prerequisites,
      steps,
      predictions: predictions as Json,
      abortLimits: abortLimits as Json,
      status: 'issued',
      issuedAt: issue.at,
      issuedBy: issue.by,
      fingerprint: fingerprint(issue.revision),
    }),
  );
}

/** What is predicted: what stands on the card, and whatever a reading is to be held against. */
function namesPredicted(card: TestCard): readonly string[] {
  const compared = Object.values(card.readings).flatMap(({ name }) => name ?? []);
  return [...new Set([...Object.keys(card.predictions), ...compared])];
}

function predictionsOf(names: readonly string[], assessment: Assessment): Record<string, FrozenFigure> {
  return Object.fromEntries(
    names.flatMap((name) => {
      const figure = frozen(name, assessment);
      return figure ? [[name, figure]] : [];
    }),
  );
}

function frozen(name: string, assessment: Assessment): FrozenFigure | undefined {
  const figure = assessment.figures.get(name);
  if (figure === undefined || !figure.result.ok) return undefined;
  const { value } = figure.result;
  return {
    name,
    label: figure.title,
    unit: figure.display,
    value: value.value,
    u: standardUncertainty(value),
  };
}

function byId<T extends { readonly id: string }, U>(
  entries: readonly T[],
  make: (entry: T, order: number) => U,
): Record<string, U> {
  return Object.fromEntries(entries.map((entry, order) => [entry.id, make(entry, order)]));
}
