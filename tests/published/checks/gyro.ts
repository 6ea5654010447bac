/** Gyroscopes against published examples and independent computations. */
import type { MechanicsCheck } from './published-check.ts';
import { through } from './through.ts';
import { kmh, radians, rpm, turns, weightAt } from './units.ts';

const OSUP = 'OpenStax, University Physics Volume 1';
const BSC = 'Balabhaskar et al., BSc 1st Year Physics, ch. 3';
const KHURMI = 'Khurmi & Gupta, Theory of Machines, 14th ed. 2009';
const INDEPENDENT = 'independent computation, numerical roots of the characteristic polynomial';
const LIBRETEXTS =
  'Torque-free wobble of a thin disc, two to one: Physics LibreTexts (rate = momentum over transverse inertia)';

const spinMomentum = through('rotor.momentum', 'spinMomentum');
const cylinderAlong = through('body.cylinder-along-axis', 'inertia');
const cylinderAcross = through('body.cylinder-across-axis', 'inertia');
const heavyTop = through('gyro.heavy-top', 'precession');
const couple = through('gyro.couple', 'couple');
const peakCouple = through('gyro.peak-couple', 'couple');
const stabilising = through('gyro.stabilising-momentum', 'spinMomentum');
const nutation = through('gyro.nutation', 'frequency');

/** Precession with the source's g. */
const precession = (mass: number, arm: number, momentum: number, gravity: number): number =>
  heavyTop({ mass, arm, spinMomentum: momentum }) * weightAt(gravity);

const discMomentum = (mass: number, radius: number, speed: number): number =>
  spinMomentum({ inertia: cylinderAlong({ mass, diameter: 2 * radius }), speed });

/** Mass and radius of gyration, as textbooks give a rotor. */
const rotorMomentum = (mass: number, gyration: number, speed: number): number =>
  spinMomentum({ inertia: mass * gyration ** 2, speed });

/** A vehicle of 0.05 kg·m² that topples with 3 N·m/rad, as the independent computation has it. */
const small = { spinMomentum: 0.1, stiffness: 3, gimbalInertia: 2e-4 };
const disc = { across: () => cylinderAcross({ mass: 1, diameter: 0.2, length: 0 }) };

export const gyroChecks: readonly MechanicsCheck[] = [
  {
    id: 'gyroscope with a disc of 0.30 kg',
    source: `${OSUP}, example 11.10`,
    status: 'read',
    what: 'precession, rad/s',
    printed: '3.12',
    computed: () => precession(0.3, 0.05, discMomentum(0.3, 0.05, turns(20)), 9.8),
  },
  {
    id: 'gyroscope with a disc of 0.5 kg',
    source: `${OSUP}, section 11.4, problem`,
    status: 'read',
    what: 'precession, rad/s',
    printed: '1.17',
    computed: () => precession(0.5, 0.15, discMomentum(0.5, 0.1, turns(40)), 9.8),
  },
  {
    id: 'disc of 5 kg on a shaft of 600 mm',
    source: `${KHURMI}, example 14.1`,
    status: 'companion',
    what: 'precession at 300 rev/min, rad/s',
    printed: '16.7',
    computed: () => precession(5, 0.6, discMomentum(5, 0.15, rpm(300)), 9.81),
  },
  {
    id: 'sphere on a stem',
    source: `${BSC}, example 6`,
    status: 'companion',
    what: 'precession, rad/s',
    printed: '12.19',
    computed: () => {
      const inertia = through('body.sphere', 'inertia')({ mass: 0.05, diameter: 0.04 });
      return precession(0.05, 0.025, spinMomentum({ inertia, speed: turns(20) }), 9.8);
    },
  },
  {
    id: 'wheel by its radius of gyration',
    source: `${BSC}, example 8`,
    status: 'companion',
    what: 'precession, rad/s',
    printed: '1.2',
    computed: () => precession(1, 0.05, rotorMomentum(1, 0.06, turns(18)), 9.8),
  },
  {
    id: 'wheel of 5e-4 kg·m²',
    source: `${BSC}, example 4 (printed as a whole number)`,
    status: 'companion',
    what: 'precession, rad/s',
    printed: '2',
    computed: () => precession(0.5, 0.04, spinMomentum({ inertia: 5e-4, speed: turns(30) }), 9.8),
  },
  {
    id: 'precession by the time to the stop',
    source: `${OSUP}, example 11.10`,
    status: 'read',
    what: 'small travel over the time that the same moment takes for it, rad/s',
    printed: '3.12',
    computed: () => {
      const moment =
        through('ballast.righting-moment', 'moment')({ ballastMass: 0.3, ballastOffset: 0.05 }) *
        weightAt(9.8);
      const momentum = discMomentum(0.3, 0.05, turns(20));
      const stroke = { spinMomentum: momentum, gimbalTravel: 1e-5, initialTilt: 0 };
      return 1e-5 / through('gyro.time-to-stop', 'time')({ ...stroke, moment });
    },
  },
  {
    id: 'precession by the momentum reserve',
    source: `${OSUP}, example 11.10`,
    status: 'read',
    what: 'small travel over reserve and moment, rad/s',
    printed: '3.12',
    computed: () => {
      const reserve = through(
        'gyro.momentum-reserve',
        'reserve',
      )({
        spinMomentum: discMomentum(0.3, 0.05, turns(20)),
        gimbalTravel: 1e-5,
      });
      return 1e-5 / through('gyro.time-to-saturation', 'time')({ reserve, moment: 0.3 * 9.8 * 0.05 });
    },
  },
  {
    id: 'gyroscopic couple, aeroplane',
    source: `${KHURMI}, example 14.3`,
    status: 'companion',
    what: 'couple of 400 kg, k 0.3 m, 2400 rev/min in a turn of 50 m at 200 km/h, kN·m',
    printed: '10.053',
    computed: () =>
      couple({ spinMomentum: rotorMomentum(400, 0.3, rpm(2400)), turnRate: kmh(200) / 50 }) / 1e3,
  },
  {
    id: 'gyroscopic couple, ship pitching at 1 rad/s',
    source: `${KHURMI}, example 14.5`,
    status: 'companion',
    what: 'couple of 750 kg, k 0.25 m, 1500 rev/min, kN·m',
    printed: '7.363',
    computed: () => couple({ spinMomentum: rotorMomentum(750, 0.25, rpm(1500)), turnRate: 1 }) / 1e3,
  },
  {
    id: 'gyroscopic couple, ship steering',
    source: `${KHURMI}, example 14.6`,
    status: 'companion',
    what: 'couple of 3500 kg, k 0.45 m, 3000 rev/min on 100 m at 36 km/h, kN·m',
    printed: '22.27',
    computed: () =>
      couple({ spinMomentum: rotorMomentum(3500, 0.45, rpm(3000)), turnRate: kmh(36) / 100 }) / 1e3,
  },
  {
    id: 'gyroscopic couple, ship pitching slowly',
    source: `${KHURMI}, example 14.6`,
    status: 'companion',
    what: 'largest couple of the same rotor, ±6° in 40 s, kN·m',
    printed: '3.663',
    computed: () =>
      peakCouple({
        spinMomentum: rotorMomentum(3500, 0.45, rpm(3000)),
        amplitude: radians(6),
        frequency: (2 * Math.PI) / 40,
      }) / 1e3,
  },
  {
    id: 'gyroscopic couple, ship pitching',
    source: `${KHURMI}, example 14.7`,
    status: 'companion',
    what: 'largest couple of 20 t, k 0.6 m, 2000 rev/min, ±6° in 30 s, kN·m',
    printed: '33.073',
    computed: () =>
      peakCouple({
        spinMomentum: rotorMomentum(20e3, 0.6, rpm(2000)),
        amplitude: radians(6),
        frequency: (2 * Math.PI) / 30,
      }) / 1e3,
  },
  {
    id: 'acceleration of a pitching ship',
    source: `${KHURMI}, example 14.7`,
    status: 'companion',
    what: 'largest acceleration of ±6° in 30 s, rad/s²',
    printed: '0.0046',
    computed: () =>
      through(
        'gyro.peak-couple',
        'acceleration',
      )({
        spinMomentum: 1,
        amplitude: radians(6),
        frequency: (2 * Math.PI) / 30,
      }),
  },
  {
    id: 'wheel set of a locomotive, couple',
    source: `${KHURMI}, example 14.14`,
    status: 'companion',
    what: 'couple of 180 kg·m² at 95 km/h when a rail dips 6 mm in 0.1 s over 1.5 m, N·m',
    printed: '663.2',
    computed: () =>
      peakCouple({
        spinMomentum: through(
          'turn.wheel-momentum',
          'momentum',
        )({
          wheelInertias: [180],
          wheelRadius: 0.9,
          speed: kmh(95),
        }),
        amplitude: 0.003 / 1.5,
        frequency: (2 * Math.PI) / 0.1,
      }),
  },
  {
    id: 'wheel set of a locomotive, rail',
    source: `${KHURMI}, example 14.14`,
    status: 'companion',
    what: 'reaction at the rails of a couple of 663.2 N·m over 1.5 m, N',
    printed: '442',
    computed: () =>
      through(
        'gyro.bearing-load',
        'gyroLoad',
      )({
        spinMomentum: 663.2,
        turnRate: 1,
        bearingSpan: 1.5,
      }),
  },
  {
    id: 'gyroscopic couple in feet and pounds',
    source: 'T. Bevan, The Theory of Machines, 3rd ed., ch. 2, example 13',
    status: 'companion',
    what: 'couple of 250 lb·ft², 1600 rev/min in a turn of 500 ft at 150 mph, g 32.2, lbf·ft',
    printed: '572',
    computed: () =>
      couple({
        spinMomentum: spinMomentum({ inertia: 250 / 32.2, speed: rpm(1600) }),
        turnRate: (150 * 5280) / 3600 / 500,
      }),
  },
  {
    id: 'disc tilted 1° on its shaft',
    source: `${KHURMI}, example 14.17`,
    status: 'companion',
    what: 'couple of 30 kg, 0.6 m diameter, 1200 rev/min, N·m',
    printed: '186',
    computed: () =>
      through(
        'gyro.tilted-rotor',
        'couple',
      )({
        spinInertia: cylinderAlong({ mass: 30, diameter: 0.6 }),
        transverseInertia: cylinderAcross({ mass: 30, diameter: 0.6, length: 0 }),
        speed: rpm(1200),
        tilt: radians(1),
      }),
  },
  {
    id: 'wobble of a thin disc in space',
    source: LIBRETEXTS,
    status: 'read',
    what: 'wobble over spin',
    printed: '2.00',
    computed: () =>
      through(
        'gyro.free-wobble',
        'spaceRate',
      )({
        spinInertia: cylinderAlong({ mass: 1, diameter: 0.2 }),
        transverseInertia: disc.across(),
        speed: 1,
      }),
  },
  {
    id: 'wobble of a thin disc in itself',
    source: `${BSC}, example 14`,
    status: 'companion',
    what: 'wobble in the body at 20 rev/s, rev/s',
    printed: '20',
    computed: () =>
      through(
        'gyro.free-wobble',
        'bodyRate',
      )({
        spinInertia: cylinderAlong({ mass: 1, diameter: 0.2 }),
        transverseInertia: disc.across(),
        speed: 20,
      }),
  },
  {
    id: 'wobble of a thin disc between two equal inertias',
    source: LIBRETEXTS,
    status: 'read',
    what: 'nutation over spin, equal inertias about both tilting axes',
    printed: '2.00',
    computed: () =>
      nutation({
        spinMomentum: discMomentum(1, 0.1, 1),
        rollInertia: disc.across(),
        gimbalInertia: disc.across(),
      }),
  },
  {
    id: 'nutation of a small prototype',
    source: INDEPENDENT,
    status: 'independent',
    what: 'imaginary root with the gimbal’s share, √(ω² − K/I), rad/s',
    printed: '30.65941943',
    computed: () =>
      Math.sqrt(nutation({ spinMomentum: 0.1, gimbalInertia: 2e-4, rollInertia: 0.05 }) ** 2 - 3 / 0.05),
  },
  {
    id: 'slow toppling of a small prototype, estimate',
    source: INDEPENDENT,
    status: 'independent',
    what: 'growth rate c K/(H² − K I_g), 1/s',
    printed: '0.638298',
    computed: () => 1 / through('gyro.slow-toppling', 'timeConstant')({ ...small, gimbalFriction: 0.002 }),
  },
  {
    id: 'least momentum, unit case',
    source: `${INDEPENDENT}; stability is lost between 1.99 and 2.01`,
    status: 'independent',
    what: 'H_min for K = I = I_g = 1, k = −1',
    printed: '2.00',
    computed: () => stabilising({ stiffness: 1, rollInertia: 1, gimbalInertia: 1, centring: -1 }),
  },
  {
    id: 'least momentum, stiffer gimbal',
    source: `${INDEPENDENT}; stability is lost between 2.99 and 3.01`,
    status: 'independent',
    what: 'H_min for K = I = I_g = 1, k = −4',
    printed: '3.00',
    computed: () => stabilising({ stiffness: 1, rollInertia: 1, gimbalInertia: 1, centring: -4 }),
  },
  {
    id: 'least momentum of a small prototype, free gimbal',
    source: INDEPENDENT,
    status: 'independent',
    what: 'H_min, N·m·s',
    printed: '0.0244948974',
    computed: () => stabilising({ stiffness: 3, rollInertia: 0.05, gimbalInertia: 2e-4, centring: 0 }),
  },
  {
    id: 'least momentum of a small prototype, top-heavy gimbal',
    source: INDEPENDENT,
    status: 'independent',
    what: 'H_min for k = −0.02 N·m/rad, N·m·s',
    printed: '0.0561176740',
    computed: () => stabilising({ stiffness: 3, rollInertia: 0.05, gimbalInertia: 2e-4, centring: -0.02 }),
  },
  {
    id: 'rotor as a damper',
    source: `${INDEPENDENT}: a controlled lean with H²/c in the place of the gimbal, −1.5 ± 7.59934208 i`,
    status: 'independent',
    what: 'imaginary part for K_p 6, K_d 0.1, c 0.2, rad/s',
    printed: '7.59934208',
    computed: () => {
      const damping =
        0.1 + through('gyro.roll-damping', 'damping')({ spinMomentum: 0.1, gimbalFriction: 0.2 });
      return Math.sqrt((6 - 3) / 0.05 - (damping / (2 * 0.05)) ** 2);
    },
  },
  {
    id: 'disc dropped on another',
    source: `${OSUP}, example 11.7`,
    status: 'read',
    what: 'speed after I₀ at 600 rev/min is dropped on 3 I₀ at rest, rev/min',
    printed: '150',
    computed: () => {
      const momentum = spinMomentum({ inertia: 1, speed: rpm(600) });
      const seizure = { spinMomentum: momentum, rotorInertia: 1, bodyInertia: 3 };
      return through('rotor.seizure', 'bodyRate')(seizure) / rpm(1);
    },
  },
  {
    id: 'disc dropped on another, energy',
    source: `${OSUP}, example 11.7`,
    status: 'read',
    what: 'share of the energy that is lost',
    printed: '0.75',
    computed: () =>
      through('rotor.seizure', 'lostShare')({ spinMomentum: 1, rotorInertia: 1, bodyInertia: 3 }),
  },
  {
    id: 'clutch of two flywheels',
    source: `${KHURMI}, example 3.12`,
    status: 'companion',
    what: 'speed of 60 kg (k 0.14 m, 750 rev/min) and 20 kg (k 0.08 m) together, rad/s',
    printed: '70.8',
    computed: () =>
      through(
        'rotor.seizure',
        'bodyRate',
      )({
        spinMomentum: rotorMomentum(60, 0.14, rpm(750)),
        rotorInertia: 60 * 0.14 ** 2,
        bodyInertia: 20 * 0.08 ** 2,
      }),
  },
  {
    id: 'clutch of two flywheels, energy',
    source: `${KHURMI}, example 3.12`,
    status: 'companion',
    what: 'energy that is lost, J',
    printed: '356',
    computed: () => {
      const inertia = 60 * 0.14 ** 2;
      const energy = through('rotor.energy', 'energy')({ inertia, speed: rpm(750) });
      return (
        energy *
        through(
          'rotor.seizure',
          'lostShare',
        )({
          spinMomentum: 1,
          rotorInertia: inertia,
          bodyInertia: 20 * 0.08 ** 2,
        })
      );
    },
  },
];
