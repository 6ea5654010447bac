/**
 * `quantity/`: values with units and uncertainty: reading what people write, printing it back, and carrying
 * uncertainty through sums. Knows nothing of vehicles.
 */

export type { ProblemCode } from './catalogue.ts';
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
export {
  combine,
  covariance,
  exact,
  independent,
  propagate,
  standardUncertainty,
  type Uncertain,
  type UncertainValues,
  type Values,
} from './uncertain.ts';
