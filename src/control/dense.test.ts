import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { repeatable } from '../../tests/specimen/balance-loop.ts';
import { complexVector, dot, onCircle } from './complex.ts';
import { factorise, multiply, solve } from './dense.ts';
import { createResolvent } from './resolvent.ts';

const order = 7;
const random = repeatable(11);
const some = (): Float64Array => Float64Array.from({ length: order * order }, () => 2 * random() - 1);
const library = (m: Float64Array): Matrix => Matrix.from1DArray(order, order, [...m]);

describe('small dense matrices', () => {
  it('multiply as in the library', () => {
    const [a, b, out] = [some(), some(), some()];
    multiply(out, a, b, order);
    const wanted = library(a).mmul(library(b)).to1DArray();
    out.forEach((entry, i) => {
      expect(entry).toBeCloseTo(wanted[i] ?? Number.NaN, 13);
    });
  });

  it('solve as in the library, also where the first pivot is 0', () => {
    const [a, b, out] = [some(), some(), some()];
    a[0] = 0;
    solve(out, factorise(a, order), b);
    const wanted = inverse(library(a)).mmul(library(b)).to1DArray();
    out.forEach((entry, i) => {
      expect(entry).toBeCloseTo(wanted[i] ?? Number.NaN, 11);
    });
  });
});

describe('the resolvent on the unit circle', () => {
  it('gives columns and rows that fulfil their equations', () => {
    const transition = some();
    const resolvent = createResolvent({ order, transition });
    const right = complexVector(order);
    for (let i = 0; i < order; i++) [right.re[i], right.im[i]] = [random(), random()];
    for (const theta of [0, 0.01, 1.1, 3, Math.PI]) {
      expect(resolvent.moveTo(theta)).toBe(true);
      const column = resolvent.column(right);
      const row = resolvent.row(right);
      const [cos, sin] = onCircle(theta, 1);
      for (let i = 0; i < order; i++) {
        const line = complexVector(order);
        const stand = complexVector(order);
        for (let j = 0; j < order; j++) {
          line.re[j] = (i === j ? cos : 0) - (transition[i * order + j] ?? 0);
          stand.re[j] = (i === j ? cos : 0) - (transition[j * order + i] ?? 0);
        }
        line.im[i] = sin;
        stand.im[i] = sin;
        for (const [re, im] of [dot(line, column), dot(row, stand)]) {
          expect(re).toBeCloseTo(right.re[i] ?? Number.NaN, 12);
          expect(im).toBeCloseTo(right.im[i] ?? Number.NaN, 12);
        }
      }
    }
  });

  it('says where the plant has a pole', () => {
    const integrator = createResolvent({ order: 1, transition: Float64Array.of(1) });
    expect(integrator.moveTo(0)).toBe(false);
    expect(integrator.moveTo(0.1)).toBe(true);
  });
});
