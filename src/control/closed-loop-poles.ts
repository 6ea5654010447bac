/** Poles of the closed loop and what they mean in time: how fast a disturbance dies out, and how it swings. */
import { closedLoopMatrix, type SampledLoop } from './balance-loop.ts';
import type { Complex } from './complex.ts';
import { eigenvalues } from './eigenvalues.ts';

export interface Mode {
  /** Pole in z. */
  readonly z: Complex;
  /** The same as a continuous motion, s = ln z / T_s, 1/s; −Infinity where it dies within the sample. */
  readonly s: Complex;
  /** ω_n = |s|, rad/s. */
  readonly naturalFrequency: number;
  /** ζ = −cos arg s: 1 for a motion that does not swing, below 0 for one that grows. */
  readonly dampingRatio: number;
}

export interface ClosedLoopPoles {
  /** Slowest to die out first; of a conjugate pair both. */
  readonly modes: readonly Mode[];
  /** Largest |z|. */
  readonly spectralRadius: number;
  /** The slowest. */
  readonly dominant: Mode;
  /** s, for the dominant mode to fall to 2 % of where it began; Infinity where it does not. */
  readonly settlingTime: number;
}

const SETTLED = 0.02; // common practice, no source

/**
 * Closed-loop poles of a sampled loop.
 *
 * @param sampleTime  T_s, s
 * Source: eigenvalues of the closed loop's matrix; s, ω_n and ζ as in K. J. Åström, B. Wittenmark,
 * Computer-Controlled Systems, section 2.8 (from memory).
 */
export function closedLoopPoles(loop: SampledLoop, sampleTime: number): ClosedLoopPoles {
  const { matrix, order } = closedLoopMatrix(loop);
  return polesOf(eigenvalues(matrix, order), sampleTime);
}

/** Poles in z, sorted and read. */
export function polesOf(poles: readonly Complex[], sampleTime: number): ClosedLoopPoles {
  const modes = poles
    .map((z) => mode(z, sampleTime))
    .sort((a, b) => Math.hypot(b.z.re, b.z.im) - Math.hypot(a.z.re, a.z.im) || b.z.im - a.z.im);
  const dominant = modes[0] ?? mode({ re: 0, im: 0 }, sampleTime);
  const radius = Math.hypot(dominant.z.re, dominant.z.im);
  return {
    modes,
    spectralRadius: radius,
    dominant,
    settlingTime: radius < 1 ? (sampleTime * Math.log(SETTLED)) / Math.log(radius) : Number.POSITIVE_INFINITY,
  };
}

/** The continuous motion behind a pole in z. */
export function mode(z: Complex, sampleTime: number): Mode {
  const s = {
    re: Math.log(Math.hypot(z.re, z.im)) / sampleTime,
    im: Math.atan2(z.im, z.re) / sampleTime,
  };
  const naturalFrequency = Math.hypot(s.re, s.im);
  return {
    z,
    s,
    naturalFrequency,
    dampingRatio: Number.isFinite(naturalFrequency)
      ? naturalFrequency > 0
        ? -s.re / naturalFrequency
        : 0
      : 1,
  };
}
