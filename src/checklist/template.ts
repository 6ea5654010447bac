/** The form of a checklist template and of a test-card template: data that a club can write for itself. */
import { z } from 'zod';
import { measuredNames } from './measured.ts';

/** Ids end up in the paths of record changes, which are split at `/`, and are joined by `.`: hence the few characters. */
export const id = z
  .string()
  .max(60)
  .regex(/^[a-z0-9-]+$/, 'an id is made of small letters, figures and hyphens');
/** An expression over the names of figures, as in a calc block; true where the item applies. */
export const condition = z.string().min(1).max(500);
/** An expression for a limit, with its unit: `0.030 V`, `1.5 * coast_down_time`. */
const limit = z.string().min(1).max(500);
/** Text in which `{{name}}` or `{{expression | unit}}` is replaced by the figure, rounded for people. */
const text = z.string().min(1).max(600);

export const templateItem = z.strictObject({
  id,
  kind: z.enum(['tick', 'measured', 'choice', 'hold', 'two-person', 'wait', 'photo']),
  /** Nothing goes on until it is met. An item of kind `hold` always is one. */
  hold: z.boolean().default(false),
  /** Killer items come first in their pause. */
  critical: z.boolean().default(false),
  when: condition.optional(),
  text,
  detail: text.optional(),
  measured: z
    .strictObject({
      unit: z.string().min(1).max(40),
      low: limit.optional(),
      high: limit.optional(),
      example: z.string().min(1).max(60),
    })
    .optional(),
  /** What the reading tells later waits, in this run and in those after it. */
  measures: z.enum(measuredNames).optional(),
  /** A timed wait: an expression for its length, in which measured names may stand; and what holds without them. */
  wait: z.strictObject({ time: limit, otherwise: limit.optional() }).optional(),
  choices: z
    .array(z.strictObject({ text: z.string().min(1).max(200), stops: z.boolean() }))
    .min(1)
    .max(6)
    .optional(),
  /** Where the item comes from: clause, publication, or “project choice”. */
  source: z.string().min(1).max(300),
});
export type TemplateItem = z.infer<typeof templateItem>;

export const templatePause = z.strictObject({
  title: z.string().min(1).max(80),
  /** Before the run is cleared, while it is under way, or when making safe after it. */
  phase: z.enum(['before', 'during', 'after']).default('before'),
  items: z.array(templateItem).min(1).max(40),
});
export type TemplatePause = z.infer<typeof templatePause>;

export const checklistTemplate = z.strictObject({
  id,
  version: z.number().int().positive(),
  title: z.string().min(1).max(80),
  /** What it is for, and when it is gone through. */
  purpose: z.string().min(1).max(600),
  /** `read`: kept in view and read aloud, never ticked; its items are no part of a run's answers. */
  use: z.enum(['ticked', 'read']).default('ticked'),
  /** Pauses in order, each of 5 to 9 items where possible. */
  pauses: z.array(templatePause).min(1).max(12),
});
export type ChecklistTemplate = z.infer<typeof checklistTemplate>;

export const cardTemplate = z.strictObject({
  id,
  version: z.number().int().positive(),
  title: z.string().min(1).max(80),
  purpose: text,
  setUp: text,
  prerequisites: text,
  steps: z.array(text).min(1).max(40),
  /** Names of figures that are predicted and frozen on the card, where they apply to the revision. */
  predictions: z.array(z.string()).max(40),
  abortLimits: z
    .array(z.strictObject({ id, label: z.string().min(1).max(80), text, when: condition.optional() }))
    .min(1)
    .max(20),
  readings: z
    .array(
      z.strictObject({
        id,
        label: z.string().min(1).max(120),
        unit: z.string().min(1).max(40),
        /** The figure that the reading is held against afterwards. */
        name: z.string().optional(),
        /** What the reading tells later waits. */
        measures: z.enum(measuredNames).optional(),
        when: condition.optional(),
      }),
    )
    .max(30),
  /** Ids of the checklist templates that a run of this card goes through, in order. */
  checklists: z.array(z.string()).min(1).max(12),
});
export type CardTemplate = z.infer<typeof cardTemplate>;
