/**
 * Whether a value may stand in a field: refused at input, so that no equation meets it later. Only what is
 * impossible is refused; what is merely unusual is the person's own affair.
 */

import {
  isKnown,
  type Json,
  type Prototype,
  type QuantityField,
  type Revision,
  valueAt,
} from '../notebook/index.ts';
import { formatValue, type Problem } from '../quantity/index.ts';
import { factApplies, factSpecs, resolveFact } from './facts.ts';
import { type FieldSpec, positive, type Range, within } from './field.ts';
import { bodyFields, partFields, sectionFields } from './part-fields.ts';

type Checked = Pick<FieldSpec, 'title' | 'unit' | 'display' | 'range'> & {
  readonly kind?: 'quantity' | 'count';
};

/**
 * @param record  the kind of record that the field belongs to
 * @param path    of the field in it, segments joined by `/`
 * @param si      the value to be entered, in the SI unit of the field
 * @param held    the record as it stands, to check the value against its neighbours too
 * @returns       what is wrong with the value, or undefined
 */
export function checkField(
  record: 'prototype' | 'revision',
  path: string,
  si: number,
  held?: Prototype | Revision,
): Problem | undefined {
  const field = fieldAt(record, path, held);
  if (!field) return undefined;
  if (field.kind === 'count' && !Number.isInteger(si)) {
    return { code: 'quantity.not-whole', place: field.title, figures: { value: si } };
  }
  if (!within(field.range, si)) {
    return {
      code: 'quantity.out-of-range',
      place: field.title,
      figures: {
        name: field.title,
        value: formatValue(si, field.display),
        range: describeRange(field.range, field.display),
      },
    };
  }
  return held ? besideOthers(field, path, si, held) : undefined;
}

/** The input field at a path of a record, whether fact, part, body or section. */
export function fieldAt(
  record: 'prototype' | 'revision',
  path: string,
  held?: Prototype | Revision,
): Checked | undefined {
  const [, partField] = /^parts\/[^/]+\/(.+)$/.exec(path) ?? [];
  const [, sectionField] = /^rotor\/sections\/[^/]+\/(.+)$/.exec(path) ?? [];
  if (record === 'revision' && partField !== undefined) {
    return [...partFields, ...Object.values(bodyFields).flat()].find(({ key }) => key === partField);
  }
  if (record === 'revision' && sectionField !== undefined) {
    return sectionFields.find(({ key }) => key === sectionField);
  }
  const facts = factSpecs.filter((spec) => spec.record === record && spec.path === path);
  const [first] = facts;
  if (!first || facts.length === 1)
    return first && held && 'parts' in held ? resolveFact(first, held) : first;
  // An arm and a slide keep their travel in the same place; only the record tells which of the two is meant.
  const meant = held && 'parts' in held ? facts.find((spec) => factApplies(spec, held)) : undefined;
  return meant ?? { ...first, range: positive };
}

function describeRange(range: Range, display: string): string {
  const limits = [
    range.above === undefined ? undefined : `more than ${formatValue(range.above, display)}`,
    range.from === undefined ? undefined : `at least ${formatValue(range.from, display)}`,
    range.below === undefined ? undefined : `less than ${formatValue(range.below, display)}`,
    range.to === undefined ? undefined : `at most ${formatValue(range.to, display)}`,
  ].filter((limit) => limit !== undefined);
  return limits.length === 0 ? 'the numbers that can be kept' : limits.join(' and ');
}

/** Diameters that have to fit one in the other, outer and inner, by the last segment of their paths. */
const NESTED = [
  ['outerDiameter', 'boreDiameter'],
  ['diameter', 'bore'],
] as const;

function besideOthers(
  field: Checked,
  path: string,
  si: number,
  held: Prototype | Revision,
): Problem | undefined {
  const cut = path.lastIndexOf('/') + 1;
  const [place, key] = [path.slice(0, cut), path.slice(cut)];
  const other = (name: string): number | undefined => {
    const found = valueAt(held as unknown as Json, place + name) as QuantityField | undefined;
    return isKnown(found) ? found.si : undefined;
  };
  for (const [outer, inner] of NESTED) {
    if (key !== outer && key !== inner) continue;
    const rim = key === outer ? si : other(outer);
    const bore = key === inner ? si : other(inner);
    if (rim === undefined || bore === undefined || bore < rim) continue;
    return {
      code: 'quantity.bore-beyond-rim',
      place: field.title,
      figures: { bore: formatValue(bore, field.display), rim: formatValue(rim, field.display) },
    };
  }
  return undefined;
}
