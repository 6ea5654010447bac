/** Shafts, bars, joints and drops against published examples. */
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';
import { degrees, rpm, weightAt } from './units.ts';

const JINDAL = 'U. C. Jindal, Machine Design, 2010';
const GERE = 'J. M. Gere, Mechanics of Materials';
const BEER = 'Beer & Johnston, Mechanics of Materials';
const BORESI = 'Boresi & Schmidt, Advanced Mechanics of Materials, example 4.3';
const BROWN = 'Brown University, ENGN0310 course notes, torsion, problem 1';
const SHIGLEY = 'Shigley’s Mechanical Engineering Design, 9th ed., example 8–7';
const DROP_TABLE = `${GERE}, 7th ed., solution of problem 9.10-1`;
const FALLING = 'a worked example on impact loads: 10 kg fall 12 mm on a beam of 1 kN per 5 mm, g 9.81';

const torsion = through('shaft.torsion', 'outerStress');
const requiredDiameter = through('shaft.required-diameter', 'diameter');
const normal = through('shaft.stress', 'normalStress');
const shear = through('shaft.stress', 'shearStress');
const dropFactor = through('load.drop', 'factor');

const jindal = { bendingMoment: 32, torsion: 47, diameter: 0.02 };
const gere = { bendingMoment: 0, torsion: 2400, axialForce: 125e3, diameter: 0.05 };
const plane = (output: string, x: number, y: number, xy: number): number =>
  through('stress.plane', output)({ firstStress: x, secondStress: y, shearStress: xy });

/** Force over weight for a fall of h over the static deflection. */
const factorOf = (ratio: number): number => {
  const weight = 9.80665;
  return dropFactor({ mass: 1, height: ratio, stiffness: weight });
};
/** The falling mass of the worked example with its g: weight and stiffness stand as there. */
const falling = (output: string): number =>
  through('load.drop', output)({ mass: 10 * weightAt(9.81), height: 0.012, stiffness: 200e3 });

const bracket = {
  alongs: [-0.075, 0.075, -0.075, 0.075],
  acrosses: [-0.06, -0.06, 0.06, 0.06],
  forceAlong: 0,
  forceAcross: -16e3,
  moment: -16e3 * 0.425,
  boltDiameter: Math.sqrt((4 * 144e-6) / Math.PI),
};

/** Bending stress in a square wooden beam of 3 m under 20 kN that fall 1.0 mm on its middle. */
const woodenBeam = (side: number): number => {
  const section = { width: side, height: side };
  const secondMoment = through('bar.rectangle', 'secondMoment')(section);
  // A beam on two supports is two cantilevers of half its length, each under half the load: 16 times as stiff as one of 3 m.
  const stiffness =
    16 * through('arm.stiffness', 'stiffness')({ elasticModulus: 12e9, secondMoment, length: 3 });
  const mass = 20e3 / 9.80665;
  const force = through('load.drop', 'force')({ mass, height: 0.001, stiffness });
  const modulus = through('bar.rectangle', 'modulus')(section);
  return through('bar.bending', 'stress')({ bendingMoment: (force * 3) / 4, modulus });
};

export const structureChecks: readonly MechanicsCheck[] = [
  {
    id: 'shaft under alternating bending, bending stress',
    source: `${JINDAL}, example 15-7; recomputed`,
    status: 'independent',
    what: '32 N·m on 20 mm, MPa',
    printed: '40.744',
    computed: () => normal(jindal) / 1e6,
  },
  {
    id: 'shaft under alternating bending, shear stress',
    source: `${JINDAL}, example 15-7; recomputed`,
    status: 'independent',
    what: '47 N·m on 20 mm, MPa',
    printed: '29.921',
    computed: () => shear(jindal) / 1e6,
  },
  {
    id: 'shaft under alternating bending, equivalent stress',
    source: `${JINDAL}, example 15-7; by independent computation`,
    status: 'independent',
    what: 'von Mises, MPa',
    printed: '65.923',
    computed: () => through('shaft.stress', 'vonMises')(jindal) / 1e6,
  },
  {
    id: 'shaft under alternating bending',
    source: `${JINDAL}, example 15-7`,
    status: 'companion',
    what: 'factor of safety against 75 MPa alternating and 165 MPa steady',
    printed: '1.75',
    computed: () => 1 / Math.hypot(normal(jindal) / 75e6, shear(jindal) / 165e6),
  },
  {
    id: 'shaft of 4 in in torsion',
    source: 'mathalino, strength of materials, problem 304: 15 kip·ft; answer of a second page',
    status: 'read',
    what: 'shear stress, ksi',
    printed: '14.32',
    computed: () => torsion({ moment: 15 * 12, diameter: 4 }),
  },
  {
    id: 'shaft of 4 in in torsion, twist',
    source:
      'mathalino, strength of materials, problem 304: 4 in, 3 ft, 15 kip·ft, G 12e6 psi; answer of a second page',
    status: 'read',
    what: 'twist, °',
    printed: '1.23',
    computed: () =>
      degrees(
        through('shaft.twist', 'twist')({ moment: 15e3 * 12, diameter: 4, length: 36, shearModulus: 12e6 }),
      ),
  },
  {
    id: 'shaft for 16 × 746 W at 3000 rev/min',
    source: `${JINDAL}, example 15-3`,
    status: 'companion',
    what: 'diameter for 100 MPa, mm',
    printed: '12.46',
    computed: () =>
      1000 * requiredDiameter({ bendingMoment: 0, torsion: (16 * 746) / rpm(3000), shearStress: 100e6 }),
  },
  {
    id: 'shaft for 16 × 746 W at 3000 rev/min, with a notch',
    source: `${JINDAL}, example 15-3`,
    status: 'companion',
    what: 'diameter with a stress concentration of 1.196, mm',
    printed: '13.23',
    computed: () =>
      1000 *
      requiredDiameter({
        bendingMoment: 0,
        torsion: (16 * 746) / rpm(3000),
        shearStress: 100e6,
        torsionFactor: 1.196,
      }),
  },
  {
    id: 'shaft in bending and torsion with shock',
    source: `${JINDAL}, example 15-5`,
    status: 'companion',
    what: 'diameter for 208.96 N·m and 5 kW at 300 rev/min, factors 1.5 and 2, 60 MPa, mm',
    printed: '33.6',
    computed: () =>
      1000 *
      requiredDiameter({
        bendingMoment: 208.96,
        torsion: 5000 / rpm(300),
        shearStress: 60e6,
        bendingFactor: 1.5,
        torsionFactor: 2,
      }),
  },
  {
    id: 'shaft in torsion and tension, largest',
    source: `${GERE}, example 8.4`,
    status: 'companion',
    what: 'principal stress of 50 mm under 2400 N·m and 125 kN, MPa',
    printed: '134.6662',
    computed: () => plane('largest', normal(gere), 0, shear(gere)) / 1e6,
  },
  {
    id: 'shaft in torsion and tension, least',
    source: `${GERE}, example 8.4`,
    status: 'companion',
    what: 'principal stress, MPa',
    printed: '-71.00421',
    computed: () => plane('least', normal(gere), 0, shear(gere)) / 1e6,
  },
  {
    id: 'shaft in torsion and tension, shear',
    source: `${GERE}, example 8.4`,
    status: 'companion',
    what: 'largest shear stress, MPa',
    printed: '102.8352',
    computed: () => plane('shear', normal(gere), 0, shear(gere)) / 1e6,
  },
  {
    id: 'shaft in torsion and tension, Tresca',
    source: `${GERE}, example 8.4: twice the shear stress`,
    status: 'companion',
    what: 'half of the equivalent stress by Tresca, MPa',
    printed: '102.8352',
    computed: () => through('shaft.stress', 'tresca')(gere) / 2e6,
  },
  {
    id: 'tube of 40/60 mm, moment',
    source: `${BEER}, example 3.01`,
    status: 'companion',
    what: 'moment for 120 MPa, kN·m',
    printed: '4.084070',
    computed: () =>
      solveRising((moment) => torsion({ moment, diameter: 0.06, bore: 0.04 }), 120e6, 0, 1e5) / 1e3,
  },
  {
    id: 'tube of 40/60 mm, bore',
    source: `${BEER}, example 3.01`,
    status: 'companion',
    what: 'shear stress at the bore under 4.08407 kN·m, MPa',
    printed: '80.0',
    computed: () =>
      through('shaft.torsion', 'innerStress')({ moment: 4084.07, diameter: 0.06, bore: 0.04 }) / 1e6,
  },
  {
    id: 'tube of 90/120 mm',
    source: `${BEER}, sample problem 3.1`,
    status: 'companion',
    what: 'shear stress under 20 kN·m, MPa',
    printed: '86.2',
    computed: () => torsion({ moment: 20e3, diameter: 0.12, bore: 0.09 }) / 1e6,
  },
  {
    id: 'plane stress, Tresca',
    source: BORESI,
    status: 'companion',
    what: 'factor of safety of (100, −14, 50) MPa against 300 MPa',
    printed: '1.98',
    computed: () => 300e6 / plane('tresca', 100e6, -14e6, 50e6),
  },
  {
    id: 'plane stress, von Mises',
    source: BORESI,
    status: 'companion',
    what: 'factor of safety of (100, −14, 50) MPa against 300 MPa',
    printed: '2.17',
    computed: () => 300e6 / plane('vonMises', 100e6, -14e6, 50e6),
  },
  {
    id: 'shaft of 30 mm, polar moment',
    source: BROWN,
    status: 'read',
    what: 'twice the moment about a diameter, 1e-8 m⁴',
    printed: '7.95216',
    computed: () => 2e8 * through('bar.tube', 'secondMoment')({ diameter: 0.03 }),
  },
  {
    id: 'shaft of 30 mm, twist',
    source: BROWN,
    status: 'read',
    what: 'twist of 0.4 m under 250 N·m, G 77 GPa, rad',
    printed: '0.0163314',
    computed: () =>
      through('shaft.twist', 'twist')({ moment: 250, diameter: 0.03, length: 0.4, shearModulus: 77e9 }),
  },
  ...(
    [
      [0, '2.00'],
      [2.5, '3.45'],
      [7.5, '5.00'],
      [10, '5.58'],
    ] as const
  ).map(
    ([ratio, printed]): MechanicsCheck => ({
      id: `falling weight, h/δ = ${ratio}`,
      source: DROP_TABLE,
      status: 'read',
      what: 'stress over static stress',
      printed,
      computed: () => factorOf(ratio),
    }),
  ),
  {
    id: 'falling weight on a wooden beam',
    source: `${GERE}, 7th ed., solution of problem 9.10-4`,
    status: 'read',
    what: 'side of a square section of 3 m for 10 MPa under 20 kN that fall 1.0 mm, E 12 GPa, m',
    printed: '0.2804',
    computed: () => 1 / solveRising((inverse) => woodenBeam(1 / inverse), 10e6, 1, 10),
  },
  {
    id: 'falling mass of 10 kg, force',
    source: FALLING,
    status: 'read',
    what: 'equivalent static load, kN',
    printed: '0.791',
    computed: () => falling('force') / 1e3,
  },
  {
    id: 'falling mass of 10 kg, deflection',
    source: `${FALLING}; rounded to 4 mm there`,
    status: 'read',
    what: 'largest deflection, mm',
    printed: '4',
    computed: () => 1e3 * falling('deflection'),
  },
  {
    id: 'falling pendulum',
    source: 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009, example 4.8',
    status: 'companion',
    what: 'speed 1.2 m from the pivot after 60° of fall, 1.05 m to the centre, 20 swings in 43.5 s, g 9.81, m/s',
    printed: '3.47',
    computed: () => {
      const period = (43.5 / 20) * Math.sqrt(9.81 / 9.80665);
      const rollInertia = through('swing.inertia', 'aboutAxis')({ mass: 30, distance: 1.05, period });
      const stiffness = 30 * 1.05 * 9.80665;
      const rate = through('load.fall-over', 'rate')({ stiffness, rollInertia, toLean: Math.PI / 3 });
      // The inertia stands for the source's g; its ratio to the stiffness carries it into the rate.
      return 1.2 * rate * Math.sqrt(9.81 / 9.80665) ** 2;
    },
  },
  {
    id: 'axle loads of a car',
    source: 'OpenStax, University Physics Volume 1, example 12.1, read backwards',
    status: 'read',
    what: 'share of the weight on the front axle, centre 1.3 m ahead of the rear one of 2.5 m',
    printed: '0.52',
    computed: () =>
      through('load.axles', 'frontLoad')({ totalMass: 1, position: 1.3, wheelbase: 2.5 }) / 9.80665,
  },
  {
    id: 'four bolts of a bracket, force',
    source: SHIGLEY,
    status: 'read',
    what: 'load of the worst bolt under 16 kN 425 mm off the centre, kN',
    printed: '21.0',
    computed: () => through('joint.bolt-group', 'force')(bracket) / 1e3,
  },
  {
    id: 'four bolts of a bracket, stress',
    source: SHIGLEY,
    status: 'read',
    what: 'shear stress on 144 mm², MPa',
    printed: '146',
    computed: () => through('joint.bolt-group', 'stress')(bracket) / 1e6,
  },
  {
    id: 'four bolts of a bracket, moment alone',
    source: SHIGLEY,
    status: 'read',
    what: 'load of each bolt by the moment of 6800 N·m, kN',
    printed: '17.7',
    computed: () => through('joint.bolt-group', 'force')({ ...bracket, forceAcross: 0 }) / 1e3,
  },
  {
    id: 'M10 tightened dry',
    source: 'two engineering pages on bolt preload, 30 N·m with K 0.20',
    status: 'read',
    what: 'preload, kN',
    printed: '15',
    computed: () =>
      through('joint.bolt-preload', 'preload')({ tighteningMoment: 30, nutFactor: 0.2, boltDiameter: 0.01 }) /
      1e3,
  },
  {
    id: 'M12 of class 8.8',
    source: 'an engineering page on bolt preload: 70 % of 580 MPa on 84.3 mm², K 0.2',
    status: 'read',
    what: 'tightening moment, N·m',
    printed: '82',
    computed: () => {
      const preload = through('joint.bolt-preload', 'preload');
      return solveRising(
        (tighteningMoment) => preload({ tighteningMoment, nutFactor: 0.2, boltDiameter: 0.012 }),
        0.7 * 580 * 84.3,
        0,
        1000,
      );
    },
  },
  {
    id: 'cantilever without a mass at its tip',
    source:
      'first root of cos x cosh x = −1, 1.8751² = 3.5160 (table of beams, from memory); Rayleigh’s shape gives 1.5 % more',
    status: 'memory',
    what: 'frequency by the formula over the exact one',
    printed: '1.015',
    computed: () => {
      const stiffness = through(
        'arm.stiffness',
        'stiffness',
      )({ elasticModulus: 1, secondMoment: 1, length: 1 });
      return through('arm.frequency', 'frequency')({ stiffness, tipMass: 0, armMass: 1 }) / 3.516;
    },
  },
];
