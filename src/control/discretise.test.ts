import { describe, expect, it } from 'vitest';
import { workedController, workedHardware } from '../../tests/specimen/balance-loop.ts';
import { type BalanceController, balanceLoop, commandRows, respond, restingState } from './balance-loop.ts';
import { discretise, type SampledPlant, slopeByDelay, slopeBySampleTime } from './discretise.ts';
import { linearPlant } from './linear-plant.ts';

const plant = linearPlant(workedHardware, { reads: ['measured lean', 'measured rate'] });
const { order } = plant;

/**
 * The same loop followed in small steps of the classical fourth-order Runge–Kutta method, the command switched at
 * its exact times. Steps have to divide both the sample time and the delay.
 */
function smallSteps(
  controller: BalanceController,
  initial: Float64Array,
  time: number,
  step: number,
): Float64Array {
  const { now } = commandRows(plant.signals, controller);
  const { sampleTime, delay } = controller;
  const commands: number[] = [];
  const rate = (x: Float64Array, u: number): Float64Array =>
    x.map((_, i) => {
      let sum = (plant.b[i] ?? 0) * u;
      for (let j = 0; j < order; j++) sum += (plant.a[i * order + j] ?? 0) * (x[j] ?? 0);
      return sum;
    });
  const along = (x: Float64Array, k: Float64Array, h: number): Float64Array =>
    x.map((entry, i) => entry + h * (k[i] ?? 0));
  let x = initial;
  for (let n = 0; n < Math.round(time / step); n++) {
    const middle = (n + 0.5) * step;
    const sample = Math.floor(middle / sampleTime);
    if (commands.length === sample)
      commands.push(x.reduce((sum, entry, i) => sum + entry * (now[i] ?? 0), 0));
    const u = commands[Math.floor((middle - delay) / sampleTime)] ?? 0;
    const k1 = rate(x, u);
    const k2 = rate(along(x, k1, step / 2), u);
    const k3 = rate(along(x, k2, step / 2), u);
    const k4 = rate(along(x, k3, step), u);
    x = x.map(
      (entry, i) => entry + (step / 6) * ((k1[i] ?? 0) + 2 * (k2[i] ?? 0) + 2 * (k3[i] ?? 0) + (k4[i] ?? 0)),
    );
  }
  return x;
}

const difference = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Math.max(...Array.from(a, (entry, i) => Math.abs(entry - (b[i] ?? Number.NaN))));

describe('the sampled plant', () => {
  it('is what small steps tend to, with their fourth order', () => {
    const start = restingState(plant, { lean: 0.01, 'lagged lean': 0.01 });
    const exact = respond(balanceLoop(workedHardware, workedController), start, 60)[60] ?? new Float64Array();
    const errors = [2.5e-4, 1.25e-4, 6.25e-5].map((step) =>
      difference(smallSteps(workedController, start, 60 * workedController.sampleTime, step), exact),
    );
    const [coarse = 0, middle = 0, fine = 0] = errors;
    expect(Math.log2(coarse / middle)).toBeCloseTo(4, 0.6);
    expect(Math.log2(middle / fine)).toBeCloseTo(4, 0.6);
    expect(fine).toBeLessThan(1e-11);
  });

  it('passes two half samples as it passes one', () => {
    const whole = discretise(plant, 0.006, 0);
    const half = discretise(plant, 0.003, 0);
    const once = Float64Array.from({ length: order }, (_, i) => i - 2);
    const step = ({ transition, input }: SampledPlant, x: Float64Array): Float64Array =>
      x.map((_, i) =>
        x.reduce((sum, entry, j) => sum + (transition[i * order + j] ?? 0) * entry, input[i] ?? 0),
      );
    expect(difference(step(half, step(half, once)), step(whole, once))).toBeLessThan(1e-10);
  });

  it('splits a delay over the samples, and joins them at whole ones', () => {
    const before = discretise(plant, 0.005, 0.01 - 1e-12);
    const at = discretise(plant, 0.005, 0.01);
    expect(before.wholeSamples).toBe(1);
    expect(at.wholeSamples).toBe(2);
    expect([...at.inputBefore].every((entry) => entry === 0)).toBe(true);
    expect(difference(before.inputBefore, at.input)).toBeLessThan(1e-8);
    const between = discretise(plant, 0.005, 0.0123);
    const both = between.input.map((entry, i) => entry + (between.inputBefore[i] ?? 0));
    expect(difference(both, at.input)).toBeLessThan(1e-12); // the same hold, in two parts
  });

  it('has derivatives by delay and sample time that central differences confirm', () => {
    const [sampleTime, delay] = [0.005, 0.018];
    const sampled = discretise(plant, sampleTime, delay);
    const step = 1e-6;
    const check = (
      slope: Partial<Record<'transition' | 'input' | 'inputBefore', Float64Array>>,
      above: SampledPlant,
      below: SampledPlant,
    ): void => {
      for (const part of ['transition', 'input', 'inputBefore'] as const) {
        const found = slope[part];
        above[part].forEach((entry, i) => {
          const numerical = (entry - (below[part][i] ?? 0)) / (2 * step);
          expect(Math.abs((found?.[i] ?? 0) - numerical)).toBeLessThan(1e-5 * (1 + Math.abs(numerical)));
        });
      }
    };
    check(
      slopeByDelay(plant, sampled),
      discretise(plant, sampleTime, delay + step),
      discretise(plant, sampleTime, delay - step),
    );
    check(
      slopeBySampleTime(plant, sampled),
      discretise(plant, sampleTime + step, delay),
      discretise(plant, sampleTime - step, delay),
    );
  });

  it('refuses a sample time of 0, a delay below 0, and a sample in which the vehicle falls beyond all numbers', () => {
    expect(() => discretise(plant, 0, 0)).toThrow('sample time');
    expect(() => discretise(plant, 0.005, -0.001)).toThrow('delay');
    expect(() => discretise(plant, 1e4, 0)).toThrow('falls beyond all numbers');
  });
});
