/** The published schemas: they describe the records as they are, and refuse what the notebook refuses. */
import { describe, expect, it } from 'vitest';
import { state } from '../../tests/specimen/demo.ts';
import { fits, type Schema } from '../../tests/specimen/json-schema.ts';
import type { RecordKind } from '../notebook/index.ts';
import { sample } from '../notebook/sample.ts';
import { recordFileSchema } from './schemas.ts';

const kinds = Object.keys(state) as RecordKind[];
const fileOf = (kind: RecordKind, records: unknown): unknown =>
  JSON.parse(JSON.stringify({ $schema: `../schemas/${kind}.schema.json`, kind, records }));

describe('the schema of each kind of record', () => {
  it.each(kinds)('%s: takes every record of the demo and of the specimen', (kind) => {
    const schema = recordFileSchema(kind) as Schema;
    expect(fits(schema, fileOf(kind, state[kind]))).toBeUndefined();
    expect(fits(schema, fileOf(kind, sample[kind]))).toBeUndefined();
  });

  it.each(kinds)('%s: refuses a record with a member too many, and one with a member too few', (kind) => {
    const schema = recordFileSchema(kind) as Schema;
    const record = Object.values(sample[kind])[0] as Readonly<Record<string, unknown>>;
    expect(fits(schema, fileOf(kind, { x: { ...record, more: 1 } }))).toBe('/records/x/more');
    const [first = ''] = Object.keys(record);
    const { [first]: _, ...less } = record;
    expect(fits(schema, fileOf(kind, { x: less }))).toBe(`/records/x/${first}`);
  });

  it('refuses a quantity of another kind', () => {
    const schema = recordFileSchema('revision') as Schema;
    const record = Object.values(sample.revision)[0];
    const wrong = { ...record, weighedMass: { typed: '1 kg', si: '1', u: 0, basis: 'measured' } };
    expect(fits(schema, fileOf('revision', { x: wrong }))).toBe('/records/x/weighedMass');
  });

  it('names its dialect and itself, and refers to nothing outside', () => {
    for (const kind of kinds) {
      const schema = recordFileSchema(kind);
      expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
      expect(schema.$id).toBe(`urn:counterpoise:schema:1:${kind}`);
      const text = JSON.stringify(schema);
      const definitions = Object.keys(schema.$defs as object);
      for (const [, name] of text.matchAll(/"\$ref":"#\/\$defs\/(\w+)"/g))
        expect(definitions).toContain(name);
      expect(text.match(/"\$ref":"(?!#\/\$defs\/)/)).toBeNull();
    }
  });

  it('says what each quantity of a revision and of its requirements is, with its unit', () => {
    for (const kind of ['revision', 'prototype', 'card'] as const) {
      const unnamed = quantitiesWithoutWords(recordFileSchema(kind), '');
      expect(unnamed, kind).toEqual([]);
    }
    const text = JSON.stringify(recordFileSchema('revision'));
    for (const words of [
      'density of the rotor, in kg/m³',
      'mass, in kg',
      'outer diameter, in m',
      'travel of the arm to each side, in rad; travel of the slide to each side, in m',
      'no-load speed of the actuator, in rad/s (arm) or in m/s (slide)',
    ]) {
      expect(text).toContain(words);
    }
  });
});

function quantitiesWithoutWords(schema: unknown, path: string): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const { $ref, description } = schema as { $ref?: string; description?: string };
  const here = $ref === '#/$defs/quantity' && description === undefined ? [path] : [];
  return [
    ...here,
    ...Object.entries(schema).flatMap(([key, value]) => quantitiesWithoutWords(value, `${path}/${key}`)),
  ];
}
