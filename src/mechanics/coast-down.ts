/**
 * The rotor left to itself: what slows it, read out of a timed coast-down, and how long until it is slow enough to come
 * near. Nothing else may brake it, least of all a hand.
 *
 *   −Ω̇ = a + b Ω + c Ω²:   dry friction, grease, air
 */
import { Matrix, QrDecomposition } from 'ml-matrix';
import { type Calculation, calculation } from './calculation.ts';
import {
  DomainError,
  requireEach,
  requireNotNegative,
  requirePositive,
  requireSameLength,
} from './domain.ts';

interface Drag {
  /** a, rad/s², not negative. */
  readonly constantTerm: number;
  /** b, 1/s, not negative. */
  readonly linearTerm: number;
  /** c, 1/rad, not negative. */
  readonly squareTerm: number;
}

function requireDrag({ constantTerm, linearTerm, squareTerm }: Drag): void {
  requireNotNegative('constant term of the deceleration', constantTerm, 'rad/s²');
  requireNotNegative('linear term of the deceleration', linearTerm, '1/s');
  requireNotNegative('square term of the deceleration', squareTerm, '1/rad');
}

/**
 * Drag of the rotor at a speed: T_d = I (a + b Ω + c Ω²), P = T_d Ω.
 *
 * @param inertia  I, kg·m², more than 0
 * @param speed    Ω, rad/s, not negative
 * @returns moment T_d, N·m; power P, W, that keeping the speed costs at the shaft
 * @throws DomainError  outside these ranges
 * Source: OpenStax, University Physics 1, section 10.7.
 */
export function rotorDrag(rotor: Drag & { readonly inertia: number; readonly speed: number }): {
  moment: number;
  power: number;
} {
  requireDrag(rotor);
  requirePositive('rotor inertia', rotor.inertia, 'kg·m²');
  requireNotNegative('rotor speed', rotor.speed, 'rad/s');
  const { constantTerm: a, linearTerm: b, squareTerm: c, speed } = rotor;
  const moment = rotor.inertia * (a + b * speed + c * speed ** 2);
  return { moment, power: moment * speed };
}

/**
 * Time in which the rotor coasts from one speed down to another.
 *
 *   t = ∫ dΩ / (a + b Ω + c Ω²) = (2/q) arctan( q (Ω₁ − Ω₂) / s ),   q² = 4ac − b²,
 *   s = 2a + b (Ω₁ + Ω₂) + 2c Ω₁Ω₂;   artanh for q² < 0, 2 (Ω₁ − Ω₂)/s for q = 0
 *
 * @param constantTerm  a, rad/s²; linearTerm b, 1/s; squareTerm c, 1/rad; not negative, not all 0
 * @param fromSpeed     Ω₁, rad/s, not negative
 * @param toSpeed       Ω₂, rad/s, from 0 to Ω₁
 * @returns t, s
 * @throws DomainError  outside these ranges, and for a stop that never comes: to 0 without dry friction
 * Source: integral of 1/(a + b Ω + c Ω²), the two ends joined by the addition theorem of the arctangent.
 */
export function coastDownTime(
  rotor: Drag & { readonly fromSpeed: number; readonly toSpeed: number },
): number {
  requireDrag(rotor);
  const { constantTerm: a, linearTerm: b, squareTerm: c, fromSpeed, toSpeed } = rotor;
  requireNotNegative('speed at the start', fromSpeed, 'rad/s');
  requireNotNegative('speed to coast down to', toSpeed, 'rad/s');
  if (toSpeed > fromSpeed) {
    throw new DomainError('speed to coast down to', toSpeed, 'it cannot be more than the start', 'rad/s');
  }
  if (toSpeed === 0 && a === 0 && fromSpeed > 0) {
    throw new DomainError('constant term of the deceleration', a, 'without dry friction a rotor never stops');
  }
  const drop = fromSpeed - toSpeed;
  if (drop === 0) return 0;
  const s = 2 * a + b * (fromSpeed + toSpeed) + 2 * c * fromSpeed * toSpeed;
  requirePositive('deceleration', s, 'rad/s²');
  const discriminant = 4 * a * c - b * b;
  const q = Math.sqrt(Math.abs(discriminant));
  const x = (q * drop) / s;
  // Below this the series' next term is lost in rounding, and q may be 0.
  if (x < 1e-8) return (2 * drop) / s;
  return (2 / q) * (discriminant > 0 ? Math.atan(x) : Math.atanh(x));
}

/**
 * The three terms of the deceleration from a timed coast-down, by least squares on
 *
 *   Ω(t₀) − Ω(t_i) = a (t_i − t₀) + b ∫ Ω dt + c ∫ Ω² dt
 *
 * with the integrals by the trapezoidal rule: no difference of readings is taken, so that a noisy tachometer does little.
 *
 * @param times   t_i, s, rising
 * @param speeds  Ω_i, rad/s, not negative, at least four, not all alike
 * @returns constantTerm a, rad/s²; linearTerm b, 1/s; squareTerm c, 1/rad; a term may come out negative where the data do
 *          not carry it: then leave it out and fit by hand, or take more readings
 * @throws DomainError  outside these ranges, or where the readings do not tell the three terms apart
 * Source: linear least squares by QR decomposition (ml-matrix).
 */
export function coastDownFit(log: {
  readonly times: readonly number[];
  readonly speeds: readonly number[];
}): Drag {
  const { times, speeds } = log;
  requireEach('time', times, 's');
  requireEach('speed', speeds, 'rad/s', 0);
  requireSameLength('speeds', speeds, 'time', times);
  if (times.length < 4) throw new DomainError('number of readings', times.length, 'at least four are needed');
  const [start = 0, first = 0] = [times[0], speeds[0]];
  const length = (times.at(-1) ?? 0) - start;
  requirePositive('time between first and last reading', length, 's');
  requirePositive('speed at the first reading', first, 'rad/s');
  const rows: number[][] = [];
  const drops: number[] = [];
  let [linear, square] = [0, 0];
  for (let i = 1; i < times.length; i++) {
    const step = ((times[i] ?? 0) - (times[i - 1] ?? 0)) / length;
    if (!(step > 0))
      throw new DomainError(`time ${i + 1}`, times[i] ?? Number.NaN, 'times have to rise', 's');
    // Speeds in shares of the first, times in shares of the whole: columns of one size.
    const [u, v] = [(speeds[i - 1] ?? 0) / first, (speeds[i] ?? 0) / first];
    linear += ((u + v) / 2) * step;
    square += ((u * u + v * v) / 2) * step;
    rows.push([((times[i] ?? 0) - start) / length, linear, square]);
    drops.push(1 - v);
  }
  const decomposition = new QrDecomposition(new Matrix(rows));
  if (!decomposition.isFullRank()) {
    throw new DomainError('spread of the speeds', 0, 'the readings have to tell the three terms apart');
  }
  const [a = Number.NaN, b = Number.NaN, c = Number.NaN] = decomposition
    .solve(Matrix.columnVector(drops))
    .getColumn(0);
  return { constantTerm: (a * first) / length, linearTerm: b / length, squareTerm: c / (first * length) };
}

const drag = {
  constantTerm: { symbol: 'a', unit: 'rad/s²', meaning: 'constant term of the deceleration, dry friction' },
  linearTerm: { symbol: 'b', unit: '1/s', meaning: 'linear term of the deceleration, grease' },
  squareTerm: { symbol: 'c', unit: '1/rad', meaning: 'square term of the deceleration, air' },
} as const;

export const coastDownCalculations: readonly Calculation[] = [
  calculation({
    id: 'rotor.drag',
    title: 'Drag of the rotor at a speed',
    equation: String.raw`T_d = I \left( a + b\,\Omega + c\,\Omega^2 \right), \qquad P = T_d\, \Omega`,
    inputs: {
      inertia: { symbol: 'I', unit: 'kg·m²', meaning: 'inertia of the rotor about its spin axis' },
      ...drag,
      speed: { symbol: String.raw`\Omega`, unit: 'rad/s', meaning: 'speed of the rotor' },
    },
    outputs: {
      moment: { symbol: 'T_d', unit: 'N·m', meaning: 'drag' },
      power: { symbol: 'P', unit: 'W', meaning: 'power that keeps the speed' },
    },
    validity: 'Within the speeds of the coast-down that the terms came from, in the same air and housing.',
    source: 'OpenStax, University Physics Volume 1, section 10.7',
    compute: rotorDrag,
    example: { inertia: 5e-4, constantTerm: 1.2, linearTerm: 0.004, squareTerm: 6e-6, speed: 890 },
    related: ['rotor.coast-down-fit', 'rotor.spin-up'],
  }),
  calculation({
    id: 'rotor.coast-down-time',
    title: 'Time to coast down to a speed',
    equation: String.raw`t = \int_{\Omega_2}^{\Omega_1} \frac{\mathrm{d}\Omega}{a + b\,\Omega + c\,\Omega^2} = \frac{2}{q} \arctan\frac{q \left( \Omega_1 - \Omega_2 \right)}{2 a + b \left( \Omega_1 + \Omega_2 \right) + 2 c\, \Omega_1 \Omega_2}, \qquad q = \sqrt{4 a c - b^2}`,
    inputs: {
      ...drag,
      fromSpeed: { symbol: String.raw`\Omega_1`, unit: 'rad/s', meaning: 'speed at the start' },
      toSpeed: { symbol: String.raw`\Omega_2`, unit: 'rad/s', meaning: 'speed to coast down to' },
    },
    outputs: { time: { symbol: 't', unit: 's', meaning: 'time of the coast-down' } },
    validity:
      'Motor off and not braking; for b² > 4ac the arctangent becomes an area tangent of √(b² − 4ac). Wait longer than this before coming near.',
    source: 'Derived: −Ω̇ = a + b Ω + c Ω², integrated',
    compute: (inputs) => ({ time: coastDownTime(inputs) }),
    example: { constantTerm: 1.2, linearTerm: 0.004, squareTerm: 6e-6, fromSpeed: 890, toSpeed: 10 },
    related: ['rotor.coast-down-fit', 'rotor.drag', 'rotor.spin-up'],
  }),
  calculation({
    id: 'rotor.coast-down-fit',
    title: 'Drag from a timed coast-down',
    equation: String.raw`\Omega_0 - \Omega_i = a \left( t_i - t_0 \right) + b \int_{t_0}^{t_i} \Omega\, \mathrm{d}t + c \int_{t_0}^{t_i} \Omega^2\, \mathrm{d}t`,
    inputs: {
      times: { symbol: 't_i', unit: 's', meaning: 'times of the readings', list: true },
      speeds: {
        symbol: String.raw`\Omega_i`,
        unit: 'rad/s',
        meaning: 'speeds of the rotor at these times',
        list: true,
      },
    },
    outputs: drag,
    validity:
      'Least squares, integrals by the trapezoidal rule: readings close enough that the speed falls evenly between them. A negative term says that the data do not carry it.',
    source: 'Linear least squares (QR decomposition, ml-matrix)',
    compute: coastDownFit,
    example: {
      times: [0, 20, 40, 60, 80, 100, 120],
      speeds: [890, 735, 606, 496, 402, 322, 252],
    },
    related: ['rotor.coast-down-time', 'rotor.drag'],
  }),
];
