/**
 * The line between gains that hold and gains that do not: where it crosses the sides of a grid's cells, found to the last
 * digits that matter, and joined to lines.
 */

/** One line, point after point: closed where its last point is its first. */
export interface BorderLine {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** How far apart a crossing may be from the border, in parts of a cell's side. */
const NEAR_ENOUGH = 1e-7;

/**
 * The zero lines of a function over a grid.
 *
 * @param xs      grid positions, rising
 * @param ys      grid positions, rising
 * @param values  f at each, row after row of equal y; not a number counts as positive
 * @param f       the function itself, for what lies between
 * @returns lines with f ≤ 0 on one side
 * Source: marching squares, two opposite corners being told apart by the middle of their cell; the crossings by
 * regula falsi with the Illinois step.
 */
export function borderLines(
  xs: Float64Array,
  ys: Float64Array,
  values: Float64Array,
  f: (x: number, y: number) => number,
): BorderLine[] {
  const columns = xs.length;
  const crossings = new Map<number, readonly [number, number]>();
  const neighbours = new Map<number, number[]>();
  const inside = (i: number, j: number): boolean => (values[j * columns + i] ?? 1) < 0;

  /** The crossing of a side: 2 × the number of the corner it starts from, plus 1 for the one that goes up. */
  const crossing = (i: number, j: number, up: 0 | 1): number => {
    const id = 2 * (j * columns + i) + up;
    if (!crossings.has(id)) {
      const [x0, y0] = [xs[i] ?? 0, ys[j] ?? 0];
      const [x1, y1] = up === 1 ? [x0, ys[j + 1] ?? 0] : [xs[i + 1] ?? 0, y0];
      const other = up === 1 ? values[(j + 1) * columns + i] : values[j * columns + i + 1];
      const along = (s: number): number => f(x0 + s * (x1 - x0), y0 + s * (y1 - y0));
      const s = changeOfSign(along, values[j * columns + i] ?? 1, other ?? 1);
      crossings.set(id, [x0 + s * (x1 - x0), y0 + s * (y1 - y0)]);
    }
    return id;
  };
  const join = (a: number, b: number): void => {
    neighbours.set(a, [...(neighbours.get(a) ?? []), b]);
    neighbours.set(b, [...(neighbours.get(b) ?? []), a]);
  };

  for (let j = 0; j + 1 < ys.length; j++) {
    for (let i = 0; i + 1 < columns; i++) {
      const corners = [inside(i, j), inside(i + 1, j), inside(i + 1, j + 1), inside(i, j + 1)] as const;
      const sides = [
        () => crossing(i, j, 0),
        () => crossing(i + 1, j, 1),
        () => crossing(i, j + 1, 0),
        () => crossing(i, j, 1),
      ] as const;
      const crossed = sides.flatMap((side, k) => (corners[k] !== corners[(k + 1) % 4] ? [side()] : []));
      const [a = 0, b = 0, c = 0, d = 0] = crossed;
      if (crossed.length === 2) join(a, b);
      if (crossed.length === 4) {
        const middle = f(((xs[i] ?? 0) + (xs[i + 1] ?? 0)) / 2, ((ys[j] ?? 0) + (ys[j + 1] ?? 0)) / 2) < 0;
        // the corners that are not like the middle are cut off
        if (middle === corners[0]) {
          join(a, b);
          join(c, d);
        } else {
          join(a, d);
          join(b, c);
        }
      }
    }
  }
  return chains(neighbours).map((ids) => ({
    x: Float64Array.from(ids, (id) => crossings.get(id)?.[0] ?? Number.NaN),
    y: Float64Array.from(ids, (id) => crossings.get(id)?.[1] ?? Number.NaN),
  }));
}

/** Lines through all points: first those with ends, then those that close. */
function chains(neighbours: ReadonlyMap<number, readonly number[]>): number[][] {
  const used = new Set<number>();
  const walk = (start: number): number[] => {
    const line = [start];
    used.add(start);
    for (let here = start; ; ) {
      const next = neighbours.get(here)?.find((id) => !used.has(id));
      if (next === undefined) break;
      used.add(next);
      line.push(next);
      here = next;
    }
    return line;
  };
  const open = [...neighbours].filter(([id, to]) => to.length === 1 && !used.has(id)).map(([id]) => id);
  const lines: number[][] = [];
  for (const id of open) if (!used.has(id)) lines.push(walk(id));
  for (const id of neighbours.keys()) {
    if (used.has(id)) continue;
    const line = walk(id);
    lines.push([...line, id]);
  }
  return lines;
}

/** Where between 0 and 1 a function changes sign; values that are not numbers only say on which side they lie. */
function changeOfSign(f: (s: number) => number, at0: number, at1: number): number {
  let [low, high] = [0, 1];
  let [atLow, atHigh] = [at0, at1];
  for (let step = 0; step < 60 && high - low > NEAR_ENOUGH; step++) {
    const falsi = low - (atLow * (high - low)) / (atHigh - atLow);
    const s = falsi > low && falsi < high && step % 5 !== 4 ? falsi : (low + high) / 2;
    const value = f(s);
    if (value < 0 === atLow < 0) {
      low = s;
      atLow = value;
      atHigh /= 2;
    } else {
      high = s;
      atHigh = value;
      atLow /= 2;
    }
  }
  return (low + high) / 2;
}
