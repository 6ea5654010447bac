/**
 * The schemas of the record files, with the words and units of every field in them: a person who has only the files
 * finds there what a number means.
 */
import { bodyFields, factSpecs, partFields, sectionFields } from '../margins/index.ts';
import { type JsonSchema, publishedSchema, type RecordKind } from '../notebook/index.ts';

const DIALECT = 'https://json-schema.org/draft/2020-12/schema';

/** The schema of `records/<kind>.json`. */
export function recordFileSchema(kind: RecordKind): JsonSchema {
  const { $defs } = structuredClone(publishedSchema(kind)) as { $defs: Definitions };
  explain($defs, kind);
  return {
    $schema: DIALECT,
    $id: `urn:counterpoise:schema:1:${kind}`,
    title: `Records of the kind “${kind}” in a notebook, by their identity`,
    description:
      'Physical values are SI in the member “si”; “typed” is what was typed, “u” the standard uncertainty in the same unit. A member that is absent was left blank, which is neither nought nor “notMeasured”.',
    type: 'object',
    properties: {
      $schema: { type: 'string' },
      kind: { const: kind },
      records: { type: 'object', additionalProperties: { $ref: `#/$defs/${kind}` } },
    },
    required: ['kind', 'records'],
    additionalProperties: false,
    $defs,
  };
}

interface Definition {
  properties?: Record<string, Definition>;
  anyOf?: Definition[];
  oneOf?: Definition[];
  additionalProperties?: Definition | boolean;
  description?: string;
}
type Definitions = Record<string, Definition>;

function explain(definitions: Definitions, kind: RecordKind): void {
  for (const { record, path, title, unit, onSlide } of factSpecs) {
    if (record !== kind) continue;
    const units = onSlide ? `${inUnit(unit)} (arm) or ${inUnit(onSlide.unit)} (slide)` : inUnit(unit);
    for (const field of fieldsAt(definitions[kind], path.split('/'))) note(field, `${title}, ${units}`);
  }
  for (const { key, title, unit } of [...partFields, ...Object.values(bodyFields).flat()]) {
    for (const field of fieldsAt(definitions.part, key.split('/'))) note(field, `${title}, ${inUnit(unit)}`);
  }
  for (const { key, title, unit } of sectionFields) {
    for (const field of fieldsAt(definitions.rotorSection, [key])) note(field, `${title}, ${inUnit(unit)}`);
  }
}

function inUnit(unit: string): string {
  return unit === '1' ? 'a pure number' : `in ${unit}`;
}

/** A field that arm and slide share is met more than once. */
function note(field: Definition, text: string): void {
  if (field.description === undefined) field.description = text;
  else if (!field.description.includes(text)) field.description += `; ${text}`;
}

/** Where a path leads, in each of the forms that the record may have. */
function fieldsAt(definition: Definition | undefined, [head, ...rest]: readonly string[]): Definition[] {
  if (!definition || head === undefined) return definition ? [definition] : [];
  const member = definition.properties?.[head];
  const here = member ? fieldsAt(member, rest) : [];
  const forms = [...(definition.anyOf ?? []), ...(definition.oneOf ?? [])];
  return [...here, ...forms.flatMap((form) => fieldsAt(form, [head, ...rest]))];
}
