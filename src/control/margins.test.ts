import { describe, expect, it } from 'vitest';
import {
  type LoopCase,
  repeatable,
  scaled,
  someLoop,
  workedController,
  workedHardware,
} from '../../tests/specimen/balance-loop.ts';
import { balanceLoop } from './balance-loop.ts';
import { loopTransfer } from './loop-transfer.ts';
import { loopMargins, type StableLoop, spectralRadius } from './margins.ts';

/** Stable loops of every kind, the same ones in each run. */
function stableLoops(seed: number, count: number): (LoopCase & { readonly margins: StableLoop })[] {
  const random = repeatable(seed);
  const found: (LoopCase & { readonly margins: StableLoop })[] = [];
  while (found.length < count) {
    const { hardware, controller } = someLoop(random);
    const loop = balanceLoop(hardware, controller);
    if (spectralRadius(loop) >= 1) continue;
    const margins = loopMargins(loop);
    if (margins.stable) found.push({ hardware, controller, margins });
  }
  return found;
}
const loops = stableLoops(2, 60);

const radiusWithGains = ({ hardware, controller }: LoopCase, factor: number): number =>
  spectralRadius(balanceLoop(hardware, scaled(controller, factor)));
const radiusWithDelay = ({ hardware, controller }: LoopCase, extra: number): number =>
  spectralRadius(balanceLoop(hardware, { ...controller, delay: controller.delay + extra }));

/** No pole leaves the circle before the margin, one does just after. */
function expectFirstCrossing(radiusAt: (share: number) => number): void {
  for (let i = 1; i < 40; i++) expect(radiusAt(i / 40)).toBeLessThan(1);
  expect(radiusAt(1 - 1e-5)).toBeLessThan(1);
  expect(radiusAt(1 + 1e-5)).toBeGreaterThan(1);
}

describe('margins', () => {
  it('meet loops of every kind here', () => {
    expect(new Set(loops.map(({ controller }) => controller.rateSource)).size).toBeGreaterThan(2);
    expect(loops.some(({ hardware }) => hardware.spinMomentum === 0)).toBe(true);
    expect(loops.some(({ margins }) => margins.neutralModes.length === 1)).toBe(true);
    expect(loops.some(({ margins }) => margins.neutralModes.length === 2)).toBe(true);
    expect(loops.some(({ hardware }) => hardware.gimbalCentring > 0 && hardware.spinMomentum > 0)).toBe(true);
    expect(loops.some(({ controller }) => controller.delay === 0)).toBe(true);
  });

  it('of gain, read from the frequency response, are where the eigenvalues leave the unit circle', () => {
    for (const loop of loops) {
      const { gainMarginUp, gainMarginDown } = loop.margins;
      expectFirstCrossing((share) => radiusWithGains(loop, gainMarginUp.factor ** share));
      if (gainMarginDown.factor > 0) {
        expectFirstCrossing((share) => radiusWithGains(loop, gainMarginDown.factor ** share));
      } else {
        expect(radiusWithGains(loop, 0)).toBeLessThan(1 + 1e-9); // the rotor alone holds it up
      }
    }
  });

  it('of delay are where the eigenvalues leave the unit circle', () => {
    let seen = 0;
    for (const loop of loops) {
      const { delay } = loop.margins.delayMargin;
      if (delay > 60 * loop.controller.sampleTime) continue;
      seen++;
      expectFirstCrossing((share) => radiusWithDelay(loop, delay * share));
    }
    expect(seen).toBeGreaterThan(30);
  });

  it('of sensitivity are not exceeded anywhere between', () => {
    for (const { hardware, controller, margins } of loops) {
      const transfer = loopTransfer(balanceLoop(hardware, controller));
      let largest = 0;
      for (let i = 1; i <= 3000; i++) {
        for (const theta of [(Math.PI * i) / 3000, Math.PI * 10 ** (-i / 600)]) {
          const point = transfer.at(theta);
          if (point) largest = Math.max(largest, 1 / Math.hypot(1 + point.re, point.im));
        }
      }
      const { peak } = margins.peakSensitivity;
      expect(largest).toBeLessThanOrEqual(peak * (1 + 1e-9));
      const there = transfer.at(margins.peakSensitivity.theta);
      expect(there && 1 / Math.hypot(1 + there.re, there.im)).toBeCloseTo(peak, 9);
    }
  });

  it('keep the distances that the peak sensitivity promises: GM ≥ M_s/(M_s − 1), PM ≥ 2 asin(1/(2 M_s))', () => {
    // K. J. Åström, R. M. Murray, Feedback Systems, on the circle of radius 1/M_s about −1
    for (const { margins } of loops) {
      const { peak } = margins.peakSensitivity;
      expect(margins.gainMarginUp.factor).toBeGreaterThanOrEqual((peak / (peak - 1)) * (1 - 1e-9));
      expect(margins.gainMarginDown.factor).toBeLessThanOrEqual((peak / (peak + 1)) * (1 + 1e-9));
      expect(margins.phaseMargin.angle).toBeGreaterThanOrEqual(2 * Math.asin(1 / (2 * peak)) * (1 - 1e-9));
    }
  });

  it('are not there for an unstable loop, which is told by its spectral radius', () => {
    const margins = loopMargins(balanceLoop(workedHardware, { ...workedController, leanGain: 0 }));
    expect(margins.stable).toBe(false);
    expect(margins.spectralRadius).toBeGreaterThan(1);
    expect(margins.settlingTime).toBe(Number.POSITIVE_INFINITY);
    expect('gainMarginUp' in margins).toBe(false);
  });

  it('do not count the neutral mode of a free gimbal, and name it', () => {
    const free = loops.find(
      ({ hardware }) =>
        hardware.spinMomentum > 0 && hardware.gimbalCentring === 0 && hardware.gimbalFriction > 0,
    );
    expect(free?.margins.neutralModes).toEqual(['gimbal offset']);
    expect(free?.margins.spectralRadius).toBeLessThan(1);
  });

  it('the lower one is the static limit M / (m_b K_p) where nothing but the lean gain holds at rest', () => {
    const margins = loopMargins(balanceLoop(workedHardware, workedController));
    const { firstMoment, ballastMass } = workedHardware;
    expect(margins.stable && margins.gainMarginDown.factor).toBeCloseTo(
      firstMoment / (ballastMass * workedController.leanGain),
      12,
    );
  });

  it('the settling time is the one in which the slowest mode falls to a fiftieth', () => {
    const { settlingTime, spectralRadius: radius } = loopMargins(
      balanceLoop(workedHardware, workedController),
    );
    expect(radius ** (settlingTime / workedController.sampleTime)).toBeCloseTo(0.02, 12);
  });

  it('reach beyond a hundred samples where the delay margin does', () => {
    const margins = loopMargins(
      balanceLoop(workedHardware, { ...workedController, sampleTime: 0.0003, delay: 0.018 }),
    );
    expect(margins.stable && margins.delayMargin.delay).toBeGreaterThan(100 * 0.0003);
    expect(margins.stable && margins.delayMargin.delay).toBeLessThan(0.1);
  });
});
