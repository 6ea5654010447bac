/** Random numbers that are the same in every run, so that a failure can be repeated. */

/** Numbers in [0, 1) from a seed (xorshift, 32 bits). */
export function seededRandom(seed: number): () => number {
  let x = (seed * 2_654_435_761) >>> 0 || 1;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    x >>>= 0;
    return x / 4_294_967_296;
  };
}
