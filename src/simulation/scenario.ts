/** What happens in a run: how it starts, how long it goes on, what acts on it. */
import {
  DomainError,
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from '../mechanics/index.ts';
import type { Disturbance } from './loads.ts';
import type { MotionState } from './motion.ts';
import type { CoastDown } from './rotor-spin.ts';
import type { CompleteModel } from './vehicle.ts';

export interface Scenario {
  /** s. */
  readonly duration: number;
  /** All at rest and upright where left out; the sensors show what is there. The ballast stands in the middle of its play. */
  readonly start?: Partial<MotionState>;
  readonly disturbances?: readonly Disturbance[];
  readonly coastDown?: CoastDown;
  /** s: from here on no commands, the drive holds its ballast where it is, and the rotor coasts down if that is described. */
  readonly powerLossAt?: number;
}

/** At most so many samples a run: an hour at 1 kHz. */
const MOST_SAMPLES = 4e6;

/** The start with what was left out filled in. */
export function completeStart(given: Partial<MotionState>): MotionState {
  const lean = given.lean ?? 0;
  const leanRate = given.leanRate ?? 0;
  return {
    lean,
    leanRate,
    gimbalTilt: given.gimbalTilt ?? 0,
    gimbalRate: given.gimbalRate ?? 0,
    ballastPosition: given.ballastPosition ?? 0,
    ballastRate: given.ballastRate ?? 0,
    laggedLean: given.laggedLean ?? lean,
    laggedRate: given.laggedRate ?? leanRate,
  };
}

/** @throws DomainError  that names a figure outside its range, or one that contradicts the vehicle */
export function requireScenario(
  { vehicle, controller }: CompleteModel,
  scenario: Scenario,
  start: MotionState,
  leanLimit: number,
): void {
  requirePositive('duration of the run', scenario.duration, 's');
  if (scenario.duration / controller.sampleTime > MOST_SAMPLES) {
    const requirement = `it has to be at most ${MOST_SAMPLES} sample times`;
    throw new DomainError('duration of the run', scenario.duration, requirement, 's');
  }
  for (const [name, text, unit] of startNames) requireFinite(`${text} at the start`, start[name], unit);
  if (Math.abs(start.lean) >= leanLimit) {
    throw new DomainError('lean at the start', start.lean, 'it has to be less than the lean limit', 'rad');
  }
  const { gimbalTravel, travel, noLoadSpeed } = vehicle;
  requireBetween('gimbal tilt at the start', start.gimbalTilt, -gimbalTravel, gimbalTravel, 'rad');
  requireBetween('ballast position at the start', start.ballastPosition, -travel, travel, '');
  requireBetween('ballast rate at the start', start.ballastRate, -noLoadSpeed, noLoadSpeed, '');
  if (scenario.powerLossAt !== undefined)
    requireNotNegative('time of the power loss', scenario.powerLossAt, 's');
  const { coastDown } = scenario;
  if (coastDown?.from !== undefined) requireNotNegative('start of the coast-down', coastDown.from, 's');
  if (coastDown && coastDown.from === undefined && scenario.powerLossAt === undefined) {
    const requirement = 'a coast-down needs a time of its own or a loss of power to begin with';
    throw new DomainError('start of the coast-down', Number.NaN, requirement, 's');
  }
}

const startNames: readonly (readonly [keyof MotionState, string, string])[] = [
  ['lean', 'lean', 'rad'],
  ['leanRate', 'lean rate', 'rad/s'],
  ['gimbalTilt', 'gimbal tilt', 'rad'],
  ['gimbalRate', 'gimbal rate', 'rad/s'],
  ['ballastPosition', 'ballast position', ''],
  ['ballastRate', 'ballast rate', ''],
  ['laggedLean', 'lagged lean', 'rad'],
  ['laggedRate', 'lagged rate', 'rad/s'],
];
