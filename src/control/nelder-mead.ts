/**
 * The highest point of a function of a few variables within a box, by values alone: for what has kinks where one limit
 * takes over from another, and no slopes worth having.
 */

export interface Summit {
  readonly point: Float64Array;
  readonly value: number;
  readonly evaluations: number;
}

export interface ClimbOptions {
  /** Side of the first simplex, in parts of the box. */
  readonly size: number;
  /** Ends when the simplex is smaller than this, in parts of the box. */
  readonly tolerance: number;
  readonly mostEvaluations: number;
}

/**
 * Climbs from a point with a simplex that reflects, stretches and shrinks; points outside the box are taken to its side.
 *
 * @param f      of a point in the unit box, 0 to 1 in each direction; not a number counts as lowest
 * @param start  in the unit box
 * Source: J. A. Nelder, R. Mead, Computer Journal 7 (1965) 308, with the usual coefficients 1, 2, 1/2, 1/2.
 */
export function climb(
  f: (point: Float64Array) => number,
  start: Float64Array,
  { size, tolerance, mostEvaluations }: ClimbOptions,
): Summit {
  const n = start.length;
  let evaluations = 0;
  const at = (point: Float64Array): { point: Float64Array; value: number } => {
    evaluations++;
    const value = f(point);
    return { point, value: Number.isNaN(value) ? Number.NEGATIVE_INFINITY : value };
  };
  const within = (x: number): number => Math.min(Math.max(x, 0), 1);
  const corners = [at(Float64Array.from(start, within))];
  for (let i = 0; i < n; i++) {
    const corner = Float64Array.from(start, within);
    const x = corner[i] ?? 0;
    corner[i] = x + size <= 1 ? x + size : x - size;
    corners.push(at(corner));
  }
  const byHeight = (a: { value: number }, b: { value: number }): number => b.value - a.value;
  while (evaluations < mostEvaluations) {
    corners.sort(byHeight);
    const best = corners[0];
    const worst = corners[n];
    const second = corners[n - 1];
    if (!best || !worst || !second) break;
    const width = Math.max(
      ...corners.map(({ point }) => Math.max(...point.map((x, i) => Math.abs(x - (best.point[i] ?? 0))))),
    );
    if (width < tolerance) break;
    const centre = new Float64Array(n);
    for (const { point } of corners.slice(0, n))
      point.forEach((x, i) => {
        centre[i] = (centre[i] ?? 0) + x / n;
      });
    const beyond = (factor: number): Float64Array =>
      centre.map((x, i) => within(x + factor * (x - (worst.point[i] ?? 0))));
    const reflected = at(beyond(1));
    if (reflected.value > best.value) {
      const stretched = at(beyond(2));
      corners[n] = stretched.value > reflected.value ? stretched : reflected;
    } else if (reflected.value > second.value) {
      corners[n] = reflected;
    } else {
      const outside = reflected.value > worst.value;
      const nearer = at(beyond(outside ? 0.5 : -0.5));
      if (nearer.value > Math.max(worst.value, outside ? reflected.value : worst.value)) {
        corners[n] = nearer;
      } else {
        for (let i = 1; i <= n; i++) {
          const { point } = corners[i] ?? worst;
          corners[i] = at(point.map((x, k) => ((best.point[k] ?? 0) + x) / 2));
        }
      }
    }
  }
  corners.sort(byHeight);
  const { point = start, value = Number.NEGATIVE_INFINITY } = corners[0] ?? {};
  return { point, value, evaluations };
}
