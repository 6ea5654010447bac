/**
 * Ballast, lateral limits and drives against published examples; then the figures that builders of such vehicles work
 * by hand, and what the hand sum misses.
 */
import { describe, expect, it } from 'vitest';
import {
  armHoldingMoment,
  armPosition,
  crossSlope,
  firstMoment,
  largestLean,
  largestLeanByHand,
  lateralLimit,
  rightingMoment,
  slideHoldingForce,
  slidePosition,
  standardGravity,
  stopToStopTime,
  toppling,
  turnAcceleration,
  turnRadius,
} from '../../src/mechanics/index.ts';
import { expectPrinted, type PublishedCheck, solveRising } from './printed.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const NICHOLLS = 'Nicholls’s Seamanship and Nautical Knowledge, exercises on stability';
const TAYAL = 'A. K. Tayal, Engineering Mechanics, ch. 15 (textbook companion)';

const degrees = (angle: number): number => (angle * 180) / Math.PI;
const radians = (angle: number): number => (angle * Math.PI) / 180;
const kmh = (speed: number): number => speed / 3.6;

/** Lean of a steady turn: the one at which the lateral limit is the turn's acceleration, g as the source has it. */
function leanOfTurn(speed: number, radius: number, gravity: number): number {
  const acceleration = turnAcceleration({ speed, radius }) * (standardGravity / gravity);
  return degrees(solveRising((lean) => lateralLimit({ largestLean: lean }), acceleration, 0, 1.57));
}

/** Speed at which a turn of some radius asks for an acceleration. */
const speedOfTurn = (radius: number, acceleration: number): number =>
  solveRising((speed) => turnAcceleration({ speed, radius }), acceleration, 0, 1000);

/**
 * Heel of a ship from a weight moved across it. The balance of moments is that of a vehicle on the ballast turned upside
 * down: the ship hangs from its metacentre, and heights are counted downwards from there.
 */
const heelOfShip = (
  weight: number,
  across: number,
  displacement: number,
  metacentricHeight: number,
): number =>
  largestLean({
    ballastMass: weight,
    ballastOffset: across,
    ballastHeight: 0,
    firstMomentWithout: displacement * metacentricHeight,
  });

const checks: readonly PublishedCheck[] = [
  {
    id: 'inclining experiment, 100 tons',
    source: `${NICHOLLS}, no. 18 (GM 2.37 ft for a heel of 8°)`,
    what: 'heel from 100 tons moved 30 ft in a ship of 9000, °',
    printed: '8',
    computed: () => degrees(heelOfShip(100, 30, 9000, 2.37)),
  },
  {
    id: 'inclining experiment, 100 tons, GM',
    source: `${NICHOLLS}, no. 18`,
    what: 'metacentric height for a heel of 8°, ft',
    printed: '2.37',
    computed: () =>
      1 / solveRising((inverse) => heelOfShip(100, 30, 9000, 1 / inverse), radians(8), 0.01, 10),
  },
  {
    id: 'inclining experiment, 3 tons',
    source: `${NICHOLLS}, no. 19`,
    what: 'metacentric height for 2 in on a plumb line of 29 ft 6 in, ft',
    printed: '8.17',
    computed: () =>
      1 /
      solveRising((inverse) => heelOfShip(3, 40, 2600, 1 / inverse), Math.atan(2 / (29.5 * 12)), 0.01, 10),
  },
  {
    id: 'speed at which a car overturns',
    source: `${TAYAL}, example 15-20`,
    what: 'speed on 100 m, centre 1 m high, track 1.5 m, g 9.81, m/s',
    printed: '27.12',
    computed: () => {
      // The whole mass stands 0.75 m to the side of the line that it would tip about.
      const lean = largestLean({
        ballastMass: 1,
        ballastOffset: 0.75,
        ballastHeight: 1,
        firstMomentWithout: 0,
      });
      return speedOfTurn(100, lateralLimit({ largestLean: lean }) * (9.81 / standardGravity));
    },
  },
  {
    id: 'car on a flat curve, force',
    source: `${OSUP}, example 6.15`,
    what: 'sideways force on 900 kg, N',
    printed: '1125',
    computed: () => 900 * turnAcceleration({ speed: 25, radius: 500 }),
  },
  {
    id: 'car on a flat curve, friction',
    source: `${OSUP}, example 6.15`,
    what: 'friction that the turn needs',
    printed: '0.13',
    computed: () => turnAcceleration({ speed: 25, radius: 500 }) / 9.8,
  },
  {
    id: 'car on a country road',
    source: `${OSUP}, section 6.3, check your understanding`,
    what: 'friction that 96.8 km/h on 182.9 m needs',
    printed: '0.40',
    computed: () => turnAcceleration({ speed: kmh(96.8), radius: 182.9 }) / 9.8,
  },
  {
    id: 'banked curve',
    source: `${OSUP}, example 6.16`,
    what: 'speed on 100 m banked 31.0°, g 9.80, m/s',
    printed: '24.3',
    computed: () => speedOfTurn(100, lateralLimit({ largestLean: radians(31) }) * (9.8 / standardGravity)),
  },
  {
    id: 'banking of a railway',
    source: `${OSUP}, section 6.3, problem`,
    what: 'angle for 105 km/h on 1.20 km, g 9.80, °',
    printed: '4.14',
    computed: () => leanOfTurn(kmh(105), 1200, 9.8),
  },
  {
    id: 'bobsled, acceleration',
    source: `${OSUP}, section 6.3, problem`,
    what: 'acceleration on a bank of 75.0°, m/s²',
    printed: '36.6',
    computed: () => lateralLimit({ largestLean: radians(75) }),
  },
  {
    id: 'bobsled, radius',
    source: `${OSUP}, section 6.3, problem`,
    what: 'radius at 30.0 m/s, g 9.80, m',
    printed: '24.6',
    computed: () =>
      turnRadius({
        lateralAcceleration: lateralLimit({ largestLean: radians(75) }) * (9.8 / standardGravity),
        speed: 30,
      }),
  },
  {
    id: 'ideal speed of a bank',
    source: `${OSUP}, section 6.3, problem`,
    what: 'speed on 100 m banked 15.0°, g 9.80, m/s',
    printed: '16.2',
    computed: () => speedOfTurn(100, lateralLimit({ largestLean: radians(15) }) * (9.8 / standardGravity)),
  },
  {
    id: 'car about to skid',
    source: `${TAYAL}, example 15-18`,
    what: 'speed on 50 m with friction 0.15, g 9.81, m/s',
    printed: '8.58',
    computed: () => speedOfTurn(50, 0.15 * 9.81),
  },
  {
    id: 'forearm',
    source: `${OSUP}, example 12.4`,
    what: 'pull at 1.5 in that holds 50 lb at 13.0 in, lb',
    printed: '433.3',
    computed: () => forearm() / (1.5 * 0.0254) / (0.45359237 * standardGravity),
  },
  {
    id: 'skier on a slope',
    source: 'OpenStax, College Physics, skier of 60.0 kg on 25°; answer seen second-hand',
    what: 'force along the slope over the mass, m/s²',
    printed: '4.14',
    computed: () => slideHoldingForce({ ballastMass: 60, lean: radians(25) }) / 60,
  },
];

/** An arm held level is an upright arm at the end of a travel of 90°. */
function forearm(): number {
  return armHoldingMoment({
    ballastMass: 50 * 0.45359237,
    armLength: 13 * 0.0254,
    direction: 1,
    travel: Math.PI / 2,
    lean: 0,
  });
}

describe('ballast and turns as published', () => {
  it.each(checks)('$id: $what, $printed ($source)', ({ computed, printed }) => {
    expectPrinted(computed(), printed);
  });
});

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

const practice: readonly PublishedCheck[] = [
  {
    id: '73 g',
    source: 'common practice, no source',
    what: 'righting moment on 115 mm at 45°, N·m',
    printed: '0.058',
    computed: () => momentOf(0.073),
  },
  {
    id: '955 g at 145 mm',
    source: 'common practice, no source',
    what: 'toppling moment over the sine of the lean, N·m',
    printed: '1.36',
    computed: () => {
      const moment = firstMoment({ masses: [vehicle.totalMass], heights: [vehicle.centreOfGravityHeight] });
      return toppling({ firstMoment: moment, rollInertia: 1 }).stiffness;
    },
  },
  {
    id: '73 g',
    source: 'common practice, no source',
    what: 'lean held, by hand, °',
    printed: '2.5',
    computed: () => degrees(byHand(0.073)),
  },
  {
    id: '590 g',
    source: 'common practice, no source',
    what: 'righting moment on the same arm, N·m',
    printed: '0.47',
    computed: () => momentOf(0.59),
  },
  {
    id: '590 g',
    source: 'common practice, no source',
    what: 'lean held, by hand, °',
    printed: '20',
    computed: () => degrees(byHand(0.59)),
  },
  {
    id: '590 g',
    source: 'common practice, no source: about a third of g',
    what: 'g over the moment by hand per mass and height: one part in',
    printed: '3',
    computed: () => (standardGravity * vehicle.totalMass * vehicle.centreOfGravityHeight) / momentOf(0.59),
  },
  {
    id: '590 g',
    source: 'common practice, no source: about a third of g',
    what: 'g over the lateral limit of the lean by hand: one part in',
    printed: '3',
    computed: () => standardGravity / lateralLimit({ largestLean: byHand(0.59) }),
  },
];

describe('the figures that are worked by hand', () => {
  it.each(practice)('$id: $what, $printed ($source)', ({ computed, printed }) => {
    expectPrinted(computed(), printed);
  });
});

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
