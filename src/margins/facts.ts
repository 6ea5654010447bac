/**
 * Every physical input of a prototype and a revision by name, apart from the rows of the mass table and the
 * sections of the rotor: what the pages build their forms from, and where every calculation begins.
 */
import type { Revision } from '../notebook/index.ts';
import { anyValue, type FieldSpec, lessThanRightAngle, notNegative, positive, type Range } from './field.ts';
import type { FigureGroup, FigureSpec } from './figure.ts';

/** The page of the window on which the field is entered. */
export type FactPage = 'Requirements' | 'Masses' | 'Rotor and gimbal' | 'Ballast' | 'Loop' | 'Power';

export type DriveFamily = 'arm' | 'slide';

export interface FactSpec extends FigureSpec, Pick<FieldSpec, 'range' | 'example' | 'blank'> {
  readonly record: 'prototype' | 'revision';
  /** Path in that record, segments joined by `/`. */
  readonly path: string;
  readonly page: FactPage;
  /** A count is kept as a bare whole number; everything else as a quantity. */
  readonly kind: 'quantity' | 'count';
  /** Only for a ballast on an arm, or only for one on a slide. */
  readonly drive?: DriveFamily;
  /** What differs where the ballast moves on a slide. */
  readonly onSlide?: Pick<FigureSpec, 'unit' | 'display'> & Pick<FieldSpec, 'example'>;
}

type Row = readonly [
  name: string,
  path: string,
  title: string,
  unit: string,
  display: string,
  range: Range,
  example: string,
];
type Extra = Partial<Pick<FactSpec, 'blank' | 'kind' | 'drive' | 'onSlide'>>;

function facts(
  record: FactSpec['record'],
  page: FactPage,
  group: FigureGroup,
  rows: readonly (Row | readonly [...Row, Extra])[],
): FactSpec[] {
  return rows.map(([name, path, title, unit, display, range, example, extra]) => ({
    name,
    record,
    path,
    title,
    unit,
    display,
    range,
    example,
    group,
    page,
    kind: 'quantity',
    ...extra,
  }));
}

const share: Range = { above: 0, to: 1 };
const factor: Range = { from: 1 };

const requirementFacts = facts('prototype', 'Requirements', 'requirements', [
  [
    'required_lean',
    'requirements/leanToRecover',
    'lean to recover from',
    'rad',
    '°',
    lessThanRightAngle,
    '6°',
  ],
  [
    'required_lateral_acceleration',
    'requirements/lateralAcceleration',
    'lateral acceleration to withstand',
    'm/s²',
    'm/s²',
    positive,
    '1.2 m/s²',
  ],
  ['required_turn_radius', 'requirements/turnRadius', 'turn radius', 'm', 'm', positive, '2.5 m'],
  ['turn_speed', 'requirements/turnSpeed', 'speed in that turn', 'm/s', 'km/h', positive, '5 km/h'],
  [
    'required_cross_slope',
    'requirements/crossSlope',
    'cross slope to stand on',
    'rad',
    '°',
    lessThanRightAngle,
    '3°',
  ],
  [
    'disturbance_reserve',
    'requirements/disturbanceReserve',
    'lean kept in reserve for disturbances',
    'rad',
    '°',
    { from: 0, below: Math.PI / 2 },
    '2°',
    { blank: 0 },
  ],
  ['required_run_time', 'requirements/runTime', 'run time', 's', 'min', positive, '10 min'],
  [
    'overspeed_factor',
    'requirements/overspeedFactor',
    'overspeed factor that the rotor is judged at',
    '1',
    '1',
    factor,
    '1.2',
  ],
  ['required_gain_margin', 'requirements/gainMargin', 'gain margin to keep', '1', '1', factor, '1.6'],
  ['required_delay_margin', 'requirements/delayMargin', 'delay margin to keep', 's', 'ms', positive, '10 ms'],
  [
    'required_gimbal_time',
    'requirements/gimbalTime',
    'time that the gimbal has to buy',
    's',
    's',
    positive,
    '1.5 s',
  ],
]);

const massFacts = facts('revision', 'Masses', 'mass', [
  ['weighed_mass', 'weighedMass', 'mass of the whole vehicle as weighed', 'kg', 'kg', positive, '1.862 kg'],
]);

const rotorFacts = facts('revision', 'Rotor and gimbal', 'rotor', [
  ['rotor_density', 'rotor/density', 'density of the rotor', 'kg/m³', 'kg/m³', positive, '7850 kg/m³'],
  [
    'rotor_yield_strength',
    'rotor/yieldStrength',
    'yield strength of the rotor',
    'Pa',
    'MPa',
    positive,
    '250 MPa',
  ],
  [
    'rotor_poisson_ratio',
    'rotor/poissonRatio',
    'Poisson ratio of the rotor',
    '1',
    '1',
    { from: 0, to: 0.5 },
    '0.29',
  ],
  [
    'rotor_speed',
    'rotor/largestSpeed',
    'largest working speed of the rotor',
    'rad/s',
    'rpm',
    notNegative,
    '8500 rpm',
  ],
  [
    'motor_speed_constant',
    'rotor/motorSpeedConstant',
    'speed constant of the spin motor',
    'rad/(s·V)',
    'rpm/V',
    positive,
    '920 rpm/V',
  ],
]);

const gimbalFacts = facts('revision', 'Rotor and gimbal', 'gimbal', [
  [
    'gimbal_travel',
    'gimbal/travel',
    'travel of the gimbal to each side',
    'rad',
    '°',
    { above: 0, to: Math.PI / 2 },
    '±45°',
  ],
  [
    'gimbal_inertia',
    'gimbal/inertia',
    'inertia of gimbal and rotor about the tilt axis',
    'kg·m²',
    'kg·m²',
    positive,
    '9e-4 kg·m²',
  ],
  [
    'gimbal_friction',
    'gimbal/friction',
    'viscous friction of the gimbal',
    'N·m·s/rad',
    'N·m·s/rad',
    notNegative,
    '0.005 N·m·s/rad',
  ],
  [
    'gimbal_centring',
    'gimbal/centring',
    'centring stiffness of the gimbal',
    'N·m/rad',
    'N·m/rad',
    anyValue,
    '0.03 N·m/rad',
    { blank: 0 },
  ],
]);

const ballastFacts = facts('revision', 'Ballast', 'ballast', [
  [
    'pivot_height',
    'ballast/pivotHeight',
    'height of the arm’s pivot',
    'm',
    'mm',
    anyValue,
    '180 mm',
    { drive: 'arm' },
  ],
  [
    'arm_length',
    'ballast/armLength',
    'length of the arm, pivot to ballast',
    'm',
    'mm',
    positive,
    '95 mm',
    { drive: 'arm' },
  ],
  [
    'arm_travel',
    'ballast/travel',
    'travel of the arm to each side',
    'rad',
    '°',
    { above: 0, to: Math.PI / 2 },
    '±45°',
    { drive: 'arm' },
  ],
  ['slide_height', 'ballast/height', 'height of the slide', 'm', 'mm', anyValue, '80 mm', { drive: 'slide' }],
  [
    'slide_travel',
    'ballast/travel',
    'travel of the slide to each side',
    'm',
    'mm',
    positive,
    '±60 mm',
    { drive: 'slide' },
  ],
]);

const actuatorFacts = facts('revision', 'Ballast', 'actuator', [
  [
    'actuator_stall_moment',
    'actuator/stallMoment',
    'stall moment of the actuator',
    'N·m',
    'N·m',
    positive,
    '1.8 N·m',
    { drive: 'arm' },
  ],
  [
    'actuator_stall_force',
    'actuator/stallForce',
    'stall force of the actuator',
    'N',
    'N',
    positive,
    '40 N',
    { drive: 'slide' },
  ],
  [
    'actuator_no_load_speed',
    'actuator/noLoadSpeed',
    'no-load speed of the actuator',
    'rad/s',
    '°/s',
    positive,
    '400 °/s',
    { onSlide: { unit: 'm/s', display: 'm/s', example: '0.4 m/s' } },
  ],
  [
    'actuator_natural_frequency',
    'actuator/naturalFrequency',
    'natural frequency of the actuator',
    'rad/s',
    'rad/s',
    positive,
    '32 rad/s',
  ],
  [
    'actuator_damping_ratio',
    'actuator/dampingRatio',
    'damping ratio of the actuator',
    '1',
    '1',
    positive,
    '0.85',
  ],
]);

const loopFacts = facts('revision', 'Loop', 'loop', [
  [
    'lean_gain',
    'loop/leanGain',
    'gain on the lean',
    '1',
    '1',
    anyValue,
    '4.2',
    { onSlide: { unit: 'm/rad', display: 'm/rad', example: '0.95 m/rad' } },
  ],
  [
    'rate_gain',
    'loop/rateGain',
    'gain on the lean rate',
    's',
    's',
    anyValue,
    '0.3 s',
    { onSlide: { unit: 'm·s/rad', display: 'm·s/rad', example: '0.04 m·s/rad' } },
  ],
  [
    'gimbal_gain',
    'loop/gimbalGain',
    'gain on the gimbal tilt',
    '1',
    '1',
    anyValue,
    '0.5',
    { blank: 0, onSlide: { unit: 'm/rad', display: 'm/rad', example: '0.14 m/rad' } },
  ],
  ['sample_time', 'loop/sampleTime', 'sample time of the loop', 's', 'ms', positive, '5 ms'],
  [
    'loop_delay',
    'loop/delay',
    'delay of the loop (computing and actuator frame)',
    's',
    'ms',
    notNegative,
    '18 ms',
  ],
  ['sensor_lag', 'loop/sensorLag', 'lag of the lean sensor', 's', 'ms', notNegative, '8 ms'],
]);

const packFacts = facts('revision', 'Power', 'pack', [
  [
    'cells_in_series',
    'pack/cellsInSeries',
    'cells in series',
    '1',
    '1',
    { from: 1, to: 40 },
    '3',
    { kind: 'count' },
  ],
  ['pack_capacity', 'pack/capacity', 'capacity of the pack', 'C', 'A·h', positive, '2200 mA·h'],
  [
    'pack_resistance',
    'pack/resistance',
    'resistance of the pack with its leads',
    'Ω',
    'mΩ',
    notNegative,
    '45 mΩ',
  ],
  [
    'pack_largest_current',
    'pack/largestCurrent',
    'largest continuous current of the pack',
    'A',
    'A',
    positive,
    '40 A',
  ],
  ['pack_mean_current', 'pack/meanCurrent', 'mean current over a run', 'A', 'A', positive, '3.5 A'],
  ['pack_peak_current', 'pack/peakCurrent', 'peak current', 'A', 'A', positive, '18 A'],
  ['usable_share', 'pack/usableShare', 'usable share of the capacity', '1', '%', share, '80 %'],
  ['fuse_rating', 'pack/fuseRating', 'rating of the fuse', 'A', 'A', positive, '25 A'],
]);

/** The one list of every physical input field apart from the mass table and the rotor's sections. */
export const factSpecs: readonly FactSpec[] = [
  ...requirementFacts,
  ...massFacts,
  ...rotorFacts,
  ...gimbalFacts,
  ...ballastFacts,
  ...actuatorFacts,
  ...loopFacts,
  ...packFacts,
];

/** Arm or slide; undefined while nobody has said how the ballast moves. */
export function driveFamily(revision: Pick<Revision, 'ballast'>): DriveFamily | undefined {
  const kind = revision.ballast?.kind;
  return kind === undefined ? undefined : kind === 'slide' ? 'slide' : 'arm';
}

/** Whether the field belongs to the kind of ballast drive that the revision has. */
export function factApplies(spec: FactSpec, revision: Pick<Revision, 'ballast'>): boolean {
  return spec.drive === undefined || spec.drive === driveFamily(revision);
}

/** The field with the units that the revision's ballast drive gives it. An undescribed drive reads as an arm. */
export function resolveFact(spec: FactSpec, revision: Pick<Revision, 'ballast'>): FactSpec {
  return spec.onSlide && driveFamily(revision) === 'slide' ? { ...spec, ...spec.onSlide } : spec;
}
