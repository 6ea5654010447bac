/**
 * What the poles of a loop are, in words: which part of the vehicle moves in each of them, and what it does in time. A
 * builder sees a wobble or a slow lean, not a pole.
 */
import { type BalanceLoop, closedLoopMatrix } from './balance-loop.ts';
import { type Mode, mode } from './closed-loop-poles.ts';
import { type Complex, type ComplexVector, complexVector } from './complex.ts';
import { eigenvalues } from './eigenvalues.ts';
import { type NeutralMode, neutralModeText, type PlantState } from './linear-plant.ts';
import { createResolvent } from './resolvent.ts';

/** What moves. */
export type Part = 'vehicle' | 'gimbal' | 'drive' | 'sensors' | 'delay';

export type ModeName = 'topple' | 'slow topple' | 'nutation' | 'actuator' | 'sensor' | 'delay' | 'neutral';

export interface NamedMode {
  readonly name: ModeName;
  /** s, 1/s, the one with im ≥ 0 of a pair; 0 for a neutral mode. */
  readonly s: Complex;
  /** How much of the motion is whose, together 1. */
  readonly shares: Readonly<Record<Part, number>>;
  /** In a sentence or two, with figures. */
  readonly text: string;
}

/** A second part is named with a mode where its share is at least this. */
const WORTH_NAMING = 0.3;
/** A swing within this factor of H/√(I I_g) is nutation. */
const NEAR_NUTATION = 3;

const partOf: Readonly<Record<PlantState, Part>> = {
  lean: 'vehicle',
  'lean rate': 'vehicle',
  'gimbal tilt': 'gimbal',
  'gimbal rate': 'gimbal',
  'ballast offset': 'drive',
  'ballast rate': 'drive',
  'lagged lean': 'sensors',
  'lagged rate': 'sensors',
};

/**
 * The modes of the vehicle with nobody at the controls, fastest to fall first; neutral ones last.
 *
 * Source: participation factors |vᵢ wᵢ| of right and left eigenvectors (I. J. Pérez-Arriaga, G. C. Verghese,
 * F. C. Schweppe 1982); their names by which part has the most.
 */
export function openLoopModes(loop: BalanceLoop): NamedMode[] {
  const { plant } = loop;
  const parts = plant.states.map((state) => partOf[state]);
  return named(loop, plant.a, parts, (pole) => pole);
}

/** The modes of the closed loop, slowest to die out first; neutral ones last. Source as above. */
export function closedLoopModes(loop: BalanceLoop): NamedMode[] {
  const { matrix, order } = closedLoopMatrix(loop);
  const parts = Array.from({ length: order }, (_, i): Part => {
    const state = loop.plant.states[i];
    return state === undefined ? 'delay' : partOf[state];
  });
  return named(loop, matrix, parts, (z) => mode(z, loop.controller.sampleTime).s);
}

function named(
  loop: BalanceLoop,
  matrix: Float64Array,
  parts: readonly Part[],
  toContinuous: (pole: Complex) => Mode['s'],
): NamedMode[] {
  const modes = eigenvalues(matrix, parts.length)
    .filter(({ im }) => im >= 0)
    .map((pole) => {
      const s = toContinuous(pole);
      const shares = sharesOf(matrix, parts, pole);
      const name = nameOf(loop, s, shares);
      return { name, s, shares, text: textOf(name, s, shares) };
    })
    .sort((a, b) => b.s.re - a.s.re);
  return [...modes, ...loop.plant.neutralModes.map(neutral)];
}

function neutral(which: NeutralMode): NamedMode {
  return {
    name: 'neutral',
    s: { re: 0, im: 0 },
    shares: { vehicle: 0, gimbal: 1, drive: 0, sensors: 0, delay: 0 },
    text: neutralModeText[which],
  };
}

/** Participation of each part in one mode. */
function sharesOf(matrix: Float64Array, parts: readonly Part[], pole: Complex): Record<Part, number> {
  const order = parts.length;
  const scale = Math.hypot(pole.re, pole.im) || 1;
  const resolvent = createResolvent({ order, transition: matrix });
  // a little beside the pole, where the inverse is large and still there
  const near = { re: pole.re + 1e-9 * scale, im: pole.im + 1e-9 * scale };
  resolvent.moveToPoint(near);
  const right = towards(order, (v) => resolvent.column(v));
  const left = towards(order, (v) => resolvent.row(v));
  const products = parts.map((_, i) => sizeAt(right, i) * sizeAt(left, i));
  let sum = products.reduce((total, x) => total + x, 0);
  let weights = products;
  if (!(sum > 1e-12)) {
    // a chain of poles in one place, as an unused delay has: by the right eigenvector alone
    weights = parts.map((_, i) => sizeAt(right, i) ** 2);
    sum = weights.reduce((total, x) => total + x, 0);
  }
  const shares = { vehicle: 0, gimbal: 0, drive: 0, sensors: 0, delay: 0 };
  parts.forEach((part, i) => {
    shares[part] += (weights[i] ?? 0) / sum;
  });
  return shares;
}

/** Inverse iteration, three times, from a vector that is nothing special. */
function towards(order: number, inverse: (v: ComplexVector) => ComplexVector): ComplexVector {
  let v = complexVector(order);
  for (let i = 0; i < order; i++) {
    v.re[i] = 1 + ((7 * i + 3) % 11) / 11;
    v.im[i] = ((5 * i + 1) % 7) / 7;
  }
  for (let round = 0; round < 3; round++) {
    v = inverse(v);
    const size = Math.sqrt(v.re.reduce((sum, x, i) => sum + x * x + (v.im[i] ?? 0) ** 2, 0));
    for (let i = 0; i < order; i++) {
      v.re[i] = (v.re[i] ?? 0) / size;
      v.im[i] = (v.im[i] ?? 0) / size;
    }
  }
  return v;
}

function sizeAt(v: ComplexVector, i: number): number {
  return Math.hypot(v.re[i] ?? 0, v.im[i] ?? 0);
}

function nameOf({ hardware }: BalanceLoop, s: Complex, shares: Readonly<Record<Part, number>>): ModeName {
  const body = shares.vehicle + shares.gimbal;
  const others = [
    ['actuator', shares.drive],
    ['sensor', shares.sensors],
    ['delay', shares.delay],
  ] as const;
  const [name, most] = others.reduce((best, other) => (other[1] > best[1] ? other : best));
  if (most > body) return name;
  const { spinMomentum, rollInertia, gimbalInertia } = hardware;
  if (spinMomentum === 0) return 'topple';
  const nutation = spinMomentum / Math.sqrt(rollInertia * gimbalInertia);
  const speed = Math.hypot(s.re, s.im);
  return s.im > 0 && speed > nutation / NEAR_NUTATION && speed < nutation * NEAR_NUTATION
    ? 'nutation'
    : 'slow topple';
}

const openings: Readonly<Record<ModeName, string>> = {
  topple: 'Toppling',
  'slow topple': 'Slow toppling, which the rotor leaves of the fall',
  nutation: 'Nutation, the wobble of gimbal and vehicle against each other',
  actuator: 'The drive of the ballast going to its command',
  sensor: 'The lag of a sensor',
  delay: 'Commands on their way',
  neutral: 'Neutral',
};
const partTexts: Readonly<Record<Part, string>> = {
  vehicle: 'the vehicle',
  gimbal: 'the gimbal',
  drive: 'the drive',
  sensors: 'the sensors',
  delay: 'the delay',
};
const ownParts: Readonly<Record<ModeName, readonly Part[]>> = {
  topple: ['vehicle'],
  'slow topple': ['vehicle', 'gimbal'],
  nutation: ['vehicle', 'gimbal'],
  actuator: ['drive'],
  sensor: ['sensors'],
  delay: ['delay'],
  neutral: ['gimbal'],
};

function textOf(name: ModeName, { re, im }: Complex, shares: Readonly<Record<Part, number>>): string {
  const joined = (Object.entries(shares) as [Part, number][])
    .filter(([part, share]) => share >= WORTH_NAMING && !ownParts[name].includes(part))
    .map(([part]) => partTexts[part]);
  const together = joined.length > 0 ? `, together with ${joined.join(' and ')}` : '';
  const swing = im > 1e-9 ? `swings ${figure(im / (2 * Math.PI))} times a second` : 'does not swing';
  const course =
    re === Number.NEGATIVE_INFINITY
      ? 'over within the sample'
      : re < 0
        ? `down to a third in ${figure(-Math.log(3) / re)} s`
        : re > 0
          ? `three times as large every ${figure(Math.log(3) / re)} s`
          : 'neither growing nor dying out';
  return `${openings[name]}${together}: ${swing}, ${course}.`;
}

/** Three digits. */
function figure(value: number): string {
  return String(Number(value.toPrecision(3)));
}
