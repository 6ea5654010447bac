import { describe, expect, it } from 'vitest';
import { workedController, workedHardware } from '../../tests/specimen/balance-loop.ts';
import {
  type BalanceController,
  type BalanceLoop,
  balanceLoop,
  closedLoopMatrix,
  rateSourceCode,
  rateSourceOfCode,
  rateSources,
  respond,
  restingState,
} from './balance-loop.ts';
import { closedLoopPoles } from './closed-loop-poles.ts';
import { spectralRadius } from './margins.ts';

/** The loop stepped as its description reads: read, command, wait, move. */
function steppedByHand(loop: BalanceLoop, initial: Float64Array, samples: number): number[] {
  const { plant, sampled, controller } = loop;
  const n = plant.order;
  const read = (signal: keyof typeof plant.signals, x: Float64Array): number =>
    x.reduce((sum, entry, i) => sum + entry * (plant.signals[signal][i] ?? 0), 0);
  const commands: number[] = [];
  const leans: number[] = [];
  let x = initial;
  let leanBefore = read('measured lean', x);
  for (let k = 0; k <= samples; k++) {
    leans.push(x[0] ?? Number.NaN);
    const lean = read('measured lean', x);
    const rate = {
      'rate gyro': read('measured rate', x),
      'difference of angle': (lean - leanBefore) / controller.sampleTime,
      'gimbal tilt': read('gimbal tilt', x),
      'gimbal rate': read('gimbal rate', x),
    }[controller.rateSource];
    leanBefore = lean;
    commands.push(
      controller.leanGain * lean +
        controller.rateGain * rate +
        controller.gimbalGain * read('gimbal tilt', x),
    );
    const u = commands[k - sampled.wholeSamples] ?? 0;
    const late = commands[k - sampled.wholeSamples - 1] ?? 0;
    x = x.map((_, i) => {
      let sum = (sampled.input[i] ?? 0) * u + (sampled.inputBefore[i] ?? 0) * late;
      for (let j = 0; j < n; j++) sum += (sampled.transition[i * n + j] ?? 0) * (x[j] ?? 0);
      return sum;
    });
  }
  return leans;
}

describe('the balance loop', () => {
  it.each(
    rateSources.flatMap((rateSource) => [0, 0.003, 0.01, 0.018].map((delay) => ({ rateSource, delay }))),
  )('does what it is told: $rateSource, delay $delay s', ({ rateSource, delay }) => {
    const loop = balanceLoop(workedHardware, { ...workedController, rateSource, delay });
    const start = restingState(loop.plant, {
      lean: 0.01,
      'lean rate': -0.02,
      'lagged lean': 0.01,
      'gimbal tilt': 0.1,
    });
    const byHand = steppedByHand(loop, start, 80);
    respond(loop, start, 80).forEach((x, k) => {
      const wanted = byHand[k] ?? Number.NaN;
      expect(Math.abs((x[0] ?? Number.NaN) - wanted)).toBeLessThan(1e-11 * (1 + Math.abs(wanted)));
    });
  });

  it('carries as many states as commands are on their way', () => {
    const orderWith = (delay: number, more: Partial<BalanceController> = {}): number =>
      closedLoopMatrix(balanceLoop(workedHardware, { ...workedController, delay, ...more })).order;
    expect(orderWith(0)).toBe(8);
    expect(orderWith(0.004)).toBe(9);
    expect(orderWith(0.005)).toBe(9);
    expect(orderWith(0.018)).toBe(12);
    expect(orderWith(0.018, { rateSource: 'difference of angle' })).toBe(12); // no rate sensor, one memory
  });

  it('a sensor lag that tends to nothing tends to no lag', () => {
    const radius = (sensorLag: number): number =>
      spectralRadius(balanceLoop({ ...workedHardware, sensorLag }, workedController));
    expect(radius(1e-7)).toBeCloseTo(radius(0), 6);
  });

  it('a difference of angles over a short sample tends to the rate gyro', () => {
    const dominant = (rateSource: BalanceController['rateSource'], sampleTime: number): number =>
      closedLoopPoles(
        balanceLoop(workedHardware, { ...workedController, sampleTime, delay: 0.01, rateSource }),
        sampleTime,
      ).dominant.s.re;
    const gap = (sampleTime: number): number =>
      Math.abs(dominant('rate gyro', sampleTime) - dominant('difference of angle', sampleTime));
    expect(gap(0.0005)).toBeLessThan(0.6 * gap(0.001));
  });

  it('gives rate sources code numbers in the order in which they are listed', () => {
    for (const source of rateSources) expect(rateSourceOfCode(rateSourceCode(source))).toBe(source);
    expect(rateSourceCode('rate gyro')).toBe(0);
    expect(() => rateSourceOfCode(4)).toThrow('rate source is 4');
    expect(() => rateSourceOfCode(0.5)).toThrow('rate source is 0.5');
  });

  it('refuses a delay of more than a hundred samples and gains that are not numbers', () => {
    expect(() => balanceLoop(workedHardware, { ...workedController, sampleTime: 1e-4 })).toThrow(
      'at most 100 sample times',
    );
    expect(() => balanceLoop(workedHardware, { ...workedController, rateGain: Number.NaN })).toThrow(
      'rate gain',
    );
  });
});
