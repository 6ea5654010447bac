/**
 * The ladder of tests of a revision: every rung for this vehicle with its standing, from the bench to the free turn,
 * and the argument by which a run of an earlier revision may still count.
 */
import { assess } from '../margins/index.ts';
import { type Change, type Json, type NotebookState, set } from '../notebook/index.ts';
import { bad, good, type Result } from '../quantity/index.ts';
import { builtinLadders } from './builtin.ts';
import type { Ladder, Rung } from './ladder-template.ts';
import type { Decision } from './overrides.ts';
import { type Hindrance, hindrancesOf, type Templates } from './readiness.ts';
import {
  ladderFor,
  type RungResult,
  type RungStanding,
  rungResult,
  rungsFor,
  whyNotCarried,
} from './rung-standing.ts';

export interface RungState extends Omit<RungResult, 'standing'> {
  readonly rung: Rung;
  readonly standing: RungStanding;
  /** The latest issued card of the rung and what stands in its way; absent where none is issued. */
  readonly next?: { readonly card: string; readonly hindrances: readonly Hindrance[] };
}

/** The ladder for a revision's vehicle; undefined where none is meant for it, or there is no such revision. */
export function ladderOf(
  state: NotebookState,
  revisionId: string,
  templates: Templates = {},
): { readonly ladder: Ladder; readonly rungs: readonly RungState[] } | undefined {
  const revision = state.revision[revisionId];
  const prototype = revision && state.prototype[revision.prototype];
  if (revision === undefined || prototype === undefined) return undefined;
  const subject = { prototype, revision, assessment: assess(prototype, revision) };
  const ladder = ladderFor(subject, templates.ladders ?? builtinLadders);
  if (ladder === undefined) return undefined;
  const rungs = rungsFor(ladder, subject).map((rung): RungState => {
    const result = rungResult(state, rung, revisionId);
    const card = result.cards.findLast((id) => state.card[id]?.status === 'issued');
    if (card === undefined) return { rung, ...result };
    const hindrances = hindrancesOf(state, card, templates);
    const standing = result.standing === 'planned' && hindrances.length === 0 ? 'ready' : result.standing;
    return { rung, ...result, standing, next: { card, hindrances } };
  });
  return { ladder, rungs };
}

/** A named person's argument that a run of an earlier revision still counts for this card. */
export interface Argument extends Decision {
  /** The run that passed. */
  readonly run: string;
}

/**
 * The change that lets a run of an earlier revision count on the card of this one. Refused without a name and a reason,
 * and for a run that cannot count; should that run cease to count later, the rung falls back with it.
 */
export function carryOver(
  state: NotebookState,
  cardId: string,
  { run, name, reason, at }: Argument,
  templates: Templates = {},
): Result<Change> {
  const card = state.card[cardId];
  if (card === undefined) return bad('record.unknown', 'card', { kind: 'card', id: cardId });
  if (![name, reason].every((text) => /\p{L}/u.test(text))) return bad('override.unsigned', card.title);
  const revision = state.revision[card.revision];
  const prototype = state.prototype[card.prototype];
  if (revision === undefined || prototype === undefined) {
    return bad('record.unknown', card.title, { kind: 'revision', id: card.revision });
  }
  const subject = { prototype, revision, assessment: assess(prototype, revision) };
  const ladder = ladderFor(subject, templates.ladders ?? builtinLadders);
  const rung = ladder && rungsFor(ladder, subject).find((each) => each.cards.includes(card.template));
  if (rung === undefined) return bad('readiness.no-ladder', card.title);
  const detail = whyNotCarried(state, card, rung, run);
  if (detail !== undefined) {
    return bad('ladder.not-carried', card.title, { number: state.run[run]?.number ?? run, detail });
  }
  return good(
    set('card', cardId, { carriedFrom: { run, by: name.trim(), reason: reason.trim(), at } as Json }),
  );
}
