/**
 * As much of JSON Schema 2020-12 as the published schemas use, so that records can be held against them as another
 * program would. A keyword that it does not know fails, so that none is passed over in silence.
 */
export type Schema = Readonly<Record<string, unknown>>;

const ANNOTATIONS = new Set(['$schema', '$id', '$defs', 'title', 'description', 'default']);

/** Path of the first value that does not fit, the empty text for the whole; undefined where all fits. */
export function fits(schema: Schema, value: unknown, root: Schema = schema, path = ''): string | undefined {
  for (const [keyword, rule] of Object.entries(schema)) {
    if (ANNOTATIONS.has(keyword)) continue;
    const check = CHECKS[keyword];
    if (!check) throw new Error(`the schema uses “${keyword}”, which this check does not know`);
    const fault = check({ rule, value, schema, root, path });
    if (fault !== undefined) return fault;
  }
  return undefined;
}

interface Question {
  readonly rule: unknown;
  readonly value: unknown;
  readonly schema: Schema;
  readonly root: Schema;
  readonly path: string;
}
type Check = (question: Question) => string | undefined;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const must =
  (test: (question: Question) => boolean): Check =>
  (question) =>
    test(question) ? undefined : question.path;
const onText = (test: (text: string, rule: number) => boolean): Check =>
  must(({ value, rule }) => typeof value !== 'string' || test(value, rule as number));
const onNumber = (test: (number: number, rule: number) => boolean): Check =>
  must(({ value, rule }) => typeof value !== 'number' || test(value, rule as number));

const CHECKS: Readonly<Record<string, Check>> = {
  type: must(({ value, rule }) => {
    if (rule === 'object') return isObject(value);
    if (rule === 'array') return Array.isArray(value);
    if (rule === 'integer') return Number.isInteger(value);
    if (rule === 'null') return value === null;
    return typeof value === rule;
  }),
  const: must(({ value, rule }) => value === rule),
  enum: must(({ value, rule }) => (rule as readonly unknown[]).includes(value)),
  minLength: onText((text, least) => [...text].length >= least),
  maxLength: onText((text, most) => [...text].length <= most),
  pattern: must(
    ({ value, rule }) => typeof value !== 'string' || new RegExp(rule as string, 'u').test(value),
  ),
  minimum: onNumber((number, least) => number >= least),
  maximum: onNumber((number, most) => number <= most),
  exclusiveMinimum: onNumber((number, limit) => number > limit),
  exclusiveMaximum: onNumber((number, limit) => number < limit),
  required: ({ value, rule, path }) => {
    if (!isObject(value)) return undefined;
    const missing = (rule as readonly string[]).find((name) => !Object.hasOwn(value, name));
    return missing === undefined ? undefined : `${path}/${missing}`;
  },
  properties: ({ value, rule, root, path }) => {
    if (!isObject(value)) return undefined;
    for (const [name, schema] of Object.entries(rule as Readonly<Record<string, Schema>>)) {
      const fault = Object.hasOwn(value, name)
        ? fits(schema, value[name], root, `${path}/${name}`)
        : undefined;
      if (fault !== undefined) return fault;
    }
    return undefined;
  },
  additionalProperties: ({ value, rule, schema, root, path }) => {
    if (!isObject(value)) return undefined;
    const known = Object.keys((schema.properties ?? {}) as object);
    for (const [name, member] of Object.entries(value)) {
      if (known.includes(name)) continue;
      if (rule === false) return `${path}/${name}`;
      const fault = fits(rule as Schema, member, root, `${path}/${name}`);
      if (fault !== undefined) return fault;
    }
    return undefined;
  },
  propertyNames: ({ value, rule, root, path }) =>
    isObject(value)
      ? Object.keys(value).find((name) => fits(rule as Schema, name, root, path) !== undefined)
      : undefined,
  items: ({ value, rule, root, path }) => {
    if (!Array.isArray(value)) return undefined;
    for (const [index, item] of value.entries()) {
      const fault = fits(rule as Schema, item, root, `${path}/${index}`);
      if (fault !== undefined) return fault;
    }
    return undefined;
  },
  anyOf: must(({ value, rule, root }) =>
    (rule as readonly Schema[]).some((form) => fits(form, value, root) === undefined),
  ),
  oneOf: must(
    ({ value, rule, root }) =>
      (rule as readonly Schema[]).filter((form) => fits(form, value, root) === undefined).length === 1,
  ),
  $ref: ({ value, rule, root, path }) => {
    const name = String(rule).replace('#/$defs/', '');
    const definition = (root.$defs as Readonly<Record<string, Schema>>)[name];
    if (!definition) throw new Error(`there is no definition “${name}”`);
    return fits(definition, value, root, path);
  },
};
