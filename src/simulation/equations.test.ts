/** The motion against the equations as they are usually written, and against what has to stay as it is. */
import { describe, expect, it } from 'vitest';
import {
  asList,
  integrate,
  type OutsideLoads,
  unattended,
  vehicleEquations,
  workedVehicle,
} from '../../tests/specimen/motion.ts';
import { standardGravity } from '../mechanics/index.ts';
import {
  type Disturbance,
  type DriveKind,
  type MotionState,
  type SimulationModel,
  simulate,
} from './index.ts';

const falling: Partial<MotionState> = {
  lean: 0.2,
  leanRate: -0.2,
  gimbalTilt: -0.3,
  gimbalRate: -1,
  ballastPosition: 0.05,
  ballastRate: -0.3,
};
const onArm = (drive: DriveKind): SimulationModel => ({
  ...workedVehicle,
  drive,
  vehicle: { ...workedVehicle.vehicle, driveHeight: 0.2, armLength: 0.12, travel: 1.2 },
});
const drives: readonly (readonly [string, SimulationModel, Partial<MotionState>])[] = [
  ['slide', workedVehicle, falling],
  ['upright arm', onArm('upright arm'), { ...falling, ballastPosition: 0.6, ballastRate: -4 }],
  ['hanging arm', onArm('hanging arm'), { ...falling, ballastPosition: -0.6, ballastRate: 2 }],
];

/** Largest difference of a state from another, in parts of 1. */
function apart(a: readonly number[], b: readonly number[]): number {
  return Math.max(...a.map((value, i) => Math.abs(value - (b[i] ?? Number.NaN)) / (1 + Math.abs(value))));
}

describe('the motion', () => {
  const outside: readonly (readonly [string, readonly Disturbance[], OutsideLoads])[] = [
    ['left to itself', [], { gravity: standardGravity }],
    [
      'pushed on a slope',
      [
        { kind: 'moment', from: 0, moment: 0.7 },
        { kind: 'cross slope', from: 0, angle: 0.15 },
      ],
      { gravity: standardGravity, moment: 0.7, slope: 0.15 },
    ],
    [
      'in a turn to the left, on a slope',
      [
        { kind: 'turn', from: 0, speed: 2, radius: 4, side: 'left' },
        { kind: 'cross slope', from: 0, angle: -0.1 },
      ],
      { gravity: standardGravity, sideways: 1, slope: -0.1, yawRate: 0.5 },
    ],
    [
      'in a turn to the right',
      [{ kind: 'turn', from: 0, speed: 2, radius: 4, side: 'right' }],
      { gravity: standardGravity, sideways: -1, yawRate: -0.5 },
    ],
  ];
  const cases = drives.flatMap(([drive, model, start]) =>
    outside.map(([how, disturbances, loads]) => [drive, how, model, start, disturbances, loads] as const),
  );

  it.each(cases)('of a ballast on a(n) %s, %s, is that of the equations in φ̈', (...row) => {
    const [, , model, start, disturbances, loads] = row;
    const duration = 0.25;
    const { end, figures } = simulate(
      unattended(model),
      { duration, start, disturbances },
      { step: 1e-4, leanLimit: 10 },
    );
    // the command is 0 from the first step on
    const first = asList({
      laggedLean: 0,
      laggedRate: 0,
      lean: 0,
      leanRate: 0,
      gimbalTilt: 0,
      gimbalRate: 0,
      ballastPosition: 0,
      ballastRate: 0,
      ...start,
    });
    const other = integrate(vehicleEquations(model, 0, loads), first, duration, 8000);
    expect(end.time).toBe(duration);
    expect(figures.gimbalStopTime).toBeUndefined();
    expect(figures.timeAtTravelEnd).toBe(0);
    expect(apart(asList(end.state), other)).toBeLessThan(2e-9);
  });

  it.each(drives)(
    'of a ballast on a(n) %s comes closer with the fourth power of the step',
    (_, model, start) => {
      const unhurried = {
        ...unattended(model),
        controller: { ...model.controller, sampleTime: 0.2, delay: 0 },
      };
      const at = (step: number): number[] =>
        asList(simulate(unhurried, { duration: 0.2, start }, { step, leanLimit: 10 }).end.state);
      const exact = at(5e-5);
      const errors = [4e-3, 2e-3, 1e-3, 5e-4].map((step) => apart(at(step), exact));
      for (let i = 0; i < 3; i++) {
        const order = Math.log2((errors[i] ?? 0) / (errors[i + 1] ?? 0));
        expect(order).toBeGreaterThan(3.7);
        expect(order).toBeLessThan(4.5);
      }
    },
  );
});

describe('what has to stay as it is', () => {
  const still: SimulationModel = {
    ...unattended(workedVehicle),
    vehicle: { ...workedVehicle.vehicle, gimbalFriction: 0, gimbalRestitution: 1 },
  };

  /** Kinetic and potential energy with the ballast in the middle. */
  function energies(model: SimulationModel, start: Partial<MotionState>, step: number): number[] {
    const { vehicle: v } = model;
    const M = v.firstMomentWithout + v.ballastMass * v.driveHeight;
    const J = v.rollInertiaWithout + v.ballastMass * v.driveHeight ** 2;
    const { columns } = simulate(model, { duration: 2, start }, { step, leanLimit: 10 });
    return [...columns.time].map((_, i) => {
      const [lean = 0, leanRate = 0, tilt = 0, tiltRate = 0] = [
        columns.lean[i],
        columns.leanRate[i],
        columns.gimbalTilt[i],
        columns.gimbalRate[i],
      ];
      return (
        (J * leanRate ** 2 + (v.gimbalInertia ?? 0) * tiltRate ** 2 + (v.gimbalCentring ?? 0) * tilt ** 2) /
          2 +
        standardGravity * M * Math.cos(lean)
      );
    });
  }

  // the gimbal meets its stops, which give everything back
  it.each([
    ['a sprung gimbal', 0.15],
    ['a free gimbal', 0],
    ['a top-heavy gimbal', -0.1],
  ])('energy without friction, with %s, to 1e-9', (_, gimbalCentring) => {
    const model = { ...still, vehicle: { ...still.vehicle, gimbalCentring } };
    const energy = energies(model, { lean: 0.1, leanRate: 0.5, gimbalTilt: 0.2 }, 2e-4);
    const [first = Number.NaN] = energy;
    for (const value of energy) expect(Math.abs(value / first - 1)).toBeLessThan(1e-9);
  });

  it('I φ̇ + H sin α without gravity, friction and centring, to rounding', () => {
    const model = { ...still, vehicle: { ...still.vehicle, gimbalCentring: 0 } };
    const start = { lean: 0.1, leanRate: 0.8, gimbalTilt: -0.3, gimbalRate: 1 };
    const { columns } = simulate(model, { duration: 3, start }, { gravity: 0, leanLimit: 10 });
    const { rollInertiaWithout: I0, ballastMass: m, driveHeight: z, spinMomentum: H = 0 } = model.vehicle;
    const momentum = [...columns.time].map(
      (_, i) =>
        (I0 + m * z ** 2) * (columns.leanRate[i] ?? Number.NaN) +
        H * Math.sin(columns.gimbalTilt[i] ?? Number.NaN),
    );
    const swing = Math.max(...columns.leanRate) - Math.min(...columns.leanRate);
    expect(swing).toBeGreaterThan(0.5);
    for (const value of momentum) expect(value).toBeCloseTo(momentum[0] ?? Number.NaN, 13);
  });

  it('the same sum while the rotor runs down and the ballast is thrown about', () => {
    const { rollInertiaWithout: I0, ballastMass: m, driveHeight: z } = still.vehicle;
    const { columns } = simulate(
      { ...still, vehicle: { ...still.vehicle, gimbalCentring: 0, noLoadSpeed: 0.4, backlash: 0.01 } },
      {
        duration: 3,
        start: { gimbalTilt: 0.4, ballastPosition: 0.07 },
        coastDown: { from: 0, rotorInertia: 1e-3, linearDrag: 5e-4 },
      },
      { gravity: 0, leanLimit: 10 },
    );
    const last = columns.time.length - 1;
    const tilt = columns.gimbalTilt[last] ?? 0;
    const e = columns.ballastPosition[last] ?? 0;
    const after =
      (I0 + m * (z ** 2 + e ** 2)) * (columns.leanRate[last] ?? 0) +
      (columns.spinMomentum[last] ?? 0) * Math.sin(tilt);
    expect(columns.spinMomentum[last]).toBeLessThan(0.3);
    expect(after).toBeCloseTo(0.55 * Math.sin(0.4), 12);
  });
});
