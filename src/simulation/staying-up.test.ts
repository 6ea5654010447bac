import { describe, expect, it } from 'vitest';
import { workedVehicle } from '../../tests/specimen/motion.ts';
import { balanceLoop, loopMargins } from '../control/index.ts';
import { linearHardware, probabilityOfStayingUp, proportion, type Scenario } from './index.ts';

const scenario: Scenario = { duration: 10, start: { lean: 0.02 } };
const likely = (spread: Parameters<typeof probabilityOfStayingUp>[2], runs: number, seed = 1) =>
  probabilityOfStayingUp(workedVehicle, scenario, spread, runs, { seed });

describe('the probability of staying up', () => {
  it('is 1 where nothing is uncertain', () => {
    const { probability, low, high, redrawn } = likely({}, 20);
    expect([probability, high, redrawn]).toEqual([1, 1, 0]);
    expect(low).toBeCloseTo(20 / (20 + 1.959963984540054 ** 2), 12);
  });

  it('is the same for the same seed and near for another', () => {
    const spread = { controller: { leanGain: 0.3 } };
    const one = likely(spread, 100);
    expect(likely(spread, 100)).toEqual(one);
    const other = likely(spread, 100, 2);
    expect(other.stayed).not.toBe(one.stayed);
    expect(Math.abs(other.probability - one.probability)).toBeLessThan(
      4 * Math.hypot(one.standardUncertainty, other.standardUncertainty),
    );
  });

  it('has its first runs in common with a longer series', () => {
    const spread = { controller: { leanGain: 0.3 } };
    const [first, more] = [likely(spread, 40), likely(spread, 60)];
    expect(first.stayed).toBeLessThan(40);
    expect(more.stayed).toBeGreaterThanOrEqual(first.stayed);
    expect(more.stayed).toBeLessThanOrEqual(first.stayed + 20);
  });

  it('is what the uncertain gain makes it: that of lying above the lower margin', () => {
    const margins = loopMargins(balanceLoop(linearHardware(workedVehicle), workedVehicle.controller));
    if (!margins.stable) throw new Error('the worked loop is stable');
    // with the lean gain alone the static limit is where K_p m_b = M
    const { firstMoment, ballastMass } = linearHardware(workedVehicle);
    const limit = firstMoment / ballastMass;
    const uncertainty = 0.2;
    const expected = normalAbove((limit - 0.95) / uncertainty);
    const found = probabilityOfStayingUp(
      workedVehicle,
      { duration: 30, start: { lean: 0.002 } },
      { controller: { leanGain: uncertainty } },
      400,
      { seed: 3 },
    );
    expect(Math.abs(found.probability - expected)).toBeLessThan(4 * found.standardUncertainty + 0.02);
    expect(found.low).toBeLessThan(found.probability);
    expect(found.high).toBeGreaterThan(found.probability);
  });

  it('draws a vehicle again that cannot exist', () => {
    const { redrawn } = likely({ vehicle: { gimbalFriction: 0.005 } }, 60);
    expect(redrawn).toBeGreaterThan(2);
  });

  it('refuses what makes no sense, by name', () => {
    expect(() => likely({ vehicle: { ballastMass: -0.1 } }, 10)).toThrow(
      'uncertainty of ballastMass is −0.1',
    );
    expect(() => likely({}, 0)).toThrow('number of runs is 0');
    expect(() => proportion(3, 2)).toThrow('number of runs that stayed up is 3, but there were 2 in all');
  });
});

/** Probability that a standard normal number is above z. Source: series of the error function. */
function normalAbove(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 1; n < 100; n++) {
    term *= -(z * z) / (2 * n);
    sum += term / (2 * n + 1);
  }
  return 0.5 - sum / Math.sqrt(2 * Math.PI);
}
