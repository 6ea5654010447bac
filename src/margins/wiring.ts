/**
 * Which calculation gives which figures, from which names, and when it applies. One row a figure family; a
 * calculation is added to the program's figures by adding a row. Nothing here computes.
 *
 * Where two rows give the same figure, their conditions exclude one another. A figure whose rows all do not
 * apply is absent from the assessment, save those in `undecided.ts`, which wait for a choice.
 */
import type { FigureGroup, FigureSpec } from './figure.ts';
import type { Situation } from './situation.ts';

/** What is taken for each part or section, in the order of the table. */
export type ListFeed =
  | { readonly each: 'part' | 'part but the ballast'; readonly of: PartColumn }
  | { readonly each: 'section'; readonly of: SectionColumn };
export type PartColumn = 'mass' | 'forward' | 'left' | 'height' | 'own_inertia';
export type SectionColumn = 'outer_diameter' | 'bore_diameter' | 'thickness';

/** A figure's name; or one that is left to the calculation's default while it is unknown; or a list. */
export type Feed = string | { readonly ifKnown: string } | ListFeed;

export interface Row {
  readonly calculation: string;
  readonly when?: (situation: Situation) => boolean;
  /** Input of the calculation → what feeds it. Inputs that are left out take the calculation's default. */
  readonly inputs: Readonly<Record<string, Feed>>;
  /** Output of the calculation → the figure made from it. */
  readonly gives: Readonly<Record<string, FigureSpec>>;
}

const figure =
  (group: FigureGroup) =>
  (name: string, title: string, unit: string, display: string = unit): FigureSpec => ({
    name,
    title,
    unit,
    display,
    group,
  });
const mass = figure('mass');
const ballast = figure('ballast');
const actuator = figure('actuator');
const rotor = figure('rotor');
const gimbal = figure('gimbal');
const loop = figure('loop');
const pack = figure('pack');
const requirement = figure('requirements');

const onArm = ({ drive }: Situation): boolean => drive === 'arm';
const onSlide = ({ drive }: Situation): boolean => drive === 'slide';
const withRotor = (situation: Situation): boolean => situation.rotor;
const withGimballedRotor = (situation: Situation): boolean => situation.rotor && situation.gimbal;
const withFreeGimbal = (situation: Situation): boolean => withGimballedRotor(situation) && !situation.centred;
const withCentredGimbal = (situation: Situation): boolean =>
  withGimballedRotor(situation) && situation.centred;

const ALL_MASSES: ListFeed = { each: 'part', of: 'mass' };
const OTHER_MASSES: ListFeed = { each: 'part but the ballast', of: 'mass' };
const OUTER_DIAMETERS: ListFeed = { each: 'section', of: 'outer_diameter' };
const BORE_DIAMETERS: ListFeed = { each: 'section', of: 'bore_diameter' };

const massRows: readonly Row[] = [
  {
    calculation: 'mass.total',
    inputs: { masses: ALL_MASSES },
    gives: { totalMass: mass('total_mass', 'total mass of the parts', 'kg') },
  },
  {
    calculation: 'mass.first-moment',
    inputs: { masses: ALL_MASSES, heights: { each: 'part', of: 'height' } },
    gives: { firstMoment: mass('first_moment', 'first moment about the ground line', 'kg·m') },
  },
  {
    calculation: 'mass.first-moment',
    inputs: { masses: OTHER_MASSES, heights: { each: 'part but the ballast', of: 'height' } },
    gives: { firstMoment: mass('rest_first_moment', 'first moment without the ballast', 'kg·m') },
  },
  {
    calculation: 'mass.centre-of-gravity',
    inputs: { masses: ALL_MASSES, positions: { each: 'part', of: 'height' } },
    gives: { position: mass('cg_height', 'height of the centre of gravity', 'm', 'mm') },
  },
  {
    calculation: 'mass.centre-of-gravity',
    inputs: { masses: ALL_MASSES, positions: { each: 'part', of: 'forward' } },
    gives: {
      position: mass('cg_forward', 'centre of gravity forward of the rear contact point', 'm', 'mm'),
    },
  },
  {
    calculation: 'mass.centre-of-gravity',
    inputs: { masses: ALL_MASSES, positions: { each: 'part', of: 'left' } },
    gives: { position: mass('cg_left', 'centre of gravity to the left of the centre line', 'm', 'mm') },
  },
  {
    calculation: 'mass.roll-inertia',
    inputs: {
      masses: ALL_MASSES,
      lefts: { each: 'part', of: 'left' },
      heights: { each: 'part', of: 'height' },
      ownInertias: { each: 'part', of: 'own_inertia' },
    },
    gives: { rollInertia: mass('roll_inertia', 'roll inertia about the roll axis', 'kg·m²') },
  },
  {
    calculation: 'mass.roll-inertia',
    inputs: {
      masses: OTHER_MASSES,
      lefts: { each: 'part but the ballast', of: 'left' },
      heights: { each: 'part but the ballast', of: 'height' },
      ownInertias: { each: 'part but the ballast', of: 'own_inertia' },
    },
    gives: { rollInertia: mass('rest_roll_inertia', 'roll inertia without the ballast', 'kg·m²') },
  },
  {
    calculation: 'mass.toppling',
    inputs: { firstMoment: 'first_moment', rollInertia: 'roll_inertia' },
    gives: {
      stiffness: mass('toppling_stiffness', 'toppling stiffness', 'N·m/rad'),
      timeConstant: mass('toppling_time', 'toppling time constant without the rotor', 's', 'ms'),
    },
  },
];

const heightCentred = ballast('ballast_height_centred', 'height of the centred ballast', 'm', 'mm');
const offsetAtLimit = ballast('ballast_offset_max', 'largest offset of the ballast', 'm', 'mm');
const heightAtLimit = ballast('ballast_height_at_limit', 'height of the ballast at its limit', 'm', 'mm');
/** Where the ballast is, which waits for the kind of drive to be chosen. */
export const heightsOfBallast: readonly FigureSpec[] = [heightCentred, offsetAtLimit, heightAtLimit];

const arm = { pivotHeight: 'pivot_height', armLength: 'arm_length', direction: 'arm_direction' };

const ballastRows: readonly Row[] = [
  {
    calculation: 'ballast.arm-position',
    when: onArm,
    inputs: { ...arm, angle: 'arm_angle_centred' },
    gives: { height: heightCentred },
  },
  {
    calculation: 'ballast.slide-position',
    when: onSlide,
    inputs: { slideHeight: 'slide_height', travel: 'slide_offset_centred' },
    gives: { height: heightCentred },
  },
  {
    calculation: 'ballast.arm-position',
    when: onArm,
    inputs: { ...arm, angle: 'arm_travel' },
    gives: { offset: offsetAtLimit, height: heightAtLimit },
  },
  {
    calculation: 'ballast.slide-position',
    when: onSlide,
    inputs: { slideHeight: 'slide_height', travel: 'slide_travel' },
    gives: { offset: offsetAtLimit, height: heightAtLimit },
  },
  {
    calculation: 'ballast.righting-moment',
    inputs: { ballastMass: 'ballast_mass', ballastOffset: 'ballast_offset_max' },
    gives: { moment: ballast('righting_moment', 'largest righting moment, vehicle upright', 'N·m') },
  },
  {
    calculation: 'ballast.largest-lean',
    inputs: {
      ballastMass: 'ballast_mass',
      ballastOffset: 'ballast_offset_max',
      ballastHeight: 'ballast_height_at_limit',
      firstMomentWithout: 'rest_first_moment',
    },
    gives: { lean: ballast('largest_lean', 'largest lean that the ballast can hold', 'rad', '°') },
  },
  {
    calculation: 'ballast.largest-lean-by-hand',
    inputs: {
      rightingMoment: 'righting_moment',
      totalMass: 'total_mass',
      centreOfGravityHeight: 'cg_height',
    },
    gives: { lean: ballast('largest_lean_by_hand', 'largest lean as worked by hand', 'rad', '°') },
  },
  {
    calculation: 'ballast.lateral-limit',
    inputs: { largestLean: 'largest_lean' },
    gives: { acceleration: ballast('lateral_limit', 'static limit of lateral acceleration', 'm/s²') },
  },
  {
    calculation: 'ballast.turn-radius',
    inputs: { lateralAcceleration: 'lateral_limit', speed: 'turn_speed' },
    gives: { radius: ballast('smallest_turn_radius', 'smallest turn radius at that speed', 'm') },
  },
  {
    calculation: 'ballast.turn-acceleration',
    inputs: { speed: 'turn_speed', radius: 'required_turn_radius' },
    gives: { acceleration: requirement('turn_acceleration', 'lateral acceleration in the turn', 'm/s²') },
  },
  {
    calculation: 'ballast.cross-slope',
    inputs: { largestLean: 'largest_lean', reserve: 'disturbance_reserve' },
    gives: { slope: ballast('cross_slope_held', 'steepest cross slope that is held', 'rad', '°') },
  },
];

const rotorRows: readonly Row[] = [
  {
    calculation: 'rotor.inertia',
    when: withRotor,
    inputs: {
      outerDiameters: OUTER_DIAMETERS,
      boreDiameters: BORE_DIAMETERS,
      thicknesses: { each: 'section', of: 'thickness' },
      density: 'rotor_density',
    },
    gives: {
      inertia: rotor('rotor_inertia', 'inertia of the rotor about its axis', 'kg·m²'),
      mass: rotor('rotor_mass', 'mass of the rotor from its sections', 'kg'),
    },
  },
  {
    calculation: 'rotor.momentum',
    when: withRotor,
    inputs: { inertia: 'rotor_inertia', speed: 'rotor_speed' },
    gives: { spinMomentum: rotor('spin_momentum', 'spin momentum of the rotor', 'N·m·s') },
  },
  {
    calculation: 'rotor.energy',
    when: withRotor,
    inputs: { inertia: 'rotor_inertia', speed: 'rotor_speed' },
    gives: { energy: rotor('rotor_energy', 'energy of the rotor at its working speed', 'J') },
  },
  {
    calculation: 'rotor.rim-speed',
    when: withRotor,
    inputs: { outerDiameters: OUTER_DIAMETERS, speed: 'rotor_speed' },
    gives: { rimSpeed: rotor('rotor_rim_speed', 'rim speed at the working speed', 'm/s') },
  },
  {
    calculation: 'rotor.runaway-speed',
    when: withRotor,
    inputs: {
      speedConstant: 'motor_speed_constant',
      cells: 'cells_in_series',
      cellFullVoltage: 'cell_full_voltage',
    },
    gives: { speed: rotor('runaway_speed', 'speed that the rotor could run away to', 'rad/s', 'rpm') },
  },
  {
    calculation: 'rotor.judged-speed',
    when: withRotor,
    inputs: {
      largestSpeed: 'rotor_speed',
      runawaySpeed: { ifKnown: 'runaway_speed' },
      overspeedFactor: 'overspeed_factor',
    },
    gives: { speed: rotor('judged_speed', 'speed that the rotor is judged at', 'rad/s', 'rpm') },
  },
  {
    calculation: 'rotor.peak-stress',
    when: withRotor,
    inputs: {
      outerDiameters: OUTER_DIAMETERS,
      boreDiameters: BORE_DIAMETERS,
      density: 'rotor_density',
      poissonRatio: 'rotor_poisson_ratio',
      speed: 'judged_speed',
    },
    gives: {
      stress: rotor('rotor_peak_stress', 'peak stress of the rotor at the judged speed', 'Pa', 'MPa'),
    },
  },
];

const slowTime = gimbal('slow_toppling_time', 'toppling time constant with the rotor', 's');

const gyroRows: readonly Row[] = [
  {
    calculation: 'gyro.nutation',
    when: withGimballedRotor,
    inputs: {
      spinMomentum: 'spin_momentum',
      rollInertia: 'roll_inertia',
      gimbalInertia: 'gimbal_inertia',
    },
    gives: { frequency: gimbal('nutation_frequency', 'nutation frequency', 'rad/s') },
  },
  {
    calculation: 'gyro.slow-toppling',
    when: withFreeGimbal,
    inputs: {
      spinMomentum: 'spin_momentum',
      stiffness: 'toppling_stiffness',
      gimbalInertia: 'gimbal_inertia',
      gimbalFriction: 'gimbal_friction',
    },
    gives: { timeConstant: slowTime },
  },
  {
    calculation: 'gyro.centred-toppling',
    when: withCentredGimbal,
    inputs: {
      spinMomentum: 'spin_momentum',
      stiffness: 'toppling_stiffness',
      gimbalFriction: 'gimbal_friction',
      centring: 'gimbal_centring',
    },
    gives: { timeConstant: slowTime },
  },
  {
    calculation: 'gyro.time-gain',
    when: withGimballedRotor,
    inputs: { slowTime: 'slow_toppling_time', topplingTime: 'toppling_time' },
    gives: { ratio: gimbal('rotor_time_gain', 'times longer that the rotor makes the fall', '1') },
  },
  {
    calculation: 'gyro.time-to-stop-from-lean',
    when: withGimballedRotor,
    inputs: {
      spinMomentum: 'spin_momentum',
      gimbalTravel: 'gimbal_travel',
      stiffness: 'toppling_stiffness',
      lean: 'required_lean',
      slowTime: 'slow_toppling_time',
    },
    gives: { time: gimbal('gimbal_stop_time', 'time to the gimbal stop from the lean to recover from', 's') },
  },
  {
    calculation: 'gyro.time-to-stop',
    when: withGimballedRotor,
    inputs: { spinMomentum: 'spin_momentum', gimbalTravel: 'gimbal_travel', moment: 'righting_moment' },
    gives: {
      time: gimbal(
        'gimbal_stop_time_constant_moment',
        'time to the gimbal stop under the righting moment held constant',
        's',
      ),
    },
  },
];

const stopToStop = actuator('stop_to_stop_time', 'time of the ballast from stop to stop', 's', 'ms');

const actuatorRows: readonly Row[] = [
  {
    calculation: 'actuator.arm-holding-moment',
    when: onArm,
    inputs: {
      ballastMass: 'ballast_mass',
      armLength: 'arm_length',
      direction: 'arm_direction',
      travel: 'arm_travel',
      lean: 'largest_lean',
    },
    gives: { moment: actuator('actuator_moment_needed', 'moment to hold the arm at its worst', 'N·m') },
  },
  {
    calculation: 'actuator.slide-holding-force',
    when: onSlide,
    inputs: { ballastMass: 'ballast_mass', lean: 'largest_lean' },
    gives: { force: actuator('actuator_force_needed', 'force to hold the slide at its worst', 'N') },
  },
  {
    calculation: 'actuator.stop-to-stop',
    when: onArm,
    inputs: { travel: 'arm_travel', noLoadSpeed: 'actuator_no_load_speed' },
    gives: { time: stopToStop },
  },
  {
    calculation: 'actuator.stop-to-stop',
    when: onSlide,
    inputs: { travel: 'slide_travel', noLoadSpeed: 'actuator_no_load_speed' },
    gives: { time: stopToStop },
  },
];

const packVoltage = (name: string, title: string, cellVoltage: string): Row => ({
  calculation: 'pack.voltage',
  inputs: { cells: 'cells_in_series', cellVoltage },
  gives: { voltage: pack(name, title, 'V') },
});

const packRows: readonly Row[] = [
  packVoltage('pack_full_voltage', 'voltage of the full pack', 'cell_full_voltage'),
  packVoltage('pack_nominal_voltage', 'nominal voltage of the pack', 'cell_nominal_voltage'),
  packVoltage('pack_rest_minimum_voltage', 'lowest voltage of the pack at rest', 'cell_rest_minimum_voltage'),
  packVoltage('pack_load_cut_voltage', 'voltage at which the load is cut', 'cell_load_cut_voltage'),
  {
    calculation: 'pack.energy',
    inputs: { capacity: 'pack_capacity', nominalVoltage: 'pack_nominal_voltage' },
    gives: { energy: pack('pack_energy', 'energy of the pack', 'J', 'W·h') },
  },
  {
    calculation: 'pack.c-rate',
    inputs: { current: 'pack_peak_current', capacity: 'pack_capacity' },
    gives: { rate: pack('pack_c_rate', 'discharge rate at the peak current', '1/s', '1/h') },
  },
  {
    calculation: 'pack.run-time',
    inputs: { capacity: 'pack_capacity', usableShare: 'usable_share', meanCurrent: 'pack_mean_current' },
    gives: { time: pack('run_time', 'run time on one charge', 's', 'min') },
  },
  {
    calculation: 'pack.sag',
    inputs: { current: 'pack_peak_current', resistance: 'pack_resistance' },
    gives: { voltage: pack('pack_sag', 'sag of the pack at the peak current', 'V') },
  },
];

const loopRows: readonly Row[] = [];
void loop;

export const wiring: readonly Row[] = [
  ...massRows,
  ...ballastRows,
  ...rotorRows,
  ...gyroRows,
  ...actuatorRows,
  ...packRows,
  ...loopRows,
];
