/**
 * The drive that moves the ballast, exactly, whatever it runs into: its speed limit, the end of its travel, its dead
 * band, the play between it and the ballast. It follows its command whatever the vehicle does: a drive that stalls is
 * not in this model.
 *
 *   q̈ = ω_n² (u − q) − 2ζω_n q̇,   |q̇| ≤ q̇₀,  |q| ≤ q_m
 *
 * - speed limit: at q̇ = ±q̇₀ it stays until the drive would slow down by itself;
 * - end of the travel: dead stop;
 * - dead band d: an error within ±d is none, a larger one counts less d; within, the drive coasts to rest;
 * - play b (whole width): the ballast stays where it is until the drive has crossed the play, then moves with it. Friction
 *   holds it meanwhile; one that gravity pulls to one side of its play has less of it.
 *
 * Between two such events the motion is linear and known in closed form; their times are found on that form.
 */
import {
  type DriveMotion,
  type LinearParts,
  type StepCoefficients,
  setDriveMotion,
} from './step-coefficients.ts';

export interface DriveLimits extends Omit<LinearParts, 'lag'> {
  readonly travel: number;
  readonly noLoadSpeed: number;
  readonly deadBand: number;
  readonly backlash: number;
}

/** The drive as it is. Only the functions below change it. */
export interface BallastDrive {
  readonly limits: DriveLimits;
  readonly halfPlay: number;
  /** 2ζω_n, 1/s. */
  readonly coastingRate: number;
  /** q and q̇ of the drive itself. */
  position: number;
  rate: number;
  target: number;
  /** Where it is drawn to: the target less the dead band. */
  aim: number;
  /** 1, −1: error beyond the dead band to that side; 0: within. */
  band: number;
  /** 1, −1 while the speed limit holds it. */
  limited: number;
  locked: boolean;
  /** 1, −1: it carries the ballast to that side; 0: it is in its play. */
  carries: number;
  /** Where the ballast lies meanwhile. */
  held: number;
  /** What `look` has found, and when. */
  happening: number;
  eventTime: number;
  readonly search: DriveMotion;
  reachedPosition: number;
  reachedRate: number;
  endPosition: number;
  endRate: number;
  /** Of the ballast: now, in the middle and at the end of the step looked at. */
  readonly ballast: Float64Array;
  readonly ballastRate: Float64Array;
}

/** What happens to a drive. The numbers are codes of `happening` below. */
const NOTHING = 0;
const SPEED_REACHED = 1;
const SPEED_LEFT = 2;
const END_REACHED = 3;
const BAND_ENTERED = 4;
const BAND_LEFT = 5;
const PLAY_OPENS = 6;
const PLAY_CROSSED = 7;

/** rad of its natural frequency that a drive may turn between two looks at its limits. */
const MOST_TURN = 0.5;

/** Room for rounding: an event that lies within it has not happened. */
const ROUNDING = 1e-12;

/** A drive at a position with its ballast in the middle of its play, at rest or moving, commanded to where it is. */
export function ballastDrive(figures: DriveLimits, position: number, rate: number): BallastDrive {
  const { naturalFrequency, dampingRatio, travel, noLoadSpeed, deadBand, backlash } = figures;
  const limits = { naturalFrequency, dampingRatio, travel, noLoadSpeed, deadBand, backlash };
  const halfPlay = backlash / 2;
  const drive: BallastDrive = {
    limits,
    halfPlay,
    coastingRate: 2 * dampingRatio * naturalFrequency,
    position: Number.NaN,
    rate: Number.NaN,
    target: Number.NaN,
    aim: Number.NaN,
    band: 1,
    limited: 0,
    locked: false,
    carries: halfPlay > 0 ? 0 : 1,
    held: Number.NaN,
    happening: NOTHING,
    eventTime: Number.NaN,
    search: { time: 0.5, xx: 0.5, xv: 0.5, vx: 0.5, vv: 0.5, coasting: 0.5 },
    reachedPosition: Number.NaN,
    reachedRate: Number.NaN,
    endPosition: Number.NaN,
    endRate: Number.NaN,
    ballast: new Float64Array(3),
    ballastRate: new Float64Array(3),
  };
  drive.position = position;
  drive.rate = rate;
  drive.held = position;
  drive.target = position;
  aimAt(drive, deadBand > 0 ? 0 : 1);
  settle(drive);
  return drive;
}

/** From now on it goes to this command, clipped to the travel. */
export function follow(drive: BallastDrive, command: number): void {
  const { travel, deadBand } = drive.limits;
  const target = Math.min(Math.max(command, -travel), travel);
  if (target === drive.target) return;
  drive.target = target;
  const error = target - drive.position;
  aimAt(drive, deadBand === 0 || error > deadBand ? 1 : error < -deadBand ? -1 : 0);
  if (drive.limited !== 0 && drive.limited * acceleration(drive) < 0) drive.limited = 0;
}

/** Stops dead and stays, whatever is commanded: no power on a drive that holds itself. */
export function lock(drive: BallastDrive): void {
  drive.locked = true;
  drive.rate = 0;
  drive.limited = 0;
  settle(drive);
}

/** Looks a step ahead: `eventTime` is then that of the first event within it, or the length of the step. */
export function look(drive: BallastDrive, coefficients: StepCoefficients): void {
  const { step } = coefficients;
  drive.happening = NOTHING;
  drive.eventTime = step;
  if (MOST_TURN < drive.limits.naturalFrequency * step && lookWithin(drive, step)) {
    lookAhead(drive, coefficients);
    return;
  }
  lookAhead(drive, coefficients);
  if (!drive.locked) considerAll(drive);
}

/**
 * A drive that is quick for the step may go beyond a limit and come back within it: looked at in parts of the step first.
 * True where it has found something.
 */
function lookWithin(drive: BallastDrive, step: number): boolean {
  if (drive.locked) return false;
  const parts = Math.ceil((drive.limits.naturalFrequency * step) / MOST_TURN);
  for (let i = 1; i < parts; i++) {
    drive.eventTime = (step * i) / parts;
    setDriveMotion(drive.search, drive.limits, drive.eventTime);
    reach(drive, drive.search);
    drive.endPosition = drive.reachedPosition;
    drive.endRate = drive.reachedRate;
    considerAll(drive);
    if (drive.happening !== NOTHING) return true;
  }
  drive.eventTime = step;
  return false;
}

/** Everything that may have happened by the end looked at. */
function considerAll(drive: BallastDrive): void {
  const { travel, noLoadSpeed, deadBand, naturalFrequency } = drive.limits;
  if (drive.limited !== 0) consider(drive, SPEED_LEFT, travel);
  else if (!(Math.abs(drive.endRate) <= noLoadSpeed)) consider(drive, SPEED_REACHED, noLoadSpeed);
  if (!(Math.abs(drive.endPosition) <= travel)) consider(drive, END_REACHED, travel);
  if (deadBand > 0) consider(drive, drive.band === 0 ? BAND_LEFT : BAND_ENTERED, deadBand);
  if (drive.halfPlay > 0) {
    if (drive.carries === 0) consider(drive, PLAY_CROSSED, drive.halfPlay);
    else consider(drive, PLAY_OPENS, naturalFrequency * drive.halfPlay);
  }
}

/** Looks ahead to an earlier time; the event that `look` found is forgotten unless this is its time. */
export function lookTo(drive: BallastDrive, coefficients: StepCoefficients): void {
  lookAhead(drive, coefficients);
  if (coefficients.step < drive.eventTime) drive.happening = NOTHING;
}

/** Goes where it looked; true where something happened to it there. */
export function go(drive: BallastDrive): boolean {
  drive.position = drive.endPosition;
  drive.rate = drive.endRate;
  if (drive.happening === NOTHING) {
    drive.ballast[0] = drive.ballast[2] ?? 0;
    drive.ballastRate[0] = drive.ballastRate[2] ?? 0;
    return false;
  }
  happen(drive);
  return true;
}

function happen(drive: BallastDrive): void {
  const { travel, noLoadSpeed } = drive.limits;
  switch (drive.happening) {
    case SPEED_REACHED:
      drive.limited = Math.sign(drive.rate);
      drive.rate = drive.limited * noLoadSpeed;
      break;
    case SPEED_LEFT:
      drive.limited = 0;
      break;
    case END_REACHED:
      drive.position = Math.sign(drive.position) * travel;
      drive.rate = 0;
      drive.limited = 0;
      break;
    case BAND_ENTERED:
      aimAt(drive, 0);
      drive.limited = 0;
      break;
    case BAND_LEFT:
      aimAt(drive, Math.sign(drive.target - drive.position));
      break;
    case PLAY_OPENS:
      drive.held = carried(drive, drive.position);
      drive.carries = 0;
      break;
    default:
      drive.carries = Math.sign(drive.position - drive.held);
  }
  drive.happening = NOTHING;
  settle(drive);
}

/** Position and rate after a time of the motion that is on. */
function reach(drive: BallastDrive, motion: DriveMotion): void {
  if (drive.locked) {
    drive.reachedPosition = drive.position;
    drive.reachedRate = 0;
  } else if (drive.limited !== 0) {
    drive.reachedPosition = drive.position + drive.rate * motion.time;
    drive.reachedRate = drive.rate;
  } else if (drive.band === 0) {
    drive.reachedPosition = drive.position + (drive.rate * (1 - motion.coasting)) / drive.coastingRate;
    drive.reachedRate = drive.rate * motion.coasting;
  } else {
    const error = drive.position - drive.aim;
    drive.reachedPosition = drive.aim + motion.xx * error + motion.xv * drive.rate;
    drive.reachedRate = motion.vx * error + motion.vv * drive.rate;
  }
}

function lookAhead(drive: BallastDrive, coefficients: StepCoefficients): void {
  reach(drive, coefficients.half);
  drive.ballast[1] = carried(drive, drive.reachedPosition);
  drive.ballastRate[1] = drive.carries === 0 ? 0 : drive.reachedRate;
  reach(drive, coefficients.whole);
  drive.endPosition = drive.reachedPosition;
  drive.endRate = drive.reachedRate;
  drive.ballast[2] = carried(drive, drive.reachedPosition);
  drive.ballastRate[2] = drive.carries === 0 ? 0 : drive.reachedRate;
}

function carried(drive: BallastDrive, position: number): number {
  return drive.carries === 0 ? drive.held : position - drive.carries * drive.halfPlay;
}

function settle(drive: BallastDrive): void {
  drive.ballast[0] = carried(drive, drive.position);
  drive.ballastRate[0] = drive.carries === 0 ? 0 : drive.rate;
}

function aimAt(drive: BallastDrive, band: number): void {
  drive.band = band;
  drive.aim = drive.target - band * drive.limits.deadBand;
}

/** Rate of change of the speed where no limit holds it. */
function acceleration(drive: BallastDrive): number {
  const drawn = drive.band === 0 ? 0 : drive.limits.naturalFrequency ** 2 * (drive.aim - drive.position);
  return drawn - drive.coastingRate * drive.rate;
}

/** How far past an event the drive is in `reached…`; not above 0 before it. */
function past(drive: BallastDrive, happening: number): number {
  const { reachedPosition: q, reachedRate: v, target, limits } = drive;
  switch (happening) {
    case SPEED_REACHED:
      return Math.abs(v) - limits.noLoadSpeed;
    case SPEED_LEFT:
      return (
        drive.limited * (q - drive.aim) +
        (drive.coastingRate * limits.noLoadSpeed) / limits.naturalFrequency ** 2
      );
    case END_REACHED:
      return Math.abs(q) - limits.travel;
    case BAND_ENTERED:
      return limits.deadBand - drive.band * (target - q);
    case BAND_LEFT:
      return Math.abs(target - q) - limits.deadBand;
    case PLAY_OPENS:
      return -drive.carries * v;
    default:
      return Math.abs(q - drive.held) - drive.halfPlay;
  }
}

/**
 * Notes an event if it has happened by the time given, earlier than any noted before.
 * Source: regula falsi on the closed form, with the Illinois step (M. Dowell, P. Jarratt 1971) and a bisection now and then.
 */
function consider(drive: BallastDrive, happening: number, scale: number): void {
  drive.reachedPosition = drive.endPosition;
  drive.reachedRate = drive.endRate;
  const most = ROUNDING * scale;
  if (!(past(drive, happening) > most)) return;
  let high = drive.eventTime;
  let atHigh = pastAfter(drive, happening, high);
  if (!(atHigh > most)) return; // only after another event
  let low = 0;
  let atLow = pastAfter(drive, happening, 0);
  const enough = 1e-12 * high;
  let side = 0;
  for (let i = 0; i < 80 && high - low > enough; i++) {
    const halve = i % 6 === 5 || !(atLow < 0);
    const x = halve ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
    if (!(x > low && x < high)) break;
    const value = pastAfter(drive, happening, x);
    if (value > 0) {
      high = x;
      atHigh = value;
      if (side === 1) atLow /= 2;
      side = 1;
    } else {
      low = x;
      atLow = value;
      if (side === -1) atHigh /= 2;
      side = -1;
    }
  }
  drive.eventTime = high;
  drive.happening = happening;
}

function pastAfter(drive: BallastDrive, happening: number, time: number): number {
  setDriveMotion(drive.search, drive.limits, time);
  reach(drive, drive.search);
  return past(drive, happening);
}
