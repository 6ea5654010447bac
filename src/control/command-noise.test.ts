import { describe, expect, it } from 'vitest';
import { workedController, workedHardware } from '../../tests/specimen/balance-loop.ts';
import { type BalanceController, balanceLoop, rateSources } from './balance-loop.ts';
import { commandNoise } from './command-noise.ts';
import { randomNumbers } from './random.ts';

/** The same by walking: the sampled plant with noisy readings, command after command. */
function walked(controller: BalanceController, noise: { lean: number; rate: number; tilt: number }): number {
  const loop = balanceLoop(workedHardware, controller);
  const { sampled, plant } = loop;
  const { order: n, transition, wholeSamples: m, input, inputBefore } = sampled;
  const random = randomNumbers(3);
  let x = new Float64Array(n);
  const commands = [0, 0, 0, 0, 0, 0, 0];
  let leanBefore = 0;
  let [sum, count] = [0, 0];
  const read = (row: Float64Array, error: number): number =>
    x.reduce((total, value, i) => total + value * (row[i] ?? 0), error * random.normal());
  for (let k = 0; k < 200_000; k++) {
    const lean = read(plant.signals['measured lean'], noise.lean);
    const tilt = read(plant.signals['gimbal tilt'], noise.tilt);
    const { rateSource, sampleTime } = controller;
    const rate =
      rateSource === 'difference of angle'
        ? (lean - leanBefore) / sampleTime
        : rateSource === 'gimbal tilt'
          ? tilt
          : read(plant.signals[rateSource === 'rate gyro' ? 'measured rate' : 'gimbal rate'], noise.rate);
    leanBefore = lean;
    const u = controller.leanGain * lean + controller.rateGain * rate + controller.gimbalGain * tilt;
    commands.unshift(u);
    commands.pop();
    if (k > 2000) {
      sum += u * u;
      count++;
    }
    const [late = 0, later = 0] = [commands[m], commands[m + 1]];
    x = x.map((_, i) => {
      let next = (input[i] ?? 0) * late + (inputBefore[i] ?? 0) * later;
      for (let j = 0; j < n; j++) next += (transition[i * n + j] ?? 0) * (x[j] ?? 0);
      return next;
    });
  }
  return Math.sqrt(sum / count);
}

describe('the noise of the command', () => {
  it.each(rateSources)('is what a long walk shows, with the %s for the rate', (rateSource) => {
    const rateGain = {
      'rate gyro': 0.04,
      'difference of angle': 0.02,
      'gimbal tilt': 0.1,
      'gimbal rate': 0.002,
    }[rateSource];
    const controller = { ...workedController, rateSource, rateGain };
    const noise = { lean: 0.001, rate: 0.02, tilt: 0.003 };
    const expected = commandNoise(balanceLoop(workedHardware, controller), noise);
    expect(expected).toBeLessThan(1);
    expect(walked(controller, noise) / expected).toBeCloseTo(1, 1.5);
  });

  it('is nothing without noise, and without bound where the loop is unstable', () => {
    expect(commandNoise(balanceLoop(workedHardware, workedController), {})).toBe(0);
    const unstable = balanceLoop(workedHardware, { ...workedController, leanGain: 0.3 });
    expect(commandNoise(unstable, { lean: 0.001 })).toBe(Number.POSITIVE_INFINITY);
    expect(() => commandNoise(unstable, { lean: -1 })).toThrow('noise of the lean');
  });
});
