/**
 * `notebook/`: what is recorded. Record kinds with their schemas, changes as values, and the state that the
 * journal's changes add up to. Knows nothing of files, windows or physics.
 */
export { type Change, change, create, type JournalEntry, type Json, type Setting, set } from './change.ts';
export type { FailureReport } from './failure.ts';
export { fingerprint } from './fingerprint.ts';
export {
  type NotebookRecord,
  type RecordInput,
  type RecordKind,
  type RecordOf,
  recordKind,
  schemas,
} from './kinds.ts';
export { revisionLetter, revisionNumber } from './letters.ts';
export type { Attachment, LogEntry } from './log-entry.ts';
export {
  type Addition,
  type Choose,
  type Conflict,
  type Merge,
  merge,
  type Side,
} from './merge.ts';
export type { ChainedEntry } from './merge-fork.ts';
export { valueAt } from './path.ts';
export type { Prototype, Requirements } from './prototype.ts';
export { type JsonSchema, publishedSchema } from './published-schema.ts';
export {
  type Basis,
  isKnown,
  type KnownQuantity,
  type QuantityField,
  type UncertaintyKind,
} from './quantity-field.ts';
export type {
  Actuator,
  BallastDrive,
  Body,
  Chemistry,
  Gimbal,
  Loop,
  Pack,
  Part,
  PartRole,
  RateSource,
  Revision,
  Rotor,
  RotorSection,
} from './revision.ts';
export { apply, applyAll, emptyState, invert, type NotebookState, type Replay, replay } from './state.ts';
export type {
  ChecklistAnswer,
  ChecklistItem,
  ChecklistPhase,
  FrozenFigure,
  Run,
  TestCard,
} from './test-card.ts';
