/** Inertia by swinging, on edges and on wires, against published examples and measured data. */
import { BROWSER, frame, frameLines, HEAD_ANGLE, REAR_RADIUS } from './hung-bicycle.ts';
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';
import { radians, timeAt } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009';
const BEVAN = 'T. Bevan, The Theory of Machines, 3rd ed., ch. 2';
const rodAcross = through('body.rod-across-axis', 'inertia');
const cylinderAcross = through('body.cylinder-across-axis', 'inertia');
const swingPeriod = through('swing.period', 'period');
const swingOwnInertia = through('swing.inertia', 'aboutCentre');
const torsionStiffness = through('swing.torsion-stiffness', 'stiffness');
const torsionInertia = through('swing.torsion', 'inertia');
const bifilar = through('swing.bifilar', 'inertia');
const trifilar = through('swing.trifilar', 'inertia');
const gyration = through('inertia.radius-of-gyration', 'radius');
const ALL_OF_G_981 = timeAt(9.81);

const ALL_OF_G_322 = timeAt(32.2); // feet: the same numbers in another unit of length

/** Period of a uniform rod hung from a pivot at some distance from its end, with the source's g. */
const rodPeriod = (length: number, pivotFromEnd: number, gravity: number): number =>
  swingPeriod({
    inertia: rodAcross({ mass: 1, length }),
    mass: 1,
    distance: length / 2 - pivotFromEnd,
  }) / timeAt(gravity);

/** Stiffness of the wire that the parts of the bicycle hung on: a rod of 5.56 kg, 30 mm and 1.05 m swung in 1.894 s. */
const wire = (): number =>
  torsionStiffness({
    inertia: cylinderAcross({ mass: 5.56, diameter: 0.03, length: 1.05 }),
    period: 1.89399317145,
  });

const framePeriods = [2.09957410356, 2.37671750273, 1.83976940999];

const frameTensor = (output: string): number => {
  const [i1 = 0, i2 = 0, i3 = 0] = framePeriods.map((period) =>
    torsionInertia({ stiffness: wire(), period }),
  );
  const [b1 = 0, b2 = 0, b3 = 0] = frameLines.map(({ turn }) => HEAD_ANGLE - radians(turn));
  return through(
    'swing.planar-tensor',
    output,
  )({
    firstInertia: i1,
    firstAngle: b1,
    secondInertia: i2,
    secondAngle: b2,
    thirdInertia: i3,
    thirdAngle: b3,
  });
};

export const swingingChecks: readonly MechanicsCheck[] = [
  {
    id: 'stiffness of the torsion wire',
    source: BROWSER,
    status: 'data',
    what: 'from the calibration rod and its period, N·m/rad',
    printed: '5.6252376629',
    computed: wire,
  },
  {
    id: 'front wheel on the wire',
    source: BROWSER,
    status: 'data',
    what: 'I_xx, kg·m²',
    printed: '0.0883826870796',
    computed: () => torsionInertia({ stiffness: wire(), period: 0.787577011406 }),
  },
  {
    id: 'rear wheel on the wire',
    source: BROWSER,
    status: 'data',
    what: 'I_xx, kg·m²',
    printed: '0.0904114316323',
    computed: () => torsionInertia({ stiffness: wire(), period: 0.796564786052 }),
  },
  {
    id: 'frame in three hangings, roll',
    source: BROWSER,
    status: 'data',
    what: 'I_xx, kg·m²',
    printed: '0.52962890621',
    computed: () => frameTensor('rollInertia'),
  },
  {
    id: 'frame in three hangings, product',
    source: BROWSER,
    status: 'data',
    what: 'I_xz in the source’s axes, kg·m²',
    printed: '-0.116285607878',
    computed: () => frameTensor('rollYawProduct'),
  },
  {
    id: 'frame in three hangings, yaw',
    source: BROWSER,
    status: 'data',
    what: 'I_zz, kg·m²',
    printed: '0.756786895402',
    computed: () => frameTensor('yawInertia'),
  },
  {
    id: 'front wheel swung',
    source: BROWSER,
    status: 'data',
    what: 'own inertia from a period, g 9.81, kg·m²',
    printed: '0.149221207336',
    computed: () => swingOwnInertia({ mass: 2.02, distance: 0.293, period: 1.4811273727 * ALL_OF_G_981 }),
  },
  {
    id: 'rear wheel swung',
    source: BROWSER,
    status: 'data',
    what: 'own inertia from a period, g 9.81, kg·m²',
    printed: '0.152391250767',
    computed: () => swingOwnInertia({ mass: 3.11, distance: 0.29325, period: 1.36108970039 * ALL_OF_G_981 }),
  },
  {
    id: 'frame swung',
    source: BROWSER,
    status: 'data',
    what: 'own inertia from a period about the rear axle, g 9.81, kg·m²',
    printed: '1.3163960125',
    computed: () => {
      const distance = Math.hypot(frame('forward'), frame('height') - REAR_RADIUS);
      return swingOwnInertia({ mass: 9.86, distance, period: 1.71730688911 * ALL_OF_G_981 });
    },
  },
  {
    id: 'rod pivoted at its end',
    source: `${OSUP}, example 15.4`,
    status: 'read',
    what: 'length that swings in 2.0 s, g 9.8, m',
    printed: '1.49',
    computed: () => solveRising((length) => rodPeriod(length, 0, 9.8), 2, 0.1, 5),
  },
  {
    id: 'rod pivoted 50 mm from its end',
    source: `${KHURMI}, example 4.7`,
    status: 'companion',
    what: 'period of a rod of 1.2 m, s',
    printed: '1.76',
    computed: () => rodPeriod(1.2, 0.05, 9.81),
  },
  {
    id: 'rod pivoted where it swings fastest',
    source: `${KHURMI}, example 4.7`,
    status: 'companion',
    what: 'shortest period of a rod of 1.2 m, s',
    printed: '1.67',
    computed: () => rodPeriod(1.2, 0.6 - 1.2 / Math.sqrt(12), 9.81),
  },
  {
    id: 'rod found by its fastest swing',
    source: `${KHURMI}, example 4.7, its rod; distance by independent computation`,
    status: 'independent',
    what: 'distance of the pivot, l/√12, at which the period comes back, m',
    printed: '0.346',
    computed: () => {
      const gyrationOfRod = 1.2 / Math.sqrt(12);
      // A hair above the least period both distances come together.
      const period = rodPeriod(1.2, 0.6 - gyrationOfRod, 9.81) * ALL_OF_G_981 * (1 + 1e-12);
      return through('swing.distance', 'farther')({ period, radiusOfGyration: gyrationOfRod });
    },
  },
  {
    id: 'flywheel swung off its centre',
    source: `${KHURMI}, example 4.5`,
    status: 'companion',
    what: 'own inertia of 85 kg swung 100 mm off its centre, 100 swings in 145 s, kg·m²',
    printed: '3.6',
    computed: () => swingOwnInertia({ mass: 85, distance: 0.1, period: 1.45 * ALL_OF_G_981 }),
  },
  {
    id: 'rod swung about both ends, centre',
    source: `${KHURMI}, example 4.6`,
    status: 'companion',
    what: 'centre of gravity from the small end, 100 swings in 190 and in 165 s, m',
    printed: '0.759',
    computed: () =>
      through(
        'swing.two-pivots',
        'distance',
      )({
        mass: 60,
        separation: 1,
        firstPeriod: 1.9 * ALL_OF_G_981,
        secondPeriod: 1.65 * ALL_OF_G_981,
      }),
  },
  {
    id: 'rod swung about both ends, inertia',
    source: `${KHURMI}, example 4.6 (printed as a whole number)`,
    status: 'companion',
    what: 'own inertia of 60 kg, kg·m²',
    printed: '6',
    computed: () =>
      through(
        'swing.two-pivots',
        'inertia',
      )({
        mass: 60,
        separation: 1,
        firstPeriod: 1.9 * ALL_OF_G_981,
        secondPeriod: 1.65 * ALL_OF_G_981,
      }),
  },
  {
    id: 'connecting rod of 150 lb swung',
    source: `${BEVAN}, example 4`,
    status: 'companion',
    what: 'own inertia, 50 swings in 92.5 s about an axis 25 in off, lb·ft²',
    printed: '221',
    computed: () => swingOwnInertia({ mass: 150, distance: 25 / 12, period: (92.5 / 50) * ALL_OF_G_322 }),
  },
  {
    id: 'connecting rod of 150 lb on two wires',
    source: `${BEVAN}, example 6`,
    status: 'companion',
    what: 'radius of gyration, wires 14 in to each side and 8.5 ft long, 25 swings in 83.2 s, in',
    printed: '14.43',
    computed: () =>
      12 *
      gyration({
        inertia: bifilar({
          mass: 150,
          firstDistance: 14 / 12,
          secondDistance: 14 / 12,
          wireLength: 8.5,
          period: (83.2 / 25) * ALL_OF_G_322,
        }),
        mass: 150,
      }),
  },
  {
    id: 'connecting rod of 1.5 kg on two wires, radius',
    source: `${KHURMI}, example 4.9`,
    status: 'companion',
    what: 'radius of gyration, wires 120 mm to each side and 1.25 m long, 20 swings in 40 s, mm',
    printed: '107',
    computed: () => {
      const inertia = bifilar({
        mass: 1.5,
        firstDistance: 0.12,
        secondDistance: 0.12,
        wireLength: 1.25,
        period: 2 * ALL_OF_G_981,
      });
      return 1000 * gyration({ inertia, mass: 1.5 });
    },
  },
  {
    id: 'connecting rod of 1.5 kg on two wires',
    source: `${KHURMI}, example 4.9`,
    status: 'companion',
    what: 'own inertia, kg·m²',
    printed: '0.017',
    computed: () =>
      bifilar({
        mass: 1.5,
        firstDistance: 0.12,
        secondDistance: 0.12,
        wireLength: 1.25,
        period: 2 * ALL_OF_G_981,
      }),
  },
  {
    id: 'part on a plate on three wires',
    source: `${KHURMI}, example 4.11`,
    status: 'companion',
    what: 'inertia of part (5.5 kg) and plate (1.5 kg), wires 125 mm off and 1.25 m long, 10 swings in 30 s, kg·m²',
    printed: '0.196',
    computed: () => trifilar({ mass: 7, radius: 0.125, wireLength: 1.25, period: 3 * ALL_OF_G_981 }),
  },
  {
    id: 'plate taken off',
    source: `${KHURMI}, example 4.11, with the bare plate as a uniform disc of 125 mm taken off`,
    status: 'independent',
    what: 'inertia of the part, 0.19569 less ½ · 1.5 kg · (0.125 m)², kg·m²',
    printed: '0.18397',
    computed: () => {
      const plate = through('body.cylinder-along-axis', 'inertia')({ mass: 1.5, diameter: 0.25 });
      const platformPeriod = 2 * Math.PI * Math.sqrt((plate * 1.25) / (1.5 * 9.81 * 0.125 ** 2));
      return trifilar({
        mass: 5.5,
        radius: 0.125,
        wireLength: 1.25,
        period: 3 * ALL_OF_G_981,
        platformMass: 1.5,
        platformPeriod: platformPeriod * ALL_OF_G_981,
      });
    },
  },
  {
    id: 'decay of a torsional swing',
    source: 'an exchange on a physics forum (no. 326265): 13 % left after 100 swings, ln(100/13)',
    status: 'read',
    what: 'decrement of the hundred together',
    printed: '2.04',
    computed: () =>
      100 * through('swing.damping', 'decrement')({ firstPeak: 100, laterPeak: 13, cycles: 100 }),
  },
  {
    id: 'damping barely shifts a frequency',
    source: 'a page on vibration in machine frames: 0.5 % at a damping ratio of 0.10',
    status: 'read',
    what: 'change of the period, %',
    printed: '0.5',
    computed: () =>
      100 * (1 - through('swing.undamped-period', 'undampedPeriod')({ period: 1, dampingRatio: 0.1 })),
  },
  {
    id: 'pendulum swinging level to level',
    source: 'period of a pendulum of 90° over that of small swings; table of elliptic integrals',
    status: 'memory',
    what: 'ratio of the periods',
    printed: '1.18034',
    computed: () =>
      1 / through('swing.small-swing-period', 'smallPeriod')({ period: 1, amplitude: Math.PI / 2 }),
  },
];
