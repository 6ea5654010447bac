/** What a prototype has to reach: the facts of its page of requirements. */
import { facts } from './fact-row.ts';
import { lessThanRightAngle, positive, type Range } from './field.ts';

const factor: Range = { from: 1 };

export const requirementFacts = facts('prototype', 'Requirements', 'requirements', [
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
