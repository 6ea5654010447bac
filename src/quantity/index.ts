/**
 * `quantity/`: values with units and uncertainty. It reads what people write (`parseQuantity`, `parseUncertainty`),
 * prints it back (`formatValue`, `formatUncertain`), carries uncertainty through calculations (`propagate` to first
 * order, `adaptiveDraws` by random draws) and works out the formulas of log entries and templates (`expression/`).
 * Conversions are exact; an angle is a number in every sum and told apart where people type; whatever cannot be read
 * is a `Problem` with its place and an example. Knows nothing of vehicles. A new unit is a row in `unit-table.ts`, a
 * new function of formulas an entry in `expression/functions.ts`, a new sentence about bad input a line in
 * `catalogue.ts`.
 */

export { adaptiveDraws, type DrawBatch, type DrawnSpread, type DrawRule } from './adaptive-draws.ts';
export type { ProblemCode } from './catalogue.ts';
export {
  agree,
  COVERAGE,
  countFrom,
  firstOrderInterval,
  type Interval,
  numericalTolerance,
} from './coverage.ts';
export { type Dimension, describeDimension, sameDimension, unitTextOf } from './dimension.ts';
export { type DistributionShape, deviation, type RandomSource, shapeOf } from './distribution.ts';
export {
  type CalcLine,
  type Evaluated,
  type Expression,
  evaluateCalcBlock,
  evaluateCondition,
  evaluateExpression,
  parseExpression,
  type Scope,
  type ScopeValue,
} from './expression/index.ts';
export { formatUncertain, formatValue, toDisplay } from './format.ts';
export {
  bad,
  good,
  type Phrased,
  type Problem,
  ProblemError,
  phrase,
  type Result,
  sentence,
} from './problem.ts';
export { propagate, type UncertainValues, type Values } from './propagate.ts';
export { parseQuantity, type Quantity } from './quantity.ts';
export { asBound, asResolution, type StatedAs } from './standard.ts';
export {
  combine,
  covariance,
  exact,
  independent,
  standardUncertainty,
  type Uncertain,
} from './uncertain.ts';
export { parseUncertainty } from './uncertainty.ts';
export { dimension, parseUnit, type Unit } from './unit.ts';
export { printedUnit } from './unit-print.ts';
