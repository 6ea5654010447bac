/** Lays the wiring over one prototype and revision: every name with where its figure comes from. Computes nothing. */
import { type Json, type Prototype, type QuantityField, type Revision, valueAt } from '../notebook/index.ts';
import { constantsOf } from './constants.ts';
import { type FactSpec, factApplies, factSpecs, resolveFact } from './facts.ts';
import type { FigureSpec } from './figure.ts';
import type { BoundFeed, CalculationUse, FactOrigin, Origin, Origins } from './origin.ts';
import {
  columnFigure,
  inOrder,
  partOrigins,
  partWithRole,
  sectionFigure,
  sectionOrigins,
  type TableRow,
} from './part-figures.ts';
import { roleFacts } from './role-facts.ts';
import { type Situation, situationOf } from './situation.ts';
import { waiting, wiring } from './wiring.ts';
import type { Feed, ListFeed, Row } from './wiring-row.ts';

type Parts = readonly TableRow<Revision['parts'][string]>[];

export function originsOf(prototype: Prototype, revision: Revision): Origins {
  const situation = situationOf(revision);
  const origins = new Map<string, Origin>();
  const put = (origin: Origin): void => void origins.set(origin.spec.name, origin);

  for (const spec of factSpecs) {
    if (factApplies(spec, revision)) put(factOrigin(resolveFact(spec, revision), prototype, revision));
  }
  for (const constant of constantsOf(revision, situation)) put({ kind: 'constant', ...constant });

  const parts = inOrder(revision.parts);
  const ballast = partWithRole(parts, 'ballast');
  for (const part of parts) for (const origin of partOrigins(part, part === ballast)) put(origin);
  for (const { role, ...spec } of roleFacts) put(roleOrigin(spec, role, parts));
  const sections = inOrder(revision.rotor?.sections ?? {});
  for (const section of sections) for (const origin of sectionOrigins(section)) put(origin);

  for (const { figures, choice } of waiting) {
    const awaited = choice(situation);
    if (awaited !== undefined) for (const spec of figures) put({ kind: 'undecided', spec, choice: awaited });
  }
  const lists = listsOf(parts, ballast, sections);
  for (const row of wiring) bindRow(row, situation, lists, put);
  return origins;
}

function bindRow(row: Row, situation: Situation, lists: Lists, put: (origin: Origin) => void): void {
  if (row.when && !row.when(situation)) return;
  const inputs: Record<string, BoundFeed> = {};
  for (const [input, feed] of Object.entries(row.inputs)) inputs[input] = bindFeed(feed, lists);
  const use: CalculationUse = { calculation: row.calculation, inputs };
  for (const [output, spec] of Object.entries(row.gives)) put({ kind: 'calculation', spec, use, output });
}

type Lists = (feed: ListFeed) => readonly string[];

function listsOf(
  parts: Parts,
  ballast: Parts[number] | undefined,
  sections: readonly TableRow<NonNullable<Revision['rotor']>['sections'][string]>[],
): Lists {
  const made = new Map<string, readonly string[]>();
  const make = (feed: ListFeed): readonly string[] => {
    if (feed.each === 'section') return sections.map(({ id }) => sectionFigure(id, feed.of));
    const counted = feed.each === 'part' ? parts : parts.filter((part) => part !== ballast);
    return counted.map((part) => columnFigure(part, part === ballast, feed.of));
  };
  return (feed) => {
    const key = `${feed.each} ${feed.of}`;
    const names = made.get(key) ?? make(feed);
    made.set(key, names);
    return names;
  };
}

const CHOICE_FOR_EMPTY: Readonly<Record<ListFeed['each'], string>> = {
  part: 'mass_table',
  'part but the ballast': 'mass_table_without_ballast',
  section: 'rotor_sections',
};

function bindFeed(feed: Feed, lists: Lists): BoundFeed {
  if (typeof feed === 'string') return { from: feed, optional: false };
  if ('ifKnown' in feed) return { from: feed.ifKnown, optional: true };
  return { from: lists(feed), optional: false, empty: CHOICE_FOR_EMPTY[feed.each] };
}

function roleOrigin(spec: FigureSpec, role: 'ballast' | 'rotor', parts: Parts): Origin {
  const part = partWithRole(parts, role);
  if (!part) return { kind: 'undecided', spec, choice: `${role}_part` };
  return {
    kind: 'fact',
    spec,
    record: 'revision',
    path: `parts/${part.id}/mass`,
    page: 'Masses',
    field: part.row.mass,
  };
}

function factOrigin(spec: FactSpec, prototype: Prototype, revision: Revision): FactOrigin {
  const record = spec.record === 'prototype' ? prototype : revision;
  const held = valueAt(record as unknown as Json, spec.path);
  return {
    kind: 'fact',
    spec,
    record: spec.record,
    path: spec.path,
    page: spec.page,
    field: typeof held === 'object' && held !== null ? (held as QuantityField) : undefined,
    ...(typeof held === 'number' ? { count: held } : {}),
    ...(spec.blank === undefined ? {} : { blank: spec.blank }),
  };
}
