/**
 * The form of a ladder of tests, and its sense: rungs from the gentlest to the boldest, each with the cards that serve
 * it, the margins that have to hold before it is climbed, and the requirements that it shows to be met.
 */
import { z } from 'zod';
import { factSpecs, marginSpecs } from '../margins/index.ts';
import type { Problem, Result } from '../quantity/index.ts';
import { checkCondition, checkLimit } from './sense.ts';
import { type CardTemplate, condition, id } from './template.ts';
import { firstFault, readForm, repeated } from './templates.ts';

export const rungTemplate = z.strictObject({
  id,
  title: z.string().min(1).max(80),
  /** The vehicles that it is for; left out, all of the ladder's. */
  when: condition.optional(),
  /** Card templates of which a run counts here. */
  cards: z.array(z.string()).min(1).max(6),
  /** Margins that have to hold before a run. */
  margins: z.array(z.string()).max(20).default([]),
  /** Requirements that a passed run shows to be met, each by a reading of the card that is held against it. */
  verifies: z
    .array(
      z.strictObject({
        /** Member of the prototype's requirements: `leanToRecover`. */
        requirement: z.string(),
        reading: z.string(),
        sense: z.enum(['at least', 'at most']),
      }),
    )
    .max(10)
    .default([]),
  /** Passed runs in a row that it takes. */
  passes: z.number().int().min(1).max(20).default(1),
  source: z.string().min(1).max(300),
});
export type Rung = z.infer<typeof rungTemplate>;

export const ladderTemplate = z.strictObject({
  id,
  version: z.number().int().positive(),
  title: z.string().min(1).max(80),
  purpose: z.string().min(1).max(600),
  /** The vehicles that it is for. */
  when: condition,
  rungs: z.array(rungTemplate).min(1).max(30),
});
export type Ladder = z.infer<typeof ladderTemplate>;

/** A member of the requirements as a figure: its name in expressions, its title and unit. */
export interface RequirementFigure {
  /** Member of the prototype's requirements. */
  readonly requirement: string;
  readonly name: string;
  readonly title: string;
  /** SI. */
  readonly unit: string;
  readonly display: string;
}

const FOLDER = 'requirements/';

/** Every requirement that a prototype may have. */
export const requirementFigures: readonly RequirementFigure[] = factSpecs
  .filter(({ record, path }) => record === 'prototype' && path.startsWith(FOLDER))
  .map(({ path, name, title, unit, display }) => ({
    requirement: path.slice(FOLDER.length),
    name,
    title,
    unit,
    display,
  }));

/** @param cards  the card templates that there are */
export function readLadder(json: unknown, cards: readonly CardTemplate[]): Result<Ladder> {
  const read = readForm(ladderTemplate, json);
  if (!read.ok) return read;
  const ladder = read.value;
  const place = `ladder ${ladder.id}`;
  const fault = firstFault([
    () => checkCondition(ladder.when, place),
    () => repeated(ladder.rungs, place),
    ...ladder.rungs.map((rung) => () => faultOfRung(rung, cards, `${place}, rung ${rung.id}`)),
  ]);
  return fault ? { ok: false, problem: fault } : read;
}

function faultOfRung(rung: Rung, cards: readonly CardTemplate[], place: string): Problem | undefined {
  const own = cards.filter((card) => rung.cards.includes(card.id));
  return firstFault([
    () => (rung.when === undefined ? undefined : checkCondition(rung.when, place)),
    ...rung.cards.map(
      (card) => () =>
        unknownAmong(
          'card',
          card,
          cards.map((each) => each.id),
          place,
        ),
    ),
    ...rung.margins.map(
      (margin) => () =>
        unknownAmong(
          'margin',
          margin,
          marginSpecs.map((each) => each.id),
          place,
        ),
    ),
    ...rung.verifies.map((verification) => () => faultOfVerification(verification, own, place)),
  ]);
}

/** A reading is held against a requirement of its own kind. */
function faultOfVerification(
  { requirement, reading }: Rung['verifies'][number],
  cards: readonly CardTemplate[],
  place: string,
): Problem | undefined {
  const figure = requirementFigures.find((each) => each.requirement === requirement);
  if (figure === undefined) {
    return unknownAmong(
      'requirement',
      requirement,
      requirementFigures.map((each) => each.requirement),
      place,
    );
  }
  const readings = cards.flatMap((card) => card.readings);
  const unknown = unknownAmong(
    'reading',
    reading,
    readings.map((each) => each.id),
    place,
  );
  return (
    unknown ??
    firstFault(
      readings
        .filter((each) => each.id === reading)
        .map((each) => () => checkLimit(figure.name, each.unit, `${place}, reading ${reading}`)),
    )
  );
}

function unknownAmong(
  kind: string,
  wanted: string,
  known: readonly string[],
  place: string,
): Problem | undefined {
  if (known.includes(wanted)) return undefined;
  return {
    code: 'ladder.unknown',
    place,
    figures: { kind, id: wanted, known: [...new Set(known)].join(', ') },
  };
}
