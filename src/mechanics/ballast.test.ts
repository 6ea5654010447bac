import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestLean, largestLeanByHand, rightingMoment } from './ballast-limits.ts';
import { armPosition, slidePosition } from './ballast-position.ts';
import { standardGravity } from './gravity.ts';
import { crossSlope, lateralLimit, turnAcceleration, turnRadius } from './lateral.ts';

const arm = fc.record({
  pivotHeight: fc.double({ min: 0.1, max: 0.4, noNaN: true }),
  armLength: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
  direction: fc.constantFrom(1, -1),
  angle: fc.double({ min: 0, max: Math.PI / 2, noNaN: true }),
});
const vehicle = fc.record({
  ballastMass: fc.double({ min: 0.01, max: 2, noNaN: true }),
  firstMomentWithout: fc.double({ min: 0.5, max: 3, noNaN: true }),
});

describe('position of the ballast', () => {
  it('stays on the circle about the pivot', () => {
    fc.assert(
      fc.property(arm, (a) => {
        const { offset, height } = armPosition(a);
        expect(Math.hypot(offset, height - a.pivotHeight)).toBeCloseTo(a.armLength, 12);
      }),
    );
  });

  it('an upright arm drops as it swings out, a hanging one rises', () => {
    const at = (direction: number, angle: number) =>
      armPosition({ pivotHeight: 0.2, armLength: 0.1, direction, angle }).height;
    expect(at(1, 0)).toBeCloseTo(0.3, 15);
    expect(at(1, 0.5)).toBeLessThan(at(1, 0));
    expect(at(-1, 0)).toBeCloseTo(0.1, 15);
    expect(at(-1, 0.5)).toBeGreaterThan(at(-1, 0));
  });

  it('a slide keeps its height', () => {
    expect(slidePosition({ slideHeight: 0.08, travel: 0.06 })).toEqual({ offset: 0.06, height: 0.08 });
    expect(slidePosition({ slideHeight: 0.08, travel: 0 })).toEqual({ offset: 0, height: 0.08 });
  });

  it('refuses a travel beyond 90° and a direction that is neither up nor down', () => {
    const good = { pivotHeight: 0.2, armLength: 0.1, direction: 1, angle: 0.5 };
    expect(() => armPosition({ ...good, angle: 1.6 })).toThrow('arm angle is 91.6732°');
    expect(() => armPosition({ ...good, direction: 0 })).toThrow('1 (upright) or −1 (hanging)');
    expect(() => armPosition({ ...good, armLength: 0 })).toThrow('arm length');
    expect(() => slidePosition({ slideHeight: 0.1, travel: -0.01 })).toThrow('slide travel');
  });
});

describe('largest lean', () => {
  it('is where the moments about the ground line balance', () => {
    fc.assert(
      fc.property(arm, vehicle, (a, v) => {
        const { offset, height } = armPosition(a);
        const lean = largestLean({ ...v, ballastOffset: offset, ballastHeight: height });
        const toppling = (v.firstMomentWithout + v.ballastMass * height) * Math.sin(lean);
        const righting = v.ballastMass * offset * Math.cos(lean);
        expect(toppling).toBeCloseTo(righting, 12);
      }),
    );
  });

  it('is where the centre of gravity stands above the ground line', () => {
    const { ballastMass, offset, height, rest } = {
      ballastMass: 0.59,
      offset: 0.08,
      height: 0.28,
      rest: 0.115,
    };
    const lean = largestLean({
      ballastMass,
      ballastOffset: offset,
      ballastHeight: height,
      firstMomentWithout: rest,
    });
    const across = ballastMass * offset;
    const up = rest + ballastMass * height;
    // Turned by the lean, the summed first moments have no sideways part left.
    expect(up * Math.sin(lean) - across * Math.cos(lean)).toBeCloseTo(0, 15);
  });

  it('agrees with the hand sum for a light ballast on a slide at the height of the centre of gravity', () => {
    const firstMoment = 0.955 * 0.145;
    const ballastMass = 1e-4;
    const exact = largestLean({
      ballastMass,
      ballastOffset: 0.08,
      ballastHeight: 0.145,
      firstMomentWithout: firstMoment - ballastMass * 0.145,
    });
    const hand = largestLeanByHand({
      rightingMoment: rightingMoment({ ballastMass, ballastOffset: 0.08 }),
      totalMass: 0.955,
      centreOfGravityHeight: 0.145,
    });
    expect(hand / exact).toBeCloseTo(1, 8);
  });

  it('by hand, on a slide, is never less than the exact one and parts by the cosine', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.9, noNaN: true }), (ratio) => {
        const total = { totalMass: 1, centreOfGravityHeight: 0.2 };
        const exact = largestLean({
          ballastMass: 0.2,
          ballastOffset: ratio,
          ballastHeight: 0.2,
          firstMomentWithout: 0.8 * 0.2,
        });
        const moment = rightingMoment({ ballastMass: 0.2, ballastOffset: ratio });
        const hand = largestLeanByHand({ ...total, rightingMoment: moment });
        expect(hand).toBeGreaterThanOrEqual(exact);
        expect(Math.sin(hand)).toBeCloseTo(Math.tan(exact), 12);
      }),
    );
  });

  it('mass added high up lowers the lean that the same ballast holds; a heavier ballast still raises it', () => {
    const v = { ballastMass: 0.1, ballastOffset: 0.05, ballastHeight: 0.3, firstMomentWithout: 0.1 };
    expect(largestLean({ ...v, firstMomentWithout: 0.1 + 0.5 * 0.4 })).toBeLessThan(largestLean(v));
    expect(largestLean({ ...v, ballastMass: 0.2 })).toBeGreaterThan(largestLean(v));
    // but by less than its righting moment grows: it lifts the centre of gravity as well
    expect(largestLean({ ...v, ballastMass: 0.2 })).toBeLessThan(2 * largestLean(v));
  });

  it('does not depend on the weight of things, only on their proportions', () => {
    const v = { ballastMass: 0.5, ballastOffset: 0.08, ballastHeight: 0.2, firstMomentWithout: 0.15 };
    const doubled = { ...v, ballastMass: 1, firstMomentWithout: 0.3 };
    expect(largestLean(doubled)).toBeCloseTo(largestLean(v), 15);
  });

  it('a hanging arm holds most lean at cos θ = m_b L/(M₀ + m_b h_p), and beyond it the end is on the safe side', () => {
    const drive = { pivotHeight: 0.2, armLength: 0.115, direction: -1 };
    const ballastMass = 0.59;
    const firstMomentWithout = 0.115;
    const lean = (angle: number): number => {
      const { offset, height } = armPosition({ ...drive, angle });
      return largestLean({ ballastMass, ballastOffset: offset, ballastHeight: height, firstMomentWithout });
    };
    const best = Math.acos(
      (ballastMass * drive.armLength) / (firstMomentWithout + ballastMass * drive.pivotHeight),
    );
    for (const step of [-0.2, -0.01, 0.01, 0.2]) expect(lean(best + step)).toBeLessThan(lean(best));
    expect(lean(Math.PI / 2)).toBeLessThan(lean(best));
  });

  it('an upright arm holds more lean the further it swings', () => {
    fc.assert(
      fc.property(arm, vehicle, (a, v) => {
        const lean = (angle: number): number => {
          const { offset, height } = armPosition({ ...a, direction: 1, angle });
          return largestLean({ ...v, ballastOffset: offset, ballastHeight: height });
        };
        expect(lean(a.angle)).toBeGreaterThanOrEqual(lean(0.9 * a.angle));
      }),
    );
  });

  it('refuses a vehicle that hangs', () => {
    expect(() =>
      largestLean({ ballastMass: 1, ballastOffset: 0.1, ballastHeight: -0.3, firstMomentWithout: 0.2 }),
    ).toThrow('first moment with the ballast at the end of its travel');
  });

  it('refuses by hand what the hand form cannot answer, and says how far it goes', () => {
    expect(() => largestLeanByHand({ rightingMoment: 2, totalMass: 1, centreOfGravityHeight: 0.1 })).toThrow(
      'righting moment is 2 N·m, but the hand form holds up to m g h, here 0.9807 N·m',
    );
  });
});

describe('on the road', () => {
  it('the turn of the smallest radius asks for just the limit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1.5, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        (lean, speed) => {
          const limit = lateralLimit({ largestLean: lean });
          const radius = turnRadius({ lateralAcceleration: limit, speed });
          expect(turnAcceleration({ speed, radius }) / limit).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  it('45° of lean is worth one g', () => {
    expect(lateralLimit({ largestLean: Math.PI / 4 })).toBeCloseTo(standardGravity, 12);
  });

  it('a reserve is taken off the slope, and may leave less than nothing', () => {
    expect(crossSlope({ largestLean: 0.1 })).toBe(0.1);
    expect(crossSlope({ largestLean: 0.1, reserve: 0.04 })).toBeCloseTo(0.06, 15);
    expect(crossSlope({ largestLean: 0.03, reserve: 0.04 })).toBeCloseTo(-0.01, 15);
    expect(() => crossSlope({ largestLean: 0.1, reserve: -0.04 })).toThrow('reserve for disturbances');
  });

  it('a vehicle that holds nothing cannot turn', () => {
    expect(() => turnRadius({ lateralAcceleration: 0, speed: 1 })).toThrow('lateral acceleration');
    expect(() => lateralLimit({ largestLean: Math.PI / 2 })).toThrow('largest lean is 90°');
  });
});
