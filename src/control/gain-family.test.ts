import { describe, expect, it } from 'vitest';
import { repeatable, someLoop } from '../../tests/specimen/balance-loop.ts';
import { balanceLoop } from './balance-loop.ts';
import { closedLoopPoles } from './closed-loop-poles.ts';
import { gainFamily } from './gain-family.ts';

describe('the family of loops with all gains', () => {
  it('has the poles of each of its loops', () => {
    const random = repeatable(5);
    for (let i = 0; i < 150; i++) {
      const { hardware, controller } = someLoop(random);
      const loop = balanceLoop(hardware, controller);
      const family = gainFamily({
        hardware,
        controller: { ...controller, leanGain: 1, rateGain: 0, gimbalGain: 0 },
      });
      const { modes, spectralRadius } = closedLoopPoles(loop, controller.sampleTime);
      const found = family.closedLoopPoles(controller);
      expect(found.modes.length).toBeLessThanOrEqual(modes.length + 1);
      expect(Math.abs(found.spectralRadius / spectralRadius - 1)).toBeLessThan(1e-9);
      expect(family.spectralRadius(controller)).toBe(found.spectralRadius);
      expect(found.dominant.z.re).toBeCloseTo(modes[0]?.z.re ?? Number.NaN, 8);
    }
  });

  it('leaves a neutral tilt out where no gain reads it', () => {
    const { hardware, controller } = someLoop(repeatable(5));
    const free = {
      ...hardware,
      spinMomentum: 0.5,
      gimbalFriction: 0,
      gimbalCentring: 0,
      gimbalInertia: 1e-3,
    };
    const family = gainFamily({ hardware: free, controller: { ...controller, rateSource: 'rate gyro' } });
    const unread = family.member({ leanGain: 1, rateGain: 1, gimbalGain: 0 });
    const read = family.member({ leanGain: 1, rateGain: 1, gimbalGain: 0.1 });
    expect(unread.plant.neutralModes).toEqual(['gimbal offset', 'gimbal tilt']);
    expect(read.plant.neutralModes).toEqual(['gimbal offset']);
  });
});
