/**
 * A change is a value: it can be applied, inverted, stored and shown. A record is created once with its first
 * value and then set path by path, so that a journal line says what the person did and no more.
 */
import { z } from 'zod';
import { type RecordInput, type RecordKind, recordKind } from './kinds.ts';

/** A member that is undefined counts as absent, as in JSON text. */
export type Json =
  | null
  | boolean
  | number
  | string
  | readonly Json[]
  | { readonly [key: string]: Json | undefined };

const json: z.ZodType<Json> = z.json() as unknown as z.ZodType<Json>;

/** `value` absent: the path is removed. Segments are joined by `/`; record ids contain none. */
export const setting = z.strictObject({
  path: z.string().min(1).max(400),
  value: json.optional(),
});
export type Setting = z.infer<typeof setting>;

export const change = z.discriminatedUnion('op', [
  z.strictObject({
    op: z.literal('create'),
    kind: recordKind,
    id: z.string().regex(/^[A-Za-z0-9_-]{1,64}$/),
    value: json,
  }),
  z.strictObject({
    op: z.literal('set'),
    kind: recordKind,
    id: z.string().regex(/^[A-Za-z0-9_-]{1,64}$/),
    set: z.array(setting).min(1),
  }),
]);
export type Change = z.infer<typeof change>;

/** A change as the journal keeps it. The hash chain is added and checked where the journal is written. */
export interface JournalEntry {
  readonly seq: number;
  /** RFC 3339 with offset. */
  readonly at: string;
  readonly by: string;
  readonly change: Change;
}

export function create<K extends RecordKind>(kind: K, id: string, value: RecordInput<K>): Change {
  return { op: 'create', kind, id, value: value as Json };
}

export function set(
  kind: RecordKind,
  id: string,
  settings: Readonly<Record<string, Json | undefined>>,
): Change {
  return {
    op: 'set',
    kind,
    id,
    set: Object.entries(settings).map(([path, value]) => (value === undefined ? { path } : { path, value })),
  };
}
