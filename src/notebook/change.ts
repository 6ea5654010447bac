/**
 * A change is a value: it can be applied, inverted, stored and shown. A record is created once with its first
 * value and then set path by path, so that a journal line says what the person did and no more.
 */
import { z } from 'zod';
import { type RecordInput, type RecordKind, recordKind } from './kinds.ts';
import { LONGEST_PATH } from './path.ts';

/** A member that is undefined counts as absent, as in JSON text. */
export type Json =
  | null
  | boolean
  | number
  | string
  | readonly Json[]
  | { readonly [key: string]: Json | undefined };

/** Records have six levels. A journal line or a window may come with any number, which must not exhaust the stack. */
const DEEPEST = 32;

const json = z.custom<Json>(
  (value) => isJson(value, 0),
  `is not plain JSON data of at most ${DEEPEST} levels`,
);

/** `value` absent: the path is removed. Segments are joined by `/`; record ids contain none. */
export const setting = z.strictObject({
  path: z.string().min(1).max(LONGEST_PATH),
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

/** `__proto__` is refused because it would not stay a member like any other, wherever the value is copied. */
function isJson(value: unknown, level: number): value is Json {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return true;
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || level === DEEPEST) return false;
  if (Array.isArray(value)) return value.every((item) => isJson(item, level + 1));
  return (
    isPlain(value) &&
    Object.entries(value).every(
      ([name, member]) => name !== '__proto__' && (member === undefined || isJson(member, level + 1)),
    )
  );
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

/** A change as the journal keeps it. The hash chain is added and checked where the journal is written. */
export interface JournalEntry {
  readonly seq: number;
  /** RFC 3339 with offset. */
  readonly at: string;
  readonly by: string;
  /** Where a merge took the entry from: its number and the hash of its line in the journal that it was made in. */
  readonly merged?: { readonly seq: number; readonly hash: string } | undefined;
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
