/** Where parts are held together: bolts, and prints whose layers part more easily than they tear. */
import { type Calculation, calculation } from './calculation.ts';
import {
  DomainError,
  requireEach,
  requireFinite,
  requireNotNegative,
  requirePositive,
  requireSameLength,
  requireWholeNumber,
} from './domain.ts';

/**
 * Stress that a printed part may carry across its layers.
 *
 *   σ_z = k σ / (K_t S)
 *
 * k has to be measured on prints of the same machine, material and settings: no published ratio was found to rely on, and
 * the figures that go about run from 0.2 to 0.9.
 *
 * @param strength             σ, Pa, along the layers, more than 0
 * @param knockDown            k, from more than 0 to 1
 * @param stressConcentration  K_t at a hole or corner, at least 1; 1 if left out
 * @param safetyFactor         S, at least 1; 1 if left out
 * @returns σ_z, Pa
 * @throws DomainError  outside these ranges
 * Source: definition of the knock-down factor.
 */
export function printedStrength({
  strength,
  knockDown,
  stressConcentration = 1,
  safetyFactor = 1,
}: {
  readonly strength: number;
  readonly knockDown: number;
  readonly stressConcentration?: number;
  readonly safetyFactor?: number;
}): number {
  requirePositive('strength along the layers', strength, 'Pa');
  requireFinite('knock-down factor across the layers', knockDown);
  if (knockDown <= 0 || knockDown > 1) {
    const requirement = 'it has to be more than 0 and no more than 1';
    throw new DomainError('knock-down factor across the layers', knockDown, requirement);
  }
  for (const [name, factor] of [
    ['stress concentration', stressConcentration],
    ['safety factor', safetyFactor],
  ] as const) {
    requireFinite(name, factor);
    if (factor < 1) throw new DomainError(name, factor, 'it has to be at least 1');
  }
  return (knockDown * strength) / (stressConcentration * safetyFactor);
}

/**
 * Force on the worst bolt of a group that takes a force and a moment in its own plane, by shear.
 *
 *   F_i = F/n + M (−y_i, x_i) / Σ (x_i² + y_i²),   x_i, y_i from the centre of the group;   τ = F_max / (π d²/4)
 *
 * @param alongs        positions of the bolts along x, m; acrosses, along y, m; any origin
 * @param forceAlong    F_x, N; forceAcross F_y, N, at the centre of the group
 * @param moment        M, N·m, turning x towards y, about the centre of the group
 * @param boltDiameter  d, m, of the section in shear (the root of a thread), more than 0
 * @returns force F_max, N; stress τ, Pa
 * @throws DomainError  outside these ranges, for no bolts, and for a moment on bolts in a single point
 * Source: Shigley's Mechanical Engineering Design, section on bolted joints in shear (elastic method, plates rigid).
 */
export function boltGroup(joint: {
  readonly alongs: readonly number[];
  readonly acrosses: readonly number[];
  readonly forceAlong: number;
  readonly forceAcross: number;
  readonly moment: number;
  readonly boltDiameter: number;
}): { force: number; stress: number } {
  const { alongs, acrosses, forceAlong, forceAcross, moment, boltDiameter } = joint;
  requireEach('position of bolt', alongs, 'm');
  requireEach('position of bolt', acrosses, 'm');
  requireSameLength('position across', acrosses, 'bolt', alongs);
  requireFinite('force along', forceAlong, 'N');
  requireFinite('force across', forceAcross, 'N');
  requireFinite('moment', moment, 'N·m');
  requirePositive('diameter of the bolts', boltDiameter, 'm');
  const count = alongs.length;
  if (count === 0) throw new DomainError('number of bolts', 0, 'at least one is needed');
  const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / count;
  const [centreAlong, centreAcross] = [mean(alongs), mean(acrosses)];
  const offsets = alongs.map((along, i) => [along - centreAlong, (acrosses[i] ?? 0) - centreAcross] as const);
  const polar = offsets.reduce((sum, [x, y]) => sum + x * x + y * y, 0);
  if (moment !== 0 && polar === 0) {
    throw new DomainError('moment', moment, 'bolts in one point take no moment', 'N·m');
  }
  const turn = moment === 0 ? 0 : moment / polar;
  const force = Math.max(
    ...offsets.map(([x, y]) => Math.hypot(forceAlong / count - turn * y, forceAcross / count + turn * x)),
  );
  return { force, stress: force / ((Math.PI * boltDiameter ** 2) / 4) };
}

/**
 * Preload of a tightened bolt: F = T/(K d), N.
 *
 * @param tighteningMoment  T, N·m, not negative
 * @param nutFactor         K, more than 0: about 0.2 dry, 0.15 oiled; scatter ±30 %
 * @param boltDiameter      d, m, nominal, more than 0
 * @throws DomainError  outside these ranges
 * Source: short form of torque against tension, common practice.
 */
export function boltPreload(bolt: {
  readonly tighteningMoment: number;
  readonly nutFactor: number;
  readonly boltDiameter: number;
}): number {
  requireNotNegative('tightening moment', bolt.tighteningMoment, 'N·m');
  requirePositive('nut factor', bolt.nutFactor, '1');
  requirePositive('diameter of the bolt', bolt.boltDiameter, 'm');
  return bolt.tighteningMoment / (bolt.nutFactor * bolt.boltDiameter);
}

/**
 * What a clamped joint holds by friction alone: F = n μ F_i, N; on a circle of radius r, M = F r, N·m.
 *
 * @param bolts     n, whole, at least 1
 * @param preload   F_i, N of each, not negative
 * @param friction  μ, not negative
 * @param radius    r, m of the bolts from the axis, not negative; 0 if left out
 * @throws DomainError  outside these ranges
 * Source: dry friction.
 */
export function jointSlip({
  bolts,
  preload,
  friction,
  radius = 0,
}: {
  readonly bolts: number;
  readonly preload: number;
  readonly friction: number;
  readonly radius?: number;
}): { force: number; moment: number } {
  requireWholeNumber('number of bolts', bolts, 1);
  requireNotNegative('preload', preload, 'N');
  requireNotNegative('friction of the joint', friction, '1');
  requireNotNegative('radius of the bolts', radius, 'm');
  const force = bolts * friction * preload;
  return { force, moment: force * radius };
}

const position = (symbol: string, axis: string) =>
  ({ symbol, unit: 'm', meaning: `positions of the bolts ${axis}`, list: true }) as const;

export const jointCalculations: readonly Calculation[] = [
  calculation({
    id: 'joint.printed-strength',
    title: 'Stress that a print may carry across its layers',
    equation: String.raw`\sigma_z = \frac{k\, \sigma}{K_t\, S}`,
    inputs: {
      strength: { symbol: String.raw`\sigma`, unit: 'Pa', meaning: 'strength along the layers' },
      knockDown: { symbol: 'k', unit: '1', meaning: 'knock-down factor across the layers, measured' },
      stressConcentration: {
        symbol: 'K_t',
        unit: '1',
        meaning: 'stress concentration at a hole or corner',
        default: 1,
      },
      safetyFactor: { symbol: 'S', unit: '1', meaning: 'safety factor', default: 1 },
    },
    outputs: {
      stress: { symbol: String.raw`\sigma_z`, unit: 'Pa', meaning: 'stress permitted across the layers' },
    },
    validity:
      'Short load at room temperature; the factor has to be measured on prints of the same machine and settings, since no published ratio holds for all (0.2 to 0.9 go about).',
    source: 'Definition of the knock-down factor; its value is the builder’s own',
    compute: (inputs) => ({ stress: printedStrength(inputs) }),
    example: { strength: 47e6, knockDown: 0.5, stressConcentration: 2, safetyFactor: 2 },
    related: ['bar.bending', 'joint.bolt-group'],
  }),
  calculation({
    id: 'joint.bolt-group',
    title: 'Worst bolt of a group in shear',
    equation: String.raw`F_{\max} = \max_i \sqrt{\left( \frac{F_x}{n} - \frac{M y_i}{\sum_j r_j^2} \right)^2 + \left( \frac{F_y}{n} + \frac{M x_i}{\sum_j r_j^2} \right)^2}, \qquad \tau = \frac{4 F_{\max}}{\pi d^2}`,
    inputs: {
      alongs: position('x_i', 'along'),
      acrosses: position('y_i', 'across'),
      forceAlong: { symbol: 'F_x', unit: 'N', meaning: 'force along' },
      forceAcross: { symbol: 'F_y', unit: 'N', meaning: 'force across' },
      moment: { symbol: 'M', unit: 'N·m', meaning: 'moment about the centre of the group' },
      boltDiameter: { symbol: 'd', unit: 'm', meaning: 'diameter of the bolts in shear' },
    },
    outputs: {
      force: { symbol: String.raw`F_{\max}`, unit: 'N', meaning: 'force on the worst bolt' },
      stress: { symbol: String.raw`\tau`, unit: 'Pa', meaning: 'shear stress of the worst bolt' },
    },
    validity:
      'Plates rigid, bolts alike, friction of the joint left out; x_i, y_i and r_j count from the centre of the group, whatever origin they are entered from.',
    source: 'Shigley’s Mechanical Engineering Design, bolted joints loaded in shear',
    compute: boltGroup,
    example: {
      alongs: [-0.01, 0.01, -0.01, 0.01],
      acrosses: [-0.008, -0.008, 0.008, 0.008],
      forceAlong: 0,
      forceAcross: 12,
      moment: 0.9,
      boltDiameter: 0.0024,
    },
    related: ['joint.slip', 'load.arm-root'],
  }),
  calculation({
    id: 'joint.bolt-preload',
    title: 'Preload of a tightened bolt',
    equation: String.raw`F_i = \frac{T}{K d}`,
    inputs: {
      tighteningMoment: { symbol: 'T', unit: 'N·m', meaning: 'tightening moment' },
      nutFactor: { symbol: 'K', unit: '1', meaning: 'nut factor, about 0.2 dry, 0.15 oiled' },
      boltDiameter: { symbol: 'd', unit: 'm', meaning: 'nominal diameter of the bolt' },
    },
    outputs: { preload: { symbol: 'F_i', unit: 'N', meaning: 'preload' } },
    validity: 'Scatters by ±30 %; in plastic the preload creeps away within days.',
    source: 'Common practice (short form of torque against tension)',
    compute: (inputs) => ({ preload: boltPreload(inputs) }),
    example: { tighteningMoment: 0.6, nutFactor: 0.2, boltDiameter: 0.003 },
    related: ['joint.slip'],
  }),
  calculation({
    id: 'joint.slip',
    title: 'Force and moment that a clamped joint holds by friction',
    equation: String.raw`F = n\, \mu\, F_i, \qquad M = F\, r`,
    inputs: {
      bolts: { symbol: 'n', unit: '1', meaning: 'number of bolts' },
      preload: { symbol: 'F_i', unit: 'N', meaning: 'preload of each bolt' },
      friction: { symbol: String.raw`\mu`, unit: '1', meaning: 'friction of the joint' },
      radius: { symbol: 'r', unit: 'm', meaning: 'radius of the bolts from the axis', default: 0 },
    },
    outputs: {
      force: { symbol: 'F', unit: 'N', meaning: 'force that the joint holds' },
      moment: { symbol: 'M', unit: 'N·m', meaning: 'moment that it holds about the axis' },
    },
    validity: 'Dry clean faces; a hub on a spinning shaft should not rest on friction alone.',
    source: 'Derived: dry friction',
    compute: jointSlip,
    example: { bolts: 4, preload: 1000, friction: 0.15, radius: 0.012 },
    related: ['joint.bolt-preload', 'joint.bolt-group'],
  }),
];
