/** Turns, banks, grip and tipping against published examples. */
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';
import { degrees, kmh, radians, speedAt, weightAt } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009';
const TAYAL = 'A. K. Tayal, Engineering Mechanics, ch. 15';

const turnAcceleration = through('ballast.turn-acceleration', 'acceleration');
const turnRadius = through('ballast.turn-radius', 'radius');
const lateralLimit = through('ballast.lateral-limit', 'acceleration');
const lean = through('turn.lean', 'lean');
const leanWithMomentum = through('turn.lean-with-momentum', 'lean');
const frictionNeeded = through('turn.friction-needed', 'friction');
const slideSpeed = through('turn.slide-speed', 'speed');

/** The same turn with the source's g: speeds whose square stands against it. */
const at = (speed: number, gravity: number): number => speed * speedAt(gravity);

const overturning = { track: 1.5, height: 1, radius: 100 };

export const turningChecks: readonly MechanicsCheck[] = [
  {
    id: 'car on a flat curve, force',
    source: `${OSUP}, example 6.15`,
    status: 'read',
    what: 'sideways force on 900 kg, N',
    printed: '1125',
    computed: () => 900 * turnAcceleration({ speed: 25, radius: 500 }),
  },
  {
    id: 'car on a flat curve, friction',
    source: `${OSUP}, example 6.15`,
    status: 'read',
    what: 'friction that the turn needs, g 9.80',
    printed: '0.13',
    computed: () => frictionNeeded({ speed: at(25, 9.8), radius: 500, bank: 0 }),
  },
  {
    id: 'car on a country road',
    source: `${OSUP}, section 6.3, check your understanding`,
    status: 'read',
    what: 'friction that 96.8 km/h on 182.9 m needs, g 9.80',
    printed: '0.40',
    computed: () => frictionNeeded({ speed: at(kmh(96.8), 9.8), radius: 182.9, bank: 0 }),
  },
  {
    id: 'banked curve',
    source: `${OSUP}, example 6.16`,
    status: 'read',
    what: 'speed on 100 m banked 31.0° without friction, g 9.80, m/s',
    printed: '24.3',
    computed: () => slideSpeed({ radius: 100, friction: 0, bank: radians(31) }) / speedAt(9.8),
  },
  {
    id: 'banking of a railway',
    source: `${OSUP}, section 6.3, problem`,
    status: 'read',
    what: 'angle for 105 km/h on 1.20 km, g 9.80, °',
    printed: '4.14',
    computed: () => degrees(lean({ speed: at(kmh(105), 9.8), radius: 1200 })),
  },
  {
    id: 'bobsled, acceleration',
    source: `${OSUP}, section 6.3, problem`,
    status: 'read',
    what: 'acceleration on a bank of 75.0°, m/s²',
    printed: '36.6',
    computed: () => lateralLimit({ largestLean: radians(75) }),
  },
  {
    id: 'bobsled, radius',
    source: `${OSUP}, section 6.3, problem`,
    status: 'read',
    what: 'radius at 30.0 m/s, g 9.80, m',
    printed: '24.6',
    computed: () =>
      turnRadius({
        lateralAcceleration: lateralLimit({ largestLean: radians(75) }) * weightAt(9.8),
        speed: 30,
      }),
  },
  {
    id: 'bobsled, lean',
    source: `${OSUP}, section 6.3, problem`,
    status: 'read',
    what: 'bank for 30.0 m/s on the radius printed, 24.6 m, °',
    printed: '75.0',
    computed: () => degrees(lean({ speed: at(30, 9.8), radius: 24.6 })),
  },
  {
    id: 'ideal speed of a bank',
    source: `${OSUP}, section 6.3, problem`,
    status: 'read',
    what: 'speed on 100 m banked 15.0°, g 9.80, m/s',
    printed: '16.2',
    computed: () => slideSpeed({ radius: 100, friction: 0, bank: radians(15) }) / speedAt(9.8),
  },
  {
    id: 'too slow on a bank',
    source: `${OSUP}, section 6.3, problem`,
    status: 'read',
    what: 'friction that 20.0 km/h on 100 m banked 15.0° needs, g 9.80',
    printed: '0.234',
    computed: () => frictionNeeded({ speed: at(kmh(20), 9.8), radius: 100, bank: radians(15) }),
  },
  {
    id: 'car about to skid',
    source: `${TAYAL}, example 15-18`,
    status: 'companion',
    what: 'speed on 50 m with friction 0.15, g 9.81, m/s',
    printed: '8.58',
    computed: () => slideSpeed({ radius: 50, friction: 0.15, bank: 0 }) / speedAt(9.81),
  },
  {
    id: 'speed at which a car overturns',
    source: `${TAYAL}, example 15-20`,
    status: 'companion',
    what: 'speed on 100 m, centre 1 m high, track 1.5 m, g 9.81, m/s',
    printed: '27.12',
    computed: () => through('turn.tip-over', 'speed')(overturning) / speedAt(9.81),
  },
  {
    id: 'overturning as a ballast that reaches the track',
    source: `${TAYAL}, example 15-20`,
    status: 'companion',
    what: 'the same speed from the lean that a mass 0.75 m to the side holds, m/s',
    printed: '27.12',
    computed: () => {
      const largestLean = through(
        'ballast.largest-lean',
        'lean',
      )({ ballastMass: 1, ballastOffset: 0.75, ballastHeight: 1, firstMomentWithout: 0 });
      const acceleration = lateralLimit({ largestLean }) * weightAt(9.81);
      return solveRising((speed) => turnAcceleration({ speed, radius: 100 }), acceleration, 0, 1000);
    },
  },
  {
    id: 'two-wheeler with engine and wheels',
    source: `${KHURMI}, example 14.15`,
    status: 'companion',
    what: 'lean at 90 km/h on 50 m with the momentum of wheels and engine, g 9.81, °',
    printed: '53.94',
    computed: () => {
      const momentum = through(
        'turn.wheel-momentum',
        'momentum',
      )({
        wheelInertias: [1, 1, 5 * 0.3],
        wheelRadius: 0.3,
        speed: 25,
      });
      // Speed as ours, momentum as theirs: both terms then stand over the source's g.
      const speed = at(25, 9.81);
      const lateralMomentum = (momentum * 25 * 9.80665) / (speed * 9.81);
      return degrees(
        leanWithMomentum({
          speed,
          radius: 50,
          totalMass: 250,
          centreOfGravityHeight: 0.6,
          lateralMomentum,
        }),
      );
    },
  },
  {
    id: 'gyro-wheel vehicle on a curve',
    source: `${KHURMI}, example 14.16`,
    status: 'companion',
    what: 'lean of a wheel of 0.5 kg, k 20 mm, 3000 rev/min, against 0.3 kg at 10 mm, 15 m/s on 50 m, °',
    printed: '10.30',
    computed: () => {
      const momentum = through(
        'rotor.momentum',
        'spinMomentum',
      )({
        inertia: 0.5 * 0.02 ** 2,
        speed: (3000 * Math.PI) / 30,
      });
      const speed = at(15, 9.81);
      return degrees(
        -leanWithMomentum({
          speed,
          radius: 50,
          totalMass: 0.3,
          centreOfGravityHeight: 0.01,
          lateralMomentum: -(momentum * 15 * 9.80665) / (speed * 9.81),
        }),
      );
    },
  },
];
