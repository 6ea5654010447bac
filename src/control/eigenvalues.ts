/** Eigenvalues of small real matrices, for poles: the library's decomposition in the form the loop is held in. */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { Complex } from './complex.ts';

/**
 * All eigenvalues of a real matrix.
 *
 * @param matrix  row after row, every entry finite
 * @param order   number of rows
 * @returns as many as the order, conjugate pairs both given; in no particular order
 * @throws RangeError where an entry is not finite (the iteration would not end)
 * Source: Hessenberg reduction and QR iteration, as ml-matrix has it.
 */
export function eigenvalues(matrix: Float64Array, order: number): Complex[] {
  if (order === 0) return [];
  if (!matrix.every(Number.isFinite)) throw new RangeError('eigenvalues need a matrix of finite numbers');
  const rows = new Matrix(order, order);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j < order; j++) rows.set(i, j, matrix[i * order + j] ?? 0);
  }
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(rows, {
    assumeSymmetric: false,
  });
  return realEigenvalues.map((re, i) => ({ re, im: imaginaryEigenvalues[i] ?? 0 }));
}
