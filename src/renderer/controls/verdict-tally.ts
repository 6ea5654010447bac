/** How many margins hold, and how many do not. */
import type { Verdict } from '../../margins/index.ts';

/** `1 fails, 2 in doubt, 9 hold`: worst first, and nothing said of what there is none of; blank without margins. */
export function verdictTally(margins: readonly { readonly verdict: Verdict }[]): string {
  const count = (verdict: Verdict): number => margins.filter((margin) => margin.verdict === verdict).length;
  const words: readonly (readonly [number, one: string, several: string])[] = [
    [count('fails'), 'fails', 'fail'],
    [count('in doubt'), 'in doubt', 'in doubt'],
    [count('unknown'), 'unknown', 'unknown'],
    [count('holds'), 'holds', 'hold'],
  ];
  return words
    .filter(([number]) => number > 0)
    .map(([number, one, several]) => `${number} ${number === 1 ? one : several}`)
    .join(', ');
}
