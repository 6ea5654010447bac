/** Near upright the motion has to be that of the linear loop: its eigenvalues, its samples, its losing of balance. */
import { describe, expect, it } from 'vitest';
import { repeatable, someLoop } from '../../tests/specimen/balance-loop.ts';
import { unattended, workedVehicle } from '../../tests/specimen/motion.ts';
import {
  balanceLoop,
  eigenvalues,
  linearPlant,
  loopMargins,
  respond,
  restingState,
} from '../control/index.ts';
import { linearHardware, type MotionState, type SimulationModel, simulate } from './index.ts';

const states = [
  'lean',
  'leanRate',
  'gimbalTilt',
  'gimbalRate',
  'ballastPosition',
  'ballastRate',
  'laggedLean',
  'laggedRate',
] as const;
const rest = Object.fromEntries(states.map((name) => [name, 0])) as unknown as MotionState;
const arm: SimulationModel = {
  ...workedVehicle,
  drive: 'upright arm',
  vehicle: { ...workedVehicle.vehicle, driveHeight: 0.15, armLength: 0.1, travel: 1, gimbalCentring: -0.02 },
};

/** ln of the eigenvalues of the state after a while by the state before, over that while: by differences of runs. */
function eigenvaluesOfRuns(
  model: SimulationModel,
  while_: number,
  step: number,
): { re: number; im: number }[] {
  const still = unattended(model);
  const run = (start: MotionState): MotionState =>
    simulate(still, { duration: while_, start }, { step, rowEvery: 0 }).end.state;
  const size = 1e-4;
  const map = new Float64Array(states.length ** 2);
  states.forEach((from, j) => {
    const [up, down] = [size, -size].map((change) => run({ ...rest, [from]: change }));
    states.forEach((to, i) => {
      map[i * states.length + j] = ((up?.[to] ?? Number.NaN) - (down?.[to] ?? Number.NaN)) / (2 * size);
    });
  });
  return eigenvalues(map, states.length).map(({ re, im }) => ({
    re: Math.log(Math.hypot(re, im)) / while_,
    im: Math.atan2(im, re) / while_,
  }));
}

const inOrder = <T extends { re: number; im: number }>(list: readonly T[]): T[] =>
  [...list].sort((a, b) => a.re - b.re || a.im - b.im);

describe('near upright', () => {
  it.each([
    ['slide', workedVehicle],
    ['arm', arm],
  ])('runs have the eigenvalues of the linear vehicle, with its ballast on a(n) %s', (_, model) => {
    const plant = linearPlant(linearHardware(model), {
      reads: ['measured lean', 'measured rate', 'gimbal tilt', 'gimbal rate'],
    });
    const expected = inOrder(eigenvalues(plant.a, plant.order));
    const found = inOrder(eigenvaluesOfRuns(model, 0.01, 1e-4));
    expect(found.length).toBe(expected.length);
    expected.forEach(({ re, im }, i) => {
      const { re: foundRe = Number.NaN, im: foundIm = Number.NaN } = found[i] ?? {};
      // central differences of runs leave about 10⁻⁷
      expect(Math.hypot(foundRe - re, foundIm - im)).toBeLessThan(1e-6 * (1 + Math.hypot(re, im)));
    });
  });

  it('a run comes closer to the exact samples with the fourth power of the step', () => {
    const loop = balanceLoop(linearHardware(workedVehicle), workedVehicle.controller);
    const size = 1e-6;
    const exact = respond(loop, restingState(loop.plant, { lean: size, 'lagged lean': size }), 200);
    const error = (step: number): number => {
      const { columns } = simulate(workedVehicle, { duration: 1, start: { lean: size } }, { step });
      return Math.max(...exact.map(([lean = 0], k) => Math.abs(lean - (columns.lean[k] ?? Number.NaN))));
    };
    // lengths that divide both parts of the sample, 3 ms and 2 ms
    const errors = [0.001, 0.0005, 0.00025].map(error);
    errors.slice(1).forEach((finer, i) => {
      const order = Math.log2((errors[i] ?? Number.NaN) / finer);
      expect(order).toBeGreaterThan(3.8);
      expect(order).toBeLessThan(4.3);
    });
    expect((errors.at(-1) ?? 1) / size).toBeLessThan(1e-8);
  });

  it('runs of any vehicle, rate source and delay follow the exact samples', () => {
    const random = repeatable(11);
    let compared = 0;
    for (let i = 0; i < 60; i++) {
      const { hardware, controller } = someLoop(random);
      const slide = hardware.commandToOffset === 1;
      const height = hardware.ballastHeight;
      const L = hardware.commandToOffset;
      const model: SimulationModel = {
        drive: slide ? 'slide' : i % 2 ? 'upright arm' : 'hanging arm',
        vehicle: {
          ...hardware,
          firstMomentWithout: hardware.firstMoment - hardware.ballastMass * height,
          rollInertiaWithout: hardware.rollInertia - hardware.ballastMass * height ** 2,
          driveHeight: slide ? height : height - (i % 2 ? L : -L),
          armLength: L,
          travel: 1,
        },
        sensors: { lag: hardware.sensorLag },
        controller,
      };
      if (model.vehicle.rollInertiaWithout <= 0) continue;
      const loop = balanceLoop(hardware, controller);
      const samples = Math.ceil(0.3 / controller.sampleTime);
      const [lean, leanRate] = [1e-7, -2e-7];
      const free = hardware.spinMomentum > 0 && hardware.gimbalCentring === 0;
      // a model without its neutral modes has the tilt begin where H φ = c α
      const gimbalRate = free ? (hardware.spinMomentum * lean) / hardware.gimbalInertia : 0;
      const start = restingState(loop.plant, {
        lean,
        'lean rate': leanRate,
        'lagged lean': lean,
        'lagged rate': leanRate,
      });
      const exact = respond(loop, start, samples);
      const { columns } = simulate(
        model,
        { duration: samples * controller.sampleTime, start: { lean, leanRate, gimbalRate } },
        { step: 2e-4 },
      );
      const largest = Math.max(...exact.map(([value = 0]) => Math.abs(value)));
      if (largest > 1e-4) continue; // beyond what is linear
      exact.forEach(([value = 0], k) => {
        expect(
          Math.abs(value - (columns.lean[k] ?? Number.NaN)) / largest,
          JSON.stringify(model),
        ).toBeLessThan(2e-6);
      });
      compared++;
    }
    expect(compared).toBeGreaterThan(30);
  });

  it('a loop is lost between 99 % and 101 % of its gain margins and of its delay margin', () => {
    const margins = loopMargins(balanceLoop(linearHardware(workedVehicle), workedVehicle.controller));
    if (!margins.stable) throw new Error('the worked loop is stable');
    const { controller } = workedVehicle;
    const dies = (change: Partial<typeof controller>): boolean => {
      const model = { ...workedVehicle, controller: { ...controller, ...change } };
      const { columns } = simulate(model, { duration: 60, start: { lean: 1e-9 } });
      const peak = (from: number, to: number): number => {
        const rows = [...columns.lean].slice(Math.floor(from / 0.005), Math.floor(to / 0.005));
        return rows.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...rows.map(Math.abs));
      };
      return peak(50, 60) < peak(20, 30);
    };
    const times = (factor: number): Partial<typeof controller> => ({
      leanGain: factor * controller.leanGain,
      rateGain: factor * controller.rateGain,
      gimbalGain: factor * controller.gimbalGain,
    });
    const later = (share: number): Partial<typeof controller> => ({
      delay: controller.delay + share * margins.delayMargin.delay,
    });
    expect([
      dies(times(0.99 * margins.gainMarginUp.factor)),
      dies(times(1.01 * margins.gainMarginUp.factor)),
      dies(times(1.01 * margins.gainMarginDown.factor)),
      dies(times(0.99 * margins.gainMarginDown.factor)),
      dies(later(0.98)),
      dies(later(1.02)),
    ]).toEqual([true, false, true, false, true, false]);
  });
});
