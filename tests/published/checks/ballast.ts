/** Ballast and holding moments against published examples, and the figures that builders of such vehicles work by hand. */
import type { MechanicsCheck } from './published-check.ts';
import { through } from './through.ts';
import { degrees, radians } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const NICHOLLS = 'Nicholls’s Seamanship and Nautical Knowledge, exercises on stability';
const PRACTICE = 'common practice, no source';
const POUND_FORCE = 4.4482216152605;

const armOffset = through('ballast.arm-position', 'offset');
const rightingMoment = through('ballast.righting-moment', 'moment');
const largestLean = through('ballast.largest-lean', 'lean');
const largestLeanByHand = through('ballast.largest-lean-by-hand', 'lean');
const lateralLimit = through('ballast.lateral-limit', 'acceleration');
const stiffness = through('mass.toppling', 'stiffness');
const timeConstant = through('mass.toppling', 'timeConstant');

/** Whatever needs a roll inertia besides the first moment. */
const anyInertia = { rollInertia: 1 };
const GRAVITY = (): number => stiffness({ firstMoment: 1, ...anyInertia });

/** A vehicle of 955 g all told, its centre of gravity at 145 mm, with an arm of 115 mm that swings ±45°. */
const arm = { pivotHeight: 0, armLength: 0.115, direction: 1, angle: Math.PI / 4 };
const momentOf = (ballastMass: number): number =>
  rightingMoment({ ballastMass, ballastOffset: armOffset(arm) });
const byHand = (ballastMass: number): number =>
  largestLeanByHand({
    totalMass: 0.955,
    centreOfGravityHeight: 0.145,
    rightingMoment: momentOf(ballastMass),
  });

/** An arm held level is an upright arm at the end of a travel of 90°. */
const forearm = (): number =>
  through(
    'actuator.arm-holding-moment',
    'moment',
  )({
    ballastMass: 50 * 0.45359237,
    armLength: 13 * 0.0254,
    direction: 1,
    travel: Math.PI / 2,
    lean: 0,
  });

export const ballastChecks: readonly MechanicsCheck[] = [
  {
    id: 'heel of a ship from a weight moved across',
    source: `${NICHOLLS}, no. 18 (GM 2.37 ft for a heel of 8°)`,
    status: 'read',
    what: 'heel from 100 tons moved 30 ft in a ship of 9000, as a vehicle upside down, °',
    printed: '8',
    computed: () =>
      degrees(
        largestLean({
          ballastMass: 100,
          ballastOffset: 30,
          ballastHeight: 0,
          firstMomentWithout: 9000 * 2.37,
        }),
      ),
  },
  {
    id: 'the same heel over a travel',
    source: `${NICHOLLS}, no. 18, the weight at the end of an arm that sweeps level`,
    status: 'read',
    what: 'largest heel, °',
    printed: '8',
    computed: () =>
      degrees(
        through(
          'ballast.largest-lean-over-travel',
          'lean',
        )({
          ballastMass: 100,
          pivotHeight: 0,
          armLength: 30,
          direction: 1,
          pivotTilt: Math.PI / 2,
          travel: Math.PI / 2,
          firstMomentWithout: 9000 * 2.37,
        }),
      ),
  },
  {
    id: 'forearm',
    source: `${OSUP}, example 12.4`,
    status: 'read',
    what: 'pull at 1.5 in that holds 50 lb at 13.0 in, lb',
    printed: '433.3',
    computed: () => forearm() / (1.5 * 0.0254) / POUND_FORCE,
  },
  {
    id: 'skier on a slope',
    source: 'OpenStax, College Physics, skier of 60.0 kg on 25°; answer seen second-hand',
    status: 'statement',
    what: 'force along the slope over the mass, m/s²',
    printed: '4.14',
    computed: () =>
      through('actuator.slide-holding-force', 'force')({ ballastMass: 60, lean: radians(25) }) / 60,
  },
  {
    id: 'toppling without the rotor',
    source: 'independent computation, growth rate of an upright vehicle of 3 N·m/rad and 0.05 kg·m²',
    status: 'independent',
    what: 'growth rate without a rotor, 1/s',
    printed: '7.745967',
    computed: () => 1 / timeConstant({ firstMoment: 3 / GRAVITY(), rollInertia: 0.05 }),
  },
  {
    id: 'toppling of the worked loop case',
    source: 'independent computation, τ₀ of the worked loop case',
    status: 'independent',
    what: 'toppling time constant, s',
    printed: '0.137152698',
    computed: () => timeConstant({ firstMoment: 0.492, rollInertia: 0.09076 }),
  },
  {
    id: '73 g',
    source: PRACTICE,
    status: 'practice',
    what: 'righting moment on 115 mm at 45°, N·m',
    printed: '0.058',
    computed: () => momentOf(0.073),
  },
  {
    id: '955 g at 145 mm',
    source: PRACTICE,
    status: 'practice',
    what: 'toppling moment over the sine of the lean, N·m',
    printed: '1.36',
    computed: () =>
      stiffness({
        firstMoment: through('mass.first-moment', 'firstMoment')({ masses: [0.955], heights: [0.145] }),
        ...anyInertia,
      }),
  },
  {
    id: '73 g, lean',
    source: PRACTICE,
    status: 'practice',
    what: 'lean held, by hand, °',
    printed: '2.5',
    computed: () => degrees(byHand(0.073)),
  },
  {
    id: '590 g',
    source: PRACTICE,
    status: 'practice',
    what: 'righting moment on the same arm, N·m',
    printed: '0.47',
    computed: () => momentOf(0.59),
  },
  {
    id: '590 g, lean',
    source: PRACTICE,
    status: 'practice',
    what: 'lean held, by hand, °',
    printed: '20',
    computed: () => degrees(byHand(0.59)),
  },
  {
    id: '590 g, a third of g by the moment',
    source: `${PRACTICE}: about a third of g`,
    status: 'practice',
    what: 'g over the moment by hand per mass and height: one part in',
    printed: '3',
    computed: () => (GRAVITY() * 0.955 * 0.145) / momentOf(0.59),
  },
  {
    id: '590 g, a third of g by the lean',
    source: `${PRACTICE}: about a third of g`,
    status: 'practice',
    what: 'g over the lateral limit of the lean by hand: one part in',
    printed: '3',
    computed: () => GRAVITY() / lateralLimit({ largestLean: byHand(0.59) }),
  },
];
