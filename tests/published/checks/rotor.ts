/** Rotors against published examples: inertia, stress, energy and the speeds that they are judged at. */
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';
import { rpm, turns } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009';
const UGURAL = 'Ugural & Fenster, Advanced Strength and Applied Elasticity, 2nd ed. 1981';
const JINDAL = 'U. C. Jindal, Machine Design, 2010';
const BORESI = 'Boresi & Schmidt, Advanced Mechanics of Materials, example 11.8';
const rotorEnergy = through('rotor.energy', 'energy');
const rotorInertia = through('rotor.inertia', 'inertia');
const peakStress = through('rotor.peak-stress', 'stress');
const ringStress = through('rotor.ring-stress', 'stress');
const disc = (diameter: number, bore = 0) => ({ outerDiameters: [diameter], boreDiameters: [bore] });

/** Solid disc of 30 mm steel that has a given inertia: its diameter. */
const discOfInertia = (inertia: number): number =>
  solveRising(
    (diameter) => rotorInertia({ ...disc(diameter), thicknesses: [0.03], density: 7800 }),
    inertia,
    0.01,
    5,
  );

/** Steel disc of 600 mm with a bore of 200 mm. */
const boresi = { outerDiameter: 0.6, boreDiameter: 0.2, density: 7850 };
const THIN = 1 - 1e-9;

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
];
