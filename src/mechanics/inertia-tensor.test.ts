import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxRollInertia, tubeInertiaAlongAxis } from './bodies.ts';
import {
  type InertiaTensor,
  inertiaTensor,
  type PartTensors,
  parallelAxesTensor,
  parallelAxisInertia,
  radiusOfGyration,
} from './inertia-tensor.ts';
import { centreOfGravity, rollInertia, totalMass } from './mass-sums.ts';
import { inertiaAboutAxis, principalAxes, turnedTensor } from './principal-axes.ts';
import { coneInertiaAcrossAxis, coneInertiaAlongAxis, sphereInertia } from './round-bodies.ts';

const ENTRIES = [
  'rollInertia',
  'pitchInertia',
  'yawInertia',
  'rollPitchProduct',
  'rollYawProduct',
  'pitchYawProduct',
] as const;

/** Point masses only: every tensor made of them is one that a body can have. */
function points(list: readonly (readonly [mass: number, x: number, y: number, z: number])[]): PartTensors {
  const none = list.map(() => 0);
  return {
    masses: list.map(([mass]) => mass),
    forwards: list.map(([, x]) => x),
    lefts: list.map(([, , y]) => y),
    heights: list.map(([, , , z]) => z),
    ownRollInertias: none,
    ownPitchInertias: none,
    ownYawInertias: none,
    ownRollPitchProducts: none,
    ownRollYawProducts: none,
    ownPitchYawProducts: none,
  };
}

const place = fc.double({ min: -1, max: 1, noNaN: true });
const point = fc.tuple(fc.double({ min: 0.01, max: 5, noNaN: true }), place, place, place);
const cloud = fc.array(point, { minLength: 2, maxLength: 12 });
const angle = fc.double({ min: -4, max: 4, noNaN: true });

function expectSame(a: InertiaTensor, b: InertiaTensor, scale: number): void {
  for (const entry of ENTRIES) expect(Math.abs(a[entry] - b[entry])).toBeLessThan(1e-10 * scale);
}

const trace = (t: InertiaTensor): number => t.rollInertia + t.pitchInertia + t.yawInertia;
const determinant = (t: InertiaTensor): number =>
  t.rollInertia * (t.pitchInertia * t.yawInertia - t.pitchYawProduct ** 2) -
  t.rollPitchProduct * (t.rollPitchProduct * t.yawInertia - t.pitchYawProduct * t.rollYawProduct) +
  t.rollYawProduct * (t.rollPitchProduct * t.pitchYawProduct - t.pitchInertia * t.rollYawProduct);

describe('the inertia tensor of a part table', () => {
  it('is the same in any order and wherever the origin lies', () => {
    fc.assert(
      fc.property(cloud, place, place, place, (list, dx, dy, dz) => {
        const here = inertiaTensor(points(list));
        const there = inertiaTensor(
          points(list.map(([m, x, y, z]) => [m, x + dx, y + dy, z + dz] as const).toReversed()),
        );
        expectSame(here, there, totalMass(points(list)));
      }),
    );
  });

  it('moved to the ground line gives the roll inertia of the mass table', () => {
    fc.assert(
      fc.property(cloud, (list) => {
        const parts = points(list);
        const { masses, forwards, lefts, heights } = parts;
        const about = parallelAxesTensor({
          ...inertiaTensor(parts),
          mass: totalMass({ masses }),
          forward: centreOfGravity({ masses, positions: forwards }),
          left: centreOfGravity({ masses, positions: lefts }),
          height: centreOfGravity({ masses, positions: heights }),
        });
        const expected = rollInertia({ masses, lefts, heights, ownInertias: parts.ownRollInertias });
        expect(Math.abs(about.rollInertia - expected)).toBeLessThan(1e-11 * totalMass({ masses }));
      }),
    );
  });

  it('is the same when two parts are merged into one with the tensor of both', () => {
    const all = [
      [1, 0.1, 0.2, 0.3],
      [2, -0.2, 0.05, 0.4],
      [0.5, 0.3, -0.1, 0.1],
    ] as const;
    const pair = points(all.slice(0, 2));
    const merged = inertiaTensor(pair);
    const whole = inertiaTensor({
      masses: [3, 0.5],
      forwards: [centreOfGravity({ masses: pair.masses, positions: pair.forwards }), 0.3],
      lefts: [centreOfGravity({ masses: pair.masses, positions: pair.lefts }), -0.1],
      heights: [centreOfGravity({ masses: pair.masses, positions: pair.heights }), 0.1],
      ownRollInertias: [merged.rollInertia, 0],
      ownPitchInertias: [merged.pitchInertia, 0],
      ownYawInertias: [merged.yawInertia, 0],
      ownRollPitchProducts: [merged.rollPitchProduct, 0],
      ownRollYawProducts: [merged.rollYawProduct, 0],
      ownPitchYawProducts: [merged.pitchYawProduct, 0],
    });
    expectSame(whole, inertiaTensor(points(all)), 1);
  });

  it('has no products across a plane of symmetry', () => {
    const mirrored = inertiaTensor(
      points([
        [1, 0.3, 0.2, 0.1],
        [1, 0.3, -0.2, 0.1],
        [2, -0.1, 0, 0.5],
      ]),
    );
    expect(mirrored.rollPitchProduct).toBeCloseTo(0, 15);
    expect(mirrored.pitchYawProduct).toBeCloseTo(0, 15);
    expect(mirrored.rollYawProduct).not.toBeCloseTo(0, 3);
  });

  it('has a negative product for mass ahead above and behind below', () => {
    const raked = inertiaTensor(
      points([
        [1, 0.2, 0, 0.2],
        [1, -0.2, 0, -0.2],
      ]),
    );
    expect(raked.rollYawProduct).toBeCloseTo(-0.08, 15);
  });

  it('refuses a list that is too short, naming it', () => {
    const parts = points([
      [1, 0, 0, 0],
      [1, 1, 0, 0],
    ]);
    expect(() => inertiaTensor({ ...parts, ownYawInertias: [0] })).toThrow(
      'number of figures for own yaw inertia is 1',
    );
    expect(() => inertiaTensor({ ...parts, ownPitchInertias: [0, -1] })).toThrow(
      'own pitch inertia of part 2',
    );
  });
});

describe('one axis beside another', () => {
  it('costs the same on either side of the centre of gravity, and least through it', () => {
    const body = { inertia: 0.006, mass: 0.955 };
    expect(parallelAxisInertia({ ...body, distance: -0.1 })).toBe(
      parallelAxisInertia({ ...body, distance: 0.1 }),
    );
    expect(parallelAxisInertia({ ...body, distance: 0 })).toBe(0.006);
  });

  it('a hoop has its radius as radius of gyration', () => {
    const inertia = tubeInertiaAlongAxis({ mass: 2, diameter: 1, bore: 1 - 1e-12 });
    expect(radiusOfGyration({ inertia, mass: 2 })).toBeCloseTo(0.5, 10);
    expect(() => radiusOfGyration({ inertia: 1, mass: 0 })).toThrow('mass is 0 kg');
  });
});

describe('the same body seen along other axes', () => {
  const turns = fc.record({ yaw: angle, pitch: angle, roll: angle });

  it('keeps trace and determinant under any turn', () => {
    fc.assert(
      fc.property(cloud, turns, (list, turn) => {
        const before = inertiaTensor(points(list));
        const after = turnedTensor({ ...before, ...turn });
        const scale = trace(before);
        expect(Math.abs(trace(after) - scale)).toBeLessThanOrEqual(1e-12 * scale);
        expect(Math.abs(determinant(after) - determinant(before))).toBeLessThanOrEqual(1e-10 * scale ** 3);
      }),
    );
  });

  it('agrees with turning the parts themselves', () => {
    const list = [
      [1, 0.3, 0.1, 0.2],
      [2, -0.1, 0.2, 0.1],
      [0.7, 0, -0.3, 0.4],
    ] as const;
    const yaw = 0.4;
    const turned = list.map(
      ([m, x, y, z]) =>
        [m, x * Math.cos(yaw) + y * Math.sin(yaw), -x * Math.sin(yaw) + y * Math.cos(yaw), z] as const,
    );
    expectSame(
      turnedTensor({ ...inertiaTensor(points(list)), yaw, pitch: 0, roll: 0 }),
      inertiaTensor(points(turned)),
      1,
    );
  });

  it('the inertia about an axis is the roll inertia of a frame whose x lies along it', () => {
    fc.assert(
      fc.property(cloud, angle, angle, (list, yaw, pitch) => {
        const tensor = inertiaTensor(points(list));
        const along = inertiaAboutAxis({
          ...tensor,
          forward: 7 * Math.cos(pitch) * Math.cos(yaw),
          left: 7 * Math.cos(pitch) * Math.sin(yaw),
          up: -7 * Math.sin(pitch),
        });
        const framed = turnedTensor({ ...tensor, yaw, pitch, roll: 0 }).rollInertia;
        expect(Math.abs(along - framed)).toBeLessThanOrEqual(1e-12 * trace(tensor));
      }),
    );
  });

  it('principal axes are square to each other, and the tensor only stretches them', () => {
    fc.assert(
      fc.property(cloud, (list) => {
        const t = inertiaTensor(points(list));
        fc.pre(trace(t) > 1e-9);
        const axes = principalAxes(t);
        const vector = (i: 0 | 1 | 2) => [axes[i].forward, axes[i].left, axes[i].up] as const;
        const dot = (a: readonly number[], b: readonly number[]): number =>
          a.reduce((sum, v, i) => sum + v * (b[i] ?? 0), 0);
        for (const i of [0, 1, 2] as const) {
          for (const j of [0, 1, 2] as const) {
            expect(Math.abs(dot(vector(i), vector(j)) - (i === j ? 1 : 0))).toBeLessThan(1e-12);
          }
          const [x, y, z] = vector(i);
          const image = [
            t.rollInertia * x + t.rollPitchProduct * y + t.rollYawProduct * z,
            t.rollPitchProduct * x + t.pitchInertia * y + t.pitchYawProduct * z,
            t.rollYawProduct * x + t.pitchYawProduct * y + t.yawInertia * z,
          ];
          image.forEach((value, k) => {
            expect(Math.abs(value - axes[i].inertia * (vector(i)[k] ?? 0))).toBeLessThan(1e-12 * trace(t));
          });
        }
        expect(axes[0].inertia).toBeGreaterThanOrEqual(axes[1].inertia);
        expect(axes[1].inertia).toBeGreaterThanOrEqual(axes[2].inertia);
      }),
    );
  });

  it('every principal axis points with its largest share to the positive side', () => {
    const [largest, middle, least] = principalAxes({
      rollInertia: 3,
      pitchInertia: 2,
      yawInertia: 2.5,
      rollPitchProduct: 0.4,
      rollYawProduct: -0.2,
      pitchYawProduct: 0.1,
    });
    for (const { forward, left, up } of [largest, middle, least]) {
      const shares = [forward, left, up];
      expect(shares.reduce((best, v) => (Math.abs(v) > Math.abs(best) ? v : best))).toBeGreaterThan(0);
    }
  });

  it('refuses what no body has: products too large for the moments, or a moment larger than the two others', () => {
    const none = { rollPitchProduct: 0, rollYawProduct: 0, pitchYawProduct: 0 };
    const body = { rollInertia: 1, pitchInertia: 1, yawInertia: 1, ...none };
    expect(() => principalAxes({ ...body, rollPitchProduct: 2 })).toThrow('least principal inertia');
    expect(() => principalAxes({ ...body, yawInertia: 2.1 })).toThrow('check the signs');
    expect(() => principalAxes({ rollInertia: 0, pitchInertia: 0, yawInertia: 0, ...none })).toThrow(
      'a body with inertia is needed',
    );
    expect(() => inertiaAboutAxis({ ...body, forward: 0, left: 0, up: 0 })).toThrow('needs a direction');
  });
});

describe('round bodies', () => {
  /** A body of revolution sliced into discs, half widths by height; mass 1. */
  function sliced(radius: (z: number) => number, low: number, high: number) {
    const steps = 4000;
    const width = (high - low) / steps;
    let [volume, moment, second, along] = [0, 0, 0, 0];
    for (let i = 0; i < steps; i++) {
      const z = low + (i + 0.5) * width;
      const area = Math.PI * radius(z) ** 2 * width;
      volume += area;
      moment += area * z;
      second += area * (radius(z) ** 2 / 4 + z * z);
      along += (area * radius(z) ** 2) / 2;
    }
    return { along: along / volume, across: second / volume - (moment / volume) ** 2 };
  }

  it('a sphere has the inertia of its slices', () => {
    const { along, across } = sliced((z) => Math.sqrt(0.25 - z * z), -0.5, 0.5);
    const exact = sphereInertia({ mass: 1, diameter: 1 });
    expect(along).toBeCloseTo(exact, 6);
    expect(across).toBeCloseTo(exact, 6);
  });

  it('a cone has the inertia of its slices, about its own axis and across it', () => {
    const { along, across } = sliced((z) => (0.4 * (1 - z / 0.7)) / 2, 0, 0.7);
    expect(coneInertiaAlongAxis({ mass: 1, diameter: 0.4 })).toBeCloseTo(along, 7);
    expect(coneInertiaAcrossAxis({ mass: 1, diameter: 0.4, height: 0.7 })).toBeCloseTo(across, 7);
  });

  it('a sphere is less than the cube round it', () => {
    expect(sphereInertia({ mass: 1, diameter: 1 })).toBeLessThan(
      boxRollInertia({ mass: 1, width: 1, height: 1 }),
    );
    expect(() => sphereInertia({ mass: -1, diameter: 1 })).toThrow('mass is −1 kg');
  });
});
