/**
 * `control/`: the balance loop of the linear vehicle, exactly as the controller samples it: plant, hold, delay, closed-loop
 * poles, margins and how each margin changes with each figure. Plain SI numbers in, values out; an unstable loop is a
 * value too. Knows the mechanics, nothing of notebooks or screens.
 */
export {
  type BalanceController,
  type BalanceLoop,
  balanceLoop,
  closedLoopMatrix,
  feedbackRows,
  longestDelayInSamples,
  type RateSource,
  rateSourceCode,
  rateSourceOfCode,
  rateSources,
  respond,
  restingState,
  type SampledLoop,
} from './balance-loop.ts';
export {
  type BorderCloud,
  borderCloud,
  type CloudOptions,
  type DrawLoop,
  type LoopSpread,
} from './border-cloud.ts';
export { type ClosedLoopPoles, closedLoopPoles, type Mode, mode } from './closed-loop-poles.ts';
export { commandNoise, type ReadingNoise } from './command-noise.ts';
export type { Complex } from './complex.ts';
export { type DelayMargin, delayMargin } from './delay-margin.ts';
export { discretise, type SampledPlant } from './discretise.ts';
export { eigenvalues } from './eigenvalues.ts';
export { type FrequencySweep, frequencySweep } from './frequency-sweep.ts';
export { type GainName, type Gains, gainNames } from './gain-family.ts';
export { type GainAxis, type GainMap, type GainMapOptions, gainMap } from './gain-map.ts';
export {
  type BalanceHardware,
  type HardwareFigure,
  type LinearPlant,
  linearPlant,
  type NeutralMode,
  neutralModeText,
  type PlantState,
  type Signal,
  type StateSpace,
} from './linear-plant.ts';
export { bandwidthLimit, delayLimit, largestLeanCaught, wrongWayLimit } from './loop-limits.ts';
export { controlCalculations, type LoopFigures, loopOf } from './loop-margins.ts';
export { type LoopTransfer, loopTransfer, type TransferPoint } from './loop-transfer.ts';
export { type LoopFigure, type MarginSlopes, marginSlopes, type Slopes } from './margin-slopes.ts';
export {
  type LoopMargins,
  loopMargins,
  type StableLoop,
  spectralRadius,
  type UnstableLoop,
} from './margins.ts';
export { matrixExponential } from './matrix-exponential.ts';
export { closedLoopModes, type ModeName, type NamedMode, openLoopModes, type Part } from './mode-names.ts';
export {
  type GainMargin,
  type GainMargins,
  gainCrossovers,
  gainMargins,
  type PeakSensitivity,
  type PhaseMargin,
  peakSensitivity,
  phaseMargin,
} from './nyquist.ts';
export { type RandomNumbers, randomNumbers } from './random.ts';
export { type RateReading, rateReading } from './rate-reading.ts';
export {
  type GainLimits,
  mostRobustGains,
  type RobustGains,
  type Shortest,
  type WantedMargins,
} from './robust-gains.ts';
export type { BorderLine } from './stability-border.ts';
