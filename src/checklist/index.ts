/**
 * `checklist/`: from a revision and templates to the checklists and test cards of a run, and the run itself as a
 * state machine that refuses to clear while anything is open. Templates are data in `templates/`; nothing here knows
 * a window, a file or a clock.
 */
export { isWithin, limitsInWords } from './answer.ts';
export { builtinCards, builtinChecklists, checklistsOf } from './builtin.ts';
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
export { canClear, canFinish, nextItem, type Obstacle, standing } from './obstacles.ts';
export { type Comparison, outcomeOf } from './outcome.ts';
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
  type Beginning,
  beginRun,
  clear,
  declareVoid,
  finish,
  type Given,
} from './run.ts';
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
