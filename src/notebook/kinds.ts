/** The kinds of record in a notebook, each with its schema. A new kind is one line here and one file beside. */
import { z } from 'zod';
import { failureReport } from './failure.ts';
import { logEntry } from './log-entry.ts';
import { prototype } from './prototype.ts';
import { revision } from './revision.ts';
import { run, testCard } from './test-card.ts';

export const notebookRecord = z.strictObject({ name: z.string().min(1).max(120), createdAt: z.string() });
export type NotebookRecord = z.infer<typeof notebookRecord>;

export const schemas = {
  notebook: notebookRecord,
  prototype,
  revision,
  entry: logEntry,
  card: testCard,
  run,
  failure: failureReport,
} as const;

export const recordKind = z.enum(['notebook', 'prototype', 'revision', 'entry', 'card', 'run', 'failure']);
export type RecordKind = z.infer<typeof recordKind>;
export type RecordOf<K extends RecordKind> = z.infer<(typeof schemas)[K]>;
/** What a record may be made from: fields with a default may be left out. */
export type RecordInput<K extends RecordKind> = z.input<(typeof schemas)[K]>;
