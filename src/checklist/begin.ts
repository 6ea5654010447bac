/** The start of a run: from an issued card, with everything in its way put right or gone past by name. */
import {
  type ChecklistItem,
  fingerprint,
  type NotebookState,
  type Revision,
  type Run,
  type TestCard,
} from '../notebook/index.ts';
import { bad, good, type Result } from '../quantity/index.ts';
import { asRecord, type Override } from './overrides.ts';
import { accepted, hindrancesOf, type OverrideOf } from './readiness.ts';
import { withMeasurements } from './wait.ts';

/** What a new run is made from. */
export interface Beginning {
  readonly cardId: string;
  readonly card: TestCard;
  readonly revision: Revision;
  readonly items: readonly ChecklistItem[];
  /** Counts up within the prototype. */
  readonly number: number;
  readonly by: string;
  readonly at: string;
  /**
   * The notebook, in which readiness is looked up and what earlier runs have measured. Only where there is none, as
   * when a story is told in tests, is the run begun without.
   */
  readonly state?: NotebookState;
  /** Decisions to go on past what stands in the way, each by its code and subject (`readinessOf`). */
  readonly overrides?: readonly OverrideOf[];
}

/**
 * The record of a new run. The card has to be issued, on the revision as it is now, and everything that stands in the
 * way of it put right, or gone past by name and with a reason that the run then carries.
 */
export function beginRun(beginning: Beginning): Result<Run> {
  const { cardId, card, revision, items, number, by, at, state, overrides = [] } = beginning;
  if (card.status !== 'issued') return bad('card.not-issued', card.title);
  const now = fingerprint(revision);
  if (card.fingerprint !== now) return bad('card.stale', card.title, { letter: revision.letter });
  if (items.every((item) => item.phase !== 'before')) return bad('checklist.empty', card.title);
  const gonePast = state
    ? accepted(hindrancesOf(state, cardId, { items }), overrides, card.title)
    : good<readonly Override[]>([]);
  if (!gonePast.ok) return gonePast;
  return good({
    prototype: card.prototype,
    revision: card.revision,
    card: cardId,
    number,
    startedAt: at,
    startedBy: by,
    fingerprint: now,
    items: withMeasurements(items, card, state),
    answers: {},
    ...(gonePast.value.length > 0 ? { overrides: asRecord(gonePast.value) } : {}),
    status: 'checklist',
    summary: '',
    readings: {},
    notes: {},
    attachments: {},
  });
}
