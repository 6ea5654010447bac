import { describe, expect, it } from 'vitest';
import type { Calculation } from '../mechanics/index.ts';
import { register, registry } from './registry.ts';

const first = [...registry.values()][0] as Calculation;

describe('the registry', () => {
  it('keeps each calculation under its own id', () => {
    for (const [id, calculation] of registry) expect(calculation.id).toBe(id);
    expect([...registry.keys()]).toEqual(
      expect.arrayContaining(['mass.total', 'loop.margins', 'margin.of-safety']),
    );
  });

  it('carries every example through to finite numbers', () => {
    for (const { id, compute, example, outputs } of registry.values()) {
      const result = compute(example);
      expect(Object.keys(result).toSorted(), id).toEqual(Object.keys(outputs).toSorted());
      for (const value of Object.values(result)) expect(Number.isFinite(value), id).toBe(true);
    }
  });

  it('knows every calculation that another refers to', () => {
    for (const { id, related } of registry.values()) {
      for (const other of related) expect(registry.has(other), `${id} refers to ${other}`).toBe(true);
    }
  });

  it('refuses two of the same id', () => {
    expect(() => register([first, first])).toThrow(`two calculations are called “${first.id}”`);
  });

  it('refuses a unit that cannot be read', () => {
    const inputs = { mass: { symbol: 'm', unit: 'kilo', meaning: 'mass' } };
    expect(() => register([{ ...first, id: 'mass.odd', inputs }])).toThrow('mass.odd, mass: ');
  });
});
