/**
 * A small inline two-wheeler with everything on it, for tests: a weighed mass table, a gimballed rotor, a ballast on
 * an arm, a loop and a pack. Invented, but of the size that people build.
 */
import type { Basis, KnownQuantity, Part, Prototype, Revision } from '../../src/notebook/index.ts';

/** A field as somebody measured it. */
export function measured(si: number, u = 0, basis: Basis = 'measured'): KnownQuantity {
  return { typed: String(si), si, u, basis };
}

export function part(name: string, order: number, fields: Partial<Part>): Part {
  return { name, order, role: 'structure', body: { shape: 'point' }, ...fields };
}

const degrees = (angle: number): number => (angle * Math.PI) / 180;
const rpm = (speed: number): number => (speed * Math.PI) / 30;

export const prototype: Prototype = {
  name: 'Specimen',
  kind: 'inline two-wheeler',
  description: '',
  createdAt: '2025-03-01T09:00:00Z',
  requirements: {
    leanToRecover: measured(degrees(5)),
    lateralAcceleration: measured(0.6),
    turnRadius: measured(3),
    turnSpeed: measured(1.2, 0.05),
    crossSlope: measured(degrees(3)),
    disturbanceReserve: measured(degrees(1.5)),
    runTime: measured(480),
    overspeedFactor: measured(1.2),
    gainMargin: measured(1.5),
    delayMargin: measured(0.01),
    gimbalTime: measured(0.4),
  },
};

export const revision: Revision = {
  prototype: 'specimen',
  letter: 'A',
  status: 'draft',
  reason: '',
  createdAt: '2025-03-01T09:00:00Z',
  weighedMass: measured(2.31, 0.001),
  parts: {
    frame: part('Frame', 1, {
      mass: measured(0.61, 0.0005),
      x: measured(0.18, 0.001),
      y: measured(0, 0.0005),
      z: measured(0.075, 0.001),
      body: { shape: 'box', length: measured(0.34), width: measured(0.05), height: measured(0.04) },
    }),
    tray: part('Tray', 2, {
      mass: measured(0.107, 0.0005),
      x: measured(0.12, 0.001),
      y: measured(-0.004, 0.0005),
      z: measured(0.112, 0.001),
      body: { shape: 'box', length: measured(0.12), width: measured(0.08), height: measured(0.003) },
    }),
    flywheel: part('Flywheel', 3, {
      role: 'rotor',
      mass: measured(0.59, 0.0005),
      x: measured(0.2, 0.001),
      z: measured(0.13, 0.001),
      body: { shape: 'cylinder', axis: 'z', diameter: measured(0.1), length: measured(0.01) },
    }),
    pack: part('Pack', 4, {
      role: 'pack',
      mass: measured(0.21, 0.0005),
      x: measured(0.09, 0.001),
      y: measured(0, 0.0005),
      z: measured(0.06, 0.002),
      body: { shape: 'box', length: measured(0.105), width: measured(0.034), height: measured(0.026) },
    }),
    wheels: part('Wheels', 5, {
      mass: measured(0.38, 0.0005),
      x: measured(0.17, 0.001),
      y: measured(0),
      z: measured(0.05, 0.0005),
      body: {
        shape: 'tube',
        axis: 'y',
        diameter: measured(0.1),
        bore: measured(0.07),
        length: measured(0.02),
      },
    }),
    ballast: part('Ballast', 6, {
      role: 'ballast',
      mass: measured(0.41, 0.0005),
      x: measured(0.15, 0.001),
      body: { shape: 'cylinder', axis: 'x', diameter: measured(0.05), length: measured(0.027) },
    }),
  },
  rotor: {
    material: 'steel',
    density: measured(7850, 40, 'data sheet'),
    yieldStrength: measured(250e6, 10e6, 'data sheet'),
    poissonRatio: measured(0.29, 0, 'data sheet'),
    largestSpeed: measured(rpm(8500), rpm(25)),
    motorSpeedConstant: measured(rpm(920), rpm(20), 'data sheet'),
    sections: {
      disc: {
        name: 'Disc',
        order: 1,
        outerDiameter: measured(0.1, 0.0001),
        boreDiameter: measured(0.006, 0.00005),
        thickness: measured(0.0096, 0.00005),
      },
    },
  },
  gimbal: {
    travel: measured(degrees(40), degrees(0.5)),
    inertia: measured(4.5e-4, 2e-5, 'calculated'),
    friction: measured(0.004, 0.0005),
  },
  ballast: {
    kind: 'upright arm',
    pivotHeight: measured(0.06, 0.0005),
    armLength: measured(0.085, 0.0005),
    travel: measured(degrees(55), degrees(0.5)),
  },
  actuator: {
    stallMoment: measured(1.2, 0.1, 'data sheet'),
    noLoadSpeed: measured(degrees(420), degrees(20), 'data sheet'),
    naturalFrequency: measured(60, 1.5),
    dampingRatio: measured(0.8, 0.03),
  },
  loop: {
    leanGain: measured(2.4),
    rateGain: measured(0.1),
    gimbalGain: measured(0.3),
    sampleTime: measured(0.005),
    delay: measured(0.008, 0.0005),
    sensorLag: measured(0.002, 0.0003),
    rateSource: 'rate gyro',
  },
  pack: {
    chemistry: 'lithium-ion',
    cellsInSeries: 3,
    capacity: measured(2.2 * 3600, 80, 'data sheet'),
    resistance: measured(0.045, 0.005),
    largestCurrent: measured(40, 0, 'data sheet'),
    meanCurrent: measured(8, 0.5),
    peakCurrent: measured(22, 1),
    usableShare: measured(0.8),
    fuseRating: measured(30, 0, 'data sheet'),
  },
  fittings: { radio: true, independentKill: true, driven: false },
};

/** The records with one path set to another value (or taken out), segments joined by `/`. */
export function withValue<T extends object>(record: T, path: string, value: unknown): T {
  const [head = '', ...rest] = path.split('/');
  const held = (record as Readonly<Record<string, unknown>>)[head];
  if (rest.length === 0) {
    const { [head]: _, ...others } = record as Record<string, unknown>;
    return (value === undefined ? others : { ...record, [head]: value }) as T;
  }
  return { ...record, [head]: withValue((held ?? {}) as object, rest.join('/'), value) };
}
