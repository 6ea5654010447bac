import { describe, expect, it } from 'vitest';
import { integrate } from '../../tests/specimen/motion.ts';
import { stepCoefficients } from './step-coefficients.ts';

describe('the lag of a sensor over a step', () => {
  /** A cubic over the step, and its slope. */
  const x = (t: number): number => 0.3 + 2 * t - 40 * t ** 2 + 900 * t ** 3;
  const slope = (t: number): number => 2 - 80 * t + 2700 * t ** 2;

  it.each([0.1, 0.008, 0.002, 0.0006, 0.0001])('of %s s is exact for what moves as a cubic', (lag) => {
    const step = 0.001;
    const { lag: motion } = stepCoefficients({ naturalFrequency: 30, dampingRatio: 0.7, lag }, step);
    const first = 0.25;
    const found =
      motion.kept * first +
      motion.before * x(0) +
      motion.after * x(step) +
      motion.slopeBefore * slope(0) +
      motion.slopeAfter * slope(step);
    const [exact = Number.NaN] = integrate(([y = 0], t) => [(x(t) - y) / lag], [first], step, 2000);
    expect(found).toBeCloseTo(exact, 12);
  });

  it('of nothing shows the lean itself', () => {
    const { lag } = stepCoefficients({ naturalFrequency: 30, dampingRatio: 0.7, lag: 0 }, 0.001);
    expect(lag).toEqual({ kept: 0, before: 0, after: 1, slopeBefore: 0, slopeAfter: 0 });
  });

  it('is the same on both sides of where its sums are taken another way', () => {
    const at = (step: number) =>
      Object.values(stepCoefficients({ naturalFrequency: 30, dampingRatio: 0.7, lag: 1 }, step).lag);
    const [below, above] = [at(2 - 1e-9), at(2 + 1e-9)];
    below.forEach((value, i) => {
      expect(value).toBeCloseTo(above[i] ?? Number.NaN, 8);
    });
  });
});
