/** Whether a record has the form of its kind: read as a whole when it is made, and where it is touched after that. */
import { z } from 'zod';
import { bad, good, type Result } from '../quantity/index.ts';
import type { Json, Setting } from './change.ts';
import { firstFault } from './fault.ts';
import { type RecordKind, schemas } from './kinds.ts';

/** What the kind's schema makes of the value, or the first thing that is wrong with it. */
export function checked(kind: RecordKind, value: Json): Result<unknown> {
  const parsed = schemas[kind].safeParse(value);
  if (parsed.success) return good(parsed.data);
  const { path, detail } = firstFault(parsed.error.issues);
  return bad('record.invalid', path === '' ? kind : `${kind}, ${shortened(path)}`, { detail });
}

/**
 * A record that was sound before its settings: only what they touch is read again, because no schema of a record
 * relates one member to another. A run of sixty answers has forty items, and fifty-nine answers, that one answer
 * leaves alone.
 */
export function checkedAgain(kind: RecordKind, after: Json, settings: readonly Setting[]): Result<unknown> {
  const shape: Readonly<Record<string, z.ZodType>> = schemas[kind].shape;
  const record = { ...(after as object) };
  for (const { path } of settings) {
    const [name = '', item] = path.split('/', 2);
    const member = Object.hasOwn(shape, name) ? shape[name] : undefined;
    // Where it fails, the whole record does: it is read as a whole then, to word the fault.
    if (member === undefined || !readAgain(record, name, member, item)) return checked(kind, after);
  }
  return good(record);
}

/** Puts what the schema makes of a member, or of one item of a member that is a table, in its place. */
function readAgain(
  holder: Record<string, unknown>,
  name: string,
  schema: z.ZodType,
  item: string | undefined,
): boolean {
  const present = Object.hasOwn(holder, name) ? holder[name] : undefined;
  const row = item === undefined || present === undefined ? undefined : rowSchema(schema);
  if (item !== undefined && row !== undefined && isObject(present)) {
    if (!Object.hasOwn(present, item)) return true;
    const read = row.safeParse(present[item]);
    if (read.success && read.data !== present[item]) holder[name] = { ...present, [item]: read.data };
    return read.success;
  }
  const read = schema.safeParse(present);
  if (read.success && read.data === undefined) delete holder[name];
  else if (read.success) holder[name] = read.data;
  return read.success;
}

/** The schema of one row where the schema is that of a table, rows by id. */
function rowSchema(schema: z.ZodType): z.ZodType | undefined {
  const table = schema instanceof z.ZodDefault ? schema.unwrap() : schema;
  return table instanceof z.ZodRecord ? (table.valueType as z.ZodType) : undefined;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** For a sentence: a path may have been made to be endless. */
export function shortened(path: string): string {
  return path.length > 80 ? `${path.slice(0, 79)}…` : path;
}
