/** The running rotor against published examples: balance, spin-up, coast-down, and its shake in a sampled loop. */
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';
import { rpm, turns } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009';
const SPINDLE = 'data sheet of a maker of cutting tools on balancing: G 6.3, 2 kg, 10 000 rev/min';

const UNBALANCE_FORMULA =
  'ISO 21940-11 formula U = 9549 G m / n, constant from memory; product by independent computation';

const unbalance = through('rotor.permissible-unbalance', 'unbalance');
const coastDownTime = through('rotor.coast-down-time', 'time');
const drag = through('rotor.drag', 'moment');
const spinUpTime = through('rotor.spin-up', 'time');
const GRAM_MILLIMETRES = 1e6;

const gradeUnbalance = (grade: number, rotorMass: number, speed: number): number =>
  GRAM_MILLIMETRES * unbalance({ grade: grade / 1000, rotorMass, speed: rpm(speed) });

/** Deceleration of a flywheel that friction alone stops evenly. */
const evenStop = (inertia: number, speed: number, time: number): number =>
  drag({ inertia, constantTerm: speed / time, linearTerm: 0, squareTerm: 0, speed });

const fittedDrag = (output: string): number => {
  const times = Array.from({ length: 61 }, (_, i) => 2 * i);
  // 890 rad/s coasting under 1.2 + 0.004 Ω + 6e-6 Ω², each reading from the closed form of the motion.
  const q = Math.sqrt(4 * 1.2 * 6e-6 - 0.004 ** 2);
  const start = Math.atan((0.004 + 2 * 6e-6 * 890) / q);
  const speeds = times.map((time) => (q * Math.tan(start - (q * time) / 2) - 0.004) / (2 * 6e-6));
  return through('rotor.coast-down-fit', output)({ times, speeds });
};

const motorSpinUp = {
  inertia: 5e-4,
  toSpeed: 890,
  voltage: 11.1,
  resistance: 0.12,
  torqueConstant: 0.0106,
  currentLimit: 25,
  drag: 0.004,
};

function aliasInHertz(frequency: number, sampleTime: number): number {
  return through('rotor.alias', 'alias')({ speed: turns(frequency), sampleTime }) / (2 * Math.PI);
}

export const rotorRunningChecks: readonly MechanicsCheck[] = [
  {
    id: 'permissible unbalance of a tool',
    source: SPINDLE,
    status: 'read',
    what: 'U, g·mm',
    printed: '12',
    computed: () => gradeUnbalance(6.3, 2, 10_000),
  },
  {
    id: 'permissible unbalance of a tool, per kilogram',
    source: SPINDLE,
    status: 'read',
    what: 'U/m, g·mm/kg',
    printed: '6',
    computed: () =>
      GRAM_MILLIMETRES *
      through(
        'rotor.permissible-unbalance',
        'eccentricity',
      )({
        grade: 0.0063,
        rotorMass: 2,
        speed: rpm(10_000),
      }),
  },
  ...(
    [
      ['6.3', 0.3, 10_000, '1.80'],
      ['6.3', 0.3, 20_000, '0.90'],
      ['2.5', 0.3, 20_000, '0.36'],
    ] as const
  ).map(
    ([grade, mass, speed, printed]): MechanicsCheck => ({
      id: `unbalance, ${mass} kg, G ${grade}, ${speed} rev/min`,
      source: UNBALANCE_FORMULA,
      status: 'independent',
      what: 'U, g·mm',
      printed,
      computed: () => gradeUnbalance(Number(grade), mass, speed),
    }),
  ),
  {
    id: 'eccentricity of a wheel with 180 g·mm',
    source: 'a balancing-machine maker’s page (2013): 6 kg, 180 g·mm, 5000 rev/min',
    status: 'read',
    what: 'e, µm',
    printed: '30',
    computed: () =>
      1e6 *
      through(
        'rotor.balance-grade',
        'eccentricity',
      )({
        unbalance: 180e-6,
        rotorMass: 6,
        speed: rpm(5000),
      }),
  },
  {
    id: 'grade of a wheel with 180 g·mm',
    source: 'the same page; grade by independent computation, just inside G 16',
    status: 'independent',
    what: 'G, mm/s',
    printed: '15.708',
    computed: () =>
      1000 * through('rotor.balance-grade', 'grade')({ unbalance: 180e-6, rotorMass: 6, speed: rpm(5000) }),
  },
  {
    id: 'counterweight of a flywheel',
    source: 'Gobby, Solutions to Problems in Applied Mechanics, ch. 3, example 1',
    status: 'companion',
    what: 'weight at 18 in against 2000 lbf that are 0.01 in off, lbf',
    printed: '1.11',
    computed: () => through('rotor.correction-mass', 'mass')({ unbalance: 2000 * 0.01, radius: 18 }),
  },
  {
    id: 'shake of that flywheel',
    source: 'the same flywheel at 600 rev/min, g 32.2; independent computation',
    status: 'independent',
    what: 'force, lbf',
    printed: '204.3',
    computed: () =>
      through('rotor.unbalance-force', 'force')({ unbalance: ((2000 / 32.2) * 0.01) / 12, speed: rpm(600) }),
  },
  {
    id: 'shake of a reciprocating part',
    source:
      'T. Bevan, The Theory of Machines, 3rd ed., ch. 14, example 5 (half of 150 lb at 7.5 in, 300 rev/min)',
    status: 'companion',
    what: 'force, g 32.2, cut to whole pounds as printed, lbf',
    printed: '1436',
    computed: () =>
      Math.floor(
        through('rotor.unbalance-force', 'force')({ unbalance: ((75 / 32.2) * 7.5) / 12, speed: rpm(300) }),
      ),
  },
  {
    id: 'flywheel spun up in 6 s',
    source: `${OSUP}, section 10.8, problem`,
    status: 'read',
    what: 'inertia that 2000 N·m bring to 1000 rev/min in 6.0 s, kg·m²',
    printed: '114.6',
    computed: () =>
      solveRising((inertia) => spinUpTime({ inertia, toSpeed: rpm(1000), moment: 2000 }), 6, 1, 1000),
  },
  {
    id: 'flywheel of 2500 kg',
    source: `${KHURMI}, example 3.1`,
    status: 'companion',
    what: 'work of 1500 N·m in 10 s from rest, kJ',
    printed: '45',
    computed: () => {
      const spinUp = { inertia: 2500, moment: 1500 };
      const toSpeed = solveRising((speed) => spinUpTime({ ...spinUp, toSpeed: speed }), 10, 0.1, 100);
      return through('rotor.spin-up', 'work')({ ...spinUp, toSpeed }) / 1e3;
    },
  },
  {
    id: 'wheel sped up to 20 rad/s',
    source: `${OSUP}, section 10.7`,
    status: 'read',
    what: 'moment that brings 4.0 kg·m² there in 10 s, N·m',
    printed: '8.0',
    computed: () =>
      1 /
      solveRising((inverse) => spinUpTime({ inertia: 4, toSpeed: 20, moment: 1 / inverse }), 10, 1e-3, 10),
  },
  {
    id: 'flywheel against a friction of 0.07 N·m',
    source: 'an exchange on a question page: 50 kg, k 0.3 m, 120 rad/s in 14 s',
    status: 'read',
    what: 'moment of the motor, N·m',
    printed: '38.64',
    computed: () =>
      1 /
      solveRising(
        (inverse) => spinUpTime({ inertia: 4.5, toSpeed: 120, moment: 1 / inverse, drag: 0.07 }),
        14,
        1e-3,
        1,
      ),
  },
  {
    id: 'spin-up at a constant power',
    source: `${OSUP}, section 10.8: work and energy of the flywheel of 114.6 kg·m² at 1000 rev/min; independent computation`,
    status: 'independent',
    what: 'time at 104 700 W, half of the time at the constant moment that ends with twice that power, s',
    printed: '6.00',
    computed: () =>
      through(
        'rotor.spin-up-at-power',
        'time',
      )({
        inertia: 114.592,
        toSpeed: rpm(1000),
        power: 104_720,
      }),
  },
  {
    id: 'spin-up by a motor, time',
    source:
      'independent computation: the equation of motion integrated numerically, relative tolerance 1e-12',
    status: 'independent',
    what: 'time of the handbook’s example, s',
    printed: '1.78457',
    computed: () => through('rotor.spin-up-by-motor', 'time')(motorSpinUp),
  },
  {
    id: 'spin-up by a motor, energy',
    source: 'independent computation: the same integration',
    status: 'independent',
    what: 'energy out of the supply, J',
    printed: '325.247',
    computed: () => through('rotor.spin-up-by-motor', 'energy')(motorSpinUp),
  },
  {
    id: 'flywheel stopped in two minutes',
    source: `${OSUP}, section 10.7, problem`,
    status: 'read',
    what: 'drag of 100 kg·m² from 500 rev/min, N·m',
    printed: '43.6',
    computed: () => evenStop(100, rpm(500), 120),
  },
  {
    id: 'merry-go-round stopped in 20 s',
    source: `${OSUP}, section 10.7, check your understanding`,
    status: 'read',
    what: 'drag of 30 kg·m² from 20 rev/s, N·m',
    printed: '188.5',
    computed: () => evenStop(30, turns(20), 20),
  },
  {
    id: 'coast-down with all three terms',
    source: 'independent computation: numerical integral of 1/(a + bΩ + cΩ²)',
    status: 'independent',
    what: 'time of the handbook’s example, s',
    printed: '266.09939',
    computed: () =>
      coastDownTime({ constantTerm: 1.2, linearTerm: 0.004, squareTerm: 6e-6, fromSpeed: 890, toSpeed: 10 }),
  },
  {
    id: 'fitted coast-down, dry friction',
    source: 'independent: readings every 2 s computed from a = 1.2 rad/s², b = 0.004 1/s, c = 6e-6 1/rad',
    status: 'independent',
    what: 'a, rad/s²',
    printed: '1.20',
    computed: () => fittedDrag('constantTerm'),
  },
  {
    id: 'fitted coast-down, grease',
    source: 'independent: the same readings',
    status: 'independent',
    what: 'b, 1/s',
    printed: '0.0040',
    computed: () => fittedDrag('linearTerm'),
  },
  {
    id: 'fitted coast-down, air',
    source: 'independent: the same readings',
    status: 'independent',
    what: 'c, 1/rad',
    printed: '6.0e-6',
    computed: () => fittedDrag('squareTerm'),
  },
  {
    id: 'alias of 60 Hz at 90 Hz',
    source: 'a worked question on aliasing: |n f_s − f|',
    status: 'read',
    what: 'alias, Hz',
    printed: '30',
    computed: () => aliasInHertz(60, 1 / 90),
  },
  {
    id: 'alias of 16 Hz at 8 Hz',
    source: 'a worked question on aliasing: |n f_s − f|',
    status: 'read',
    what: 'alias, Hz',
    printed: '0',
    computed: () => aliasInHertz(16, 1 / 8),
  },
  {
    id: 'alias of 1 Hz sampled every 0.6 s',
    source: 'Durant, EE3032 lecture, winter 2019–2020, aliasing example (2/3)',
    status: 'read',
    what: 'alias, Hz',
    printed: '0.666667',
    computed: () => aliasInHertz(1, 0.6),
  },
];
