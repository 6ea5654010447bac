import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { readOnce } from './read-once.ts';

describe('a schema that reads an object once', () => {
  let readings = 0;
  const counted = z.strictObject({
    mass: z.number().refine(() => {
      readings += 1;
      return true;
    }),
    role: z.string().default('structure'),
  });
  const once = readOnce(counted);
  const table = z.strictObject({ parts: z.record(z.string(), once), pack: once.optional() });

  it('gives out what the schema gives, and the same object when it comes again', () => {
    const first = table.parse({ parts: { a: { mass: 1 }, b: { mass: 2 } } });
    expect(first).toEqual({
      parts: { a: { mass: 1, role: 'structure' }, b: { mass: 2, role: 'structure' } },
    });
    readings = 0;
    const second = table.parse({ parts: { ...first.parts, b: { mass: 3 } } });
    expect(second.parts.a).toBe(first.parts.a);
    expect(second.parts.b).toEqual({ mass: 3, role: 'structure' });
    expect(readings, 'the new one only').toBe(1);
  });

  it('does not take an object for read that only looks like one', () => {
    const { a } = table.parse({ parts: { a: { mass: 1 } } }).parts;
    readings = 0;
    table.parse({ parts: { a: { ...a } } });
    expect(readings).toBe(1);
  });

  it('does not remember what went in, only what came out', () => {
    const given: Record<string, unknown> = { mass: 1 };
    table.parse({ parts: { a: given } });
    given.mass = 'heavy';
    expect(table.safeParse({ parts: { a: given } }).success).toBe(false);
  });

  it('does not hand what it read over to another schema', () => {
    const other = readOnce(z.strictObject({ mass: z.number().max(0.5), role: z.string() }));
    const read = once.parse({ mass: 1 });
    expect(other.safeParse(read).success).toBe(false);
  });

  it('names the place of a fault from the top, and may be left out where it is optional', () => {
    const faulty = table.safeParse({ parts: { a: { mass: 1 }, b: { mass: '2' } }, pack: { mass: 1, x: 1 } });
    expect(faulty.error?.issues.map(({ path }) => path.join('/'))).toEqual(['parts/b/mass', 'pack']);
    expect(faulty.error?.issues[0]?.message).toMatch(/number/);
    expect(faulty.error?.issues[1]?.message).toMatch(/"x"/);
    expect(table.safeParse({ parts: {}, pack: undefined }).success).toBe(true);
    expect(table.safeParse({ parts: { a: undefined } }).success).toBe(false);
  });

  it('tells the same fault in the same words twice', () => {
    const messages = () => table.safeParse({ parts: { b: { mass: '2' } } }).error?.issues;
    expect(messages()).toEqual(messages());
  });
});
