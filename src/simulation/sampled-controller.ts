/**
 * The controller as the vehicle carries it: at each sample it reads what its sensors give, noise, steps and all, and
 * works out a command, which reaches the drive later. Nothing of the true state is known to it.
 */
import type { BalanceController, RandomNumbers } from '../control/index.ts';
import { laggedRate, type Motion } from './motion.ts';
import type { CompleteModel, SensorFigures } from './vehicle.ts';
import { TILT, TILT_RATE } from './vehicle-equations.ts';

/** A sensor: what it adds to what it measures, and in what steps it tells it. */
interface Sensor {
  readonly noise: number;
  readonly offset: number;
  readonly resolution: number;
}

/** Normal numbers, drawn many at once. */
interface Noise {
  readonly random: RandomNumbers;
  readonly drawn: Float64Array;
  used: number;
}

/** Only `sample` changes it. */
export interface SampledController {
  readonly controller: BalanceController;
  /** Largest command to either side. */
  readonly travel: number;
  readonly lean: Sensor;
  readonly rate: Sensor;
  readonly tilt: Sensor;
  readonly noise: Noise;
  /** What it read last, and what it took for the rate: rad, rad/s, or rad where that is the gimbal tilt. */
  leanReading: number;
  rateReading: number;
  /** u of the last sample, clipped to the travel. */
  command: number;
  /** The commands that are still wanted, in a ring, and how many there have been. */
  readonly commands: Float64Array;
  count: number;
}

const DRAWN_AT_ONCE = 256;

/** @param longestDelay  in whole samples: commands further back are forgotten */
export function sampledController(
  { controller, sensors, vehicle }: Pick<CompleteModel, 'controller' | 'sensors' | 'vehicle'>,
  random: RandomNumbers,
  longestDelay: number,
): SampledController {
  return {
    controller,
    travel: vehicle.travel,
    lean: sensorOf(sensors, 'lean'),
    rate: sensorOf(sensors, 'rate'),
    tilt: sensorOf(sensors, 'tilt'),
    noise: { random, drawn: new Float64Array(DRAWN_AT_ONCE), used: DRAWN_AT_ONCE },
    leanReading: Number.NaN,
    rateReading: Number.NaN,
    command: Number.NaN,
    commands: new Float64Array(longestDelay + 1),
    count: 0,
  };
}

/**
 * Reads and commands.
 *
 *   u = K_p lean + K_d rate + K_g tilt, clipped to the travel of the ballast
 *
 * A reading is (true value behind the lag + offset + noise) rounded to the resolution. A difference of angles begins with
 * no difference.
 */
export function sample(state: SampledController, motion: Motion): void {
  const { controller, travel, commands, noise } = state;
  const before = state.leanReading;
  const lean = read(state.lean, noise, motion.lagged);
  const tilt = read(state.tilt, noise, motion.now[TILT] ?? 0);
  let rate = tilt;
  switch (controller.rateSource) {
    case 'rate gyro':
      rate = read(state.rate, noise, laggedRate(motion));
      break;
    case 'difference of angle':
      rate = state.count === 0 ? 0 : (lean - before) / controller.sampleTime;
      break;
    case 'gimbal rate':
      rate = read(state.rate, noise, motion.now[TILT_RATE] ?? 0);
      break;
  }
  const wanted = controller.leanGain * lean + controller.rateGain * rate + controller.gimbalGain * tilt;
  const command = Math.min(Math.max(wanted, -travel), travel);
  state.leanReading = lean;
  state.rateReading = rate;
  state.command = command;
  commands[state.count % commands.length] = command;
  state.count++;
}

/** The command of so many samples ago; 0 from before the first. */
export function commandBefore({ commands, count }: SampledController, samples: number): number {
  const index = count - 1 - samples;
  return index < 0 ? 0 : (commands[index % commands.length] ?? 0);
}

function read({ noise: size, offset, resolution }: Sensor, noise: Noise, value: number): number {
  let seen = value + offset;
  if (size > 0) {
    if (noise.used === DRAWN_AT_ONCE) {
      noise.random.fillNormal(noise.drawn);
      noise.used = 0;
    }
    seen += size * (noise.drawn[noise.used] ?? 0);
    noise.used++;
  }
  return resolution > 0 ? resolution * Math.round(seen / resolution) : seen;
}

function sensorOf(sensors: Required<SensorFigures>, name: 'lean' | 'rate' | 'tilt'): Sensor {
  return {
    noise: sensors[`${name}Noise`],
    offset: sensors[`${name}Offset`],
    resolution: sensors[`${name}Resolution`],
  };
}

/** How a delay falls upon the samples, the same as in the exact discretisation: delay = m T_s + t₁. */
export function delayParts({ delay, sampleTime }: BalanceController): {
  readonly wholeSamples: number;
  readonly lateTime: number;
} {
  const wholeSamples = Math.floor(delay / sampleTime);
  const lateTime = Math.min(Math.max(delay - wholeSamples * sampleTime, 0), sampleTime);
  return { wholeSamples, lateTime };
}
