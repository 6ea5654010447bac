/** Random draws from the window: in a worker of their own, which is ended when they are done or no longer wanted. */
import '../trusted-types.ts';
import { proxy, wrap } from 'comlink';
import type { DrawnResult } from '../../margins/index.ts';
import { bad, type Result } from '../../quantity/index.ts';
import type { DrawsQuestion, DrawsWorker } from './draws-worker.ts';

export interface RunningDraws {
  /** Never resolves once stopped. */
  readonly result: Promise<Result<DrawnResult>>;
  stop(): void;
}

/** @param told  called now and then with the number of draws so far */
export function startDraws(question: DrawsQuestion, told: (draws: number) => void): RunningDraws {
  const worker = new Worker(new URL('./draws-worker.ts', import.meta.url), { type: 'module', name: 'draws' });
  const failed = new Promise<never>((_, reject) => {
    worker.addEventListener('error', ({ message }) =>
      reject(new Error(message || 'the script did not load')),
    );
  });
  const drawn = wrap<DrawsWorker>(worker).draw(question, proxy(told));
  const result = Promise.race([drawn, failed])
    .catch((error: unknown): Result<DrawnResult> => {
      const detail = error instanceof Error ? error.message : String(error);
      return bad('draws.not-started', 'random draws', { detail });
    })
    .finally(() => worker.terminate());
  return { result, stop: () => worker.terminate() };
}
