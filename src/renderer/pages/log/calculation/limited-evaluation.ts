/**
 * Evaluates calculations away from the window and within a time limit, so that an endless or huge one is stopped
 * and the window stays alive. One calculation at a time: the limit counts the calculation, not the queue.
 */
import { bad, type Problem } from '../../../../quantity/index.ts';

/** A worker that was started: what it can do, and how to put an end to it. */
export interface RunningWorker<Question, Answer> {
  /** Resolves when it is loaded; the limit does not count that. */
  ready(): Promise<unknown>;
  answer(question: Question): Promise<Answer>;
  stop(): void;
}

export type Limited<Answer> =
  | { readonly ok: true; readonly value: Answer }
  | { readonly ok: false; readonly problem: Problem };

export interface Limits {
  /** Milliseconds for one calculation. */
  readonly answer: number;
  /** Milliseconds for loading the worker. */
  readonly start: number;
}

export const limits: Limits = { answer: 500, start: 15_000 };

/**
 * @param start  makes a worker; called when the first question comes, and again after one had to be stopped
 * @returns      asks the worker; a question that takes too long gets a problem, and the next one a new worker
 */
export function limitedEvaluation<Question, Answer>(
  start: () => RunningWorker<Question, Answer>,
  { answer, start: loading }: Limits = limits,
): (question: Question) => Promise<Limited<Answer>> {
  let running: RunningWorker<Question, Answer> | undefined;
  let queue: Promise<unknown> = Promise.resolve();

  function discard(): void {
    running?.stop();
    running = undefined;
  }

  async function ask(question: Question): Promise<Limited<Answer>> {
    try {
      running ??= start();
      if ((await within(running.ready(), loading)) === LATE) {
        discard();
        return bad('calc.not-started', 'calculation', { detail: 'it took too long to load' });
      }
      const answered = await within(running.answer(question), answer);
      if (answered !== LATE) return { ok: true, value: answered };
      discard();
      return bad('calc.stopped', 'calculation', { limit: answer / 1000 });
    } catch (error) {
      discard();
      const detail = error instanceof Error ? error.message : String(error);
      return bad('calc.not-started', 'calculation', { detail });
    }
  }

  return (question) => {
    const asked = queue.then(() => ask(question));
    queue = asked;
    return asked;
  };
}

const LATE = Symbol('late');

async function within<T>(promise: Promise<T>, milliseconds: number): Promise<T | typeof LATE> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<typeof LATE>((resolve) => {
    timer = setTimeout(() => resolve(LATE), milliseconds);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}
