/** What a schema found wrong with a record: the one place and reason that tells a person most. */
import type { z } from 'zod';

type Issue = z.core.$ZodIssue;

/** The place as a path of the record, and the reason in a few words without a full stop. */
export interface Fault {
  readonly path: string;
  readonly detail: string;
}

/**
 * The first issue. Where a value may have several forms, that it has none of them says little: of the forms, the one
 * that it comes nearest to is taken, which is the one whose faults lie deepest, and of those the one with fewest.
 */
export function firstFault(issues: readonly Issue[], above: readonly PropertyKey[] = []): Fault {
  const [issue] = issues;
  if (issue === undefined) return { path: above.join('/'), detail: 'it does not have the expected form' };
  const path = [...above, ...issue.path];
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const nearest = issue.errors.reduce((best, other) => (distance(other) < distance(best) ? other : best));
    return firstFault(nearest, path);
  }
  return { path: path.map(String).join('/'), detail: issue.message };
}

function distance(issues: readonly Issue[]): number {
  const wrongKind = issues.some(({ path }) => path.length === 0) ? 1000 : 0;
  return wrongKind + issues.length;
}
