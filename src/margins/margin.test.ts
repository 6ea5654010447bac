import { describe, expect, it } from 'vitest';
import { exact, independent, standardUncertainty, type Uncertain } from '../quantity/index.ts';
import type { Figure, FigureResult, MarginSpec } from './figure.ts';
import { COVERAGE_FACTOR, lowerBoundOf, marginOf, marginOfSafetyFrom, verdictOf } from './margin.ts';

const spec: MarginSpec = {
  id: 'lean',
  title: 'Lean',
  capability: 'largest_lean',
  demand: 'required_lean',
  unit: 'rad',
  display: '°',
  group: 'ballast',
};

function figures(capability: FigureResult, demand: FigureResult): (name: string) => Figure {
  return (name) => ({
    name,
    title: name.replace('_', ' '),
    unit: 'rad',
    display: '°',
    group: 'ballast',
    result: name === spec.capability ? capability : demand,
    trace: { kind: 'constant', source: 'test' },
  });
}

const known = (value: Uncertain): FigureResult => ({ ok: true, value });
const missing = (name: string): FigureResult => ({
  ok: false,
  problem: { code: 'calculation.missing', place: name, figures: { name, page: 'Masses' } },
  missing: [name],
});

describe('a verdict', () => {
  it('holds where the lower bound is just nought, and is in doubt just below', () => {
    const u = 0.01;
    const at = (value: number) => {
      const safety = independent('x', value, u);
      return verdictOf(safety.value, lowerBoundOf(safety));
    };
    expect(at(COVERAGE_FACTOR * u)).toBe('holds');
    expect(at(COVERAGE_FACTOR * u - 1e-12)).toBe('in doubt');
    expect(at(0)).toBe('in doubt');
    expect(at(-1e-12)).toBe('fails');
  });

  it('holds for exact figures that are just equal', () => {
    expect(verdictOf(0, lowerBoundOf(exact(0)))).toBe('holds');
  });

  it('fails below nought, however uncertain', () => {
    expect(verdictOf(-0.1, -0.1 - COVERAGE_FACTOR * 10)).toBe('fails');
  });
});

describe('the margin of safety', () => {
  it('adds the relative variances of independent capability and demand', () => {
    const safety = marginOfSafetyFrom(independent('c', 12, 0.3), independent('d', 8, 0.4));
    expect(safety.value).toBeCloseTo(0.5, 12);
    // u(C/D) = C/D √((u_C/C)² + (u_D/D)²)
    expect(standardUncertainty(safety)).toBeCloseTo(1.5 * Math.hypot(0.3 / 12, 0.4 / 8), 12);
  });

  it('has no uncertainty from what capability and demand share in proportion', () => {
    const shared = independent('m', 2, 0.1);
    const times = (factor: number): Uncertain => ({
      value: factor * shared.value,
      contributions: new Map([['m', factor * 0.1]]),
    });
    expect(standardUncertainty(marginOfSafetyFrom(times(3), times(2)))).toBeLessThan(1e-15);
  });

  it('is unknown for a demand of nought or less: nothing is asked', () => {
    for (const demand of [0, -0.1]) {
      const margin = marginOf(spec, figures(known(exact(0.2)), known(exact(demand))));
      expect(margin).toMatchObject({
        verdict: 'unknown',
        problem: { code: 'calculation.out-of-domain', figures: { name: 'required lean' } },
        missing: [],
      });
    }
  });

  it('fails for a capability of nought or less', () => {
    for (const capability of [0, -0.1]) {
      expect(marginOf(spec, figures(known(exact(capability)), known(exact(0.1)))).verdict).toBe('fails');
    }
  });

  it('names all that is missing on both sides, once', () => {
    const margin = marginOf(spec, figures(missing('mass of Tray'), missing('mass of Tray')));
    expect(margin).toMatchObject({ verdict: 'unknown', missing: ['mass of Tray'] });
    const both = marginOf(spec, figures(missing('a'), missing('b')));
    expect(both.verdict === 'unknown' && both.missing).toEqual(['a', 'b']);
  });

  it('is unknown, with the reason, where the capability is out of its domain', () => {
    const problem = {
      code: 'calculation.out-of-domain',
      place: 'largest lean',
      figures: {
        name: 'total first moment',
        value: '−0.1 kg·m',
        requirement: 'it has to be more than 0 kg·m',
      },
    } as const;
    const margin = marginOf(spec, figures({ ok: false, problem, missing: [] }, known(exact(0.1))));
    expect(margin).toMatchObject({ verdict: 'unknown', problem, missing: [] });
  });
});
