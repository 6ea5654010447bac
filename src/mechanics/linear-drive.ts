/** Turning into sliding: what a screw or a belt makes of a motor's moment, and whether the load can drive it back. */
import { type Calculation, calculation } from './calculation.ts';
import { DomainError, requireBetween, requireNotNegative, requirePositive } from './domain.ts';

/**
 * Moments of a lead screw that moves a force, and its efficiency.
 *
 *   T_r = F d_m/2 · (l + π f′ d_m)/(π d_m − f′ l) + F f_c d_c/2
 *   T_l = F d_m/2 · (π f′ d_m − l)/(π d_m + f′ l) + F f_c d_c/2,   f′ = f / cos α,   η = F l / (2π T_r)
 *
 * @param force            F, N along the screw, more than 0
 * @param meanDiameter     d_m, m of the thread, more than 0
 * @param lead             l, m per turn, more than 0
 * @param friction         f of the thread, not negative
 * @param flankAngle       α, rad, half the angle between the flanks, from 0 (square, the default) to π/3
 * @param collarDiameter   d_c, m, mean, of the collar that takes the thrust, not negative; 0 if left out (a rolling bearing)
 * @param collarFriction   f_c, not negative; 0 if left out
 * @returns raiseMoment T_r, N·m, against the force; lowerMoment T_l, N·m, with it: negative where the force drives the
 *          screw back by itself; efficiency η
 * @throws DomainError  outside these ranges, and where π d_m ≤ f′ l: no moment moves such a screw
 * Source: Mott, Machine Elements in Mechanical Design, 4th ed., eq. (17-10), (17-11); Shigley, ch. 8, the same algebra.
 */
export function leadScrew({
  force,
  meanDiameter,
  lead,
  friction,
  flankAngle = 0,
  collarDiameter = 0,
  collarFriction = 0,
}: {
  readonly force: number;
  readonly meanDiameter: number;
  readonly lead: number;
  readonly friction: number;
  readonly flankAngle?: number;
  readonly collarDiameter?: number;
  readonly collarFriction?: number;
}): { raiseMoment: number; lowerMoment: number; efficiency: number } {
  requirePositive('force along the screw', force, 'N');
  requirePositive('mean diameter of the thread', meanDiameter, 'm');
  requirePositive('lead of the thread', lead, 'm');
  requireNotNegative('friction of the thread', friction, '1');
  requireBetween('flank angle', flankAngle, 0, Math.PI / 3, 'rad');
  requireNotNegative('mean diameter of the collar', collarDiameter, 'm');
  requireNotNegative('friction of the collar', collarFriction, '1');
  const rub = friction / Math.cos(flankAngle);
  const turn = Math.PI * meanDiameter;
  if (turn <= rub * lead) {
    throw new DomainError('friction of the thread', friction, 'no moment moves so steep a thread with it');
  }
  const collar = (force * collarFriction * collarDiameter) / 2;
  const half = (force * meanDiameter) / 2;
  const raiseMoment = (half * (lead + rub * turn)) / (turn - rub * lead) + collar;
  return {
    raiseMoment,
    lowerMoment: (half * (rub * turn - lead)) / (turn + rub * lead) + collar,
    efficiency: (force * lead) / (2 * Math.PI * raiseMoment),
  };
}

/**
 * Thrust of a screw whose efficiency is known, such as a ball screw, and the moment that a load drives it back with.
 *
 *   F = 2π η T / l,   T_b = F_b l η_b / (2π)
 *
 * @param moment              T, N·m, not negative
 * @param lead                l, m per turn, more than 0
 * @param efficiency          η, more than 0, up to 1
 * @param load                F_b, N, that pushes on the standing nut, not negative; 0 if left out
 * @param reverseEfficiency   η_b, from 0 (does not drive back, the default) to 1
 * @returns force F, N; backMoment T_b, N·m
 * @throws DomainError  outside these ranges
 * Source: work of one turn, 2π T η = F l; the reverse likewise.
 */
export function screwThrust({
  moment,
  lead,
  efficiency,
  load = 0,
  reverseEfficiency = 0,
}: {
  readonly moment: number;
  readonly lead: number;
  readonly efficiency: number;
  readonly load?: number;
  readonly reverseEfficiency?: number;
}): { force: number; backMoment: number } {
  requireNotNegative('moment', moment, 'N·m');
  requirePositive('lead of the screw', lead, 'm');
  requireBetween('efficiency', efficiency, 0, 1, '1');
  requireNotNegative('load on the nut', load, 'N');
  requireBetween('efficiency when driven back', reverseEfficiency, 0, 1, '1');
  return {
    force: (2 * Math.PI * efficiency * moment) / lead,
    backMoment: (load * lead * reverseEfficiency) / (2 * Math.PI),
  };
}

/**
 * Thrust, speed and share of inertia of a toothed belt.
 *
 *   F = 2 η T / d,   v = ω d / 2,   J = m d² / 4
 *
 * @param moment         T, N·m at the pulley, not negative
 * @param speed          ω, rad/s of the pulley, not negative
 * @param pulleyDiameter d, m, pitch diameter (teeth × pitch / π), more than 0
 * @param movedMass      m, kg on the belt, not negative; 0 if left out
 * @param efficiency     η, more than 0, up to 1; 1 if left out
 * @returns force F, N; speed v, m/s; inertia J, kg·m² of the moved mass at the pulley
 * @throws DomainError  outside these ranges
 * Source: work and kinetic energy of one turn; a belt drives back as easily as it drives.
 */
export function beltDrive({
  moment,
  speed,
  pulleyDiameter,
  movedMass = 0,
  efficiency = 1,
}: {
  readonly moment: number;
  readonly speed: number;
  readonly pulleyDiameter: number;
  readonly movedMass?: number;
  readonly efficiency?: number;
}): { force: number; beltSpeed: number; inertia: number } {
  requireNotNegative('moment at the pulley', moment, 'N·m');
  requireNotNegative('speed of the pulley', speed, 'rad/s');
  requirePositive('pitch diameter of the pulley', pulleyDiameter, 'm');
  requireNotNegative('moved mass', movedMass, 'kg');
  requireBetween('efficiency', efficiency, 0, 1, '1');
  return {
    force: (2 * efficiency * moment) / pulleyDiameter,
    beltSpeed: (speed * pulleyDiameter) / 2,
    inertia: (movedMass * pulleyDiameter ** 2) / 4,
  };
}

const lead = { symbol: 'l', unit: 'm', meaning: 'lead, travel for one turn' } as const;
const efficiency = { symbol: String.raw`\eta`, unit: '1', meaning: 'efficiency' } as const;

export const linearDriveCalculations: readonly Calculation[] = [
  calculation({
    id: 'drive.lead-screw',
    title: 'Moments and efficiency of a lead screw',
    equation: String.raw`\begin{gathered} T_r = \frac{F d_m}{2}\, \frac{l + \pi f' d_m}{\pi d_m - f' l} + \frac{F f_c d_c}{2}, \qquad T_l = \frac{F d_m}{2}\, \frac{\pi f' d_m - l}{\pi d_m + f' l} + \frac{F f_c d_c}{2} \\ f' = \frac{f}{\cos\alpha}, \qquad \eta = \frac{F\, l}{2\pi\, T_r} \end{gathered}`,
    inputs: {
      force: { symbol: 'F', unit: 'N', meaning: 'force along the screw' },
      meanDiameter: { symbol: 'd_m', unit: 'm', meaning: 'mean diameter of the thread' },
      lead,
      friction: { symbol: 'f', unit: '1', meaning: 'friction of the thread' },
      flankAngle: {
        symbol: String.raw`\alpha`,
        unit: 'rad',
        meaning: 'half the angle between the flanks, 0 square, 15° trapezoidal',
        default: 0,
      },
      collarDiameter: {
        symbol: 'd_c',
        unit: 'm',
        meaning: 'mean diameter of the thrust collar, 0 for a rolling bearing',
        default: 0,
      },
      collarFriction: { symbol: 'f_c', unit: '1', meaning: 'friction of the thrust collar', default: 0 },
    },
    outputs: {
      raiseMoment: { symbol: 'T_r', unit: 'N·m', meaning: 'moment that moves the screw against the force' },
      lowerMoment: {
        symbol: 'T_l',
        unit: 'N·m',
        meaning: 'moment that moves it with the force, negative where the force drives it back',
      },
      efficiency,
    },
    validity:
      'Sliding thread; vibration can let a screw creep that should hold itself, so a holding moment near 0 does not hold.',
    source: 'R. L. Mott, Machine Elements in Mechanical Design, 4th ed., eq. (17-7), (17-10), (17-11)',
    compute: leadScrew,
    example: {
      force: 12,
      meanDiameter: 0.007,
      lead: 0.008,
      friction: 0.12,
      flankAngle: 0.2618,
      collarDiameter: 0,
      collarFriction: 0,
    },
    related: ['drive.screw-thrust', 'actuator.slide-moving-force'],
  }),
  calculation({
    id: 'drive.screw-thrust',
    title: 'Thrust of a screw of known efficiency, and its back-driving',
    equation: String.raw`F = \frac{2\pi\, \eta\, T}{l}, \qquad T_b = \frac{F_b\, l\, \eta_b}{2\pi}`,
    inputs: {
      moment: { symbol: 'T', unit: 'N·m', meaning: 'moment at the screw' },
      lead,
      efficiency,
      load: { symbol: 'F_b', unit: 'N', meaning: 'load that pushes on the standing nut', default: 0 },
      reverseEfficiency: {
        symbol: String.raw`\eta_b`,
        unit: '1',
        meaning: 'efficiency when driven back',
        default: 0,
      },
    },
    outputs: {
      force: { symbol: 'F', unit: 'N', meaning: 'thrust' },
      backMoment: {
        symbol: 'T_b',
        unit: 'N·m',
        meaning: 'moment that has to hold the screw against the load',
      },
    },
    validity:
      'Steady motion; a ball screw nearly always drives back and needs a brake or a motor that holds.',
    source: 'Derived: work of one turn; efficiencies from the maker',
    compute: screwThrust,
    example: { moment: 0.02, lead: 0.004, efficiency: 0.9, load: 12, reverseEfficiency: 0.8 },
    related: ['drive.lead-screw', 'drive.belt'],
  }),
  calculation({
    id: 'drive.belt',
    title: 'Thrust, speed and inertia of a toothed belt',
    equation: String.raw`F = \frac{2\, \eta\, T}{d}, \qquad v = \frac{\omega\, d}{2}, \qquad J = \frac{m\, d^2}{4}`,
    inputs: {
      moment: { symbol: 'T', unit: 'N·m', meaning: 'moment at the pulley' },
      speed: { symbol: String.raw`\omega`, unit: 'rad/s', meaning: 'speed of the pulley' },
      pulleyDiameter: { symbol: 'd', unit: 'm', meaning: 'pitch diameter of the pulley' },
      movedMass: { symbol: 'm', unit: 'kg', meaning: 'mass moved by the belt', default: 0 },
      efficiency: { ...efficiency, default: 1 },
    },
    outputs: {
      force: { symbol: 'F', unit: 'N', meaning: 'thrust' },
      beltSpeed: { symbol: 'v', unit: 'm/s', meaning: 'speed of the belt' },
      inertia: { symbol: 'J', unit: 'kg·m²', meaning: 'inertia of the moved mass at the pulley' },
    },
    validity: 'Belt stiff and tight; it drives back as easily as it drives, so that the motor has to hold.',
    source:
      'Derived: work and kinetic energy of one turn; OpenStax, University Physics Volume 1, section 10.8',
    compute: beltDrive,
    example: { moment: 0.12, speed: 30, pulleyDiameter: 0.0127, movedMass: 0.9, efficiency: 0.95 },
    related: ['drive.screw-thrust', 'actuator.slide-moving-force', 'gear.reflection'],
  }),
];
