/**
 * Works out a formula over the figures of a scope: SI value, dimension and first-order contributions in one pass.
 * A name of the scope wins over a constant of the same name; nothing else is ever looked up.
 */

import { describeDimension, NUMBER, sameDimension, unitTextOf } from '../dimension.ts';
import type { Result } from '../problem.ts';
import { exact } from '../uncertain.ts';
import { calculated, negated } from './arithmetic.ts';
import { CONSTANTS, KEYWORDS } from './constants.ts';
import { caught, fault } from './fault.ts';
import { called, functionNames, isFunction } from './functions.ts';
import { nearestName } from './nearest.ts';
import type { Expression } from './parse.ts';
import type { Span } from './token.ts';
import type { Term } from './tree.ts';
import type { Operand, Scope, ScopeValue } from './value.ts';

export interface Evaluated extends ScopeValue {
  /** The unit to print it in: the one after `in`, else the SI unit of its dimension. */
  readonly unitText: string;
}

/**
 * @param place  where the formula stands, for the problem
 * @returns      the result in SI, or the first problem with its place in the formula's text. A name that the scope
 *               does not have is `expression.unknown-symbol`, with the name among its figures
 */
export function evaluateExpression(
  expression: Expression,
  scope: Scope,
  place = 'expression',
): Result<Evaluated> {
  return caught(place, () => {
    const { value, dimension } = operandOf(expression.root, scope);
    const { target } = expression;
    if (target && !sameDimension(target.dimension, dimension)) {
      const figures = { found: describeDimension(dimension), unit: target.text };
      throw fault('expression.cannot-show-in', figures, [0, expression.text.length]);
    }
    return { value, dimension, unitText: target?.text ?? unitTextOf(dimension) };
  });
}

/** @throws ProblemError */
export function operandOf(term: Term, scope: Scope): Operand {
  switch (term.kind) {
    case 'number':
      return { value: exact(term.value), dimension: NUMBER, span: term.span };
    case 'quantity':
      requireClear(term, scope);
      return { value: exact(term.si), dimension: term.unit.dimension, span: term.span };
    case 'name':
      return { ...named(term.name, term.span, scope), span: term.span };
    case 'minus':
      return negated(operandOf(term.term, scope), term.span);
    case 'arithmetic':
      return calculated(term.sign, operandOf(term.left, scope), operandOf(term.right, scope), term.span);
    case 'call':
      return called(
        term.name,
        term.nameSpan,
        term.terms.map((operand) => operandOf(operand, scope)),
        term.span,
      );
    case 'not':
      throw fault('expression.not-needs-brackets', {}, term.span);
    default:
      throw fault('expression.condition-here', {}, term.span);
  }
}

function requireClear(term: Extract<Term, { kind: 'quantity' }>, scope: Scope): void {
  const name = term.joined.find((word) => scope.has(word));
  if (name !== undefined) throw fault('expression.unit-or-name', { name, unit: term.unit.text }, term.span);
}

function named(name: string, span: Span, scope: Scope): ScopeValue {
  const known = scope.get(name) ?? CONSTANTS.get(name);
  if (known) return known;
  if (isFunction(name)) throw fault('expression.function-alone', { name }, span);
  if (KEYWORDS.has(name)) throw fault('expression.condition-here', {}, span);
  const near = nearestName(name, [...scope.keys(), ...CONSTANTS.keys(), ...functionNames]);
  throw fault('expression.unknown-symbol', { name, hint: near ? ` Did you mean “${near}”?` : '' }, span);
}
