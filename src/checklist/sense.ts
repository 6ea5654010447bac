/**
 * Whether the expressions of a template make sense: known names, known units, quantities of the right kind. They are
 * worked out once on stand-in values, since only the dimensions matter here.
 */
import { figureNames } from '../margins/index.ts';
import {
  type Dimension,
  describeDimension,
  dimension,
  evaluateCondition,
  evaluateExpression,
  exact,
  type Problem,
  parseExpression,
  parseQuantity,
  parseUnit,
  type ScopeValue,
  sameDimension,
} from '../quantity/index.ts';
import { isWordName } from './evaluate.ts';
import { measuredNames, measuredUnits } from './measured.ts';
import { equipmentNames } from './scope.ts';
import { piecesOf } from './wording.ts';

const NUMBER = dimension('1');

/** Stand-in values: 1 for everything, so that neither a division nor a root of it fails. */
const standIns: ReadonlyMap<string, ScopeValue> = new Map<string, ScopeValue>([
  ...figureNames.map(({ name, unit }): [string, ScopeValue] => [
    name,
    { value: exact(1), dimension: dimension(unit) },
  ]),
  ...equipmentNames.map((name): [string, ScopeValue] => [name, { value: exact(1), dimension: NUMBER }]),
]);

/** Waits may rest on what runs measure, beside the figures. */
const withMeasured: ReadonlyMap<string, ScopeValue> = new Map<string, ScopeValue>([
  ...standIns,
  ...measuredNames.map((name): [string, ScopeValue] => [
    name,
    { value: exact(1), dimension: dimension(measuredUnits[name]) },
  ]),
]);

/** Problems of value, not of sense: with other figures than the stand-ins they need not arise. */
const OF_VALUE: ReadonlySet<Problem['code']> = new Set(['expression.not-finite', 'expression.no-slope']);

export function checkFigureName(name: string, place: string): Problem | undefined {
  if (figureNames.some((figure) => figure.name === name)) return undefined;
  return unknownName(name, place);
}

export function checkCondition(text: string, place: string): Problem | undefined {
  const strangers = strangersIn(text, place);
  if (strangers) return strangers;
  const result = evaluateCondition(text, standIns, place);
  return result.ok || OF_VALUE.has(result.problem.code) ? undefined : result.problem;
}

export function checkUnit(unit: string, place: string): Problem | undefined {
  const parsed = parseUnit(unit, place);
  return parsed.ok ? undefined : parsed.problem;
}

/** What is shown as an example of a reading has to be one. */
export function checkExample(text: string, unit: string, place: string): Problem | undefined {
  const parsed = parseQuantity(text, unit, place);
  return parsed.ok ? undefined : parsed.problem;
}

/** A limit, or a figure that a reading is held against: readable, and of the same kind as its unit. */
export function checkLimit(text: string, unit: string, place: string, scope = standIns): Problem | undefined {
  const result = dimensionOf(text, place, scope);
  if ('code' in result) return result;
  const parsed = parseUnit(unit, place);
  if (!parsed.ok) return parsed.problem;
  if (sameDimension(result.dimension, parsed.value.dimension)) return undefined;
  return {
    code: 'template.unit-mismatch',
    place,
    figures: {
      text,
      unit,
      found: describeDimension(result.dimension),
      expected: describeDimension(parsed.value.dimension),
    },
  };
}

/** The length of a wait: readable, and a time. */
export function checkWait(text: string, place: string): Problem | undefined {
  return checkLimit(text, 's', place, withMeasured);
}

/** Every figure of a text: a known name or a readable expression, in a unit of its kind. */
export function checkText(text: string, place: string): Problem | undefined {
  const pieces = piecesOf(text, place);
  if (!pieces.ok) return pieces.problem;
  for (const piece of pieces.value) {
    if (piece.kind === 'words' || isWordName(piece.expression)) continue;
    const fault =
      piece.unit === undefined
        ? faultOf(dimensionOf(piece.expression, place))
        : checkLimit(piece.expression, piece.unit, place);
    if (fault) return { ...fault, range: piece.range };
  }
  return undefined;
}

function dimensionOf(
  text: string,
  place: string,
  scope = standIns,
): Problem | { readonly dimension: Dimension } {
  const strangers = strangersIn(text, place, scope);
  if (strangers) return strangers;
  const parsed = parseExpression(text, place);
  if (!parsed.ok) return parsed.problem;
  const result = evaluateExpression(parsed.value, scope, place);
  return result.ok ? { dimension: result.value.dimension } : result.problem;
}

function faultOf(result: Problem | { readonly dimension: Dimension }): Problem | undefined {
  return 'code' in result ? result : undefined;
}

function strangersIn(text: string, place: string, scope = standIns): Problem | undefined {
  const parsed = parseExpression(text, place);
  if (!parsed.ok) return parsed.problem;
  const stranger = parsed.value.symbols.find((name) => !scope.has(name));
  return stranger === undefined ? undefined : unknownName(stranger, place);
}

function unknownName(name: string, place: string): Problem {
  return { code: 'template.unknown-name', place, figures: { name } };
}
