/** How the nested readers and the evaluation of formulas leave on the first fault; caught at the folder's border. */
import type { ProblemCode } from '../catalogue.ts';
import { type Problem, ProblemError, type Result } from '../problem.ts';

export function fault(
  code: ProblemCode,
  figures: Problem['figures'],
  range: NonNullable<Problem['range']>,
): ProblemError {
  return new ProblemError({ code, place: '', figures, range });
}

/** A problem of a part of the text, told in characters of the whole. */
export function moved(problem: Problem, by: number): ProblemError {
  const [from, to] = problem.range ?? [0, 0];
  return new ProblemError({ ...problem, range: [from + by, to + by] });
}

/** Runs `work`; a fault becomes a problem at `place`, a bug stays an exception. */
export function caught<T>(place: string, work: () => T): Result<T> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: { ...error.problem, place } };
    throw error;
  }
}
