/** The input fields of a part in the mass table, of its body, and of a section of the rotor. */
import type { Body, Part } from '../notebook/index.ts';
import { anyValue, type FieldSpec, notNegative, positive } from './field.ts';

const mass: FieldSpec = {
  key: 'mass',
  title: 'mass',
  unit: 'kg',
  display: 'g',
  range: notNegative,
  example: '73 g',
};
const forward: FieldSpec = {
  key: 'x',
  title: 'distance forward',
  unit: 'm',
  display: 'mm',
  range: anyValue,
  example: '120 mm',
};
/** Most parts of a vehicle that runs on one track sit on its centre line: blank says so. */
const left: FieldSpec = {
  key: 'y',
  title: 'distance to the left',
  unit: 'm',
  display: 'mm',
  range: anyValue,
  example: '−4 mm',
  blank: 0,
};
const height: FieldSpec = {
  key: 'z',
  title: 'height',
  unit: 'm',
  display: 'mm',
  range: anyValue,
  example: '95 mm',
};

/** Of a part in the mass table: mass, and where its centre of gravity is in the frame of ISO 8855. */
export const partFields: readonly FieldSpec[] = [mass, forward, left, height];

/** The ballast is on the centre line at the height that its drive gives it: neither is typed. */
export function partFieldsOf(part: Pick<Part, 'role'>): readonly FieldSpec[] {
  return part.role === 'ballast' ? [mass, forward] : partFields;
}

const length = (key: string, title: string, example: string): FieldSpec => ({
  key: `body/${key}`,
  title,
  unit: 'm',
  display: 'mm',
  range: positive,
  example,
});

const diameter = length('diameter', 'diameter', '30 mm');
const bore: FieldSpec = { ...length('bore', 'bore diameter', '24 mm'), range: notNegative };
const alongAxis = length('length', 'length along its axis', '120 mm');

/** Of a part's body by its shape, for its roll inertia about its own centre of gravity. */
export const bodyFields: Readonly<Record<Body['shape'], readonly FieldSpec[]>> = {
  point: [],
  box: [
    length('length', 'length (fore and aft)', '90 mm'),
    length('width', 'width', '40 mm'),
    length('height', 'height of the body', '25 mm'),
  ],
  cylinder: [diameter, alongAxis],
  tube: [diameter, bore, alongAxis],
  rod: [alongAxis],
  'inertia as measured': [
    {
      key: 'body/rollInertia',
      title: 'own roll inertia',
      unit: 'kg·m²',
      display: 'kg·m²',
      range: notNegative,
      example: '1.2e-4 kg·m²',
    },
  ],
};

/** Of a section of the rotor: a disc, or an annulus where it is bored. */
export const sectionFields: readonly FieldSpec[] = [
  {
    key: 'outerDiameter',
    title: 'outer diameter',
    unit: 'm',
    display: 'mm',
    range: positive,
    example: '90 mm',
  },
  {
    key: 'boreDiameter',
    title: 'bore diameter',
    unit: 'm',
    display: 'mm',
    range: notNegative,
    example: '6 mm',
    blank: 0,
  },
  { key: 'thickness', title: 'thickness', unit: 'm', display: 'mm', range: positive, example: '12 mm' },
];
