/** Runs in a worker: draws a figure or a margin at random, and tells now and then how far it is. */
import '../no-code-from-text.ts';
import { expose } from 'comlink';
import { type DrawnResult, monteCarlo } from '../../margins/index.ts';
import type { Prototype, Revision } from '../../notebook/index.ts';
import { bad, type Result } from '../../quantity/index.ts';

export interface DrawsQuestion {
  readonly prototype: Prototype;
  readonly revision: Revision;
  /** Name of a figure, or id of a margin. */
  readonly name: string;
  readonly seed: number;
}

/** One digit of the uncertainty is what a verdict can use; a second would take a hundred times as long. */
const DIGITS = 1;
/** Milliseconds between two messages. */
const TELL_EVERY = 100;

const worker = {
  draw(
    { prototype, revision, name, seed }: DrawsQuestion,
    told: (draws: number) => void,
  ): Result<DrawnResult> {
    let last = performance.now();
    const progress = (draws: number): void => {
      if (performance.now() - last < TELL_EVERY) return;
      last = performance.now();
      told(draws);
    };
    const drawn = monteCarlo(prototype, revision, { seed, digits: DIGITS, names: [name], progress });
    return drawn.ok ? (drawn.value.results.get(name) ?? bad('draws.unknown', name, { name })) : drawn;
  },
};

export type DrawsWorker = typeof worker;

expose(worker);
