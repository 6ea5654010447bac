/**
 * The controller around the sampled vehicle: what it reads, what it commands, and the closed loop that results.
 *
 *   u(k) = K_p lean_measured + K_d rate + K_g gimbal tilt,   positive u rights a positive lean
 *
 * "Rate" is whatever the builder's controller takes for it: the four sources are modelled as they are wired, also
 * where the signal is not a roll rate at all.
 */
import { DomainError, requireFinite, requirePositive } from '../mechanics/index.ts';
import { discretise, type SampledPlant } from './discretise.ts';
import {
  type BalanceHardware,
  type LinearPlant,
  linearPlant,
  type PlantOptions,
  type Signal,
} from './linear-plant.ts';

/** In the order of their code numbers, 0 to 3. */
export const rateSources = ['rate gyro', 'difference of angle', 'gimbal tilt', 'gimbal rate'] as const;
export type RateSource = (typeof rateSources)[number];

export interface BalanceController {
  /** T_s, s. */
  readonly sampleTime: number;
  /** From reading the sensors to the command reaching the actuator, s: computing and actuator frame. */
  readonly delay: number;
  /** K_p, command by radian of lean. */
  readonly leanGain: number;
  /** K_d, command by unit of the rate source: of rad/s, of rad for `gimbal tilt`. */
  readonly rateGain: number;
  /** K_g, command by radian of gimbal tilt. */
  readonly gimbalGain: number;
  readonly rateSource: RateSource;
}

/** A plant with a controller that is linear in the states at this sample and the one before. */
export interface SampledLoop {
  readonly sampled: SampledPlant;
  /** u(k) = feedback · x(k) + feedbackBefore · x(k − 1). */
  readonly feedback: Float64Array;
  readonly feedbackBefore?: Float64Array;
}

export interface BalanceLoop extends SampledLoop {
  readonly plant: LinearPlant;
  readonly hardware: BalanceHardware;
  readonly controller: BalanceController;
}

/** Longest delay in sample times: each of them is a state of the closed loop, whose poles then take their time. */
export const longestDelayInSamples = 100;

/** What the linear plant has to contain for a controller. */
export function plantOptions(controller: BalanceController): PlantOptions {
  const reads = new Set<Signal>(['measured lean']);
  if (controller.gimbalGain !== 0) reads.add('gimbal tilt');
  if (controller.rateGain !== 0) {
    if (controller.rateSource === 'rate gyro') reads.add('measured rate');
    else if (controller.rateSource !== 'difference of angle') reads.add(controller.rateSource);
  }
  return { reads: [...reads] };
}

/**
 * The balance loop of a vehicle.
 *
 * @throws DomainError  where a figure of the hardware, the sample time or the delay is outside its range
 */
export function balanceLoop(hardware: BalanceHardware, controller: BalanceController): BalanceLoop {
  requireFinite('lean gain', controller.leanGain);
  requireFinite('rate gain', controller.rateGain);
  requireFinite('gimbal gain', controller.gimbalGain);
  requirePositive('sample time', controller.sampleTime, 's');
  if (controller.delay / controller.sampleTime > longestDelayInSamples) {
    const requirement = `it has to be at most ${longestDelayInSamples} sample times`;
    throw new DomainError('delay', controller.delay, requirement, 's');
  }
  const plant = linearPlant(hardware, plantOptions(controller));
  const sampled = discretise(plant, controller.sampleTime, controller.delay);
  return { sampled, ...feedbackRows(plant, controller), plant, hardware, controller };
}

/** The controller as rows over the states of a plant that has already been sampled: cheap, for many gains. */
export function feedbackRows(
  plant: Pick<LinearPlant, 'order' | 'signals'>,
  controller: BalanceController,
): Pick<SampledLoop, 'feedback' | 'feedbackBefore'> {
  const { now, before } = commandRows(plant.signals, controller);
  return {
    feedback: now.subarray(0, plant.order),
    ...(before ? { feedbackBefore: before.subarray(0, plant.order) } : {}),
  };
}

export interface CommandRows {
  readonly now: Float64Array;
  readonly before?: Float64Array;
}

/** The command as rows over states and held command, linear in the signals' rows and in the gains. */
export function commandRows(signals: LinearPlant['signals'], controller: BalanceController): CommandRows {
  const { leanGain, rateGain, gimbalGain, rateSource, sampleTime } = controller;
  const lean = signals['measured lean'];
  const tilt = signals['gimbal tilt'];
  const differenced = rateSource === 'difference of angle';
  const rate = differenced ? lean : signals[rateSource === 'rate gyro' ? 'measured rate' : rateSource];
  const byRate = differenced ? rateGain / sampleTime : rateGain;
  const now = lean.map(
    (entry, i) => leanGain * entry + gimbalGain * (tilt[i] ?? 0) + byRate * (rate[i] ?? 0),
  );
  return differenced && rateGain !== 0 ? { now, before: lean.map((entry) => -byRate * entry) } : { now };
}

/**
 * The closed loop as one matrix over [x(k); u(k−1) … ; what the last sample adds to the command]: its eigenvalues
 * are the closed-loop poles in z.
 */
export function closedLoopMatrix(loop: SampledLoop): {
  readonly matrix: Float64Array;
  readonly order: number;
} {
  const { order: n, transition, wholeSamples: m, input, inputBefore } = loop.sampled;
  const kept = pastCommands(loop.sampled);
  const remembers = loop.feedbackBefore ? 1 : 0;
  const order = n + kept + remembers;
  const matrix = new Float64Array(order * order);
  const set = (i: number, j: number, value: number): void => {
    matrix[i * order + j] = (matrix[i * order + j] ?? 0) + value;
  };
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) set(i, j, transition[i * n + j] ?? 0);
    if (m > 0) set(i, n + m - 1, input[i] ?? 0);
    if (kept > m) set(i, n + m, inputBefore[i] ?? 0);
  }
  /** Adds gain × u(k) to a row. */
  const command = (row: number, gain: number): void => {
    for (let j = 0; j < n; j++) set(row, j, gain * (loop.feedback[j] ?? 0));
    if (remembers) set(row, order - 1, gain);
  };
  if (m === 0) for (let i = 0; i < n; i++) command(i, input[i] ?? 0);
  if (kept > 0) command(n, 1);
  for (let past = 1; past < kept; past++) set(n + past, n + past - 1, 1);
  if (loop.feedbackBefore) for (let j = 0; j < n; j++) set(order - 1, j, loop.feedbackBefore[j] ?? 0);
  return { matrix, order };
}

/** How many commands of the past are still on their way. */
function pastCommands({ wholeSamples, inputBefore }: SampledPlant): number {
  return wholeSamples + (inputBefore.some((entry) => entry !== 0) ? 1 : 0);
}

/**
 * The motion from sample to sample after a start from some state, no command on its way before, and a lean reading
 * before the first that equals the first.
 *
 * @param initial  x(0)
 * @param samples  how many samples to go on for
 * @returns x(0) … x(samples)
 */
export function respond(loop: SampledLoop, initial: Float64Array, samples: number): Float64Array[] {
  const { matrix, order } = closedLoopMatrix(loop);
  const n = loop.sampled.order;
  let state = new Float64Array(order);
  state.set(initial);
  if (loop.feedbackBefore) {
    state[order - 1] = loop.feedbackBefore.reduce((sum, entry, j) => sum + entry * (initial[j] ?? 0), 0);
  }
  const motion = [state.slice(0, n)];
  for (let k = 0; k < samples; k++) {
    const next = new Float64Array(order);
    for (let i = 0; i < order; i++) {
      let sum = 0;
      for (let j = 0; j < order; j++) sum += (matrix[i * order + j] ?? 0) * (state[j] ?? 0);
      next[i] = sum;
    }
    state = next;
    motion.push(state.slice(0, n));
  }
  return motion;
}

/** A state of the plant with everything at rest but what is given. */
export function restingState(
  plant: Pick<LinearPlant, 'states' | 'order'>,
  given: Partial<Record<LinearPlant['states'][number], number>>,
): Float64Array {
  return Float64Array.from(plant.states, (state) => given[state] ?? 0);
}

/** Code number of a rate source, as the registered calculation takes it; and back. */
export function rateSourceCode(source: RateSource): number {
  return rateSources.indexOf(source);
}

export function rateSourceOfCode(code: number): RateSource {
  const source = rateSources[code];
  if (source === undefined) {
    throw new DomainError(
      'rate source',
      code,
      `it has to be ${rateSources.map((name, i) => `${i} (${name})`).join(', ')}`,
    );
  }
  return source;
}
