/**
 * The margins of a revision: what it can do against what is asked of it, with the verdict of JCGM 106. Capability
 * and demand share inputs (one ballast mass enters both), and the contributions keep account of that.
 */
import { DomainError } from '../mechanics/index.ts';
import type { Prototype, Requirements, Revision } from '../notebook/index.ts';
import { exact, type Problem, propagate, standardUncertainty, type Uncertain } from '../quantity/index.ts';
import { notApplicable, outOfDomain } from './evaluate.ts';
import type { DriveFamily } from './facts.ts';
import { driveFamily } from './facts.ts';
import type { Figure, Margin, MarginSpec, Verdict } from './figure.ts';
import { marginOfSafetyCalculation } from './margin-of-safety.ts';

/** Coverage factor of the one-sided lower 95 % bound of a normal result: JCGM 106:2012 8.3 with table 1. */
export const COVERAGE_FACTOR = 1.645;

interface MarginRow extends MarginSpec {
  /** The margin exists while this requirement is entered … */
  readonly requirement?: keyof Requirements;
  /** … or while this hardware is part of the revision … */
  readonly hardware?: 'rotor' | 'actuator' | 'pack';
  /** … and, of two of the same id, for this kind of ballast drive. */
  readonly drive?: DriveFamily;
  /**
   * A quantity which, where it lies outside its domain, leaves no capability at all: an unstable loop has no gain
   * margin, a rotor that is too slow buys no time. The margin then fails; it is not merely unknown.
   */
  readonly noneWithout?: string;
}

const STABLE_LOOP = 'spectral radius of the balance loop';
const SPIN = 'spin momentum';

const rows: readonly MarginRow[] = [
  {
    id: 'lean',
    title: 'Lean to recover from',
    capability: 'largest_lean',
    demand: 'required_lean',
    unit: 'rad',
    display: '°',
    group: 'ballast',
    requirement: 'leanToRecover',
  },
  {
    id: 'lateral',
    title: 'Lateral acceleration',
    capability: 'lateral_limit',
    demand: 'required_lateral_acceleration',
    unit: 'm/s²',
    display: 'm/s²',
    group: 'ballast',
    requirement: 'lateralAcceleration',
  },
  {
    id: 'turn',
    title: 'Turn',
    capability: 'lateral_limit',
    demand: 'turn_acceleration',
    unit: 'm/s²',
    display: 'm/s²',
    group: 'ballast',
    requirement: 'turnRadius',
  },
  {
    id: 'cross-slope',
    title: 'Cross slope',
    capability: 'cross_slope_held',
    demand: 'required_cross_slope',
    unit: 'rad',
    display: '°',
    group: 'ballast',
    requirement: 'crossSlope',
  },
  {
    id: 'rotor-strength',
    title: 'Strength of the rotor',
    capability: 'rotor_yield_strength',
    demand: 'rotor_peak_stress',
    unit: 'Pa',
    display: 'MPa',
    group: 'rotor',
    hardware: 'rotor',
  },
  {
    id: 'gimbal-time',
    title: 'Time to the gimbal stop',
    capability: 'gimbal_stop_time',
    demand: 'required_gimbal_time',
    unit: 's',
    display: 's',
    group: 'gimbal',
    requirement: 'gimbalTime',
    noneWithout: SPIN,
  },
  {
    id: 'actuator',
    title: 'Moment of the actuator',
    capability: 'actuator_stall_moment',
    demand: 'actuator_moment_needed',
    unit: 'N·m',
    display: 'N·m',
    group: 'actuator',
    hardware: 'actuator',
    drive: 'arm',
  },
  {
    id: 'actuator',
    title: 'Force of the actuator',
    capability: 'actuator_stall_force',
    demand: 'actuator_force_needed',
    unit: 'N',
    display: 'N',
    group: 'actuator',
    hardware: 'actuator',
    drive: 'slide',
  },
  {
    id: 'pack-current',
    title: 'Current of the pack',
    capability: 'pack_largest_current',
    demand: 'pack_peak_current',
    unit: 'A',
    display: 'A',
    group: 'pack',
    hardware: 'pack',
  },
  {
    id: 'run-time',
    title: 'Run time',
    capability: 'run_time',
    demand: 'required_run_time',
    unit: 's',
    display: 'min',
    group: 'pack',
    requirement: 'runTime',
  },
  {
    id: 'gain-up',
    title: 'Gain margin upwards',
    capability: 'gain_margin_up',
    demand: 'required_gain_margin',
    unit: '1',
    display: '1',
    group: 'loop',
    requirement: 'gainMargin',
    noneWithout: STABLE_LOOP,
  },
  {
    id: 'gain-down',
    title: 'Gain margin downwards',
    capability: 'gain_margin_down_factor',
    demand: 'required_gain_margin',
    unit: '1',
    display: '1',
    group: 'loop',
    requirement: 'gainMargin',
    noneWithout: STABLE_LOOP,
  },
  {
    id: 'delay',
    title: 'Delay margin',
    capability: 'delay_margin',
    demand: 'required_delay_margin',
    unit: 's',
    display: 'ms',
    group: 'loop',
    requirement: 'delayMargin',
    noneWithout: STABLE_LOOP,
  },
];

/** Every margin that some revision has; the actuator's stands once for an arm and once for a slide. */
export const marginSpecs: readonly MarginSpec[] = rows.map(specOf);

/** The margins that exist for this revision: those whose requirement is entered or whose hardware is there. */
export function marginSpecsOf(prototype: Prototype, revision: Revision): readonly MarginSpec[] {
  const drive = driveFamily(revision);
  return rows
    .filter(
      (row) =>
        (row.requirement === undefined || prototype.requirements[row.requirement] !== undefined) &&
        (row.hardware === undefined || revision[row.hardware] !== undefined) &&
        (row.drive === undefined || row.drive === drive),
    )
    .map(specOf);
}

function specOf({
  requirement: _r,
  hardware: _h,
  drive: _d,
  noneWithout: _n,
  ...spec
}: MarginRow): MarginSpec {
  return spec;
}

/** The margin from its capability and demand. */
export function marginOf(spec: MarginSpec, figure: (name: string) => Figure | undefined): Margin {
  const capability = figure(spec.capability);
  const demand = figure(spec.demand);
  if (!capability || !demand) {
    return {
      ...spec,
      verdict: 'unknown',
      problem: notApplicable(capability ? spec.demand : spec.capability),
      missing: [],
    };
  }
  if (demand.result.ok && !capability.result.ok && leavesNothing(spec, capability.result.problem)) {
    return judged(spec, exact(-1));
  }
  if (!capability.result.ok || !demand.result.ok) {
    const unknown = [capability.result, demand.result].filter((result) => !result.ok);
    const missing = [...new Set(unknown.flatMap((result) => result.missing))];
    const lacking = unknown.find((result) => result.missing.length > 0) ?? unknown[0];
    return {
      ...spec,
      verdict: 'unknown',
      problem: lacking?.problem ?? notApplicable(spec.capability),
      missing,
    };
  }
  try {
    return judged(spec, marginOfSafetyFrom(capability.result.value, demand.result.value));
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    const problem = outOfDomain(error, spec.title);
    const figures = { ...problem.figures, name: demand.title };
    return { ...spec, verdict: 'unknown', problem: { ...problem, figures }, missing: [] };
  }
}

/** Whether the problem of a capability means that there is none, so that the margin fails. */
export function leavesNothing(spec: MarginSpec, problem: Problem): boolean {
  const row = rows.find(({ id }) => id === spec.id);
  return problem.code === 'calculation.out-of-domain' && problem.figures.name === (row?.noneWithout ?? '');
}

/**
 * MS = capability/demand − 1, with what the two share accounted for.
 *
 * @throws DomainError  for a demand that is not more than 0
 */
export function marginOfSafetyFrom(capability: Uncertain, demand: Uncertain): Uncertain {
  const { compute, partials } = marginOfSafetyCalculation;
  const { marginOfSafety } = propagate(compute, { capability, demand }, partials);
  if (!marginOfSafety) throw new Error('the margin of safety was not computed');
  return marginOfSafety;
}

function judged(spec: MarginSpec, marginOfSafety: Uncertain): Margin {
  const lowerBound = lowerBoundOf(marginOfSafety);
  return { ...spec, verdict: verdictOf(marginOfSafety.value, lowerBound), marginOfSafety, lowerBound };
}

/** MS − 1.645 u(MS): the bound that MS exceeds with a probability of 95 %, for a normal result. */
export function lowerBoundOf(marginOfSafety: Uncertain): number {
  return marginOfSafety.value - COVERAGE_FACTOR * standardUncertainty(marginOfSafety);
}

/**
 * Guarded acceptance with a guard band of 1.645 u (JCGM 106:2012 8.3.2): *holds* leaves at most a 5 % chance that
 * the demand is not met; inside the guard band the verdict is *in doubt*.
 */
export function verdictOf(value: number, lowerBound: number): Exclude<Verdict, 'unknown'> {
  if (value < 0) return 'fails';
  return lowerBound >= 0 ? 'holds' : 'in doubt';
}
