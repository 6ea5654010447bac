/**
 * `mechanics/`: mass properties, ballast, rotor, gimbal, drive and pack as pure functions of plain SI numbers, each with
 * its registered calculation beside it: equation, symbols, units, validity, source. Knows nothing of notebooks,
 * uncertainty or screens. One family of equations a file; a new calculation is one file (or one entry in its
 * family's) and one row of checks.
 */

import { actuatorCalculations } from './actuator.ts';
import { actuatorDemandCalculations } from './actuator-demand.ts';
import { actuatorLineCalculations } from './actuator-line.ts';
import { ballastLimitCalculations } from './ballast-limits.ts';
import { ballastMotionCalculations } from './ballast-motion.ts';
import { ballastPositionCalculations } from './ballast-position.ts';
import { ballastTravelCalculations } from './ballast-travel.ts';
import { barCalculations } from './bars.ts';
import { bodyCalculations } from './bodies.ts';
import type { Calculation } from './calculation.ts';
import { coastDownCalculations } from './coast-down.ts';
import { fragmentCalculations } from './fragment.ts';
import { gearingCalculations } from './gearing.ts';
import { gimbalDriveCalculations } from './gimbal-drive.ts';
import { gimbalTimeCalculations } from './gimbal-time.ts';
import { gyroDampingCalculations } from './gyro-damping.ts';
import { gyroPrecessionCalculations } from './gyro-precession.ts';
import { gyroTopplingCalculations } from './gyro-toppling.ts';
import { hangingCalculations } from './hanging.ts';
import { inertiaTensorCalculations } from './inertia-tensor.ts';
import { jointCalculations } from './joints.ts';
import { lateralCalculations } from './lateral.ts';
import { linearDriveCalculations } from './linear-drive.ts';
import { loadCalculations } from './loads.ts';
import { massSumCalculations } from './mass-sums.ts';
import { motorCalculations } from './motor.ts';
import { packCalculations } from './pack.ts';
import { planeStressCalculations } from './plane-stress.ts';
import { principalAxesCalculations } from './principal-axes.ts';
import { rotorCalculations } from './rotor.ts';
import { rotorBalanceCalculations } from './rotor-balance.ts';
import { rotorDiscCalculations } from './rotor-disc.ts';
import { rotorSpeedCalculations } from './rotor-speed.ts';
import { rotorStressCalculations } from './rotor-stress.ts';
import { roundBodyCalculations } from './round-bodies.ts';
import { shaftStressCalculations } from './shaft-stress.ts';
import { spinUpCalculations } from './spin-up.ts';
import { supplyCalculations } from './supply.ts';
import { swingCalculations } from './swing.ts';
import { swingCorrectionCalculations } from './swing-corrections.ts';
import { topplingCalculations } from './toppling.ts';
import { turningCalculations } from './turning.ts';
import { weighingCalculations } from './weighing.ts';
import { whirlingCalculations } from './whirling.ts';
import { wirePendulumCalculations } from './wire-pendulum.ts';
import { wiringCalculations } from './wiring.ts';

/** Every calculation of this part, in the order in which the handbook prints them. */
export const mechanicsCalculations: readonly Calculation[] = [
  ...massSumCalculations,
  ...inertiaTensorCalculations,
  ...principalAxesCalculations,
  ...bodyCalculations,
  ...roundBodyCalculations,
  ...weighingCalculations,
  ...hangingCalculations,
  ...swingCalculations,
  ...swingCorrectionCalculations,
  ...wirePendulumCalculations,
  ...topplingCalculations,
  ...ballastPositionCalculations,
  ...ballastTravelCalculations,
  ...ballastLimitCalculations,
  ...ballastMotionCalculations,
  ...lateralCalculations,
  ...turningCalculations,
  ...rotorCalculations,
  ...rotorSpeedCalculations,
  ...rotorStressCalculations,
  ...rotorDiscCalculations,
  ...rotorBalanceCalculations,
  ...spinUpCalculations,
  ...coastDownCalculations,
  ...fragmentCalculations,
  ...whirlingCalculations,
  ...gyroTopplingCalculations,
  ...gimbalTimeCalculations,
  ...gyroPrecessionCalculations,
  ...gyroDampingCalculations,
  ...gimbalDriveCalculations,
  ...actuatorCalculations,
  ...actuatorLineCalculations,
  ...actuatorDemandCalculations,
  ...gearingCalculations,
  ...linearDriveCalculations,
  ...motorCalculations,
  ...packCalculations,
  ...supplyCalculations,
  ...wiringCalculations,
  ...shaftStressCalculations,
  ...planeStressCalculations,
  ...barCalculations,
  ...jointCalculations,
  ...loadCalculations,
];

export { armHoldingMoment, slideHoldingForce, stopToStopTime } from './actuator.ts';
export { armMovingMoment, sineDemand, slideMovingForce, strokeDemand } from './actuator-demand.ts';
export { actuatorPower, momentAtSpeed, speedAtLoad } from './actuator-line.ts';
export { largestLean, largestLeanByHand, rightingMoment } from './ballast-limits.ts';
export { armMomentRate, reactionMoment, slideMomentRate, wrongWayZero } from './ballast-motion.ts';
export { armPosition, type BallastPosition, slidePosition } from './ballast-position.ts';
export { largestLeanOverTravel, payloadOffset, tiltedArmPosition } from './ballast-travel.ts';
export { armFrequency, armStiffness, bendingStress, rectangleSection, tubeSection } from './bars.ts';
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
export { coastDownFit, coastDownTime, rotorDrag } from './coast-down.ts';
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
export { fragmentCaution, fragmentEnergy, rotorSeizure } from './fragment.ts';
export { bestRatio, gearReflection } from './gearing.ts';
export {
  drivenMoment,
  gimbalReaction,
  momentumReserve,
  saturationTime,
  trimMoment,
  wheelReserve,
  wheelReserveUnderMoment,
} from './gimbal-drive.ts';
export { timeToStop, timeToStopFromLean } from './gimbal-time.ts';
export { standardGravity } from './gravity.ts';
export { rollDamping, stabilisingMomentum, yawReaction } from './gyro-damping.ts';
export {
  freeWobble,
  gyroBearingLoad,
  gyroCouple,
  peakCouple,
  tiltedRotorCouple,
  topPrecession,
} from './gyro-precession.ts';
export { centredTopplingTime, nutationFrequency, slowTopplingTime, timeGain } from './gyro-toppling.ts';
export { hangLines, incliningHeight } from './hanging.ts';
export {
  type InertiaTensor,
  inertiaTensor,
  type PartTensors,
  parallelAxesTensor,
  parallelAxisInertia,
  radiusOfGyration,
} from './inertia-tensor.ts';
export { boltGroup, boltPreload, jointSlip, printedStrength } from './joints.ts';
export { crossSlope, lateralLimit, turnAcceleration, turnRadius } from './lateral.ts';
export { beltDrive, leadScrew, screwThrust } from './linear-drive.ts';
export { armRootMoment, axleLoads, dropLoad, fallOver, stopLoad, wheelSideLoad } from './loads.ts';
export { centreOfGravity, firstMoment, rollInertia, totalMass } from './mass-sums.ts';
export { type Material, materials } from './materials.ts';
export { motorAtLoad, motorAtSpeed, motorStall, noLoadTest, torqueConstant } from './motor.ts';
export { cRate, packEnergy, packSag, packVoltage, runTime } from './pack.ts';
export { planeStress } from './plane-stress.ts';
export { inertiaAboutAxis, type PrincipalAxis, principalAxes, turnedTensor } from './principal-axes.ts';
export { type RotorSections, rimSpeed, rotorEnergy, rotorInertia, spinMomentum } from './rotor.ts';
export {
  balanceGrade,
  correctionMass,
  permissibleUnbalance,
  rotorAlias,
  unbalanceForce,
} from './rotor-balance.ts';
export { burstSpeed, discStress, meanHoopStress, ringStress, yieldSpeed } from './rotor-disc.ts';
export { judgedSpeed, runawaySpeed } from './rotor-speed.ts';
export { rotorPeakStress } from './rotor-stress.ts';
export { coneInertiaAcrossAxis, coneInertiaAlongAxis, sphereInertia } from './round-bodies.ts';
export { shaftDiameter, shaftStress, shaftTorsion, shaftTwist } from './shaft-stress.ts';
export { spinUp, spinUpAtPower, spinUpByMotor } from './spin-up.ts';
export {
  converterHeat,
  dutyRunTime,
  inrushCurrent,
  packResistance,
  preCharge,
  stallOnSupply,
} from './supply.ts';
export { swingDistance, swingInertia, swingPeriod, twoPivots } from './swing.ts';
export { smallSwingPeriod, swingDamping, undampedPeriod } from './swing-corrections.ts';
export { toppling } from './toppling.ts';
export {
  frictionNeeded,
  leanOfTurn,
  leanWithMomentum,
  slideSpeed,
  tipOver,
  tyreLean,
  wheelMomentum,
} from './turning.ts';
export { balanceEdge, boardDistance, leftAndRight, missingMass, raisedEnd, twoAxles } from './weighing.ts';
export {
  dunkerleySpeed,
  rayleighSpeed,
  whirlingOfDisc,
  whirlingOfShaft,
  whirlingOverhung,
} from './whirling.ts';
export {
  bifilarInertia,
  planarTensor,
  torsionInertia,
  torsionStiffness,
  trifilarInertia,
} from './wire-pendulum.ts';
export { fuseShares, wireDrop, wireGauge } from './wiring.ts';
