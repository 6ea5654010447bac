/**
 * `quantity/`: values with units and uncertainty: reading what people write, printing it back, and carrying
 * uncertainty through sums. Knows nothing of vehicles.
 */

export type { ProblemCode } from './catalogue.ts';
export { type Dimension, describeDimension, sameDimension, unitTextOf } from './dimension.ts';
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
