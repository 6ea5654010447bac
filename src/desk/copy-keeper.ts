/** Automatic copies: at most one an hour, only after changes, one at a time, and never in the way of writing. */
import type { CopyMade } from '../preload/index.ts';
import type { Problem, Result } from '../quantity/index.ts';
import { makeCopy } from './copies.ts';
import type { Files } from './files.ts';

const HOUR = 3_600_000;
/** Before the next attempt after one that failed. */
const PATIENCE = 5 * 60_000;

export interface CopyKeeper {
  /** Told after each change and at each opening; copies in the background when a copy is due. */
  consider(notebook: string): void;
  make(notebook: string, copiesFolder: string): Promise<Result<CopyMade>>;
  /** Why the last attempt failed, until one succeeds. */
  readonly failure: Problem | undefined;
  /** Resolves when no copy is being made. */
  settled(): Promise<void>;
}

/** @param chosen  the folder that the person chose; empty for none */
export function copyKeeper(files: Files, now: () => Date, chosen: () => Promise<string>): CopyKeeper {
  const notBefore = new Map<string, number>(); // by notebook
  let failure: Problem | undefined;
  let queue: Promise<unknown> = Promise.resolve();

  async function making(notebook: string, copiesFolder: string): Promise<Result<CopyMade>> {
    const made = await makeCopy(files, notebook, copiesFolder, now());
    failure = made.ok ? made.value.problems[0] : made.problem;
    notBefore.set(notebook, now().getTime() + (made.ok ? pause(made.value) : PATIENCE));
    return made;
  }

  /** From the time of the newest copy on, be it made now or an hour's part ago by another start of the program. */
  function pause({ copy, isNew }: CopyMade): number {
    const age = now().getTime() - Date.parse(copy.at);
    return isNew || age < 0 || age > HOUR ? HOUR : HOUR - age;
  }

  async function considered(notebook: string): Promise<void> {
    const copiesFolder = await chosen();
    if (copiesFolder === '') notBefore.delete(notebook);
    else await making(notebook, copiesFolder);
  }

  /** One after the other, so that two attempts never write the same file. */
  function inTurn<T>(task: () => Promise<T>): Promise<T> {
    const result = queue.then(task);
    queue = result.catch(() => undefined);
    return result;
  }

  return {
    consider(notebook) {
      const due = notBefore.get(notebook) ?? 0;
      const time = now().getTime();
      // A clock that went back more than an hour would otherwise put the next copy off for as long.
      if (time < due && due - time <= HOUR) return;
      notBefore.set(notebook, time + PATIENCE);
      inTurn(() => considered(notebook)).catch(() => undefined); // nobody waits for it; `failure` says what was wrong
    },
    make: (notebook, copiesFolder) => inTurn(() => making(notebook, copiesFolder)),
    get failure() {
      return failure;
    },
    async settled() {
      await queue;
    },
  };
}
