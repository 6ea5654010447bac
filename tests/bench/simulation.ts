/** How many times faster than the vehicle itself the simulation goes, at steps of 1 ms: runs of 300 s on one core. */
import { type Disturbance, type SimulationModel, simulate } from '../../src/simulation/index.ts';
import { workedVehicle } from '../specimen/motion.ts';

const DURATION = 300;
const blows: readonly Disturbance[] = Array.from({ length: DURATION / 5 }, (_, i) => ({
  kind: 'impulse',
  at: 1 + 5 * i,
  momentum: 0.01,
}));
const noisy: SimulationModel = {
  ...workedVehicle,
  vehicle: { ...workedVehicle.vehicle, noLoadSpeed: 0.5 },
  sensors: { ...workedVehicle.sensors, leanNoise: 0.001, rateNoise: 0.01, leanResolution: 5e-4 },
};
const { leanGain, rateGain, gimbalGain } = workedVehicle.controller;

const models: readonly (readonly [string, SimulationModel])[] = [
  ['slide, no noise', workedVehicle],
  ['slide, noise, speed limit', noisy],
  [
    'arm, noise, speed limit',
    {
      ...noisy,
      drive: 'upright arm',
      vehicle: { ...noisy.vehicle, driveHeight: 0.03, armLength: 0.1, travel: 0.8, noLoadSpeed: 6 },
      controller: {
        ...noisy.controller,
        leanGain: 10 * leanGain,
        rateGain: 10 * rateGain,
        gimbalGain: 10 * gimbalGain,
      },
    },
  ],
  [
    'slide, noise, dry friction, play, dead band',
    {
      ...noisy,
      vehicle: { ...noisy.vehicle, gimbalDryFriction: 0.003, backlash: 2e-4, deadBand: 1e-4 },
    },
  ],
];

for (const [name, model] of models) {
  const ratios = Array.from({ length: 8 }, () => {
    const before = process.cpuUsage();
    const started = performance.now();
    const { outcome, end } = simulate(
      model,
      { duration: DURATION, start: { lean: 0.01 }, disturbances: blows },
      { step: 0.001, rowEvery: 0 },
    );
    if (outcome === 'fell' || outcome === 'lost') throw new Error(`${name} ${outcome} after ${end.time} s`);
    const wall = (performance.now() - started) / 1e3;
    return { wall: DURATION / wall, core: DURATION / (process.cpuUsage(before).user / 1e6) };
  }).slice(3);
  const median = (values: number[]): string =>
    (values.sort((a, b) => a - b)[values.length >> 1] ?? 0).toFixed(0);
  console.log(
    `${name}: ${median(ratios.map(({ core }) => core))} × real time per core, ${median(ratios.map(({ wall }) => wall))} × by the clock`,
  );
}
