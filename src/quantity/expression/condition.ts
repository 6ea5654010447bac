/**
 * Conditions of templates: comparisons joined by `and`, `or`, `not`. The figures' values decide, not their
 * uncertainties.
 *
 * A name that is not known yet leaves the whole undecided only where it matters: `false and x` is false whatever
 * x may turn out to be, on either side. A checklist can then ask for x exactly when the item depends on it.
 */

import { isNumber } from '../dimension.ts';
import type { Problem, Result } from '../problem.ts';
import { ProblemError } from '../problem.ts';
import { requireSame } from './arithmetic.ts';
import { operandOf } from './evaluate.ts';
import { caught, fault } from './fault.ts';
import { parseExpression } from './parse.ts';
import type { Comparison, Term } from './tree.ts';
import type { Operand, Scope } from './value.ts';

/** @returns whether it holds; a missing figure is `expression.unknown-symbol` with its name among the figures */
export function evaluateCondition(text: string, scope: Scope, place = 'condition'): Result<boolean> {
  const parsed = parseExpression(text, place);
  if (!parsed.ok) return parsed;
  return caught(place, () => {
    if (parsed.value.target) throw fault('expression.in-condition', {}, [0, text.length]);
    const truth = truthOf(parsed.value.root, scope);
    if (typeof truth === 'boolean') return truth;
    throw new ProblemError(truth);
  });
}

/** True, false, or the missing name that it hangs on. */
type Truth = boolean | Problem;

function truthOf(term: Term, scope: Scope): Truth {
  switch (term.kind) {
    case 'not': {
      const inner = truthOf(term.term, scope);
      return typeof inner === 'boolean' ? !inner : inner;
    }
    case 'and':
    case 'or':
      return joined(term.kind === 'or', term.left, term.right, scope);
    case 'comparison':
      return unlessMissing(() => compared(term.signs, term.terms, scope));
    case 'name':
      if (term.name === 'true' || term.name === 'false') return term.name === 'true';
      break;
  }
  return unlessMissing(() => asTruth(operandOf(term, scope)));
}

/** @param decisive  the truth of one side that settles the whole: true for `or`, false for `and` */
function joined(decisive: boolean, left: Term, right: Term, scope: Scope): Truth {
  const first = truthOf(left, scope);
  if (first === decisive) return decisive;
  const second = truthOf(right, scope);
  if (second === decisive) return decisive;
  return typeof first === 'boolean' ? second : first;
}

function unlessMissing(work: () => boolean): Truth {
  try {
    return work();
  } catch (error) {
    const isMissing = error instanceof ProblemError && error.problem.code === 'expression.unknown-symbol';
    if (isMissing) return error.problem;
    throw error;
  }
}

/** Equipment is given as 1 where it is fitted, else 0; any other number is no answer to yes or no. */
function asTruth(operand: Operand): boolean {
  const { value } = operand.value;
  if (isNumber(operand.dimension) && (value === 0 || value === 1)) return value === 1;
  throw fault('expression.no-condition', {}, operand.span);
}

const HOLDS: Readonly<Record<Comparison, (a: number, b: number) => boolean>> = {
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
  '==': (a, b) => a === b,
  '!=': (a, b) => a !== b,
};

function compared(signs: readonly Comparison[], terms: readonly Term[], scope: Scope): boolean {
  const operands = terms.map((term) => operandOf(term, scope));
  return signs.every((sign, index) => {
    const [a, b] = operands.slice(index, index + 2);
    if (!a || !b) return false;
    // nought is nought in every unit
    if (!isBareNought(terms[index]) && !isBareNought(terms[index + 1])) {
      requireSame('compared', a, b, [a.span[0], b.span[1]]);
    }
    return HOLDS[sign](a.value.value, b.value.value);
  });
}

function isBareNought(term: Term | undefined): boolean {
  return term?.kind === 'number' && term.value === 0;
}
