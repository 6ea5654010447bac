/**
 * `mechanics/`: mass properties, ballast, rotor, gimbal, drive and pack as pure functions of plain SI numbers, each with
 * its registered calculation beside it: equation, symbols, units, validity, source. Knows nothing of notebooks,
 * uncertainty or screens. One family of equations a file; a new calculation is one file (or one entry in its
 * family's) and one row of checks.
 */
import { actuatorCalculations } from './actuator.ts';
import { ballastLimitCalculations } from './ballast-limits.ts';
import { ballastPositionCalculations } from './ballast-position.ts';
import { bodyCalculations } from './bodies.ts';
import type { Calculation } from './calculation.ts';
import { gimbalTimeCalculations } from './gimbal-time.ts';
import { gyroTopplingCalculations } from './gyro-toppling.ts';
import { lateralCalculations } from './lateral.ts';
import { massSumCalculations } from './mass-sums.ts';
import { packCalculations } from './pack.ts';
import { rotorCalculations } from './rotor.ts';
import { rotorSpeedCalculations } from './rotor-speed.ts';
import { rotorStressCalculations } from './rotor-stress.ts';
import { topplingCalculations } from './toppling.ts';

/** Every calculation of this part, in the order in which the handbook prints them. */
export const mechanicsCalculations: readonly Calculation[] = [
  ...massSumCalculations,
  ...bodyCalculations,
  ...topplingCalculations,
  ...ballastPositionCalculations,
  ...ballastLimitCalculations,
  ...lateralCalculations,
  ...rotorCalculations,
  ...rotorSpeedCalculations,
  ...rotorStressCalculations,
  ...gyroTopplingCalculations,
  ...gimbalTimeCalculations,
  ...actuatorCalculations,
  ...packCalculations,
];

export { armHoldingMoment, slideHoldingForce, stopToStopTime } from './actuator.ts';
export { largestLean, largestLeanByHand, rightingMoment } from './ballast-limits.ts';
export { armPosition, type BallastPosition, slidePosition } from './ballast-position.ts';
export {
  boxRollInertia,
  cylinderInertiaAcrossAxis,
  cylinderInertiaAlongAxis,
  rodInertiaAcrossAxis,
  tubeInertiaAcrossAxis,
  tubeInertiaAlongAxis,
} from './bodies.ts';
export {
  type Calculation,
  type CalculationSpec,
  calculation,
  type InputsOf,
  type OutputsOf,
  type SymbolSpec,
  type SymbolSpecs,
} from './calculation.ts';
export { type CellChemistry, type CellVoltage, type CellVoltages, cellVoltages } from './cells.ts';
export {
  DomainError,
  requireBetween,
  requireEach,
  requireFinite,
  requireNotNegative,
  requirePositive,
  requireSameLength,
  requireWholeNumber,
} from './domain.ts';
export { timeToStop, timeToStopFromLean } from './gimbal-time.ts';
export { standardGravity } from './gravity.ts';
export { centredTopplingTime, nutationFrequency, slowTopplingTime, timeGain } from './gyro-toppling.ts';
export { crossSlope, lateralLimit, turnAcceleration, turnRadius } from './lateral.ts';
export { centreOfGravity, firstMoment, rollInertia, totalMass } from './mass-sums.ts';
export { type Material, materials } from './materials.ts';
export { cRate, packEnergy, packSag, packVoltage, runTime } from './pack.ts';
export { type RotorSections, rimSpeed, rotorEnergy, rotorInertia, spinMomentum } from './rotor.ts';
export { judgedSpeed, runawaySpeed } from './rotor-speed.ts';
export { rotorPeakStress } from './rotor-stress.ts';
export { toppling } from './toppling.ts';
