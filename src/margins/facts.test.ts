import { describe, expect, it } from 'vitest';
import { measured, prototype, revision, withValue } from '../../tests/specimen/vehicle.ts';
import { type Revision, schemas } from '../notebook/index.ts';
import { parseQuantity } from '../quantity/index.ts';
import { checkField, fieldAt } from './check-field.ts';
import { factApplies, factSpecs, resolveFact } from './facts.ts';
import { type FieldSpec, within } from './field.ts';
import { choiceSpecs } from './origin.ts';
import { bodyFields, partFields, partFieldsOf, sectionFields } from './part-fields.ts';

const onSlide: Revision = {
  ...revision,
  ballast: { kind: 'slide', height: measured(0.08), travel: measured(0.06) },
};

/** Parses the record strictly: an unknown key is refused. */
function accepted(record: 'prototype' | 'revision', value: object): boolean {
  return schemas[record].safeParse(value).success;
}

describe('a fact', () => {
  it.each(factSpecs.map((spec) => [spec.name, spec] as const))('%s has a place in its record', (_, spec) => {
    const record = spec.record === 'prototype' ? prototype : spec.drive === 'slide' ? onSlide : revision;
    const value = spec.kind === 'count' ? 2 : measured(0.5);
    expect(accepted(spec.record, withValue(record, spec.path, value))).toBe(true);
    expect(accepted(spec.record, withValue(record, `${spec.path}X`, value)), 'the schema is strict').toBe(
      false,
    );
  });

  it.each(factSpecs.flatMap((spec) => [revision, onSlide].map((held) => [spec.name, spec, held] as const)))(
    '%s has an example that can be typed and that its range allows',
    (_, spec, held) => {
      const { example, unit, range, display } = resolveFact(spec, held);
      const typed = parseQuantity(example, display, spec.title);
      expect(typed.ok && within(range, typed.value.si), example).toBe(true);
      expect(unit).not.toBe('');
    },
  );

  it('of an arm is not asked for on a slide', () => {
    const names = (held: Revision) =>
      factSpecs.filter((spec) => factApplies(spec, held)).map(({ name }) => name);
    expect(names(revision)).toContain('arm_length');
    expect(names(revision)).not.toContain('slide_height');
    expect(names(onSlide)).not.toContain('actuator_stall_moment');
    expect(names(onSlide)).toContain('actuator_stall_force');
    const undecided = withValue(revision, 'ballast', undefined);
    expect(names(undecided).filter((name) => /^(arm|slide|pivot)_/.test(name))).toEqual([]);
  });

  it('on a slide is in metres where an arm has radians', () => {
    const unitOf = (name: string, held: Revision) => {
      const spec = factSpecs.find((candidate) => candidate.name === name);
      return spec && resolveFact(spec, held).unit;
    };
    expect(unitOf('actuator_no_load_speed', revision)).toBe('rad/s');
    expect(unitOf('actuator_no_load_speed', onSlide)).toBe('m/s');
    expect(unitOf('rate_gain', revision)).toBe('s');
    expect(unitOf('rate_gain', onSlide)).toBe('m·s/rad');
  });
});

describe('the fields of parts and sections', () => {
  it('have a place in the revision, and an example that can be typed', () => {
    const check = (field: FieldSpec, path: string, held: Revision): void => {
      expect(accepted('revision', withValue(held, path, measured(0.5))), path).toBe(true);
      const typed = parseQuantity(field.example, field.display, field.title);
      expect(typed.ok && within(field.range, typed.value.si), `${path}: ${field.example}`).toBe(true);
    };
    for (const field of partFields) check(field, `parts/tray/${field.key}`, revision);
    for (const field of sectionFields) check(field, `rotor/sections/disc/${field.key}`, revision);
    for (const [shape, fields] of Object.entries(bodyFields)) {
      const axis = ['cylinder', 'tube', 'rod'].includes(shape) ? { axis: 'x' } : {};
      const held = withValue(revision, 'parts/tray/body', { shape, ...axis });
      for (const field of fields) check(field, `parts/tray/${field.key}`, held);
    }
  });

  it('leave the height of the ballast to its drive', () => {
    expect(partFieldsOf({ role: 'ballast' }).map(({ key }) => key)).toEqual(['mass', 'x']);
    expect(partFieldsOf({ role: 'rotor' })).toBe(partFields);
  });

  it('and the choices that figures wait for have a place in the revision', () => {
    const keys = Object.keys(schemas.revision.shape);
    for (const { path } of choiceSpecs) expect(keys, path).toContain(path.split('/')[0]);
  });
});

describe('what may be entered', () => {
  const refused = (path: string, si: number, held?: Revision): string | undefined =>
    checkField('revision', path, si, held)?.code;

  it('is no negative mass, but a measured nought', () => {
    expect(refused('parts/tray/mass', -0.001)).toBe('quantity.out-of-range');
    expect(refused('parts/tray/mass', 0)).toBeUndefined();
    expect(refused('weighedMass', 0)).toBe('quantity.out-of-range');
  });

  it('is a part on either side of the centre line, and below the ground line of a rig', () => {
    expect(refused('parts/tray/y', -0.01)).toBeUndefined();
    expect(refused('parts/tray/z', -0.2)).toBeUndefined();
  });

  it('is no bore that leaves nothing of the rim', () => {
    const bore = 'rotor/sections/disc/boreDiameter';
    expect(refused(bore, 0.099, revision)).toBeUndefined();
    expect(refused(bore, 0.1, revision)).toBe('quantity.bore-beyond-rim');
    expect(refused('rotor/sections/disc/outerDiameter', 0.005, revision)).toBe('quantity.bore-beyond-rim');
    expect(refused('parts/wheels/body/bore', 0.12, revision)).toBe('quantity.bore-beyond-rim');
    expect(refused(bore, 0.1), 'nothing is known of the rim').toBeUndefined();
  });

  it('is no arm that swings beyond 90°, while a slide may be longer than 1.57 m', () => {
    expect(refused('ballast/travel', 1.6, revision)).toBe('quantity.out-of-range');
    expect(refused('ballast/travel', 1.6, onSlide)).toBeUndefined();
    expect(refused('ballast/travel', 1.6), 'arm or slide not known').toBeUndefined();
    expect(refused('ballast/travel', -0.1)).toBe('quantity.out-of-range');
    expect(refused('gimbal/travel', 1.6)).toBe('quantity.out-of-range');
  });

  it('is a whole number of cells', () => {
    expect(refused('pack/cellsInSeries', 2.5)).toBe('quantity.not-whole');
    expect(refused('pack/cellsInSeries', 0)).toBe('quantity.out-of-range');
    expect(refused('pack/cellsInSeries', 6)).toBeUndefined();
  });

  it('is a centring stiffness of either sign', () => {
    expect(refused('gimbal/centring', -0.02)).toBeUndefined();
    expect(refused('gimbal/friction', -0.02)).toBe('quantity.out-of-range');
  });

  it('is never not a number', () => {
    expect(refused('gimbal/centring', Number.NaN)).toBe('quantity.out-of-range');
    expect(refused('gimbal/centring', Number.POSITIVE_INFINITY)).toBe('quantity.out-of-range');
  });

  it('is said with its limits, in the unit that people read', () => {
    const problem = checkField('prototype', 'requirements/leanToRecover', 2);
    expect(problem?.figures).toMatchObject({ value: '114.6°', range: 'more than 0° and less than 90°' });
  });

  it('is anything in a field that is not a quantity', () => {
    expect(fieldAt('revision', 'parts/tray/name')).toBeUndefined();
    expect(refused('parts/tray/name', -1)).toBeUndefined();
  });
});
