/** The functions that a formula may call: value, dimension and exact slopes of each. Adding one is adding an entry. */
import { type Dimension, NUMBER, timesPower } from '../dimension.ts';
import { requireSame } from './arithmetic.ts';
import { fault } from './fault.ts';
import type { Span } from './token.ts';
import { type Operand, requireNumber, step } from './value.ts';

interface FormulaFunction {
  readonly least: number;
  readonly most: number;
  readonly apply: (name: string, operands: readonly Operand[], span: Span) => Operand;
}

/** A function of one plain number. */
function ofNumber(
  value: (x: number) => number,
  slope: (x: number) => number,
  domain?: { readonly holds: (x: number) => boolean },
): FormulaFunction {
  return one((name, a, span) => {
    const x = requireNumber(name, a);
    if (domain && !domain.holds(x)) throw fault('expression.not-real', { what: name, value: x }, a.span);
    return step(value(x), [[slope(x), a]], NUMBER, span);
  });
}

function one(apply: (name: string, a: Operand, span: Span) => Operand): FormulaFunction {
  return {
    least: 1,
    most: 1,
    apply: (name, [a], span) => {
      if (!a) throw new RangeError(`${name} was called without its operand`);
      return apply(name, a, span);
    },
  };
}

/** The least or the greatest of values of one dimension; its uncertainty is that of the value chosen. */
function chosen(isBetter: (a: number, b: number) => boolean): FormulaFunction {
  return {
    least: 1,
    most: 50,
    apply: (_, operands, span) => {
      const best = operands.reduce((a, b) => {
        requireSame('compared', a, b, span);
        return isBetter(b.value.value, a.value.value) ? b : a;
      });
      return { ...best, span };
    },
  };
}

const withinOne = { holds: (x: number) => Math.abs(x) <= 1 };
const positive = { holds: (x: number) => x > 0 };
const naturalLogarithm = ofNumber(Math.log, (x) => 1 / x, positive);

const FUNCTIONS: ReadonlyMap<string, FormulaFunction> = new Map([
  [
    'sqrt',
    one((name, a, span) => {
      const x = a.value.value;
      if (x < 0) throw fault('expression.not-real', { what: name, value: x }, a.span);
      const half: Dimension = timesPower(a.dimension, a.dimension, -0.5);
      return step(Math.sqrt(x), [[0.5 / Math.sqrt(x), a]], half, span);
    }),
  ],
  [
    'abs',
    one((_, a, span) => step(Math.abs(a.value.value), [[a.value.value < 0 ? -1 : 1, a]], a.dimension, span)),
  ],
  ['sin', ofNumber(Math.sin, Math.cos)],
  ['cos', ofNumber(Math.cos, (x) => -Math.sin(x))],
  ['tan', ofNumber(Math.tan, (x) => 1 / Math.cos(x) ** 2)],
  ['asin', ofNumber(Math.asin, (x) => 1 / Math.sqrt(1 - x * x), withinOne)],
  ['acos', ofNumber(Math.acos, (x) => -1 / Math.sqrt(1 - x * x), withinOne)],
  ['atan', ofNumber(Math.atan, (x) => 1 / (1 + x * x))],
  ['atan2', { least: 2, most: 2, apply: quadrantAngle }],
  ['exp', ofNumber(Math.exp, Math.exp)],
  ['ln', naturalLogarithm],
  ['log', naturalLogarithm],
  ['log10', ofNumber(Math.log10, (x) => 1 / (x * Math.LN10), positive)],
  ['min', chosen((a, b) => a < b)],
  ['max', chosen((a, b) => a > b)],
]);

/** atan2(y, x) of two quantities of one kind. */
function quadrantAngle(name: string, operands: readonly Operand[], span: Span): Operand {
  const [a, b] = operands;
  if (!a || !b) throw new RangeError('atan2 was called without its operands');
  requireSame('compared', a, b, span);
  const [y, x] = [a.value.value, b.value.value];
  const radius = Math.hypot(x, y);
  if (x === 0 && y === 0) throw fault('expression.not-real', { what: name, value: 0 }, span);
  return step(
    Math.atan2(y, x),
    [
      [x / radius / radius, a],
      [-y / radius / radius, b],
    ],
    NUMBER,
    span,
  );
}

export const functionNames: readonly string[] = [...FUNCTIONS.keys()];

export function isFunction(name: string): boolean {
  return FUNCTIONS.has(name);
}

/** @throws ProblemError for an unknown name, a wrong number of operands, or a value outside the domain */
export function called(name: string, nameSpan: Span, operands: readonly Operand[], span: Span): Operand {
  const entry = FUNCTIONS.get(name);
  if (!entry) {
    throw fault('expression.unknown-function', { name, functions: functionNames.join(', ') }, nameSpan);
  }
  if (operands.length < entry.least || operands.length > entry.most) {
    const wanted = entry.least === entry.most ? String(entry.least) : `${entry.least} to ${entry.most}`;
    throw fault('expression.operand-count', { name, wanted, found: operands.length }, span);
  }
  return entry.apply(name, operands, span);
}
