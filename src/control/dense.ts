/**
 * Products and solutions of small dense matrices, for the exponential that every margin begins with. Matrices are
 * square, of order 15 at most, row after row in one Float64Array: at that size a general library spends more time
 * on its objects than on the sums.
 */

/** out = a b. `out` is neither of the factors. */
export function multiply(out: Float64Array, a: Float64Array, b: Float64Array, order: number): void {
  out.fill(0);
  for (let i = 0; i < order; i++) {
    const row = i * order;
    for (let k = 0; k < order; k++) {
      const factor = a[row + k] ?? 0;
      if (factor === 0) continue;
      const from = k * order;
      for (let j = 0; j < order; j++) out[row + j] = (out[row + j] ?? 0) + factor * (b[from + j] ?? 0);
    }
  }
}

/** out = a b + b a: the derivative of a², and of every product of a with itself. */
export function multiplyBothWays(
  out: Float64Array,
  scratch: Float64Array,
  [a, da]: readonly [Float64Array, Float64Array],
  [b, db]: readonly [Float64Array, Float64Array],
  order: number,
): void {
  multiply(out, a, db, order);
  multiply(scratch, da, b, order);
  for (let i = 0; i < out.length; i++) out[i] = (out[i] ?? 0) + (scratch[i] ?? 0);
}

/** Largest sum of magnitudes in a column, ‖a‖₁. */
export function columnNorm(a: Float64Array, order: number): number {
  let largest = 0;
  for (let j = 0; j < order; j++) {
    let sum = 0;
    for (let i = 0; i < order; i++) sum += Math.abs(a[i * order + j] ?? 0);
    if (!(sum <= largest)) largest = sum;
  }
  return largest;
}

/** out = m v. */
export function multiplyColumn(out: Float64Array, m: Float64Array, v: Float64Array, order: number): void {
  for (let i = 0; i < order; i++) {
    let sum = 0;
    for (let j = 0; j < order; j++) sum += (m[i * order + j] ?? 0) * (v[j] ?? 0);
    out[i] = sum;
  }
}

/** Triangular factors of a matrix with the order in which its rows were taken. */
export interface Factors {
  readonly order: number;
  readonly factors: Float64Array;
  readonly rows: Int32Array;
}

/** Gaussian elimination with partial pivoting; the matrix given is not changed. */
export function factorise(matrix: Float64Array, order: number): Factors {
  const factors = Float64Array.from(matrix);
  const rows = Int32Array.from({ length: order }, (_, i) => i);
  for (let k = 0; k < order; k++) {
    let pivot = k;
    for (let i = k + 1; i < order; i++) {
      if (Math.abs(factors[i * order + k] ?? 0) > Math.abs(factors[pivot * order + k] ?? 0)) pivot = i;
    }
    if (pivot !== k) {
      for (let j = 0; j < order; j++) {
        const kept = factors[k * order + j] ?? 0;
        factors[k * order + j] = factors[pivot * order + j] ?? 0;
        factors[pivot * order + j] = kept;
      }
      const row = rows[k] ?? 0;
      rows[k] = rows[pivot] ?? 0;
      rows[pivot] = row;
    }
    const diagonal = factors[k * order + k] ?? 0;
    for (let i = k + 1; i < order; i++) {
      const ratio = (factors[i * order + k] ?? 0) / diagonal;
      factors[i * order + k] = ratio;
      if (ratio === 0) continue;
      for (let j = k + 1; j < order; j++) {
        factors[i * order + j] = (factors[i * order + j] ?? 0) - ratio * (factors[k * order + j] ?? 0);
      }
    }
  }
  return { order, factors, rows };
}

/** out = m⁻¹ right, with m given by its factors; all of the same order. `out` is not `right`. */
export function solve(out: Float64Array, { order, factors, rows }: Factors, right: Float64Array): void {
  for (let i = 0; i < order; i++) {
    const from = (rows[i] ?? 0) * order;
    for (let j = 0; j < order; j++) out[i * order + j] = right[from + j] ?? 0;
    for (let k = 0; k < i; k++) subtractRow(out, i, k, factors[i * order + k] ?? 0, order);
  }
  for (let i = order - 1; i >= 0; i--) {
    for (let k = i + 1; k < order; k++) subtractRow(out, i, k, factors[i * order + k] ?? 0, order);
    const diagonal = factors[i * order + i] ?? 0;
    for (let j = 0; j < order; j++) out[i * order + j] = (out[i * order + j] ?? 0) / diagonal;
  }
}

/** row i −= factor × row k. */
function subtractRow(m: Float64Array, i: number, k: number, factor: number, order: number): void {
  if (factor === 0) return;
  for (let j = 0; j < order; j++) {
    m[i * order + j] = (m[i * order + j] ?? 0) - factor * (m[k * order + j] ?? 0);
  }
}
