/** A published model drawn by the adaptive procedure of JCGM 101:2008, with the random numbers of the program. */
import { randomNumbers } from '../../src/control/index.ts';
import {
  adaptiveDraws,
  type DrawnSpread,
  type DrawRule,
  type RandomSource,
} from '../../src/quantity/index.ts';

/** One result drawn by the adaptive procedure; never by two batches alone, which agree by luck with one seed in a few. */
export function drawn(model: (random: RandomSource) => number, rule: Partial<DrawRule> = {}): DrawnSpread {
  const random = randomNumbers(101);
  const [spread] = adaptiveDraws(
    ([values]) => {
      if (values) for (let i = 0; i < values.length; i++) values[i] = model(random);
    },
    1,
    { digits: 2, part: 1 / 5, fewestBatches: 10, most: 5e6, ...rule },
  );
  if (!spread) throw new Error('nothing was drawn');
  return spread;
}
