/** One run: a vehicle, what happens to it, and what it did. */
import { randomNumbers } from '../control/index.ts';
import {
  DomainError,
  requireNotNegative,
  requirePositive,
  requireWholeNumber,
  standardGravity,
} from '../mechanics/index.ts';
import { follow } from './ballast-drive.ts';
import { loadCourse } from './loads.ts';
import { createMotion, type MotionState, stateOf } from './motion.ts';
import { advance, changeLoads, lockDrive, stretchOf } from './motion-steps.ts';
import { rotorSpin } from './rotor-spin.ts';
import { type Columns, runRecord } from './run-record.ts';
import { commandBefore, delayParts, sample, sampledController } from './sampled-controller.ts';
import { completeStart, requireScenario, type Scenario } from './scenario.ts';
import { type CompleteModel, completeModel, type SimulationModel } from './vehicle.ts';

export interface SimulationOptions {
  /** s, longest step of the integrator; 1 ms where left out, or less where gimbal or drive are quicker than that. */
  readonly step?: number;
  /** Whole number, not negative: of the sensors' noise. */
  readonly seed?: number;
  /** Which of many streams of that seed. */
  readonly stream?: number;
  /** rad: at a larger lean the vehicle has fallen, or left what the model describes. */
  readonly leanLimit?: number;
  /** rad: what counts as upright again. */
  readonly settledLean?: number;
  /** One row for so many samples; 0 for no rows but the last. */
  readonly rowEvery?: number;
  /** g, m/s². */
  readonly gravity?: number;
}

export type Outcome =
  /** Stayed below the lean limit, and within what counts as settled for the last tenth of the run at least. */
  | 'settled'
  /** Stayed below the lean limit, and no more than that. */
  | 'stayed up'
  /** Reached the lean limit. */
  | 'fell'
  /** The numbers went beyond all bounds before the lean limit was seen: the step is too long for this vehicle. */
  | 'lost';

export interface RunFigures {
  /** Largest lean with its sign, rad, and when, s. */
  readonly peakLean: number;
  readonly peakTime: number;
  /** s, first touch of a gimbal stop; absent where there is none. */
  readonly gimbalStopTime?: number;
  /** s at rest against a gimbal stop; with the drive at the end of its travel (99 % and more); at its speed limit. */
  readonly timeAtGimbalStop: number;
  readonly timeAtTravelEnd: number;
  readonly timeAtSpeedLimit: number;
  /** s, from which on the lean stayed settled; absent where it was not at the end. */
  readonly settledFrom?: number;
  /** s; absent where it stayed up. */
  readonly fallTime?: number;
}

export interface SimulatedRun {
  readonly outcome: Outcome;
  /** Why it ended, with its time and state there; the last good ones where the numbers were lost. */
  readonly end: { readonly reason: string; readonly time: number; readonly state: MotionState };
  readonly figures: RunFigures;
  /** At the samples, and the state at the end. Readings and command are those of the last sample taken. */
  readonly columns: Columns;
}

const DEFAULT_STEP = 0.001;
const DEFAULT_LEAN_LIMIT = Math.PI / 4;
const DEFAULT_SETTLED_LEAN = Math.PI / 360;
/** Last part of a run that has to be within what counts as settled. */
const SETTLED_FOR = 0.1;

/**
 * The motion of a vehicle with its controller, from a start through what happens to it.
 *
 * Fixed steps: the time to the next sample, to the moment at which a command reaches the drive or to a change of the
 * loads is divided into equal steps no longer than the one given, so the delay is split exactly and nothing depends on
 * where the steps happen to fall. The same model, scenario and options give the same run to the last digit.
 *
 * Accuracy: drive, hold and sensor lag exactly; vehicle and gimbal by Runge–Kutta of fourth order, error in proportion to
 * step⁴ (at 1 ms about 10⁻⁷ of the motion for a nutation of 10 Hz); events to 10⁻¹⁰ of a step.
 *
 * @throws DomainError  that names a figure outside its range, or one that contradicts another
 */
export function simulate(
  model: SimulationModel,
  scenario: Scenario,
  options: SimulationOptions = {},
): SimulatedRun {
  const complete = completeModel(model);
  const { controller, vehicle } = complete;
  const { sampleTime } = controller;
  const {
    step = suitableStep(complete),
    seed = 0,
    stream = 0,
    leanLimit = DEFAULT_LEAN_LIMIT,
    settledLean = DEFAULT_SETTLED_LEAN,
    rowEvery = 1,
    gravity = standardGravity,
  } = options;
  const start = completeStart(scenario.start ?? {});
  requireStep(complete, step);
  requirePositive('lean limit', leanLimit, 'rad');
  requireNotNegative('settled lean', settledLean, 'rad');
  requireWholeNumber('samples for a row', rowEvery, 0);
  requireScenario(complete, scenario, start, leanLimit);

  const power = scenario.powerLossAt ?? Number.POSITIVE_INFINITY;
  const coastsFrom = scenario.coastDown ? (scenario.coastDown.from ?? power) : Number.POSITIVE_INFINITY;
  const loads = loadCourse(scenario.disturbances ?? [], gravity);
  const spin = rotorSpin(vehicle.spinMomentum, scenario.coastDown);
  const motion = createMotion(complete, start, loads, spin, { step, leanLimit, settledLean });
  const { wholeSamples, lateTime } = delayParts(controller);
  const commands = sampledController(complete, randomNumbers(seed, stream), wholeSamples + 1);
  const samples = Math.ceil(scenario.duration / sampleTime - 1e-9);
  const record = runRecord(rowEvery > 0 ? Math.ceil(samples / rowEvery) + 2 : 1);
  let powered = true;

  /** When something changes next, s: the loads, the power, the rotor's drive. */
  const nextChange = (): number =>
    Math.min(
      loads.next,
      powered ? power : Number.POSITIVE_INFINITY,
      spin.coasting ? Number.POSITIVE_INFINITY : coastsFrom,
    );
  /** Goes on to a time with the changes up to then. False where the run broke off. */
  const goTo = (to: number): boolean => {
    for (;;) {
      const change = nextChange();
      const until = Math.min(change, to);
      if (until > motion.time && !advance(motion, stretchOf(motion, until - motion.time))) return false;
      motion.time = Math.max(motion.time, until);
      if (change > to) return true;
      if (loads.next <= motion.time) changeLoads(motion);
      if (coastsFrom <= motion.time) spin.coasting = true;
      if (powered && power <= motion.time) {
        powered = false;
        lockDrive(motion);
      }
    }
  };
  const late = stretchOf(motion, lateTime > 0 ? lateTime : sampleTime);
  const early = stretchOf(motion, sampleTime - lateTime);
  const firstDelay = wholeSamples + (lateTime > 0 ? 1 : 0);

  for (let k = 0; k < samples; k++) {
    const time = k * sampleTime;
    motion.time = time;
    if (powered) sample(commands, motion);
    if (rowEvery > 0 && k % rowEvery === 0) record.write(motion, commands);
    if (powered) follow(motion.drive, commandBefore(commands, firstDelay));
    const end = Math.min(time + sampleTime, scenario.duration);
    const arrives = time + lateTime;
    // the usual sample, with nothing to stop for: always the same two stretches
    const usual = k < samples - 1 && nextChange() > end;
    if (lateTime > 0) {
      if (!(usual ? advance(motion, late) : goTo(Math.min(arrives, end)))) break;
      if (powered && (usual || arrives < end)) follow(motion.drive, commandBefore(commands, wholeSamples));
    }
    if (!(usual ? advance(motion, early) : goTo(end))) break;
  }
  if (!motion.broken) motion.time = scenario.duration;
  record.write(motion, commands);

  const { observed, broken } = motion;
  const outcome: Outcome =
    broken === 'lean limit'
      ? 'fell'
      : broken !== undefined
        ? 'lost'
        : motion.time - observed.lastUnsettled >= SETTLED_FOR * scenario.duration
          ? 'settled'
          : 'stayed up';
  return {
    outcome,
    end: { reason: reasons[broken ?? 'duration'], time: motion.time, state: stateOf(motion) },
    figures: {
      peakLean: observed.peakLean,
      peakTime: observed.peakTime,
      ...(Number.isNaN(observed.firstStop) ? {} : { gimbalStopTime: observed.firstStop }),
      timeAtGimbalStop: observed.timeAtStop,
      timeAtTravelEnd: observed.timeAtTravelEnd,
      timeAtSpeedLimit: observed.timeAtSpeedLimit,
      ...(outcome === 'settled' ? { settledFrom: observed.lastUnsettled } : {}),
      ...(outcome === 'fell' ? { fallTime: motion.time } : {}),
    },
    columns: record.columns(),
  };
}

/** 1/s: the quickest nutation or swing of the gimbal, and the quickest decay by its friction. */
function quickest({ drive, vehicle }: CompleteModel): { readonly swing: number; readonly decay: number } {
  const { gimbalInertia, gimbalFriction, gimbalCentring, spinMomentum, rollInertiaWithout } = vehicle;
  if (gimbalInertia === 0) return { swing: 0, decay: 0 };
  // the roll inertia is least with the ballast lowest, on the centre line
  const height = vehicle.driveHeight - (drive === 'hanging arm' ? vehicle.armLength : 0);
  const rollInertia = rollInertiaWithout + vehicle.ballastMass * Math.max(height, 0) ** 2;
  const stiffness = spinMomentum ** 2 / rollInertia + Math.abs(gimbalCentring);
  return { swing: Math.sqrt(stiffness / gimbalInertia), decay: gimbalFriction / gimbalInertia };
}

/** A step that follows the swing to some 10⁻⁷, the decay at all, and what the drive's starting and stopping does. */
function suitableStep(model: CompleteModel): number {
  const { swing, decay } = quickest(model);
  return Math.min(DEFAULT_STEP, 0.1 / swing, 1 / decay, 0.5 / model.vehicle.naturalFrequency);
}

/** Beyond about 2.8 times the quickest rate the method itself is unstable. */
function requireStep(model: CompleteModel, step: number): void {
  requirePositive('step of the simulation', step, 's');
  const { swing, decay } = quickest(model);
  const longest = 2.5 / Math.max(swing, decay);
  if (step <= longest) return;
  const requirement = `it has to be at most ${Number(longest.toPrecision(3))} s for so quick a gimbal`;
  throw new DomainError('step of the simulation', step, requirement, 's');
}

const reasons = {
  duration: 'The run went its whole time.',
  'lean limit': 'The lean reached its limit: the vehicle fell, or left what the model describes.',
  'not a number':
    'The numbers went beyond all bounds: the step is too long for a motion as fast as this vehicle’s fastest.',
  'too many contacts': 'More contacts within one step than can be followed one by one.',
} as const;
