/** One planned test, and one execution of it. */
import { z } from 'zod';
import { attachment } from './log-entry.ts';
import { knownQuantity } from './quantity-field.ts';
import { readOnce } from './read-once.ts';

/** A figure of the revision, as it stood when the card was issued. SI. */
export const frozenFigure = z.strictObject({
  name: z.string(),
  label: z.string(),
  unit: z.string(),
  value: z.number(),
  u: z.number().nonnegative(),
});
export type FrozenFigure = z.infer<typeof frozenFigure>;

export const abortLimit = z.strictObject({
  label: z.string(),
  /** In words and figures, as read aloud. */
  text: z.string(),
  order: z.number(),
});

/** Something to be read during or after the run; compared with a prediction of the same name, if there is one. */
export const reading = z.strictObject({
  label: z.string(),
  unit: z.string(),
  name: z.string().optional(),
  /** What it tells later runs and waits: `coast_down_time`. */
  measures: z.string().max(60).optional(),
  order: z.number(),
});

/** A named person's argument that a run of an earlier revision still counts for this one. */
export const carriedFrom = z.strictObject({
  /** The run that passed. */
  run: z.string(),
  by: z.string().min(1).max(120),
  at: z.string(),
  reason: z.string().min(1).max(4000),
});

export const testCard = z.strictObject({
  prototype: z.string(),
  revision: z.string(),
  number: z.number().int().positive(),
  /** Id of the template that it was made from. */
  template: z.string(),
  title: z.string().max(200),
  purpose: z.string().max(4000),
  setUp: z.string().max(4000),
  prerequisites: z.string().max(4000),
  steps: z.array(z.string().max(1000)),
  predictions: z.record(z.string(), frozenFigure).default({}),
  abortLimits: z.record(z.string(), abortLimit).default({}),
  readings: z.record(z.string(), reading).default({}),
  status: z.enum(['draft', 'issued']).default('draft'),
  createdAt: z.string(),
  issuedAt: z.string().optional(),
  issuedBy: z.string().optional(),
  /** Fingerprint of the revision whose figures are frozen on the card. */
  fingerprint: z.string().optional(),
  /** Instead of a run of this card: the run of an earlier revision that is argued to count. */
  carriedFrom: carriedFrom.optional(),
});
export type TestCard = z.infer<typeof testCard>;

export const checklistItemKind = z.enum([
  'tick',
  'measured',
  'choice',
  'hold',
  'two-person',
  'wait',
  'photo',
]);

/** Before the run is cleared, while it is under way, or when making safe after it. */
export const checklistPhase = z.enum(['before', 'during', 'after']);
export type ChecklistPhase = z.infer<typeof checklistPhase>;

/** One item as it was put to the people, texts and limits filled in from the revision. */
export const checklistItem = z.strictObject({
  id: z.string(),
  pause: z.string(),
  phase: checklistPhase.default('before'),
  kind: checklistItemKind,
  /** A hold point: nothing goes on until it is met. */
  hold: z.boolean(),
  /** A killer item: left out, it has killed. Shown apart from the others. */
  critical: z.boolean().default(false),
  text: z.string(),
  /** Why, or how to do it; small print. */
  detail: z.string().default(''),
  source: z.string(),
  /** Names of the figures that the text or the limits use. */
  figures: z.array(z.string()),
  measured: z
    .strictObject({
      /** Unit that people read and type in; the limits are SI, as every stored figure. */
      unit: z.string(),
      low: z.number().optional(),
      high: z.number().optional(),
      example: z.string(),
    })
    .optional(),
  choices: z.array(z.strictObject({ text: z.string(), stops: z.boolean() })).optional(),
  /** What a reading of this item tells later waits: `coast_down_time`. */
  measures: z.string().max(60).optional(),
  /** How long nothing is touched. Worked out when it is asked for: the run itself may measure what it rests on. */
  wait: z
    .strictObject({
      /** In seconds, as a formula over `given` and what the run has measured. */
      expression: z.string().max(500),
      /** Seconds to wait where the formula cannot be worked out. */
      otherwise: z.number().positive().optional(),
      /** What was known when the list was made: SI value, its unit, and where it is from. */
      given: z
        .record(z.string(), z.strictObject({ si: z.number(), unit: z.string(), from: z.string() }))
        .default({}),
      /** Readings of the card that measure a name for this run. */
      readings: z.record(z.string(), z.array(z.string())).default({}),
    })
    .optional(),
  /** What has to be entered in the revision before this item can be put properly. */
  missing: z.array(z.string()).default([]),
});
export type ChecklistItem = z.infer<typeof checklistItem>;

export const checklistAnswer = z.strictObject({
  at: z.string(),
  initials: z.string().min(1).max(8),
  /** The second person of a two-person item. */
  second: z.string().max(8).optional(),
  reading: knownQuantity.optional(),
  choice: z.string().optional(),
  /** SHA-256 of the picture among the attachments of the run. */
  photo: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional(),
  /** Time that passed by a clock that nobody can set, and how far the clock on the wall ran away from it. Seconds. */
  waited: z.strictObject({ seconds: z.number().nonnegative(), clockShift: z.number() }).optional(),
  /** Met, or answered in a way that stops the run. */
  met: z.boolean(),
  note: z.string().max(1000).optional(),
});
export type ChecklistAnswer = z.infer<typeof checklistAnswer>;

/** The start of a wait. `reading`: seconds of a clock that only counts up, in the session that it belongs to. */
export const waitStart = z.strictObject({
  at: z.string(),
  by: z.string().min(1).max(8),
  session: z.string().min(1).max(80),
  reading: z.number().nonnegative(),
});

/** Somebody went on although something stood in the way: who, why, and what exactly was accepted. */
export const override = z.strictObject({
  /** Code of the problem that was accepted. */
  code: z.string().min(1).max(60),
  /** What it is about: an item, a margin, a rung, a failure report. */
  subject: z.string().max(200),
  /** The problem in words and figures as it stood; it covers nothing else. */
  what: z.string().min(1).max(2000),
  name: z.string().min(1).max(120),
  reason: z.string().min(1).max(4000),
  at: z.string(),
});
export type Override = z.infer<typeof override>;

export const runNote = z.strictObject({ at: z.string(), text: z.string().max(4000), author: z.string() });

export const run = z.strictObject({
  prototype: z.string(),
  revision: z.string(),
  card: z.string(),
  number: z.number().int().positive(),
  startedAt: z.string(),
  startedBy: z.string(),
  /** Fingerprint of the revision that the checklist was generated from; another one makes it void. */
  fingerprint: z.string(),
  items: z.array(readOnce(checklistItem)),
  answers: z.record(z.string(), readOnce(checklistAnswer)).default({}),
  /** Starts of its waits, by item. */
  waits: z.record(z.string(), waitStart).optional(),
  /** What was gone past by name and with a reason. */
  overrides: z.record(z.string(), override).optional(),
  status: z.enum(['checklist', 'cleared', 'finished', 'aborted', 'void']).default('checklist'),
  clearedAt: z.string().optional(),
  clearedBy: z.string().optional(),
  finishedAt: z.string().optional(),
  outcome: z.enum(['passed', 'failed', 'aborted']).optional(),
  summary: z.string().max(8000).default(''),
  readings: z.record(z.string(), knownQuantity).default({}),
  notes: z.record(z.string(), runNote).default({}),
  attachments: z.record(z.string(), attachment).default({}),
  signedBy: z.string().optional(),
  signedAt: z.string().optional(),
});
export type Run = z.infer<typeof run>;
