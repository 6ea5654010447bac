/**
 * A record is read as a whole after each change, and a revision of fifty parts has some two thousand members. What
 * came out of its schema before is therefore not read again: changes share whatever they leave alone, so that an
 * unchanged part is known by its identity. It also stays the same object, by which figures are remembered.
 */
import { z } from 'zod';

/**
 * The same schema, with a memory for objects that it has given out. Values of records are never changed in place:
 * an object that was would be taken unread.
 */
export function readOnce<S extends z.ZodType>(schema: S): S {
  const known = new WeakSet<object>();
  const remembering = z.unknown().transform((value, context) => {
    if (typeof value === 'object' && value !== null && known.has(value)) return value;
    const read = schema.safeParse(value);
    if (!read.success) {
      for (const issue of read.error.issues)
        context.issues.push({ ...issue, input: value } as z.core.$ZodRawIssue);
      return z.NEVER;
    }
    if (typeof read.data === 'object' && read.data !== null) known.add(read.data);
    return read.data;
  });
  behind.set(remembering, schema);
  return remembering as unknown as S;
}

const behind = new WeakMap<z.core.$ZodType, z.ZodType>();

/** The schema that was given to `readOnce`; undefined for one that did not come out of it. */
export function schemaBehind(schema: z.core.$ZodType): z.ZodType | undefined {
  return behind.get(schema);
}
