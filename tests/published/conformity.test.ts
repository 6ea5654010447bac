/**
 * Verdicts against the worked examples of JCGM 106:2012, Evaluation of measurement data: The role of measurement
 * uncertainty in conformity assessment. The guide's numbers stand as its readers quote them; they were not checked
 * against its text here. Only one-sided limits apply: a margin has a demand and no upper end.
 */
import { describe, expect, it } from 'vitest';
import { COVERAGE_FACTOR } from '../../src/margins/index.ts';
import { lowerBoundOf, marginOfSafetyFrom, verdictOf } from '../../src/margins/margin.ts';
import { exact, independent, standardUncertainty } from '../../src/quantity/index.ts';
import { expectPrinted } from './printed.ts';

/** Φ(z), by the trapezoidal rule on the density: independent of the coverage factor that is being checked. */
function normalDistribution(z: number): number {
  const steps = 20_000;
  const step = z / steps;
  const density = (x: number): number => Math.exp(-(x * x) / 2) / Math.sqrt(2 * Math.PI);
  let sum = (density(0) + density(z)) / 2;
  for (let i = 1; i < steps; i++) sum += density(i * step);
  return 0.5 + sum * step;
}

/** Probability of conformance of a measured value that has to be at least `limit`, through our margin of safety. */
function conformance(value: number, u: number, limit: number): number {
  const safety = marginOfSafetyFrom(independent('y', value, u), exact(limit));
  return normalDistribution(safety.value / standardUncertainty(safety));
}

function verdict(value: number, u: number, limit: number): string {
  const safety = marginOfSafetyFrom(independent('y', value, u), exact(limit));
  return verdictOf(safety.value, lowerBoundOf(safety));
}

describe('a margin of safety by JCGM 106', () => {
  it.each([
    {
      id: 'breakdown voltage of a Zener diode, −5.47 V against at most −5.40 V',
      y: 5.47,
      u: 0.05,
      limit: 5.4,
      printed: '0.92',
      verdict: 'in doubt',
    },
    {
      id: 'burst pressure of a container, 509.7 kPa against at least 490 kPa',
      y: 509.7,
      u: 8.6,
      limit: 490,
      printed: '0.99',
      verdict: 'holds',
    },
  ])(
    '$id conforms with a probability of $printed and $verdict',
    ({ y, u, limit, printed, verdict: expected }) => {
      expectPrinted(conformance(y, u, limit), printed);
      expect(verdict(y, u, limit)).toBe(expected);
    },
  );

  it.each([
    { probability: 0.8, printed: '0.84' },
    { probability: 0.9, printed: '1.28' },
    { probability: 0.95, printed: '1.64' },
    { probability: 0.99, printed: '2.33' },
    { probability: 0.999, printed: '3.09' },
  ])(
    'conforms with a probability of $probability at $printed standard uncertainties (table 1)',
    ({ probability, printed }) => {
      const y = 100;
      const u = 2;
      expect(conformance(y, u, y - (Number(printed) - 0.006) * u)).toBeLessThan(probability);
      expect(conformance(y, u, y - (Number(printed) + 0.006) * u)).toBeGreaterThan(probability);
    },
  );

  it('holds from a probability of conformance of 95 % on', () => {
    expect(normalDistribution(COVERAGE_FACTOR)).toBeCloseTo(0.95, 4);
    expect(verdict(100, 2, 100 - 1.64 * 2)).toBe('in doubt');
    expect(verdict(100, 2, 100 - 1.65 * 2)).toBe('holds');
  });
});
