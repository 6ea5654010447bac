/**
 * What else a passive rotor does: with a stiffly damped gimbal it damps the roll instead of slowing the fall, with a
 * top-heavy gimbal and no friction at all it would even stand, and it pushes the tyres sideways while its gimbal turns.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireBetween, requireFinite, requireNotNegative, requirePositive } from './domain.ts';

/**
 * Roll damping that a viscous gimbal adds: D = H²/c, N·m·s/rad.
 *
 * @param spinMomentum    H, N·m·s, not negative
 * @param gimbalFriction  c, N·m·s/rad, viscous, more than 0
 * @throws DomainError  outside these ranges
 * Source: α̇ = H φ̇ / c put into the roll moment H α̇.
 */
export function rollDamping(gyro: {
  readonly spinMomentum: number;
  readonly gimbalFriction: number;
}): number {
  requireNotNegative('spin momentum', gyro.spinMomentum, 'N·m·s');
  requirePositive('gimbal friction', gyro.gimbalFriction, 'N·m·s/rad');
  return gyro.spinMomentum ** 2 / gyro.gimbalFriction;
}

/**
 * Least spin momentum at which a vehicle with a top-heavy gimbal would stand if nothing rubbed.
 *
 *   H > √(K I_g) + √(I |k|)
 *
 * Gyroscopes can hold an even number of unstable coordinates only, here lean and gimbal, and any friction whatever undoes
 * it slowly: a passive rotor alone never makes a vehicle stand.
 *
 * @param stiffness      K, N·m/rad, toppling stiffness, more than 0
 * @param rollInertia    I, kg·m², more than 0
 * @param gimbalInertia  I_g, kg·m², more than 0
 * @param centring       k, N·m/rad, 0 or negative (top-heavy); with 0 it is the limit for a free gimbal, √(K I_g), above
 *                       which the vehicle drifts instead of falling
 * @returns H, N·m·s
 * @throws DomainError  for a centring spring: with one unstable coordinate there is no such limit
 * Source: roots of (I s² − K)(I_g s² + k) + H² s² = 0; theorem of W. Thomson and P. G. Tait, Natural Philosophy (1879),
 * section 345, and N. G. Chetaev.
 */
export function stabilisingMomentum(gyro: {
  readonly stiffness: number;
  readonly rollInertia: number;
  readonly gimbalInertia: number;
  readonly centring: number;
}): number {
  requirePositive('toppling stiffness', gyro.stiffness, 'N·m/rad');
  requirePositive('roll inertia', gyro.rollInertia, 'kg·m²');
  requirePositive('gimbal inertia', gyro.gimbalInertia, 'kg·m²');
  requireFinite('gimbal centring', gyro.centring, 'N·m/rad');
  if (gyro.centring > 0) {
    const requirement =
      'a sprung or pendulous gimbal leaves one unstable coordinate, which no momentum holds';
    throw new DomainError('gimbal centring', gyro.centring, requirement, 'N·m/rad');
  }
  return (
    Math.sqrt(gyro.stiffness * gyro.gimbalInertia) + Math.sqrt(gyro.rollInertia * Math.abs(gyro.centring))
  );
}

/**
 * Moment about the upright axis while a tilted gimbal turns, and what it takes of the tyres' grip.
 *
 *   M_z = H α̇ sin α,   S = M_z / L,   s = S / (μ N)
 *
 * The spin momentum points along (sin α, 0, cos α). Turning it about the axis across at α̇ changes it by
 * H α̇ (cos α, 0, −sin α): the first is the roll moment, the last has to come from the tyres. Rolling changes it along the
 * axis across only, which the gimbal's bearing does not carry. Upright (α = 0) the rotor leaves the tyres alone.
 *
 * @param spinMomentum  H, N·m·s, not negative
 * @param tiltRate      α̇, rad/s, not negative
 * @param tilt          α, rad, within ±π/2
 * @param wheelbase     L, m, more than 0
 * @param friction      μ of tyre on ground, more than 0
 * @param wheelLoad     N, N, on the more lightly loaded wheel, more than 0
 * @returns moment M_z, N·m; sideForce S, N at each wheel, to opposite sides; gripShare s
 * @throws DomainError  outside these ranges
 * Source: rate of change of the spin momentum.
 */
export function yawReaction(gyro: {
  readonly spinMomentum: number;
  readonly tiltRate: number;
  readonly tilt: number;
  readonly wheelbase: number;
  readonly friction: number;
  readonly wheelLoad: number;
}): { moment: number; sideForce: number; gripShare: number } {
  requireNotNegative('spin momentum', gyro.spinMomentum, 'N·m·s');
  requireNotNegative('rate of the gimbal', gyro.tiltRate, 'rad/s');
  requireBetween('tilt of the gimbal', gyro.tilt, -Math.PI / 2, Math.PI / 2, 'rad');
  requirePositive('wheelbase', gyro.wheelbase, 'm');
  requirePositive('friction of tyre on ground', gyro.friction, '1');
  requirePositive('load on the wheel', gyro.wheelLoad, 'N');
  const moment = gyro.spinMomentum * gyro.tiltRate * Math.sin(Math.abs(gyro.tilt));
  const sideForce = moment / gyro.wheelbase;
  return { moment, sideForce, gripShare: sideForce / (gyro.friction * gyro.wheelLoad) };
}

const spinMomentum = { symbol: 'H', unit: 'N·m·s', meaning: 'spin momentum of the rotor' } as const;

export const gyroDampingCalculations: readonly Calculation[] = [
  calculation({
    id: 'gyro.roll-damping',
    title: 'Roll damping by a viscous gimbal',
    equation: String.raw`D = \frac{H^2}{c}`,
    inputs: {
      spinMomentum,
      gimbalFriction: { symbol: 'c', unit: 'N·m·s/rad', meaning: 'viscous friction of the gimbal' },
    },
    outputs: { damping: { symbol: 'D', unit: 'N·m·s/rad', meaning: 'damping of the roll motion' } },
    validity:
      'Motion slower than c/I_g and faster than k/c, gimbal near upright; it damps a vehicle that something else holds up, and holds nothing itself.',
    source: 'Derived: α̇ = H φ̇ / c put into the roll moment H α̇',
    compute: (inputs) => ({ damping: rollDamping(inputs) }),
    example: { spinMomentum: 0.1, gimbalFriction: 0.2 },
    related: ['gyro.slow-toppling', 'gyro.gimbal-reaction'],
  }),
  calculation({
    id: 'gyro.stabilising-momentum',
    title: 'Spin momentum at which a vehicle without friction would stand',
    equation: String.raw`H_{\min} = \sqrt{K I_g} + \sqrt{I\, \lvert k \rvert}`,
    inputs: {
      stiffness: { symbol: 'K', unit: 'N·m/rad', meaning: 'toppling stiffness of the vehicle' },
      rollInertia: { symbol: 'I', unit: 'kg·m²', meaning: 'roll inertia of the vehicle about the roll axis' },
      gimbalInertia: {
        symbol: 'I_g',
        unit: 'kg·m²',
        meaning: 'inertia of gimbal and rotor about the tilt axis',
      },
      centring: {
        symbol: 'k',
        unit: 'N·m/rad',
        meaning: 'centring stiffness of the gimbal, 0 free or negative top-heavy',
      },
    },
    outputs: {
      spinMomentum: {
        symbol: String.raw`H_{\min}`,
        unit: 'N·m·s',
        meaning: 'least spin momentum for gyroscopic stabilisation',
      },
    },
    validity:
      'No friction anywhere: with any friction the vehicle still falls, slowly, so that this is a condition for the rotor to help, never one to stand by it alone.',
    source:
      'Derived: roots of (I s² − K)(I_g s² + k) + H² s² = 0; W. Thomson, P. G. Tait, Natural Philosophy (1879), section 345; N. G. Chetaev',
    compute: (inputs) => ({ spinMomentum: stabilisingMomentum(inputs) }),
    example: { stiffness: 3, rollInertia: 0.05, gimbalInertia: 2e-4, centring: -0.02 },
    related: ['gyro.centred-toppling', 'gyro.slow-toppling'],
  }),
  calculation({
    id: 'gyro.yaw-reaction',
    title: 'Sideways push on the tyres by a turning gimbal',
    equation: String.raw`M_z = H \dot\alpha \sin\alpha, \qquad S = \frac{M_z}{L}, \qquad s = \frac{S}{\mu N}`,
    inputs: {
      spinMomentum,
      tiltRate: { symbol: String.raw`\dot\alpha`, unit: 'rad/s', meaning: 'rate of the gimbal' },
      tilt: { symbol: String.raw`\alpha`, unit: 'rad', meaning: 'tilt of the gimbal' },
      wheelbase: { symbol: 'L', unit: 'm', meaning: 'wheelbase' },
      friction: { symbol: String.raw`\mu`, unit: '1', meaning: 'friction of tyre on ground' },
      wheelLoad: { symbol: 'N', unit: 'N', meaning: 'load on the more lightly loaded wheel' },
    },
    outputs: {
      moment: { symbol: 'M_z', unit: 'N·m', meaning: 'moment about the upright axis' },
      sideForce: { symbol: 'S', unit: 'N', meaning: 'side force at each wheel' },
      gripShare: { symbol: 's', unit: '1', meaning: 'share of the grip that it takes' },
    },
    validity:
      'Single rotor, gimbal about the axis across; an opposed pair gives none. A share near 1 slides a wheel and turns the vehicle.',
    source: 'Derived: rate of change of the spin momentum',
    compute: yawReaction,
    example: {
      spinMomentum: 0.445,
      tiltRate: 1.5,
      tilt: 0.5,
      wheelbase: 0.3,
      friction: 0.6,
      wheelLoad: 4.3,
    },
    related: ['gyro.driven-moment', 'turn.friction-needed'],
  }),
];
