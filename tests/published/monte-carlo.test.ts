/**
 * Propagation of distributions against the examples of JCGM 101:2008 (Supplement 1 to the Guide to the expression of
 * uncertainty in measurement). The printed results were not checked against the document here (from memory); beside
 * them stand exact figures, derived anew where they exist, and a second computation with 2×10⁷ draws where not.
 */
import { describe, expect, it } from 'vitest';
import {
  agree,
  deviation,
  firstOrderInterval,
  type Interval,
  independent,
  numericalTolerance,
  propagate,
  type RandomSource,
  standardUncertainty,
} from '../../src/quantity/index.ts';
import { drawn } from './drawn.ts';
import { agreesToPrintedDigits, expectPrinted } from './printed.ts';

const even = (low: number, high: number, random: RandomSource): number => low + (high - low) * random.even();

/** A few readings known to a standard deviation s with ν degrees of freedom: scaled t, as normal over the root of χ²/ν. */
function scaledT(mean: number, s: number, degrees: number, random: RandomSource): number {
  let product = 1;
  for (let pair = 2; pair <= degrees; pair += 2) product *= 1 - random.even();
  const single = degrees % 2 === 1 ? random.normal() ** 2 : 0;
  return mean + (s * random.normal()) / Math.sqrt((single - 2 * Math.log(product)) / degrees);
}

/** Limits ±a that are themselves only known to ±d: JCGM 101 6.4.3.4. */
function curvilinearTrapezoid(a: number, d: number, random: RandomSource): number {
  const low = even(-a - d, -a + d, random);
  return low + (-low - low) * random.even();
}

describe('the numerical tolerance of an uncertainty (JCGM 101 7.9.2)', () => {
  it.each([
    { id: 'TOL-1', u: 0.00035, digits: 2, tolerance: 0.000005 },
    { id: 'TOL-2', u: 0.00035, digits: 1, tolerance: 0.00005 },
    { id: 'TOL-3', u: 2, digits: 1, tolerance: 0.5 },
    { id: 'TOL-4', u: 2, digits: 2, tolerance: 0.05 },
    { id: 'a carry makes a new digit (0.0996 is 10 × 10⁻²)', u: 0.0996, digits: 2, tolerance: 0.005 },
  ])('$id: $tolerance for u = $u to $digits digits', ({ u, digits, tolerance }) => {
    expect(numericalTolerance(u, digits)).toBeCloseTo(tolerance, 12);
  });
});

describe('the sum of four inputs (JCGM 101 9.2)', () => {
  const sum = (shapes: readonly (readonly ['normal' | 'rectangular', number])[]) => (random: RandomSource) =>
    shapes.reduce((total, [shape, u]) => total + u * deviation(shape, random), 0);

  const cases = [
    {
      id: '9.2.2 four normal',
      model: sum([
        ['normal', 1],
        ['normal', 1],
        ['normal', 1],
        ['normal', 1],
      ]),
      u: '2.00',
      end: '3.92',
      exact: 3.919928,
      firstOrder: 2,
      confirmed: true,
    },
    {
      id: '9.2.3 four rectangular',
      model: sum([
        ['rectangular', 1],
        ['rectangular', 1],
        ['rectangular', 1],
        ['rectangular', 1],
      ]),
      u: '2.00',
      end: '3.88',
      exact: 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25),
      firstOrder: 2,
      confirmed: true,
    },
    {
      id: '9.2.4 three rectangular and a wide one',
      model: sum([
        ['rectangular', 1],
        ['rectangular', 1],
        ['rectangular', 1],
        ['rectangular', 10],
      ]),
      u: '10.1',
      end: '17.0',
      exact: 17.015814,
      firstOrder: Math.sqrt(103),
      confirmed: false,
    },
  ];

  it.each(cases)(
    '$id: u = $u, ±$end, first order confirmed: $confirmed',
    ({ model, u, end, exact, firstOrder, confirmed }) => {
      const spread = drawn(model);
      expect(spread.settled).toBe(true);
      const fifth = spread.tolerance / 5;
      expect(Math.abs(spread.mean)).toBeLessThan(fifth);
      expect(Math.abs(spread.u - firstOrder)).toBeLessThan(fifth);
      expectPrinted(firstOrder, u);
      expectPrinted(exact, end);
      for (const [sign, value] of [
        [-1, spread.symmetric[0]],
        [1, spread.symmetric[1]],
      ] as const) {
        // 2 s_z is below a fifth of the tolerance; three times that leaves out one run in 10⁹
        expect(Math.abs(sign * value - exact)).toBeLessThan(3 * fifth);
      }
      expect(agree(spread.symmetric, firstOrderInterval(0, firstOrder), spread.tolerance)).toBe(confirmed);
    },
  );

  it('9.2.2 wants about 1.2 million draws to two digits, as the printed run did (1.23 × 10⁶)', () => {
    const { draws } = drawn(cases[0]?.model ?? (() => 0));
    expect(draws).toBeGreaterThan(0.6e6);
    expect(draws).toBeLessThan(2.4e6);
  });
});

describe('the calibration of a mass (JCGM 101 9.3)', () => {
  const deviationOfMass = (
    conventional: number,
    difference: number,
    air: number,
    weight: number,
    reference: number,
  ): number => (conventional + difference) * (1 + (air - 1.2) * (1 / weight - 1 / reference)) - 100_000;

  const model = (random: RandomSource): number =>
    deviationOfMass(
      100_000 + 0.05 * random.normal(),
      1.234 + 0.02 * random.normal(),
      even(1.1, 1.3, random),
      even(7000, 9000, random),
      even(7950, 8050, random),
    );

  const spread = drawn(model, { part: 1 });

  it('has 1.234 mg with u = 0.0754 mg printed, 0.075 480 mg exact', () => {
    expect(spread.settled).toBe(true);
    expect(Math.abs(spread.mean - 1.234)).toBeLessThan(spread.tolerance);
    expect(Math.abs(spread.u - 0.07548)).toBeLessThan(spread.tolerance);
  });

  it('has a symmetric interval of [1.0844, 1.3835] mg, and a shortest one 0.2990 mg wide', () => {
    expect(agree(spread.symmetric, [1.0844, 1.3835], 1.5 * spread.tolerance)).toBe(true);
    // the ends of the shortest interval wander over some 0.004 mg from run to run; its width does not
    expect(Math.abs(spread.shortest[1] - spread.shortest[0] - 0.299)).toBeLessThan(2 * spread.tolerance);
  });

  it('is not what first order gives, 1.2340 mg with u = 0.0539 mg', () => {
    const { result } = propagate(
      ({ conventional, difference, air, weight, reference }) => ({
        result: deviationOfMass(
          Number(conventional),
          Number(difference),
          Number(air),
          Number(weight),
          Number(reference),
        ),
      }),
      {
        conventional: independent('m_Rc', 100_000, 0.05),
        difference: independent('δm_Rc', 1.234, 0.02),
        air: independent('ρ_a', 1.2, 0.1 / Math.sqrt(3)),
        weight: independent('ρ_W', 8000, 1000 / Math.sqrt(3)),
        reference: independent('ρ_R', 8000, 50 / Math.sqrt(3)),
      },
    );
    const u = result ? standardUncertainty(result) : Number.NaN;
    expectPrinted(result?.value ?? Number.NaN, '1.2340');
    expectPrinted(u, '0.0539');
    expect(agree(spread.symmetric, firstOrderInterval(1.234, u), spread.tolerance)).toBe(false);
  });
});

describe('the loss of a comparison of powers (JCGM 101 9.4), in units of 10⁻⁶', () => {
  const u = 0.005;
  interface Case {
    readonly id: string;
    readonly correlation: number;
    readonly at: number;
    /** E = x₁² + 2u² and V = 4x₁²u² + 4u⁴(1 + r²). */
    readonly mean: number;
    readonly u: number;
    readonly printed: Interval;
    /** Shortest interval, exact for a to c, by a second computation for d to f. */
    readonly shortest: Interval;
    readonly firstOrderU: number;
  }
  const cases: readonly Case[] = [
    {
      id: 'a',
      correlation: 0,
      at: 0,
      mean: 50,
      u: 50,
      printed: [0, 150],
      shortest: [0, 149.8],
      firstOrderU: 0,
    },
    {
      id: 'b',
      correlation: 0,
      at: 0.01,
      mean: 150,
      u: 111.8,
      printed: [0, 367],
      shortest: [0, 366],
      firstOrderU: 100,
    },
    {
      id: 'c',
      correlation: 0,
      at: 0.05,
      mean: 2550,
      u: 502.49,
      printed: [1590, 3543],
      shortest: [1594, 3549],
      firstOrderU: 500,
    },
    {
      id: 'd',
      correlation: 0.9,
      at: 0,
      mean: 50,
      u: 67.27,
      printed: [0, 185],
      shortest: [0, 185],
      firstOrderU: 0,
    },
    {
      id: 'e',
      correlation: 0.9,
      at: 0.01,
      mean: 150,
      u: 120.52,
      printed: [13, 398],
      shortest: [12, 397],
      firstOrderU: 100,
    },
    {
      id: 'f',
      correlation: 0.9,
      at: 0.05,
      mean: 2550,
      u: 504.5,
      printed: [1628, 3555],
      shortest: [1628, 3557],
      firstOrderU: 500,
    },
  ];

  it.each(cases)('case $id has mean $mean, u = $u and a shortest interval $shortest', (example) => {
    const { correlation: r, at, printed, shortest } = example;
    const spread = drawn(
      (random) => {
        const first = random.normal();
        const second = r * first + Math.sqrt(1 - r * r) * random.normal();
        return 1e6 * ((at + u * first) ** 2 + (u * second) ** 2);
      },
      { part: 1, fewestBatches: 20 },
    );
    expect(spread.settled).toBe(true);
    expect(Math.abs(spread.mean - example.mean)).toBeLessThan(spread.tolerance);
    expect(Math.abs(spread.u - example.u)).toBeLessThan(spread.tolerance);
    // the ends of a shortest interval wander where the spread is flat: an eightieth of its width, as the printed ones did
    const wander = (shortest[1] - shortest[0]) / 80 + spread.tolerance;
    expect(agree(spread.shortest, shortest, wander)).toBe(true);
    expect(agree(spread.shortest, printed, wander)).toBe(true);
  });

  it.each(cases)(
    'case $id by first order has u = $firstOrderU, which the draws do not confirm',
    (example) => {
      const { result } = propagate(({ x1, x2 }) => ({ result: 1e6 * (Number(x1) ** 2 + Number(x2) ** 2) }), {
        x1: independent('x1', example.at, u),
        x2: independent('x2', 0, u),
      });
      const stated = result ? standardUncertainty(result) : Number.NaN;
      expect(stated).toBeCloseTo(example.firstOrderU, 6);
      expect(
        agree(
          example.shortest,
          firstOrderInterval(1e6 * example.at ** 2, stated),
          numericalTolerance(example.u, 2),
        ),
      ).toBe(false);
    },
  );
});

describe('the calibration of a gauge block (JCGM 101 9.5), 99 %', () => {
  /** nm, with temperatures in °C. */
  const model = (random: RandomSource): number => {
    const standard = scaledT(50_000_623, 25, 18, random);
    const difference = scaledT(215, 6, 24, random) + scaledT(0, 4, 5, random) + scaledT(0, 7, 8, random);
    const expansion = even(9.5e-6, 13.5e-6, random);
    const temperature = -0.1 + 0.2 * random.normal() + 0.5 * Math.sin(2 * Math.PI * random.even());
    const expansionDifference = curvilinearTrapezoid(1e-6, 0.1e-6, random);
    const temperatureDifference = curvilinearTrapezoid(0.05, 0.025, random);
    return (
      standard +
      difference -
      standard * (expansionDifference * temperature + expansion * temperatureDifference) -
      50_000_000
    );
  };

  it('has 838 nm, u = 36 nm and [745, 932] nm', () => {
    const spread = drawn(model, { coverage: 0.99, part: 1, most: 1e6 });
    expect(spread.settled).toBe(true);
    expectPrinted(spread.mean, '838');
    expectPrinted(spread.u, '36');
    // two digits of u are ±0.5 nm, and the printed ends are to 1 nm; a second computation has [744.4, 931.7]
    expect(agree(spread.symmetric, [744.4, 931.7], 2 * spread.tolerance)).toBe(true);
    expect(agree(spread.symmetric, [745, 932], 0.5 + 2 * spread.tolerance)).toBe(true);
    expect(agreesToPrintedDigits(spread.u, '32')).toBe(false);
  });
});
