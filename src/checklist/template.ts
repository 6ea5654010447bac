/** The form of a checklist template and of a test-card template: data that a club can write for itself. */
import { z } from 'zod';

/** An expression over the names of figures, as in a calc block; true where the item applies. */
const condition = z.string().max(500);
/** Text in which `{{name}}` or `{{expression | unit}}` is replaced by the figure, rounded for people. */
const text = z.string().min(1).max(600);

export const templateItem = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/),
  kind: z.enum(['tick', 'measured', 'choice', 'hold', 'two-person']),
  /** Nothing goes on until it is met. */
  hold: z.boolean().default(false),
  /** Killer items come first in their pause. */
  critical: z.boolean().default(false),
  when: condition.optional(),
  text,
  detail: text.optional(),
  measured: z
    .strictObject({
      unit: z.string(),
      low: z.string().optional(),
      high: z.string().optional(),
      example: z.string(),
    })
    .optional(),
  choices: z.array(z.strictObject({ text: z.string(), stops: z.boolean() })).optional(),
  /** Where the item comes from: clause, publication, or “project choice”. */
  source: z.string().min(1),
});
export type TemplateItem = z.infer<typeof templateItem>;

export const checklistTemplate = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/),
  version: z.number().int().positive(),
  title: z.string(),
  /** Pauses in order, each of 5 to 9 items where possible. */
  pauses: z.array(z.strictObject({ title: z.string(), items: z.array(templateItem).min(1) })).min(1),
});
export type ChecklistTemplate = z.infer<typeof checklistTemplate>;

export const cardTemplate = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/),
  version: z.number().int().positive(),
  title: z.string(),
  purpose: text,
  setUp: text,
  prerequisites: text,
  steps: z.array(text),
  /** Names of figures that are predicted and frozen on the card. */
  predictions: z.array(z.string()),
  abortLimits: z.array(
    z.strictObject({ id: z.string(), label: z.string(), text, when: condition.optional() }),
  ),
  readings: z.array(
    z.strictObject({ id: z.string(), label: z.string(), unit: z.string(), name: z.string().optional() }),
  ),
  /** Ids of the checklist templates that a run of this card goes through. */
  checklists: z.array(z.string()).min(1),
});
export type CardTemplate = z.infer<typeof cardTemplate>;
