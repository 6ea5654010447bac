import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { speedAtLoad } from './actuator-line.ts';
import {
  drivenMoment,
  gimbalReaction,
  momentumReserve,
  saturationTime,
  trimMoment,
  wheelReserve,
  wheelReserveUnderMoment,
} from './gimbal-drive.ts';
import { timeToStop } from './gimbal-time.ts';
import { rollDamping, stabilisingMomentum, yawReaction } from './gyro-damping.ts';
import {
  freeWobble,
  gyroBearingLoad,
  gyroCouple,
  peakCouple,
  tiltedRotorCouple,
  topPrecession,
} from './gyro-precession.ts';

const tilts = Array.from({ length: 2001 }, (_, i) => -0.4 + (1.2 * i) / 2000);

describe('a driven gimbal', () => {
  it('gives the integral of its moment and no more', () => {
    // At 1 rad/s the moment over tilt is the moment over time.
    const moments = tilts.map((tilt) => drivenMoment({ spinMomentum: 0.445, tiltRate: 1, tilt }));
    const width = 1.2 / 2000;
    const impulse = moments.reduce((sum, m, i) => sum + (i === 0 || i === 2000 ? m / 2 : m), 0) * width;
    expect(momentumReserve({ spinMomentum: 0.445, gimbalTravel: 0.8, initialTilt: -0.4 })).toBeCloseTo(
      impulse,
      6,
    );
  });

  it('saturates when the passive one meets its stop', () => {
    const stroke = { spinMomentum: 0.445, gimbalTravel: 0.8, initialTilt: 0.1 };
    expect(saturationTime({ reserve: momentumReserve(stroke), moment: 0.058 })).toBeCloseTo(
      timeToStop({ ...stroke, moment: 0.058 }),
      14,
    );
  });

  it('as an opposed pair gives twice as much for twice as long', () => {
    const one = { spinMomentum: 0.445, tiltRate: 1.5, tilt: 0.3 };
    expect(drivenMoment({ ...one, rotors: 2 })).toBeCloseTo(2 * drivenMoment(one), 15);
    expect(momentumReserve({ spinMomentum: 1, gimbalTravel: 0.5, rotors: 2 })).toBeCloseTo(
      2 * Math.sin(0.5),
      15,
    );
    expect(() => drivenMoment({ ...one, rotors: 1.5 })).toThrow('whole number');
  });

  it('moment times roll rate is reaction times gimbal rate: the rotor stores no work', () => {
    const [tiltRate, rollRate, tilt] = [1.5, 0.7, 0.4];
    const moment = drivenMoment({ spinMomentum: 0.445, tiltRate, tilt });
    const reaction = gimbalReaction({ spinMomentum: 0.445, rollRate, tilt });
    expect(moment * rollRate).toBeCloseTo(reaction * tiltRate, 15);
  });

  it('the trim ballast takes over what the reserve cannot carry, and nothing where it can', () => {
    const store = { moment: 0.058, reserve: 0.3 };
    const time = saturationTime(store);
    expect(trimMoment({ ...store, time: time / 2 })).toBe(0);
    const trim = trimMoment({ ...store, time: 60 });
    expect(saturationTime({ reserve: 0.3, moment: 0.058 - trim })).toBeCloseTo(60, 10);
  });
});

describe('a reaction wheel', () => {
  it('has less left, whichever way it already turns', () => {
    const wheel = { wheelInertia: 4e-4, largestSpeed: 600 };
    expect(wheelReserve({ ...wheel, startSpeed: -100 })).toBe(wheelReserve({ ...wheel, startSpeed: 100 }));
    expect(wheelReserve(wheel)).toBeCloseTo(0.24, 15);
    expect(() => wheelReserve({ ...wheel, startSpeed: 700 })).toThrow('speed of the wheel at the start');
  });

  it('gives a larger moment for a shorter while', () => {
    const motor = { wheelInertia: 4e-4, stallMoment: 0.25, noLoadSpeed: 700 };
    const { limitSpeed, reserve } = wheelReserveUnderMoment({ ...motor, moment: 0.06 });
    expect(limitSpeed).toBeCloseTo(speedAtLoad({ stallMoment: 0.25, noLoadSpeed: 700, load: 0.06 }), 12);
    expect(reserve).toBeCloseTo(4e-4 * limitSpeed, 15);
    expect(wheelReserveUnderMoment({ ...motor, moment: 0.12 }).reserve).toBeLessThan(reserve);
    expect(wheelReserveUnderMoment({ ...motor, moment: 0.3 }).reserve).toBeLessThan(0);
  });
});

describe('a rotor whose axis is turned', () => {
  it('loads its bearings with the couple over the span, and half its weight', () => {
    const { gyroLoad, largestLoad } = gyroBearingLoad({
      spinMomentum: 0.445,
      turnRate: 3,
      bearingSpan: 0.04,
      rotorMass: 0.4,
    });
    expect(gyroLoad * 0.04).toBeCloseTo(gyroCouple({ spinMomentum: 0.445, turnRate: 3 }), 14);
    expect(largestLoad - gyroLoad).toBeCloseTo(0.2 * 9.80665, 12);
  });

  it('swings harder with the frequency, once for the couple, twice for the acceleration', () => {
    const slow = peakCouple({ spinMomentum: 1, amplitude: 0.1, frequency: 2 });
    const fast = peakCouple({ spinMomentum: 1, amplitude: 0.1, frequency: 6 });
    expect(fast.couple / slow.couple).toBeCloseTo(3, 14);
    expect(fast.acceleration / slow.acceleration).toBeCloseTo(9, 14);
  });

  it('precesses such that the couple carries its weight', () => {
    const precession = topPrecession({ mass: 0.3, arm: 0.05, spinMomentum: 0.047 });
    expect(gyroCouple({ spinMomentum: 0.047, turnRate: precession })).toBeCloseTo(0.3 * 9.80665 * 0.05, 14);
  });

  it('a ball does not wobble in itself, and wobbles in space as it spins', () => {
    const wobble = freeWobble({ spinInertia: 1, transverseInertia: 1, speed: 30 });
    expect(wobble).toEqual({ spaceRate: 30, bodyRate: 0 });
  });

  it('the two rates of a wobble differ by the spin where the tilt is small', () => {
    const { spaceRate, bodyRate } = freeWobble({ spinInertia: 5, transverseInertia: 2.6, speed: 890 });
    expect(spaceRate - bodyRate).toBeCloseTo(890, 10);
  });

  it('tilted on its shaft asks for nothing at 0° and 90°, and most between', () => {
    const rotor = { spinInertia: 5e-4, transverseInertia: 2.6e-4, speed: 890 };
    expect(tiltedRotorCouple({ ...rotor, tilt: 0 })).toBe(0);
    expect(tiltedRotorCouple({ ...rotor, tilt: Math.PI / 2 })).toBeCloseTo(0, 10);
    expect(tiltedRotorCouple({ ...rotor, tilt: Math.PI / 4 })).toBeCloseTo(0.5 * 2.4e-4 * 890 ** 2, 10);
  });
});

describe('a passive rotor beside its slow fall', () => {
  /** Squares of the roots of (I s² − K)(I_g s² + k) + H² s² = 0, k negative: real and negative where it stands. */
  function discriminant(
    H: number,
    K: number,
    I: number,
    Ig: number,
    k: number,
  ): { inner: number; b: number } {
    const b = I * k - K * Ig + H * H;
    return { inner: b * b + 4 * I * Ig * K * k, b };
  }

  it('stands without friction above the least momentum and not below it', () => {
    const size = fc.double({ min: 0.01, max: 5, noNaN: true });
    fc.assert(
      fc.property(size, size, size, size, (K, I, Ig, topHeavy) => {
        const least = stabilisingMomentum({
          stiffness: K,
          rollInertia: I,
          gimbalInertia: Ig,
          centring: -topHeavy,
        });
        const above = discriminant(least * 1.001, K, I, Ig, -topHeavy);
        const below = discriminant(least * 0.999, K, I, Ig, -topHeavy);
        expect(above.inner > 0 && above.b > 0).toBe(true);
        expect(below.inner > 0 && below.b > 0).toBe(false);
      }),
    );
  });

  it('never stands with a centring spring', () => {
    expect(() =>
      stabilisingMomentum({ stiffness: 3, rollInertia: 0.05, gimbalInertia: 2e-4, centring: 0.1 }),
    ).toThrow('one unstable coordinate');
  });

  it('damps four times as hard at twice the momentum', () => {
    const damping = (spinMomentum: number): number => rollDamping({ spinMomentum, gimbalFriction: 0.2 });
    expect(damping(0.2) / damping(0.1)).toBeCloseTo(4, 14);
  });

  it('pushes no tyre sideways while upright, and pushes harder the further it is tilted', () => {
    const gyro = { spinMomentum: 0.445, tiltRate: 1.5, wheelbase: 0.3, friction: 0.6, wheelLoad: 4.3 };
    expect(yawReaction({ ...gyro, tilt: 0 }).gripShare).toBe(0);
    const { moment, sideForce, gripShare } = yawReaction({ ...gyro, tilt: -0.5 });
    expect(moment).toBeCloseTo(0.445 * 1.5 * Math.sin(0.5), 15);
    expect(sideForce * 0.3).toBeCloseTo(moment, 15);
    expect(gripShare).toBeLessThan(yawReaction({ ...gyro, tilt: 0.8 }).gripShare);
  });

  it('roll and yaw moment of a turning gimbal together are H α̇', () => {
    const [tilt, tiltRate] = [0.6, 1.5];
    const roll = drivenMoment({ spinMomentum: 0.445, tiltRate, tilt });
    const gyro = { spinMomentum: 0.445, tiltRate, tilt, wheelbase: 1, friction: 1, wheelLoad: 1 };
    expect(Math.hypot(roll, yawReaction(gyro).moment)).toBeCloseTo(0.445 * tiltRate, 15);
  });
});
