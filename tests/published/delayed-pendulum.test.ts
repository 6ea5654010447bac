/** What a delay does to PD control of an inverted pendulum, against published limits and roots. */
import { describe, expect, it } from 'vitest';
import {
  closedLoopPoles,
  discretise,
  gainMargins,
  peakSensitivity,
  type SampledLoop,
  type StateSpace,
  spectralRadius,
} from '../../src/control/index.ts';
import { atSampleTimeZero, type Reading, readings, sweepOf } from './continuous-loop.ts';
import { expectPrinted } from './printed.ts';

const pendulum = (a: number): StateSpace => ({
  order: 2,
  a: Float64Array.of(0, 1, a, 0),
  b: Float64Array.of(0, 1),
});
/** PD on ẍ = a x + u, the hold's own half sample taken off the delay. */
const delayedPd = (a: number, p: number, d: number, delay: number, sampleTime: number): SampledLoop => ({
  sampled: discretise(pendulum(a), sampleTime, delay - sampleTime / 2),
  feedback: Float64Array.of(-p, -d),
});
const INSPERGER =
  'P(ω) = (ω² + a) cos ωτ, D(ω) = (ω² + a) sin ωτ / ω; G. Stépán, Phil. Trans. R. Soc. A 367 (2009) 1195 (from memory), re-derived';

describe('PD with delay on an inverted pendulum', () => {
  it.each([
    ['R1', 1, 1.5, 1, 0.5, '-0.132170', '0.850579', '-3.43990'],
    ['R2', 1, 2, 1.5, 0.5, '-0.199837', '1.408255', '-2.16734'],
    ['R3', 25, 40, 6, 0.1, '-1.187714', '5.017010', '-13.4233'],
    ['R4', 25, 60, 10, 0.05, '-7.43881', '6.03602', '-18.969'],
    ['R5', 9.81, 15, 4, 0.1, '-1.928145', '2.208290', '-16.27499'],
  ] as const)(
    '%s: roots of s² − a + (P + D s) e^{−sτ}, computed independently',
    (_, a, p, d, delay, re, im, third) => {
      const part = (i: number, of: 're' | 'im'): number =>
        atSampleTimeZero(
          (t) =>
            closedLoopPoles(delayedPd(a, p, d, delay, t), t).modes.filter((m) => m.s.im >= 0)[i]?.s[of] ??
            Number.NaN,
          delay / 8,
          3,
        );
      expectPrinted(part(0, 're'), re);
      expectPrinted(part(0, 'im'), im);
      expectPrinted(part(1, 're'), third);
    },
  );

  it.each([
    [0.05, '4.43301646', '26.483889', '22.545953', '0.07870'],
    [0.1, '1.68227259', '9.674026', '8.222008', '0.0287'],
  ] as const)(
    'F15, (40 + 6 s) e^{−τs} / (s² − 25), τ = %s s: closed form',
    (delay, up, frequency, phase, later) => {
      const read = (reading: Reading): number =>
        atSampleTimeZero(
          (t) => readings[reading](sweepOf(delayedPd(25, 40, 6, delay, t)), pendulum(25), delay - t / 2),
          delay / 8,
          4,
        );
      expectPrinted(read('gain margin up'), up);
      expectPrinted(read('its frequency, rad/s'), frequency);
      expectPrinted(read('gain margin down'), '0.6250000');
      expectPrinted(read('crossover, rad/s'), '5.000000');
      expectPrinted(read('phase margin, °'), phase);
      expectPrinted(read('delay margin, s'), later);
    },
  );

  it('F15, τ = 0.05 s: peak sensitivity 2.603454', () => {
    const peak = atSampleTimeZero(
      (t) => peakSensitivity(sweepOf(delayedPd(25, 40, 6, 0.05, t))).peak,
      0.05 / 8,
      4,
    );
    expectPrinted(peak, '2.60345');
  });

  it.each([
    [1, 0.5, 2.702066162638, 2.128786309],
    [1, 1, 1.143562836628, 1.438301269],
    [25, 0.1, 67.551654065951, 10.643931544],
    [25, 0.2, 28.589070915712, 7.191506286],
  ])(`a = %s, τ = %s s: the largest P that any D holds is %s, at D = %s (${INSPERGER})`, (a, delay, p, d) => {
    const radius = (factor: number): number => spectralRadius(delayedPd(a, p * factor, d, delay, delay / 60));
    expect(radius(0.995)).toBeLessThan(1);
    expect(radius(1.005)).toBeGreaterThan(1);
  });

  it.each([
    ['point mass at 0.25 m', 9.81 / 0.25, 0.22576182],
    ['point mass at 1 m', 9.81, 0.451523641],
    ['free rod of 0.32 m', (6 * 9.81) / 0.32, 0.104274918],
  ])(
    '%s: no PD holds it beyond τ = √(2/a) (G. Stépán, L. Kollár, Math. Comput. Modelling 31 (2000) 199; formula from memory)',
    (_, a, critical) => {
      expect(Math.sqrt(2 / a)).toBeCloseTo(critical, 8);
      const held = (delay: number): boolean => {
        for (let i = 1; i <= 12; i++) {
          for (let j = -6; j <= 6; j++) {
            const p = a * (1 + 0.0008 * i ** 2);
            const d = a * delay * (1 + 0.004 * i + 0.01 * j);
            if (spectralRadius(delayedPd(a, p, d, delay, delay / 40)) < 1) return true;
          }
        }
        return false;
      };
      expect(held(0.95 * critical)).toBe(true);
      expect(held(1.03 * critical)).toBe(false);
    },
  );

  it.each([
    [0.25, '5.662004'],
    [0.5, '2.536559'],
    [0.8, '1.378716'],
  ] as const)(
    'e^{−θs}/(s − 1) with a gain, θ = %s s: held from 1 to %s (Silva, Datta, Bhattacharyya 2005, statement from memory)',
    (delay, up) => {
      const loop = (t: number): SampledLoop => ({
        sampled: discretise({ order: 1, a: Float64Array.of(1), b: Float64Array.of(1) }, t, delay - t / 2),
        feedback: Float64Array.of(-1.2),
      });
      const read = (of: 'gainMarginUp' | 'gainMarginDown'): number =>
        1.2 * atSampleTimeZero((t) => gainMargins(sweepOf(loop(t)))[of].factor, delay / 8, 4);
      expectPrinted(read('gainMarginUp'), up);
      expectPrinted(read('gainMarginDown'), '1.000000');
    },
  );
});
