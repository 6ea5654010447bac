/** What a stopwatch shows beside what the pendulum equations mean: wide swings take longer, damped ones too. */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireBetween, requireFinite, requirePositive } from './domain.ts';

/**
 * Period of small swings from the period measured with a wide one.
 *
 *   T₀ = T · AGM(1, cos(θ/2))
 *
 * AGM is the arithmetic-geometric mean; for small angles T ≈ T₀ (1 + θ²/16): 0.2 % at 10°, 0.8 % at 20°.
 *
 * @param period     T, s, more than 0
 * @param amplitude  θ, rad to each side, mean over the timed swings, not negative, less than π
 * @returns T₀, s
 * @throws DomainError  outside these ranges
 * Source: complete elliptic integral of the first kind by Gauss's arithmetic-geometric mean.
 */
export function smallSwingPeriod(swing: { readonly period: number; readonly amplitude: number }): number {
  requirePositive('period of swing', swing.period, 's');
  requireBetween('swing to each side', swing.amplitude, 0, Math.PI, 'rad');
  if (swing.amplitude === Math.PI) {
    throw new DomainError('swing to each side', Math.PI, 'upside down it may stand for ever', 'rad');
  }
  let [arithmetic, geometric] = [1, Math.cos(swing.amplitude / 2)];
  // Quadratic convergence: six steps are exact to the last bit up to 179°.
  for (let step = 0; step < 20; step++) {
    [arithmetic, geometric] = [(arithmetic + geometric) / 2, Math.sqrt(arithmetic * geometric)];
  }
  return swing.period * arithmetic;
}

/**
 * Logarithmic decrement and damping ratio from two peaks to the same side.
 *
 *   δ = ln(x₀/xₙ) / n,   ζ = δ / √(4π² + δ²)
 *
 * @param firstPeak  x₀ and laterPeak xₙ, in any one unit, both more than 0, the later not larger
 * @param cycles     n, whole swings between them, more than 0
 * @returns decrement δ and ratio ζ
 * @throws DomainError  outside these ranges
 * Source: W. T. Thomson, Theory of Vibration with Applications, section 2.7, from memory; derived from x ∝ exp(−ζω_n t).
 */
export function swingDamping(swing: {
  readonly firstPeak: number;
  readonly laterPeak: number;
  readonly cycles: number;
}): { decrement: number; ratio: number } {
  requirePositive('first peak', swing.firstPeak, '1');
  requirePositive('later peak', swing.laterPeak, '1');
  requirePositive('number of swings between the peaks', swing.cycles, '1');
  if (swing.laterPeak > swing.firstPeak) {
    throw new DomainError('later peak', swing.laterPeak, 'a swing that dies out has a smaller peak later');
  }
  const decrement = Math.log(swing.firstPeak / swing.laterPeak) / swing.cycles;
  requireFinite('logarithmic decrement', decrement);
  return { decrement, ratio: decrement / Math.hypot(2 * Math.PI, decrement) };
}

/**
 * Period without damping from the damped one: T_n = T √(1 − ζ²), s.
 *
 * @param period        T, s, more than 0
 * @param dampingRatio  ζ, not negative, less than 1
 * @throws DomainError  outside these ranges
 * Source: J. K. Moore, Human Control of a Bicycle (2012), physical parameters.
 */
export function undampedPeriod(swing: { readonly period: number; readonly dampingRatio: number }): number {
  requirePositive('period of swing', swing.period, 's');
  requireBetween('damping ratio', swing.dampingRatio, 0, 1, '1');
  if (swing.dampingRatio === 1) throw new DomainError('damping ratio', 1, 'nothing swings at 1 or above');
  return swing.period * Math.sqrt(1 - swing.dampingRatio ** 2);
}

const period = { symbol: 'T', unit: 's', meaning: 'period as timed, there and back' } as const;

export const swingCorrectionCalculations: readonly Calculation[] = [
  calculation({
    id: 'swing.small-swing-period',
    title: 'Period of small swings from a wide one',
    equation: String.raw`T_0 = T\, \operatorname{AGM}\left( 1, \cos\frac{\theta}{2} \right) \approx \frac{T}{1 + \theta^2/16}`,
    inputs: {
      period,
      amplitude: {
        symbol: String.raw`\theta`,
        unit: 'rad',
        meaning: 'swing to each side, mean over the timed swings',
      },
    },
    outputs: { smallPeriod: { symbol: 'T_0', unit: 's', meaning: 'period of small swings' } },
    validity: 'Compound pendulum with little damping; a body on a twisted wire needs no such correction.',
    source: 'Complete elliptic integral by the arithmetic-geometric mean (C. F. Gauss)',
    compute: (inputs) => ({ smallPeriod: smallSwingPeriod(inputs) }),
    example: { period: 0.8724, amplitude: 0.26 },
    related: ['swing.inertia', 'swing.undamped-period'],
  }),
  calculation({
    id: 'swing.damping',
    title: 'Damping from the peaks of a swing',
    equation: String.raw`\delta = \frac{1}{n} \ln\frac{x_0}{x_n}, \qquad \zeta = \frac{\delta}{\sqrt{4\pi^2 + \delta^2}}`,
    inputs: {
      firstPeak: { symbol: 'x_0', unit: '1', meaning: 'first peak' },
      laterPeak: { symbol: 'x_n', unit: '1', meaning: 'later peak to the same side, in the same unit' },
      cycles: { symbol: 'n', unit: '1', meaning: 'number of swings between the peaks' },
    },
    outputs: {
      decrement: { symbol: String.raw`\delta`, unit: '1', meaning: 'logarithmic decrement' },
      ratio: { symbol: String.raw`\zeta`, unit: '1', meaning: 'damping ratio' },
    },
    validity: 'Viscous damping; dry friction takes the same step off each swing instead of the same share.',
    source:
      'Derived: peaks of a damped swing, x ∝ exp(−ζ ω t); W. T. Thomson, Theory of Vibration with Applications, from memory',
    compute: swingDamping,
    example: { firstPeak: 0.26, laterPeak: 0.21, cycles: 10 },
    related: ['swing.undamped-period'],
  }),
  calculation({
    id: 'swing.undamped-period',
    title: 'Period without damping',
    equation: String.raw`T_n = T \sqrt{1 - \zeta^2}`,
    inputs: {
      period,
      dampingRatio: { symbol: String.raw`\zeta`, unit: '1', meaning: 'damping ratio' },
    },
    outputs: { undampedPeriod: { symbol: 'T_n', unit: 's', meaning: 'period without damping' } },
    validity: 'Viscous damping below the critical; 0.5 % at ζ = 0.1.',
    source: 'J. K. Moore, Human Control of a Bicycle, PhD thesis, UC Davis 2012, physical parameters',
    compute: (inputs) => ({ undampedPeriod: undampedPeriod(inputs) }),
    example: { period: 0.8724, dampingRatio: 0.0034 },
    related: ['swing.damping', 'swing.inertia'],
  }),
];
