/**
 * What the controller really reads where it believes it reads the roll rate. A gimbal answers to lean or to roll rate,
 * depending on whether its spring, its friction or its inertia holds it, and the gain that is called the rate gain acts
 * on what is read.
 */
import { requirePositive, standardGravity } from '../mechanics/index.ts';
import type { BalanceController, BalanceLoop } from './balance-loop.ts';
import type { Complex } from './complex.ts';
import type { BalanceHardware } from './linear-plant.ts';

export interface RateReading {
  /** ω, rad/s, at which it is looked at. */
  readonly frequency: number;
  /** Reading for each radian of lean, a, and for each rad/s of roll rate, b: reading = a φ + b φ̇ at this frequency. */
  readonly byLean: number;
  readonly byRate: number;
  /** |a| / (|a| + |b| ω): 1 reads lean and nothing else, 0 roll rate and nothing else. */
  readonly leanShare: number;
  /** The gains on lean and roll rate that the controller amounts to at this frequency, all its gains together. */
  readonly leanGain: number;
  readonly rateGain: number;
  /** The gimbal tilt follows the roll rate below this, rad/s: k/c; 0 without centring, Infinity without friction. */
  readonly followsRateBelow: number;
  /** It follows the lean from there up to this, rad/s: c/I_g. */
  readonly followsLeanBelow: number;
  /** All of it in words. */
  readonly text: string;
}

/**
 * The reading of the rate source at a frequency.
 *
 *   gimbal tilt    α/φ = H s / (I_g s² + c s + k)      gimbal rate   s α/φ
 *   rate gyro      s / (1 + τ_s s)                     difference    (1 − e^{−s T_s}) / (T_s (1 + τ_s s))
 *
 * with s = jω: the real part is what is read of the lean, the imaginary part over ω what is read of its rate.
 *
 * @param frequency  ω, rad/s, more than 0; how fast the vehicle topples without a rotor, √(g M/I), where left out
 * @throws DomainError  for a frequency that is not above 0
 * Source: equation of moments about the tilt axis, linear; lag of the sensors and difference of two samples.
 */
export function rateReading(
  { hardware, controller }: Pick<BalanceLoop, 'hardware' | 'controller'>,
  frequency = topplingRate(hardware),
): RateReading {
  requirePositive('frequency', frequency, 'rad/s');
  const { gimbalInertia, gimbalFriction, gimbalCentring } = hardware;
  const source = readingOf(hardware, controller, frequency);
  const tilt = gimbalTilt(hardware, frequency);
  const byLean = source.re;
  const byRate = source.im / frequency;
  const size = Math.abs(byLean) + Math.abs(byRate) * frequency;
  const lean = lagged({ re: 1, im: 0 }, hardware, frequency);
  const total = {
    re: controller.leanGain * lean.re + controller.rateGain * source.re + controller.gimbalGain * tilt.re,
    im: controller.leanGain * lean.im + controller.rateGain * source.im + controller.gimbalGain * tilt.im,
  };
  const reading = {
    frequency,
    byLean,
    byRate,
    leanShare: size > 0 ? Math.abs(byLean) / size : 0,
    leanGain: total.re,
    rateGain: total.im / frequency,
    followsRateBelow: gimbalCentring > 0 ? gimbalCentring / gimbalFriction : 0,
    followsLeanBelow: gimbalInertia > 0 ? gimbalFriction / gimbalInertia : 0,
  };
  return { ...reading, text: textOf(hardware, controller, reading) };
}

function topplingRate({ firstMoment, rollInertia }: BalanceHardware): number {
  return Math.sqrt((standardGravity * firstMoment) / rollInertia);
}

function readingOf(hardware: BalanceHardware, controller: BalanceController, frequency: number): Complex {
  switch (controller.rateSource) {
    case 'rate gyro':
      return lagged({ re: 0, im: frequency }, hardware, frequency);
    case 'difference of angle': {
      const turn = frequency * controller.sampleTime;
      const difference = {
        re: (1 - Math.cos(turn)) / controller.sampleTime,
        im: Math.sin(turn) / controller.sampleTime,
      };
      return lagged(difference, hardware, frequency);
    }
    case 'gimbal tilt':
      return gimbalTilt(hardware, frequency);
    default: {
      const { re, im } = gimbalTilt(hardware, frequency);
      return { re: -frequency * im, im: frequency * re };
    }
  }
}

/** x / (1 + jωτ_s). */
function lagged({ re, im }: Complex, { sensorLag }: BalanceHardware, frequency: number): Complex {
  const turn = frequency * sensorLag;
  const size = 1 + turn * turn;
  return { re: (re + im * turn) / size, im: (im - re * turn) / size };
}

/** α/φ. */
function gimbalTilt(hardware: BalanceHardware, frequency: number): Complex {
  const { spinMomentum, gimbalInertia, gimbalFriction, gimbalCentring } = hardware;
  if (spinMomentum === 0) return { re: 0, im: 0 };
  const re = gimbalCentring - gimbalInertia * frequency ** 2;
  const im = gimbalFriction * frequency;
  const scale = (spinMomentum * frequency) / (re * re + im * im);
  return { re: scale * im, im: scale * re };
}

function textOf(
  hardware: BalanceHardware,
  { rateSource, rateGain }: BalanceController,
  reading: Omit<RateReading, 'text'>,
): string {
  const { frequency, byLean, byRate, leanShare } = reading;
  const gimbal = rateSource === 'gimbal tilt' || rateSource === 'gimbal rate';
  if (gimbal && hardware.spinMomentum === 0) {
    return `The rate gain acts on the ${rateSource}, and without a spinning rotor that says nothing about the vehicle.`;
  }
  const unit = rateSource === 'gimbal tilt' ? 'rad' : 'rad/s';
  const percent = Math.round(100 * leanShare);
  const verdict =
    leanShare > 0.75
      ? `The rate gain acts on the lean, ${percent} %, and hardly on its rate.`
      : leanShare > 0.25
        ? `The rate gain acts on both, ${percent} % lean.`
        : `The rate gain acts on the roll rate, with ${percent} % of lean in it.`;
  const backwards =
    rateGain !== 0 && byRate < 0 && leanShare <= 0.75
      ? ' The sign is turned round: a positive rate gain feeds the roll rate instead of damping it.'
      : '';
  return (
    `At ${figure(frequency)} rad/s the ${rateSource} reads ${figure(byLean)} ${unit} for each radian of lean and ` +
    `${figure(byRate)} ${unit} for each rad/s of roll rate. ${verdict}${backwards}`
  );
}

/** Three digits, with a real minus sign. */
function figure(value: number): string {
  return String(Number(value.toPrecision(3))).replace('-', '−');
}
