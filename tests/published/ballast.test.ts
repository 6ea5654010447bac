/**
 * The figures that builders of such vehicles work by hand, and what the hand sum misses. The hand figures themselves stand
 * among the published checks, as common practice without a source.
 */
import { describe, expect, it } from 'vitest';
import {
  armPosition,
  crossSlope,
  firstMoment,
  largestLean,
  largestLeanByHand,
  lateralLimit,
  rightingMoment,
  slidePosition,
  standardGravity,
  stopToStopTime,
} from '../../src/mechanics/index.ts';
import { expectPrinted } from './printed.ts';

const degrees = (angle: number): number => (angle * 180) / Math.PI;
const radians = (angle: number): number => (angle * Math.PI) / 180;

/*
 * Common practice, no source. A vehicle of 955 g all told, its centre of gravity at 145 mm, carries 73 g on a servo arm
 * of 115 mm that swings ±45°; then the 73 g are exchanged for 590 g.
 */
const ARM = { armLength: 0.115, angle: Math.PI / 4 };
const vehicle = { totalMass: 0.955, centreOfGravityHeight: 0.145 };
const offsetAtEnd = armPosition({ ...ARM, pivotHeight: 0, direction: 1 }).offset;
const momentOf = (ballastMass: number): number => rightingMoment({ ballastMass, ballastOffset: offsetAtEnd });
const byHand = (ballastMass: number): number =>
  largestLeanByHand({ ...vehicle, rightingMoment: momentOf(ballastMass) });

/*
 * What the hand sum misses. The arm stands up from a pivot at 200 mm. The 955 g at 145 mm were weighed with the light
 * ballast on the arm and the arm centred, that is with 73 g at 200 + 115 = 315 mm. Taking them out leaves 882 g with a
 * first moment of 0.955 × 0.145 − 0.073 × 0.315 = 0.11548 kg·m; that rest stays the same whatever is put on the arm.
 *
 * With 590 g on the arm the total is 1.472 kg, not 955 g, and at the end of the travel the ballast stands at
 * 200 + 115 cos 45° = 281 mm, so that the first moment is 0.11548 + 0.590 × 0.28132 = 0.28146 kg·m, twice what the hand
 * sum takes. The balance about the ground line at the limit is
 *
 *     (M₀ + m_b z_b) sin φ = m_b e cos φ,   tan φ = 0.590 × 0.08132 / 0.28146 = 0.17046,   φ = 9.7°.
 *
 * The heavier ballast rights eight times as hard and is lifted high to do it: of the 20° by hand less than half is there.
 */
describe('what the hand sum misses', () => {
  const pivotHeight = 0.2;
  const upright = { ...ARM, pivotHeight, direction: 1 };
  const light = 0.073;
  const firstMomentWithout =
    firstMoment({ masses: [vehicle.totalMass], heights: [vehicle.centreOfGravityHeight] }) -
    firstMoment({ masses: [light], heights: [armPosition({ ...upright, angle: 0 }).height] });
  const exact = (ballastMass: number): number => {
    const { offset, height } = armPosition(upright);
    return largestLean({ ballastMass, ballastOffset: offset, ballastHeight: height, firstMomentWithout });
  };

  it('the light ballast holds 2.5° exactly as by hand', () => {
    expectPrinted(degrees(exact(light)), '2.5');
  });

  it('590 g hold 9.7°, not 20°', () => {
    expectPrinted(degrees(exact(0.59)), '9.7');
  });

  it('the hand sum with the true total and height comes nearer, and still parts', () => {
    const firstMomentCentred = firstMomentWithout + 0.59 * armPosition({ ...upright, angle: 0 }).height;
    const totalMass = vehicle.totalMass - light + 0.59;
    const hand = largestLeanByHand({
      rightingMoment: momentOf(0.59),
      totalMass,
      centreOfGravityHeight: firstMomentCentred / totalMass,
    });
    expectPrinted(degrees(hand), '9.16'); // asin(0.047977 / 0.301330)
    expect(hand).toBeLessThan(exact(0.59)); // the ballast comes down as it swings out: the hand sum leaves that out
  });

  it('by hand more ballast always holds more; in truth no ballast on this arm holds more than e/z_b', () => {
    const { offset, height } = armPosition(upright);
    expect(exact(0.59)).toBeGreaterThan(exact(light));
    expect(exact(1000)).toBeCloseTo(Math.atan(offset / height), 3);
    expect(() => byHand(1.8)).toThrow('the hand form holds up to m g h');
  });

  it('the lateral limit and the slope follow the exact lean', () => {
    const lean = exact(0.59);
    expectPrinted(lateralLimit({ largestLean: lean }) / standardGravity, '0.17');
    expectPrinted(degrees(crossSlope({ largestLean: lean, reserve: radians(2) })), '7.7');
  });

  it('the same ballast low down on a slide holds far more', () => {
    const { offset, height } = slidePosition({ slideHeight: 0.06, travel: offsetAtEnd });
    const lean = largestLean({
      ballastMass: 0.59,
      ballastOffset: offset,
      ballastHeight: height,
      firstMomentWithout,
    });
    expectPrinted(degrees(lean), '17.6'); // atan(0.047977 / 0.150880)
  });

  it('a servo of 0.15 s per 60° needs 0.225 s from stop to stop', () => {
    const noLoadSpeed = radians(60) / 0.15;
    expectPrinted(stopToStopTime({ travel: ARM.angle, noLoadSpeed }), '0.225');
  });
});
