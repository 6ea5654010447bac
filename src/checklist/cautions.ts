/**
 * The safety messages that stand where the work can hurt somebody: on the page, the card, the checklist, in the report.
 * Their signal words follow ANSI Z535 and ISO 3864: WARNING where death or serious injury could follow, CAUTION where
 * a minor injury could, NOTICE where it is not about injury. They point at rules and people; none of them promises
 * that anything is safe.
 */
import { z } from 'zod';
import table from '../../templates/cautions.json' with { type: 'json' };
import { ProblemError } from '../quantity/index.ts';
import type { Subject } from './card.ts';
import { conditionIn } from './evaluate.ts';
import { scopeFor } from './scope.ts';
import { checkCondition } from './sense.ts';

export const cautionPlaces = [
  'rotor page',
  'ballast page',
  'power page',
  'test cards',
  'checklist',
  'report',
] as const;
export type CautionPlace = (typeof cautionPlaces)[number];

const caution = z.strictObject({
  id: z.string().regex(/^[a-z-]+$/),
  signal: z.enum(['WARNING', 'CAUTION', 'NOTICE']),
  /** What can happen, in a sentence. */
  hazard: z.string().min(1).max(200),
  /** What to do, or whose rules apply. */
  action: z.string().min(1).max(300),
  /** An expression as in templates; shown also where it cannot be decided. */
  when: z.string().min(1).max(200).optional(),
  shown: z.array(z.enum(cautionPlaces)).min(1),
});

export type SafetyMessage = z.infer<typeof caution>;

/** All of them, gravest signal word first. */
export const cautions: readonly SafetyMessage[] = z.array(caution).parse(table).map(sound);

/** Those that belong to a place and to the equipment of this revision. */
export function cautionsFor(
  place: CautionPlace,
  { prototype, revision, assessment }: Subject,
): readonly SafetyMessage[] {
  const scope = scopeFor(prototype, revision, assessment);
  return cautions.filter(({ shown, when }) => {
    if (!shown.includes(place)) return false;
    const applies = when === undefined ? undefined : conditionIn(when, scope);
    return applies?.state !== 'known' || applies.value;
  });
}

/** A condition of our own that does not read is a fault of the program. */
function sound(message: SafetyMessage): SafetyMessage {
  const fault =
    message.when === undefined ? undefined : checkCondition(message.when, `caution ${message.id}`);
  if (fault) throw new ProblemError(fault);
  return message;
}
