/** A dated note in the notebook, with text, embedded calculations, pictures and files. */
import { z } from 'zod';

export const attachment = z.strictObject({
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  name: z.string().max(200),
  mediaType: z.string().max(100),
  size: z.number().int().nonnegative(),
  caption: z.string().max(500).default(''),
  order: z.number(),
});
export type Attachment = z.infer<typeof attachment>;

export const logEntry = z.strictObject({
  prototype: z.string(),
  revision: z.string(),
  /** Counts up within the notebook and is never used again. */
  number: z.number().int().positive(),
  title: z.string().max(200),
  at: z.string(),
  author: z.string().max(120),
  /** Markdown, with fenced `calc` blocks. */
  text: z.string().max(200_000),
  attachments: z.record(z.string(), attachment).default({}),
});
export type LogEntry = z.infer<typeof logEntry>;
