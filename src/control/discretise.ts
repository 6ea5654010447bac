/**
 * From continuous motion to samples, exactly: the command is held over each sample time and reaches the actuator
 * after a delay of any length, whole samples or not.
 */
import { DomainError, requireNotNegative, requirePositive } from '../mechanics/index.ts';
import { multiply, multiplyColumn } from './dense.ts';
import type { StateSpace } from './linear-plant.ts';
import { matrixExponential } from './matrix-exponential.ts';

/**
 * x(k+1) = Φ x(k) + Γ₀ u(k − m) + Γ₁ u(k − m − 1), m whole samples of delay.
 */
export interface SampledPlant {
  readonly order: number;
  /** T_s, s. */
  readonly sampleTime: number;
  /** Φ, row after row. */
  readonly transition: Float64Array;
  /** m. */
  readonly wholeSamples: number;
  /** Γ₀. */
  readonly input: Float64Array;
  /** Γ₁; all zero where the delay is a whole number of samples. */
  readonly inputBefore: Float64Array;
}

/** A stretch of time with the command held: e^{a t} and ∫₀^t e^{a s} ds b. */
export interface Held {
  readonly time: number;
  readonly transition: Float64Array;
  readonly input: Float64Array;
}

/** A sampled plant with its sample time in two stretches: the late command first, then the one of this sample. */
export interface HeldPlant extends SampledPlant {
  readonly late: Held;
  readonly early: Held;
}

/**
 * Exact zero-order hold with delay.
 *
 *   delay = m T_s + t₁,  0 ≤ t₁ < T_s
 *   Φ = e^{a T_s},  Γ₀ = ∫₀^{T_s−t₁} e^{a s} ds b,  Γ₁ = e^{a (T_s−t₁)} ∫₀^{t₁} e^{a s} ds b
 *
 * @param plant       ẋ = a x + b u
 * @param sampleTime  T_s, s, more than 0
 * @param delay       s, not negative
 * @throws DomainError  outside those ranges, or where the motion grows beyond all numbers within one sample
 * Source: K. J. Åström, B. Wittenmark, Computer-Controlled Systems, 3rd ed., section 2.3; from memory, and it
 * follows from holding the command over the two parts of the sample. The integrals come out of the exponential of
 * the matrix [a b; 0 0] (C. F. Van Loan 1978).
 */
export function discretise(plant: StateSpace, sampleTime: number, delay: number): HeldPlant {
  requirePositive('sample time', sampleTime, 's');
  requireNotNegative('delay', delay, 's');
  const wholeSamples = Math.floor(delay / sampleTime);
  const lateTime = Math.min(Math.max(delay - wholeSamples * sampleTime, 0), sampleTime);
  const late = held(plant, lateTime);
  const early = held(plant, sampleTime - lateTime);
  const { order } = plant;
  const transition = new Float64Array(order * order);
  multiply(transition, early.transition, late.transition, order);
  if (!transition.every(Number.isFinite)) {
    throw new DomainError('sample time', sampleTime, 'the vehicle falls beyond all numbers within it', 's');
  }
  return {
    order,
    sampleTime,
    transition,
    wholeSamples,
    input: early.input,
    inputBefore: column(early.transition, late.input, order),
    late,
    early,
  };
}

/** Derivatives of a sampled plant by one quantity. */
export interface SampledSlope {
  readonly transition?: Float64Array;
  readonly input: Float64Array;
  readonly inputBefore: Float64Array;
}

/** By the delay: the moment at which one command takes over from the other moves, and nothing else. */
export function slopeByDelay(plant: StateSpace, sampled: HeldPlant): SampledSlope {
  const edge = column(sampled.early.transition, plant.b, plant.order);
  return { input: edge.map((entry) => -entry), inputBefore: edge };
}

/** By the sample time, with the delay as it is: one stretch grows by 1 + m, the other shrinks by m. */
export function slopeBySampleTime(plant: StateSpace, sampled: HeldPlant): SampledSlope {
  const { order, transition, wholeSamples: m, inputBefore, early } = sampled;
  const growth = new Float64Array(order * order);
  multiply(growth, plant.a, transition, order);
  const edge = column(early.transition, plant.b, order);
  const grown = column(plant.a, inputBefore, order);
  const passed = column(transition, plant.b, order);
  return {
    transition: growth,
    input: edge.map((entry) => (1 + m) * entry),
    inputBefore: grown.map((entry, i) => (1 + m) * entry - m * (passed[i] ?? 0)),
  };
}

/** The matrix [a b; 0 0] t, whose exponential is [e^{a t} ∫e^{a s}ds b; 0 1]. */
export function bordered({ a, b, order }: StateSpace, time: number): Float64Array {
  const matrix = new Float64Array((order + 1) ** 2);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j < order; j++) matrix[i * (order + 1) + j] = time * (a[i * order + j] ?? 0);
    matrix[i * (order + 1) + order] = time * (b[i] ?? 0);
  }
  return matrix;
}

function held(plant: StateSpace, time: number): Held {
  const { order } = plant;
  const exponential = matrixExponential(bordered(plant, time), order + 1);
  const transition = new Float64Array(order * order);
  const input = new Float64Array(order);
  for (let i = 0; i < order; i++) {
    const from = i * (order + 1);
    transition.set(exponential.subarray(from, from + order), i * order);
    input[i] = exponential[from + order] ?? 0;
  }
  return { time, transition, input };
}

function column(m: Float64Array, v: Float64Array, order: number): Float64Array {
  const out = new Float64Array(order);
  multiplyColumn(out, m, v, order);
  return out;
}
