import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnAcceleration } from './lateral.ts';
import {
  frictionNeeded,
  leanOfTurn,
  leanWithMomentum,
  slideSpeed,
  tipOver,
  tyreLean,
  wheelMomentum,
} from './turning.ts';

const g = 9.80665;
const turn = { speed: 1.2, radius: 1.5 };

describe('the lean of a turn', () => {
  it('points the resultant of weight and turn through the contact line', () => {
    expect(Math.tan(leanOfTurn(turn)) * g).toBeCloseTo(turnAcceleration(turn), 14);
  });

  it('is that of thin wheels where nothing spins across', () => {
    const vehicle = { ...turn, totalMass: 0.955, centreOfGravityHeight: 0.145 };
    expect(leanWithMomentum({ ...vehicle, lateralMomentum: 0 })).toBe(leanOfTurn(turn));
    expect(leanWithMomentum({ ...vehicle, lateralMomentum: 0.01 })).toBeGreaterThan(leanOfTurn(turn));
  });

  it('vanishes where a rotor against the wheels carries the turn', () => {
    // H v/r = m h v²/r
    const lateralMomentum = -0.955 * 0.145 * 1.2;
    const vehicle = { ...turn, totalMass: 0.955, centreOfGravityHeight: 0.145, lateralMomentum };
    expect(leanWithMomentum(vehicle)).toBeCloseTo(0, 14);
  });

  it('wheels add up, and spin as they roll', () => {
    const momentum = wheelMomentum({ wheelInertias: [3e-5, 5e-5], wheelRadius: 0.03, speed: 1.2 });
    expect(momentum).toBeCloseTo(8e-5 * 40, 15);
  });

  it('on wide tyres is larger, such that the contact still carries the resultant', () => {
    const [thin, crown, height] = [0.3, 0.012, 0.145];
    const lean = tyreLean({ lean: thin, crownRadius: crown, centreOfGravityHeight: height });
    expect(lean).toBeGreaterThan(thin);
    // From the contact point straight below the tyre's section to the centre of gravity.
    const sideways = (height - crown) * Math.sin(lean);
    const up = crown + (height - crown) * Math.cos(lean);
    expect(Math.atan2(sideways, up)).toBeCloseTo(thin, 13);
    expect(tyreLean({ lean: thin, crownRadius: 0, centreOfGravityHeight: height })).toBe(thin);
    expect(() => tyreLean({ lean: 1.5, crownRadius: 0.1, centreOfGravityHeight: 0.12 })).toThrow(
      'no lean balances',
    );
  });
});

describe('grip', () => {
  it('is used up at the speed at which it slides, level or banked', () => {
    const friction = fc.double({ min: 0.05, max: 1.2, noNaN: true });
    const bank = fc.double({ min: 0, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(friction, bank, (mu, beta) => {
        const speed = slideSpeed({ radius: 1.5, friction: mu, bank: beta });
        expect(frictionNeeded({ speed, radius: 1.5, bank: beta })).toBeCloseTo(mu, 11);
      }),
    );
  });

  it('is not needed on a bank that is made for the speed, which is the lean of the turn', () => {
    expect(frictionNeeded({ ...turn, bank: leanOfTurn(turn) })).toBeCloseTo(0, 14);
    expect(slideSpeed({ radius: 1.5, friction: 0, bank: leanOfTurn(turn) })).toBeCloseTo(1.2, 13);
  });

  it('on a steep bank never gives way', () => {
    expect(() => slideSpeed({ radius: 1.5, friction: 1, bank: Math.PI / 4 + 0.01 })).toThrow('never slides');
  });
});

describe('tipping on two tracks', () => {
  it('comes before sliding where the friction is more than the stability factor', () => {
    const vehicle = { track: 0.18, height: 0.145, radius: 1.5 };
    const { stabilityFactor, speed, acceleration } = tipOver(vehicle);
    expect(slideSpeed({ radius: 1.5, friction: stabilityFactor })).toBeCloseTo(speed, 13);
    expect(turnAcceleration({ speed, radius: 1.5 })).toBeCloseTo(acceleration, 13);
    expect(slideSpeed({ radius: 1.5, friction: 0.9 })).toBeGreaterThan(speed);
  });
});
