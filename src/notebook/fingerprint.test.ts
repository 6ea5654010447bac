import { describe, expect, it } from 'vitest';
import { revision as specimen, withValue } from '../../tests/specimen/vehicle.ts';
import { fingerprint } from './fingerprint.ts';
import { schemas } from './kinds.ts';
import { isKnown, type KnownQuantity, type QuantityField } from './quantity-field.ts';
import type { Revision } from './revision.ts';

const revision: Revision = schemas.revision.parse(specimen);
const original = fingerprint(revision);

/** Paths of every quantity in the revision. */
function quantities(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [];
  if (isKnown(value as QuantityField)) return [path];
  return Object.entries(value).flatMap(([name, member]) =>
    quantities(member, path === '' ? name : `${path}/${name}`),
  );
}

/** The same data with the members of every object in the opposite order. */
function reversed(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([name, member]) => [name, reversed(member)]),
  );
}

function at(path: string): KnownQuantity {
  return path
    .split('/')
    .reduce<unknown>((value, name) => (value as Record<string, unknown>)[name], revision) as KnownQuantity;
}

describe('the fingerprint of a revision', () => {
  it('is sixteen hexadecimal digits', () => {
    expect(original).toMatch(/^[0-9a-f]{16}$/);
  });

  it.each(quantities(revision))('changes with %s: its value, its uncertainty, its being measured', (path) => {
    const held = at(path);
    const next = held.si === 0 ? Number.MIN_VALUE : held.si * (1 + 2 * Number.EPSILON);
    const others = [
      { ...held, si: next },
      { ...held, u: held.u + 1e-9 },
      { ...held, basis: 'estimated' === held.basis ? 'measured' : 'estimated' },
      { notMeasured: true },
      undefined,
    ].map((value) => fingerprint(withValue(revision, path, value)));
    expect(new Set([original, ...others]).size).toBe(6);
  });

  it.each([
    ['parts/frame/role', 'rotor'],
    ['parts/frame/name', 'Chassis'],
    ['parts/frame', undefined],
    ['parts/flywheel/body/axis', 'y'],
    ['parts/wheels/body', { shape: 'point' }],
    ['rotor/material', 'aluminium'],
    ['rotor', undefined],
    ['rotor/sections/disc', undefined],
    ['ballast/kind', 'hanging arm'],
    ['loop/rateSource', 'gimbal tilt'],
    ['pack/chemistry', 'lithium iron phosphate'],
    ['pack/cellsInSeries', 4],
    ['fittings/radio', false],
    ['fittings/driven', true],
    ['prototype', 'another'],
  ])('changes with %s', (path, value) => {
    expect(fingerprint(withValue(revision, path, value))).not.toBe(original);
  });

  it.each([
    ['letter', 'B'],
    ['status', 'issued'],
    ['issuedAt', '2026-03-01T00:00:00Z'],
    ['issuedBy', 'B'],
    ['createdAt', '2020-01-01T00:00:00Z'],
    ['reason', 'because'],
    ['from', 'revision-0'],
  ])('does not change with %s', (path, value) => {
    expect(fingerprint(withValue(revision, path, value))).toBe(original);
  });

  it('does not know in which order the members were written, or the rows are shown', () => {
    expect(fingerprint(reversed(revision) as Revision)).toBe(original);
    const { frame, ...others } = revision.parts;
    const moved = { ...revision, parts: { ...others, ...(frame ? { frame: { ...frame, order: 99 } } : {}) } };
    expect(fingerprint(moved)).toBe(original);
  });

  it('does not tell a member without a value from one that is not there', () => {
    expect(fingerprint({ ...revision, loop: undefined } as unknown as Revision)).toBe(
      fingerprint(withValue(revision, 'loop', undefined)),
    );
  });

  it('is not the same for text that only runs together to the same', () => {
    const named = (name: string, material: string) =>
      fingerprint(withValue(withValue(revision, 'parts/frame/name', name), 'rotor/material', material));
    expect(named('a","x":"b', 'c')).not.toBe(named('a', 'b","x":"c'));
  });
});
