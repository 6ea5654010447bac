/** Two revisions side by side: what was changed, and which margins changed with it. */
import {
  isKnown,
  type Json,
  type Prototype,
  type QuantityField,
  type Revision,
  valueAt,
} from '../notebook/index.ts';
import { assess } from './assess.ts';
import { fieldAt } from './check-field.ts';
import type { Assessment, Figure, Margin } from './figure.ts';
import { isRowFigure } from './part-figures.ts';

/** One input that is not the same; `before` or `after` absent where the field is not there or left blank. */
export interface InputChange {
  readonly path: string;
  /** `mass of Tray`, in the words of the later revision where it has them. */
  readonly label: string;
  /** As typed. */
  readonly before?: string;
  readonly after?: string;
}

export interface FigureChange {
  readonly name: string;
  readonly before: Figure | undefined;
  readonly after: Figure | undefined;
}

export interface MarginChange {
  readonly id: string;
  readonly title: string;
  readonly before: Margin | undefined;
  readonly after: Margin | undefined;
  /** The verdict is another one. */
  readonly turned: boolean;
}

export interface Comparison {
  readonly inputs: readonly InputChange[];
  /** Calculated figures whose value is another one, or that are known in one revision only. */
  readonly figures: readonly FigureChange[];
  readonly margins: readonly MarginChange[];
}

/** What differs from revision `a` to revision `b` of a prototype, judged by its requirements as they stand. */
export function compareRevisions(prototype: Prototype, a: Revision, b: Revision): Comparison {
  const before = assess(prototype, a);
  const after = assess(prototype, b);
  return {
    inputs: inputChanges(a, b),
    figures: figureChanges(before, after),
    margins: marginChanges(before, after),
  };
}

/** Says nothing of what a revision is: its name, its dates, who issued it. */
const NOT_PHYSICAL = new Set([
  'prototype',
  'letter',
  'status',
  'from',
  'reason',
  'createdAt',
  'issuedAt',
  'issuedBy',
]);

function inputChanges(a: Revision, b: Revision): InputChange[] {
  const before = leaves(a);
  const after = leaves(b);
  const changes: InputChange[] = [];
  const whole = new Set<string>();
  for (const path of new Set([...before.keys(), ...after.keys()])) {
    const row = rowOf(path);
    if (row !== undefined && (rowName(a, row) === undefined || rowName(b, row) === undefined)) {
      if (!whole.has(row)) changes.push(wholeRow(row, a, b));
      whole.add(row);
      continue;
    }
    const was = before.get(path);
    const is = after.get(path);
    if (same(was, is)) continue;
    changes.push({
      path,
      label: labelOf(path, a, b),
      ...(was === undefined ? {} : { before: written(was) }),
      ...(is === undefined ? {} : { after: written(is) }),
    });
  }
  return changes;
}

type Leaf = QuantityField | string | number | boolean;

/** Every field by its path; a quantity counts as one leaf. */
function leaves(revision: Revision): ReadonlyMap<string, Leaf> {
  const found = new Map<string, Leaf>();
  const walk = (value: unknown, path: string): void => {
    if (typeof value !== 'object' || value === null) {
      if (value !== undefined && !path.endsWith('/order')) found.set(path, value as Leaf);
    } else if ('si' in value || 'notMeasured' in value) {
      found.set(path, value as QuantityField);
    } else {
      for (const [key, member] of Object.entries(value)) walk(member, path === '' ? key : `${path}/${key}`);
    }
  };
  for (const [key, member] of Object.entries(revision)) if (!NOT_PHYSICAL.has(key)) walk(member, key);
  return found;
}

function same(a: Leaf | undefined, b: Leaf | undefined): boolean {
  if (typeof a !== 'object' || typeof b !== 'object') return a === b;
  if (!isKnown(a) || !isKnown(b)) return isKnown(a) === isKnown(b);
  return a.si === b.si && a.u === b.u && a.basis === b.basis;
}

function written(leaf: Leaf): string {
  if (typeof leaf === 'boolean') return leaf ? 'yes' : 'no';
  if (typeof leaf !== 'object') return String(leaf);
  if (!isKnown(leaf)) return 'not measured';
  const apart = leaf.uncertainty ? ` (${leaf.uncertainty.kind} ${leaf.uncertainty.typed})` : '';
  return `${leaf.typed}${apart}`;
}

/** Fields that are not quantities, by the end of their path. */
const WORDS: readonly (readonly [end: RegExp, title: string])[] = [
  [/^parts\/[^/]+\/name$/, 'name'],
  [/\/role$/, 'role'],
  [/\/body\/shape$/, 'shape'],
  [/\/body\/axis$/, 'axis'],
  [/\/note$/, 'note'],
  [/^rotor\/material$/, 'material of the rotor'],
  [/^rotor\/sections\/[^/]+\/name$/, 'name'],
  [/^ballast\/kind$/, 'kind of ballast drive'],
  [/^loop\/rateSource$/, 'source of the lean rate'],
  [/^pack\/chemistry$/, 'chemistry of the pack'],
  [/^fittings\/radio$/, 'radio link fitted'],
  [/^fittings\/independentKill$/, 'independent kill fitted'],
  [/^fittings\/driven$/, 'drives under its own power'],
];

function labelOf(path: string, a: Revision, b: Revision): string {
  const title =
    fieldAt('revision', path, b)?.title ??
    WORDS.find(([end]) => end.test(path))?.[1] ??
    path.replaceAll('/', ' ');
  const row = rowOf(path);
  if (row === undefined) return title;
  const name = rowName(b, row) ?? rowName(a, row);
  return name === undefined ? title : `${title} of ${name}`;
}

/** The part or section that a field belongs to. */
function rowOf(path: string): string | undefined {
  return /^(parts\/[^/]+|rotor\/sections\/[^/]+)\//.exec(path)?.[1];
}

/** A part or section that only one of the revisions has: one change, not one for each of its fields. */
function wholeRow(row: string, a: Revision, b: Revision): InputChange {
  const [was, is] = [rowName(a, row), rowName(b, row)];
  const kind = row.startsWith('parts/') ? 'part' : 'section of the rotor';
  return {
    path: row,
    label: `${kind} ${is ?? was ?? row}`,
    ...(was === undefined ? {} : { before: rowText(a, row) }),
    ...(is === undefined ? {} : { after: rowText(b, row) }),
  };
}

function rowText(revision: Revision, row: string): string {
  const mass = valueAt(revision as unknown as Json, `${row}/mass`) as QuantityField | undefined;
  return mass === undefined ? 'fitted' : `fitted, ${written(mass)}`;
}

function rowName(revision: Revision, row: string): string | undefined {
  const name = valueAt(revision as unknown as Json, `${row}/name`);
  return typeof name === 'string' ? name : undefined;
}

function figureChanges(before: Assessment, after: Assessment): FigureChange[] {
  const names = new Set([...before.figures.keys(), ...after.figures.keys()]);
  return [...names]
    .filter((name) => !isRowFigure(name))
    .map((name) => ({ name, before: before.figures.get(name), after: after.figures.get(name) }))
    .filter(
      (change) =>
        [change.before, change.after].some((figure) => figure?.trace.kind === 'calculation') &&
        knownValue(change.before) !== knownValue(change.after),
    );
}

function knownValue(figure: Figure | undefined): number | undefined {
  return figure?.result.ok ? figure.result.value.value : undefined;
}

function marginChanges(before: Assessment, after: Assessment): MarginChange[] {
  const ids = new Set([...before.margins, ...after.margins].map(({ id }) => id));
  return [...ids].flatMap((id) => {
    const was = before.margins.find((margin) => margin.id === id);
    const is = after.margins.find((margin) => margin.id === id);
    const turned = was?.verdict !== is?.verdict;
    const title = (is ?? was)?.title ?? id;
    return turned || lowerBoundIn(was) !== lowerBoundIn(is) || safetyIn(was) !== safetyIn(is)
      ? [{ id, title, before: was, after: is, turned }]
      : [];
  });
}

function lowerBoundIn(margin: Margin | undefined): number | undefined {
  return margin && margin.verdict !== 'unknown' ? margin.lowerBound : undefined;
}

function safetyIn(margin: Margin | undefined): number | undefined {
  return margin && margin.verdict !== 'unknown' ? margin.marginOfSafety.value : undefined;
}
