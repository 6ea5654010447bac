/**
 * The loop and the simulation against GNU Octave: `octave/reference.m` works the same cases with Octave's own matrix
 * exponential, eigenvalues, control package and differential equation solver; `octave/reference.txt` is what it printed
 * (version 7.3.0, control 3.4.0). The test reads that, and does not need Octave.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { balanceLoop, commandNoise, loopMargins, spectralRadius } from '../../src/control/index.ts';
import { type SimulationModel, simulate } from '../../src/simulation/index.ts';
import { workedController, workedHardware } from '../specimen/balance-loop.ts';
import { workedVehicle } from '../specimen/motion.ts';

const printed = new Map(
  readFileSync(new URL('octave/reference.txt', import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line.includes(' = '))
    .map((line) => {
      const at = line.lastIndexOf(' = ');
      return [line.slice(0, at), Number(line.slice(at + 3))] as const;
    }),
);

const worked = balanceLoop(workedHardware, workedController);
const margins = loopMargins(worked);
const stable = margins.stable ? margins : undefined;
const stopped = { ...workedHardware, spinMomentum: 0 };
/** The gain at which the balance is lost, between one that holds and one that does not. */
function limit(gain: 'leanGain' | 'rateGain', holds: number, loses: number): number {
  const radius = (value: number): number => {
    const gains = { leanGain: 0.5915, rateGain: 0.0596, gimbalGain: 0, [gain]: value };
    return spectralRadius(balanceLoop(stopped, { ...workedController, ...gains }));
  };
  let [inside, outside] = [holds, loses];
  for (let i = 0; i < 50; i++) {
    const middle = (inside + outside) / 2;
    if (radius(middle) < 1) inside = middle;
    else outside = middle;
  }
  return (inside + outside) / 2;
}

const slide: SimulationModel = {
  ...workedVehicle,
  vehicle: { ...workedVehicle.vehicle, travel: 0.06 },
};
const arm: SimulationModel = {
  ...workedVehicle,
  drive: 'upright arm',
  vehicle: { ...workedVehicle.vehicle, driveHeight: 0.03, armLength: 0.1, travel: 1.2 },
  controller: { ...workedController, delay: 0.0153, leanGain: 9.5, rateGain: 0.4, gimbalGain: 1.4 },
};
const slideRun = simulate(slide, { duration: 1, start: { lean: 0.06 } }, { step: 1.25e-4 }).columns.lean;
const armRun = simulate(arm, { duration: 0.6, start: { lean: 0.08, gimbalTilt: 0.2 } }, { step: 1.25e-4 })
  .columns.lean;

const linear: readonly (readonly [name: string, computed: () => number | undefined, digits: number])[] = [
  ['spectral radius', () => margins.spectralRadius, 11],
  ['gain margin up', () => stable?.gainMarginUp.factor, 9],
  ['gain margin down', () => stable?.gainMarginDown.factor, 10],
  ['delay margin, s', () => stable?.delayMargin.delay, 9],
  ['peak sensitivity', () => stable?.peakSensitivity.peak, 9],
  ['its frequency, rad/s', () => stable?.peakSensitivity.frequency, 5],
  ['command noise, m', () => commandNoise(worked, { lean: 0.001, rate: 0.01 }), 10],
  [
    'spectral radius, just unstable',
    () =>
      spectralRadius(
        balanceLoop(
          { ...workedHardware, spinMomentum: 0.35, gimbalFriction: 0.02, gimbalCentring: 0.03 },
          { ...workedController, leanGain: 1.4, rateGain: 0.02, gimbalGain: 0.08 },
        ),
      ),
    10,
  ],
  [
    'spectral radius, rotor stopped',
    () =>
      spectralRadius(
        balanceLoop(stopped, { ...workedController, leanGain: 0.5915, rateGain: 0.0596, gimbalGain: 0 }),
      ),
    10,
  ],
  ['largest lean gain, rotor stopped, rate gain 0.0596', () => limit('leanGain', 0.5915, 0.7), 9],
  ['largest rate gain, rotor stopped, lean gain 0.5915', () => limit('rateGain', 0.0596, 0.075), 9],
  ['smallest rate gain, rotor stopped, lean gain 0.5915', () => limit('rateGain', 0.0596, 0.04), 9],
];

const runs: readonly (readonly [name: string, computed: () => number | undefined, digits: number])[] = [
  ...[10, 50, 100, 200].map(
    (k) => [`slide, travel 0.06 m, lean after ${k} samples from 0.06 rad`, () => slideRun[k], 9] as const,
  ),
  ...[10, 40, 80, 120].map(
    (k) =>
      [
        `arm, travel 1.2 rad, lean after ${k} samples from 0.08 rad, tilt 0.2 rad`,
        () => armRun[k],
        9,
      ] as const,
  ),
];

describe('the loop and the simulation, as GNU Octave works them', () => {
  it.each([...linear, ...runs])('%s', (name, computed, digits) => {
    const reference = printed.get(name) ?? Number.NaN;
    expect(computed()).toBeCloseTo(reference, digits);
  });

  it('are compared figure by figure, none left over', () => {
    expect([...linear, ...runs].map(([name]) => name)).toEqual([...printed.keys()]);
  });
});
