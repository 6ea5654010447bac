/** Motors, gears, screws and strokes against published examples. */
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';
import { radians, rpm } from './units.ts';

const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009';
const FITZGERALD = 'Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed. 2003';
const GUPTA = 'J. B. Gupta, Elements of Electric Drives';
const SHIGLEY = 'Shigley’s Mechanical Engineering Design, example 8–1';

const motorPower = through('motor.at-speed', 'power');
const raise = through('drive.lead-screw', 'raiseMoment');
const noLoad = { voltage: 50, current: 1.25, resistance: 1.03, speed: rpm(2100) };
const constantOf = (): number => through('motor.no-load-test', 'torqueConstant')(noLoad);

/** Power of bearings, brushes and iron in the run without load, W. */
const lossPower = (): number => through('motor.no-load-test', 'dragMoment')(noLoad) * noLoad.speed;

/** Speed of the machine that gives 100 W, on the falling side of its power. */
const speedAt100Watts = (voltage: number): number => {
  const motor = { voltage, resistance: 1.03, torqueConstant: 0.22 };
  const top = voltage / 0.22;
  return top - solveRising((slip) => motorPower({ ...motor, speed: top - slip }), 100, 0, top / 2);
};

/** Swing of 3° of a rod of 1.2 m pivoted 50 mm from its end. */
const rodSwing = (output: string): number => {
  const inertia = through('body.rod-across-axis', 'inertia')({ mass: 1, length: 1.2 });
  const period =
    through('swing.period', 'period')({ inertia, mass: 1, distance: 0.55 }) * Math.sqrt(9.80665 / 9.81);
  return through(
    'actuator.sine-demand',
    output,
  )({ amplitude: radians(3), frequency: (2 * Math.PI) / period });
};

const press = {
  force: 6400,
  meanDiameter: 0.03,
  lead: 0.008,
  friction: 0.08,
  collarDiameter: 0.04,
  collarFriction: 0.08,
};

export const driveChecks: readonly MechanicsCheck[] = [
  {
    id: 'servo of 0.15 s per 60°',
    source: 'common practice, no source: a quoted speed is without load',
    status: 'practice',
    what: 'time from stop to stop of ±45°, s',
    printed: '0.225',
    computed: () =>
      through('actuator.stop-to-stop', 'time')({ travel: radians(45), noLoadSpeed: radians(60) / 0.15 }),
  },
  {
    id: 'stroke that starts and stops',
    source:
      'OpenStax, University Physics Volume 1, section 10.2: uniform acceleration, 500 to 1500 rev/min in 120 s, as half a stroke',
    status: 'read',
    what: 'acceleration of a stroke of four times that half, rad/s²',
    printed: '0.87',
    computed: () => {
      // From rest to Δω in 120 s it covers Δω · 60 s; a stroke is twice that way, its travel to one side half of it.
      const travel = rpm(1000) * 60;
      return through('actuator.stroke-demand', 'acceleration')({ travel, time: 240 });
    },
  },
  {
    id: 'rod swinging by 3°, speed',
    source: `${KHURMI}, example 4.7`,
    status: 'companion',
    what: 'largest speed, rad/s',
    printed: '0.1871',
    computed: () => rodSwing('speed'),
  },
  {
    id: 'rod swinging by 3°, acceleration',
    source: `${KHURMI}, example 4.7`,
    status: 'companion',
    what: 'largest acceleration, rad/s²',
    printed: '0.669',
    computed: () => rodSwing('acceleration'),
  },
  {
    id: 'best gear between two shafts',
    source: `${KHURMI}, example 3.14`,
    status: 'companion',
    what: 'ratio for 2 and 32 kg·m²',
    printed: '4',
    computed: () =>
      through('gear.best-ratio', 'ratio')({ motorMoment: 100, motorInertia: 2, loadInertia: 32 }),
  },
  {
    id: 'best gear between two shafts, acceleration',
    source: `${KHURMI}, example 3.14`,
    status: 'companion',
    what: 'acceleration of the load under 100 N·m, rad/s²',
    printed: '6.25',
    computed: () =>
      through('gear.best-ratio', 'acceleration')({ motorMoment: 100, motorInertia: 2, loadInertia: 32 }),
  },
  {
    id: 'load behind a gear, inertia',
    source: `${GUPTA}, example 3`,
    status: 'companion',
    what: 'inertia at the motor of 0.4 and 10 kg·m² at 10:1, kg·m²',
    printed: '0.5',
    computed: () => geared('inertia'),
  },
  {
    id: 'load behind a gear, moment',
    source: `${GUPTA}, example 3`,
    status: 'companion',
    what: 'moment at the motor of 50 N·m at 10:1 and 90 %, N·m',
    printed: '5.556',
    computed: () => geared('moment'),
  },
  {
    id: 'machine at 50 V without load',
    source: `${FITZGERALD}, example 7.9`,
    status: 'companion',
    what: 'torque constant, V·s/rad',
    printed: '0.22',
    computed: constantOf,
  },
  {
    id: 'machine at 50 V without load, loss',
    source: `${FITZGERALD}, example 7.9`,
    status: 'companion',
    what: 'power of its own drag, W',
    printed: '61',
    computed: lossPower,
  },
  {
    id: 'machine at 48 V and 1700 rev/min',
    source: `${FITZGERALD}, example 7.9, with the constant rounded to 0.22 as there`,
    status: 'companion',
    what: 'power at the shaft, W',
    printed: '275.05',
    computed: () =>
      motorPower({
        voltage: 48,
        resistance: 1.03,
        torqueConstant: 0.22,
        speed: rpm(1700),
        dragMoment: lossPower() / rpm(1700),
      }),
  },
  {
    id: 'machine at 40 V giving 100 W',
    source: `${FITZGERALD}, ch. 11`,
    status: 'companion',
    what: 'speed, rad/s',
    printed: '169.2',
    computed: () => speedAt100Watts(40),
  },
  {
    id: 'machine at 50 V giving 100 W',
    source: `${FITZGERALD}, ch. 11`,
    status: 'companion',
    what: 'speed, rad/s',
    printed: '217.5',
    computed: () => speedAt100Watts(50),
  },
  {
    id: 'machine at 50 V under that load',
    source: `${FITZGERALD}, ch. 11, read through the moment`,
    status: 'companion',
    what: 'speed under 100 W / 217.488 rad/s, rad/s',
    printed: '217.5',
    computed: () =>
      through(
        'motor.at-load',
        'speed',
      )({ voltage: 50, resistance: 1.03, torqueConstant: 0.22, moment: 100 / 217.488 }),
  },
  {
    id: 'the same machine as a line',
    source: `${FITZGERALD}, ch. 11, read through stall and no-load`,
    status: 'companion',
    what: 'speed under the same load by the moment–speed line, rad/s',
    printed: '217.5',
    computed: () => {
      const stallMoment = through(
        'motor.stall',
        'moment',
      )({ voltage: 50, resistance: 1.03, torqueConstant: 0.22 });
      return through(
        'actuator.speed-at-load',
        'speed',
      )({ stallMoment, noLoadSpeed: 50 / 0.22, load: 100 / 217.488 });
    },
  },
  {
    id: 'the same machine as a line, at 40 V',
    source: `${FITZGERALD}, ch. 11, the line of 50 V lowered to 40 V`,
    status: 'companion',
    what: 'power at 169.244 rad/s by the moment–speed line, W',
    printed: '100',
    computed: () => {
      const stallMoment = through(
        'motor.stall',
        'moment',
      )({ voltage: 50, resistance: 1.03, torqueConstant: 0.22 });
      const moment = through(
        'actuator.moment-at-speed',
        'moment',
      )({ stallMoment, noLoadSpeed: 50 / 0.22, voltageRatio: 0.8, speed: 169.244 });
      return moment * 169.244;
    },
  },
  {
    id: 'torque constant of 1 rpm/V',
    source: 'SI identity K_t = 60/(2π k_v), Fitzgerald ch. 7; 9.5493 as encyclopaedias print it',
    status: 'read',
    what: 'K_t k_v, N·m/A · rpm/V',
    printed: '9.5493',
    computed: () => through('motor.torque-constant', 'torqueConstant')({ speedConstant: rpm(1) }),
  },
  {
    id: 'screw jack of 10 000 lb',
    source: 'a textbook of statics, section 5.6, problem 2: two threads an inch, 2 in, friction 0.2',
    status: 'read',
    what: 'moment that raises it, in·lb',
    printed: '2.84e3',
    computed: () => raise({ force: 10_000, meanDiameter: 2, lead: 0.5, friction: 0.2 }),
  },
  {
    id: 'press with a double square thread, raise',
    source: SHIGLEY,
    status: 'memory',
    what: 'moment that raises 6.4 kN, N·m',
    printed: '26.18',
    computed: () => raise(press),
  },
  {
    id: 'press with a double square thread, lower',
    source: SHIGLEY,
    status: 'memory',
    what: 'moment that lowers it, N·m',
    printed: '9.77',
    computed: () => through('drive.lead-screw', 'lowerMoment')(press),
  },
  {
    id: 'press with a double square thread, efficiency',
    source: SHIGLEY,
    status: 'memory',
    what: 'efficiency',
    printed: '0.311',
    computed: () => through('drive.lead-screw', 'efficiency')(press),
  },
  {
    id: 'screw of 70 % efficiency',
    source: 'a preparation page for engineering examinations, problem 516: 20 kN, lead 0.01 m',
    status: 'read',
    what: 'moment for 20 kN, N·m',
    printed: '45.5',
    computed: () => {
      const force = through('drive.screw-thrust', 'force');
      return solveRising((moment) => force({ moment, lead: 0.01, efficiency: 0.7 }), 20e3, 0, 1000);
    },
  },
];

function geared(output: string): number {
  return through(
    'gear.reflection',
    output,
  )({ motorInertia: 0.4, loadInertia: 10, loadMoment: 50, ratio: 10, efficiency: 0.9 });
}
