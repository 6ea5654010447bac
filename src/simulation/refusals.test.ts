/** What cannot be simulated is refused at the door, by name. */
import { describe, expect, it } from 'vitest';
import { workedVehicle } from '../../tests/specimen/motion.ts';
import { DomainError } from '../mechanics/index.ts';
import { type Scenario, type SimulationModel, type SimulationOptions, simulate } from './index.ts';

const noisy: SimulationModel = { ...workedVehicle, sensors: { leanNoise: 0.001 } };
const withVehicle = (change: Partial<SimulationModel['vehicle']>): SimulationModel => ({
  ...workedVehicle,
  vehicle: { ...workedVehicle.vehicle, ...change },
});

describe('a run', () => {
  const bad: readonly (readonly [string, SimulationModel, Scenario, SimulationOptions, string])[] = [
    [
      'no sample time',
      { ...workedVehicle, controller: { ...workedVehicle.controller, sampleTime: 0 } },
      { duration: 1 },
      {},
      'sample time is 0 s',
    ],
    [
      'a huge delay',
      { ...workedVehicle, controller: { ...workedVehicle.controller, delay: 10 } },
      { duration: 1 },
      {},
      'delay is 10 s, but it has to be at most 100 sample times',
    ],
    [
      'a negative inertia',
      withVehicle({ rollInertiaWithout: -0.1 }),
      { duration: 1 },
      {},
      'roll inertia without the ballast is −0.1 kg·m²',
    ],
    [
      'a gain that is no number',
      { ...workedVehicle, controller: { ...workedVehicle.controller, leanGain: Number.NaN } },
      { duration: 1 },
      {},
      'lean gain is missing or not a number',
    ],
    [
      'a rotor without inertia',
      withVehicle({ gimbalInertia: 0 }),
      { duration: 1 },
      {},
      'gimbal inertia is 0',
    ],
    [
      'play beyond the travel',
      withVehicle({ backlash: 0.1 }),
      { duration: 1 },
      {},
      'backlash of the drive is 0.1 m, but it has to be less than the travel',
    ],
    [
      'a dead band beyond the travel',
      withVehicle({ deadBand: 0.1 }),
      { duration: 1 },
      {},
      'dead band of the drive is 0.1 m',
    ],
    [
      'an arm that swings through',
      { ...withVehicle({ travel: 2 }), drive: 'upright arm' },
      { duration: 1 },
      {},
      'travel of the ballast is 114.592°',
    ],
    [
      'a gimbal that starts beyond its stop',
      withVehicle({ gimbalTravel: 0.3 }),
      { duration: 1, start: { gimbalTilt: 0.4 } },
      {},
      'gimbal tilt at the start is 22.9183°',
    ],
    [
      'a ballast that starts beyond its travel',
      workedVehicle,
      { duration: 1, start: { ballastPosition: 0.2 } },
      {},
      'ballast position at the start is 0.2',
    ],
    [
      'a lean that has fallen already',
      workedVehicle,
      { duration: 1, start: { lean: 0.6 } },
      { leanLimit: 0.5 },
      'lean at the start is 34.3775°, but it has to be less than the lean limit',
    ],
    ['no duration', workedVehicle, { duration: 0 }, {}, 'duration of the run is 0 s'],
    [
      'an endless duration',
      workedVehicle,
      { duration: 1e9 },
      {},
      'duration of the run is 1000000000 s, but it has to be at most',
    ],
    [
      'a push that ends before it begins',
      workedVehicle,
      { duration: 1, disturbances: [{ kind: 'moment', from: 0.5, to: 0.2, moment: 1 }] },
      {},
      'end of the push is 0.2 s, but it has to come after its start, 0.5 s',
    ],
    [
      'a turn without a radius',
      workedVehicle,
      { duration: 1, disturbances: [{ kind: 'turn', from: 0, speed: 1, radius: 0, side: 'left' }] },
      {},
      'radius of the turn is 0 m',
    ],
    [
      'a coast-down that never begins',
      workedVehicle,
      { duration: 1, coastDown: { rotorInertia: 1e-3 } },
      {},
      'start of the coast-down is missing',
    ],
    ['a step of nothing', workedVehicle, { duration: 1 }, { step: 0 }, 'step of the simulation is 0 s'],
    [
      'a step that the gimbal is too quick for',
      workedVehicle,
      { duration: 1 },
      { step: 0.1 },
      'step of the simulation is 0.1 s, but it has to be at most 0.04',
    ],
    ['a seed that is no whole number', noisy, { duration: 1 }, { seed: 0.5 }, 'seed is 0.5'],
    [
      'negative noise',
      { ...workedVehicle, sensors: { leanNoise: -1 } },
      { duration: 1 },
      {},
      'noise of the lean is −57.2958°',
    ],
  ];
  it.each(bad)('refuses %s and names it', (_, model, scenario, options, message) => {
    expect(() => simulate(model, scenario, options)).toThrow(DomainError);
    expect(() => simulate(model, scenario, options)).toThrow(message);
  });
});
