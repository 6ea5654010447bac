/**
 * Places inside a record: names of members joined by `/`, numbers for the items of a list. Only what a record itself
 * holds can be named; what every object or list brings along (`constructor`, `length`) is not there.
 */
import type { Json, Setting } from './change.ts';

export const LONGEST_PATH = 400;

const INDEX = /^(0|[1-9]\d{0,5})$/;

/** What stands at a path of a record; undefined where nothing does. */
export function valueAt(value: Json | undefined, path: string): Json | undefined {
  let here = value;
  for (const segment of path.split('/')) {
    if (here === undefined) return undefined;
    here = memberOf(here, segment);
  }
  return here;
}

/**
 * Whether something can be set there: every name has a letter at least, and a list is met by the number of one of its
 * items, or of the one after the last. Members that are not there yet are made on the way.
 */
export function isPlace(record: Json, path: string): boolean {
  if (path.length > LONGEST_PATH) return false;
  let here: Json | undefined = record;
  for (const segment of path.split('/')) {
    if (segment === '' || segment === '__proto__') return false;
    if (Array.isArray(here) && !(INDEX.test(segment) && Number(segment) <= here.length)) return false;
    here = here === undefined ? undefined : memberOf(here, segment);
  }
  return true;
}

/** The record with one place set, or removed where the value is absent; shares everything beside the path. */
export function withSetting(record: Json, { path, value }: Setting): Json {
  if (value === undefined && valueAt(record, path) === undefined) return record;
  return setAt(record, path.split('/'), value);
}

/**
 * The setting that puts the place back as it is in `record`. Where the way to it does not exist yet, the whole of what
 * setting it would make goes again; a list is put back as a whole, because removing an item moves the later ones.
 */
export function restoring(record: Json, path: string): Setting {
  const segments = path.split('/');
  let here = record;
  for (const [index, segment] of segments.entries()) {
    if (Array.isArray(here)) return at(segments.slice(0, index), here);
    const next = memberOf(here, segment);
    const further = index < segments.length - 1;
    if (next === undefined || (further && (typeof next !== 'object' || next === null))) {
      return at(segments.slice(0, index + 1), next);
    }
    here = next;
  }
  return at(segments, here);
}

function at(segments: readonly string[], value: Json | undefined): Setting {
  const path = segments.join('/');
  return value === undefined ? { path } : { path, value };
}

function memberOf(value: Json, segment: string): Json | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  if (Array.isArray(value)) return INDEX.test(segment) ? value[Number(segment)] : undefined;
  return Object.hasOwn(value, segment) ? (value as Readonly<Record<string, Json>>)[segment] : undefined;
}

function setAt(value: Json | undefined, [head, ...rest]: readonly string[], leaf: Json | undefined): Json {
  if (head === undefined) return leaf ?? null;
  const removes = rest.length === 0 && leaf === undefined;
  if (Array.isArray(value)) {
    const items: Json[] = [...value];
    if (removes) items.splice(Number(head), 1);
    else items[Number(head)] = setAt(items[Number(head)], rest, leaf);
    return items;
  }
  const members = (typeof value === 'object' && value !== null ? value : {}) as Readonly<
    Record<string, Json>
  >;
  if (removes) {
    const { [head]: _, ...others } = members;
    return others;
  }
  return { ...members, [head]: setAt(memberOf(members, head), rest, leaf) };
}
