/**
 * Turns of a vehicle that leans (or is banked) and the limits of grip and of tipping, with the gyroscopic moments of
 * wheels and rotors where they matter. What the ballast holds in a turn stands in `lateral.ts`.
 */
import { type Calculation, calculation } from './calculation.ts';
import {
  DomainError,
  requireBetween,
  requireEach,
  requireFinite,
  requireNotNegative,
  requirePositive,
} from './domain.ts';
import { standardGravity } from './gravity.ts';

function acceleration({ speed, radius }: { readonly speed: number; readonly radius: number }): number {
  requireNotNegative('speed', speed, 'm/s');
  requirePositive('radius of the turn', radius, 'm');
  return speed ** 2 / radius;
}

/**
 * Spin momentum of wheels that roll, about the axis across: H = Σ I_i v/r, N·m·s.
 *
 * @param wheelInertias  I_i, kg·m² about their axles, not negative
 * @param wheelRadius    r, m, more than 0
 * @param speed          v, m/s, not negative
 * @throws DomainError  outside these ranges
 * Source: rolling without slip.
 */
export function wheelMomentum(wheels: {
  readonly wheelInertias: readonly number[];
  readonly wheelRadius: number;
  readonly speed: number;
}): number {
  requireEach('inertia of wheel', wheels.wheelInertias, 'kg·m²', 0);
  requirePositive('radius of the wheels', wheels.wheelRadius, 'm');
  requireNotNegative('speed', wheels.speed, 'm/s');
  const inertia = wheels.wheelInertias.reduce((sum, each) => sum + each, 0);
  return (inertia * wheels.speed) / wheels.wheelRadius;
}

/**
 * Lean of a steady turn on thin tyres: tan φ = v²/(g r), rad.
 *
 * @param speed   v, m/s, not negative
 * @param radius  r, m, more than 0
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 6.3.
 */
export function leanOfTurn(turn: { readonly speed: number; readonly radius: number }): number {
  return Math.atan(acceleration(turn) / standardGravity);
}

/**
 * Lean of a steady turn with the gyroscopic moment of wheels and rotors whose axis lies across the vehicle.
 *
 *   tan φ = v²/(g r) + H v/(m g h r)
 *
 * @param speed                  v, m/s, not negative; radius r, m, more than 0
 * @param totalMass              m, kg, more than 0
 * @param centreOfGravityHeight  h, m, more than 0
 * @param lateralMomentum        H, N·m·s, positive where it spins as the wheels roll forward
 * @returns φ, rad into the turn; negative where an opposite rotor leans the vehicle out
 * @throws DomainError  outside these ranges
 * Source: Khurmi & Gupta, Theory of Machines, 14th ed., example 14.15.
 */
export function leanWithMomentum(turn: {
  readonly speed: number;
  readonly radius: number;
  readonly totalMass: number;
  readonly centreOfGravityHeight: number;
  readonly lateralMomentum: number;
}): number {
  const sideways = acceleration(turn) / standardGravity;
  requirePositive('total mass', turn.totalMass, 'kg');
  requirePositive('height of the centre of gravity', turn.centreOfGravityHeight, 'm');
  requireFinite('spin momentum about the axis across', turn.lateralMomentum, 'N·m·s');
  const gyroscopic =
    (turn.lateralMomentum * turn.speed) /
    (turn.totalMass * standardGravity * turn.centreOfGravityHeight * turn.radius);
  return Math.atan(sideways + gyroscopic);
}

/**
 * Lean that tyres of some width ask for beyond that of thin ones.
 *
 *   φ = φ₀ + arcsin( t sin φ₀/(h − t) )
 *
 * @param lean                   φ₀, rad, of thin tyres, within ±π/2
 * @param crownRadius            t, m of the tyre's cross-section, not negative
 * @param centreOfGravityHeight  h, m upright, more than 2t for the arcsine to exist at every lean
 * @returns φ, rad
 * @throws DomainError  outside these ranges, or where no lean balances
 * Source: sine rule in the triangle of contact point, centre of the tyre's section and centre of gravity.
 */
export function tyreLean(vehicle: {
  readonly lean: number;
  readonly crownRadius: number;
  readonly centreOfGravityHeight: number;
}): number {
  requireBetween('lean of thin tyres', vehicle.lean, -Math.PI / 2, Math.PI / 2, 'rad');
  requireNotNegative('crown radius of the tyre', vehicle.crownRadius, 'm');
  requirePositive(
    'height of the centre of gravity above the tyre’s section',
    vehicle.centreOfGravityHeight - vehicle.crownRadius,
    'm',
  );
  const sine =
    (vehicle.crownRadius * Math.sin(vehicle.lean)) / (vehicle.centreOfGravityHeight - vehicle.crownRadius);
  if (Math.abs(sine) > 1) {
    throw new DomainError(
      'crown radius of the tyre',
      vehicle.crownRadius,
      'no lean balances so low a vehicle',
      'm',
    );
  }
  return vehicle.lean + Math.asin(sine);
}

/**
 * Friction that a turn needs on a bank.
 *
 *   μ = | a cos β − g sin β | / ( g cos β + a sin β ),   a = v²/r
 *
 * @param speed  v, m/s; radius r, m
 * @param bank   β, rad towards the inside of the turn, from 0 to less than π/2; 0 if left out: level ground
 * @returns μ; 0 at the speed for which the bank is made
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 6.3.
 */
export function frictionNeeded({
  bank = 0,
  ...turn
}: {
  readonly speed: number;
  readonly radius: number;
  readonly bank?: number;
}): number {
  const a = acceleration(turn);
  requireBetween('bank', bank, 0, Math.PI / 2, 'rad');
  const along = a * Math.cos(bank) - standardGravity * Math.sin(bank);
  return Math.abs(along) / (standardGravity * Math.cos(bank) + a * Math.sin(bank));
}

/**
 * Speed at which a turn slides: v = √( g r (tan β + μ)/(1 − μ tan β) ), m/s.
 *
 * @param radius    r, m, more than 0
 * @param friction  μ, not negative
 * @param bank      β, rad, from 0 to less than π/2; 0 if left out
 * @returns v, m/s; with μ = 0 the speed for which the bank is made
 * @throws DomainError  outside these ranges, or where no speed slides (μ tan β ≥ 1)
 * Source: OpenStax, University Physics 1, section 6.3.
 */
export function slideSpeed({
  radius,
  friction,
  bank = 0,
}: {
  readonly radius: number;
  readonly friction: number;
  readonly bank?: number;
}): number {
  requirePositive('radius of the turn', radius, 'm');
  requireNotNegative('friction of tyre on ground', friction, '1');
  requireBetween('bank', bank, 0, Math.PI / 2, 'rad');
  const slope = Math.tan(bank);
  if (friction * slope >= 1) {
    throw new DomainError('friction of tyre on ground', friction, 'on so steep a bank it never slides');
  }
  return Math.sqrt((standardGravity * radius * (slope + friction)) / (1 - friction * slope));
}

/**
 * Speed and acceleration at which a vehicle on two tracks (or on outriggers) tips over in a level turn.
 *
 *   a = g b/(2h),   v = √(a r)
 *
 * @param track   b, m between the wheels, more than 0
 * @param height  h, m of the centre of gravity, more than 0
 * @param radius  r, m of the turn, more than 0
 * @returns acceleration a, m/s²; speed v, m/s; stabilityFactor b/(2h): below the friction it tips, above it slides first
 * @throws DomainError  outside these ranges
 * Source: static stability factor, US NHTSA rollover rating; Tayal, Engineering Mechanics, example 15-20.
 */
export function tipOver(vehicle: {
  readonly track: number;
  readonly height: number;
  readonly radius: number;
}): {
  stabilityFactor: number;
  acceleration: number;
  speed: number;
} {
  requirePositive('track', vehicle.track, 'm');
  requirePositive('height of the centre of gravity', vehicle.height, 'm');
  requirePositive('radius of the turn', vehicle.radius, 'm');
  const stabilityFactor = vehicle.track / (2 * vehicle.height);
  const limit = standardGravity * stabilityFactor;
  return { stabilityFactor, acceleration: limit, speed: Math.sqrt(limit * vehicle.radius) };
}

const speed = { symbol: 'v', unit: 'm/s', meaning: 'speed on the road' } as const;
const radius = { symbol: 'r', unit: 'm', meaning: 'radius of the turn' } as const;
const friction = { symbol: String.raw`\mu`, unit: '1', meaning: 'friction of tyre on ground' } as const;
const bank = {
  symbol: String.raw`\beta`,
  unit: 'rad',
  meaning: 'bank towards the inside of the turn',
  default: 0,
} as const;
const height = {
  symbol: 'h',
  unit: 'm',
  meaning: 'height of the centre of gravity above the ground line',
} as const;
const lean = {
  symbol: String.raw`\varphi`,
  unit: 'rad',
  meaning: 'lean into the turn that balances it',
} as const;
const OSUP = 'OpenStax, University Physics Volume 1, section 6.3';

export const turningCalculations: readonly Calculation[] = [
  calculation({
    id: 'turn.wheel-momentum',
    title: 'Spin momentum of the wheels',
    equation: String.raw`H = \frac{v}{r_w} \sum_i I_i`,
    inputs: {
      wheelInertias: {
        symbol: 'I_i',
        unit: 'kg·m²',
        meaning: 'inertias of the wheels about their axles',
        list: true,
      },
      wheelRadius: { symbol: 'r_w', unit: 'm', meaning: 'radius of the wheels' },
      speed,
    },
    outputs: {
      momentum: { symbol: 'H', unit: 'N·m·s', meaning: 'spin momentum about the axis across' },
    },
    validity:
      'Wheels of one radius that roll without slip; add a motor that turns across with its gear ratio.',
    source: 'Derived: rolling without slip',
    compute: (inputs) => ({ momentum: wheelMomentum(inputs) }),
    example: { wheelInertias: [3e-5, 3e-5], wheelRadius: 0.03, speed: 1.2 },
    related: ['turn.lean-with-momentum'],
  }),
  calculation({
    id: 'turn.lean',
    title: 'Lean of a steady turn',
    equation: String.raw`\tan\varphi = \frac{v^2}{g r}`,
    inputs: { speed, radius },
    outputs: { lean },
    validity: 'Steady turn, thin tyres, ballast centred, no spin momentum about the axis across.',
    source: OSUP,
    compute: (inputs) => ({ lean: leanOfTurn(inputs) }),
    example: { speed: 1.2, radius: 1.5 },
    related: ['turn.lean-with-momentum', 'turn.tyre-lean', 'ballast.turn-acceleration'],
  }),
  calculation({
    id: 'turn.lean-with-momentum',
    title: 'Lean of a steady turn with spin momentum across',
    equation: String.raw`\tan\varphi = \frac{v^2}{g r} + \frac{H v}{m g h r}`,
    inputs: {
      speed,
      radius,
      totalMass: { symbol: 'm', unit: 'kg', meaning: 'total mass' },
      centreOfGravityHeight: height,
      lateralMomentum: {
        symbol: 'H',
        unit: 'N·m·s',
        meaning: 'spin momentum about the axis across, positive as the wheels roll forward',
      },
    },
    outputs: { lean },
    validity:
      'Steady turn, thin tyres, ballast centred; a rotor with its axis upright adds nothing, one against the wheels leans the vehicle less.',
    source: 'Khurmi & Gupta, Theory of Machines, 14th ed., example 14.15',
    compute: (inputs) => ({ lean: leanWithMomentum(inputs) }),
    example: {
      speed: 1.2,
      radius: 1.5,
      totalMass: 0.955,
      centreOfGravityHeight: 0.145,
      lateralMomentum: 0.0024,
    },
    related: ['turn.lean', 'turn.wheel-momentum'],
  }),
  calculation({
    id: 'turn.tyre-lean',
    title: 'Lean of a turn on tyres of some width',
    equation: String.raw`\varphi = \varphi_0 + \arcsin\frac{t \sin\varphi_0}{h - t}`,
    inputs: {
      lean: { symbol: String.raw`\varphi_0`, unit: 'rad', meaning: 'lean of thin tyres' },
      crownRadius: { symbol: 't', unit: 'm', meaning: 'radius of the tyre’s cross-section' },
      centreOfGravityHeight: height,
    },
    outputs: { lean: { symbol: String.raw`\varphi`, unit: 'rad', meaning: 'lean on these tyres' } },
    validity: 'Round tyres alike front and rear.',
    source: 'Derived: sine rule in the triangle of contact point, tyre section and centre of gravity',
    compute: (inputs) => ({ lean: tyreLean(inputs) }),
    example: { lean: 0.0976, crownRadius: 0.006, centreOfGravityHeight: 0.145 },
    related: ['turn.lean'],
  }),
  calculation({
    id: 'turn.friction-needed',
    title: 'Friction that a turn needs',
    equation: String.raw`\mu = \frac{\lvert a \cos\beta - g \sin\beta \rvert}{g \cos\beta + a \sin\beta}, \qquad a = \frac{v^2}{r}`,
    inputs: { speed, radius, bank },
    outputs: { friction: { ...friction, meaning: 'friction that is needed' } },
    validity: 'Steady turn; braking or a turning gimbal takes its share of the grip as well.',
    source: OSUP,
    compute: (inputs) => ({ friction: frictionNeeded(inputs) }),
    example: { speed: 1.2, radius: 1.5, bank: 0 },
    related: ['turn.slide-speed', 'gyro.yaw-reaction'],
  }),
  calculation({
    id: 'turn.slide-speed',
    title: 'Speed at which a turn slides',
    equation: String.raw`v = \sqrt{\frac{g r \left( \tan\beta + \mu \right)}{1 - \mu \tan\beta}}`,
    inputs: { radius, friction, bank },
    outputs: { speed: { ...speed, meaning: 'speed at which the tyres slide' } },
    validity:
      'Steady turn, dry friction alike on both wheels; with μ = 0 the speed for which the bank is made.',
    source: OSUP,
    compute: (inputs) => ({ speed: slideSpeed(inputs) }),
    example: { radius: 1.5, friction: 0.6, bank: 0 },
    related: ['turn.friction-needed', 'turn.tip-over'],
  }),
  calculation({
    id: 'turn.tip-over',
    title: 'Limit of tipping on two tracks',
    equation: String.raw`f = \frac{b}{2 h}, \qquad a = g f, \qquad v = \sqrt{a r}`,
    inputs: {
      track: { symbol: 'b', unit: 'm', meaning: 'track, or span of the outriggers' },
      height,
      radius,
    },
    outputs: {
      stabilityFactor: { symbol: 'f', unit: '1', meaning: 'static stability factor' },
      acceleration: { symbol: 'a', unit: 'm/s²', meaning: 'lateral acceleration at which it tips' },
      speed: { ...speed, meaning: 'speed at which it tips' },
    },
    validity: 'Rigid vehicle on level ground; where the friction is less than f it slides first.',
    source:
      'US NHTSA rollover rating (static stability factor); A. K. Tayal, Engineering Mechanics, example 15-20',
    compute: tipOver,
    example: { track: 0.18, height: 0.145, radius: 1.5 },
    related: ['turn.slide-speed', 'ballast.lateral-limit'],
  }),
];
