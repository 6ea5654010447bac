/** Where two people changed the same place of one record: the smallest places that hold what both touched. */
import type { Change, Json } from './change.ts';
import { valueAt } from './path.ts';

/** The places that the changes touch. A list counts as one place: its numbers shift when an item is taken out. */
export function touchedBy(changes: readonly Change[], record: Json | undefined): readonly string[] {
  const paths = changes.flatMap((change) => (change.op === 'set' ? change.set.map(({ path }) => path) : []));
  return [...new Set(paths.map((path) => withoutListIndex(record, path)))];
}

/** For every two places that overlap the wider one, none of them inside another. */
export function overlaps(ours: readonly string[], theirs: readonly string[]): readonly string[] {
  const wider = ours.flatMap((one) =>
    theirs.flatMap((other) => (isWithin(one, other) ? [other] : isWithin(other, one) ? [one] : [])),
  );
  return outermost(wider);
}

export function outermost(paths: readonly string[]): readonly string[] {
  const all = [...new Set(paths)];
  return all.filter((path) => !all.some((other) => other !== path && isWithin(path, other))).sort();
}

export function sameJson(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const members = (value: object): readonly (readonly [string, unknown])[] =>
    Object.entries(value).filter(([, member]) => member !== undefined);
  const others = new Map(members(other));
  const own = members(one);
  return (
    own.length === others.size &&
    own.every(([name, value]) => others.has(name) && sameJson(value, others.get(name)))
  );
}

function isWithin(path: string, place: string): boolean {
  return path === place || path.startsWith(`${place}/`);
}

function withoutListIndex(record: Json | undefined, path: string): string {
  const segments = path.split('/');
  for (let count = 1; count < segments.length; count++) {
    const place = segments.slice(0, count).join('/');
    if (Array.isArray(valueAt(record, place))) return place;
  }
  return path;
}
