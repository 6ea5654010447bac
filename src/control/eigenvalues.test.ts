import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { repeatable } from '../../tests/specimen/balance-loop.ts';
import { DomainError } from '../mechanics/index.ts';
import { eigenvalues } from './eigenvalues.ts';

describe('eigenvalues', () => {
  it('agree with the library for matrices of every order, full and thin', () => {
    const random = repeatable(3);
    for (let round = 0; round < 300; round++) {
      const order = 1 + Math.floor(random() * 20);
      const matrix = Float64Array.from({ length: order * order }, () =>
        random() < 0.3 ? 0 : (random() - 0.5) * 10 ** (2 * random()),
      );
      const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(
        Matrix.from1DArray(order, order, [...matrix]),
      );
      const found = eigenvalues(matrix, order);
      expect(found).toHaveLength(order);
      for (const { re, im } of found) {
        const gaps = realEigenvalues.map((other, i) =>
          Math.hypot(other - re, (imaginaryEigenvalues[i] ?? 0) - im),
        );
        expect(Math.min(...gaps)).toBeLessThanOrEqual(1e-8 * Math.max(...matrix.map(Math.abs)));
      }
    }
  });

  it('add up to the trace', () => {
    const random = repeatable(4);
    const matrix = Float64Array.from({ length: 144 }, () => random() - 0.5);
    const trace = Array.from({ length: 12 }, (_, i) => matrix[13 * i] ?? 0).reduce((sum, x) => sum + x, 0);
    const found = eigenvalues(matrix, 12);
    expect(found.reduce((sum, { re }) => sum + re, 0)).toBeCloseTo(trace, 12);
    expect(found.reduce((sum, { im }) => sum + im, 0)).toBeCloseTo(0, 12);
  });

  it('of a turn by a third of a circle are the cube roots of 1, which no shift finds by itself', () => {
    const found = eigenvalues(Float64Array.of(0, 0, 1, 1, 0, 0, 0, 1, 0), 3);
    for (const { re, im } of found) expect(Math.hypot(re, im)).toBeCloseTo(1, 14);
    expect(found.filter(({ re }) => Math.abs(re + 0.5) < 1e-14)).toHaveLength(2);
  });

  it('keep their digits in a badly scaled matrix', () => {
    const [a, b] = eigenvalues(Float64Array.of(1, 1e12, 1e-12, 2), 2)
      .map(({ re }) => re)
      .sort((p, q) => p - q);
    expect(a).toBeCloseTo((3 - Math.sqrt(5)) / 2, 13);
    expect(b).toBeCloseTo((3 + Math.sqrt(5)) / 2, 13);
  });

  it('of a pile of nothing are nothing', () => {
    expect(eigenvalues(new Float64Array(9), 3)).toEqual(Array(3).fill({ re: 0, im: 0 }));
    expect(eigenvalues(new Float64Array(0), 0)).toEqual([]);
  });

  it('are refused, not searched for without end, where numbers overflow', () => {
    expect(() => eigenvalues(Float64Array.of(1, Number.NaN, 0, 1), 2)).toThrow('range of numbers');
    const huge = Float64Array.from({ length: 25 }, (_, i) => 1e307 * Math.sin(i));
    expect(() => eigenvalues(huge, 5)).toThrow(DomainError);
  });
});
