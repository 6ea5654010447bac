/** Wiring of what drives the ballast: actuator, control loop, pack. */
import type { FigureSpec } from './figure.ts';
import type { Situation } from './situation.ts';
import { figure, onArm, onSlide, type Row, withGimballedRotor } from './wiring-row.ts';

const actuator = figure('actuator');
const loop = figure('loop');
const pack = figure('pack');

const stopToStop = actuator('stop_to_stop_time', 'time of the ballast from stop to stop', 's', 'ms');

export const actuatorRows: readonly Row[] = [
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

export const packRows: readonly Row[] = [
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

const gainMarginUp = loop('gain_margin_up', 'factor by which all gains may rise', '1');
const gainMarginDown = loop('gain_margin_down', 'factor to which all gains may fall', '1');
const delayMargin = loop('delay_margin', 'delay that may be added to the loop', 's', 'ms');
const peakSensitivity = loop('peak_sensitivity', 'largest amplification of a disturbance', '1');
const gainDownFactor = loop('gain_margin_down_factor', 'factor by which all gains may be divided', '1');

/** What a requirement on the loop is held against, which waits for the loop to be described. */
export const loopFigures: readonly FigureSpec[] = [
  gainMarginUp,
  gainMarginDown,
  gainDownFactor,
  delayMargin,
  peakSensitivity,
];

/** The same margins for every kind of vehicle; what is not there takes the calculation's default, nought. */
function loopRow(
  drive: (situation: Situation) => boolean,
  gimballed: boolean,
  commandToOffset: Row['inputs'],
): Row {
  return {
    calculation: 'loop.margins',
    when: (situation) => situation.loop && drive(situation) && withGimballedRotor(situation) === gimballed,
    inputs: {
      firstMoment: 'first_moment',
      rollInertia: 'roll_inertia',
      ballastMass: 'ballast_mass',
      ballastHeight: 'ballast_height_centred',
      ...commandToOffset,
      ...(gimballed
        ? {
            spinMomentum: 'spin_momentum',
            gimbalInertia: 'gimbal_inertia',
            gimbalFriction: 'gimbal_friction',
            gimbalCentring: 'gimbal_centring',
            gimbalGain: 'gimbal_gain',
          }
        : {}),
      naturalFrequency: 'actuator_natural_frequency',
      dampingRatio: 'actuator_damping_ratio',
      sensorLag: 'sensor_lag',
      sampleTime: 'sample_time',
      delay: 'loop_delay',
      leanGain: 'lean_gain',
      rateGain: 'rate_gain',
      rateSource: 'rate_source',
    },
    gives: { gainMarginUp, gainMarginDown, delayMargin, peakSensitivity },
  };
}

export const loopRows: readonly Row[] = [
  ...[false, true].flatMap((gimballed) => [
    loopRow(onArm, gimballed, { commandToOffset: 'arm_length' }),
    loopRow(onSlide, gimballed, {}),
  ]),
  {
    calculation: 'margin.gain-down-factor',
    when: (situation) => situation.loop && situation.drive !== undefined,
    inputs: { gainMarginDown: 'gain_margin_down' },
    gives: { factor: gainDownFactor },
  },
];
