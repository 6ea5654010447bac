import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardGravity } from './gravity.ts';
import { inertiaTensor } from './inertia-tensor.ts';
import { inertiaAboutAxis } from './principal-axes.ts';
import { swingDistance, swingInertia, swingPeriod, twoPivots } from './swing.ts';
import { smallSwingPeriod, swingDamping, undampedPeriod } from './swing-corrections.ts';
import { toppling } from './toppling.ts';
import {
  bifilarInertia,
  planarTensor,
  torsionInertia,
  torsionStiffness,
  trifilarInertia,
} from './wire-pendulum.ts';

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const body = fc.record({ inertia: positive(1e-5, 0.1), mass: positive(0.1, 5), distance: positive(0.01, 1) });

describe('a compound pendulum', () => {
  it('gives back the inertia that made its period', () => {
    fc.assert(
      fc.property(body, ({ inertia, mass, distance }) => {
        const period = swingPeriod({ inertia, mass, distance });
        const { aboutAxis, aboutCentre } = swingInertia({ mass, distance, period });
        expect(Math.abs(aboutCentre - inertia)).toBeLessThan(1e-11 * aboutAxis);
        expect(aboutAxis - aboutCentre).toBeCloseTo(mass * distance ** 2, 12);
      }),
    );
  });

  it('swings 2π times as long as the same vehicle takes to topple e-fold', () => {
    const [inertia, mass, distance] = [0.006, 0.955, 0.145];
    const { timeConstant } = toppling({
      firstMoment: mass * distance,
      rollInertia: inertia + mass * distance ** 2,
    });
    expect(swingPeriod({ inertia, mass, distance })).toBeCloseTo(2 * Math.PI * timeConstant, 14);
  });

  it('refuses a period that not even a point mass has', () => {
    expect(() => swingInertia({ mass: 1, distance: 1, period: 2 })).toThrow('takes 2.006 s or more');
  });

  it('hung from both ends gives centre and inertia whichever axis comes first', () => {
    fc.assert(
      fc.property(body, positive(0.2, 0.8), ({ inertia, mass }, share) => {
        const [first, second] = [share, 1 - share];
        fc.pre(Math.abs(first - second) > 0.05);
        const periods = [first, second].map((distance) => swingPeriod({ inertia, mass, distance }));
        const [firstPeriod = 0, secondPeriod = 0] = periods;
        const found = twoPivots({ mass, separation: 1, firstPeriod, secondPeriod });
        const reversed = twoPivots({
          mass,
          separation: 1,
          firstPeriod: secondPeriod,
          secondPeriod: firstPeriod,
        });
        expect(found.distance).toBeCloseTo(first, 6);
        expect(reversed.distance).toBeCloseTo(second, 6);
        expect(found.inertia).toBeCloseTo(reversed.inertia, 6);
        expect(Math.abs(found.inertia - inertia)).toBeLessThan(1e-5 * mass);
      }),
    );
  });

  it('refuses periods that place the centre outside the axes', () => {
    expect(() => twoPivots({ mass: 1, separation: 1, firstPeriod: 1, secondPeriod: 3 })).toThrow(
      'between the axes',
    );
  });

  it('swings with one period at two distances, whose product is k²', () => {
    const { farther, nearer } = swingDistance({ period: 0.95, radiusOfGyration: 0.08 });
    const at = (distance: number): number => swingPeriod({ inertia: 0.08 ** 2, mass: 1, distance });
    expect(at(farther)).toBeCloseTo(0.95, 12);
    expect(at(nearer)).toBeCloseTo(0.95, 12);
    expect(farther * nearer).toBeCloseTo(0.08 ** 2, 15);
    expect(() => swingDistance({ period: 0.5, radiusOfGyration: 0.08 })).toThrow('faster than');
  });
});

describe('wide and damped swings', () => {
  /** Period of a simple pendulum of 1 m by the integral over a quarter swing, sin(θ/2) = sin(θ₀/2) sin u. */
  function integrated(amplitude: number): number {
    const k = Math.sin(amplitude / 2);
    const steps = 2000;
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const u = ((i + 0.5) * Math.PI) / (2 * steps);
      sum += 1 / Math.sqrt(1 - (k * Math.sin(u)) ** 2);
    }
    return (4 * (sum * Math.PI)) / (2 * steps) / Math.sqrt(standardGravity);
  }

  it.each([0.1, 0.5, 1, 2, 3])('a swing of %d rad comes back to the small one', (amplitude) => {
    const small = (2 * Math.PI) / Math.sqrt(standardGravity);
    expect(smallSwingPeriod({ period: integrated(amplitude), amplitude })).toBeCloseTo(small, 9);
  });

  it('for small swings the correction is θ²/16 and little more', () => {
    const correction = 1 / smallSwingPeriod({ period: 1, amplitude: 0.1 }) - 1;
    expect(correction).toBeCloseTo(0.01 / 16 + (11 * 0.0001) / 3072, 9);
    expect(smallSwingPeriod({ period: 1, amplitude: 0 })).toBe(1);
    expect(() => smallSwingPeriod({ period: 1, amplitude: Math.PI })).toThrow('upside down');
  });

  it('peaks taken further apart give the same damping', () => {
    const ratio = 0.03;
    const peak = (n: number): number => Math.exp((-2 * Math.PI * ratio * n) / Math.sqrt(1 - ratio ** 2));
    for (const cycles of [1, 5, 20]) {
      const { ratio: found } = swingDamping({ firstPeak: 1, laterPeak: peak(cycles), cycles });
      expect(found).toBeCloseTo(ratio, 12);
    }
  });

  it('a swing that grows is refused', () => {
    expect(() => swingDamping({ firstPeak: 1, laterPeak: 1.1, cycles: 3 })).toThrow('smaller peak later');
    expect(() => undampedPeriod({ period: 1, dampingRatio: 1 })).toThrow('nothing swings');
  });
});

describe('pendulums on wires', () => {
  it('a torsion wire compares two bodies by the squares of their periods', () => {
    const stiffness = torsionStiffness({ inertia: 2e-3, period: 1.4 });
    expect(torsionInertia({ stiffness, period: 2.8 })).toBeCloseTo(8e-3, 15);
  });

  it('longer wires swing slower for the same inertia', () => {
    const wires = { mass: 1, firstDistance: 0.1, secondDistance: 0.1 };
    expect(bifilarInertia({ ...wires, wireLength: 2, period: Math.SQRT2 })).toBeCloseTo(
      bifilarInertia({ ...wires, wireLength: 1, period: 1 }),
      15,
    );
  });

  it('three wires on a circle and two on its diameter make the same pendulum', () => {
    const three = trifilarInertia({ mass: 1, radius: 0.1, wireLength: 1, period: 1.2 });
    const two = bifilarInertia({
      mass: 1,
      firstDistance: 0.1,
      secondDistance: 0.1,
      wireLength: 1,
      period: 1.2,
    });
    expect(three).toBeCloseTo(two, 15);
  });

  it('the plate is taken off with its own mass and period', () => {
    const plate = 0.0011;
    const own = 0.0042;
    const stiffness = (mass: number): number => (mass * standardGravity * 0.12 ** 2) / 0.8;
    const time = (mass: number, inertia: number): number =>
      2 * Math.PI * Math.sqrt(inertia / stiffness(mass));
    expect(
      trifilarInertia({
        mass: 0.955,
        radius: 0.12,
        wireLength: 0.8,
        period: time(0.955 + 0.42, own + plate),
        platformMass: 0.42,
        platformPeriod: time(0.42, plate),
      }),
    ).toBeCloseTo(own, 14);
    expect(() =>
      trifilarInertia({
        mass: 0.1,
        radius: 0.1,
        wireLength: 1,
        period: 1,
        platformMass: 1,
        platformPeriod: 2,
      }),
    ).toThrow('the plate alone');
  });

  it('three hangings give back the tensor of a body that hung from them', () => {
    const none = [0, 0, 0];
    const tensor = inertiaTensor({
      masses: [1, 2, 0.5],
      forwards: [0.2, -0.1, 0.3],
      lefts: none,
      heights: [0.1, 0.3, -0.2],
      ownRollInertias: none,
      ownPitchInertias: none,
      ownYawInertias: none,
      ownRollPitchProducts: none,
      ownRollYawProducts: none,
      ownPitchYawProducts: none,
    });
    // The wire turned by β from the fore-and-aft axis towards upright.
    const about = (angle: number): number =>
      inertiaAboutAxis({ ...tensor, forward: Math.cos(angle), left: 0, up: -Math.sin(angle) });
    const found = planarTensor({
      firstInertia: about(0.1),
      firstAngle: 0.1,
      secondInertia: about(1.3),
      secondAngle: 1.3,
      thirdInertia: about(2.2),
      thirdAngle: 2.2,
    });
    expect(found.rollInertia).toBeCloseTo(tensor.rollInertia, 12);
    expect(found.yawInertia).toBeCloseTo(tensor.yawInertia, 12);
    expect(found.rollYawProduct).toBeCloseTo(tensor.rollYawProduct, 12);
  });

  it('two hangings about the same axis are not two', () => {
    const hangings = { firstInertia: 1, secondInertia: 1, thirdInertia: 1 };
    expect(() =>
      planarTensor({ ...hangings, firstAngle: 0.2, secondAngle: 0.2 + Math.PI, thirdAngle: 1 }),
    ).toThrow('three different axes');
  });
});
