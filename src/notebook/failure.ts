/**
 * What broke, why, and what was done about it. Fields after MIL-HDBK-2155 5.1; severity and probability as in
 * MIL-STD-882E tables I and II.
 */
import { z } from 'zod';
import { attachment } from './log-entry.ts';

export const severity = z.enum(['I', 'II', 'III', 'IV']);
export const probability = z.enum(['A', 'B', 'C', 'D', 'E']);

export const failureReport = z.strictObject({
  prototype: z.string(),
  revision: z.string(),
  run: z.string().optional(),
  /** Part of the revision's mass table that failed. */
  part: z.string().optional(),
  number: z.number().int().positive(),
  at: z.string(),
  author: z.string(),
  title: z.string().max(200),
  /** What was seen, heard, smelled. */
  observed: z.string().max(8000).default(''),
  /** When in the run. */
  moment: z.string().max(500).default(''),
  effect: z.string().max(4000).default(''),
  severity,
  probability,
  evidence: z.string().max(8000).default(''),
  /** Answers to “why?”, each asked of the one before; the last is a cause that can be acted on. */
  causes: z.array(z.string().max(1000)).default([]),
  correctiveAction: z.string().max(4000).default(''),
  /** The revision that carries the corrective action. */
  correctedIn: z.string().optional(),
  /** The run that showed the action to work. */
  verifiedBy: z.string().optional(),
  status: z.enum(['open', 'action taken', 'closed']).default('open'),
  attachments: z.record(z.string(), attachment).default({}),
});
export type FailureReport = z.infer<typeof failureReport>;
