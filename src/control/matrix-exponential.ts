/**
 * The matrix exponential and its derivative: the exact passage from the vehicle's continuous motion to what the
 * controller sees from sample to sample, and how that changes when a figure of the vehicle does.
 */
import { columnNorm, factorise, multiply, multiplyBothWays, solve } from './dense.ts';

/**
 * Coefficients b₀ … b₁₃ of the [13/13] Padé approximant of eˣ.
 * Source: N. J. Higham, The scaling and squaring method for the matrix exponential revisited, SIAM J. Matrix
 * Anal. Appl. 26 (2005), algorithm 2.3; from memory, and they follow from (26−j)! 13! / (26! j! (13−j)!).
 */
const B = [
  64764752532480000, 32382376266240000, 7771770303897600, 1187353796428800, 129060195264000, 10559470521600,
  670442572800, 33522128640, 1323241920, 40840800, 960960, 16380, 182, 1,
] as const;

/** Norm up to which value and derivative are exact to double precision (Al-Mohy and Higham 2009, table 6.1). */
const LARGEST_NORM = 4.74;

export interface ExponentialWithSlopes {
  readonly value: Float64Array;
  /** One for each direction: d/dε of e^(a + ε·direction) at ε = 0. */
  readonly slopes: readonly Float64Array[];
}

/**
 * e^a of a square matrix.
 *
 * @param a      row after row
 * @param order  number of rows
 * @returns e^a; entries that are not finite where the result is beyond the range of numbers
 * Source: scaling and squaring with the [13/13] Padé approximant, Higham 2005.
 */
export function matrixExponential(a: Float64Array, order: number): Float64Array {
  return matrixExponentialWithSlopes(a, order, []).value;
}

/**
 * e^a with its directional (Fréchet) derivatives, found together so that the powers of a serve all of them.
 *
 * @param a           row after row
 * @param order       number of rows
 * @param directions  matrices of the same order, in which a is changed
 * Source: A. H. Al-Mohy, N. J. Higham, Computing the Fréchet derivative of the matrix exponential, SIAM J. Matrix
 * Anal. Appl. 30 (2009): every step of the approximant differentiated by the product rule.
 */
export function matrixExponentialWithSlopes(
  a: Float64Array,
  order: number,
  directions: readonly Float64Array[],
): ExponentialWithSlopes {
  const norm = columnNorm(a, order);
  if (!Number.isFinite(norm)) {
    return { value: a.map(() => Number.NaN), slopes: directions.map((d) => d.map(() => Number.NaN)) };
  }
  const halvings = norm > LARGEST_NORM ? Math.ceil(Math.log2(norm / LARGEST_NORM)) : 0;
  const scale = 2 ** -halvings;
  const size = order * order;
  const matrix = (): Float64Array => new Float64Array(size);

  const x = scaled(a, scale);
  const x2 = matrix();
  const x4 = matrix();
  const x6 = matrix();
  multiply(x2, x, x, order);
  multiply(x4, x2, x2, order);
  multiply(x6, x4, x2, order);
  // odd part x w, with w = x⁶ w₁ + w₂; even part v = x⁶ v₁ + v₂
  const w1 = combination(x2, x4, x6, B[9], B[11], B[13]);
  const v1 = combination(x2, x4, x6, B[8], B[10], B[12]);
  const w = combination(x2, x4, x6, B[3], B[5], B[7]);
  const v = combination(x2, x4, x6, B[2], B[4], B[6]);
  addToDiagonal(w, B[1], order);
  addToDiagonal(v, B[0], order);
  const product = matrix();
  multiply(product, x6, w1, order);
  add(w, product);
  multiply(product, x6, v1, order);
  add(v, product);
  const odd = matrix();
  multiply(odd, x, w, order);
  const factors = factorise(subtract(v, odd), order);
  add(v, odd);
  let value = matrix();
  solve(value, factors, v);

  const scratch = matrix();
  const d2 = matrix();
  const d4 = matrix();
  const d6 = matrix();
  const dOdd = matrix();
  const slopes = directions.map((direction) => {
    const d = scaled(direction, scale);
    multiplyBothWays(d2, scratch, [x, d], [x, d], order);
    multiplyBothWays(d4, scratch, [x2, d2], [x2, d2], order);
    multiplyBothWays(d6, scratch, [x4, d4], [x2, d2], order);
    const dw1 = combination(d2, d4, d6, B[9], B[11], B[13]);
    const dv1 = combination(d2, d4, d6, B[8], B[10], B[12]);
    const dw = combination(d2, d4, d6, B[3], B[5], B[7]);
    const dv = combination(d2, d4, d6, B[2], B[4], B[6]);
    multiplyBothWays(product, scratch, [x6, d6], [w1, dw1], order);
    add(dw, product);
    multiplyBothWays(product, scratch, [x6, d6], [v1, dv1], order);
    add(dv, product);
    multiplyBothWays(dOdd, scratch, [x, d], [w, dw], order);
    // (v − odd) value = v + odd, differentiated
    multiply(product, subtract(dOdd, dv), value, order);
    add(product, dOdd);
    add(product, dv);
    const slope = matrix();
    solve(slope, factors, product);
    return slope;
  });

  for (let s = 0; s < halvings; s++) {
    for (const slope of slopes) {
      multiplyBothWays(product, scratch, [value, slope], [value, slope], order);
      slope.set(product);
    }
    const squared = matrix();
    multiply(squared, value, value, order);
    value = squared;
  }
  return { value, slopes };
}

function combination(
  x2: Float64Array,
  x4: Float64Array,
  x6: Float64Array,
  b2: number,
  b4: number,
  b6: number,
): Float64Array {
  const sum = new Float64Array(x2.length);
  for (let i = 0; i < sum.length; i++) sum[i] = b2 * (x2[i] ?? 0) + b4 * (x4[i] ?? 0) + b6 * (x6[i] ?? 0);
  return sum;
}

function addToDiagonal(m: Float64Array, value: number, order: number): void {
  for (let i = 0; i < order; i++) m[i * order + i] = (m[i * order + i] ?? 0) + value;
}

function add(sum: Float64Array, term: Float64Array): void {
  for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] ?? 0) + (term[i] ?? 0);
}

function subtract(a: Float64Array, b: Float64Array): Float64Array {
  const difference = new Float64Array(a.length);
  for (let i = 0; i < a.length; i++) difference[i] = (a[i] ?? 0) - (b[i] ?? 0);
  return difference;
}

function scaled(a: Float64Array, scale: number): Float64Array {
  const out = new Float64Array(a.length);
  for (let i = 0; i < a.length; i++) out[i] = scale * (a[i] ?? 0);
  return out;
}
