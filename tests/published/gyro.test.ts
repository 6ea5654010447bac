/** Gyroscopes against published examples and independent computations. */
import { describe, it } from 'vitest';
import {
  cylinderInertiaAcrossAxis,
  cylinderInertiaAlongAxis,
  nutationFrequency,
  rightingMoment,
  slowTopplingTime,
  spinMomentum,
  standardGravity,
  timeToStop,
  toppling,
} from '../../src/mechanics/index.ts';
import { expectPrinted, type PublishedCheck } from './printed.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const BSC = 'Balabhaskar et al., BSc 1st Year Physics, ch. 3 (textbook companion)';
const INDEPENDENT = 'independent computation, numerical roots of the characteristic polynomial';

/**
 * Precession of a gyroscope under its own weight: how fast the axis turns is the travel over the time that a constant
 * moment takes for it, for a travel so small that it stands at right angles all the way. `gravity` is the source's.
 */
function precession(mass: number, arm: number, momentum: number, gravity: number): number {
  const moment = rightingMoment({ ballastMass: mass, ballastOffset: arm }) * (gravity / standardGravity);
  const travel = 1e-5;
  return travel / timeToStop({ spinMomentum: momentum, gimbalTravel: travel, moment });
}

const discMomentum = (mass: number, radius: number, speed: number): number =>
  spinMomentum({ inertia: cylinderInertiaAlongAxis({ mass, diameter: 2 * radius }), speed });

const turns = (perSecond: number): number => 2 * Math.PI * perSecond;

/** A vehicle of 0.05 kg·m² that topples with 3 N·m/rad, as the independent computation has it. */
const small = { spinMomentum: 0.1, stiffness: 3, gimbalInertia: 2e-4 };

const checks: readonly PublishedCheck[] = [
  {
    id: 'gyroscope with a disc of 0.30 kg',
    source: `${OSUP}, example 11.10`,
    what: 'precession, rad/s',
    printed: '3.12',
    computed: () => precession(0.3, 0.05, discMomentum(0.3, 0.05, turns(20)), 9.8),
  },
  {
    id: 'gyroscope with a disc of 0.5 kg',
    source: `${OSUP}, section 11.4, problem`,
    what: 'precession, rad/s',
    printed: '1.17',
    computed: () => precession(0.5, 0.15, discMomentum(0.5, 0.1, turns(40)), 9.8),
  },
  {
    id: 'sphere on a stem',
    source: `${BSC}, example 6`,
    what: 'precession, rad/s',
    printed: '12.19',
    computed: () =>
      precession(0.05, 0.025, spinMomentum({ inertia: 0.4 * 0.05 * 0.02 ** 2, speed: turns(20) }), 9.8),
  },
  {
    id: 'wheel by its radius of gyration',
    source: `${BSC}, example 8`,
    what: 'precession, rad/s',
    printed: '1.2',
    computed: () => precession(1, 0.05, spinMomentum({ inertia: 0.06 ** 2, speed: turns(18) }), 9.8),
  },
  {
    id: 'wobble of a thin disc',
    source:
      'Torque-free wobble of a thin disc, two to one: Physics LibreTexts (rate = momentum over transverse inertia)',
    what: 'wobble over spin, equal inertias about both tilting axes',
    printed: '2.00',
    computed: () => {
      const across = cylinderInertiaAcrossAxis({ mass: 0.3, diameter: 0.25, length: 0 });
      const momentum = discMomentum(0.3, 0.125, 1);
      return nutationFrequency({ spinMomentum: momentum, rollInertia: across, gimbalInertia: across });
    },
  },
  {
    id: 'body-fixed precession of a thin disc',
    source: `${BSC}, example 14`,
    what: '(I_z − I_x)/I_x × 20 rev/s, rev/s',
    printed: '20',
    computed: () => {
      const across = cylinderInertiaAcrossAxis({ mass: 1, diameter: 0.2, length: 0 });
      return ((cylinderInertiaAlongAxis({ mass: 1, diameter: 0.2 }) - across) / across) * 20;
    },
  },
  {
    id: 'nutation of a small prototype',
    source: INDEPENDENT,
    what: 'imaginary root with the gimbal’s share, √(ω² − K/I), rad/s',
    printed: '30.65941943',
    computed: () => {
      const nutation = nutationFrequency({ ...small, rollInertia: 0.05 });
      const fall = toppling({ firstMoment: 3 / standardGravity, rollInertia: 0.05 }).timeConstant;
      return Math.sqrt(nutation ** 2 - 1 / fall ** 2);
    },
  },
  {
    id: 'slow toppling of a small prototype, estimate',
    source: INDEPENDENT,
    what: 'growth rate c K/(H² − K I_g), 1/s',
    printed: '0.638298',
    computed: () => 1 / slowTopplingTime({ ...small, gimbalFriction: 0.002 }),
  },
  {
    id: 'toppling without the rotor',
    source: INDEPENDENT,
    what: 'growth rate, 1/s',
    printed: '7.745967',
    computed: () => 1 / toppling({ firstMoment: 3 / standardGravity, rollInertia: 0.05 }).timeConstant,
  },
  {
    id: 'toppling of the worked loop case',
    source: 'independent computation, τ₀ of the worked loop case',
    what: 'toppling time constant, s',
    printed: '0.137152698',
    computed: () => toppling({ firstMoment: 0.492, rollInertia: 0.09076 }).timeConstant,
  },
];

describe('gyroscopes as published', () => {
  it.each(checks)('$id: $what, $printed ($source)', ({ computed, printed }) => {
    expectPrinted(computed(), printed);
  });
});
