/**
 * What a passive rotor in a gimbal does for a vehicle that topples: it wobbles (nutation), and it falls more slowly.
 * All of it follows from the linear pair, upright, with K the toppling stiffness,
 *
 *   I φ̈ − K φ = −H α̇          I_g α̈ + c α̇ + k α = H φ̇
 *
 * whose characteristic polynomial is (I s² − K)(I_g s² + c s + k) + H² s².
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireFinite, requireNotNegative, requirePositive } from './domain.ts';

/**
 * Nutation frequency: ω = H / √(I I_g), rad/s. The wobble that a knock leaves behind, and that the loop must not feed.
 *
 * @param spinMomentum   H, N·m·s, more than 0
 * @param rollInertia    I, kg·m² about the roll axis, more than 0
 * @param gimbalInertia  I_g, kg·m² of gimbal and rotor about the tilt axis, more than 0
 * @throws DomainError  outside these ranges
 * Source: the pair above with H large; A. G. Greenhill, “Gyroscope and Gyrostat”, Encyclopaedia Britannica, 11th ed.,
 * vol. 12, eq. (24)–(26). Exactly, for a free gimbal without friction, ω² = (H² − K I_g)/(I I_g).
 */
export function nutationFrequency(gyro: {
  readonly spinMomentum: number;
  readonly rollInertia: number;
  readonly gimbalInertia: number;
}): number {
  requirePositive('spin momentum', gyro.spinMomentum, 'N·m·s');
  requirePositive('roll inertia', gyro.rollInertia, 'kg·m²');
  requirePositive('gimbal inertia', gyro.gimbalInertia, 'kg·m²');
  return gyro.spinMomentum / Math.sqrt(gyro.rollInertia * gyro.gimbalInertia);
}

/**
 * Time constant of the slow toppling with a free gimbal: only the gimbal's friction lets the vehicle fall.
 *
 *   τ = (H² − K I_g) / (c K)
 *
 * For k = 0 the polynomial leaves I I_g s³ + I c s² + (H² − K I_g) s − c K = 0 beside its zero root. All coefficients but
 * the last are positive, so there is one positive root and s τ = 1 − (I c s² + I I_g s³)/(c K) < 1: the true time is
 * always longer than τ. It is longer by about (τ₀/τ)² of itself, τ₀ being the toppling time without the rotor: 1 % where
 * the rotor gains a factor of ten. Where τ comes out near τ₀ or below, the gimbal is a damper and holds nothing.
 *
 * @param spinMomentum    H, N·m·s, more than 0
 * @param stiffness       K, N·m/rad, toppling stiffness of the vehicle, more than 0
 * @param gimbalInertia   I_g, kg·m² about the tilt axis, not negative; its part is usually small
 * @param gimbalFriction  c, N·m·s/rad, viscous, more than 0
 * @returns τ, s
 * @throws DomainError  where H² ≤ K I_g (the rotor is too slow to hold anything), or without friction, where nothing
 *                      grows in this model and there is no time constant
 * Source: small-friction root of the characteristic polynomial.
 */
export function slowTopplingTime(gyro: {
  readonly spinMomentum: number;
  readonly stiffness: number;
  readonly gimbalInertia: number;
  readonly gimbalFriction: number;
}): number {
  const { spinMomentum, stiffness, gimbalInertia, gimbalFriction } = gyro;
  requirePositive('spin momentum', spinMomentum, 'N·m·s');
  requirePositive('toppling stiffness', stiffness, 'N·m/rad');
  requireNotNegative('gimbal inertia', gimbalInertia, 'kg·m²');
  requirePositive('gimbal friction', gimbalFriction, 'N·m·s/rad');
  const left = spinMomentum ** 2 - stiffness * gimbalInertia;
  if (left <= 0) {
    const least = Number(Math.sqrt(stiffness * gimbalInertia).toPrecision(3));
    const requirement = `to hold anything it has to be more than √(K I_g), here ${least} N·m·s`;
    throw new DomainError('spin momentum', spinMomentum, requirement, 'N·m·s');
  }
  return left / (gimbalFriction * stiffness);
}

/**
 * Time constant of the toppling with a gimbal that is sprung, pendulous or top-heavy; inertias left out.
 *
 *   τ = 1 / max Re s,   H² s² − K c s − K k = 0
 *
 * Centring (k > 0) gives one growing root, about √(K k)/H: the spring spends the time that the rotor bought. A top-heavy
 * gimbal (k < 0) gives a slowly growing oscillation, τ = 2 H²/(K c), as long as K c² < 4 H² |k|, and with more
 * friction two growing roots, of which the faster counts. As k → 0 the result tends to the free gimbal's H²/(c K).
 *
 * @param spinMomentum    H, N·m·s, more than 0
 * @param stiffness       K, N·m/rad, toppling stiffness of the vehicle, more than 0
 * @param gimbalFriction  c, N·m·s/rad, viscous, not negative
 * @param centring        k, N·m/rad, not 0; positive sprung or pendulous, negative top-heavy
 * @returns τ, s, in which the lean (or the swing of the oscillation) grows e-fold
 * @throws DomainError  for k = 0 (use the free gimbal's), and for k < 0 without friction, where the swing does not grow
 * Source: characteristic polynomial without its terms in I and I_g, good to about (2 I |k| + K I_g)/H² of itself.
 */
export function centredTopplingTime(gyro: {
  readonly spinMomentum: number;
  readonly stiffness: number;
  readonly gimbalFriction: number;
  readonly centring: number;
}): number {
  const { spinMomentum, stiffness, gimbalFriction, centring } = gyro;
  requirePositive('spin momentum', spinMomentum, 'N·m·s');
  requirePositive('toppling stiffness', stiffness, 'N·m/rad');
  requireNotNegative('gimbal friction', gimbalFriction, 'N·m·s/rad');
  requireFinite('gimbal centring', centring, 'N·m/rad');
  if (centring === 0) {
    throw new DomainError('gimbal centring', 0, 'a free gimbal has its own calculation, gyro.slow-toppling');
  }
  if (centring < 0 && gimbalFriction === 0) {
    throw new DomainError('gimbal friction', 0, 'a top-heavy gimbal without friction swings without growing');
  }
  const half = (stiffness * gimbalFriction) / 2;
  const underRoot = half ** 2 + spinMomentum ** 2 * stiffness * centring;
  return spinMomentum ** 2 / (half + Math.sqrt(Math.max(underRoot, 0)));
}

/**
 * How many times longer the vehicle takes to topple with the rotor than without: n = τ / τ₀.
 *
 * @param slowTime      τ, s, toppling time constant with the rotor, more than 0
 * @param topplingTime  τ₀, s, toppling time constant without it, more than 0
 * @throws DomainError  outside these ranges
 * Source: by definition.
 */
export function timeGain(times: { readonly slowTime: number; readonly topplingTime: number }): number {
  requirePositive('toppling time constant with the rotor', times.slowTime, 's');
  requirePositive('toppling time constant without a rotor', times.topplingTime, 's');
  return times.slowTime / times.topplingTime;
}

const spinMomentum = { symbol: 'H', unit: 'N·m·s', meaning: 'spin momentum of the rotor' } as const;
const stiffness = { symbol: 'K', unit: 'N·m/rad', meaning: 'toppling stiffness of the vehicle' } as const;
const gimbalInertia = {
  symbol: 'I_g',
  unit: 'kg·m²',
  meaning: 'inertia of gimbal and rotor about the tilt axis',
} as const;
const gimbalFriction = { symbol: 'c', unit: 'N·m·s/rad', meaning: 'viscous friction of the gimbal' } as const;
const timeConstant = {
  symbol: String.raw`\tau`,
  unit: 's',
  meaning: 'toppling time constant with the rotor',
} as const;

export const gyroTopplingCalculations: readonly Calculation[] = [
  calculation({
    id: 'gyro.nutation',
    title: 'Nutation frequency',
    equation: String.raw`\omega = \frac{H}{\sqrt{I I_g}}`,
    inputs: {
      spinMomentum,
      rollInertia: { symbol: 'I', unit: 'kg·m²', meaning: 'roll inertia of the vehicle about the roll axis' },
      gimbalInertia,
    },
    outputs: {
      frequency: { symbol: String.raw`\omega`, unit: 'rad/s', meaning: 'nutation frequency' },
    },
    validity:
      'H² much more than K I_g, gimbal near upright, little friction; high by about K I_g / (2 H²) of itself.',
    source:
      'Derived; the pair of equations in A. G. Greenhill, “Gyroscope and Gyrostat”, Encyclopaedia Britannica, 11th ed., vol. 12, eq. (24)–(26)',
    compute: (inputs) => ({ frequency: nutationFrequency(inputs) }),
    example: { spinMomentum: 0.1, rollInertia: 0.05, gimbalInertia: 2e-4 },
    related: ['rotor.momentum', 'gyro.slow-toppling'],
  }),
  calculation({
    id: 'gyro.slow-toppling',
    title: 'Slow toppling with a free gimbal',
    equation: String.raw`\tau = \frac{H^2 - K I_g}{c\, K}`,
    inputs: { spinMomentum, stiffness, gimbalInertia, gimbalFriction },
    outputs: { timeConstant },
    validity:
      'Free gimbal near upright, small viscous friction; short of the exact time by about (τ₀/τ)² of itself (1 % at a gain of ten), always on the safe side.',
    source: 'Derived: small-friction root of (I s² − K)(I_g s² + c s) + H² s² = 0',
    compute: (inputs) => ({ timeConstant: slowTopplingTime(inputs) }),
    example: { spinMomentum: 0.1, stiffness: 3, gimbalInertia: 2e-4, gimbalFriction: 0.002 },
    related: ['gyro.centred-toppling', 'gyro.time-gain', 'gyro.time-to-stop-from-lean'],
  }),
  calculation({
    id: 'gyro.centred-toppling',
    title: 'Toppling with a sprung or top-heavy gimbal',
    equation: String.raw`\tau = \frac{1}{\max \operatorname{Re} s}, \qquad H^2 s^2 - K c\, s - K k = 0`,
    inputs: {
      spinMomentum,
      stiffness,
      gimbalFriction,
      centring: {
        symbol: 'k',
        unit: 'N·m/rad',
        meaning: 'centring stiffness of the gimbal, positive sprung or pendulous, negative top-heavy',
      },
    },
    outputs: { timeConstant },
    validity:
      'Quasi-static, good to about (2 I |k| + K I_g)/H² of itself; a top-heavy gimbal holds only while H > √(K I_g) + √(I |k|).',
    source: 'Derived: (I s² − K)(I_g s² + c s + k) + H² s² = 0 without its terms in I and I_g',
    compute: (inputs) => ({ timeConstant: centredTopplingTime(inputs) }),
    example: { spinMomentum: 0.55, stiffness: 4.825, gimbalFriction: 0.005, centring: 0.15 },
    related: ['gyro.slow-toppling', 'gyro.time-gain'],
  }),
  calculation({
    id: 'gyro.time-gain',
    title: 'Time that the rotor buys',
    equation: String.raw`n = \frac{\tau}{\tau_0}`,
    inputs: {
      slowTime: timeConstant,
      topplingTime: {
        symbol: String.raw`\tau_0`,
        unit: 's',
        meaning: 'toppling time constant without a rotor',
      },
    },
    outputs: { ratio: { symbol: 'n', unit: '1', meaning: 'gain in time by the rotor' } },
    validity:
      'Until the gimbal reaches its stop; at the stop the rotor gives nothing and the vehicle falls with τ₀.',
    source: 'By definition',
    compute: (inputs) => ({ ratio: timeGain(inputs) }),
    example: { slowTime: 1.5667, topplingTime: 0.1291 },
    related: ['gyro.slow-toppling', 'gyro.centred-toppling', 'mass.toppling'],
  }),
];
