/** Sums over parts, bodies and inertia tensors against published examples. Unit-free laws are checked in the source's units. */
import type { MechanicsCheck } from './published-check.ts';
import { through } from './through.ts';
import { radians } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const SFTE = 'Society of Flight Test Engineers, Reference Handbook 2013, section 7.2';
const MEIJAARD = 'Meijaard, Papadopoulos, Ruina, Schwab, Proc. R. Soc. A 463 (2007), benchmark bicycle';
const MOORE = 'J. K. Moore, BicycleParameters, open data of measured bicycles';
const BRANSON = 'J. Branson, UCSD Physics 110B lecture notes (2012), cube rotating about a corner';

const totalMass = through('mass.total', 'totalMass');
const firstMoment = through('mass.first-moment', 'firstMoment');
const centreOfGravity = through('mass.centre-of-gravity', 'position');
const rollInertia = through('mass.roll-inertia', 'rollInertia');
const parallelAxis = through('inertia.parallel-axis', 'inertia');
const boxRollInertia = through('body.box-roll-inertia', 'inertia');
const cylinderAlong = through('body.cylinder-along-axis', 'inertia');
const cylinderAcross = through('body.cylinder-across-axis', 'inertia');
const tubeAlong = through('body.tube-along-axis', 'inertia');
const rodAcross = through('body.rod-across-axis', 'inertia');
const sphere = through('body.sphere', 'inertia');

type TensorEntry =
  | 'rollInertia'
  | 'pitchInertia'
  | 'yawInertia'
  | 'rollPitchProduct'
  | 'rollYawProduct'
  | 'pitchYawProduct';
const ENTRIES: readonly TensorEntry[] = [
  'rollInertia',
  'pitchInertia',
  'yawInertia',
  'rollPitchProduct',
  'rollYawProduct',
  'pitchYawProduct',
];

/** All six entries of a calculation whose outputs are a tensor. */
function tensorOf(id: string, inputs: Parameters<typeof totalMass>[0]): Record<TensorEntry, number> {
  return Object.fromEntries(ENTRIES.map((entry) => [entry, through(id, entry)(inputs)])) as Record<
    TensorEntry,
    number
  >;
}

/** The four bodies of the benchmark bicycle, heights positive upwards. */
const bicycle = {
  masses: [2, 85, 4, 3],
  forwards: [0, 0.3, 0.9, 1.02],
  heights: [0.3, 0.9, 0.7, 0.35],
  lefts: [0, 0, 0, 0],
  ownInertias: [0.0603, 9.2, 0.05892, 0.1405],
  ownRollInertias: [0.0603, 9.2, 0.05892, 0.1405],
  ownPitchInertias: [0.12, 11, 0.06, 0.28],
  ownYawInertias: [0.0603, 2.8, 0.00708, 0.1405],
  ownRollPitchProducts: [0, 0, 0, 0],
  // The source's z points down: products of roll and yaw change their sign.
  ownRollYawProducts: [0, -2.4, 0.00756, 0],
  ownPitchYawProducts: [0, 0, 0, 0],
};

/** Some of the bodies together, about a point on the ground below the rear wheel's centre. */
function bodiesAboutGround(which: readonly number[]) {
  const picked = Object.fromEntries(
    Object.entries(bicycle).map(([name, values]) => [name, which.map((i) => values[i] ?? Number.NaN)]),
  );
  const masses = picked.masses ?? [];
  const centre = {
    forward: centreOfGravity({ masses, positions: picked.forwards ?? [] }),
    height: centreOfGravity({ masses, positions: picked.heights ?? [] }),
  };
  const own = tensorOf('inertia.tensor', picked);
  const mass = totalMass({ masses });
  const about = tensorOf('inertia.parallel-axes', { ...own, mass, left: 0, ...centre });
  return { own, about, mass, ...centre };
}

/**
 * The linear equations' inertia matrix from the bodies: the front assembly turns about a steering axis that is tilted back by
 * λ = π/10 and meets the ground c = 0.08 m ahead of the front contact, 1.02 m ahead of the rear one.
 */
const steering = { tilt: Math.PI / 10, trail: 0.08, wheelbase: 1.02 };
const lever = (steering.trail / steering.wheelbase) * Math.cos(steering.tilt);

/** Products and inertia of the front assembly (handlebar and front wheel) about roll and steering axes. */
function frontAssembly() {
  const front = bodiesAboutGround([2, 3]);
  const { tilt, trail, wheelbase } = steering;
  const distance = (front.forward - wheelbase - trail) * Math.cos(tilt) + front.height * Math.sin(tilt);
  // Along the steering axis, which points down and forward in the source's frame: (sin λ, 0, cos λ).
  const [down, forward] = [Math.cos(tilt), Math.sin(tilt)];
  const product = front.own.rollInertia * forward - front.own.rollYawProduct * down;
  const spin = through('inertia.about-axis', 'inertia')({ ...front.own, forward, left: 0, up: -down });
  const yaw = -front.own.rollYawProduct * forward + front.own.yawInertia * down;
  return {
    rollSteer: front.mass * distance * front.height + product,
    steer: parallelAxis({ inertia: spin, mass: front.mass, distance }),
    yawSteer: front.mass * distance * front.forward + yaw,
  };
}

/** Rod of 2.0 kg and 0.5 m about its end, with a sphere of 1.0 kg and 0.20 m radius centred at a distance. */
const rodAndSphere = (distance: number): number =>
  rollInertia({
    masses: [2, 1],
    lefts: [0, 0],
    heights: [0.25, distance],
    ownInertias: [rodAcross({ mass: 2, length: 0.5 }), sphere({ mass: 1, diameter: 0.4 })],
  });

const aircraft = { masses: [320, 816, 810] };

/** A cube of mass 1 and side 1 about a corner. */
const cube = () => {
  const own = boxRollInertia({ mass: 1, width: 1, height: 1 });
  return tensorOf('inertia.parallel-axes', {
    rollInertia: own,
    pitchInertia: own,
    yawInertia: own,
    rollPitchProduct: 0,
    rollYawProduct: 0,
    pitchYawProduct: 0,
    mass: 1,
    forward: 0.5,
    left: 0.5,
    height: 0.5,
  });
};

export const massChecks: readonly MechanicsCheck[] = [
  {
    id: 'scales, forward of the main wheels',
    source: SFTE,
    status: 'read',
    what: 'centre of gravity, in',
    printed: '12.33',
    computed: () => -centreOfGravity({ ...aircraft, positions: [-75, 0, 0] }),
  },
  {
    id: 'scales, from the spinner',
    source: SFTE,
    status: 'read',
    what: 'centre of gravity, in',
    printed: '102.67',
    computed: () => centreOfGravity({ ...aircraft, positions: [40, 115, 115] }),
  },
  {
    id: 'balanced stick, support',
    source: `${OSUP}, example 12.3`,
    status: 'read',
    what: 'force at the support, N',
    printed: '5.8',
    computed: () => totalMass({ masses: [0.05, 0.075, 0.15, 0.317] }) * 9.8,
  },
  {
    id: 'weight shifted down in a ship',
    source: 'Nicholls’s Seamanship and Nautical Knowledge, exercises on stability, no. 23',
    status: 'read',
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
    status: 'read',
    what: 'total mass, kg',
    printed: '94',
    computed: () => totalMass({ masses: bicycle.masses }),
  },
  {
    id: 'benchmark bicycle, first moment',
    source: `${MEIJAARD}, K₀ (1,1)`,
    status: 'read',
    what: 'first moment about the ground line, kg·m',
    printed: '80.95',
    computed: () => firstMoment(bicycle),
  },
  {
    id: 'benchmark bicycle, roll inertia',
    source: `${MEIJAARD}, M (1,1)`,
    status: 'read',
    what: 'roll inertia about the ground line, kg·m²',
    printed: '80.81722',
    computed: () => rollInertia(bicycle),
  },
  {
    id: 'benchmark bicycle, roll inertia by the tensor',
    source: `${MEIJAARD}, M (1,1)`,
    status: 'read',
    what: 'the same through the tensor about the centre of gravity, kg·m²',
    printed: '80.81722',
    computed: () => bodiesAboutGround([0, 1, 2, 3]).about.rollInertia,
  },
  {
    id: 'benchmark bicycle, roll and steer',
    source: `${MEIJAARD}, M (1,2); parameters beyond the roll inertias from memory`,
    status: 'read',
    what: 'inertia between roll and steer, with products of inertia, kg·m²',
    printed: '2.31941332208709',
    computed: () => frontAssembly().rollSteer - lever * bodiesAboutGround([0, 1, 2, 3]).about.rollYawProduct,
  },
  {
    id: 'benchmark bicycle, steer',
    source: `${MEIJAARD}, M (2,2); parameters beyond the roll inertias from memory`,
    status: 'read',
    what: 'inertia about the tilted steering axis, kg·m²',
    printed: '0.29784188199686',
    computed: () => {
      const { steer, yawSteer } = frontAssembly();
      return steer + 2 * lever * yawSteer + lever ** 2 * bodiesAboutGround([0, 1, 2, 3]).about.yawInertia;
    },
  },
  {
    id: 'cube about its corner, on the diagonal',
    source: `${BRANSON} (2/3)`,
    status: 'read',
    what: 'inertia about an edge over m a²',
    printed: '0.666666666667',
    computed: () => cube().rollInertia,
  },
  {
    id: 'cube about its corner, off the diagonal',
    source: `${BRANSON} (−1/4)`,
    status: 'read',
    what: 'product of inertia over m a², a tensor entry',
    printed: '-0.25',
    computed: () => cube().pitchYawProduct,
  },
  {
    id: 'cube about its corner, largest principal',
    source: `${BRANSON} (11/12)`,
    status: 'read',
    what: 'principal inertia over m a²',
    printed: '0.916666666667',
    computed: () => through('inertia.principal', 'largest')(cube()),
  },
  {
    id: 'cube about its corner, least principal',
    source: `${BRANSON} (1/6)`,
    status: 'read',
    what: 'principal inertia over m a²',
    printed: '0.166666666667',
    computed: () => through('inertia.principal', 'least')(cube()),
  },
  {
    id: 'cube about its corner, least principal axis',
    source: `${BRANSON} (along the diagonal of the cube)`,
    status: 'read',
    what: 'share of the axis along an edge, 1/√3',
    printed: '0.577350269190',
    computed: () => through('inertia.principal', 'leastUp')(cube()),
  },
  {
    id: 'cube about its corner, turned axes',
    source: `${BRANSON}; the eigenvalue read along an axis turned into the diagonal of the cube`,
    status: 'independent',
    what: 'roll inertia over m a² about the diagonal',
    printed: '0.166666666667',
    computed: () =>
      through(
        'inertia.turned-axes',
        'rollInertia',
      )({ ...cube(), yaw: radians(45), pitch: -Math.atan(Math.SQRT1_2), roll: 0 }),
  },
  {
    id: 'rod and sphere, sphere beyond the end',
    source: `${OSUP}, example 10.12 (a)`,
    status: 'read',
    what: 'inertia about the end of the rod, kg·m²',
    printed: '0.673',
    computed: () => rodAndSphere(0.7),
  },
  {
    id: 'rod and sphere, sphere near the axis',
    source: `${OSUP}, example 10.12 (b)`,
    status: 'read',
    what: 'inertia about the end of the rod, kg·m²',
    printed: '0.223',
    computed: () => rodAndSphere(0.2),
  },
  {
    id: 'child on a roundabout',
    source: `${OSUP}, example 10.11`,
    status: 'read',
    what: 'inertia of disc and child, kg·m²',
    printed: '1025',
    computed: () =>
      cylinderAlong({ mass: 500, diameter: 4 }) + parallelAxis({ inertia: 0, mass: 25, distance: 1 }),
  },
  {
    id: 'skater, arms in',
    source: `${OSUP}, section 10.8, additional problem`,
    status: 'read',
    what: 'inertia as a cylinder, kg·m²',
    printed: '0.363',
    computed: () => cylinderAlong({ mass: 60, diameter: 0.22 }),
  },
  {
    id: 'skater, arms out',
    source: `${OSUP}, section 10.8, additional problem`,
    status: 'read',
    what: 'inertia as a cylinder and two rods about their ends, kg·m²',
    printed: '2.34',
    computed: () => {
      const arm = parallelAxis({
        inertia: rodAcross({ mass: 3.75, length: 0.9 }),
        mass: 3.75,
        distance: 0.45,
      });
      return cylinderAlong({ mass: 52.5, diameter: 0.22 }) + 2 * arm;
    },
  },
  {
    id: 'disc and ring',
    source: `${OSUP}, section 10.4, problem`,
    status: 'read',
    what: 'inertia of disc 2 kg, R 0.5 m and annulus 1 kg, 0.2/0.3 m, kg·m²',
    printed: '0.315',
    computed: () =>
      cylinderAlong({ mass: 2, diameter: 1 }) + tubeAlong({ mass: 1, diameter: 0.6, bore: 0.4 }),
  },
  {
    id: 'wheel of a gyroscope',
    source: `${OSUP}, example 11.10`,
    status: 'read',
    what: 'inertia of a disc 0.30 kg, R 5.0 cm, kg·m²',
    printed: '3.75e-4',
    computed: () => cylinderAlong({ mass: 0.3, diameter: 0.1 }),
  },
  {
    id: 'helicopter blades',
    source: `${OSUP}, example 10.9`,
    status: 'read',
    what: 'inertia of four rods of 50 kg and 4.00 m about their ends, kg·m²',
    printed: '1067',
    computed: () => 4 * parallelAxis({ inertia: rodAcross({ mass: 50, length: 4 }), mass: 50, distance: 2 }),
  },
  {
    id: 'calibration rod',
    source: `${MOORE}, Browser bicycle`,
    status: 'data',
    what: 'inertia across the axis of a rod 5.56 kg, 30 mm, 1.05 m, kg·m²',
    printed: '0.51113775',
    computed: () => cylinderAcross({ mass: 5.56, diameter: 0.03, length: 1.05 }),
  },
  {
    id: 'rectangular lamina',
    source: 'BYJU’S, worked question on a lamina 20 cm × 10 cm, 500 g',
    status: 'read',
    what: 'inertia about the normal through the centre, kg·m²',
    printed: '0.002083',
    computed: () => boxRollInertia({ mass: 0.5, width: 0.2, height: 0.1 }),
  },
  {
    id: 'radius of gyration of a rod',
    source: 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009, example 4.7 (l/√12)',
    status: 'companion',
    what: 'shortest period of a rod of 1.2 m, 2π √(2k/g) with g 9.81, s',
    printed: '1.67',
    computed: () =>
      2 *
      Math.PI *
      Math.sqrt(
        (2 *
          through(
            'inertia.radius-of-gyration',
            'radius',
          )({
            inertia: rodAcross({ mass: 1, length: 1.2 }),
            mass: 1,
          })) /
          9.81,
      ),
  },
];
