import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { armHoldingMoment, slideHoldingForce, stopToStopTime } from './actuator.ts';
import { armPosition } from './ballast-position.ts';
import { standardGravity } from './gravity.ts';

const drive = { ballastMass: 0.59, armLength: 0.115, direction: 1, travel: Math.PI / 4, lean: 0.17 };

/** Weight times horizontal distance from the pivot, the arm placed in a vehicle that is turned by its lean. */
function momentAt(direction: number, angle: number, lean: number): number {
  const { offset, height } = armPosition({ pivotHeight: 0, armLength: drive.armLength, direction, angle });
  return drive.ballastMass * standardGravity * Math.abs(offset * Math.cos(lean) - height * Math.sin(lean));
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** The worst of a fine grid over the travel and the lean to either side. */
function worstOfGrid(direction: number, travel: number, lean: number): number {
  let worst = 0;
  for (let i = -60; i <= 60; i++) {
    for (let j = -60; j <= 60; j++) {
      worst = Math.max(worst, momentAt(direction, (travel * i) / 60, (lean * j) / 60));
    }
  }
  return worst;
}

describe('moment to hold the arm', () => {
  it('is the worst over every angle and lean, for an upright and a hanging arm alike', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(1, -1),
        fc.nat({ max: 90 }).map(radians),
        fc.nat({ max: 89 }).map(radians),
        (direction, travel, lean) => {
          const held = armHoldingMoment({ ...drive, direction, travel, lean });
          const grid = worstOfGrid(direction, travel, lean);
          expect(held).toBeGreaterThanOrEqual(grid * (1 - 1e-12));
          expect(held).toBeLessThan(grid * 1.002 + 1e-12);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('an upright arm meets it on the side that the vehicle leans to, a hanging one on the other', () => {
    // Angle and lean are counted in opposite senses: a positive lean with a negative angle is the same side.
    const { travel, lean } = drive;
    expect(momentAt(1, -travel, lean)).toBeCloseTo(armHoldingMoment(drive), 12);
    expect(momentAt(-1, travel, lean)).toBeCloseTo(armHoldingMoment({ ...drive, direction: -1 }), 12);
  });

  it('grows no further once travel and lean together reach 90°', () => {
    const level = armHoldingMoment({ ...drive, travel: Math.PI / 2, lean: 0 });
    expect(level).toBeCloseTo(0.59 * standardGravity * 0.115, 12);
    expect(armHoldingMoment({ ...drive, travel: 1.2, lean: 1 })).toBe(level);
  });

  it('refuses a travel beyond 90° and a vehicle that lies flat', () => {
    expect(() => armHoldingMoment({ ...drive, travel: 1.6 })).toThrow('arm travel is 91.6732°');
    expect(() => armHoldingMoment({ ...drive, lean: Math.PI / 2 })).toThrow(
      'lean is 90°, but it has to be less than 90°',
    );
    expect(() => armHoldingMoment({ ...drive, direction: 0.5 })).toThrow('1 (upright) or −1 (hanging)');
  });
});

describe('slide and speed', () => {
  it('an upright vehicle needs no force to hold the slide', () => {
    expect(slideHoldingForce({ ballastMass: 0.9, lean: 0 })).toBe(0);
    expect(slideHoldingForce({ ballastMass: 0.9, lean: Math.PI / 6 })).toBeCloseTo(
      0.45 * standardGravity,
      12,
    );
  });

  it('the whole stroke is twice the travel', () => {
    expect(stopToStopTime({ travel: 0.06, noLoadSpeed: 0.4 })).toBeCloseTo(0.3, 14);
    expect(() => stopToStopTime({ travel: 0.06, noLoadSpeed: 0 })).toThrow('no-load speed of the actuator');
  });
});
