/** Centre of gravity and inertia by weighing, hanging and swinging, against published examples and measured data. */
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';
import { radians, timeAt } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const SFTE = 'Society of Flight Test Engineers, Reference Handbook 2013, section 7.2';
const NICHOLLS = 'Nicholls’s Seamanship and Nautical Knowledge, exercises on stability';
const BROWSER = 'J. K. Moore, BicycleParameters, open data, Browser bicycle';
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009';
const BEVAN = 'T. Bevan, The Theory of Machines, 3rd ed., ch. 2';

const incliningHeight = through('weighing.inclining', 'height');
const boardDistance = through('weighing.board', 'distance');
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

interface HangLine {
  /** ° of the part in its hanging, and m of the line from the wheel's centre, as the data give them. */
  readonly turn: number;
  readonly offset: number;
}

/**
 * Mean of the three points in which three plumb lines cross. The data give each line as z = −x tan β − a/cos β − r, z
 * downwards; upwards it passes r + a/cos β over the origin, at π/2 − β from the upright.
 */
function meanOfCrossings(
  lines: readonly HangLine[],
  at: (line: HangLine) => { height: number; angle: number },
  output: string,
): number {
  const pairs = [
    [0, 1],
    [0, 2],
    [1, 2],
  ] as const;
  const crossings = pairs.map(([i, j]) => {
    const [first, second] = [lines[i], lines[j]];
    if (!first || !second) throw new Error('three lines are needed');
    const [one, two] = [at(first), at(second)];
    return through(
      'weighing.hang-lines',
      output,
    )({
      firstForward: 0,
      firstHeight: one.height,
      firstAngle: one.angle,
      secondForward: 0,
      secondHeight: two.height,
      secondAngle: two.angle,
    });
  });
  return crossings.reduce((sum, value) => sum + value, 0) / crossings.length;
}

const HEAD_ANGLE = radians(90 - 67.1);
/** Rolling radii from the way of 13 turns, 27.85 and 28.06 m. */
const [REAR_RADIUS, FRONT_RADIUS] = [27.85 / 13 / (2 * Math.PI), 28.06 / 13 / (2 * Math.PI)];
const WHEELBASE = 1.121;
const frameLines: readonly HangLine[] = [
  { turn: 3.4, offset: 0.098 },
  { turn: 138.7, offset: 0.169 },
  { turn: 229.8, offset: -0.294 },
];
const forkLines: readonly HangLine[] = [
  { turn: 346.7, offset: 0.474 },
  { turn: 28.1, offset: 0.383 },
  { turn: 287, offset: 0.215 },
];
const frame = (output: string): number =>
  meanOfCrossings(
    frameLines,
    ({ turn, offset }) => {
      const beta = HEAD_ANGLE - radians(turn);
      return { height: offset / Math.cos(beta) + REAR_RADIUS, angle: Math.PI / 2 - beta };
    },
    output,
  );
/** The fork's lines count from the front wheel: b = w tan β − r_F − a/cos β. */
const fork = (output: string): number =>
  meanOfCrossings(
    forkLines,
    ({ turn, offset }) => {
      const beta = HEAD_ANGLE - radians(turn);
      const height = offset / Math.cos(beta) + FRONT_RADIUS - WHEELBASE * Math.tan(beta);
      return { height, angle: Math.PI / 2 - beta };
    },
    output,
  );

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

export const measuringChecks: readonly MechanicsCheck[] = [
  {
    id: 'two axles',
    source: `${OSUP}, example 12.1`,
    status: 'read',
    what: 'centre of gravity ahead of the rear axle, 52 % of the weight on the front one, m',
    printed: '1.3',
    computed: () =>
      through(
        'weighing.two-axles',
        'position',
      )({
        frontReading: 0.52,
        rearReading: 0.48,
        wheelbase: 2.5,
      }),
  },
  {
    id: 'scales, lateral',
    source: SFTE,
    status: 'read',
    what: 'centre of gravity to the right, nose 320, right 816, left 810 lb on arms of 70 in, in',
    printed: '0.216',
    computed: () =>
      -through(
        'weighing.left-and-right',
        'left',
      )({
        leftReading: 810,
        rightReading: 816,
        centreReading: 320,
        track: 140,
      }),
  },
  {
    id: 'one end raised',
    source:
      'synthetic case from statics: wheelbase 0.300 m, 20 N, centre 0.120 m ahead and 0.050 m above the axles',
    status: 'independent',
    what: 'height above the axles from a change of 1.178511 N with the rear raised 0.100 m, m',
    printed: '0.0500000',
    computed: () =>
      through(
        'weighing.raised-end',
        'height',
      )({
        wheelbase: 0.3,
        totalMass: 20,
        levelReading: 8,
        raisedReading: 8 + 1.178511,
        raise: 0.1,
        axleHeight: 0,
      }),
  },
  {
    id: 'reaction board, woman of 60 kg',
    source:
      'R. D. Knight, Physics for Scientists and Engineers, 4th ed., ch. 12, problem 57; answer of a solutions page',
    status: 'companion',
    what: 'feet to centre of gravity, board of 2.5 m and 6.1 kg, scale 25 kg, m',
    printed: '0.915',
    computed: () =>
      boardDistance({ boardLength: 2.5, totalMass: 60, emptyReading: 6.1 / 2, fullReading: 25 }),
  },
  {
    id: 'reaction board, pupil of 80 kg, along',
    source: 'a pupil’s published experiment on a three-point reaction board',
    status: 'data',
    what: 'distance from scales 33.5 and 74 kg over 2.01 m, m',
    printed: '1.02',
    computed: () => boardDistance({ boardLength: 2.01, totalMass: 80, emptyReading: 33.5, fullReading: 74 }),
  },
  {
    id: 'reaction board, pupil of 80 kg, across',
    source: 'a pupil’s published experiment on a three-point reaction board',
    status: 'data',
    what: 'distance from scales 22.5 and 41 kg over 2.01 m, m',
    printed: '0.46',
    computed: () => boardDistance({ boardLength: 2.01, totalMass: 80, emptyReading: 22.5, fullReading: 41 }),
  },
  {
    id: 'balanced stick, mass',
    source: `${OSUP}, example 12.3`,
    status: 'read',
    what: 'mass at 30 cm that balances 50 g at 70, 75 g at 40 and 150 g at 20 cm, g',
    printed: '317',
    computed: () => {
      const centre = through(
        'mass.centre-of-gravity',
        'position',
      )({
        masses: [50, 75, 150],
        positions: [70, 40, 20],
      });
      const distance = (counterMass: number): number =>
        through('weighing.balance-edge', 'distance')({ totalMass: 275, counterMass, counterDistance: 30 });
      return solveRising(distance, centre, 1, 1000);
    },
  },
  {
    id: 'inclining experiment, 100 tons',
    source: `${NICHOLLS}, no. 18`,
    status: 'read',
    what: 'metacentric height, 100 of 9000 tons moved 30 ft for a heel of 8°, ft',
    printed: '2.37',
    computed: () => incliningHeight({ movedMass: 100, move: 30, totalMass: 9000, lean: radians(8) }),
  },
  {
    id: 'inclining experiment, 3 tons',
    source: `${NICHOLLS}, no. 19`,
    status: 'read',
    what: 'metacentric height, 3 of 2600 tons moved 40 ft for 2 in on a plumb line of 29 ft 6 in, ft',
    printed: '8.17',
    computed: () =>
      incliningHeight({ movedMass: 3, move: 40, totalMass: 2600, lean: Math.atan(2 / (29.5 * 12)) }),
  },
  {
    id: 'hang lines of a frame, forward',
    source: BROWSER,
    status: 'data',
    what: 'centre of gravity ahead of the rear contact, m',
    printed: '0.275951285677',
    computed: () => frame('forward'),
  },
  {
    id: 'hang lines of a frame, height',
    source: BROWSER,
    status: 'data',
    what: 'centre of gravity above the ground, m',
    printed: '0.537842424305',
    computed: () => frame('height'),
  },
  {
    id: 'hang lines of a fork, forward',
    source: BROWSER,
    status: 'data',
    what: 'centre of gravity ahead of the rear contact, m',
    printed: '0.866949640247',
    computed: () => fork('forward'),
  },
  {
    id: 'hang lines of a fork, height',
    source: BROWSER,
    status: 'data',
    what: 'centre of gravity above the ground, m',
    printed: '0.748236400835',
    computed: () => fork('height'),
  },
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
    source: `${KHURMI}, example 4.7, the answer read backwards`,
    status: 'companion',
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
