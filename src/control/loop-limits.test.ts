/** The limits against loops and runs: nothing that is found may be better than they allow. */
import { describe, expect, it } from 'vitest';
import { repeatable, someLoop, workedController, workedHardware } from '../../tests/specimen/balance-loop.ts';
import { type SimulationModel, simulate } from '../simulation/index.ts';
import { balanceLoop } from './balance-loop.ts';
import { eigenvalues } from './eigenvalues.ts';
import { delayLimit, largestLeanCaught, loopLimitCalculations, wrongWayLimit } from './loop-limits.ts';
import { loopMargins } from './margins.ts';

describe('limits that no gains beat', () => {
  it('are kept by every stable loop with a wrong-way reaction', () => {
    const random = repeatable(31);
    let kept = 0;
    for (let i = 0; i < 1500 && kept < 40; i++) {
      const { hardware, controller } = someLoop(random);
      if (hardware.ballastHeight <= 0) continue;
      const loop = balanceLoop(hardware, controller);
      const margins = loopMargins(loop);
      if (!margins.stable) continue;
      const growing = eigenvalues(loop.plant.a, loop.plant.order).filter(({ re, im }) => re > 0 && im === 0);
      if (growing.length !== 1) continue;
      const { peakSensitivity } = wrongWayLimit({
        ballastHeight: hardware.ballastHeight,
        unstablePole: growing[0]?.re ?? Number.NaN,
      });
      // the bound is that of the continuous loop; holding the command costs more
      expect(margins.peakSensitivity.peak).toBeGreaterThan(peakSensitivity * 0.999);
      kept++;
    }
    expect(kept).toBeGreaterThan(15);
  });

  it('leave the worked loop a third of what its peak sensitivity is above 1', () => {
    const { zero, peakSensitivity } = wrongWayLimit({ ballastHeight: 0.08, unstablePole: 1.560451891 });
    expect(zero).toBeCloseTo(11.0717, 4);
    expect(peakSensitivity).toBeCloseTo(1.328, 3);
    const margins = loopMargins(balanceLoop(workedHardware, workedController));
    expect(margins.stable && margins.peakSensitivity.peak).toBeGreaterThan(peakSensitivity);
  });

  it.each([
    ['quick drive', 5, 0],
    ['slow drive', 0.3, 0],
    ['slow drive and late', 0.3, 0.06],
  ])('the largest lean that is caught is where a run turns over: %s', (_, offsetSpeed, delay) => {
    const model: SimulationModel = {
      drive: 'slide',
      vehicle: {
        firstMomentWithout: 0.42,
        rollInertiaWithout: 0.085,
        ballastMass: 0.9,
        driveHeight: 0.08,
        travel: 0.002,
        naturalFrequency: 2e4,
        dampingRatio: 1,
        noLoadSpeed: offsetSpeed / 30,
      },
      // the ballast goes to the end of its travel as soon as it can, and stays
      sensors: { leanOffset: 1 },
      controller: { ...workedController, sampleTime: 0.01, delay, leanGain: 1, rateGain: 0, gimbalGain: 0 },
    };
    const fallsTo = (lean: number): number =>
      Math.sign(simulate(model, { duration: 2, start: { lean } }, { leanLimit: 0.2 }).end.state.lean);
    let [low, high] = [0, 0.01];
    for (let i = 0; i < 14; i++) {
      const middle = (low + high) / 2;
      if (fallsTo(middle) > 0) high = middle;
      else low = middle;
    }
    const { lean } = largestLeanCaught({
      firstMoment: 0.492,
      rollInertia: 0.09076,
      ballastMass: 0.9,
      ballastHeight: 0.08,
      ballastOffset: 0.002,
      offsetSpeed: offsetSpeed / 30,
      delay,
    });
    // what is left is the drive's own lag, 10⁻⁴ s
    expect(low / lean).toBeGreaterThan(0.999);
    expect(low / lean).toBeLessThan(1.0002);
  });

  it('refuse what is beyond them, by name', () => {
    const vehicle = {
      firstMoment: 0.492,
      rollInertia: 0.09076,
      ballastMass: 0.9,
      ballastHeight: 0.2,
      ballastOffset: 0.06,
      offsetSpeed: 0.4,
      delay: 0,
    };
    expect(() => largestLeanCaught(vehicle)).toThrow(
      'ballast height is 0.2 m, but it has to be less than I/M, here 0.184 m',
    );
    expect(() => wrongWayLimit({ ballastHeight: 0, unstablePole: 1 })).toThrow('ballast height is 0 m');
    expect(() => wrongWayLimit({ ballastHeight: 9.80665 / 4, unstablePole: 2 })).toThrow(
      'unstable pole is 2 1/s',
    );
    const loop = {
      unstablePole: 1,
      delay: -1,
      sampleTime: 0.01,
      sensorLag: 0,
      naturalFrequency: 30,
      dampingRatio: 1,
    };
    expect(() => delayLimit(loop)).toThrow('delay is −1 s');
  });

  it.each(loopLimitCalculations)(
    '$id holds in other units of mass, and of length and time that keep g',
    ({ inputs, outputs, compute, example }) => {
      const [mass, time] = [2.3, 1.4];
      const length = time ** 2;
      const scales: Record<string, number> = {
        kg: mass,
        m: length,
        s: time,
        '1/s': 1 / time,
        'rad/s': 1 / time,
        'm/s': length / time,
        kg·m: mass * length,
        'kg·m²': mass * length ** 2,
        '1': 1,
        rad: 1,
      };
      const scale = (unit: string): number => scales[unit] ?? Number.NaN;
      const other = Object.fromEntries(
        Object.entries(inputs).map(([name, { unit }]) => [name, Number(example[name]) * scale(unit)]),
      );
      const [here, there] = [compute(example), compute(other)];
      for (const [name, { unit }] of Object.entries(outputs)) {
        expect((there[name] ?? Number.NaN) / ((here[name] ?? 0) * scale(unit))).toBeCloseTo(1, 12);
      }
    },
  );
});
