/** Mass properties against published examples and measured data. Unit-free laws are checked in the source's units. */
import { describe, it } from 'vitest';
import {
  boxRollInertia,
  centreOfGravity,
  cylinderInertiaAcrossAxis,
  cylinderInertiaAlongAxis,
  firstMoment,
  rodInertiaAcrossAxis,
  rollInertia,
  standardGravity,
  toppling,
  totalMass,
  tubeInertiaAlongAxis,
} from '../../src/mechanics/index.ts';
import { expectPrinted, type PublishedCheck, solveRising } from './printed.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const SFTE = 'Society of Flight Test Engineers, Reference Handbook 2013, section 7.2';
const MEIJAARD = 'Meijaard, Papadopoulos, Ruina, Schwab, Proc. R. Soc. A 463 (2007), benchmark bicycle';
const MOORE = 'J. K. Moore, BicycleParameters, open data of measured bicycles';
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009';

/** A body swung about an axis: its own inertia plus the transfer, by the mass table's own sum. */
const about = (own: number, mass: number, distance: number): number =>
  rollInertia({ masses: [mass], lefts: [0], heights: [distance], ownInertias: [own] });

/**
 * Period of swing of a body hung from an axis. It has the same inertia and the same stiffness as a vehicle that stands
 * on that axis; what topples with τ₀ upright swings with 2π τ₀ hanging. `gravity` is the source's value of g.
 */
function periodOfSwing(moment: number, inertia: number, gravity: number): number {
  const { timeConstant } = toppling({ firstMoment: moment, rollInertia: inertia });
  return 2 * Math.PI * timeConstant * Math.sqrt(standardGravity / gravity);
}

/** Own inertia that a body must have to swing with a period: the inverse question, on our own calculations. */
function inertiaFromSwing(mass: number, distance: number, period: number, gravity: number): number {
  const moment = firstMoment({ masses: [mass], heights: [distance] });
  return solveRising((own) => periodOfSwing(moment, about(own, mass, distance), gravity), period, 0, 100);
}

/** The four bodies of the benchmark bicycle, heights positive upwards. */
const bicycle = {
  masses: [2, 85, 4, 3],
  forward: [0, 0.3, 0.9, 1.02],
  heights: [0.3, 0.9, 0.7, 0.35],
  ownInertias: [0.0603, 9.2, 0.05892, 0.1405],
  lefts: [0, 0, 0, 0],
};

/** Rod of 2.0 kg and 0.5 m about its end, with a sphere of 1.0 kg and 0.20 m radius centred at a distance. */
const rodAndSphere = (distance: number): number =>
  rollInertia({
    masses: [2, 1],
    lefts: [0, 0],
    heights: [0.25, distance],
    ownInertias: [rodInertiaAcrossAxis({ mass: 2, length: 0.5 }), 0.4 * 1 * 0.2 ** 2],
  });

const swungRod = (length: number, pivotFromEnd: number): number => {
  const distance = length / 2 - pivotFromEnd;
  const own = rodInertiaAcrossAxis({ mass: 1, length });
  return periodOfSwing(firstMoment({ masses: [1], heights: [distance] }), about(own, 1, distance), 9.81);
};

const aircraft = { masses: [320, 816, 810] };

const checks: readonly PublishedCheck[] = [
  {
    id: 'scales, forward of the main wheels',
    source: SFTE,
    what: 'centre of gravity, in',
    printed: '12.33',
    computed: () => -centreOfGravity({ ...aircraft, positions: [-75, 0, 0] }),
  },
  {
    id: 'scales, from the spinner',
    source: SFTE,
    what: 'centre of gravity, in',
    printed: '102.67',
    computed: () => centreOfGravity({ ...aircraft, positions: [40, 115, 115] }),
  },
  {
    id: 'scales, lateral',
    source: SFTE,
    what: 'centre of gravity to the right, in',
    printed: '0.216',
    computed: () => centreOfGravity({ ...aircraft, positions: [0, 70, -70] }),
  },
  {
    id: 'two axles',
    source: `${OSUP}, example 12.1`,
    what: 'centre of gravity ahead of the rear axle, m',
    printed: '1.3',
    computed: () => centreOfGravity({ masses: [0.52, 0.48], positions: [2.5, 0] }),
  },
  {
    id: 'balanced stick, mass',
    source: `${OSUP}, example 12.3`,
    what: 'mass at 30 cm that balances 50 g at 70, 75 g at 40 and 150 g at 20 cm, g',
    printed: '317',
    computed: () => firstMoment({ masses: [50, 75, 150], heights: [0.7, 0.4, 0.2] }) / 0.3,
  },
  {
    id: 'balanced stick, support',
    source: `${OSUP}, example 12.3`,
    what: 'force at the support, N',
    printed: '5.8',
    computed: () => totalMass({ masses: [0.05, 0.075, 0.15, 0.317] }) * 9.8,
  },
  {
    id: 'weight shifted down in a ship',
    source: 'Nicholls’s Seamanship and Nautical Knowledge, exercises on stability, no. 23',
    what: 'metacentric height after 200 of 5000 tons move from 10 ft above to 10 ft below the centre, was −3 in, in',
    printed: '6.6',
    computed: () => {
      const masses = [4800, 200];
      const rest = (-200 * 10) / 4800; // so that the centre starts at 0
      const rise =
        centreOfGravity({ masses, positions: [rest, -10] }) -
        centreOfGravity({ masses, positions: [rest, 10] });
      return -3 - 12 * rise;
    },
  },
  {
    id: 'benchmark bicycle, total',
    source: MEIJAARD,
    what: 'total mass, kg',
    printed: '94',
    computed: () => totalMass(bicycle),
  },
  {
    id: 'benchmark bicycle, first moment',
    source: `${MEIJAARD}, K₀ (1,1)`,
    what: 'first moment about the ground line, kg·m',
    printed: '80.95',
    computed: () => firstMoment(bicycle),
  },
  {
    id: 'benchmark bicycle, roll inertia',
    source: `${MEIJAARD}, M (1,1)`,
    what: 'roll inertia about the ground line, kg·m²',
    printed: '80.81722',
    computed: () => rollInertia(bicycle),
  },
  {
    id: 'rod and sphere, sphere beyond the end',
    source: `${OSUP}, example 10.12 (a)`,
    what: 'inertia about the end of the rod, kg·m²',
    printed: '0.673',
    computed: () => rodAndSphere(0.7),
  },
  {
    id: 'rod and sphere, sphere near the axis',
    source: `${OSUP}, example 10.12 (b)`,
    what: 'inertia about the end of the rod, kg·m²',
    printed: '0.223',
    computed: () => rodAndSphere(0.2),
  },
  {
    id: 'child on a roundabout',
    source: `${OSUP}, example 10.11`,
    what: 'inertia of disc and child, kg·m²',
    printed: '1025',
    computed: () =>
      rollInertia({
        masses: [500, 25],
        lefts: [0, 1],
        heights: [0, 0],
        ownInertias: [cylinderInertiaAlongAxis({ mass: 500, diameter: 4 }), 0],
      }),
  },
  {
    id: 'skater, arms in',
    source: `${OSUP}, section 10.8, additional problem`,
    what: 'inertia as a cylinder, kg·m²',
    printed: '0.363',
    computed: () => cylinderInertiaAlongAxis({ mass: 60, diameter: 0.22 }),
  },
  {
    id: 'skater, arms out',
    source: `${OSUP}, section 10.8, additional problem`,
    what: 'inertia as a cylinder and two rods about their ends, kg·m²',
    printed: '2.34',
    computed: () => {
      const arm = rodInertiaAcrossAxis({ mass: 3.75, length: 0.9 });
      return rollInertia({
        masses: [52.5, 3.75, 3.75],
        lefts: [0, 0.45, -0.45],
        heights: [0, 0, 0],
        ownInertias: [cylinderInertiaAlongAxis({ mass: 52.5, diameter: 0.22 }), arm, arm],
      });
    },
  },
  {
    id: 'disc and ring',
    source: `${OSUP}, section 10.4, problem`,
    what: 'inertia of disc 2 kg, R 0.5 m and annulus 1 kg, 0.2/0.3 m, kg·m²',
    printed: '0.315',
    computed: () =>
      cylinderInertiaAlongAxis({ mass: 2, diameter: 1 }) +
      tubeInertiaAlongAxis({ mass: 1, diameter: 0.6, bore: 0.4 }),
  },
  {
    id: 'wheel of a gyroscope',
    source: `${OSUP}, example 11.10`,
    what: 'inertia of a disc 0.30 kg, R 5.0 cm, kg·m²',
    printed: '3.75e-4',
    computed: () => cylinderInertiaAlongAxis({ mass: 0.3, diameter: 0.1 }),
  },
  {
    id: 'calibration rod',
    source: `${MOORE}, Browser bicycle`,
    what: 'inertia across the axis of a rod 5.56 kg, 30 mm, 1.05 m, kg·m²',
    printed: '0.51113775',
    computed: () => cylinderInertiaAcrossAxis({ mass: 5.56, diameter: 0.03, length: 1.05 }),
  },
  {
    id: 'front wheel by torsion pendulum',
    source: `${MOORE}, Browser bicycle`,
    what: 'I_xx from the calibration rod and two periods, kg·m²',
    printed: '0.0883826870796',
    computed: () =>
      cylinderInertiaAcrossAxis({ mass: 5.56, diameter: 0.03, length: 1.05 }) *
      (0.787577011406 / 1.89399317145) ** 2,
  },
  {
    id: 'rectangular lamina',
    source: 'BYJU’S, worked question on a lamina 20 cm × 10 cm, 500 g',
    what: 'inertia about the normal through the centre, kg·m²',
    printed: '0.002083',
    computed: () => boxRollInertia({ mass: 0.5, width: 0.2, height: 0.1 }),
  },
  {
    id: 'rod pivoted at its end',
    source: `${OSUP}, example 15.4`,
    what: 'length that swings in 2.0 s, m',
    printed: '1.49',
    computed: () => solveRising((length) => swungRod(length, 0) * Math.sqrt(9.81 / 9.8), 2, 0.1, 5),
  },
  {
    id: 'rod pivoted 50 mm from its end',
    source: `${KHURMI}, example 4.7 (textbook companion)`,
    what: 'period of a rod of 1.2 m, s',
    printed: '1.76',
    computed: () => swungRod(1.2, 0.05),
  },
  {
    id: 'rod pivoted where it swings fastest',
    source: `${KHURMI}, example 4.7 (textbook companion)`,
    what: 'shortest period of a rod of 1.2 m, s',
    printed: '1.67',
    computed: () => swungRod(1.2, 0.6 - 1.2 / Math.sqrt(12)),
  },
  {
    id: 'flywheel swung off its centre',
    source: `${KHURMI}, example 4.5 (textbook companion)`,
    what: 'own inertia of 85 kg swung 100 mm off its centre, 100 swings in 145 s, kg·m²',
    printed: '3.6',
    computed: () => inertiaFromSwing(85, 0.1, 1.45, 9.81),
  },
  {
    id: 'rear wheel by compound pendulum',
    source: `${MOORE}, Browser bicycle`,
    what: 'own inertia from a period, kg·m²',
    printed: '0.152391250767',
    computed: () => inertiaFromSwing(3.11, 0.29325, 1.36108970039, 9.81),
  },
  {
    id: 'front wheel by compound pendulum',
    source: `${MOORE}, Browser bicycle`,
    what: 'own inertia from a period, kg·m²',
    printed: '0.149221207336',
    computed: () => inertiaFromSwing(2.02, 0.293, 1.4811273727, 9.81),
  },
];

describe('mass properties as published', () => {
  it.each(checks)('$id: $what, $printed ($source)', ({ computed, printed }) => {
    expectPrinted(computed(), printed);
  });
});
