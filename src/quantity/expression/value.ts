/** Values that formulas are made of, and the first-order rules by which an uncertainty passes through each step. */
import { type Dimension, describeDimension, isNumber } from '../dimension.ts';
import { combine, type Uncertain } from '../uncertain.ts';
import { fault } from './fault.ts';
import type { Span } from './token.ts';

/** A figure that formulas may use: SI value with its uncertainty, and what it measures. */
export interface ScopeValue {
  readonly value: Uncertain;
  readonly dimension: Dimension;
}

/** The figures by name. */
export type Scope = ReadonlyMap<string, ScopeValue>;

/** A value and the characters that it came from. */
export interface Operand extends ScopeValue {
  readonly span: Span;
}

/**
 * A step of a formula: the value, and the slope towards each operand. Slopes of exact operands do not matter and
 * may be anything.
 */
export function step(
  value: number,
  slopes: readonly (readonly [slope: number, operand: Operand])[],
  dimension: Dimension,
  span: Span,
): Operand {
  if (!Number.isFinite(value)) throw fault('expression.not-finite', {}, span);
  const uncertain = slopes.filter(([, operand]) => isUncertain(operand));
  if (uncertain.some(([slope]) => !Number.isFinite(slope)))
    throw fault('expression.no-slope', { value }, span);
  const terms = uncertain.map(([slope, operand]) => [slope, operand.value] as const);
  return { value: combine(value, terms), dimension, span };
}

export function isUncertain(operand: Operand): boolean {
  return operand.value.contributions.size > 0;
}

/** @param what  the function or sign that wants it, as the reader sees it */
export function requireNumber(what: string, operand: Operand): number {
  if (!isNumber(operand.dimension)) {
    throw fault(
      'expression.number-wanted',
      { what, found: describeDimension(operand.dimension) },
      operand.span,
    );
  }
  return operand.value.value;
}
