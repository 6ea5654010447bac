import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hangLines, incliningHeight } from './hanging.ts';
import { firstMoment, totalMass } from './mass-sums.ts';
import { balanceEdge, boardDistance, leftAndRight, missingMass, raisedEnd, twoAxles } from './weighing.ts';

const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });

describe('two axles', () => {
  it('find the centre of gravity from the readings that it makes', () => {
    fc.assert(
      fc.property(share, (at) => {
        const { totalMass: mass, position } = twoAxles({
          frontReading: 2 * at,
          rearReading: 2 * (1 - at),
          wheelbase: 0.3,
        });
        expect(mass).toBeCloseTo(2, 14);
        expect(position).toBeCloseTo(0.3 * at, 14);
      }),
    );
  });

  it('give nothing where nothing is weighed', () => {
    expect(() => twoAxles({ frontReading: 0, rearReading: 0, wheelbase: 0.3 })).toThrow(
      'sum of the readings',
    );
  });
});

describe('left and right', () => {
  it('a wheel on the centre line carries weight but no side', () => {
    const scales = { leftReading: 0.6, rightReading: 0.4, track: 0.2 };
    expect(leftAndRight(scales)).toBeCloseTo(0.02, 15);
    expect(leftAndRight({ ...scales, centreReading: 1 })).toBeCloseTo(0.01, 15);
  });
});

describe('one end raised', () => {
  /** Readings under the axle that stays down, from the centre of gravity, by moments about the raised one. */
  function readings(wheelbase: number, mass: number, ahead: number, above: number, raise: number) {
    const tilt = Math.asin(raise / wheelbase);
    const level = (mass * ahead) / wheelbase;
    const leaned = (mass * (ahead * Math.cos(tilt) + above * Math.sin(tilt))) / (wheelbase * Math.cos(tilt));
    return { levelReading: level, raisedReading: leaned };
  }

  it('finds the height that made the readings, whatever the raise', () => {
    fc.assert(
      fc.property(share, share, share, (ahead, above, raise) => {
        const made = readings(0.3, 0.955, 0.3 * ahead, 0.2 * above, 0.29 * raise);
        const { height } = raisedEnd({
          wheelbase: 0.3,
          totalMass: 0.955,
          raise: 0.29 * raise,
          axleHeight: 0.03,
          ...made,
        });
        expect(height).toBeCloseTo(0.03 + 0.2 * above, 10);
      }),
    );
  });

  it('a gram of reading spoils a low raise more than a high one', () => {
    const error = (raise: number): number => {
      const made = readings(0.3, 0.955, 0.16, 0.115, raise);
      const rest = { wheelbase: 0.3, totalMass: 0.955, raise, axleHeight: 0.03 };
      const wrong = raisedEnd({ ...rest, ...made, raisedReading: made.raisedReading + 0.001 });
      return wrong.height - raisedEnd({ ...rest, ...made }).height;
    };
    expect(error(0.03)).toBeGreaterThan(2 * error(0.1));
  });

  it('refuses a raise as long as the wheelbase', () => {
    const rest = { wheelbase: 0.3, totalMass: 1, levelReading: 0.5, raisedReading: 0.6, axleHeight: 0 };
    expect(() => raisedEnd({ ...rest, raise: 0.3 })).toThrow('it has to be less than the wheelbase, 0.3 m');
  });
});

describe('board and edge', () => {
  it('a board weighed alone gives the distance 0 to nothing', () => {
    expect(boardDistance({ boardLength: 0.5, totalMass: 1, emptyReading: 0.3, fullReading: 0.3 })).toBe(0);
  });

  it('agree on where the centre of gravity is', () => {
    const board = boardDistance({
      boardLength: 0.5,
      totalMass: 0.955,
      emptyReading: 0.31,
      fullReading: 0.31 + (0.955 * 0.145) / 0.5,
    });
    const edge = balanceEdge({ totalMass: 0.955, counterMass: (0.955 * 0.145) / 0.2, counterDistance: 0.2 });
    expect(board).toBeCloseTo(0.145, 14);
    expect(edge).toBeCloseTo(0.145, 14);
    expect(balanceEdge({ totalMass: 0.955 })).toBe(0);
  });
});

describe('a part that the table forgot', () => {
  it('is found with its mass and its height', () => {
    const known = { masses: [0.4, 0.3], heights: [0.1, 0.2] };
    const whole = { masses: [...known.masses, 0.05], heights: [...known.heights, 0.31] };
    const weighedMass = totalMass(whole);
    const { mass, height } = missingMass({
      weighedMass,
      weighedHeight: firstMoment(whole) / weighedMass,
      summedMass: totalMass(known),
      summedFirstMoment: firstMoment(known),
    });
    expect(mass).toBeCloseTo(0.05, 12);
    expect(height).toBeCloseTo(0.31, 10);
  });

  it('counts backwards where a part stands in the table twice', () => {
    const { mass, height } = missingMass({
      weighedMass: 0.7,
      weighedHeight: 0.1,
      summedMass: 0.8,
      summedFirstMoment: 0.07 + 0.1 * 0.25,
    });
    expect(mass).toBeCloseTo(-0.1, 14);
    expect(height).toBeCloseTo(0.25, 12);
  });

  it('cannot be named where the masses agree', () => {
    expect(() =>
      missingMass({ weighedMass: 1, weighedHeight: 0.2, summedMass: 1, summedFirstMoment: 0.1 }),
    ).toThrow('no missing mass explains');
  });
});

describe('plumb lines', () => {
  it('drawn through the centre of gravity meet in it, from wherever they come', () => {
    const angle = fc.double({ min: -3, max: 3, noNaN: true });
    const place = fc.double({ min: -0.5, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(place, place, angle, angle, place, place, (x, z, first, second, s, t) => {
        fc.pre(Math.abs(Math.sin(first - second)) > 0.05);
        const { forward, height } = hangLines({
          firstForward: x + s * Math.sin(first),
          firstHeight: z + s * Math.cos(first),
          firstAngle: first,
          secondForward: x + t * Math.sin(second),
          secondHeight: z + t * Math.cos(second),
          secondAngle: second,
        });
        expect(forward).toBeCloseTo(x, 11);
        expect(height).toBeCloseTo(z, 11);
      }),
    );
  });

  it('that are one line are refused', () => {
    const line = { firstForward: 0, firstHeight: 0, firstAngle: 0.2, secondForward: 1, secondHeight: 0 };
    expect(() => hangLines({ ...line, secondAngle: 0.2 + Math.PI })).toThrow('the lines have to cross');
  });
});

describe('a known mass moved across a hung vehicle', () => {
  it('leans it less, the farther its centre of gravity hangs from the axis', () => {
    const lean = (height: number): number => Math.atan((0.05 * 0.2) / (0.955 * height));
    for (const height of [0.05, 0.145, 0.4]) {
      expect(
        incliningHeight({ movedMass: 0.05, move: 0.2, totalMass: 0.955, lean: lean(height) }),
      ).toBeCloseTo(height, 12);
    }
    expect(lean(0.4)).toBeLessThan(lean(0.05));
    expect(() => incliningHeight({ movedMass: 0.05, move: 0.2, totalMass: 1, lean: 0 })).toThrow(
      'lean of the hung vehicle',
    );
  });
});
