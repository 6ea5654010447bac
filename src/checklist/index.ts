/**
 * `checklist/`: from a revision and templates to the checklists and test cards of a run, and the run itself as a
 * state machine that refuses to clear while anything is open. Templates are data in `templates/`; nothing here knows
 * a window, a file or a clock.
 */
export { isWithin, limitsInWords } from './answer.ts';
export { type Beginning, beginRun } from './begin.ts';
export { builtinCards, builtinChecklists, builtinLadders, checklistsOf } from './builtin.ts';
export {
  type DraftCard,
  freeze,
  generateCard,
  type Issue,
  issueCard,
  type NewCard,
  type ReadableCard,
  readableCard,
  type Subject,
} from './card.ts';
export { type CautionPlace, cautionPlaces, cautions, cautionsFor, type SafetyMessage } from './cautions.ts';
export { generateChecklist, readingList } from './generate.ts';
export { type Argument, carryOver, ladderOf, type RungState } from './ladder.ts';
export { type Ladder, type Rung, readLadder } from './ladder-template.ts';
export { type MeasuredName, type Measurement, measuredBefore, measuredNames } from './measured.ts';
export { canClear, canFinish, nextItem, type Obstacle, standing } from './obstacles.ts';
export { type Comparison, outcomeOf } from './outcome.ts';
export { type Decision, isOverridden, type Override } from './overrides.ts';
export {
  type FailureGroup,
  failuresByCause,
  failuresByPart,
  type OpenFailure,
  openFailures,
  type ParetoBar,
  paretoOfCauses,
  repeatedFailures,
} from './patterns.ts';
export {
  type Hindrance,
  type OverrideOf,
  type Readiness,
  readinessOf,
  type Templates,
} from './readiness.ts';
export {
  type Probability,
  type ProbabilityLevel,
  probabilities,
  type Risk,
  riskMatrix,
  riskOf,
  type Severity,
  type SeverityLevel,
  severities,
} from './risk.ts';
export {
  abort,
  answerItem,
  beginWait,
  clear,
  declareVoid,
  finish,
  type Given,
  overrideItem,
} from './run.ts';
export type { RungStanding } from './rung-standing.ts';
export { type EquipmentName, equipmentNames, type WordName, wordNames } from './scope.ts';
export type { CardTemplate, ChecklistTemplate, TemplateItem, TemplatePause } from './template.ts';
export {
  LONGEST_PAUSE,
  readCardTemplate,
  readChecklistTemplate,
  readTemplate,
  type Template,
  type Warning,
} from './templates.ts';
export {
  type Evidence,
  type Verification,
  type VerificationCell,
  type VerificationRow,
  verificationMatrix,
} from './verification.ts';
export { type Clock, clockNotices, passedSince, type WaitTime, waitTime } from './wait.ts';
