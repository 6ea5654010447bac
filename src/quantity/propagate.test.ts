import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { propagate } from './propagate.ts';
import { combine, exact, independent, standardUncertainty, type Uncertain } from './uncertain.ts';

type Single = Readonly<Record<string, number>>;

function u(figure: Uncertain | undefined): number {
  return figure ? standardUncertainty(figure) : Number.NaN;
}

describe('propagation', () => {
  test('agrees with the analytic slopes of a product, a quotient, a root and a sine', () => {
    const value = fc.double({ min: 0.01, max: 100, noNaN: true });
    const share = fc.double({ min: 1e-6, max: 0.3, noNaN: true });
    fc.assert(
      fc.property(value, value, share, share, (x, y, relativeX, relativeY) => {
        const [ux, uy] = [x * relativeX, y * relativeY];
        const compute = ({ x = 0, y = 0 }: Single) => ({
          product: x * y,
          quotient: x / y,
          root: Math.sqrt(x),
          sine: Math.sin(x),
        });
        const results = propagate(compute as never, {
          x: independent('x', x, ux),
          y: independent('y', y, uy),
        });
        expect(u(results.product) / Math.hypot(y * ux, x * uy)).toBeCloseTo(1, 6);
        expect(u(results.quotient) / Math.hypot(ux / y, (x * uy) / y ** 2)).toBeCloseTo(1, 6);
        expect(u(results.root) / ((0.5 * ux) / Math.sqrt(x))).toBeCloseTo(1, 6);
        expect(Math.abs(u(results.sine) - Math.abs(Math.cos(x)) * ux)).toBeLessThan(
          1e-6 * ux * (1 + ux ** 2),
        );
      }),
    );
  });

  test('takes one mass that enters twice for one input', () => {
    const mass = independent('mass', 2, 0.1);
    const { ratio } = propagate(({ a, b }) => ({ ratio: Number(a) / Number(b) }), { a: mass, b: mass });
    expect(u(ratio)).toBeLessThan(1e-9);
  });

  test('varies one number of a list at a time', () => {
    const masses = [1, 2, 3].map((value, index) => independent(`m${index}`, value, 0.1 * value));
    const { total } = propagate(({ masses }) => ({ total: (masses as number[]).reduce((a, b) => a + b) }), {
      masses,
    });
    expect(total?.value).toBe(6);
    expect(total?.contributions.get('m2')).toBeCloseTo(0.3, 9);
  });

  test('uses exact slopes where they are given, and differences where one is missing', () => {
    const compute = ({ a, list }: Readonly<Record<string, number | readonly number[]>>) => ({
      y: Number(a) * 10 + Number((list as number[])[0]) * 100,
      z: Number(a) * 7,
    });
    const inputs = { a: independent('a', 1, 1), list: [independent('b', 1, 1)] };
    const given = propagate(compute as never, inputs, () => ({ y: { a: 3 } }));
    expect(given.y?.contributions.get('a')).toBe(3);
    expect(given.y?.contributions.get('b')).toBeCloseTo(100, 6);
    expect(given.z?.contributions.get('a')).toBeCloseTo(7, 6);
    const listed = propagate(compute as never, inputs, () => ({
      y: { a: 3, list: [4] },
      z: { a: 5, list: [0] },
    }));
    expect(listed.y?.contributions.get('b')).toBe(4);
    expect(listed.z?.contributions.get('a')).toBe(5);
  });

  test('looks to one side at the edge of the domain, whether it throws there or is no number', () => {
    const thrown = propagate(
      ({ x }) => {
        if (Number(x) < 1) throw new RangeError('x has to be 1 at least');
        return { y: 3 * Number(x) };
      },
      { x: independent('x', 1, 0.1) },
    );
    expect(u(thrown.y)).toBeCloseTo(0.3, 6);
    const notANumber = propagate(({ x }) => ({ y: Number(x) < 1 ? Number.NaN : 3 * Number(x) }), {
      x: independent('x', 1, 0.1),
    });
    expect(u(notANumber.y)).toBeCloseTo(0.3, 6);
  });

  test('says what stands in the way where the function is defined on neither side', () => {
    const onlyAtTwo = ({ x }: Readonly<Record<string, unknown>>) => {
      if (x !== 2) throw new RangeError('x has to be 2');
      return { y: 1 };
    };
    expect(() => propagate(onlyAtTwo, { x: independent('x', 2, 0.1) })).toThrow('x has to be 2');
    expect(propagate(onlyAtTwo, { x: exact(2) }).y).toEqual(exact(1));
  });

  test('does not hide a bug of the function', () => {
    let calls = 0;
    const broken = () => {
      if (calls++ > 0) throw new TypeError('undefined is not a function');
      return { y: 1 };
    };
    expect(() => propagate(broken, { x: independent('x', 2, 0.1) })).toThrow(TypeError);
  });

  test('of a result that is infinite carries nothing, and of a cliff everything', () => {
    const { forever, cliff } = propagate(
      ({ x }) => ({
        forever: Number.POSITIVE_INFINITY,
        cliff: x === 2 ? 1 : Number.POSITIVE_INFINITY,
      }),
      { x: independent('x', 2, 0.1) },
    );
    expect(u(forever)).toBe(0);
    expect(u(cliff)).toBe(Number.POSITIVE_INFINITY);
  });

  test('of an input at nought takes its step from the uncertainty', () => {
    const { y } = propagate(({ x }) => ({ y: Math.sin(Number(x)) }), { x: independent('x', 0, 1e-6) });
    expect(u(y) / 1e-6).toBeCloseTo(1, 9);
  });

  test('in two steps is the same as in one', () => {
    const x = independent('x', 0.7, 0.01);
    const { middle } = propagate(({ x }) => ({ middle: Number(x) ** 2 }), { x });
    if (!middle) throw new Error('no result');
    const { end } = propagate(({ middle, x }) => ({ end: Number(middle) * Number(x) }), { middle, x });
    expect(u(end)).toBeCloseTo(standardUncertainty(combine(0, [[3 * 0.7 ** 2, x]])), 9);
  });
});
