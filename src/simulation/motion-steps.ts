/**
 * The vehicle moving on, from one moment to the next: steps of the integrator, cut wherever something happens (the gimbal
 * meets its stop, the drive its speed limit, the lean its limit), and begun anew from there.
 */
import { go, lock, look, lookTo } from './ballast-drive.ts';
import { contactEvent, makeContact, pastContact, STOP_REACHED } from './gimbal-contact.ts';
import { changeLoad } from './loads.ts';
import { type Motion, placeNow, takeStock } from './motion.ts';
import { lookAtSpin } from './rotor-spin.ts';
import {
  type StepCoefficients,
  setDriveStep,
  setLagStep,
  setStep,
  stepCoefficients,
} from './step-coefficients.ts';
import { LEAN, MOMENTUM, place, type Stage, stepVehicle, tiltMoment } from './vehicle-equations.ts';

const MOST_CONTACTS = 2000;
const LEAN_LIMIT = -1;

/** A duration in equal steps: made once for those that come again and again. */
export interface Stretch {
  readonly duration: number;
  readonly steps: number;
  readonly coefficients: StepCoefficients;
}

/** A duration divided into equal steps of at most the length allowed. */
export function stretchOf({ parts, limits }: Motion, duration: number): Stretch {
  const steps = Math.max(1, Math.ceil(duration / limits.step - 1e-9));
  return { duration, steps, coefficients: stepCoefficients(parts, duration / steps) };
}

/**
 * Goes on for a stretch.
 *
 * @returns false once the run is broken
 */
export function advance(motion: Motion, { duration, steps, coefficients }: Stretch): boolean {
  if (motion.broken) return false;
  const from = motion.time;
  for (let i = 0; i < steps; i++) {
    if (!takeStep(motion, coefficients)) return false;
  }
  motion.time = from + duration; // not the sum of the steps, which drifts
  return true;
}

/** No power: the drive holds its ballast where it is. */
export function lockDrive(motion: Motion): void {
  lock(motion.drive);
  checkHold(motion);
}

/** The loads change here; a blow is taken up. */
export function changeLoads(motion: Motion): void {
  motion.now[MOMENTUM] = (motion.now[MOMENTUM] ?? 0) + changeLoad(motion.loads);
  checkHold(motion);
}

/** Something changed at a blow: whatever holds the gimbal may have to let it go. */
function checkHold(motion: Motion): void {
  placeNow(motion);
  if (motion.contact.held) {
    const moment = tiltMoment(motion.system, motion.now, 0);
    const event = contactEvent(motion.contact, motion.now, moment);
    if (event !== 0) makeContact(motion.contact, event, motion.now, moment);
  }
  takeStock(motion);
}

/** One step of the integrator, or as many as its events cut it into. */
function takeStep(motion: Motion, coefficients: StepCoefficients): boolean {
  const { drive, contact, system, cut, parts } = motion;
  let left = coefficients.step;
  let taken = coefficients;
  for (let round = 0; round < MOST_CONTACTS; round++) {
    look(drive, taken);
    if (drive.eventTime < taken.step) {
      setStep(cut, parts, drive.eventTime);
      lookTo(drive, cut);
      taken = cut;
    }
    tryStep(motion, taken);
    let event = contactEvent(contact, motion.next, contact.held ? tiltMoment(system, motion.next, 2) : 0);
    if (event !== 0) {
      shortenTo(motion, event, taken.step);
      taken = cut;
    }
    if (!(Math.abs(motion.next[LEAN] ?? 0) < motion.limits.leanLimit)) {
      if (!motion.next.every(Number.isFinite)) {
        motion.broken = 'not a number';
        return false;
      }
      event = 0;
      shortenTo(motion, LEAN_LIMIT, taken.step);
      taken = cut;
      motion.broken = 'lean limit';
    }
    commit(motion, taken);
    const moved = go(drive);
    if (motion.broken) return false;
    if (event !== 0) touch(motion, event);
    if (moved) checkHold(motion);
    if (taken === coefficients) return true;
    left -= taken.step;
    if (left <= 1e-12 * coefficients.step) return true;
    setStep(cut, parts, left);
    taken = cut;
  }
  motion.broken = 'too many contacts';
  return false;
}

/** An event of the gimbal takes place where the motion is now. */
function touch(motion: Motion, event: number): void {
  const { contact, now, observed } = motion;
  placeNow(motion);
  makeContact(contact, event, now, tiltMoment(motion.system, now, 0));
  if (event === STOP_REACHED && Number.isNaN(observed.firstStop)) observed.firstStop = motion.time;
  takeStock(motion);
}

function tryStep(motion: Motion, coefficients: StepCoefficients): void {
  const { system, drive, spin } = motion;
  if (spin.coasting) lookAtSpin(spin, coefficients.step);
  place(system, 1, drive, spin);
  place(system, 2, drive, spin);
  stepVehicle(system, motion, coefficients);
}

function tryShorter(motion: Motion, step: number): void {
  setDriveStep(motion.cut, motion.parts, step);
  lookTo(motion.drive, motion.cut);
  tryStep(motion, motion.cut);
}

/** How far past an event a state is. */
function pastAt(
  { contact, system, limits }: Motion,
  event: number,
  state: Float64Array,
  stage: Stage,
): number {
  return event === LEAN_LIMIT
    ? Math.abs(state[LEAN] ?? 0) - limits.leanLimit
    : pastContact(contact, event, state, tiltMoment(system, state, stage));
}

/**
 * The step tried last shortened to just past an event that has happened by its end, to 10⁻¹⁰ of itself.
 * Source: regula falsi on the integrator, with the Illinois step (M. Dowell, P. Jarratt 1971).
 */
function shortenTo(motion: Motion, event: number, step: number): void {
  placeNow(motion);
  let low = 0;
  let high = step;
  let atLow = pastAt(motion, event, motion.now, 0);
  let atHigh = pastAt(motion, event, motion.next, 2);
  let side = 0;
  for (let i = 0; i < 80 && high - low > 1e-10 * step; i++) {
    const halve = i % 8 === 7 || !(atLow < 0);
    const x = halve ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
    if (!(x > low && x < high)) break;
    tryShorter(motion, x);
    const past = pastAt(motion, event, motion.next, 2);
    if (past > 0) {
      high = x;
      atHigh = past;
      if (side === 1) atLow /= 2;
      side = 1;
    } else {
      low = x;
      atLow = past;
      if (side === -1) atHigh /= 2;
      side = -1;
    }
  }
  tryShorter(motion, high);
  setLagStep(motion.cut, motion.parts);
}

/** Goes to the end of the step tried, with what the sensors and the observer make of it. */
function commit(motion: Motion, { step, lag }: StepCoefficients): void {
  const { observed, limits, now: before, rates: ratesBefore, next, nextRates } = motion;
  const lean = next[LEAN] ?? 0;
  motion.lagged =
    lag.kept * motion.lagged +
    lag.before * (before[LEAN] ?? 0) +
    lag.after * lean +
    lag.slopeBefore * (ratesBefore[LEAN] ?? 0) +
    lag.slopeAfter * (nextRates[LEAN] ?? 0);
  motion.laggedRest *= lag.kept;
  motion.time += step;
  motion.now = next;
  motion.rates = nextRates;
  motion.ratesKnown = true;
  motion.next = before;
  motion.nextRates = ratesBefore;
  if (motion.spin.coasting) motion.spin.momentum[0] = motion.spin.momentum[2] ?? 0;
  const size = Math.abs(lean);
  if (size > limits.settledLean) observed.lastUnsettled = motion.time;
  if (size > Math.abs(observed.peakLean)) {
    observed.peakLean = lean;
    observed.peakTime = motion.time;
  }
  if (motion.contact.atStop !== 0) observed.timeAtStop += step;
  if (motion.drive.limited !== 0) observed.timeAtSpeedLimit += step;
  if (Math.abs(motion.drive.position) >= motion.travelEnd) observed.timeAtTravelEnd += step;
}
