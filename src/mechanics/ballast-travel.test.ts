import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestLean, rightingMoment } from './ballast-limits.ts';
import { armMomentRate, reactionMoment, slideMomentRate, wrongWayZero } from './ballast-motion.ts';
import { armPosition } from './ballast-position.ts';
import { largestLeanOverTravel, payloadOffset, tiltedArmPosition } from './ballast-travel.ts';

const vehicle = { ballastMass: 0.59, pivotHeight: 0.2, armLength: 0.115, firstMomentWithout: 0.11548 };
const hanging = { ...vehicle, direction: -1, travel: Math.PI / 2 };

/** Lean that the arm holds at one angle, by the calculation for a given offset and height. */
function leanAt(arm: typeof hanging & { readonly pivotTilt?: number }, angle: number): number {
  const { offset, height } = tiltedArmPosition({ ...arm, angle });
  return largestLean({
    ballastMass: arm.ballastMass,
    ballastOffset: offset,
    ballastHeight: height,
    firstMomentWithout: arm.firstMomentWithout,
  });
}

describe('an arm with a tilted pivot', () => {
  it('is the plain arm where the pivot lies fore and aft', () => {
    const arm = { pivotHeight: 0.2, armLength: 0.115, direction: 1, angle: 0.6 };
    expect(tiltedArmPosition(arm)).toMatchObject(armPosition(arm));
    expect(tiltedArmPosition(arm).forward).toBe(0);
  });

  it('keeps its ballast at one height where the pivot stands upright', () => {
    for (const angle of [-1, 0, 0.7]) {
      const { height } = tiltedArmPosition({ ...hanging, pivotTilt: Math.PI / 2, angle });
      expect(height).toBeCloseTo(0.2, 15);
    }
  });

  it('keeps the ballast at arm’s length from the pivot', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        (angle, pivotTilt) => {
          const { offset, height, forward } = tiltedArmPosition({ ...hanging, pivotTilt, angle });
          expect(Math.hypot(offset, height - 0.2, forward)).toBeCloseTo(0.115, 14);
        },
      ),
    );
  });
});

describe('the largest lean over the travel', () => {
  it('is the largest of all arm angles, for any arm', () => {
    const arm = fc.record({
      ballastMass: fc.double({ min: 0.01, max: 3, noNaN: true }),
      pivotHeight: fc.double({ min: 0.05, max: 0.4, noNaN: true }),
      armLength: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
      direction: fc.constantFrom(1, -1),
      pivotTilt: fc.double({ min: 0, max: Math.PI / 2, noNaN: true }),
      travel: fc.double({ min: 0.05, max: Math.PI / 2, noNaN: true }),
      firstMomentWithout: fc.double({ min: 0.05, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(arm, (a) => {
        const lowest = a.firstMomentWithout + a.ballastMass * (a.pivotHeight - a.armLength);
        fc.pre(lowest > 0.01);
        const { lean, angle } = largestLeanOverTravel(a);
        expect(leanAt(a, angle)).toBeCloseTo(lean, 12);
        for (let i = 0; i <= 200; i++) {
          expect(leanAt(a, (a.travel * i) / 200)).toBeLessThanOrEqual(lean + 1e-12);
        }
      }),
    );
  });

  it('lies at the end of the travel for an upright arm, and short of it for a hanging one that swings far', () => {
    expect(largestLeanOverTravel({ ...hanging, direction: 1 }).angle).toBe(Math.PI / 2);
    const { lean, angle } = largestLeanOverTravel(hanging);
    expect(angle).toBeCloseTo(Math.acos((0.59 * 0.115) / (0.11548 + 0.59 * 0.2)), 14);
    expect(lean).toBeGreaterThan(leanAt(hanging, Math.PI / 2));
  });

  it('is not asked where the vehicle would hang', () => {
    expect(() => largestLeanOverTravel({ ...hanging, pivotHeight: 0.05, firstMomentWithout: 0.01 })).toThrow(
      'first moment with the arm centred',
    );
  });
});

describe('a payload off the centre line', () => {
  it('balances the ballast where no reserve is asked for', () => {
    const offset = payloadOffset({ payloadMass: 0.25, ballastMass: 0.59, ballastOffset: 0.08 });
    expect(0.25 * offset).toBeCloseTo(0.59 * 0.08, 15);
  });

  it('loses the reserve that a lean would take', () => {
    const load = { payloadMass: 0.25, ballastMass: 0.59, ballastOffset: 0.08, firstMoment: 0.31 };
    const lean = 0.05;
    const offset = payloadOffset({ ...load, reserve: lean });
    // About the ground line at that lean: ballast rights, payload and toppling masses tip.
    const tipping = 0.31 * Math.sin(lean) + 0.25 * offset * Math.cos(lean);
    expect(tipping).toBeCloseTo(0.59 * 0.08 * Math.cos(lean), 14);
    expect(payloadOffset({ ...load, reserve: 0.2 })).toBeLessThan(0);
  });
});

describe('the ballast in motion', () => {
  it('builds its moment up at the slope of the righting moment', () => {
    const moment = (angle: number): number =>
      rightingMoment({ ballastMass: 0.59, ballastOffset: 0.115 * Math.sin(angle) });
    const [angle, speed, step] = [0.5, 6, 1e-6];
    const slope = ((moment(angle + step) - moment(angle - step)) / (2 * step)) * speed;
    expect(armMomentRate({ ballastMass: 0.59, armLength: 0.115, speed, angle })).toBeCloseTo(slope, 8);
    expect(slideMomentRate({ ballastMass: 0.59, speed: 0.115 * speed })).toBeCloseTo(
      armMomentRate({ ballastMass: 0.59, armLength: 0.115, speed }),
      15,
    );
  });

  it('at the wrong-way zero righting and reaction cancel', () => {
    const ballastHeight = 0.315;
    const rate = wrongWayZero({ ballastHeight });
    // A ballast that moves as e^(z t): its weight rights with m g e, its inertia tips with m z_b z² e.
    const offset = 0.01;
    const righting = rightingMoment({ ballastMass: 0.59, ballastOffset: offset });
    const tipping = reactionMoment({ ballastMass: 0.59, ballastHeight, acceleration: rate ** 2 * offset });
    expect(tipping).toBeCloseTo(righting, 14);
  });

  it('the higher the ballast, the slower the loop has to be; below the line there is no wrong way', () => {
    expect(wrongWayZero({ ballastHeight: 0.4 })).toBeLessThan(wrongWayZero({ ballastHeight: 0.1 }));
    expect(() => wrongWayZero({ ballastHeight: 0 })).toThrow('ballast height is 0 m');
  });
});
