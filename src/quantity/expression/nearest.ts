/** The known word that was probably meant by an unknown one. */

/** At most this share of the letters may differ, or the suggestion would be a guess. */
const LARGEST_SHARE = 0.34;

/** The nearest of `known` by single letters put in, left out, changed or swapped; undefined when none is near. */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = Math.max(1, Math.floor(name.length * LARGEST_SHARE)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - name.length) >= least) continue;
    const distance = edits(name.toLowerCase(), candidate.toLowerCase());
    if (distance < least && distance < name.length) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

/** Optimal string alignment: the edit distance in which two neighbouring letters may also change places. */
function edits(a: string, b: string): number {
  let twoBack: readonly number[] = [];
  let oneBack: readonly number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min((oneBack[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (oneBack[j - 1] ?? 0) + change);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) cost = Math.min(cost, (twoBack[j - 2] ?? 0) + 1);
      row.push(cost);
    }
    twoBack = oneBack;
    oneBack = row;
  }
  return oneBack[b.length] ?? 0;
}
