/** How timings are printed: median, tails and the number of times, in milliseconds. */
export function report(what: string, times: readonly number[]): void {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): string =>
    (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0).toFixed(2);
  console.log(`${what}: p50 ${at(0.5)} ms, p95 ${at(0.95)} ms, p99 ${at(0.99)} ms (${sorted.length} times)`);
}
