/**
 * Rotors that are driven instead of left free: a gimbal turned by a motor (alone, or as a pair that tilts against each
 * other), and a reaction wheel. Both give moment only until their store of momentum is spent: saturation. What the store
 * cannot cover for long, the trim ballast has to.
 *
 * A spin axis along the roll axis gives no roll moment however the gimbal turns; one along the pitch axis gives it, but
 * resists every turn of the vehicle about the upright axis.
 */
import { speedAtLoad } from './actuator-line.ts';
import { type Calculation, calculation } from './calculation.ts';
import {
  requireBetween,
  requireFinite,
  requireNotNegative,
  requirePositive,
  requireWholeNumber,
} from './domain.ts';

/**
 * Roll moment of a driven gimbal: T = n H α̇ cos α, N·m.
 *
 * @param spinMomentum  H, N·m·s of one rotor, not negative
 * @param tiltRate      α̇, rad/s of each gimbal, not negative
 * @param tilt          α, rad, within ±π/2; 0 if left out
 * @param rotors        n, 1 alone (the default) or 2 for a pair that spins and tilts against each other
 * @throws DomainError  outside these ranges
 * Source: A. G. Greenhill, “Gyroscope and Gyrostat”, Encyclopaedia Britannica, 11th ed., vol. 12, eq. (24).
 */
export function drivenMoment({
  spinMomentum,
  tiltRate,
  tilt = 0,
  rotors = 1,
}: {
  readonly spinMomentum: number;
  readonly tiltRate: number;
  readonly tilt?: number;
  readonly rotors?: number;
}): number {
  requireNotNegative('spin momentum', spinMomentum, 'N·m·s');
  requireNotNegative('rate of the gimbal', tiltRate, 'rad/s');
  requireBetween('tilt of the gimbal', tilt, -Math.PI / 2, Math.PI / 2, 'rad');
  requireWholeNumber('number of rotors', rotors, 1);
  return rotors * spinMomentum * tiltRate * Math.cos(tilt);
}

/**
 * Moment that the gimbal's drive has to stand while the vehicle rolls: T_g = H φ̇ cos α, N·m.
 *
 * @param spinMomentum  H, N·m·s, not negative
 * @param rollRate      φ̇, rad/s of the vehicle, not negative
 * @param tilt          α, rad, within ±π/2; 0 if left out
 * @throws DomainError  outside these ranges
 * Source: as `drivenMoment`, eq. (25).
 */
export function gimbalReaction({
  spinMomentum,
  rollRate,
  tilt = 0,
}: {
  readonly spinMomentum: number;
  readonly rollRate: number;
  readonly tilt?: number;
}): number {
  requireNotNegative('spin momentum', spinMomentum, 'N·m·s');
  requireNotNegative('roll rate', rollRate, 'rad/s');
  requireBetween('tilt of the gimbal', tilt, -Math.PI / 2, Math.PI / 2, 'rad');
  return spinMomentum * rollRate * Math.cos(tilt);
}

/**
 * Roll impulse that a gimbal can still give: R = n H (sin α_m − sin α₀), N·m·s.
 *
 * @param spinMomentum  H, N·m·s of one rotor, not negative
 * @param gimbalTravel  α_m, rad to the stop, from 0 to π/2
 * @param initialTilt   α₀, rad, within ±α_m; 0 if left out
 * @param rotors        n, 1 (the default) or 2 for an opposed pair
 * @throws DomainError  outside these ranges
 * Source: ∫ H cos α dα.
 */
export function momentumReserve({
  spinMomentum,
  gimbalTravel,
  initialTilt = 0,
  rotors = 1,
}: {
  readonly spinMomentum: number;
  readonly gimbalTravel: number;
  readonly initialTilt?: number;
  readonly rotors?: number;
}): number {
  requireNotNegative('spin momentum', spinMomentum, 'N·m·s');
  requireBetween('gimbal travel', gimbalTravel, 0, Math.PI / 2, 'rad');
  requireBetween('initial tilt of the gimbal', initialTilt, -gimbalTravel, gimbalTravel, 'rad');
  requireWholeNumber('number of rotors', rotors, 1);
  return rotors * spinMomentum * (Math.sin(gimbalTravel) - Math.sin(initialTilt));
}

/**
 * Momentum that a reaction wheel can still take up: R = I_w (Ω_max − |Ω₀|), N·m·s.
 *
 * @param wheelInertia  I_w, kg·m², more than 0
 * @param largestSpeed  Ω_max, rad/s, more than 0
 * @param startSpeed    Ω₀, rad/s, within ±Ω_max; 0 if left out
 * @throws DomainError  outside these ranges
 * Source: change of spin momentum.
 */
export function wheelReserve({
  wheelInertia,
  largestSpeed,
  startSpeed = 0,
}: {
  readonly wheelInertia: number;
  readonly largestSpeed: number;
  readonly startSpeed?: number;
}): number {
  requirePositive('inertia of the wheel', wheelInertia, 'kg·m²');
  requirePositive('largest speed of the wheel', largestSpeed, 'rad/s');
  requireBetween('speed of the wheel at the start', startSpeed, -largestSpeed, largestSpeed, 'rad/s');
  return wheelInertia * (largestSpeed - Math.abs(startSpeed));
}

/**
 * Speed up to which a reaction wheel's motor still gives a moment, and the momentum that it takes up until then.
 *
 *   Ω_l = Ω_n ( v − T/T_s ),   R = I_w (Ω_l − |Ω₀|)
 *
 * @param wheelInertia  I_w, kg·m², more than 0
 * @param stallMoment   T_s, N·m, and noLoadSpeed Ω_n, rad/s, of the motor at its rated voltage, more than 0
 * @param moment        T, N·m that is wanted, not negative
 * @param startSpeed    Ω₀, rad/s, the faster the worse; 0 if left out
 * @param voltageRatio  v, supply over rated voltage; 1 if left out
 * @returns limitSpeed Ω_l, rad/s; reserve R, N·m·s; both negative where the motor does not give the moment at all
 * @throws DomainError  outside these ranges
 * Source: motor line, Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., ch. 7.
 */
export function wheelReserveUnderMoment({
  wheelInertia,
  stallMoment,
  noLoadSpeed,
  moment,
  startSpeed = 0,
  voltageRatio = 1,
}: {
  readonly wheelInertia: number;
  readonly stallMoment: number;
  readonly noLoadSpeed: number;
  readonly moment: number;
  readonly startSpeed?: number;
  readonly voltageRatio?: number;
}): { limitSpeed: number; reserve: number } {
  requirePositive('inertia of the wheel', wheelInertia, 'kg·m²');
  requireFinite('speed of the wheel at the start', startSpeed, 'rad/s');
  const limitSpeed = speedAtLoad({ stallMoment, noLoadSpeed, voltageRatio, load: moment });
  return { limitSpeed, reserve: wheelInertia * (limitSpeed - Math.abs(startSpeed)) };
}

/**
 * Time until a store of momentum is spent under a constant moment: t = R/T, s.
 *
 * @param reserve  R, N·m·s, not negative
 * @param moment   T, N·m, more than 0
 * @throws DomainError  outside these ranges
 * Source: impulse is moment times time.
 */
export function saturationTime(store: { readonly reserve: number; readonly moment: number }): number {
  requireNotNegative('momentum reserve', store.reserve, 'N·m·s');
  requirePositive('roll moment', store.moment, 'N·m');
  return store.reserve / store.moment;
}

/**
 * Mean moment that the trim ballast has to take over so that the store lasts a run: T_t = max(0, T − R/t), N·m.
 *
 * @param moment   T, N·m, mean over the run, not negative
 * @param reserve  R, N·m·s, not negative
 * @param time     t, s, of the run, more than 0
 * @throws DomainError  outside these ranges
 * Source: impulse over the run, T t = R + T_t t.
 */
export function trimMoment(store: {
  readonly moment: number;
  readonly reserve: number;
  readonly time: number;
}): number {
  requireNotNegative('roll moment', store.moment, 'N·m');
  requireNotNegative('momentum reserve', store.reserve, 'N·m·s');
  requirePositive('time of the run', store.time, 's');
  return Math.max(0, store.moment - store.reserve / store.time);
}

const spinMomentum = { symbol: 'H', unit: 'N·m·s', meaning: 'spin momentum of one rotor' } as const;
const tilt = {
  symbol: String.raw`\alpha`,
  unit: 'rad',
  meaning: 'tilt of the gimbal',
  default: 0,
} as const;
const rotors = {
  symbol: 'n',
  unit: '1',
  meaning: 'number of rotors, 1 alone, 2 as an opposed pair',
  default: 1,
} as const;
const reserve = { symbol: 'R', unit: 'N·m·s', meaning: 'momentum reserve' } as const;
const moment = (meaning: string) => ({ symbol: 'T', unit: 'N·m', meaning }) as const;
const wheelInertia = { symbol: 'I_w', unit: 'kg·m²', meaning: 'inertia of the wheel' } as const;
const startSpeed = {
  symbol: String.raw`\Omega_0`,
  unit: 'rad/s',
  meaning: 'speed of the wheel at the start',
  default: 0,
} as const;
const GREENHILL =
  'A. G. Greenhill, “Gyroscope and Gyrostat”, Encyclopaedia Britannica, 11th ed., vol. 12, eq. (24)–(26)';

export const gimbalDriveCalculations: readonly Calculation[] = [
  calculation({
    id: 'gyro.driven-moment',
    title: 'Roll moment of a driven gimbal',
    equation: String.raw`T = n H \dot\alpha \cos\alpha`,
    inputs: {
      spinMomentum,
      tiltRate: { symbol: String.raw`\dot\alpha`, unit: 'rad/s', meaning: 'rate of the gimbal' },
      tilt,
      rotors,
    },
    outputs: { moment: moment('roll moment') },
    validity:
      'Spin axis upright at α = 0, gimbal about the axis across; an opposed pair also cancels the moment about the upright axis.',
    source: GREENHILL,
    compute: (inputs) => ({ moment: drivenMoment(inputs) }),
    example: { spinMomentum: 0.445, tiltRate: 1.5, tilt: 0.3, rotors: 1 },
    related: ['gyro.momentum-reserve', 'gyro.gimbal-reaction'],
  }),
  calculation({
    id: 'gyro.gimbal-reaction',
    title: 'Moment on the gimbal’s drive while the vehicle rolls',
    equation: String.raw`T_g = H \dot\varphi \cos\alpha`,
    inputs: {
      spinMomentum,
      rollRate: { symbol: String.raw`\dot\varphi`, unit: 'rad/s', meaning: 'roll rate of the vehicle' },
      tilt,
    },
    outputs: {
      moment: { symbol: 'T_g', unit: 'N·m', meaning: 'moment that the gimbal’s drive has to stand' },
    },
    validity: 'A gimbal that gives way to this moment is a passive one.',
    source: GREENHILL,
    compute: (inputs) => ({ moment: gimbalReaction(inputs) }),
    example: { spinMomentum: 0.445, rollRate: 0.5, tilt: 0 },
    related: ['gyro.driven-moment', 'gyro.roll-damping'],
  }),
  calculation({
    id: 'gyro.momentum-reserve',
    title: 'Momentum reserve of a gimbal',
    equation: String.raw`R = n H \left( \sin\alpha_m - \sin\alpha_0 \right)`,
    inputs: {
      spinMomentum,
      gimbalTravel: {
        symbol: String.raw`\alpha_m`,
        unit: 'rad',
        meaning: 'travel of the gimbal to its stop',
      },
      initialTilt: {
        symbol: String.raw`\alpha_0`,
        unit: 'rad',
        meaning: 'tilt of the gimbal at the start, towards that stop',
        default: 0,
      },
      rotors,
    },
    outputs: { reserve },
    validity: 'Rotor at full speed; at the stop nothing is left.',
    source: 'Derived: ∫ H cos α dα',
    compute: (inputs) => ({ reserve: momentumReserve(inputs) }),
    example: { spinMomentum: 0.445, gimbalTravel: Math.PI / 4, initialTilt: 0, rotors: 1 },
    related: ['gyro.time-to-saturation', 'gyro.time-to-stop', 'wheel.reserve'],
  }),
  calculation({
    id: 'gyro.time-to-saturation',
    title: 'Time to saturation',
    equation: String.raw`t = \frac{R}{T}`,
    inputs: { reserve, moment: moment('roll moment') },
    outputs: { time: { symbol: 't', unit: 's', meaning: 'time until the reserve is spent' } },
    validity: 'Constant moment to one side; a moment that changes sides spends nothing in the mean.',
    source: 'Derived: impulse is moment times time',
    compute: (inputs) => ({ time: saturationTime(inputs) }),
    example: { reserve: 0.3147, moment: 0.0582 },
    related: ['gyro.momentum-reserve', 'wheel.reserve', 'gyro.trim-moment'],
  }),
  calculation({
    id: 'gyro.trim-moment',
    title: 'Mean moment for the trim ballast',
    equation: String.raw`T_t = \max\left( 0,\; T - \frac{R}{t} \right)`,
    inputs: {
      moment: moment('roll moment, mean over the run'),
      reserve,
      time: { symbol: 't', unit: 's', meaning: 'time of the run' },
    },
    outputs: {
      trimMoment: { symbol: 'T_t', unit: 'N·m', meaning: 'mean moment that the trim ballast takes over' },
    },
    validity: 'For a run without end the ballast has to carry the whole mean moment.',
    source: 'Derived: impulse over the run',
    compute: (inputs) => ({ trimMoment: trimMoment(inputs) }),
    example: { moment: 0.0582, reserve: 0.3147, time: 60 },
    related: ['gyro.time-to-saturation', 'ballast.righting-moment'],
  }),
  calculation({
    id: 'wheel.reserve',
    title: 'Momentum reserve of a reaction wheel',
    equation: String.raw`R = I_w \left( \Omega_{\max} - \lvert \Omega_0 \rvert \right)`,
    inputs: {
      wheelInertia,
      largestSpeed: {
        symbol: String.raw`\Omega_{\max}`,
        unit: 'rad/s',
        meaning: 'largest speed of the wheel',
      },
      startSpeed,
    },
    outputs: { reserve },
    validity: 'Wheel about the roll axis; the moment that speeds it up is what rights the vehicle.',
    source: 'Derived: change of spin momentum',
    compute: (inputs) => ({ reserve: wheelReserve(inputs) }),
    example: { wheelInertia: 4e-4, largestSpeed: 600, startSpeed: 100 },
    related: ['wheel.reserve-under-moment', 'gyro.time-to-saturation'],
  }),
  calculation({
    id: 'wheel.reserve-under-moment',
    title: 'Momentum reserve of a reaction wheel under a moment',
    equation: String.raw`\Omega_l = \Omega_n \left( v - \frac{T}{T_s} \right), \qquad R = I_w \left( \Omega_l - \lvert \Omega_0 \rvert \right)`,
    inputs: {
      wheelInertia,
      stallMoment: {
        symbol: 'T_s',
        unit: 'N·m',
        meaning: 'stall moment of the wheel’s motor at its rated voltage',
      },
      noLoadSpeed: {
        symbol: String.raw`\Omega_n`,
        unit: 'rad/s',
        meaning: 'no-load speed of the wheel’s motor at its rated voltage',
      },
      moment: moment('moment that is wanted'),
      startSpeed,
      voltageRatio: { symbol: 'v', unit: '1', meaning: 'supply over rated voltage', default: 1 },
    },
    outputs: {
      limitSpeed: {
        symbol: String.raw`\Omega_l`,
        unit: 'rad/s',
        meaning: 'speed up to which the motor gives the moment',
      },
      reserve,
    },
    validity: 'Motor line without current limit; negative where the motor does not give the moment at all.',
    source: 'Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed. 2003, ch. 7 (motor line)',
    compute: wheelReserveUnderMoment,
    example: {
      wheelInertia: 4e-4,
      stallMoment: 0.25,
      noLoadSpeed: 700,
      moment: 0.06,
      startSpeed: 0,
      voltageRatio: 1,
    },
    related: ['wheel.reserve', 'actuator.moment-at-speed'],
  }),
];
