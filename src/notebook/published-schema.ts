/**
 * The record kinds as JSON Schemas, for people and programs that read records without this program. Made from the
 * schemas that the notebook itself goes by, so that the two cannot say different things.
 */
import { z } from 'zod';
import { type RecordKind, schemas } from './kinds.ts';
import { attachment } from './log-entry.ts';
import { knownQuantity, quantityField } from './quantity-field.ts';
import { schemaBehind } from './read-once.ts';
import { part, rotorSection } from './revision.ts';
import { checklistAnswer, checklistItem } from './test-card.ts';

export type JsonSchema = { readonly [member: string]: unknown };

/** What is used in many places stands once in the schema, under this name. */
const NAMED = new Map<z.core.$ZodType, string>([
  [quantityField, 'quantity'],
  [knownQuantity, 'knownQuantity'],
  [attachment, 'attachment'],
  [part, 'part'],
  [rotorSection, 'rotorSection'],
  [checklistItem, 'checklistItem'],
  [checklistAnswer, 'checklistAnswer'],
]);

/**
 * The schema of one record (draft 2020-12), and the definitions that it refers to as `#/$defs/…`, itself among them
 * under the name of its kind. It describes a record as it is kept, every default filled in.
 */
export function publishedSchema(kind: RecordKind): { readonly $defs: Readonly<Record<string, JsonSchema>> } {
  const definitions: Record<string, JsonSchema> = {};
  definitions[kind] = described(schemas[kind], definitions);
  return { $defs: definitions };
}

function described(schema: z.core.$ZodType, definitions: Record<string, JsonSchema>): JsonSchema {
  const { $schema: _, ...made } = z.toJSONSchema(schema, {
    target: 'draft-2020-12',
    io: 'output',
    unrepresentable: 'any',
    override({ zodSchema, jsonSchema }) {
      const inner = schemaBehind(zodSchema) ?? zodSchema;
      const name = NAMED.get(zodSchema) ?? NAMED.get(inner);
      if (zodSchema === schema || (name === undefined && inner === zodSchema)) return;
      for (const member of Object.keys(jsonSchema)) delete jsonSchema[member];
      if (name === undefined) {
        Object.assign(jsonSchema, described(inner, definitions));
        return;
      }
      jsonSchema.$ref = `#/$defs/${name}`;
      if (Object.hasOwn(definitions, name)) return;
      definitions[name] = {}; // taken: it may be met again on the way
      definitions[name] = described(inner, definitions);
    },
  });
  return made;
}
