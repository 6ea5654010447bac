import { describe, expect, it } from 'vitest';
import { type CalculationInput, runCalculation } from './run-calculation.ts';

const ballast = { ballastMass: 0.4, ballastOffset: 0.1, ballastHeight: 0.3, firstMomentWithout: 0.3 };

function problem(id: string, inputs: Readonly<Record<string, CalculationInput>>) {
  const result = runCalculation(id, inputs);
  return result.ok ? undefined : result.problem;
}

describe('a single calculation', () => {
  it('gives its outputs with unit and meaning', () => {
    const result = runCalculation('ballast.largest-lean', ballast);
    expect(result.ok && result.value.lean).toMatchObject({ unit: 'rad', standardUncertainty: 0 });
    expect(result.ok && result.value.lean?.value).toBeCloseTo(Math.atan(0.04 / 0.42), 12);
  });

  it('carries uncertainties, each under the name of its input', () => {
    const result = runCalculation('ballast.righting-moment', {
      ballastMass: { value: 0.4, standardUncertainty: 0.01 },
      ballastOffset: { value: 0.1, standardUncertainty: 0.002 },
    });
    const moment = result.ok ? result.value.moment : undefined;
    expect(moment?.standardUncertainty).toBeCloseTo(9.80665 * Math.hypot(0.1 * 0.01, 0.4 * 0.002), 9);
    expect([...(moment?.contributions.keys() ?? [])]).toEqual(['ballastMass', 'ballastOffset']);
  });

  it('takes lists, each item under its place', () => {
    const result = runCalculation('mass.total', { masses: [1, { value: 2, standardUncertainty: 0.1 }] });
    expect(result.ok && result.value.totalMass?.value).toBe(3);
    expect(result.ok && [...(result.value.totalMass?.contributions ?? [])]).toEqual([['masses[1]', 0.1]]);
  });

  it('takes the default of what is left out', () => {
    const result = runCalculation('ballast.cross-slope', { largestLean: 0.2 });
    expect(result.ok && result.value.slope?.value).toBeCloseTo(0.2, 12);
  });

  it.each([
    ['calculation.unknown', 'ballast.largest-leen', ballast],
    ['calculation.unknown-input', 'ballast.largest-lean', { ...ballast, ballastMas: 1 }],
    ['calculation.missing-input', 'ballast.largest-lean', { ballastMass: 1 }],
    ['calculation.single-wanted', 'ballast.largest-lean', { ...ballast, ballastMass: [1] }],
    ['calculation.list-wanted', 'mass.total', { masses: 1 }],
    ['calculation.not-finite', 'ballast.largest-lean', { ...ballast, ballastMass: Number.NaN }],
    ['calculation.not-finite', 'mass.total', { masses: [1, Number.POSITIVE_INFINITY] }],
    [
      'calculation.bad-uncertainty',
      'ballast.largest-lean',
      { ...ballast, ballastMass: { value: 1, standardUncertainty: -0.1 } },
    ],
    [
      'calculation.bad-uncertainty',
      'ballast.largest-lean',
      { ...ballast, ballastMass: { value: 1, standardUncertainty: Number.NaN } },
    ],
    ['calculation.out-of-domain', 'ballast.largest-lean', { ...ballast, firstMomentWithout: -1 }],
    ['calculation.out-of-domain', 'mass.first-moment', { masses: [1, 2], heights: [1] }],
  ] as const)('is refused with %s (%s)', (code, id, inputs) => {
    expect(problem(id, inputs)).toMatchObject({ code, place: id });
  });

  it('is not taken in by names that every object has', () => {
    expect(problem('ballast.largest-lean', { ...ballast, constructor: 1 })).toMatchObject({
      code: 'calculation.unknown-input',
    });
    expect(problem('toString', {})).toMatchObject({ code: 'calculation.unknown' });
  });
});
