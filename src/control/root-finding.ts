/** Zeros of smooth functions of one variable, once a sign change has been found. */

/**
 * The zero between two points of opposite sign, to the last digit that the function carries.
 *
 * @param f     continuous
 * @param low   where f has the value atLow
 * @param high  where f has the value atHigh, of the other sign
 * @returns a point with f = 0, or next to the change of sign
 * Source: regula falsi with the Illinois step (M. Dowell, P. Jarratt 1971), and a bisection where it is slow.
 */
export function zeroBetween(
  f: (x: number) => number,
  low: number,
  high: number,
  atLow: number,
  atHigh: number,
): number {
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  let a = low;
  let fa = atLow;
  let b = high;
  let fb = atHigh;
  for (let step = 0; step < 100; step++) {
    const width = Math.abs(b - a);
    if (width <= 4 * Number.EPSILON * Math.max(Math.abs(a), Math.abs(b))) break;
    const x = step % 12 === 11 ? (a + b) / 2 : b - (fb * (b - a)) / (fb - fa);
    const fx = f(x);
    if (fx === 0 || x === a || x === b) return x;
    if (fx > 0 === fb > 0) {
      fa /= 2;
    } else {
      a = b;
      fa = fb;
    }
    b = x;
    fb = fx;
  }
  return b;
}
