/** The worked case of a balance loop, every result to the digits to which it was computed without this project. */
import { describe, expect, it } from 'vitest';
import {
  balanceLoop,
  eigenvalues,
  loopMargins,
  loopTransfer,
  respond,
  restingState,
  spectralRadius,
} from '../../src/control/index.ts';
import { toppling } from '../../src/mechanics/index.ts';
import { repeatable, workedController, workedHardware } from '../specimen/balance-loop.ts';
import { expectPrinted } from './printed.ts';

const CASE = 'computed independently with NumPy and SciPy from the same linear equations';
const worked = balanceLoop(workedHardware, workedController);
const open = eigenvalues(worked.plant.a, worked.plant.order);
const margins = loopMargins(worked);
const motion = respond(worked, restingState(worked.plant, { lean: 0.01, 'lagged lean': 0.01 }), 400);
const falling = open
  .filter(({ im }) => Math.abs(im) < 1e-6)
  .map(({ re }) => re)
  .sort((a, b) => a - b);
const swinging = open.filter(({ im }) => im > 1e-6).sort((a, b) => a.im - b.im);
const stable = margins.stable ? margins : undefined;

const workedCase: readonly (readonly [what: string, printed: string, computed: () => number | undefined])[] =
  [
    ['roll inertia, kg·m²', '0.09076', () => workedHardware.rollInertia],
    ['first moment, kg·m', '0.492', () => workedHardware.firstMoment],
    ['toppling time, s', '0.137152698', () => toppling(workedHardware).timeConstant],
    ['sensor pole, 1/s', '-125.000000', () => falling[0]],
    ['sensor pole again, 1/s', '-125.000000', () => falling[1]],
    ['slow pole, 1/s', '-1.486547899', () => falling[2]],
    ['falling pole, 1/s', '1.560451891', () => falling[3]],
    ['actuator, real part', '-27.200000', () => swinging[0]?.re],
    ['actuator, imaginary part', '16.857046005', () => swinging[0]?.im],
    ['nutation, real part', '-2.814729774', () => swinging[1]?.re],
    ['nutation, imaginary part', '61.738274535', () => swinging[1]?.im],
    ['dominant pole in z, real part', '0.9938732330', () => margins.modes[0]?.z.re],
    ['dominant pole in z, imaginary part', '0.0034840296', () => margins.modes[0]?.z.im],
    ['its modulus', '0.9938793396', () => margins.spectralRadius],
    ['next pole in z, real part', '0.9400471719', () => margins.modes[2]?.z.re],
    ['next pole in z, imaginary part', '0.2493735385', () => margins.modes[2]?.z.im],
    ['gain margin up', '2.29664705', () => stable?.gainMarginUp.factor],
    ['gain margin down', '0.57543860', () => stable?.gainMarginDown.factor],
    ['delay margin, ms', '38.870293', () => 1000 * (stable?.delayMargin.delay ?? Number.NaN)],
    ['peak sensitivity', '2.0712', () => stable?.peakSensitivity.peak],
    ['its frequency, rad/s', '48.49', () => stable?.peakSensitivity.frequency],
    ['lean after 10 samples, rad', '0.011811676', () => motion[10]?.[0]],
    ['lean after 50 samples, rad', '0.009525272', () => motion[50]?.[0]],
    ['lean after 100 samples, rad', '0.008899178', () => motion[100]?.[0]],
    ['lean after 400 samples, rad', '0.001871867', () => motion[400]?.[0]],
  ];

describe(`the worked balance loop (${CASE})`, () => {
  it.each(workedCase)('%s: %s', (_, printed, computed) => {
    expectPrinted(computed() ?? Number.NaN, printed);
  });

  it('is just unstable with a slower rotor, a slacker gimbal and more lean gain: spectral radius 1.00076', () => {
    const hardware = { ...workedHardware, gimbalFriction: 0.02, gimbalCentring: 0.03, spinMomentum: 0.35 };
    const controller = { ...workedController, leanGain: 1.4, rateGain: 0.02, gimbalGain: 0.08 };
    const verdict = loopMargins(balanceLoop(hardware, controller));
    expect(verdict.stable).toBe(false);
    expectPrinted(verdict.spectralRadius, '1.00076');
  });

  it('is held by none of 3,000 pairs of gains with the rotor stopped', () => {
    const random = repeatable(1);
    const stopped = { ...workedHardware, spinMomentum: 0 };
    let held = 0;
    for (let i = 0; i < 3000; i++) {
      const [leanGain, rateGain] = [0.2 + 7.8 * random(), 1.5 * random()];
      if (spectralRadius(balanceLoop(stopped, { ...workedController, leanGain, rateGain })) < 1) held++;
    }
    expect(held).toBe(0);
  });

  it('passes −1 at the frequency and factor of its upper gain margin', () => {
    const { theta, factor } = stable?.gainMarginUp ?? { theta: 0, factor: 0 };
    const there = loopTransfer(worked).at(theta);
    expect(factor * (there?.re ?? 0)).toBeCloseTo(-1, 12);
    expect(factor * (there?.im ?? 1)).toBeCloseTo(0, 12);
  });
});
