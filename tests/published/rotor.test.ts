/** Rotors against published examples: inertia, momentum, energy, speed and the stress of spinning discs. */
import { describe, it } from 'vitest';
import {
  judgedSpeed,
  rimSpeed,
  rodInertiaAcrossAxis,
  rollInertia,
  rotorEnergy,
  rotorInertia,
  rotorPeakStress,
  runawaySpeed,
  spinMomentum,
  tubeInertiaAlongAxis,
} from '../../src/mechanics/index.ts';
import { expectPrinted, type PublishedCheck, solveRising } from './printed.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009 (textbook companion)';
const UGURAL =
  'Ugural & Fenster, Advanced Strength and Applied Elasticity, 2nd ed. 1981 (textbook companion)';
const JINDAL = 'U. C. Jindal, Machine Design, 2010 (textbook companion)';

const rpm = (speed: number): number => (speed * Math.PI) / 30;

const disc = (diameter: number, bore = 0) => ({ outerDiameters: [diameter], boreDiameters: [bore] });

/** Radius of gyration and mass, as textbooks give a flywheel. */
const flywheel = (mass: number, radiusOfGyration: number): number => mass * radiusOfGyration ** 2;

/** Four blades, rods of 50 kg and 4.00 m, about their ends. */
const fourBlades =
  4 *
  rollInertia({
    masses: [50],
    lefts: [2],
    heights: [0],
    ownInertias: [rodInertiaAcrossAxis({ mass: 50, length: 4 })],
  });

/** Couple of a rotor whose axis is turned at a rate: momentum times rate. */
const couple = (inertia: number, speed: number, turnRate: number): number =>
  spinMomentum({ inertia, speed }) * turnRate;

/** Solid disc of 30 mm steel that has a given inertia: its diameter. */
const discOfInertia = (inertia: number): number =>
  solveRising(
    (diameter) => rotorInertia({ ...disc(diameter), thicknesses: [0.03], density: 7800 }).inertia,
    inertia,
    0.01,
    5,
  );

/** Ring as thin as the numbers allow. */
const thinRing = (meanDiameter: number, density: number, speed: number): number =>
  rotorPeakStress({ ...disc(meanDiameter, meanDiameter * (1 - 1e-9)), density, poissonRatio: 0.3, speed });

const checks: readonly PublishedCheck[] = [
  {
    id: 'disc sized by its inertia',
    source: `${JINDAL}, example 19-5`,
    what: 'radius of a steel disc 30 mm thick with 6.4458 kg·m², m',
    printed: '0.364',
    computed: () => discOfInertia(6.4458) / 2,
  },
  {
    id: 'disc sized by its inertia, stress',
    source: `${JINDAL}, example 19-5`,
    what: 'peak stress at 250 rev/min, MPa',
    printed: '0.29',
    computed: () =>
      rotorPeakStress({ ...disc(0.728), density: 7800, poissonRatio: 0.3, speed: rpm(250) }) / 1e6,
  },
  {
    id: 'bored disc',
    source: `${UGURAL}, example 8.4c`,
    what: 'peak hoop stress of a steel disc 0.5 m, bore 0.1 m, at 6900 rev/min, Pa',
    printed: '211764600.73',
    computed: () =>
      rotorPeakStress({ ...disc(0.5, 0.1), density: 7800, poissonRatio: 0.3, speed: rpm(6900) }),
  },
  {
    id: 'thin rim',
    source: `${KHURMI}, example 16.14`,
    what: 'mean diameter for 7 MPa in cast iron at 800 rev/min, m',
    printed: '0.744',
    computed: () => solveRising((diameter) => thinRing(diameter, 7200, rpm(800)), 7e6, 0.1, 5),
  },
  {
    id: 'thin steel ring',
    source: 'Strength of materials, problem 140, peripheral velocity; statement seen, answer from memory',
    what: 'speed for 150 MPa at a radius of 220 mm, rad/s',
    printed: '628.33',
    computed: () => solveRising((speed) => thinRing(0.44, 7850, speed), 150e6, 1, 1e4),
  },
  {
    id: 'abrasive wheel',
    source: 'Shigley, Mechanical Engineering Design, problem 3-101; from memory',
    what: 'peak stress of a wheel 250 mm, bore 20 mm, at 2000 rev/min, MPa',
    printed: '1.85',
    computed: () =>
      rotorPeakStress({ ...disc(0.25, 0.02), density: 3320, poissonRatio: 0.24, speed: rpm(2000) }) / 1e6,
  },
  {
    id: 'a small hole doubles the stress',
    source: 'E. J. Hearn, Mechanics of Materials 2, ch. 4 (statement)',
    what: 'ratio of bored to solid',
    printed: '2.000',
    computed: () => {
      const rest = { density: 7850, poissonRatio: 0.3, speed: 1000 };
      return rotorPeakStress({ ...disc(0.1, 1e-4), ...rest }) / rotorPeakStress({ ...disc(0.1), ...rest });
    },
  },
  {
    id: 'disc and ring, energy',
    source: `${OSUP}, section 10.4, problem`,
    what: 'energy of 0.315 kg·m² at 10 rev/s, J',
    printed: '621.8',
    computed: () => rotorEnergy({ inertia: 0.315, speed: 20 * Math.PI }),
  },
  {
    id: 'helicopter blades, inertia',
    source: `${OSUP}, example 10.9`,
    what: 'inertia of four rods of 50 kg and 4.00 m about their ends, kg·m²',
    printed: '1067',
    computed: () => fourBlades,
  },
  {
    id: 'helicopter blades, energy',
    source: `${OSUP}, example 10.9`,
    what: 'energy at 300 rev/min, J',
    printed: '5.26e5',
    computed: () => rotorEnergy({ inertia: fourBlades, speed: rpm(300) }),
  },
  {
    id: 'grindstone',
    source: `${OSUP}, section 10.8, problem`,
    what: 'energy of 10 kg, R 0.12 m at 157.1 rad/s, J',
    printed: '888.5',
    computed: () =>
      rotorEnergy({ inertia: tubeInertiaAlongAxis({ mass: 10, diameter: 0.24, bore: 0 }), speed: 157.1 }),
  },
  {
    id: 'flywheel of a nuclear laboratory',
    source: `${OSUP}, section 10.4, check your understanding`,
    what: 'energy of 800 kg·m² at 4.0 rev/s, J',
    printed: '2.53e5',
    computed: () => rotorEnergy({ inertia: 800, speed: 8 * Math.PI }),
  },
  {
    id: 'flywheel of 2500 kg',
    source: `${KHURMI}, example 3.1`,
    what: 'energy after 10 s at 0.6 rad/s², kJ',
    printed: '45',
    computed: () => rotorEnergy({ inertia: flywheel(2500, 1), speed: 6 }) / 1e3,
  },
  {
    id: 'gyroscopic couple, aeroplane',
    source: `${KHURMI}, example 14.3`,
    what: 'couple of 400 kg, k 0.3 m, 2400 rev/min in a turn of 50 m at 200 km/h, kN·m',
    printed: '10.053',
    computed: () => couple(flywheel(400, 0.3), rpm(2400), 200 / 3.6 / 50) / 1e3,
  },
  {
    id: 'gyroscopic couple, ship pitching at 1 rad/s',
    source: `${KHURMI}, example 14.5`,
    what: 'couple of 750 kg, k 0.25 m, 1500 rev/min, kN·m',
    printed: '7.363',
    computed: () => couple(flywheel(750, 0.25), rpm(1500), 1) / 1e3,
  },
  {
    id: 'gyroscopic couple, ship steering',
    source: `${KHURMI}, example 14.6`,
    what: 'couple of 3500 kg, k 0.45 m, 3000 rev/min on 100 m at 36 km/h, kN·m',
    printed: '22.27',
    computed: () => couple(flywheel(3500, 0.45), rpm(3000), 10 / 100) / 1e3,
  },
  {
    id: 'gyroscopic couple, ship pitching',
    source: `${KHURMI}, example 14.7`,
    what: 'couple of 20 t, k 0.6 m, 2000 rev/min, ±6° in 30 s, kN·m',
    printed: '33.073',
    computed: () =>
      couple(flywheel(20e3, 0.6), rpm(2000), ((6 * Math.PI) / 180) * ((2 * Math.PI) / 30)) / 1e3,
  },
  {
    id: 'mono-rail car of 1909',
    source:
      'Wonder Book of Knowledge on Brennan’s car: wheels of 3.5 ft at 3000 rev/min; independent computation',
    what: 'rim speed, m/s',
    printed: '168',
    computed: () => rimSpeed({ outerDiameters: [3.5 * 0.3048], speed: rpm(3000) }),
  },
  {
    id: 'no-load speed of a motor',
    source: 'Motor constants, encyclopaedia example: 5700 rpm/V at 11.1 V',
    what: 'speed, rev/min',
    printed: '63270',
    computed: () => runawaySpeed({ speedConstant: rpm(5700), cells: 3, cellFullVoltage: 3.7 }) / rpm(1),
  },
  {
    id: 'overspeed of an aero engine rotor',
    source: '14 CFR 33.27: 120 % of the highest permitted speed',
    what: 'stress at the judged speed over that at the working speed',
    printed: '1.44',
    computed: () => {
      const rotor = { ...disc(0.1, 0.01), density: 8490, poissonRatio: 0.31 };
      const judged = judgedSpeed({ largestSpeed: 900, overspeedFactor: 1.2 });
      return rotorPeakStress({ ...rotor, speed: judged }) / rotorPeakStress({ ...rotor, speed: 900 });
    },
  },
];

describe('rotors as published', () => {
  it.each(checks)('$id: $what, $printed ($source)', ({ computed, printed }) => {
    expectPrinted(computed(), printed);
  });
});
