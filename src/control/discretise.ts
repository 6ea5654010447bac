/**
 * From continuous motion to samples, exactly: the command is held over each sample time and reaches the actuator
 * after a delay of any length, whole samples or not.
 */
import { DomainError, requireNotNegative, requirePositive } from '../mechanics/index.ts';
import { multiply, multiplyColumn } from './dense.ts';
import type { StateSpace } from './linear-plant.ts';
import { type ExponentialWithSlopes, matrixExponentialWithSlopes } from './matrix-exponential.ts';

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

/** Derivatives of a sampled plant by one quantity. */
export interface SampledSlope {
  readonly transition: Float64Array;
  readonly input: Float64Array;
  readonly inputBefore: Float64Array;
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
export function discretise(plant: StateSpace, sampleTime: number, delay: number): SampledPlant {
  return discretiseWithSlopes(plant, sampleTime, delay, []).sampled;
}

export interface SampledWithSlopes {
  readonly sampled: SampledPlant;
  /** One for each direction in which a and b were changed. */
  readonly slopes: readonly SampledSlope[];
  readonly bySampleTime: SampledSlope;
  readonly byDelay: SampledSlope;
}

/** The same with its exact derivatives by directions of (a, b), by the sample time and by the delay. */
export function discretiseWithSlopes(
  plant: StateSpace,
  sampleTime: number,
  delay: number,
  directions: readonly Pick<StateSpace, 'a' | 'b'>[],
): SampledWithSlopes {
  requirePositive('sample time', sampleTime, 's');
  requireNotNegative('delay', delay, 's');
  const wholeSamples = Math.floor(delay / sampleTime);
  const late = Math.min(Math.max(delay - wholeSamples * sampleTime, 0), sampleTime);
  const early = sampleTime - late;
  const first = held(plant, early, directions);
  const second = held(plant, late, directions);
  const { order } = plant;
  const transition = product(first.transition, second.transition, order);
  if (!transition.every(Number.isFinite)) {
    throw new DomainError('sample time', sampleTime, 'the vehicle falls beyond all numbers within it', 's');
  }
  const inputBefore = column(first.transition, second.input, order);

  const slopes = directions.map((_, j): SampledSlope => {
    const d1 = first.slopes[j] ?? first;
    const d2 = second.slopes[j] ?? second;
    return {
      transition: sum(
        product(d1.transition, second.transition, order),
        product(first.transition, d2.transition, order),
      ),
      input: d1.input,
      inputBefore: sum(column(d1.transition, second.input, order), column(first.transition, d2.input, order)),
    };
  });

  // ∂early/∂delay = −1, ∂late/∂delay = 1; the end of the hold moves through Φ₁ b
  const edge = column(first.transition, plant.b, order);
  const m = wholeSamples;
  const grown = column(plant.a, inputBefore, order);
  const passed = column(transition, plant.b, order);
  return {
    sampled: { order, sampleTime, transition, wholeSamples, input: first.input, inputBefore },
    slopes,
    bySampleTime: {
      transition: product(plant.a, transition, order),
      input: edge.map((entry) => (1 + m) * entry),
      inputBefore: grown.map((entry, i) => (1 + m) * entry - m * (passed[i] ?? 0)),
    },
    byDelay: {
      transition: new Float64Array(order * order),
      input: edge.map((entry) => -entry),
      inputBefore: edge,
    },
  };
}

interface Held {
  readonly transition: Float64Array;
  readonly input: Float64Array;
}

/** e^{a t} and ∫₀^t e^{a s} ds b, with their derivatives. */
function held(
  plant: StateSpace,
  time: number,
  directions: readonly Pick<StateSpace, 'a' | 'b'>[],
): Held & { readonly slopes: readonly Held[] } {
  const { order } = plant;
  const bordered = ({ a, b }: Pick<StateSpace, 'a' | 'b'>): Float64Array => {
    const matrix = new Float64Array((order + 1) ** 2);
    for (let i = 0; i < order; i++) {
      for (let j = 0; j < order; j++) matrix[i * (order + 1) + j] = time * (a[i * order + j] ?? 0);
      matrix[i * (order + 1) + order] = time * (b[i] ?? 0);
    }
    return matrix;
  };
  const parts = (matrix: Float64Array): Held => {
    const transition = new Float64Array(order * order);
    const input = new Float64Array(order);
    for (let i = 0; i < order; i++) {
      const from = i * (order + 1);
      transition.set(matrix.subarray(from, from + order), i * order);
      input[i] = matrix[from + order] ?? 0;
    }
    return { transition, input };
  };
  const exponential: ExponentialWithSlopes = matrixExponentialWithSlopes(
    bordered(plant),
    order + 1,
    directions.map(bordered),
  );
  return { ...parts(exponential.value), slopes: exponential.slopes.map(parts) };
}

function product(a: Float64Array, b: Float64Array, order: number): Float64Array {
  const out = new Float64Array(order * order);
  multiply(out, a, b, order);
  return out;
}

function column(m: Float64Array, v: Float64Array, order: number): Float64Array {
  const out = new Float64Array(order);
  multiplyColumn(out, m, v, order);
  return out;
}

function sum(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((entry, i) => entry + (b[i] ?? 0));
}
