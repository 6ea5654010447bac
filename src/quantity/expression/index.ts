/**
 * `quantity/expression/`: formulas that people write in log entries and templates. A library finds the precedence of
 * the signs (`tree.ts`); what is allowed, what it means and how uncertain it is, is ours.
 */
export { type CalcLine, evaluateCalcBlock } from './calc-block.ts';
export { evaluateCondition } from './condition.ts';
export { type Evaluated, evaluateExpression } from './evaluate.ts';
export { type Expression, parseExpression } from './parse.ts';
export type { Scope, ScopeValue } from './value.ts';
