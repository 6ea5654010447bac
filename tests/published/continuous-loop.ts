/**
 * Published loops are mostly continuous; ours are sampled. A loop sampled faster and faster tends to the continuous
 * one, so its figures are taken at sample times halved again and again and carried on to 0.
 */
import {
  closedLoopPoles,
  delayMargin,
  discretise,
  eigenvalues,
  type FrequencySweep,
  frequencySweep,
  gainMargins,
  peakSensitivity,
  phaseMargin,
  type SampledLoop,
  type StateSpace,
} from '../../src/control/index.ts';

/** A transfer function as a plant (controllable form) with the row that its output is read with. */
export interface Realisation extends StateSpace {
  readonly output: Float64Array;
}

/** Coefficients by falling powers of s; the numerator of lower degree than the denominator. */
export function realise(numerator: readonly number[], denominator: readonly number[]): Realisation {
  const [leading = 1, ...rest] = denominator;
  const order = rest.length;
  const a = new Float64Array(order * order);
  rest.forEach((coefficient, j) => {
    a[j] = -coefficient / leading;
  });
  for (let i = 1; i < order; i++) a[i * order + i - 1] = 1;
  const b = new Float64Array(order);
  b[0] = 1;
  const output = new Float64Array(order);
  numerator.forEach((coefficient, i) => {
    output[order - numerator.length + i] = coefficient / leading;
  });
  return { order, a, b, output };
}

/** Polynomial from its factors, by falling powers. */
export function product(...factors: readonly (readonly number[])[]): number[] {
  return factors.reduce<number[]>(
    (sum, factor) => {
      const out = new Array<number>(sum.length + factor.length - 1).fill(0);
      sum.forEach((x, i) => {
        factor.forEach((y, j) => {
          out[i + j] = (out[i + j] ?? 0) + x * y;
        });
      });
      return out;
    },
    [1],
  );
}

/** Unit negative feedback around a realisation, held and delayed. */
export function closed(loop: Realisation, sampleTime: number, delay = 0): SampledLoop {
  return { sampled: discretise(loop, sampleTime, delay), feedback: loop.output.map((entry) => -entry) };
}

export function sweepOf(loop: SampledLoop): FrequencySweep {
  const { transition, order, sampleTime } = loop.sampled;
  const poles = closedLoopPoles(loop, sampleTime).modes.map(({ z }) => z);
  return frequencySweep(loop, eigenvalues(transition, order), poles);
}

/**
 * The value at sample time 0 of a figure that is smooth in the sample time.
 *
 * @param figure  of the loop at a sample time
 * @param first   the largest of the sample times, s
 * Source: Richardson's extrapolation, here as Neville's scheme over halved steps.
 */
export function atSampleTimeZero(
  figure: (sampleTime: number) => number,
  first: number,
  halvings = 5,
): number {
  const row: number[] = [];
  for (let j = 0; j <= halvings; j++) {
    row.unshift(figure(first / 2 ** j));
    for (let k = 1; k < row.length; k++) {
      const finer = row[k - 1] ?? Number.NaN;
      row[k] = finer + (finer - (row[k] ?? Number.NaN)) / (2 ** k - 1);
    }
  }
  return row.at(-1) ?? Number.NaN;
}

const degrees = (angle: number): number => (angle * 180) / Math.PI;

/** What can be read off a loop. The delay is the one that it has already. */
export const readings = {
  'gain margin up': (sweep) => gainMargins(sweep).gainMarginUp.factor,
  'its frequency, rad/s': (sweep) => gainMargins(sweep).gainMarginUp.frequency,
  'gain margin down': (sweep) => gainMargins(sweep).gainMarginDown.factor,
  'frequency of that, rad/s': (sweep) => gainMargins(sweep).gainMarginDown.frequency,
  'phase margin, °': (sweep) => degrees(phaseMargin(sweep).angle),
  'crossover, rad/s': (sweep) => phaseMargin(sweep).frequency,
  'delay margin, s': (sweep, plant, delay) => delayMargin(sweep, plant, delay).delay,
  'least distance from −1': (sweep) => 1 / peakSensitivity(sweep).peak,
  'frequency of the peak, rad/s': (sweep) => peakSensitivity(sweep).frequency,
  'peak sensitivity': (sweep) => peakSensitivity(sweep).peak,
} as const satisfies Record<string, (sweep: FrequencySweep, plant: StateSpace, delay: number) => number>;
export type Reading = keyof typeof readings;
