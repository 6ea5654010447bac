/**
 * Eigenvalues for loops by the thousand. A map asks for the poles of one loop at ten thousand gains, and the gains change
 * nothing but one row: the matrix is brought once into a form in which they change its first row only, and what is left
 * for each of them is the iteration.
 */
/** A x + b (f · x) with its gains not yet in it: A upper Hessenberg, b a multiple of the first unit vector. */
export interface ReducedLoop {
  readonly order: number;
  /** Row after row; nothing below the first subdiagonal. */
  readonly matrix: Float64Array;
  /** b = scale e₁. */
  readonly scale: number;
  /** Rows f of the same loop, in the same coordinates. */
  readonly rows: readonly Float64Array[];
}

/**
 * Brings a matrix, the column through which a loop acts on it, and the rows that it may act with, into coordinates in
 * which the column is the first unit vector and the matrix upper Hessenberg.
 *
 * Source: Householder reflections; the controller Hessenberg form, e.g. G. H. Golub, C. F. Van Loan, Matrix Computations,
 * 4th ed., section 7.4, begun with the reflection that takes b to e₁.
 */
export function reduceLoop(
  matrix: Float64Array,
  column: Float64Array,
  rows: readonly Float64Array[],
): ReducedLoop {
  const order = column.length;
  const a = Float64Array.from(matrix);
  const reduced = rows.map((row) => Float64Array.from(row));
  const reflector = new Float64Array(order);
  const scale = reflect(reflector, column, 0);
  applyToAll(a, reduced, reflector, order);
  const below = new Float64Array(order);
  for (let k = 0; k + 2 < order; k++) {
    for (let i = 0; i < order; i++) below[i] = a[i * order + k] ?? 0;
    reflect(reflector, below, k + 1);
    applyToAll(a, reduced, reflector, order);
    for (let i = k + 2; i < order; i++) a[i * order + k] = 0;
  }
  return { order, matrix: a, scale, rows: reduced };
}

/** The unit vector v, 0 before `from`, with (1 − 2 v vᵀ) x = (… , value, 0, … , 0); gives the value. */
function reflect(v: Float64Array, x: Float64Array, from: number): number {
  v.fill(0);
  let square = 0;
  for (let i = from; i < x.length; i++) square += (x[i] ?? 0) ** 2;
  const first = x[from] ?? 0;
  const size = Math.sqrt(square);
  if (size === Math.abs(first)) return first;
  const value = first > 0 ? -size : size;
  for (let i = from; i < x.length; i++) v[i] = x[i] ?? 0;
  v[from] = first - value;
  const length = Math.sqrt(2 * size * (size + Math.abs(first)));
  for (let i = from; i < x.length; i++) v[i] = (v[i] ?? 0) / length;
  return value;
}

/** Reflects the matrix from both sides, and the rows. */
function applyToAll(a: Float64Array, rows: readonly Float64Array[], v: Float64Array, order: number): void {
  for (let j = 0; j < order; j++) {
    let along = 0;
    for (let i = 0; i < order; i++) along += (v[i] ?? 0) * (a[i * order + j] ?? 0);
    for (let i = 0; i < order; i++) a[i * order + j] = (a[i * order + j] ?? 0) - 2 * along * (v[i] ?? 0);
  }
  for (let i = 0; i < order; i++) reflectRow(a.subarray(i * order, (i + 1) * order), v);
  for (const row of rows) reflectRow(row, v);
}

function reflectRow(row: Float64Array, v: Float64Array): void {
  let along = 0;
  for (let j = 0; j < v.length; j++) along += (row[j] ?? 0) * (v[j] ?? 0);
  for (let j = 0; j < v.length; j++) row[j] = (row[j] ?? 0) - 2 * along * (v[j] ?? 0);
}
