/** What a dossier says about itself, in the file `dossier.json`: enough to show what it is before anything is taken in. */
import { z } from 'zod';

/** Paths in the payload. */
export const DESCRIPTION = 'dossier.json';
export const JOURNAL = 'journal/journal.jsonl';

export const dossierFormat = 'counterpoise dossier';
export const dossierVersion = 1;

const short = z.string().max(400);
const sum = z.string().regex(/^[0-9a-f]{64}$/);

/** Members that a later version of the program adds are passed over; what they mean is for that one to know. */
export const dossierDescription = z.object({
  format: z.literal(dossierFormat),
  version: z.number().int().positive(),
  /** Identity of the notebook, the same in each of its copies. */
  notebook: z.string().min(1).max(64),
  /** Hash of the last line of the journal, and how many entries it has. */
  head: sum,
  entries: z.number().int().nonnegative(),
  /** When and by whom the newest entry was made; empty in a journal without entries. */
  at: short,
  by: z.string().max(1000),
  /** The prototype that reports, tables and records are about. The journal is that of the whole notebook. */
  prototype: z.object({ id: z.string().min(1).max(64), name: short }),
  /** What was known to be open when it was made. */
  questions: z.array(z.object({ kind: short, text: z.string().max(4000) })).max(10_000),
  /** Attached files by their content. */
  files: z.array(z.object({ sha256: sum, path: short, name: short })).max(20_000),
  /** Attached files that the sender did not have. */
  missing: z.array(z.object({ sha256: sum, name: short })).max(20_000),
});
export type DossierDescription = z.infer<typeof dossierDescription>;
