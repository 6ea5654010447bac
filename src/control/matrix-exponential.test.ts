import { expm, matrix } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { repeatable } from '../../tests/specimen/balance-loop.ts';
import { matrixExponential, matrixExponentialWithSlopes } from './matrix-exponential.ts';

const random = repeatable(5);
const some = (order: number, size: number): Float64Array =>
  Float64Array.from({ length: order * order }, () => size * (2 * random() - 1));

function expectClose(found: Float64Array, wanted: ArrayLike<number>, relative: number): void {
  const size = Math.max(...Array.from(wanted, Math.abs));
  found.forEach((entry, i) => {
    expect(Math.abs(entry - (wanted[i] ?? Number.NaN))).toBeLessThan(relative * size);
  });
}

describe('the matrix exponential', () => {
  it('agrees with an independent implementation for small and large matrices', () => {
    for (const [order, size] of [
      [2, 0.1],
      [5, 1],
      [9, 3],
      [9, 20],
    ] as const) {
      const a = some(order, size);
      const rows = Array.from({ length: order }, (_, i) => [...a.subarray(i * order, (i + 1) * order)]);
      const oracle = expm(matrix(rows)).valueOf() as unknown as number[][];
      expectClose(matrixExponential(a, order), oracle.flat(), 1e-9); // the oracle is good to about 1e-10
    }
  });

  it('of nothing is the identity', () => {
    expect([...matrixExponential(new Float64Array(4), 2)]).toEqual([1, 0, 0, 1]);
  });

  it('turns a matrix that is not finite into one that is not, without hanging', () => {
    expect(matrixExponential(Float64Array.of(Number.POSITIVE_INFINITY, 0, 0, 1), 2).some(Number.isNaN)).toBe(
      true,
    );
  });

  it('has the derivative that stands in the corner of the exponential of twice the order', () => {
    for (const size of [0.3, 3, 30]) {
      const order = 4;
      const a = some(order, size);
      const e = some(order, 1);
      const twice = new Float64Array(4 * order * order);
      for (let i = 0; i < order; i++) {
        for (let j = 0; j < order; j++) {
          twice[i * 2 * order + j] = a[i * order + j] ?? 0;
          twice[i * 2 * order + order + j] = e[i * order + j] ?? 0;
          twice[(order + i) * 2 * order + order + j] = a[i * order + j] ?? 0;
        }
      }
      const whole = matrixExponential(twice, 2 * order);
      const corner = Array.from(
        { length: order * order },
        (_, k) => whole[Math.floor(k / order) * 2 * order + order + (k % order)] ?? 0,
      );
      const [slope] = matrixExponentialWithSlopes(a, order, [e]).slopes;
      expectClose(slope ?? new Float64Array(), corner, 1e-11);
    }
  });
});
