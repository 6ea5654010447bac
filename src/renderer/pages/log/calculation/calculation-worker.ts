/** Runs in a worker: evaluates one calculation at a time, so that the window can put an end to it. */
import { expose } from 'comlink';
import { evaluateCalcBlock } from '../../../../quantity/index.ts';
import type { CalcLine, Scope } from './scope.ts';

const worker = {
  ready: (): true => true,
  evaluate: (code: string, scope: Scope): readonly CalcLine[] => evaluateCalcBlock(code, scope),
};

export type CalculationWorker = typeof worker;

expose(worker);
