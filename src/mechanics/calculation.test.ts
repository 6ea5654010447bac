import { describe, expect, it } from 'vitest';
import { calculation } from './calculation.ts';

const spring = calculation({
  id: 'test.spring',
  title: 'Force of a spring',
  equation: 'F = k x + F_0',
  inputs: {
    stiffness: { symbol: 'k', unit: 'N/m', meaning: 'stiffness of the spring' },
    deflections: { symbol: 'x', unit: 'm', meaning: 'deflections', list: true },
    preload: { symbol: 'F_0', unit: 'N', meaning: 'preload', default: 2 },
  },
  outputs: { force: { symbol: 'F', unit: 'N', meaning: 'force of the spring' } },
  validity: 'Linear spring.',
  source: 'Hooke',
  compute: ({ stiffness, deflections, preload }) => ({
    force: stiffness * deflections.reduce((sum, x) => sum + x, 0) + preload,
  }),
  partials: ({ stiffness, deflections }) => ({
    force: {
      stiffness: deflections.reduce((sum, x) => sum + x, 0),
      deflections: deflections.map(() => stiffness),
    },
  }),
  example: { stiffness: 100, deflections: [0.01, 0.02], preload: 2 },
});

describe('a registered calculation', () => {
  it('fills in the default of an input that is left out, for the value and for the derivatives', () => {
    expect(spring.compute({ stiffness: 100, deflections: [0.01] })).toEqual({ force: 3 });
    expect(spring.partials?.({ stiffness: 100, deflections: [0.01] })).toEqual({
      force: { stiffness: 0.01, deflections: [100] },
    });
  });

  it('names a missing input in the trade’s words', () => {
    expect(() => spring.compute({ deflections: [0.01] })).toThrow('stiffness of the spring is missing');
    expect(() => spring.compute({ stiffness: 100 })).toThrow('deflections is missing');
    expect(() => spring.partials?.({ deflections: [0.01] })).toThrow('stiffness of the spring is missing');
  });

  it('lets no result out that is not a finite number', () => {
    expect(() => spring.compute({ stiffness: 1e308, deflections: [10] })).toThrow(
      'force of the spring is Infinity N, but the inputs have to give a finite number',
    );
  });

  it('has no related calculations unless they are named', () => {
    expect(spring.related).toEqual([]);
  });
});
