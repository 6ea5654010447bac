/** Wiring of the mass table and of the ballast: sums, toppling, and what the ballast can hold. */
import type { FigureSpec } from './figure.ts';
import { figure, type ListFeed, onArm, onSlide, type Row } from './wiring-row.ts';

const mass = figure('mass');
const ballast = figure('ballast');
const requirement = figure('requirements');

const ALL_MASSES: ListFeed = { each: 'part', of: 'mass' };
const OTHER_MASSES: ListFeed = { each: 'part but the ballast', of: 'mass' };

export const massRows: readonly Row[] = [
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

export const ballastRows: readonly Row[] = [
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
