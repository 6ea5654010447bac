/**
 * The figures of each part of the mass table and of each section of the rotor. They feed the sums and can be
 * traced like any other figure, but their names (`part_p3_mass`) are not offered for expressions.
 */
import type { Part, QuantityField, RotorSection } from '../notebook/index.ts';
import type { FactPage } from './facts.ts';
import type { FieldSpec } from './field.ts';
import type { FigureGroup, FigureSpec } from './figure.ts';
import type { BoundFeed, FactOrigin, Origin } from './origin.ts';
import { bodyFields, partFieldsOf, sectionFields } from './part-fields.ts';
import type { PartColumn, SectionColumn } from './wiring-row.ts';

export interface TableRow<T> {
  readonly id: string;
  readonly row: T;
}

/** Rows of a record in the order that the person gave them. */
export function inOrder<T extends { readonly order: number }>(
  rows: Readonly<Record<string, T>>,
): TableRow<T>[] {
  return Object.entries(rows)
    .map(([id, row]) => ({ id, row }))
    .sort((a, b) => a.row.order - b.row.order || (a.id < b.id ? -1 : 1));
}

/** The first part with that role; the pages keep it to one. */
export function partWithRole(
  parts: readonly TableRow<Part>[],
  role: 'rotor' | 'ballast',
): TableRow<Part> | undefined {
  return parts.find(({ row }) => row.role === role);
}

/** Whether the name is one of a single part or section, which expressions do not see. */
export function isRowFigure(name: string): boolean {
  return name.startsWith('part_') || name.startsWith('section_');
}

export function partFigure(id: string, column: PartColumn | string): string {
  return `part_${id}_${column}`;
}

/** Kept apart from the part's own columns: a box has a height, and so has its place on the vehicle. */
function bodyFigure(id: string, field: string): string {
  return partFigure(id, `body_${field}`);
}

export function sectionFigure(id: string, column: SectionColumn): string {
  return `section_${id}_${column}`;
}

/** Name of the figure that stands in a column of the sums for this part. */
export function columnFigure({ id, row }: TableRow<Part>, isBallast: boolean, column: PartColumn): string {
  if (isBallast && column === 'height') return 'ballast_height_centred';
  if (isBallast && column === 'left') return 'ballast_left_centred';
  const measured = column === 'own_inertia' && row.body.shape === 'inertia as measured';
  return measured ? bodyFigure(id, 'rollInertia') : partFigure(id, column);
}

const PART_NAMES: Readonly<Record<string, string>> = { x: 'forward', y: 'left', z: 'height' };
const SECTION_NAMES: Readonly<Record<string, SectionColumn>> = {
  outerDiameter: 'outer_diameter',
  boreDiameter: 'bore_diameter',
  thickness: 'thickness',
};

/** Facts of one part and its own roll inertia, each with where it comes from. */
export function partOrigins(part: TableRow<Part>, isBallast: boolean): Origin[] {
  const { id, row } = part;
  const facts: Origin[] = [];
  const add = (field: FieldSpec, holder: object, key: string, name: string): void => {
    const path = `parts/${id}/${field.key}`;
    facts.push(rowFact(field, `${field.title} of ${row.name}`, name, 'mass', 'Masses', path, holder, key));
  };
  for (const field of partFieldsOf(isBallast ? row : { role: 'structure' })) {
    add(field, row, field.key, partFigure(id, PART_NAMES[field.key] ?? field.key));
  }
  for (const field of bodyFields[row.body.shape]) {
    const key = field.key.slice('body/'.length);
    add(field, row.body, key, bodyFigure(id, key));
  }
  const own = ownInertia(part);
  return own ? [...facts, own] : facts;
}

export function sectionOrigins({ id, row }: TableRow<RotorSection>): Origin[] {
  return sectionFields.map((field) => {
    const name = sectionFigure(id, SECTION_NAMES[field.key] ?? 'thickness');
    const path = `rotor/sections/${id}/${field.key}`;
    const title = `${field.title} of ${row.name}`;
    return rowFact(field, title, name, 'rotor', 'Rotor and gimbal', path, row, field.key);
  });
}

function rowFact(
  field: FieldSpec,
  title: string,
  name: string,
  group: FigureGroup,
  page: FactPage,
  path: string,
  holder: object,
  key: string,
): FactOrigin {
  return {
    kind: 'fact',
    spec: { name, title, unit: field.unit, display: field.display, group },
    record: 'revision',
    path,
    page,
    field: (holder as Readonly<Record<string, QuantityField | undefined>>)[key],
    ...(field.blank === undefined ? {} : { blank: field.blank }),
  };
}

/** Which calculation gives the roll inertia of a body about its own centre of gravity, and from which fields. */
export function bodyCalculation(
  body: Part['body'],
): { readonly calculation: string; readonly inputs: readonly string[] } | undefined {
  switch (body.shape) {
    case 'box':
      return { calculation: 'body.box-roll-inertia', inputs: ['mass', 'width', 'height'] };
    case 'cylinder':
      return body.axis === 'x'
        ? { calculation: 'body.cylinder-along-axis', inputs: ['mass', 'diameter'] }
        : { calculation: 'body.cylinder-across-axis', inputs: ['mass', 'diameter', 'length'] };
    case 'tube':
      return body.axis === 'x'
        ? { calculation: 'body.tube-along-axis', inputs: ['mass', 'diameter', 'bore'] }
        : { calculation: 'body.tube-across-axis', inputs: ['mass', 'diameter', 'bore', 'length'] };
    case 'rod':
      return body.axis === 'x'
        ? undefined
        : { calculation: 'body.rod-across-axis', inputs: ['mass', 'length'] };
    case 'point':
    case 'inertia as measured':
      return undefined;
  }
}

function ownInertia({ id, row }: TableRow<Part>): Origin | undefined {
  if (row.body.shape === 'inertia as measured') return undefined;
  const spec: FigureSpec = {
    name: partFigure(id, 'own_inertia'),
    title: `own roll inertia of ${row.name}`,
    unit: 'kg·m²',
    display: 'kg·m²',
    group: 'mass',
  };
  const body = bodyCalculation(row.body);
  if (!body) {
    const source = row.body.shape === 'rod' ? 'a thin rod along the roll axis' : 'taken as a point';
    return { kind: 'constant', spec, value: 0, source };
  }
  const inputs: Record<string, BoundFeed> = {};
  for (const input of body.inputs) {
    inputs[input] = {
      from: input === 'mass' ? partFigure(id, 'mass') : bodyFigure(id, input),
      optional: false,
    };
  }
  return { kind: 'calculation', spec, use: { calculation: body.calculation, inputs }, output: 'inertia' };
}
