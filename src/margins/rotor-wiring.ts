/** Wiring of the rotor and of its gimbal: inertia, speeds, stress, and the time that the spin buys. */
import {
  figure,
  type ListFeed,
  type Row,
  withCentredGimbal,
  withFreeGimbal,
  withGimballedRotor,
  withRotor,
} from './wiring-row.ts';

const rotor = figure('rotor');
const gimbal = figure('gimbal');

const OUTER_DIAMETERS: ListFeed = { each: 'section', of: 'outer_diameter' };
const BORE_DIAMETERS: ListFeed = { each: 'section', of: 'bore_diameter' };

export const rotorRows: readonly Row[] = [
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

export const gimbalStopTime = gimbal(
  'gimbal_stop_time',
  'time to the gimbal stop from the lean to recover from',
  's',
);
const slowTime = gimbal('slow_toppling_time', 'toppling time constant with the rotor', 's');

export const gyroRows: readonly Row[] = [
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
    gives: { time: gimbalStopTime },
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
