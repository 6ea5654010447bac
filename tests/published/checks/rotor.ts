/** Rotors against published examples: energy, stress, balance, spin-up, coast-down, whirling, fragments. */
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';
import { rpm, turns } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009';
const UGURAL = 'Ugural & Fenster, Advanced Strength and Applied Elasticity, 2nd ed. 1981';
const JINDAL = 'U. C. Jindal, Machine Design, 2010';
const BORESI = 'Boresi & Schmidt, Advanced Mechanics of Materials, example 11.8';
const DERIVED = 'independent computation from radii, mass and speed by elementary mechanics';
const SPINDLE = 'data sheet of a maker of cutting tools on balancing: G 6.3, 2 kg, 10 000 rev/min';
const UNBALANCE_FORMULA =
  'ISO 21940-11 formula U = 9549 G m / n, constant from memory; product by independent computation';

const rotorEnergy = through('rotor.energy', 'energy');
const rotorInertia = through('rotor.inertia', 'inertia');
const peakStress = through('rotor.peak-stress', 'stress');
const ringStress = through('rotor.ring-stress', 'stress');
const unbalance = through('rotor.permissible-unbalance', 'unbalance');
const coastDownTime = through('rotor.coast-down-time', 'time');
const drag = through('rotor.drag', 'moment');
const spinUpTime = through('rotor.spin-up', 'time');
const fragmentShare = through('rotor.fragment-energy', 'share');
const flightEnergy = through('rotor.fragment-energy', 'flightEnergy');
const whirling = through('shaft.whirling-of-disc', 'speed');

const disc = (diameter: number, bore = 0) => ({ outerDiameters: [diameter], boreDiameters: [bore] });

/** Solid disc of 30 mm steel that has a given inertia: its diameter. */
const discOfInertia = (inertia: number): number =>
  solveRising(
    (diameter) => rotorInertia({ ...disc(diameter), thicknesses: [0.03], density: 7800 }),
    inertia,
    0.01,
    5,
  );

const GRAM_MILLIMETRES = 1e6;
const gradeUnbalance = (grade: number, rotorMass: number, speed: number): number =>
  GRAM_MILLIMETRES * unbalance({ grade: grade / 1000, rotorMass, speed: rpm(speed) });

/** Steel disc of 600 mm with a bore of 200 mm. */
const boresi = { outerDiameter: 0.6, boreDiameter: 0.2, density: 7850 };

/** Deceleration of a flywheel that friction alone stops evenly. */
const evenStop = (inertia: number, speed: number, time: number): number =>
  drag({ inertia, constantTerm: speed / time, linearTerm: 0, squareTerm: 0, speed });

const burst = (outer: number, bore: number, mass: number, speed: number, pieces = 3) => ({
  mass,
  outerDiameter: (2 * outer) / 1000,
  boreDiameter: (2 * bore) / 1000,
  speed: rpm(speed),
  pieces,
});
const THIN = 1 - 1e-9;

/** Shaft of 1 in diameter and 31 in between bearings, pounds and inches; masses are weights over 386.1. */
const POUND = 1 / 386.1;
const gearShaft = { elasticModulus: 30e6, shaftDiameter: 1, shaftBore: 0, span: 31 };
const equivalentAtCentre = (weight: number, position: number): number => {
  const alone = whirling({ ...gearShaft, discMass: weight * POUND, position });
  const onePound = whirling({ ...gearShaft, discMass: POUND, position: 15.5 });
  return (onePound / alone) ** 2;
};

const fittedDrag = (output: string): number => {
  const times = Array.from({ length: 61 }, (_, i) => 2 * i);
  // 890 rad/s coasting under 1.2 + 0.004 Ω + 6e-6 Ω², each reading from the closed form of the motion.
  const q = Math.sqrt(4 * 1.2 * 6e-6 - 0.004 ** 2);
  const start = Math.atan((0.004 + 2 * 6e-6 * 890) / q);
  const speeds = times.map((time) => (q * Math.tan(start - (q * time) / 2) - 0.004) / (2 * 6e-6));
  return through('rotor.coast-down-fit', output)({ times, speeds });
};

export const rotorChecks: readonly MechanicsCheck[] = [
  {
    id: 'disc sized by its inertia',
    source: `${JINDAL}, example 19-5`,
    status: 'companion',
    what: 'radius of a steel disc 30 mm thick with 6.4458 kg·m², m',
    printed: '0.364',
    computed: () => discOfInertia(6.4458) / 2,
  },
  {
    id: 'disc sized by its inertia, stress',
    source: `${JINDAL}, example 19-5`,
    status: 'companion',
    what: 'peak stress at 250 rev/min, MPa',
    printed: '0.29',
    computed: () => peakStress({ ...disc(0.728), density: 7800, poissonRatio: 0.3, speed: rpm(250) }) / 1e6,
  },
  {
    id: 'bored disc',
    source: `${UGURAL}, example 8.4c`,
    status: 'companion',
    what: 'peak hoop stress of a steel disc 0.5 m, bore 0.1 m, at 6900 rev/min, Pa',
    printed: '211764600.73',
    computed: () => peakStress({ ...disc(0.5, 0.1), density: 7800, poissonRatio: 0.3, speed: rpm(6900) }),
  },
  {
    id: 'bored disc, hoop stress at the bore',
    source: `${UGURAL}, example 8.4c`,
    status: 'companion',
    what: 'the same from the distribution, Pa',
    printed: '211764600.73',
    computed: () =>
      through(
        'rotor.disc-stress',
        'hoopStress',
      )({
        outerDiameter: 0.5,
        boreDiameter: 0.1,
        density: 7800,
        poissonRatio: 0.3,
        speed: rpm(6900),
        radius: 0.05,
      }),
  },
  {
    id: 'bored disc, largest radial stress',
    source: `${UGURAL}, example 8.4c, recomputed at r = √(ab)`,
    status: 'independent',
    what: 'radial stress, MPa',
    printed: '67.1945',
    computed: () =>
      through(
        'rotor.disc-stress',
        'radialStress',
      )({
        outerDiameter: 0.5,
        boreDiameter: 0.1,
        density: 7800,
        poissonRatio: 0.3,
        speed: rpm(6900),
        radius: Math.sqrt(0.05 * 0.25),
      }) / 1e6,
  },
  {
    id: 'thin rim',
    source: `${KHURMI}, example 16.14`,
    status: 'companion',
    what: 'mean diameter for 7 MPa in cast iron at 800 rev/min, m',
    printed: '0.744',
    computed: () =>
      solveRising(
        (meanDiameter) => ringStress({ meanDiameter, density: 7200, speed: rpm(800) }),
        7e6,
        0.1,
        5,
      ),
  },
  {
    id: 'thin steel ring',
    source: 'Strength of materials, problem 140, peripheral velocity; statement seen, answer from memory',
    status: 'statement',
    what: 'speed for 150 MPa at a radius of 220 mm, rad/s',
    printed: '628.33',
    computed: () =>
      solveRising((speed) => ringStress({ meanDiameter: 0.44, density: 7850, speed }), 150e6, 1, 1e4),
  },
  {
    id: 'ring of 10 in, in pounds',
    source: 'Strength of materials, problem 139, peripheral velocity; statement seen, answer from memory',
    status: 'statement',
    what: 'speed for 30 ksi at 10 in, 490 lbf/ft³, g 32.2, rev/min',
    printed: '6105.5',
    computed: () =>
      solveRising(
        (speed) => ringStress({ meanDiameter: 20 / 12, density: 490 / 32.2, speed }),
        30e3 * 144,
        1,
        1e4,
      ) / rpm(1),
  },
  {
    id: 'thin limit of a bored disc',
    source: `${KHURMI}, example 16.14`,
    status: 'companion',
    what: 'mean diameter for 7 MPa by the stress of a disc nearly bored away, m',
    printed: '0.744',
    computed: () =>
      solveRising(
        (d) => peakStress({ ...disc(d, d * THIN), density: 7200, poissonRatio: 0.3, speed: rpm(800) }),
        7e6,
        0.1,
        5,
      ),
  },
  {
    id: 'abrasive wheel',
    source: 'Shigley, Mechanical Engineering Design, problem 3-101; from memory',
    status: 'memory',
    what: 'peak stress of a wheel 250 mm, bore 20 mm, at 2000 rev/min, MPa',
    printed: '1.85',
    computed: () =>
      peakStress({ ...disc(0.25, 0.02), density: 3320, poissonRatio: 0.24, speed: rpm(2000) }) / 1e6,
  },
  {
    id: 'a small hole doubles the stress',
    source: 'E. J. Hearn, Mechanics of Materials 2, ch. 4 (statement)',
    status: 'read',
    what: 'ratio of bored to solid',
    printed: '2.000',
    computed: () => {
      const rest = { density: 7850, poissonRatio: 0.3, speed: 1000 };
      return peakStress({ ...disc(0.1, 1e-4), ...rest }) / peakStress({ ...disc(0.1), ...rest });
    },
  },
  {
    id: 'first yield',
    source: BORESI,
    status: 'companion',
    what: 'speed at which a disc 600 mm, bore 200 mm, Y 620 MPa, ν 0.29 first yields, rad/s',
    printed: '1020.77',
    computed: () =>
      through('rotor.yield-speed', 'speed')({ ...boresi, yieldStrength: 620e6, poissonRatio: 0.29 }),
  },
  {
    id: 'fully plastic',
    source: BORESI,
    status: 'companion',
    what: 'speed at which its mean hoop stress reaches Y, rad/s',
    printed: '1350.05',
    computed: () => through('rotor.burst-estimate', 'speed')({ ...boresi, tensileStrength: 620e6, share: 1 }),
  },
  {
    id: 'mean hoop stress at the fully plastic speed',
    source: BORESI,
    status: 'companion',
    what: 'mean hoop stress at 1350.05 rad/s, MPa',
    printed: '620.00',
    computed: () => through('rotor.mean-hoop-stress', 'stress')({ ...boresi, speed: 1350.05 }) / 1e6,
  },
  {
    id: 'mean hoop stress of a solid disc',
    source:
      'an engineering reference page gives ρω²r²/3 for a rotating disc, which is the mean, not the peak',
    status: 'read',
    what: 'mean over ρω²r²',
    printed: '0.333',
    computed: () =>
      through(
        'rotor.mean-hoop-stress',
        'stress',
      )({ outerDiameter: 2, boreDiameter: 0, density: 1, speed: 1 }),
  },
  {
    id: 'disc and ring, energy',
    source: `${OSUP}, section 10.4, problem`,
    status: 'read',
    what: 'energy of 0.315 kg·m² at 10 rev/s, J',
    printed: '621.8',
    computed: () => rotorEnergy({ inertia: 0.315, speed: turns(10) }),
  },
  {
    id: 'helicopter blades, energy',
    source: `${OSUP}, example 10.9`,
    status: 'read',
    what: 'energy of 1067 kg·m² at 300 rev/min, J',
    printed: '5.26e5',
    computed: () => rotorEnergy({ inertia: 3200 / 3, speed: rpm(300) }),
  },
  {
    id: 'grindstone',
    source: `${OSUP}, section 10.8, problem`,
    status: 'read',
    what: 'energy of 10 kg, R 0.12 m at 157.1 rad/s, J',
    printed: '888.5',
    computed: () =>
      rotorEnergy({
        inertia: through('body.tube-along-axis', 'inertia')({ mass: 10, diameter: 0.24, bore: 0 }),
        speed: 157.1,
      }),
  },
  {
    id: 'flywheel of a nuclear laboratory',
    source: `${OSUP}, section 10.4, check your understanding`,
    status: 'read',
    what: 'energy of 800 kg·m² at 4.0 rev/s, J',
    printed: '2.53e5',
    computed: () => rotorEnergy({ inertia: 800, speed: turns(4) }),
  },
  {
    id: 'flywheel that closes a rivet',
    source: `${KHURMI}, example 3.3`,
    status: 'companion',
    what: 'drop of 140 kg·m² from 240 rev/min when it gives 6000 J, rev/min',
    printed: '16.9',
    computed: () => {
      const energy = (speed: number): number => rotorEnergy({ inertia: 140, speed: rpm(speed) });
      return 240 - solveRising(energy, energy(240) - 6000, 0, 240);
    },
  },
  {
    id: 'flywheel of a bus',
    source: 'OpenStax, College Physics 2e, ch. 10, problem on a bus of 10 t',
    status: 'read',
    what: 'speed of 1500 kg, R 0.6 m that drives it to 20.0 m/s at 90 %, rad/s',
    printed: '128',
    computed: () => {
      const inertia = through('body.cylinder-along-axis', 'inertia')({ mass: 1500, diameter: 1.2 });
      return solveRising((speed) => rotorEnergy({ inertia, speed }), (0.5 * 10_000 * 20 ** 2) / 0.9, 0, 1000);
    },
  },
  {
    id: 'mono-rail car of 1909',
    source:
      'Wonder Book of Knowledge on Brennan’s car: wheels of 3.5 ft at 3000 rev/min; independent computation',
    status: 'independent',
    what: 'rim speed, m/s',
    printed: '168',
    computed: () =>
      through('rotor.rim-speed', 'rimSpeed')({ outerDiameters: [3.5 * 0.3048], speed: rpm(3000) }),
  },
  {
    id: 'no-load speed of a motor',
    source: 'Motor constants, encyclopaedia example: 5700 rpm/V at 11.1 V',
    status: 'read',
    what: 'speed, rev/min',
    printed: '63270',
    computed: () =>
      through('rotor.runaway-speed', 'speed')({ speedConstant: rpm(5700), cells: 3, cellFullVoltage: 3.7 }) /
      rpm(1),
  },
  {
    id: 'overspeed of an aero engine rotor',
    source: '14 CFR 33.27: 120 % of the highest permitted speed',
    status: 'read',
    what: 'stress at the judged speed over that at the working speed',
    printed: '1.44',
    computed: () => {
      const rotor = { ...disc(0.1, 0.01), density: 8490, poissonRatio: 0.31 };
      const speed = through('rotor.judged-speed', 'speed')({ largestSpeed: 900, overspeedFactor: 1.2 });
      return peakStress({ ...rotor, speed }) / peakStress({ ...rotor, speed: 900 });
    },
  },
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
    id: 'time of that stop',
    source: `${OSUP}, section 10.7, problem, read backwards`,
    status: 'read',
    what: 'time to coast from 500 rev/min to rest, min',
    printed: '2.0',
    computed: () =>
      coastDownTime({
        constantTerm: rpm(500) / 120,
        linearTerm: 0,
        squareTerm: 0,
        fromSpeed: rpm(500),
        toSpeed: 0,
      }) / 60,
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
    id: 'rotor of 10 kg on a shaft of 30 mm, stiffness',
    source: 'GATE examination, question on a flexible rotor, with the solution of a question bank',
    status: 'read',
    what: 'stiffness, E 2.1e11 Pa, 500 mm between bearings, N/m',
    printed: '3206309',
    computed: () =>
      through(
        'shaft.whirling-of-disc',
        'stiffness',
      )({ discMass: 10, elasticModulus: 2.1e11, shaftDiameter: 0.03, span: 0.5, position: 0.25 }),
  },
  {
    id: 'rotor of 10 kg on a shaft of 30 mm, speed',
    source: 'GATE examination, question on a flexible rotor, with the solution of a question page',
    status: 'read',
    what: 'critical speed, Hz (90.11 there, from a deflection rounded to three digits)',
    printed: '90.1',
    computed: () =>
      whirling({ discMass: 10, elasticModulus: 2.1e11, shaftDiameter: 0.03, span: 0.5, position: 0.25 }) /
      (2 * Math.PI),
  },
  {
    id: 'gear of 35 lbf moved to the middle',
    source: 'Shigley’s Mechanical Engineering Design, 9th ed., example 7–5, figure 7–14',
    status: 'read',
    what: 'weight at the middle with the same critical speed, lbf',
    printed: '17.1',
    computed: () => equivalentAtCentre(35, 7),
  },
  {
    id: 'gear of 55 lbf moved to the middle',
    source:
      'Shigley’s Mechanical Engineering Design, 9th ed., example 7–5, figure 7–14 (46.1 there, from rounded coefficients)',
    status: 'read',
    what: 'weight at the middle with the same critical speed, lbf',
    printed: '46',
    computed: () => equivalentAtCentre(55, 20),
  },
  {
    id: 'both gears by Dunkerley’s rule',
    source:
      'Shigley’s Mechanical Engineering Design, 9th ed., example 7–5; statement read, answer from memory',
    status: 'statement',
    what: 'first critical speed, rad/s',
    printed: '120',
    computed: () =>
      through(
        'shaft.dunkerley',
        'speed',
      )({
        speeds: [
          whirling({ ...gearShaft, discMass: 35 * POUND, position: 7 }),
          whirling({ ...gearShaft, discMass: 55 * POUND, position: 20 }),
        ],
      }),
  },
  {
    id: 'shaft of 25 mm and 600 mm by itself',
    source:
      'Shigley’s Mechanical Engineering Design, problem 7–28 with E 207 GPa and 76.5 kN/m³; statement read, answer from memory',
    status: 'statement',
    what: 'lowest critical speed, rad/s',
    printed: '883',
    computed: () =>
      through(
        'shaft.whirling-of-shaft',
        'speed',
      )({ elasticModulus: 207e9, shaftDiameter: 0.025, span: 0.6, density: 76_500 / 9.81 }),
  },
  {
    id: 'stepped shaft with a flywheel of 400 N, by Rayleigh',
    source:
      'a worked example on a stepped shaft (E 200 GPa, I 0.3e-6 m⁴, 1 m): deflection 3 W L³/(256 E I) read there, speed by independent computation',
    status: 'independent',
    what: 'critical speed from that deflection, g 9.81, rev/min',
    printed: '3384',
    computed: () => {
      const deflection = (3 * 400) / (256 * 200e9 * 0.3e-6);
      const speed = through('shaft.rayleigh', 'speed')({ masses: [400 / 9.81], deflections: [deflection] });
      return (speed * Math.sqrt(9.81 / 9.80665)) / rpm(1);
    },
  },
  ...(
    [
      ['2 pieces of a disc', 0, 2, '0.3603'],
      ['3 pieces of a disc', 0, 3, '0.6079'],
      ['4 pieces of a disc', 0, 4, '0.7205'],
      ['6 pieces of a disc', 0, 6, '0.8106'],
      ['2 pieces of a thin ring', 50 * THIN, 2, '0.4053'],
      ['3 pieces of a thin ring', 50 * THIN, 3, '0.6839'],
      ['4 pieces of a thin ring', 50 * THIN, 4, '0.8106'],
      ['6 pieces of a thin ring', 50 * THIN, 6, '0.9119'],
    ] as const
  ).map(
    ([id, bore, pieces, printed]): MechanicsCheck => ({
      id: `flight share, ${id}`,
      source: DERIVED,
      status: 'independent',
      what: 'share of the energy of a piece that is flight',
      printed,
      computed: () => fragmentShare(burst(50, bore, 0.3, 10_000, pieces)),
    }),
  ),
  ...(
    [
      ['ring 0.30 kg, 50/40 mm, 10 000 rev/min', burst(50, 40, 0.3, 10_000), '77', '17'],
      ['disc 0.30 kg, 50 mm, 10 000 rev/min', burst(50, 0, 0.3, 10_000), '42', '9'],
      ['ring 0.30 kg, 40/30 mm, 20 000 rev/min', burst(40, 30, 0.3, 20_000), '186', '42'],
      ['ring 0.50 kg, 60/50 mm, 20 000 rev/min', burst(60, 50, 0.5, 20_000), '760', '173'],
    ] as const
  ).flatMap(([id, rotor, third, shields]): MechanicsCheck[] => [
    {
      id: `${id}: a third`,
      source: DERIVED,
      status: 'independent',
      what: 'energy of a third in flight, J',
      printed: third,
      computed: () => flightEnergy(rotor),
    },
    {
      id: `${id}: beside a face shield`,
      source: `${DERIVED}; ball test of ANSI Z87.1-2003`,
      status: 'independent',
      what: 'energy of a third over 4.4 J',
      printed: shields,
      computed: () => through('rotor.fragment-caution', 'ratio')({ flightEnergy: flightEnergy(rotor) }),
    },
  ]),
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
