/** Loads that wheels and arm see when the vehicle leans, turns, is dropped or falls over. */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireBetween, requireFinite, requireNotNegative, requirePositive } from './domain.ts';
import { standardGravity } from './gravity.ts';

/**
 * Loads of the two axles, at rest or while speeding up or braking.
 *
 *   N_f = m ( g x + a h )/L,   N_r = m ( g (L − x) − a h )/L
 *
 * @param totalMass     m, kg, not negative
 * @param position      x, m of the centre of gravity ahead of the rear axle
 * @param wheelbase     L, m, more than 0
 * @param height        h, m of the centre of gravity; 0 if left out
 * @param deceleration  a, m/s², braking positive; 0 if left out
 * @returns frontLoad N_f and rearLoad N_r, N; a negative one says that the wheel lifts
 * @throws DomainError  outside these ranges
 * Source: moments about each contact point; OpenStax, University Physics 1, example 12.1 (at rest).
 */
export function axleLoads({
  totalMass,
  position,
  wheelbase,
  height = 0,
  deceleration = 0,
}: {
  readonly totalMass: number;
  readonly position: number;
  readonly wheelbase: number;
  readonly height?: number;
  readonly deceleration?: number;
}): { frontLoad: number; rearLoad: number } {
  requireNotNegative('total mass', totalMass, 'kg');
  requireFinite('centre of gravity ahead of the rear axle', position, 'm');
  requirePositive('wheelbase', wheelbase, 'm');
  requireFinite('height of the centre of gravity', height, 'm');
  requireFinite('deceleration', deceleration, 'm/s²');
  const shift = deceleration * height;
  return {
    frontLoad: (totalMass * (standardGravity * position + shift)) / wheelbase,
    rearLoad: (totalMass * (standardGravity * (wheelbase - position) - shift)) / wheelbase,
  };
}

/**
 * Side force on a wheel in a turn, and what of it bends the axle.
 *
 *   S = N a/g,   S_w = S cos φ − N sin φ,   M = S_w r
 *
 * @param wheelLoad            N, N, not negative
 * @param lateralAcceleration  a, m/s² towards the turn, not negative
 * @param wheelRadius          r, m, more than 0
 * @param lean                 φ, rad into the turn, within ±π/2; 0 if left out: a vehicle that its ballast holds upright
 * @returns sideForce S, N along the ground; acrossForce S_w, N across the wheel; hubMoment M, N·m
 * @throws DomainError  outside these ranges
 * Source: components of the ground's force across the leaning wheel. At tan φ = a/g it is 0: the wheel is loaded in its plane.
 */
export function wheelSideLoad({
  wheelLoad,
  lateralAcceleration,
  wheelRadius,
  lean = 0,
}: {
  readonly wheelLoad: number;
  readonly lateralAcceleration: number;
  readonly wheelRadius: number;
  readonly lean?: number;
}): { sideForce: number; acrossForce: number; hubMoment: number } {
  requireNotNegative('load on the wheel', wheelLoad, 'N');
  requireNotNegative('lateral acceleration', lateralAcceleration, 'm/s²');
  requirePositive('radius of the wheel', wheelRadius, 'm');
  requireBetween('lean', lean, -Math.PI / 2, Math.PI / 2, 'rad');
  const sideForce = (wheelLoad * lateralAcceleration) / standardGravity;
  const acrossForce = sideForce * Math.cos(lean) - wheelLoad * Math.sin(lean);
  return { sideForce, acrossForce, hubMoment: acrossForce * wheelRadius };
}

/**
 * Largest bending moment at the root of the ballast's arm, whatever way it and the vehicle stand.
 *
 *   M = m_b L ( n √(g² + a²) + L α )
 *
 * @param ballastMass          m_b, kg, not negative; armLength L, m, more than 0
 * @param lateralAcceleration  a, m/s² of the turn, not negative; 0 if left out
 * @param armAcceleration      α, rad/s² of the arm, not negative; 0 if left out
 * @param shockFactor          n on weight and turn, at least 1, such as a drop's force over the weight; 1 if left out
 * @returns M, N·m
 * @throws DomainError  outside these ranges
 * Source: weight and inertia force at right angles to the arm, the worst of all directions.
 */
export function armRootMoment({
  ballastMass,
  armLength,
  lateralAcceleration = 0,
  armAcceleration = 0,
  shockFactor = 1,
}: {
  readonly ballastMass: number;
  readonly armLength: number;
  readonly lateralAcceleration?: number;
  readonly armAcceleration?: number;
  readonly shockFactor?: number;
}): number {
  requireNotNegative('ballast mass', ballastMass, 'kg');
  requirePositive('arm length', armLength, 'm');
  requireNotNegative('lateral acceleration', lateralAcceleration, 'm/s²');
  requireNotNegative('acceleration of the arm', armAcceleration, 'rad/s²');
  requireFinite('shock factor', shockFactor);
  if (shockFactor < 1) throw new DomainError('shock factor', shockFactor, 'it has to be at least 1');
  const weight = shockFactor * Math.hypot(standardGravity, lateralAcceleration);
  return ballastMass * armLength * (weight + armLength * armAcceleration);
}

/**
 * Largest force when a mass drops on something that gives like a spring.
 *
 *   n = 1 + √( 1 + 2 h k/(m g) ),   F = n m g,   y = F/k
 *
 * @param mass       m, kg, more than 0
 * @param height     h, m of the free fall, not negative; from 0 the force is already twice the weight
 * @param stiffness  k, N/m, more than 0
 * @returns factor n; force F, N; deflection y, m
 * @throws DomainError  outside these ranges
 * Source: Gere, Mechanics of Materials, 7th ed., eq. (9-94): work of the weight is energy of the spring.
 */
export function dropLoad(drop: {
  readonly mass: number;
  readonly height: number;
  readonly stiffness: number;
}): {
  factor: number;
  force: number;
  deflection: number;
} {
  requirePositive('mass', drop.mass, 'kg');
  requireNotNegative('height of the fall', drop.height, 'm');
  requirePositive('stiffness', drop.stiffness, 'N/m');
  const weight = drop.mass * standardGravity;
  const factor = 1 + Math.sqrt(1 + (2 * drop.height * drop.stiffness) / weight);
  return { factor, force: factor * weight, deflection: (factor * weight) / drop.stiffness };
}

/**
 * Mean force when a drop is stopped over a distance: F = m g (1 + h/s), N.
 *
 * @param mass          m, kg, not negative
 * @param height        h, m of the free fall, not negative
 * @param stopDistance  s, m, more than 0
 * @returns factor n = 1 + h/s; force F, N
 * @throws DomainError  outside these ranges
 * Source: work of the weight over h + s is work of the stop over s.
 */
export function stopLoad(drop: {
  readonly mass: number;
  readonly height: number;
  readonly stopDistance: number;
}): { factor: number; force: number } {
  requireNotNegative('mass', drop.mass, 'kg');
  requireNotNegative('height of the fall', drop.height, 'm');
  requirePositive('stopping distance', drop.stopDistance, 'm');
  const factor = 1 + drop.height / drop.stopDistance;
  return { factor, force: factor * drop.mass * standardGravity };
}

/**
 * How fast the vehicle arrives when it falls over.
 *
 *   ω = √( 2 K (cos φ₁ − cos φ₂)/I ),   E = K (cos φ₁ − cos φ₂)
 *
 * @param stiffness    K = g M, N·m/rad, toppling stiffness, more than 0
 * @param rollInertia  I, kg·m², about the roll axis, more than 0
 * @param fromLean     φ₁, rad, at which it starts from rest, not negative; 0 if left out
 * @param toLean       φ₂, rad, at which it meets the ground or an outrigger, from φ₁ to π
 * @returns rate ω, rad/s; energy E, J
 * @throws DomainError  outside these ranges
 * Source: work and kinetic energy, OpenStax, University Physics 1, section 10.8.
 */
export function fallOver({
  stiffness,
  rollInertia,
  fromLean = 0,
  toLean,
}: {
  readonly stiffness: number;
  readonly rollInertia: number;
  readonly fromLean?: number;
  readonly toLean: number;
}): { rate: number; energy: number } {
  requirePositive('toppling stiffness', stiffness, 'N·m/rad');
  requirePositive('roll inertia', rollInertia, 'kg·m²');
  requireBetween('lean at the start', fromLean, 0, Math.PI, 'rad');
  requireBetween('lean at the end', toLean, fromLean, Math.PI, 'rad');
  // cos φ₁ − cos φ₂ without the difference of nearly equal numbers.
  const drop = 2 * Math.sin((fromLean + toLean) / 2) * Math.sin((toLean - fromLean) / 2);
  const energy = stiffness * drop;
  return { rate: Math.sqrt((2 * energy) / rollInertia), energy };
}

const mass = { symbol: 'm', unit: 'kg', meaning: 'mass that falls' } as const;
const fallHeight = { symbol: 'h', unit: 'm', meaning: 'height of the free fall' } as const;
const force = (symbol: string, meaning: string) => ({ symbol, unit: 'N', meaning }) as const;
const factor = { symbol: 'n', unit: '1', meaning: 'force over weight' } as const;

export const loadCalculations: readonly Calculation[] = [
  calculation({
    id: 'load.axles',
    title: 'Loads of the two axles',
    equation: String.raw`N_f = \frac{m \left( g\, x + a\, h \right)}{L}, \qquad N_r = \frac{m \left[ g \left( L - x \right) - a\, h \right]}{L}`,
    inputs: {
      totalMass: { symbol: 'm', unit: 'kg', meaning: 'total mass of the vehicle' },
      position: {
        symbol: 'x',
        unit: 'm',
        meaning: 'distance of the centre of gravity ahead of the rear axle',
      },
      wheelbase: { symbol: 'L', unit: 'm', meaning: 'wheelbase' },
      height: { symbol: 'h', unit: 'm', meaning: 'height of the centre of gravity', default: 0 },
      deceleration: { symbol: 'a', unit: 'm/s²', meaning: 'deceleration, braking positive', default: 0 },
    },
    outputs: {
      frontLoad: force('N_f', 'load on the front axle'),
      rearLoad: force('N_r', 'load on the rear axle'),
    },
    validity: 'Level ground; a negative load says that the wheel lifts.',
    source:
      'Derived: moments about each contact point; OpenStax, University Physics Volume 1, example 12.1 (at rest)',
    compute: axleLoads,
    example: { totalMass: 0.955, position: 0.161, wheelbase: 0.3, height: 0.145, deceleration: 2 },
    related: ['load.wheel-side', 'weighing.two-axles'],
  }),
  calculation({
    id: 'load.wheel-side',
    title: 'Side load of a wheel in a turn',
    equation: String.raw`S = \frac{N a}{g}, \qquad S_w = S \cos\varphi - N \sin\varphi, \qquad M = S_w\, r`,
    inputs: {
      wheelLoad: force('N', 'load on the wheel'),
      lateralAcceleration: { symbol: 'a', unit: 'm/s²', meaning: 'lateral acceleration of the turn' },
      wheelRadius: { symbol: 'r', unit: 'm', meaning: 'radius of the wheel' },
      lean: { symbol: String.raw`\varphi`, unit: 'rad', meaning: 'lean into the turn', default: 0 },
    },
    outputs: {
      sideForce: force('S', 'side force along the ground'),
      acrossForce: force('S_w', 'force across the wheel'),
      hubMoment: { symbol: 'M', unit: 'N·m', meaning: 'moment that bends the axle' },
    },
    validity: 'Steady turn; a vehicle held upright by its ballast loads its wheels across in full.',
    source: 'Derived: components of the ground’s force across the leaning wheel',
    compute: wheelSideLoad,
    example: { wheelLoad: 5, lateralAcceleration: 1.672, wheelRadius: 0.03, lean: 0 },
    related: ['load.axles', 'shaft.stress', 'ballast.turn-acceleration'],
  }),
  calculation({
    id: 'load.arm-root',
    title: 'Bending moment at the root of the arm',
    equation: String.raw`M = m_b L \left( n \sqrt{g^2 + a^2} + L\, \alpha \right)`,
    inputs: {
      ballastMass: { symbol: 'm_b', unit: 'kg', meaning: 'mass of the ballast' },
      armLength: { symbol: 'L', unit: 'm', meaning: 'arm length, pivot to centre of gravity of the ballast' },
      lateralAcceleration: {
        symbol: 'a',
        unit: 'm/s²',
        meaning: 'lateral acceleration of the turn',
        default: 0,
      },
      armAcceleration: {
        symbol: String.raw`\alpha`,
        unit: 'rad/s²',
        meaning: 'acceleration of the arm',
        default: 0,
      },
      shockFactor: { symbol: 'n', unit: '1', meaning: 'shock factor on weight and turn', default: 1 },
    },
    outputs: { moment: { symbol: 'M', unit: 'N·m', meaning: 'largest bending moment at the root' } },
    validity: 'The worst of all directions at once: an upper bound for any lean and arm angle.',
    source: 'Derived: weight and inertia force square to the arm',
    compute: (inputs) => ({ moment: armRootMoment(inputs) }),
    example: {
      ballastMass: 0.59,
      armLength: 0.115,
      lateralAcceleration: 1.672,
      armAcceleration: 40,
      shockFactor: 3,
    },
    related: ['bar.bending', 'joint.bolt-group', 'load.drop'],
  }),
  calculation({
    id: 'load.drop',
    title: 'Largest force of a drop on a spring',
    equation: String.raw`n = 1 + \sqrt{1 + \frac{2 h k}{m g}}, \qquad F = n\, m g, \qquad y = \frac{F}{k}`,
    inputs: {
      mass,
      height: fallHeight,
      stiffness: { symbol: 'k', unit: 'N/m', meaning: 'stiffness of what it falls on, and of the structure' },
    },
    outputs: {
      factor,
      force: force('F', 'largest force'),
      deflection: { symbol: 'y', unit: 'm', meaning: 'largest deflection' },
    },
    validity:
      'Elastic, without loss, spring light against the mass; on the safe side. From no height at all n is 2.',
    source: 'J. M. Gere, Mechanics of Materials, 7th ed., eq. (9-94)',
    compute: dropLoad,
    example: { mass: 0.955, height: 0.05, stiffness: 20000 },
    related: ['load.stop', 'load.arm-root', 'arm.stiffness'],
  }),
  calculation({
    id: 'load.stop',
    title: 'Mean force of a drop stopped over a distance',
    equation: String.raw`n = 1 + \frac{h}{s}, \qquad F = n\, m g`,
    inputs: {
      mass,
      height: fallHeight,
      stopDistance: { symbol: 's', unit: 'm', meaning: 'distance over which it is stopped' },
    },
    outputs: { factor, force: force('F', 'mean force of the stop') },
    validity: 'Mean over the stop; the peak of a spring-like stop is twice as high.',
    source: 'Derived: work of the weight over fall and stop',
    compute: stopLoad,
    example: { mass: 0.955, height: 0.05, stopDistance: 0.004 },
    related: ['load.drop'],
  }),
  calculation({
    id: 'load.fall-over',
    title: 'Rate and energy of a vehicle that falls over',
    equation: String.raw`\omega = \sqrt{\frac{2 E}{I}}, \qquad E = K \left( \cos\varphi_1 - \cos\varphi_2 \right)`,
    inputs: {
      stiffness: { symbol: 'K', unit: 'N·m/rad', meaning: 'toppling stiffness of the vehicle' },
      rollInertia: { symbol: 'I', unit: 'kg·m²', meaning: 'roll inertia about the roll axis' },
      fromLean: {
        symbol: String.raw`\varphi_1`,
        unit: 'rad',
        meaning: 'lean at the start, at rest',
        default: 0,
      },
      toLean: { symbol: String.raw`\varphi_2`, unit: 'rad', meaning: 'lean at the end' },
    },
    outputs: {
      rate: { symbol: String.raw`\omega`, unit: 'rad/s', meaning: 'roll rate at the end' },
      energy: { symbol: 'E', unit: 'J', meaning: 'energy at the end' },
    },
    validity:
      'Rotor stopped, contact line fixed, no friction; the catch or the outrigger has to take this energy.',
    source: 'OpenStax, University Physics Volume 1, section 10.8 (work and kinetic energy)',
    compute: fallOver,
    example: { stiffness: 1.358, rollInertia: 0.0264, fromLean: 0, toLean: 0.7 },
    related: ['mass.toppling', 'load.stop'],
  }),
];
