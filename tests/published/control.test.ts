/**
 * The sampled model of the loop against published figures: exact hold, digital control of a pendulum, and the roots of
 * a vehicle with a gimballed rotor.
 */
import { describe, expect, it } from 'vitest';
import {
  type BalanceHardware,
  closedLoopPoles,
  discretise,
  eigenvalues,
  type LinearPlant,
  linearPlant,
  type SampledLoop,
  type StateSpace,
  spectralRadius,
} from '../../src/control/index.ts';
import { standardGravity } from '../../src/mechanics/index.ts';
import { realise } from './continuous-loop.ts';
import { expectPrinted, type PublishedCheck } from './printed.ts';

const INDEPENDENT = 'computed independently in 16 digits or more';

const square = (...rows: readonly (readonly number[])[]): Float64Array => Float64Array.from(rows.flat());
const entry = (m: Float64Array, i: number): number => m[i] ?? Number.NaN;

/** Numerator and denominator in z of a held second-order plant with a fractional delay. */
function transferInZ(
  numerator: readonly number[],
  denominator: readonly number[],
  sampleTime: number,
  delay: number,
): { readonly numerator: number[]; readonly denominator: number[] } {
  const { output, ...plant } = realise(numerator, denominator);
  const { transition: p, input, inputBefore } = discretise(plant, sampleTime, delay);
  const [p11, p12, p21, p22] = [0, 1, 2, 3].map((i) => entry(p, i)) as [number, number, number, number];
  // adj(z I − Φ) = z I + N with N = Φ − tr Φ
  const read = (v: Float64Array): number => entry(output, 0) * entry(v, 0) + entry(output, 1) * entry(v, 1);
  const adjoint = (v: Float64Array): number =>
    read(Float64Array.of(-p22 * entry(v, 0) + p12 * entry(v, 1), p21 * entry(v, 0) - p11 * entry(v, 1)));
  return {
    numerator: [read(input), read(inputBefore) + adjoint(input), adjoint(inputBefore)],
    denominator: [1, -(p11 + p22), p11 * p22 - p12 * p21],
  };
}

const PENDULUM: StateSpace = { order: 2, a: Float64Array.of(0, 1, 25, 0), b: Float64Array.of(0, 1) };
/** PD on the sampled pendulum, with whole samples of delay. */
const digitalPd = (p: number, d: number, wholeSamples: number): SampledLoop => ({
  sampled: discretise(PENDULUM, 0.02, wholeSamples * 0.02),
  feedback: Float64Array.of(-p, -d),
});

describe('the exact hold as published', () => {
  it('first order, 1 s (MathWorks Answers 1951733)', () => {
    const { transition, input } = discretise(realise([1], [1, 1]), 1, 0);
    expectPrinted(entry(input, 0), '0.6321');
    expectPrinted(entry(transition, 0), '0.3679');
    expect(entry(input, 0)).toBeCloseTo(1 - Math.exp(-1), 14);
  });

  it('second order with two and a half samples of delay (MathWorks documentation, c2d)', () => {
    const found = transferInZ([10], [1, 3, 10], 0.1, 0.25);
    ['0.01187323580675', '0.06408355022766', '0.00972065906353'].forEach((printed, i) => {
      expectPrinted(found.numerator[i] ?? Number.NaN, printed);
    });
    ['1', '-1.65514077558377', '0.74081822068172'].forEach((printed, i) => {
      expectPrinted(found.denominator[i] ?? Number.NaN, printed);
    });
  });

  it('inverse response with three and a half samples of delay (MathWorks Answers 27007)', () => {
    const found = transferInZ([1, -1], [1, 4, 5], 0.1, 0.35);
    ['0.04405355284555', '-0.01434015623591', '-0.03792120199524'].forEach((printed, i) => {
      expectPrinted(found.numerator[i] ?? Number.NaN, printed);
    });
    ['1', '-1.62928101910761', '0.67032004603564'].forEach((printed, i) => {
      expectPrinted(found.denominator[i] ?? Number.NaN, printed);
    });
  });

  it('two inputs, 0.1 s (python-control, matlab_test.py)', () => {
    const a = square([-3, 4, 2], [-1, -3, 0], [2, 5, 3]);
    const columns = [Float64Array.of(1, -3, -2), Float64Array.of(4, -3, 1)].map((b) =>
      discretise({ order: 3, a, b }, 0.1, 0),
    );
    const [first, second] = columns;
    [
      ['0.742840837331905', '0.342242024293711', '0.203124211149560'],
      ['-0.074130792143890', '0.724553295044645', '-0.009143771143630'],
      ['0.180264783290485', '0.544385612448419', '1.370501013067845'],
    ].forEach((row, i) => {
      row.forEach((printed, j) => {
        expectPrinted(entry(first?.transition ?? a, 3 * i + j), Number(printed).toFixed(13));
      });
    });
    ['0.012362066084719', '-0.260952977031384', '-0.304617775734327'].forEach((printed, i) => {
      expectPrinted(entry(first?.input ?? a, i), printed);
    });
    ['0.301932197918268', '-0.274201791021713', '0.075182622718853'].forEach((printed, i) => {
      expectPrinted(entry(second?.input ?? a, i), printed);
    });
  });

  it('the pendulum ẍ = 25 x + u, 0.02 s: hyperbolic functions', () => {
    const { transition, input } = discretise(PENDULUM, 0.02, 0);
    [Math.cosh(0.1), Math.sinh(0.1) / 5, 5 * Math.sinh(0.1), Math.cosh(0.1)].forEach((value, i) => {
      expect(entry(transition, i)).toBeCloseTo(value, 14);
    });
    expect(entry(input, 0)).toBeCloseTo((Math.cosh(0.1) - 1) / 25, 15);
    expect(entry(input, 1)).toBeCloseTo(Math.sinh(0.1) / 5, 15);
  });
});

const digitalPendulum: readonly PublishedCheck[] = [
  ...(
    [
      [40, 6, 0, '0.942234879882'],
      [40, 6, 1, '0.943903229353'],
      [40, 6, 2, '0.947462557587'],
      [40, 6, 5, '0.984939012651'],
      [60, 12, 1, '0.904837418036'], // e^−0.1: P = 5 D cancels the stable pole
    ] as const
  ).map(([p, d, n, printed]) => ({
    id: `P ${p}, D ${d}, ${n} samples late`,
    source: INDEPENDENT,
    what: 'spectral radius of digital PD on the pendulum',
    printed,
    computed: () => spectralRadius(digitalPd(p, d, n)),
  })),
  {
    id: 'dominant pair, real part',
    source: INDEPENDENT,
    what: 'P 40, D 6, one sample late',
    printed: '0.94204159171717',
    computed: () => closedLoopPoles(digitalPd(40, 6, 1), 0.02).dominant.z.re,
  },
  {
    id: 'dominant pair, imaginary part',
    source: INDEPENDENT,
    what: 'P 40, D 6, one sample late',
    printed: '0.0592532349956',
    computed: () => Math.abs(closedLoopPoles(digitalPd(40, 6, 1), 0.02).dominant.z.im),
  },
  {
    id: 'third root',
    source: INDEPENDENT,
    what: 'P 40, D 6, one sample late',
    printed: '0.12592515267727',
    computed: () => closedLoopPoles(digitalPd(40, 6, 1), 0.02).modes[2]?.z.re ?? Number.NaN,
  },
];

describe('digital control of a pendulum', () => {
  it.each(digitalPendulum)('$id: $what', ({ computed, printed }) => {
    expectPrinted(computed(), printed);
  });
});

interface GyroCase {
  readonly id: string;
  readonly inertia?: number;
  readonly toppling?: number;
  readonly gimbalInertia?: number;
  readonly momentum: number;
  readonly friction?: number;
  readonly centring?: number;
  /** A moment −K_p φ − K_d φ̇ on the vehicle, and its own friction in roll: put in by hand, the plant has neither. */
  readonly leanMoment?: number;
  readonly rateMoment?: number;
  /** Eigenvalues by their upper halves, as printed; zeros are the plant's neutral modes and are counted. */
  readonly printed: readonly (readonly [re: string, im: string])[];
  readonly zeros?: number;
}

const unit = { inertia: 1, toppling: 1, gimbalInertia: 1, centring: -1 };
const small = { inertia: 0.05, toppling: 3, gimbalInertia: 2e-4, momentum: 0.1, centring: 0 };
const gyroCases: readonly GyroCase[] = [
  {
    id: 'Y1, just below H = 2',
    ...unit,
    momentum: 1.99,
    printed: [
      ['0.09987492', '0.995'],
      ['-0.09987492', '0.995'],
    ],
  },
  {
    id: 'Y1, just above',
    ...unit,
    momentum: 2.01,
    printed: [
      ['0', '1.10512492'],
      ['0', '0.90487508'],
    ],
  },
  {
    id: 'Y2, just below H = 3',
    ...unit,
    centring: -4,
    momentum: 2.99,
    printed: [
      ['0.12237238', '1.40890915'],
      ['-0.12237238', '1.40890915'],
    ],
  },
  {
    id: 'Y2, just above',
    ...unit,
    centring: -4,
    momentum: 3.01,
    printed: [
      ['0', '1.54209227'],
      ['0', '1.29693926'],
    ],
  },
  {
    id: 'Y3, destroyed by damping',
    ...unit,
    momentum: 3,
    friction: 0.01,
    rateMoment: 0.01,
    printed: [
      ['-0.01170815', '2.61804293'],
      ['0.00170815', '0.38195707'],
    ],
  },
  { id: 'Y5', ...small, zeros: 2, printed: [['0', '30.65941943']] },
  {
    id: 'Y6',
    ...small,
    centring: -0.02,
    printed: [
      ['0', '28.85819379'],
      ['0', '2.68414813'],
    ],
  },
  {
    id: 'Y7',
    ...small,
    friction: 0.002,
    zeros: 1,
    printed: [
      ['-5.31687713', '30.30627006'],
      ['0.63375427', '0'],
    ],
  },
  {
    id: 'Y8',
    ...small,
    friction: 0.2,
    zeros: 1,
    printed: [
      ['-998.99893775', '0'],
      ['-8.26652464', '0'],
      ['7.26546239', '0'],
    ],
  },
  {
    id: 'Y9, no rotor',
    ...small,
    momentum: 0,
    leanMoment: 6,
    rateMoment: 0.1,
    printed: [['-1', '7.68114575']],
  },
  {
    id: 'Y10',
    ...small,
    friction: 0.2,
    leanMoment: 6,
    rateMoment: 0.1,
    zeros: 1,
    printed: [
      ['-998.99704842', '0'],
      ['-1.50147579', '7.60301308'],
    ],
  },
  {
    id: 'Y11',
    ...small,
    friction: 0.02,
    leanMoment: 6,
    rateMoment: 0.1,
    zeros: 1,
    printed: [
      ['-88.53359672', '0'],
      ['-6.73320164', '4.7365471'],
    ],
  },
  {
    id: 'Y12, rotor too stiff',
    ...small,
    friction: 0.002,
    leanMoment: 6,
    rateMoment: 0.1,
    zeros: 1,
    printed: [
      ['-5.72056787', '32.26268838'],
      ['-0.55886426', '0'],
    ],
  },
  {
    id: 'Y13, best friction',
    // its five digits carry the roots to no more than these
    ...small,
    centring: 0.02,
    friction: 0.016634,
    leanMoment: 6,
    rateMoment: 0.1,
    printed: [
      ['-66.33', '0'],
      ['-13.71', '0'],
      ['-2.563', '0.165'],
    ],
  },
  {
    id: 'Y13, friction too small',
    ...small,
    centring: 0.02,
    friction: 0.002,
    leanMoment: 6,
    rateMoment: 0.1,
    printed: [['-0.31756314', '2.24448417']],
  },
  {
    id: 'Y13, friction too large',
    ...small,
    centring: 0.02,
    friction: 0.05,
    leanMoment: 6,
    rateMoment: 0.1,
    printed: [['-0.41212753', '0']],
  },
];

/** Vehicle, rotor and gimbal of the linear plant, without ballast drive and sensors. */
function gyroPlant(c: GyroCase): {
  readonly plant: LinearPlant;
  readonly matrix: Float64Array;
  readonly order: number;
} {
  const hardware: BalanceHardware = {
    firstMoment: (c.toppling ?? 1) / standardGravity,
    rollInertia: c.inertia ?? 1,
    ballastMass: 1,
    ballastHeight: 0,
    commandToOffset: 1,
    spinMomentum: c.momentum,
    gimbalInertia: c.gimbalInertia ?? 1,
    gimbalFriction: c.friction ?? 0,
    gimbalCentring: c.centring ?? 0,
    naturalFrequency: 1,
    dampingRatio: 1,
    sensorLag: 0,
  };
  const plant = linearPlant(hardware, { reads: ['measured lean'] });
  const order = plant.states.indexOf('ballast offset');
  const matrix = new Float64Array(order * order);
  for (let i = 0; i < order; i++) {
    for (let j = 0; j < order; j++) matrix[i * order + j] = entry(plant.a, i * plant.order + j);
  }
  matrix[order] = entry(matrix, order) - (c.leanMoment ?? 0) / hardware.rollInertia;
  matrix[order + 1] = entry(matrix, order + 1) - (c.rateMoment ?? 0) / hardware.rollInertia;
  return { plant, matrix, order };
}

describe('roots of a vehicle with a gimballed rotor, agreeing with their closed forms', () => {
  it.each(gyroCases)('$id', (c) => {
    const { plant, matrix, order } = gyroPlant(c);
    const found = eigenvalues(matrix, order);
    for (const [re, im] of c.printed) {
      const nearest = found
        .map((root) => ({ root, gap: Math.hypot(root.re - Number(re), Math.abs(root.im) - Number(im)) }))
        .sort((p, q) => p.gap - q.gap)[0]?.root;
      expectPrinted(nearest?.re ?? Number.NaN, re === '0' ? '0.0000000' : re);
      expectPrinted(Math.abs(nearest?.im ?? Number.NaN), im === '0' ? '0.0000000' : im);
    }
    expect(plant.neutralModes).toHaveLength(c.zeros ?? 0);
  });

  it.each([
    [-0.01, true],
    [-0.004, false],
    [-0.021, false],
  ])('Y4, a gimbal that drives itself with c = %s holds an undriven vehicle up: %s', (friction, stable) => {
    // negative friction is outside the plant's range: it is put in by hand
    const { matrix, order } = gyroPlant({
      id: 'Y4',
      ...unit,
      centring: -0.25,
      momentum: 2.5,
      rateMoment: 0.02,
      printed: [],
    });
    matrix[3 * order + 3] = -friction;
    expect(eigenvalues(matrix, order).every(({ re }) => re < 0)).toBe(stable);
  });
});
