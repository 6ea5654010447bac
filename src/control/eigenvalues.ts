/**
 * Eigenvalues of small real matrices, for poles. Own code, because a pole that is not found must not stop the window:
 * the iteration is limited, and it carries no eigenvectors along, which nobody asks for.
 */
import { DomainError } from '../mechanics/index.ts';
import type { Complex } from './complex.ts';
import { columnNorm } from './dense.ts';

/** QR steps by eigenvalue; three do as a rule. */
const MOST_STEPS = 100;

/**
 * All eigenvalues of a real matrix.
 *
 * @param matrix  row after row
 * @param order   number of rows
 * @returns as many as the order, conjugate pairs both given; in no particular order
 * @throws DomainError  where an entry is not finite, or the iteration does not settle
 * Source: balancing, Householder reduction to Hessenberg form and Francis' double-shift QR steps; G. H. Golub,
 * C. F. Van Loan, Matrix Computations, 4th ed., sections 7.4 and 7.5 (from memory).
 */
export function eigenvalues(matrix: Float64Array, order: number): Complex[] {
  if (!matrix.every(Number.isFinite)) {
    throw new DomainError(
      'coefficient of the loop',
      Number.NaN,
      'its figures have to lie within the range of numbers',
    );
  }
  const h = Float64Array.from(matrix);
  balance(h, order);
  reduceToHessenberg(h, order);
  return hessenbergEigenvalues(h, order);
}

/**
 * All eigenvalues of a real matrix that has nothing below its first subdiagonal; the matrix is used up.
 *
 * @throws DomainError  where the iteration does not settle
 */
export function hessenbergEigenvalues(h: Float64Array, order: number): Complex[] {
  const size = columnNorm(h, order);
  const found: Complex[] = [];
  let last = order - 1;
  let steps = 0;
  while (last >= 0) {
    const first = startOfBlock(h, order, last, size);
    if (first === last) {
      found.push({ re: h[last * order + last] ?? 0, im: 0 });
      last -= 1;
      steps = 0;
    } else if (first === last - 1) {
      found.push(...ofTwoRows(h, order, first));
      last -= 2;
      steps = 0;
    } else {
      steps++;
      if (steps > MOST_STEPS) {
        throw new DomainError(
          'coefficient of the loop',
          Number.NaN,
          'its poles cannot be told apart from rounding',
        );
      }
      doubleShiftStep(h, order, first, last, steps % 10 === 0);
    }
  }
  return found;
}

/** Scales rows and columns by powers of two until they are of like size: no rounding, smaller errors after it. */
function balance(h: Float64Array, n: number): void {
  for (let round = 0, changed = true; changed && round < 30; round++) {
    changed = false;
    for (let i = 0; i < n; i++) {
      let column = 0;
      let row = 0;
      for (let j = 0; j < n; j++) {
        if (j === i) continue;
        column += Math.abs(h[j * n + i] ?? 0);
        row += Math.abs(h[i * n + j] ?? 0);
      }
      if (column === 0 || row === 0) continue;
      const factor = 2 ** Math.round(Math.log2(row / column) / 2);
      if (!(column * factor + row / factor < 0.95 * (column + row))) continue;
      changed = true;
      for (let j = 0; j < n; j++) {
        h[j * n + i] = (h[j * n + i] ?? 0) * factor;
        h[i * n + j] = (h[i * n + j] ?? 0) / factor;
      }
    }
  }
}

/**
 * Turns every column but the last two into one that ends just below the diagonal: reflections from both sides, whose
 * vector is kept in the column itself while they are applied.
 */
function reduceToHessenberg(h: Float64Array, n: number): void {
  const v = new Float64Array(n);
  for (let k = 0; k + 2 < n; k++) {
    let size = 0;
    for (let i = k + 2; i < n; i++) size = Math.max(size, Math.abs(h[i * n + k] ?? 0));
    if (size === 0) continue;
    const lead = h[(k + 1) * n + k] ?? 0;
    size = Math.max(size, Math.abs(lead));
    let square = 0;
    for (let i = k + 1; i < n; i++) square += ((h[i * n + k] ?? 0) / size) ** 2;
    const head = lead > 0 ? -size * Math.sqrt(square) : size * Math.sqrt(square);
    const tau = (head - lead) / head;
    v[k + 1] = 1;
    for (let i = k + 2; i < n; i++) v[i] = (h[i * n + k] ?? 0) / (lead - head);
    for (let j = k + 1; j < n; j++) {
      let sum = 0;
      for (let i = k + 1; i < n; i++) sum += (v[i] ?? 0) * (h[i * n + j] ?? 0);
      sum *= tau;
      for (let i = k + 1; i < n; i++) h[i * n + j] = (h[i * n + j] ?? 0) - sum * (v[i] ?? 0);
    }
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = k + 1; j < n; j++) sum += (h[i * n + j] ?? 0) * (v[j] ?? 0);
      sum *= tau;
      for (let j = k + 1; j < n; j++) h[i * n + j] = (h[i * n + j] ?? 0) - sum * (v[j] ?? 0);
    }
    h[(k + 1) * n + k] = head;
    for (let i = k + 2; i < n; i++) h[i * n + k] = 0;
  }
}

/** Where the block that ends in a row begins: above it the subdiagonal has vanished, and is set to 0. */
function startOfBlock(h: Float64Array, n: number, last: number, size: number): number {
  let first = last;
  while (first > 0) {
    const around = Math.abs(h[first * n + first] ?? 0) + Math.abs(h[(first - 1) * n + first - 1] ?? 0);
    const step = Math.abs(h[first * n + first - 1] ?? 0);
    if (step <= Number.EPSILON * (around > 0 ? around : size)) {
      h[first * n + first - 1] = 0;
      break;
    }
    first--;
  }
  return first;
}

function ofTwoRows(h: Float64Array, n: number, i: number): [Complex, Complex] {
  const a = h[i * n + i] ?? 0;
  const b = h[i * n + i + 1] ?? 0;
  const c = h[(i + 1) * n + i] ?? 0;
  const d = h[(i + 1) * n + i + 1] ?? 0;
  const half = (a - d) / 2;
  const square = half * half + b * c;
  if (square < 0) {
    const im = Math.sqrt(-square);
    const re = (a + d) / 2;
    return [
      { re, im },
      { re, im: -im },
    ];
  }
  // the far one first, the near one from the product, so that neither loses digits
  const far = half >= 0 ? half + Math.sqrt(square) : half - Math.sqrt(square);
  return [
    { re: d + far, im: 0 },
    { re: far === 0 ? d : d - (b * c) / far, im: 0 },
  ];
}

/**
 * One QR step with the two eigenvalues of the last two rows as shifts, carried down the block as a bulge of three
 * rows; with strange shifts where those go round in circles.
 */
function doubleShiftStep(h: Float64Array, n: number, first: number, last: number, strange: boolean): void {
  const at = (i: number, j: number): number => h[i * n + j] ?? 0;
  let sum = at(last - 1, last - 1) + at(last, last);
  let product = at(last - 1, last - 1) * at(last, last) - at(last - 1, last) * at(last, last - 1);
  if (strange) {
    const size = Math.abs(at(last, last - 1)) + Math.abs(at(last - 1, last - 2));
    sum = 1.5 * size;
    product = size * size;
  }
  const corner = at(first, first);
  let x = (corner * (corner - sum) + product) / at(first + 1, first) + at(first, first + 1);
  let y = corner + at(first + 1, first + 1) - sum;
  let z = at(first + 2, first + 1);
  for (let k = first; k < last; k++) {
    const three = k + 2 <= last;
    if (!three) z = 0;
    const size = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
    if (y !== 0 || z !== 0) {
      // the reflection that takes (x, y, z) to (head, 0, 0) is 1 − τ v vᵀ with v = (1, v₁, v₂)
      const length = size * Math.hypot(x / size, y / size, z / size);
      const head = x > 0 ? -length : length;
      const tau = (head - x) / head;
      const v1 = y / (x - head);
      const v2 = z / (x - head);
      const r0 = k * n;
      const r1 = r0 + n;
      const r2 = r1 + n;
      for (let j = Math.max(first, k - 1); j <= last; j++) {
        const h0 = h[r0 + j] ?? 0;
        const h1 = h[r1 + j] ?? 0;
        const h2 = three ? (h[r2 + j] ?? 0) : 0;
        const share = tau * (h0 + v1 * h1 + v2 * h2);
        h[r0 + j] = h0 - share;
        h[r1 + j] = h1 - share * v1;
        if (three) h[r2 + j] = h2 - share * v2;
      }
      const bottom = Math.min(k + 3, last);
      for (let i = first; i <= bottom; i++) {
        const c = i * n + k;
        const h0 = h[c] ?? 0;
        const h1 = h[c + 1] ?? 0;
        const h2 = three ? (h[c + 2] ?? 0) : 0;
        const share = tau * (h0 + v1 * h1 + v2 * h2);
        h[c] = h0 - share;
        h[c + 1] = h1 - share * v1;
        if (three) h[c + 2] = h2 - share * v2;
      }
    }
    if (k > first) {
      h[(k + 1) * n + k - 1] = 0;
      if (three) h[(k + 2) * n + k - 1] = 0;
    }
    x = at(k + 1, k);
    y = k + 2 <= last ? at(k + 2, k) : 0;
    z = k + 3 <= last ? at(k + 3, k) : 0;
  }
}
