/**
 * How long the gimbal has before it meets its stop. While it still tilts, the rotor answers a roll moment with
 * H cos α α̇; at the stop it gives nothing, so this is the time that the ballast has to take over in.
 */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireBetween, requirePositive } from './domain.ts';

interface GimbalStroke {
  /** H, N·m·s. */
  readonly spinMomentum: number;
  /** α_m, rad to the stop, more than 0, up to π/2. */
  readonly gimbalTravel: number;
  /** α₀, rad at the start, towards that stop; negative away from it. */
  readonly initialTilt?: number;
}

/** H (sin α_m − sin α₀), N·m·s: the integral of H cos α α̇, the whole roll impulse that the gimbal can still give. */
function impulseLeft({ spinMomentum, gimbalTravel, initialTilt = 0 }: GimbalStroke): number {
  requirePositive('spin momentum', spinMomentum, 'N·m·s');
  requirePositive('gimbal travel', gimbalTravel, 'rad');
  requireBetween('gimbal travel', gimbalTravel, 0, Math.PI / 2, 'rad');
  requireBetween('initial tilt of the gimbal', initialTilt, -gimbalTravel, gimbalTravel, 'rad');
  return spinMomentum * (Math.sin(gimbalTravel) - Math.sin(initialTilt));
}

/**
 * Time to the gimbal stop under a constant roll moment.
 *
 *   t = H (sin α_m − sin α₀) / T
 *
 * @param spinMomentum  H, N·m·s, more than 0
 * @param gimbalTravel  α_m, rad, more than 0, up to π/2
 * @param initialTilt   α₀, rad, within ±α_m; 0 where left out
 * @param moment        T, N·m about the roll axis, constant, more than 0
 * @returns t, s
 * @throws DomainError  outside these ranges
 * Source: angular impulse about the roll axis, ∫T dt = ∫H cos α dα, the lean held.
 */
export function timeToStop(stroke: GimbalStroke & { readonly moment: number }): number {
  const impulse = impulseLeft(stroke);
  requirePositive('roll moment', stroke.moment, 'N·m');
  return impulse / stroke.moment;
}

/**
 * Time to the gimbal stop from a lean that nobody corrects.
 *
 *   t = τ ln( 1 + H (sin α_m − sin α₀) / (K φ₀ τ) ),   from  H (sin α − sin α₀) = ∫ K φ₀ e^(t/τ) dt
 *
 * τ belongs to a gimbal near upright. As the gimbal tilts, the same friction costs more lean (c α̇ = H cos α φ̇), so the
 * formula is long, by no more than 1.4 % for a stop at 30°, 3.1 % at 45° and 5.1 % at 60°. With a sprung gimbal that starts
 * upright the lean at first grows more slowly than e^(t/τ), and the formula is on the safe side; with a top-heavy one
 * it is a guide only.
 *
 * @param spinMomentum  H, N·m·s, more than 0
 * @param gimbalTravel  α_m, rad, more than 0, up to π/2
 * @param initialTilt   α₀, rad, within ±α_m; 0 where left out
 * @param stiffness     K, N·m/rad, toppling stiffness, more than 0
 * @param lean          φ₀, rad at the start, more than 0
 * @param slowTime      τ, s, toppling time constant with the rotor, more than 0
 * @returns t, s; tends to H (sin α_m − sin α₀)/(K φ₀) for long τ
 * @throws DomainError  outside these ranges, or for a lean of 90° and more
 * Source: angular impulse about the roll axis with the lean growing by the slow toppling.
 */
export function timeToStopFromLean(
  stroke: GimbalStroke & {
    readonly stiffness: number;
    readonly lean: number;
    readonly slowTime: number;
  },
): number {
  const impulse = impulseLeft(stroke);
  const { stiffness, lean, slowTime } = stroke;
  requirePositive('toppling stiffness', stiffness, 'N·m/rad');
  requirePositive('lean at the start', lean, 'rad');
  if (lean >= Math.PI / 2)
    throw new DomainError('lean at the start', lean, 'it has to be less than 90°', 'rad');
  requirePositive('toppling time constant with the rotor', slowTime, 's');
  return slowTime * Math.log1p(impulse / (stiffness * lean * slowTime));
}

const stroke = {
  spinMomentum: { symbol: 'H', unit: 'N·m·s', meaning: 'spin momentum of the rotor' },
  gimbalTravel: { symbol: String.raw`\alpha_m`, unit: 'rad', meaning: 'travel of the gimbal to its stop' },
  initialTilt: {
    symbol: String.raw`\alpha_0`,
    unit: 'rad',
    meaning: 'tilt of the gimbal at the start, towards that stop',
    default: 0,
  },
} as const;
const time = { symbol: 't', unit: 's', meaning: 'time to the gimbal stop' } as const;

export const gimbalTimeCalculations: readonly Calculation[] = [
  calculation({
    id: 'gyro.time-to-stop',
    title: 'Time to the gimbal stop under a constant moment',
    equation: String.raw`t = \frac{H \left( \sin\alpha_m - \sin\alpha_0 \right)}{T}`,
    inputs: {
      ...stroke,
      moment: { symbol: 'T', unit: 'N·m', meaning: 'roll moment' },
    },
    outputs: { time },
    validity: 'Gimbal without friction or centring, nutation died out, the moment constant in size.',
    source: 'Derived: angular impulse about the roll axis, ∫T dt = ∫H cos α dα',
    compute: (inputs) => ({ time: timeToStop(inputs) }),
    example: { spinMomentum: 0.445, gimbalTravel: Math.PI / 4, initialTilt: 0, moment: 0.0582 },
    related: ['gyro.time-to-stop-from-lean', 'ballast.righting-moment'],
  }),
  calculation({
    id: 'gyro.time-to-stop-from-lean',
    title: 'Time to the gimbal stop from a lean',
    equation: String.raw`t = \tau \ln\left( 1 + \frac{H \left( \sin\alpha_m - \sin\alpha_0 \right)}{K \varphi_0 \tau} \right)`,
    inputs: {
      ...stroke,
      stiffness: { symbol: 'K', unit: 'N·m/rad', meaning: 'toppling stiffness of the vehicle' },
      lean: { symbol: String.raw`\varphi_0`, unit: 'rad', meaning: 'lean at the start' },
      slowTime: { symbol: String.raw`\tau`, unit: 's', meaning: 'toppling time constant with the rotor' },
    },
    outputs: { time },
    validity:
      'Nutation died out, lean small, free gimbal: long by at most 3.1 % for a stop at 45°, 5.1 % at 60°; with a sprung gimbal on the safe side, with a top-heavy one a guide only.',
    source: 'Derived: angular impulse about the roll axis with the lean growing as exp(t/τ)',
    compute: (inputs) => ({ time: timeToStopFromLean(inputs) }),
    example: {
      spinMomentum: 0.445,
      gimbalTravel: Math.PI / 4,
      initialTilt: 0,
      stiffness: 1.358,
      lean: 0.0436,
      slowTime: 29,
    },
    related: ['gyro.time-to-stop', 'gyro.slow-toppling'],
  }),
];
