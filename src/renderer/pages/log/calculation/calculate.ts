/** Calculations of the window: in a worker of their own, within a time limit; at once where there are no workers. */
import '../../../trusted-types.ts';
import { wrap } from 'comlink';
import { evaluateCalcBlock } from '../../../../quantity/index.ts';
import type { CalculationWorker } from './calculation-worker.ts';
import { type EvaluateBlock, entryCalculation } from './evaluate-entry.ts';
import { limitedEvaluation, type RunningWorker } from './limited-evaluation.ts';
import type { CalcLine, Scope } from './scope.ts';

interface Question {
  readonly code: string;
  readonly scope: Scope;
}

function startWorker(): RunningWorker<Question, readonly CalcLine[]> {
  const worker = new Worker(new URL('./calculation-worker.ts', import.meta.url), {
    type: 'module',
    name: 'calculations',
  });
  const remote = wrap<CalculationWorker>(worker);
  const broken = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) =>
      reject(new Error(event.message || 'the script did not load')),
    );
  });
  broken.catch(() => undefined); // heard by whoever waits for an answer
  const loaded = remote.ready();
  return {
    ready: () => Promise.race([loaded, broken]),
    answer: ({ code, scope }) => Promise.race([remote.evaluate(code, scope), broken]),
    stop: () => worker.terminate(),
  };
}

const limited = limitedEvaluation(startWorker);

const inWorker: EvaluateBlock = (code, scope) => limited({ code, scope });

const atOnce: EvaluateBlock = async (code, scope) => ({ ok: true, value: evaluateCalcBlock(code, scope) });

/** One for the window, so that an entry read, left and read again is calculated once. */
export const calculate = entryCalculation(typeof Worker === 'undefined' ? atOnce : inWorker);
