/**
 * `margins/`: from the facts of a prototype and a revision to its figures, margins and notices, each with its
 * uncertainty and the trace back to what was measured. The one place that says which calculation feeds on what;
 * computes no physics of its own and reads no store.
 */
export { assess } from './assess.ts';
export { checkField, fieldAt } from './check-field.ts';
export {
  type Comparison,
  compareRevisions,
  type FigureChange,
  type InputChange,
  type MarginChange,
} from './compare.ts';
export type { DrawBins } from './draw-bins.ts';
export type { DrawnFigure, DrawnMargin, DrawnResult } from './draw-subject.ts';
export {
  confirmedInWords,
  drawCount,
  holdsInWords,
  outsideInWords,
  spreadInWords,
  verdictInWords,
} from './draws-in-words.ts';
export {
  type BudgetLine,
  budgetOf,
  type ExplainedInput,
  type Explanation,
  explainFigure,
  explainMargin,
} from './explain.ts';
export {
  type DriveFamily,
  driveFamily,
  type FactPage,
  type FactSpec,
  factApplies,
  factSpecs,
  resolveFact,
} from './facts.ts';
export type { FieldSpec, Range } from './field.ts';
export type {
  Assessment,
  Figure,
  FigureGroup,
  FigureResult,
  FigureSpec,
  Margin,
  MarginSpec,
  Notice,
  Trace,
  Verdict,
} from './figure.ts';
export { type FactLocation, locateFact } from './locate.ts';
export { COVERAGE_FACTOR, marginSpecs } from './margin.ts';
export { type MonteCarlo, monteCarlo, type RandomDrawOptions } from './monte-carlo.ts';
export { bodyFields, partFields, partFieldsOf, sectionFields } from './part-fields.ts';
export { registry } from './registry.ts';
export {
  type CalculationInput,
  type CalculationOutput,
  runCalculation,
  type StatedValue,
} from './run-calculation.ts';
export { type FigureName, figureNames, scopeOf, whyUnknown } from './scope.ts';
export { factsBehind, howGot, inputLabel, sourceText } from './trace.ts';
export { type TurningPoint, type TurningPointLimits, turningPoints } from './turning-point.ts';
