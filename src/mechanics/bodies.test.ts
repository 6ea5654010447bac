import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boxRollInertia,
  cylinderInertiaAcrossAxis,
  cylinderInertiaAlongAxis,
  rodInertiaAcrossAxis,
  tubeInertiaAcrossAxis,
  tubeInertiaAlongAxis,
} from './bodies.ts';

const size = fc.double({ min: 0.01, max: 1, noNaN: true });
const share = fc.double({ min: 0, max: 0.95, noNaN: true });

describe('bodies', () => {
  it('a tube is the full cylinder less the bored-out one', () => {
    fc.assert(
      fc.property(size, share, size, (diameter, boreShare, length) => {
        const bore = boreShare * diameter;
        const massOf = (d: number) => (Math.PI / 4) * 7850 * d * d * length;
        const mass = massOf(diameter) - massOf(bore);
        const less = (f: (d: number) => number) => f(diameter) - (bore > 0 ? f(bore) : 0);
        const along = less((d) => cylinderInertiaAlongAxis({ mass: massOf(d), diameter: d }));
        const across = less((d) => cylinderInertiaAcrossAxis({ mass: massOf(d), diameter: d, length }));
        expect(tubeInertiaAlongAxis({ mass, diameter, bore }) / along).toBeCloseTo(1, 9);
        expect(tubeInertiaAcrossAxis({ mass, diameter, bore, length }) / across).toBeCloseTo(1, 9);
      }),
    );
  });

  it('a long cylinder is a stack of short ones, moved by the parallel-axis theorem', () => {
    const whole = cylinderInertiaAcrossAxis({ mass: 2, diameter: 0.1, length: 0.6 });
    const half = cylinderInertiaAcrossAxis({ mass: 1, diameter: 0.1, length: 0.3 });
    expect(2 * (half + 1 * 0.15 ** 2)).toBeCloseTo(whole, 14);
  });

  it('a box is a stack of four quarters', () => {
    const whole = boxRollInertia({ mass: 4, width: 0.2, height: 0.3 });
    const quarter = boxRollInertia({ mass: 1, width: 0.1, height: 0.15 });
    expect(4 * (quarter + 0.05 ** 2 + 0.075 ** 2)).toBeCloseTo(whole, 14);
  });

  it('a thin disc has twice the inertia about its axis that it has about a diameter', () => {
    const disc = { mass: 0.3, diameter: 0.1 };
    const across = cylinderInertiaAcrossAxis({ ...disc, length: 0 });
    expect(cylinderInertiaAlongAxis(disc)).toBeCloseTo(2 * across, 16);
  });

  it('a thin ring has all its mass at the rim', () => {
    const ring = tubeInertiaAlongAxis({ mass: 0.3, diameter: 0.1, bore: 0.1 * (1 - 1e-12) });
    expect(ring).toBeCloseTo(0.3 * 0.05 ** 2, 12);
  });

  it('a rod is a box of no width, and nearly a long cylinder', () => {
    const rod = rodInertiaAcrossAxis({ mass: 0.02, length: 0.3 });
    expect(boxRollInertia({ mass: 0.02, width: 0, height: 0.3 })).toBeCloseTo(rod, 16);
    const thick = cylinderInertiaAcrossAxis({ mass: 0.02, diameter: 0.075, length: 0.3 });
    expect(thick / rod - 1).toBeCloseTo(0.047, 3);
  });

  it('a bore that leaves no wall is refused', () => {
    expect(() => tubeInertiaAlongAxis({ mass: 1, diameter: 0.1, bore: 0.1 })).toThrow(
      'bore diameter is 0.1 m, but it has to be less than the outer diameter, 0.1 m',
    );
    expect(() => tubeInertiaAlongAxis({ mass: 1, diameter: 0.1, bore: 0.2 })).toThrow('bore diameter');
    expect(() => cylinderInertiaAlongAxis({ mass: 1, diameter: 0 })).toThrow('outer diameter');
    expect(() => boxRollInertia({ mass: -1, width: 0.1, height: 0.1 })).toThrow('mass');
  });
});
