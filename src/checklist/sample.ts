/** A vehicle that the tests of this folder go by: rotor, gimbal, arm and pack, every figure entered. */
import { assess } from '../margins/index.ts';
import type { KnownQuantity, Prototype, Revision } from '../notebook/index.ts';
import type { Subject } from './card.ts';

export function known(si: number, u = 0): KnownQuantity {
  return { typed: String(si), si, u, basis: 'measured' };
}

const RPM = Math.PI / 30;

export const samplePrototype: Prototype = {
  name: 'Sandpiper',
  kind: 'inline two-wheeler',
  description: '',
  createdAt: '2025-03-01T09:00:00Z',
  requirements: { overspeedFactor: known(1.2), leanToRecover: known(0.06) },
};

export const sampleRevision: Revision = {
  prototype: 'p1',
  letter: 'C',
  status: 'issued',
  reason: '',
  createdAt: '2025-03-01T09:00:00Z',
  weighedMass: known(1.862, 0.002),
  parts: {
    frame: {
      name: 'Frame',
      order: 1,
      role: 'structure',
      mass: known(0.9, 0.001),
      x: known(0.1),
      y: known(0),
      z: known(0.1),
      body: { shape: 'point' },
    },
    rotor: {
      name: 'Rotor',
      order: 2,
      role: 'rotor',
      mass: known(0.3, 0.0005),
      x: known(0.1),
      y: known(0),
      z: known(0.14),
      body: { shape: 'point' },
    },
    ballast: {
      name: 'Ballast',
      order: 3,
      role: 'ballast',
      mass: known(0.25, 0.0005),
      x: known(0.12),
      y: known(0),
      body: { shape: 'point' },
    },
  },
  rotor: {
    material: 'steel',
    density: known(7850, 20),
    yieldStrength: known(250e6, 10e6),
    poissonRatio: known(0.29, 0.01),
    largestSpeed: known(8000 * RPM),
    motorSpeedConstant: known(920 * RPM, 20 * RPM),
    sections: {
      rim: {
        name: 'rim',
        order: 1,
        outerDiameter: known(0.1, 5e-5),
        boreDiameter: known(0.08, 5e-5),
        thickness: known(0.0135, 5e-5),
      },
    },
  },
  gimbal: { travel: known(Math.PI / 4), inertia: known(9e-4, 2e-5), friction: known(0.005, 0.001) },
  ballast: {
    kind: 'upright arm',
    pivotHeight: known(0.18, 0.001),
    armLength: known(0.095, 0.0005),
    travel: known(Math.PI / 4, 0.01),
  },
  actuator: {
    stallMoment: known(1.2, 0.1),
    noLoadSpeed: known(8),
    naturalFrequency: known(45, 2),
    dampingRatio: known(0.7, 0.05),
  },
  loop: {
    leanGain: known(2),
    rateGain: known(0.1),
    gimbalGain: known(0.7),
    sampleTime: known(0.005),
    delay: known(0.018, 0.002),
    sensorLag: known(0.008, 0.001),
    rateSource: 'rate gyro',
  },
  pack: {
    chemistry: 'lithium-ion',
    cellsInSeries: 3,
    capacity: known(2.2 * 3600),
    resistance: known(0.045, 0.005),
    largestCurrent: known(40),
    meanCurrent: known(3.5, 0.3),
    peakCurrent: known(18, 1),
    usableShare: known(0.8),
    fuseRating: known(25),
  },
  fittings: { radio: true, independentKill: true, driven: false },
};

/** The sample with some of its revision changed; a field set to undefined is taken away. */
export function sample(changes: { readonly [K in keyof Revision]?: Revision[K] | undefined } = {}): Subject {
  const merged = Object.fromEntries(
    Object.entries({ ...sampleRevision, ...changes }).filter(([, value]) => value !== undefined),
  ) as Revision;
  return { prototype: samplePrototype, revision: merged, assessment: assess(samplePrototype, merged) };
}
