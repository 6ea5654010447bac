import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { centreOfGravity, firstMoment, rollInertia, totalMass } from './mass-sums.ts';
import { toppling } from './toppling.ts';

interface Part {
  readonly mass: number;
  readonly left: number;
  readonly height: number;
  readonly own: number;
}

const length = fc.double({ min: -1, max: 1, noNaN: true });
const part = fc.record({
  mass: fc.double({ min: 0.001, max: 5, noNaN: true }),
  left: length,
  height: length,
  own: fc.double({ min: 0, max: 0.1, noNaN: true }),
});
const table = fc.array(part, { minLength: 1, maxLength: 30 });

const lists = (parts: readonly Part[]) => ({
  masses: parts.map(({ mass }) => mass),
  lefts: parts.map(({ left }) => left),
  heights: parts.map(({ height }) => height),
  ownInertias: parts.map(({ own }) => own),
});

function sums(parts: readonly Part[]) {
  const all = lists(parts);
  return {
    total: totalMass(all),
    moment: firstMoment(all),
    inertia: rollInertia(all),
    height: centreOfGravity({ masses: all.masses, positions: all.heights }),
    left: centreOfGravity({ masses: all.masses, positions: all.lefts }),
  };
}

type Sums = ReturnType<typeof sums>;

/** The same to rounding; the moment may cancel, so its scale is that of the terms. */
function expectSame(a: Sums, b: Sums): void {
  const scale = Math.max(a.total, 1);
  for (const name of ['total', 'moment', 'inertia', 'height', 'left'] as const) {
    expect(Math.abs(a[name] - b[name])).toBeLessThan(1e-11 * scale);
  }
}

describe('the mass table', () => {
  it('gives the same sums in any order', () => {
    fc.assert(
      fc.property(table, fc.infiniteStream(fc.nat()), (parts, keys) => {
        const order = new Map(parts.map((p) => [p, keys.next().value]));
        const shuffled = parts.toSorted((p, q) => (order.get(p) ?? 0) - (order.get(q) ?? 0));
        expectSame(sums(parts), sums(shuffled));
      }),
    );
  });

  it('gives the same sums when a part is split in two halves where it is', () => {
    fc.assert(
      fc.property(table, (parts) => {
        const halves = parts.flatMap((p) => {
          const half = { ...p, mass: p.mass / 2, own: p.own / 2 };
          return [half, half];
        });
        expectSame(sums(parts), sums(halves));
      }),
    );
  });

  it('gives the same sums when it is merged into one part at its centre of gravity', () => {
    fc.assert(
      fc.property(table, (parts) => {
        const whole = sums(parts);
        const aboutCentre = parts.map((p) => ({
          ...p,
          left: p.left - whole.left,
          height: p.height - whole.height,
        }));
        const merged: Part = {
          mass: whole.total,
          left: whole.left,
          height: whole.height,
          own: rollInertia(lists(aboutCentre)),
        };
        expectSame(whole, sums([merged]));
      }),
    );
  });

  it('moved to another origin, moves its centre with it and keeps its inertia about it', () => {
    fc.assert(
      fc.property(table, length, length, (parts, left, height) => {
        const before = sums(parts);
        const after = sums(parts.map((p) => ({ ...p, left: p.left + left, height: p.height + height })));
        const aboutCentre = (s: Sums) => s.inertia - s.total * (s.left ** 2 + s.height ** 2);
        expect(after.left - before.left).toBeCloseTo(left, 9);
        expect(after.height - before.height).toBeCloseTo(height, 9);
        expect(Math.abs(aboutCentre(after) - aboutCentre(before))).toBeLessThan(1e-10 * before.total);
      }),
    );
  });

  it('gives the same first moment as total times height', () => {
    fc.assert(
      fc.property(table, (parts) => {
        const { moment, total, height } = sums(parts);
        expect(Math.abs(moment - total * height)).toBeLessThan(1e-12 * Math.max(total, 1));
      }),
    );
  });

  it('counts a part of no mass by its own inertia alone', () => {
    const one = { mass: 1, left: 0.1, height: 0.2, own: 0.01 };
    expect(sums([one, { mass: 0, left: 5, height: 5, own: 0 }])).toEqual(sums([one]));
  });

  it('sums to nothing where no part is left, but has no centre of gravity', () => {
    expect(sumsOfNothing()).toEqual([0, 0, 0]);
    expect(() => centreOfGravity({ masses: [], positions: [] })).toThrow('a part with a mass is needed');
    expect(() => centreOfGravity({ masses: [0, 0], positions: [1, 2] })).toThrow('total mass is 0 kg');
  });

  it('refuses a negative mass and lists that do not match, naming the part', () => {
    expect(() => totalMass({ masses: [1, -1] })).toThrow('mass of part 2 is −1 kg');
    expect(() => firstMoment({ masses: [1, 2], heights: [1] })).toThrow('one for each mass (2)');
    expect(() => rollInertia({ masses: [1], lefts: [0], heights: [0], ownInertias: [-1] })).toThrow(
      'own roll inertia of part 1',
    );
  });

  function sumsOfNothing(): number[] {
    const none = { masses: [], lefts: [], heights: [], ownInertias: [] };
    return [totalMass(none), firstMoment(none), rollInertia(none)];
  }
});

describe('toppling', () => {
  it('a point mass topples as if it fell along its height: τ₀ = √(h/g)', () => {
    const h = 0.4;
    const { timeConstant } = toppling({ firstMoment: 2 * h, rollInertia: 2 * h * h });
    expect(timeConstant).toBeCloseTo(Math.sqrt(h / 9.80665), 14);
  });

  it('more mass at the same places topples no faster', () => {
    const { timeConstant } = toppling({ firstMoment: 0.2, rollInertia: 0.04 });
    expect(toppling({ firstMoment: 0.4, rollInertia: 0.08 }).timeConstant).toBeCloseTo(timeConstant, 14);
  });

  it('a vehicle that hangs does not topple, and says so', () => {
    expect(() => toppling({ firstMoment: -0.1, rollInertia: 0.04 })).toThrow(
      'first moment about the ground line is −0.1 kg·m',
    );
    expect(() => toppling({ firstMoment: 0, rollInertia: 0.04 })).toThrow('more than 0 kg·m');
  });
});
