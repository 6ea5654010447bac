/** Sums, products and powers of quantities with their uncertainty. */
import {
  describeDimension,
  isNumber,
  isRepresentable,
  NUMBER,
  sameDimension,
  timesPower,
} from '../dimension.ts';
import { fault } from './fault.ts';
import type { Span } from './token.ts';
import type { Arithmetic } from './tree.ts';
import { isUncertain, type Operand, requireNumber, step } from './value.ts';

export function negated(a: Operand, span: Span): Operand {
  return step(-a.value.value, [[-1, a]], a.dimension, span);
}

export function calculated(sign: Arithmetic, a: Operand, b: Operand, span: Span): Operand {
  switch (sign) {
    case '+':
    case '-':
      return sum(sign === '+' ? 1 : -1, a, b, span);
    case '*':
      return product(a, b, span);
    case '/':
      return quotient(a, b, span);
    case '^':
      return power(a, b, span);
  }
}

function sum(direction: 1 | -1, a: Operand, b: Operand, span: Span): Operand {
  requireSame(direction === 1 ? 'added' : 'subtracted', a, b, span);
  const value = a.value.value + direction * b.value.value;
  return step(
    value,
    [
      [1, a],
      [direction, b],
    ],
    a.dimension,
    span,
  );
}

function product(a: Operand, b: Operand, span: Span): Operand {
  const [x, y] = [a.value.value, b.value.value];
  return step(
    x * y,
    [
      [y, a],
      [x, b],
    ],
    timesPower(a.dimension, b.dimension, 1),
    span,
  );
}

function quotient(a: Operand, b: Operand, span: Span): Operand {
  const [x, y] = [a.value.value, b.value.value];
  if (y === 0) throw fault('expression.division-by-zero', {}, b.span);
  const slopes = [
    [1 / y, a],
    [-x / y / y, b],
  ] as const;
  return step(x / y, slopes, timesPower(a.dimension, b.dimension, -1), span);
}

/**
 * aᵇ. A number may have any exponent; a quantity with a unit an exact one, such that whole or half exponents of the
 * base units come out: (9 m²)^0.5 is 3 m, but there is no (9 m²)^0.3.
 */
function power(a: Operand, b: Operand, span: Span): Operand {
  const exponent = requireNumber('the exponent', b);
  const base = a.value.value;
  let dimension = a.dimension;
  if (!isNumber(a.dimension)) {
    dimension = timesPower(NUMBER, a.dimension, exponent);
    if (isUncertain(b) || !isRepresentable(dimension)) {
      throw fault('expression.bad-exponent', { found: describeDimension(a.dimension) }, b.span);
    }
  }
  if (base === 0 && exponent < 0) throw fault('expression.division-by-zero', {}, a.span);
  if (base < 0 && (!Number.isInteger(exponent) || isUncertain(b))) {
    throw fault('expression.not-real', { what: 'a power with a broken exponent', value: base }, span);
  }
  const value = base ** exponent;
  const slopeOfBase = exponent === 0 ? 0 : exponent * base ** (exponent - 1);
  const slopeOfExponent = base === 0 ? 0 : value * Math.log(base);
  return step(
    value,
    [
      [slopeOfBase, a],
      [slopeOfExponent, b],
    ],
    dimension,
    span,
  );
}

/** @param how  what was to be done with them: added, compared … */
export function requireSame(how: string, a: Operand, b: Operand, span: Span): void {
  if (sameDimension(a.dimension, b.dimension)) return;
  throw fault(
    'expression.dimensions-differ',
    { how, left: describeDimension(a.dimension), right: describeDimension(b.dimension) },
    span,
  );
}
