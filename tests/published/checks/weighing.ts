/** The centre of gravity by weighing and hanging, against published examples and measured data. */
import { BROWSER, fork, frame } from './hung-bicycle.ts';
import { type MechanicsCheck, solveRising } from './published-check.ts';
import { through } from './through.ts';
import { radians } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const SFTE = 'Society of Flight Test Engineers, Reference Handbook 2013, section 7.2';
const NICHOLLS = 'Nicholls’s Seamanship and Nautical Knowledge, exercises on stability';
const incliningHeight = through('weighing.inclining', 'height');
const boardDistance = through('weighing.board', 'distance');

export const weighingChecks: readonly MechanicsCheck[] = [
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
];
