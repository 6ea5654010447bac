/**
 * The controller as the vehicle carries it: at each sample it reads what its sensors give, noise, steps and all, and
 * works out a command, which reaches the drive later. Nothing of the true state is known to it.
 */
import type { BalanceController, RandomNumbers } from '../control/index.ts';
import { laggedRate, type Motion } from './motion.ts';
import type { CompleteModel, SensorFigures } from './vehicle.ts';
import { TILT, TILT_RATE } from './vehicle-equations.ts';

export interface SampledController {
  /** What it read last, and what it took for the rate: rad, rad/s, or rad where that is the gimbal tilt. */
  readonly leanReading: number;
  readonly rateReading: number;
  /** u of the last sample, clipped to the travel. */
  readonly command: number;
  /** Reads and commands. */
  sample(motion: Motion): void;
  /** The command of so many samples ago; 0 from before the first. */
  commandBefore(samples: number): number;
}

/**
 * u = K_p lean + K_d rate + K_g tilt, clipped to the travel of the ballast.
 *
 * A reading is (true value behind the lag + offset + noise) rounded to the resolution. A difference of angles begins with
 * no difference.
 */
export function sampledController(
  { controller, sensors, vehicle }: Pick<CompleteModel, 'controller' | 'sensors' | 'vehicle'>,
  random: RandomNumbers,
  longestDelay: number,
): SampledController {
  const { leanGain, rateGain, gimbalGain, rateSource, sampleTime } = controller;
  const { travel } = vehicle;
  const commands = new Float64Array(longestDelay + 1);
  const s = { leanReading: Number.NaN, rateReading: Number.NaN, command: Number.NaN, count: 0 };
  const lean = sensor(sensors, random, 'lean');
  const rate = sensor(sensors, random, 'rate');
  const tilt = sensor(sensors, random, 'tilt');

  const rateOf = (motion: Motion, leanBefore: number, tiltReading: number): number => {
    switch (rateSource) {
      case 'rate gyro':
        return rate(laggedRate(motion));
      case 'difference of angle':
        return s.count === 0 ? 0 : (s.leanReading - leanBefore) / sampleTime;
      case 'gimbal tilt':
        return tiltReading;
      default:
        return rate(motion.now[TILT_RATE] ?? 0);
    }
  };

  return Object.assign(s, {
    sample(motion: Motion): void {
      const leanBefore = s.leanReading;
      s.leanReading = lean(motion.lagged);
      const tiltReading = tilt(motion.now[TILT] ?? 0);
      s.rateReading = rateOf(motion, leanBefore, tiltReading);
      const wanted = leanGain * s.leanReading + rateGain * s.rateReading + gimbalGain * tiltReading;
      s.command = Math.min(Math.max(wanted, -travel), travel);
      commands[s.count % commands.length] = s.command;
      s.count++;
    },
    commandBefore(samples: number): number {
      const index = s.count - 1 - samples;
      return index < 0 ? 0 : (commands[index % commands.length] ?? 0);
    },
  });
}

type Reads = (value: number) => number;

function sensor(
  sensors: Required<SensorFigures>,
  random: RandomNumbers,
  name: 'lean' | 'rate' | 'tilt',
): Reads {
  const noise = sensors[`${name}Noise`];
  const step = sensors[`${name}Resolution`];
  const offset = sensors[`${name}Offset`];
  return (value) => {
    const seen = value + offset + (noise > 0 ? noise * random.normal() : 0);
    return step > 0 ? step * Math.round(seen / step) : seen;
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
