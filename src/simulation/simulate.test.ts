/** What a vehicle does in a run: its controller, its drive, its gimbal, what acts on it, and how a run ends. */
import { describe, expect, it } from 'vitest';
import { unattended, workedVehicle } from '../../tests/specimen/motion.ts';
import { slowTopplingTime, timeToStop, timeToStopFromLean, toppling } from '../mechanics/index.ts';
import {
  linearHardware,
  type Scenario,
  type SimulationModel,
  type SimulationOptions,
  simulate,
} from './index.ts';

const start = { lean: 0.01 };
const noisy: SimulationModel = {
  ...workedVehicle,
  sensors: {
    ...workedVehicle.sensors,
    leanNoise: 0.001,
    rateNoise: 0.01,
    tiltNoise: 0.002,
    leanResolution: 5e-4,
  },
};
const withVehicle = (
  change: Partial<SimulationModel['vehicle']>,
  model = workedVehicle,
): SimulationModel => ({
  ...model,
  vehicle: { ...model.vehicle, ...change },
});
const withoutRotor = withVehicle({ spinMomentum: 0, gimbalInertia: 0 }, unattended(workedVehicle));
const deviation = (values: readonly number[]): number => {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  return Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length);
};

describe('the controller', () => {
  it('gives the same run for the same seed, to the last digit, and another for another', () => {
    const run = (options: SimulationOptions) => simulate(noisy, { duration: 2, start }, options).columns;
    expect(run({ seed: 5 })).toEqual(run({ seed: 5 }));
    expect(run({ seed: 5 }).lean.at(-1)).not.toBe(run({ seed: 6 }).lean.at(-1));
    expect(run({ seed: 5 }).lean.at(-1)).not.toBe(run({ seed: 5, stream: 1 }).lean.at(-1));
  });

  it('moves nothing until its first command arrives', () => {
    const { columns } = simulate(workedVehicle, { duration: 0.04, start });
    // 18 ms are three samples and 3 ms of the fourth
    expect([...columns.ballastPosition.slice(0, 4)]).toEqual([0, 0, 0, 0]);
    expect(columns.command[0]).toBeCloseTo(0.95 * 0.01, 15);
    expect(columns.ballastPosition[4]).toBeGreaterThan(0);
  });

  it('reads in steps of the resolution, with noise of the size given', () => {
    const { columns } = simulate(noisy, { duration: 60 });
    for (const reading of columns.leanReading.slice(0, 200)) {
      expect(reading / 5e-4).toBeCloseTo(Math.round(reading / 5e-4), 9);
    }
    const errors = [...columns.rateReading].map((reading, i) => reading - (columns.leanRate[i] ?? 0));
    expect(deviation(errors)).toBeGreaterThan(0.0095);
    expect(deviation(errors)).toBeLessThan(0.012); // and a little lag
  });

  it('takes a lean sensor that is not square for a lean', () => {
    const model = { ...workedVehicle, sensors: { ...workedVehicle.sensors, leanOffset: 0.01 } };
    const { end } = simulate(model, { duration: 20 });
    // at rest: M φ = m_b e and e = K_p (φ + offset), the gimbal back where it was
    const { firstMoment, ballastMass } = linearHardware(model);
    const pull = (ballastMass * 0.95) / firstMoment;
    expect(end.state.lean).toBeCloseTo((pull * 0.01) / (1 - pull), 3);
  });

  it('differentiates the angle from its second sample on', () => {
    const model: SimulationModel = {
      ...workedVehicle,
      sensors: {},
      controller: { ...workedVehicle.controller, rateSource: 'difference of angle' },
    };
    const { columns } = simulate(model, { duration: 0.5, start: { lean: 0.01, leanRate: 0.1 } });
    expect(columns.rateReading[0]).toBe(0);
    const [before = 0, now = 0] = columns.lean.slice(40, 42);
    expect(columns.rateReading[41]).toBeCloseTo((now - before) / 0.005, 12);
  });
});

describe('the drive', () => {
  it('goes no further than its travel and no faster than its speed', () => {
    const model = withVehicle({ travel: 0.03, noLoadSpeed: 0.15 });
    const { columns, figures } = simulate(model, { duration: 3, start: { lean: 0.03 } }, { leanLimit: 10 });
    expect(Math.max(...columns.ballastPosition.map(Math.abs))).toBeLessThanOrEqual(0.03);
    const moved = columns.ballastPosition.map((q, i) => q - (columns.ballastPosition[i - 1] ?? q));
    expect(Math.max(...moved.map(Math.abs))).toBeCloseTo(0.15 * 0.005, 12);
    expect(figures.timeAtTravelEnd).toBeGreaterThan(0.05);
    expect(figures.timeAtSpeedLimit).toBeGreaterThan(0.05);
  });

  it('that is too slow loses a vehicle that a quicker one holds', () => {
    const at = (noLoadSpeed: number) =>
      simulate(withVehicle({ noLoadSpeed }), { duration: 5, start: { lean: 0.02 } }).outcome;
    expect([at(1), at(0.01)]).toEqual(['settled', 'fell']);
  });

  it('that slacks keeps the vehicle swinging, as far as the slack is wide', () => {
    const swing = (backlash: number, from: number): number => {
      const { columns } = simulate(withVehicle({ backlash }), { duration: 200, start });
      return Math.max(...columns.lean.slice(from * 200, (from + 40) * 200));
    };
    expect(swing(0.002, 160)).toBeGreaterThan(1e-3);
    expect(swing(0.002, 160) / swing(0.002, 100)).toBeCloseTo(1, 4);
    expect(swing(0.004, 160) / swing(0.002, 160)).toBeCloseTo(2, 3);
    expect(swing(0, 160)).toBeLessThan(1e-12);
  });

  it('holds its ballast where it is once the power is off', () => {
    const { columns, outcome } = simulate(workedVehicle, { duration: 20, start, powerLossAt: 0.2 });
    const held = columns.ballastPosition[41];
    expect(outcome).toBe('fell');
    expect(columns.ballastPosition.at(-1)).toBe(held);
    expect(columns.command.at(-1)).toBe(columns.command[39]);
  });
});

describe('the gimbal', () => {
  const free = withVehicle(
    { gimbalCentring: 0, gimbalFriction: 0, gimbalTravel: 0.6 },
    unattended(workedVehicle),
  );

  it('meets its stop under a steady push when the impulse is used up', () => {
    const moment = 0.02;
    const push: Scenario = { duration: 30, disturbances: [{ kind: 'moment', from: 0, moment }] };
    const { figures } = simulate(free, push, { gravity: 0 });
    const predicted = timeToStop({ spinMomentum: 0.55, gimbalTravel: 0.6, moment });
    expect((figures.gimbalStopTime ?? 0) / predicted).toBeCloseTo(1, 2);
  });

  it('meets its stop from a lean when the slow toppling has used up the impulse', () => {
    const sticky = withVehicle({ gimbalFriction: 0.005 }, free);
    const { stiffness } = toppling(linearHardware(free));
    const slowTime = slowTopplingTime({
      spinMomentum: 0.55,
      stiffness,
      gimbalInertia: 9e-4,
      gimbalFriction: 0.005,
    });
    const predicted = timeToStopFromLean({
      spinMomentum: 0.55,
      gimbalTravel: 0.6,
      stiffness,
      lean: 0.02,
      slowTime,
    });
    const { figures } = simulate(sticky, { duration: 30, start: { lean: 0.02 } });
    const ratio = (figures.gimbalStopTime ?? 0) / predicted;
    // nutation at the start and the friction of a tilted gimbal
    expect(ratio).toBeGreaterThan(0.96);
    expect(ratio).toBeLessThan(1.02);
  });

  it('gives nothing at its stop: the vehicle falls as without a rotor', () => {
    const from = { lean: 0.05, leanRate: 0 };
    const atStop = simulate(free, { duration: 5, start: { ...from, gimbalTilt: 0.6 } });
    const bare = simulate(withoutRotor, { duration: 5, start: from });
    expect(atStop.figures.gimbalStopTime).toBe(0);
    expect(atStop.figures.fallTime).toBeCloseTo(bare.figures.fallTime ?? Number.NaN, 12);
    expect(atStop.figures.timeAtGimbalStop).toBeCloseTo(atStop.figures.fallTime ?? Number.NaN, 12);
  });

  it('comes off its stop when the moment turns', () => {
    const { columns } = simulate(free, { duration: 0.1, start: { lean: -0.05, gimbalTilt: 0.6 } });
    expect(columns.gimbalTilt.at(-1)).toBeLessThan(0.6);
  });

  it('bounces off a stop that gives half the speed back, and stays at a dead one', () => {
    const fast = { gimbalTilt: 0.59, gimbalRate: 3 };
    const bounced = simulate(withVehicle({ gimbalRestitution: 0.5, spinMomentum: 0 }, free), {
      duration: 0.005,
      start: fast,
    });
    expect(bounced.end.state.gimbalRate).toBeCloseTo(-1.5, 9);
    const dead = simulate(withVehicle({ spinMomentum: 0 }, free), { duration: 0.005, start: fast });
    expect(dead.end.state.gimbalTilt).toBe(0.6);
    expect(dead.figures.gimbalStopTime).toBeCloseTo(0.01 / 3, 12);
  });

  it('is held by dry friction until the moment on it is larger', () => {
    const stiff = withVehicle({ gimbalDryFriction: 0.05 }, free);
    const { columns } = simulate(stiff, { duration: 1, start: { lean: 0.01 } });
    const first = columns.gimbalTilt.findIndex((tilt) => tilt !== 0);
    // H φ̇ is the moment; until it reaches F the vehicle falls as without a rotor
    const { timeConstant } = toppling(linearHardware(free));
    const expected = timeConstant * Math.asinh((0.05 / 0.55) * (timeConstant / 0.01));
    expect(columns.time[first]).toBeGreaterThanOrEqual(expected - 1e-5);
    expect(columns.time[first]).toBeLessThan(expected + 0.006);
  });

  it('swings less and less with dry friction, and comes to rest off the middle', () => {
    const pendulum = withVehicle(
      { spinMomentum: 0, gimbalCentring: 0.15, gimbalFriction: 0, gimbalDryFriction: 0.006 },
      unattended(workedVehicle),
    );
    const { end, columns } = simulate(
      pendulum,
      { duration: 3, start: { gimbalTilt: 0.5 } },
      { leanLimit: 10, gravity: 0 },
    );
    // each half swing loses 2 F/k = 0.08 rad: 0.5, −0.42, 0.34, −0.26, 0.18, −0.1, 0.02
    expect(end.state.gimbalTilt).toBeCloseTo(0.02, 9);
    expect(end.state.gimbalRate).toBe(0);
    expect(Math.min(...columns.gimbalTilt)).toBeCloseTo(-0.42, 2);
  });
});

describe('what acts on the vehicle', () => {
  it('a blow changes the lean rate by J/I at its moment', () => {
    const { rollInertia } = linearHardware(withoutRotor);
    const blow: Scenario = {
      duration: 0.02,
      disturbances: [{ kind: 'impulse', at: 0.0123, momentum: 0.01 }],
    };
    const { columns } = simulate(withoutRotor, blow);
    const { timeConstant } = toppling(linearHardware(withoutRotor));
    const since = 0.02 - 0.0123;
    expect(columns.leanRate[2]).toBe(0);
    expect(columns.leanRate[4]).toBeCloseTo((0.01 / rollInertia) * Math.cosh(since / timeConstant), 9);
  });

  it('a push that ends leaves off', () => {
    const gravity = 0;
    const push: Scenario = {
      duration: 2,
      disturbances: [{ kind: 'moment', from: 0.5, to: 1.001, moment: 0.03 }],
    };
    const { end } = simulate(withoutRotor, push, { gravity, leanLimit: 10 });
    expect(end.state.leanRate).toBeCloseTo((0.03 * 0.501) / linearHardware(withoutRotor).rollInertia, 12);
  });

  it('a slope is held as a lean of the same size would be', () => {
    const onSlope = simulate(withoutRotor, {
      duration: 5,
      disturbances: [{ kind: 'cross slope', from: 0, angle: 0.05 }],
    });
    const leaning = simulate(
      withoutRotor,
      { duration: 5, start: { lean: 0.05 } },
      { leanLimit: Math.PI / 4 + 0.05 },
    );
    expect(onSlope.figures.fallTime).toBeCloseTo(leaning.figures.fallTime ?? Number.NaN, 9);
  });

  it('a turn with the rotor’s own sense centres its gimbal and topples the vehicle, one against it does not', () => {
    // the rotor turns to the left, seen from above: H ψ̇ acts as centring, and centring spends what the rotor bought
    const topple = withVehicle({ gimbalCentring: 0, gimbalTravel: 1.2 }, unattended(workedVehicle));
    const run = (side: 'left' | 'right') =>
      simulate(topple, {
        duration: 10,
        disturbances: [{ kind: 'turn', from: 0, speed: 0.4, radius: 2, side }],
      });
    expect(run('left').figures.fallTime).toBeLessThan(4);
    expect(run('left').figures.peakLean).toBeGreaterThan(0); // outwards
    expect(run('right').figures.fallTime).toBeUndefined();
  });

  it('a rotor left alone runs down as its drag says', () => {
    const coastDown = { from: 0.5, rotorInertia: 1e-3, linearDrag: 2e-4 };
    const { columns } = simulate(workedVehicle, { duration: 2, start, coastDown });
    expect(columns.spinMomentum[100]).toBe(0.55);
    expect(columns.spinMomentum.at(-1)).toBeCloseTo(0.55 * Math.exp(-0.2 * 1.5), 12);
    const steady = { from: 0, rotorInertia: 1e-3, steadyDrag: 0.1 };
    const stopped = simulate(unattended(workedVehicle), { duration: 6, coastDown: steady }).columns;
    expect(stopped.spinMomentum[600]).toBeCloseTo(0.55 - 0.3, 12);
    expect(stopped.spinMomentum.at(-1)).toBe(0);
  });

  it('a rotor without a time of its own runs down from the loss of power on', () => {
    const coastDown = { rotorInertia: 1e-3, linearDrag: 2e-4 };
    const { columns } = simulate(workedVehicle, { duration: 2, start, coastDown, powerLossAt: 0.5 });
    expect(columns.spinMomentum[100]).toBe(0.55);
    expect(columns.spinMomentum[200]).toBeCloseTo(0.55 * Math.exp(-0.2 * 0.5), 12);
  });

  it('a rotor that runs down loses the vehicle in the end', () => {
    const coastDown = { from: 0, rotorInertia: 1e-3, linearDrag: 2e-4, steadyDrag: 0.01 };
    const { figures, outcome } = simulate(workedVehicle, { duration: 60, start, coastDown });
    expect(outcome).toBe('fell');
    expect(figures.fallTime).toBeGreaterThan(1);
  });
});

describe('a run', () => {
  it('that settles says from when on', () => {
    const { outcome, figures, columns } = simulate(workedVehicle, { duration: 5, start: { lean: 0.02 } });
    expect(outcome).toBe('settled');
    const settled = Math.PI / 360;
    const last = columns.lean.findLastIndex((lean) => Math.abs(lean) > settled);
    expect(figures.settledFrom).toBeGreaterThan((columns.time[last] ?? Number.NaN) - 1e-9);
    expect(figures.settledFrom).toBeLessThan((columns.time[last] ?? Number.NaN) + 0.0051);
    expect(figures.fallTime).toBeUndefined();
    expect(Math.abs(figures.peakLean)).toBeGreaterThanOrEqual(Math.max(...columns.lean));
  });

  it('that diverges stops with its time and its state', () => {
    const wild = {
      ...workedVehicle,
      controller: { ...workedVehicle.controller, leanGain: 0.4 },
    };
    const { outcome, end, figures, columns } = simulate(wild, { duration: 60, start }, { leanLimit: 0.5 });
    expect(outcome).toBe('fell');
    expect(Math.abs(end.state.lean)).toBeCloseTo(0.5, 9);
    expect(end.time).toBe(figures.fallTime);
    expect(columns.time.at(-1)).toBe(end.time);
    expect(columns.lean.at(-1)).toBe(end.state.lean);
    expect(end.reason).toContain('fell');
  });

  it('whose numbers go beyond all bounds keeps the last good ones', () => {
    const hammer: Scenario = {
      duration: 1,
      disturbances: [
        { kind: 'impulse', at: 0.1, momentum: 1.7e308 },
        { kind: 'impulse', at: 0.2, momentum: 1.7e308 },
      ],
    };
    const { outcome, end } = simulate(withoutRotor, hammer, { leanLimit: Number.MAX_VALUE });
    expect(outcome).toBe('lost');
    expect(end.time).toBeLessThan(0.21);
    expect(Number.isFinite(end.time)).toBe(true);
  });

  it('keeps a row for each sample and one for the end, or fewer, or that one only', () => {
    const rows = (rowEvery: number) => simulate(workedVehicle, { duration: 1 }, { rowEvery }).columns.time;
    expect(rows(1).length).toBe(201);
    expect(rows(1).at(-1)).toBe(1);
    expect([...rows(50)]).toEqual([0, 0.25, 0.5, 0.75, 1]);
    expect([...rows(0)]).toEqual([1]);
  });
});
