import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardGravity } from './gravity.ts';
import { centredTopplingTime, nutationFrequency, slowTopplingTime, timeGain } from './gyro-toppling.ts';
import { toppling } from './toppling.ts';

interface Gyro {
  readonly rollInertia: number;
  readonly stiffness: number;
  readonly spinMomentum: number;
  readonly gimbalInertia: number;
  readonly gimbalFriction: number;
  readonly centring: number;
}

interface Root {
  readonly re: number;
  readonly im: number;
}

/** Roots of (I s² − K)(I_g s² + c s + k) + H² s², by simultaneous iteration (Weierstrass). */
function exactRoots(gyro: Gyro): readonly Root[] {
  const {
    rollInertia: I,
    stiffness: K,
    spinMomentum: H,
    gimbalInertia: Ig,
    gimbalFriction: c,
    centring: k,
  } = gyro;
  const coefficients = [I * Ig, I * c, I * k - K * Ig + H * H, -K * c, -K * k].map((a) => a / (I * Ig));
  const size = 1 + Math.max(...coefficients.slice(1).map((a, i) => Math.abs(a) ** (1 / (i + 1))));
  let roots: Root[] = [0, 1, 2, 3].map((i) => {
    const angle = 0.4 + (i * Math.PI) / 2;
    return { re: size * Math.cos(angle), im: size * Math.sin(angle) };
  });
  for (let round = 0; round < 2000; round++) {
    roots = roots.map((root, i) => {
      let value: Root = { re: 0, im: 0 };
      for (const a of coefficients) value = plus(times(value, root), { re: a, im: 0 });
      let others: Root = { re: 1, im: 0 };
      roots.forEach((other, j) => {
        if (j !== i) others = times(others, { re: root.re - other.re, im: root.im - other.im });
      });
      const correction = over(value, others);
      return { re: root.re - correction.re, im: root.im - correction.im };
    });
  }
  return roots;
}

const plus = (a: Root, b: Root): Root => ({ re: a.re + b.re, im: a.im + b.im });
const times = (a: Root, b: Root): Root => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
function over(a: Root, b: Root): Root {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

const fastest = (gyro: Gyro): Root => exactRoots(gyro).reduce((a, b) => (b.re > a.re ? b : a));
const exactTime = (gyro: Gyro): number => 1 / fastest(gyro).re;

/** The small prototype of an independent computation of the same roots. */
const small: Gyro = {
  rollInertia: 0.05,
  stiffness: 3,
  spinMomentum: 0.1,
  gimbalInertia: 2e-4,
  gimbalFriction: 0.002,
  centring: 0,
};
const fallOf = (gyro: Gyro): number =>
  toppling({ firstMoment: gyro.stiffness / standardGravity, rollInertia: gyro.rollInertia }).timeConstant;

describe('the roots used as a yardstick', () => {
  it.each([
    ['free gimbal, little friction', small, 0.63375427, 0],
    ['free gimbal, heavy friction', { ...small, gimbalFriction: 0.2 }, 7.26546239, 0],
  ])('agree with an independent computation: %s', (_, gyro, re, im) => {
    const root = fastest(gyro);
    expect(root.re).toBeCloseTo(re, 7);
    expect(root.im).toBeCloseTo(im, 7);
  });

  it('agree with an independent computation: frictionless, top-heavy gimbal', () => {
    const roots = exactRoots({ ...small, gimbalFriction: 0, centring: -0.02 });
    const frequencies = roots.map(({ im }) => Math.abs(im)).toSorted((a, b) => a - b);
    expect(frequencies[0]).toBeCloseTo(2.68414813, 7);
    expect(frequencies[3]).toBeCloseTo(28.85819379, 7);
  });

  it('agree with an independent computation: the open-loop poles of the worked loop case', () => {
    const gyro: Gyro = {
      rollInertia: 0.09076,
      stiffness: standardGravity * 0.492,
      spinMomentum: 0.55,
      gimbalInertia: 9e-4,
      gimbalFriction: 0.005,
      centring: 0.15,
    };
    expect(fastest(gyro).re).toBeCloseTo(1.560451891, 8);
  });
});

describe('nutation', () => {
  it('is the fast root, high by about K I_g/(2 H²) of itself', () => {
    const exact = Math.max(...exactRoots({ ...small, gimbalFriction: 0 }).map(({ im }) => im));
    const excess = nutationFrequency(small) / exact - 1;
    const stated = (small.stiffness * small.gimbalInertia) / (2 * small.spinMomentum ** 2);
    expect(excess).toBeGreaterThan(0);
    expect(excess / stated).toBeCloseTo(1, 0);
  });
});

describe('slow toppling with a free gimbal', () => {
  const gyros = fc.record({
    rollInertia: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
    stiffness: fc.double({ min: 0.5, max: 8, noNaN: true }),
    spinMomentum: fc.double({ min: 0.1, max: 1, noNaN: true }),
    gimbalInertia: fc.double({ min: 1e-4, max: 1e-3, noNaN: true }),
    gimbalFriction: fc.double({ min: 2e-4, max: 0.05, noNaN: true }),
    centring: fc.constant(0),
  });
  const holds = (gyro: Gyro): boolean => gyro.spinMomentum ** 2 > 1.05 * gyro.stiffness * gyro.gimbalInertia;

  it('is 0.7 % short of the exact root for the small prototype', () => {
    expect(slowTopplingTime(small)).toBeCloseTo(1.566667, 6);
    expect(exactTime(small)).toBeCloseTo(1.577899, 6);
  });

  it('is always on the safe side of the exact root', () => {
    fc.assert(
      fc.property(gyros.filter(holds), (gyro) => {
        expect(slowTopplingTime(gyro)).toBeLessThan(exactTime(gyro) * (1 + 1e-9));
      }),
      { numRuns: 60 },
    );
  });

  it('is short by no more than about (τ₀/τ)² where the rotor gains a factor of five or more', () => {
    fc.assert(
      fc.property(gyros.filter(holds), (gyro) => {
        const slowTime = slowTopplingTime(gyro);
        const gain = timeGain({ slowTime, topplingTime: fallOf(gyro) });
        fc.pre(gain > 5);
        const short = 1 - slowTime / exactTime(gyro);
        // The second term, I I_g s³ against I c s², is small unless friction is; s < 1/τ bounds it.
        const inertial = gyro.gimbalInertia / (gyro.gimbalFriction * slowTime);
        expect(short).toBeLessThan((1 + inertial) / gain ** 2 + 1e-9);
      }),
      { numRuns: 60 },
    );
  });

  it('doubles when the friction is halved', () => {
    const halved = slowTopplingTime({ ...small, gimbalFriction: 0.001 });
    expect(halved).toBeCloseTo(2 * slowTopplingTime(small), 12);
  });

  it('a rotor too slow to hold anything is refused, and told the least momentum', () => {
    expect(() => slowTopplingTime({ ...small, spinMomentum: 0.02 })).toThrow(
      'spin momentum is 0.02 N·m·s, but to hold anything it has to be more than √(K I_g), here 0.0245 N·m·s',
    );
    expect(() => slowTopplingTime({ ...small, gimbalFriction: 0 })).toThrow('gimbal friction');
    expect(() => slowTopplingTime({ ...small, stiffness: -1 })).toThrow('toppling stiffness');
  });
});

describe('toppling with a centred gimbal', () => {
  /** What the quasi-static form leaves out, as its docstring states it. */
  const leftOut = (gyro: Gyro): number =>
    (2 * gyro.rollInertia * Math.abs(gyro.centring) + gyro.stiffness * gyro.gimbalInertia) /
    gyro.spinMomentum ** 2;

  it.each([
    [
      'sprung, some friction',
      { ...small, spinMomentum: 0.55, stiffness: 4.825, gimbalFriction: 0.005, centring: 0.15 },
    ],
    ['sprung, no friction', { ...small, spinMomentum: 0.4, gimbalFriction: 0, centring: 0.05 }],
    ['sprung, heavy friction', { ...small, spinMomentum: 0.4, gimbalFriction: 0.02, centring: 0.001 }],
    ['top-heavy, growing swing', { ...small, spinMomentum: 0.4, gimbalFriction: 0.002, centring: -0.05 }],
    ['top-heavy, two growing roots', { ...small, spinMomentum: 0.4, gimbalFriction: 0.02, centring: -0.001 }],
  ])('agrees with the exact roots to what it leaves out: %s', (_, gyro) => {
    expect(leftOut(gyro)).toBeLessThan(0.12);
    const slowTime = centredTopplingTime(gyro);
    const parted = Math.abs(slowTime / exactTime(gyro) - 1);
    // First order in what is left out, and the roll inertia's own part where friction rules, as with a free gimbal.
    expect(parted).toBeLessThan(1.1 * leftOut(gyro) + (fallOf(gyro) / slowTime) ** 2);
  });

  it('a spring spends the time: with little friction the root tends to √(K k)/H', () => {
    const sprung = centredTopplingTime({ ...small, gimbalFriction: 1e-9, centring: 0.02 });
    expect(sprung).toBeCloseTo(0.1 / Math.sqrt(3 * 0.02), 6);
    expect(centredTopplingTime({ ...small, centring: 0.02 })).toBeLessThan(slowTopplingTime(small));
  });

  it('a top-heavy gimbal swings, growing with 2 H²/(K c)', () => {
    const gyro = { ...small, spinMomentum: 0.4, centring: -0.05 };
    expect(fastest(gyro).im).not.toBeCloseTo(0, 1);
    expect(centredTopplingTime(gyro)).toBeCloseTo((2 * 0.4 ** 2) / (3 * 0.002), 10);
  });

  it('tends to the free gimbal without inertia as the centring goes to nought, from both sides', () => {
    const free = slowTopplingTime({ ...small, gimbalInertia: 0 });
    for (const centring of [1e-12, -1e-12]) {
      expect(centredTopplingTime({ ...small, centring }) / free).toBeCloseTo(1, 6);
    }
  });

  it('is not asked where it has no answer', () => {
    expect(() => centredTopplingTime({ ...small, centring: 0 })).toThrow('gyro.slow-toppling');
    expect(() => centredTopplingTime({ ...small, gimbalFriction: 0, centring: -0.02 })).toThrow(
      'swings without growing',
    );
  });
});
