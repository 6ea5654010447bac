/** Everything about a vehicle that moves, as it is at one moment, and what is read off it. */
import { type BallastDrive, ballastDrive } from './ballast-drive.ts';
import { beginContact, type GimbalContact, gimbalContact } from './gimbal-contact.ts';
import type { LoadCourse } from './loads.ts';
import type { RotorSpin } from './rotor-spin.ts';
import { type LinearParts, type StepCoefficients, stepCoefficients } from './step-coefficients.ts';
import type { CompleteModel } from './vehicle.ts';
import {
  LEAN,
  leanRateOf,
  MOMENTUM,
  momentumOf,
  place,
  STATES,
  TILT,
  TILT_RATE,
  tiltMoment,
  type VehicleSystem,
  vehicleSystem,
} from './vehicle-equations.ts';

export interface MotionState {
  /** φ, rad; φ̇, rad/s. */
  readonly lean: number;
  readonly leanRate: number;
  /** α, rad; α̇, rad/s. */
  readonly gimbalTilt: number;
  readonly gimbalRate: number;
  /** Of the ballast, rad on an arm, m on a slide, counted against the lean. */
  readonly ballastPosition: number;
  readonly ballastRate: number;
  /** The lean and its rate behind the sensors' lag. */
  readonly laggedLean: number;
  readonly laggedRate: number;
}

/** How a run came to an end before its time. */
export type Broken = 'lean limit' | 'not a number' | 'too many contacts';

/** What is kept while the motion goes on. */
export interface Observed {
  /** Largest |φ| with its sign, and when. */
  peakLean: number;
  peakTime: number;
  /** First touch of a gimbal stop; not a number before. */
  firstStop: number;
  /** s spent resting against a gimbal stop, at the end of the ballast's travel, at the drive's speed limit. */
  timeAtStop: number;
  timeAtTravelEnd: number;
  timeAtSpeedLimit: number;
  /** The last time that |φ| was above what counts as settled. */
  lastUnsettled: number;
}

export interface MotionLimits {
  /** s, the longest step. */
  readonly step: number;
  /** rad. */
  readonly leanLimit: number;
  /** rad, what counts as settled. */
  readonly settledLean: number;
}

/** Only `createMotion` and the functions of motion-steps.ts change it. */
export interface Motion {
  readonly limits: MotionLimits;
  readonly travelEnd: number;
  readonly parts: LinearParts;
  readonly drive: BallastDrive;
  readonly contact: GimbalContact;
  readonly loads: LoadCourse;
  readonly spin: RotorSpin;
  readonly system: VehicleSystem;
  readonly observed: Observed;
  broken: Broken | undefined;
  /** s. */
  time: number;
  /** Lean behind the sensors' lag, and what the lagged rate is beyond (φ − lagged lean)/τ: dies out as e^{−t/τ}. */
  lagged: number;
  laggedRest: number;
  /** State and rates of change, now and at the end of the step tried. */
  now: Float64Array;
  rates: Float64Array;
  ratesKnown: boolean;
  next: Float64Array;
  nextRates: Float64Array;
  /** For the length of step that something has cut off. */
  readonly cut: StepCoefficients;
}

/** |q| from which the drive counts as at the end of its travel, in parts of the travel. */
const AT_THE_END = 0.99;

export function createMotion(
  model: CompleteModel,
  start: MotionState,
  loads: LoadCourse,
  spin: RotorSpin,
  limits: MotionLimits,
): Motion {
  const { vehicle, sensors } = model;
  const { naturalFrequency, dampingRatio } = vehicle;
  const parts = { naturalFrequency, dampingRatio, lag: sensors.lag };
  const contact = gimbalContact(vehicle);
  const motion: Motion = {
    limits,
    travelEnd: AT_THE_END * vehicle.travel,
    parts,
    drive: ballastDrive(vehicle, start.ballastPosition, start.ballastRate),
    contact,
    loads,
    spin,
    system: vehicleSystem(model, loads.now, contact),
    observed: {
      peakLean: Number.NaN,
      peakTime: Number.NaN,
      firstStop: Number.NaN,
      timeAtStop: Number.NaN,
      timeAtTravelEnd: Number.NaN,
      timeAtSpeedLimit: Number.NaN,
      lastUnsettled: Number.NaN,
    },
    broken: undefined,
    time: Number.NaN,
    lagged: Number.NaN,
    laggedRest: Number.NaN,
    now: new Float64Array(STATES),
    rates: new Float64Array(STATES),
    ratesKnown: false,
    next: new Float64Array(STATES),
    nextRates: new Float64Array(STATES),
    cut: stepCoefficients(parts, limits.step),
  };
  const { now, observed, system } = motion;
  placeNow(motion);
  now[LEAN] = start.lean;
  now[MOMENTUM] = momentumOf(system, start.leanRate, start.gimbalTilt);
  now[TILT] = start.gimbalTilt;
  now[TILT_RATE] = start.gimbalRate;
  beginContact(contact, now, tiltMoment(system, now, 0));
  motion.time = 0;
  motion.lagged = start.laggedLean;
  motion.laggedRest = sensors.lag > 0 ? start.laggedRate - (start.lean - start.laggedLean) / sensors.lag : 0;
  observed.peakLean = start.lean;
  observed.peakTime = 0;
  observed.firstStop = contact.atStop !== 0 ? 0 : Number.NaN;
  observed.timeAtStop = 0;
  observed.timeAtTravelEnd = 0;
  observed.timeAtSpeedLimit = 0;
  observed.lastUnsettled = 0;
  takeStock(motion);
  return motion;
}

export function leanRate(motion: Motion): number {
  if (motion.ratesKnown) return motion.rates[LEAN] ?? 0;
  placeNow(motion);
  return leanRateOf(motion.system, motion.now, 0);
}

export function laggedRate(motion: Motion): number {
  const { lag } = motion.parts;
  if (lag === 0) return leanRate(motion);
  return motion.laggedRest + ((motion.now[LEAN] ?? 0) - motion.lagged) / lag;
}

export function stateOf(motion: Motion): MotionState {
  return {
    lean: motion.now[LEAN] ?? 0,
    leanRate: leanRate(motion),
    gimbalTilt: motion.now[TILT] ?? 0,
    gimbalRate: motion.now[TILT_RATE] ?? 0,
    ballastPosition: motion.drive.ballast[0] ?? 0,
    ballastRate: motion.drive.ballastRate[0] ?? 0,
    laggedLean: motion.lagged,
    laggedRate: laggedRate(motion),
  };
}

/** Ballast and rotor where they are, for the start of a step. */
export function placeNow({ system, drive, spin }: Motion): void {
  place(system, 0, drive, spin);
}

/** Something about the vehicle is not as the last step left it: where its ballast is, what holds its gimbal. */
export function takeStock(motion: Motion): void {
  placeNow(motion);
  motion.ratesKnown = false;
}
