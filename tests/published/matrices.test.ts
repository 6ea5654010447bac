/** Matrix exponential and eigenvalues, which the loop model rests on, against published matrices. */
import { describe, expect, it } from 'vitest';
import { eigenvalues, matrixExponential, mode } from '../../src/control/index.ts';
import { realise } from './continuous-loop.ts';
import { expectPrinted } from './printed.ts';

const INDEPENDENT = 'computed independently in 16 digits or more';

const square = (...rows: readonly (readonly number[])[]): Float64Array => Float64Array.from(rows.flat());
const entry = (m: Float64Array, i: number): number => m[i] ?? Number.NaN;

interface ExponentialCheck {
  readonly id: string;
  readonly source: string;
  readonly a: readonly (readonly number[])[];
  /** Row after row, as far as printed. */
  readonly printed: readonly string[];
}

const exponentials: readonly ExponentialCheck[] = [
  {
    id: 'Moler and Van Loan',
    source: `C. B. Moler, C. F. Van Loan, Nineteen dubious ways, SIAM Review 20 (1978), 6 digits; ${INDEPENDENT}`,
    a: [
      [-49, 24],
      [-64, 31],
    ],
    printed: ['-0.735758758145', '0.551819099658', '-1.471517599088', '1.103638240716'],
  },
  {
    id: 'Laub',
    source: `A. Laub’s stiff example, as in the later Burkardt collection, 8 digits; ${INDEPENDENT}`,
    a: [
      [0, 1],
      [-39, -40],
    ],
    printed: ['0.377560479097', '0.009681037925564', '-0.377560479097', '-0.009681037925564'],
  },
  {
    id: 'symmetric',
    source: 'J. Burkardt’s collection of matrix exponentials; recomputed',
    a: [
      [1, 3],
      [3, 2],
    ],
    printed: ['39.322809708034', '46.166301438886', '46.166301438886', '54.711576854329'],
  },
  {
    id: 'Ward 1',
    source: 'R. C. Ward, SIAM J. Numer. Anal. 14 (1977), as in J. Burkardt’s collection; recomputed',
    a: [
      [4, 2, 0],
      [1, 4, 1],
      [1, 1, 4],
    ],
    printed: [
      '147.86662244637',
      '183.76513864637',
      '71.79703240000',
      '127.78108552318',
      '183.76513864637',
      '91.88256932318',
      '127.78108552318',
      '163.67960172318',
      '111.96810624637',
    ],
  },
  {
    id: 'Ward 3',
    source: 'R. C. Ward 1977, as in J. Burkardt’s collection; recomputed',
    a: [
      [-131, 19, 18],
      [-390, 56, 54],
      [-387, 57, 52],
    ],
    printed: [
      '-1.5096441588',
      '0.3678794391',
      '0.1353352812',
      '-5.6325707999',
      '1.4715177585',
      '0.4060058435',
      '-4.9349383261',
      '1.1036383173',
      '0.5413411268',
    ],
  },
  {
    id: 'nilpotent',
    source: 'J. Burkardt’s collection; exact',
    a: [
      [0, 6, 0, 0],
      [0, 0, 6, 0],
      [0, 0, 0, 6],
      [0, 0, 0, 0],
    ],
    printed: ['1', '6', '18', '36', '0', '1', '6', '18', '0', '0', '1', '6', '0', '0', '0', '1'],
  },
  {
    id: 'NAG F01ECF',
    source: `NAG Library Manual, F01ECF, example, 7 digits; ${INDEPENDENT}`,
    a: [
      [1, 2, 2, 2],
      [3, 1, 1, 2],
      [3, 2, 1, 2],
      [3, 3, 3, 1],
    ],
    printed: ['740.7037761711', '610.8500221577', '542.2743186672', '549.1753493238'],
  },
];

describe('the matrix exponential as published', () => {
  it.each(exponentials)('$id', ({ a, printed }) => {
    const found = matrixExponential(square(...a), a.length);
    printed.forEach((figure, i) => {
      // a nilpotent matrix gives whole numbers, but for rounding
      const value = figure.includes('.') ? entry(found, i) : Math.round(entry(found, i) * 1e12) / 1e12;
      expectPrinted(value, figure);
    });
  });
});

const ROSSER = square(
  [611, 196, -192, 407, -8, -52, -49, 29],
  [196, 899, 113, -192, -71, -43, -8, -44],
  [-192, 113, 899, 196, 61, 49, 8, 52],
  [407, -192, 196, 611, 8, 44, 59, -23],
  [-8, -71, 61, 8, 411, -599, 208, 208],
  [-52, -43, 49, 44, -599, 411, 208, 208],
  [-49, -8, 8, 59, 208, 208, 99, -911],
  [29, -44, 52, -23, 208, 208, -911, 99],
);

/** The benchmark bicycle's state matrix at a speed in m/s: lean, steer and their rates. */
const bicycle = (v: number): Float64Array =>
  square(
    [0, 0, 1, 0],
    [0, 0, 0, 1],
    [
      9.48977444677355,
      -0.571523173729245 - 0.891197738059089 * v ** 2,
      -0.105522449805691 * v,
      -0.330515398992311 * v,
    ],
    [
      11.7194768719633,
      30.9087533932407 - 1.97171508499972 * v ** 2,
      3.67680523332152 * v,
      -3.08486552743311 * v,
    ],
  );

const realParts = (matrix: Float64Array, order: number): number[] =>
  eigenvalues(matrix, order)
    .map(({ re }) => re)
    .sort((a, b) => b - a);

const MEIJAARD =
  'J. P. Meijaard et al., Linearized dynamics equations for the balance and steer of a bicycle, Proc. R. Soc. A 463 (2007), table 2';

describe('eigenvalues as published', () => {
  it('Rosser’s matrix (1951): exact values, two of them only just apart', () => {
    const exact = [
      10 * Math.sqrt(10405),
      1020,
      510 + 100 * Math.sqrt(26),
      1000,
      1000,
      510 - 100 * Math.sqrt(26),
      0,
      -10 * Math.sqrt(10405),
    ];
    realParts(ROSSER, 8).forEach((value, i) => {
      expect(Math.abs(value - (exact[i] ?? Number.NaN))).toBeLessThan(1e-11 * 1020);
    });
  });

  it.each([
    // v, capsize, weave, castering (real parts), imaginary part of weave
    [1, '-3.13423125066578', '3.5269617099007', '-7.11008014637442', '0.807740275199'],
    [5, '-0.3228664290041', '-0.77534188219585', '-14.0783896927982', '4.464867713788'],
    [10, '0.1610533865317', '-3.7201684043729', '-24.62459635017404', '10.906811394763'],
  ] as const)(`the benchmark bicycle at %s m/s (${MEIJAARD})`, (v, capsize, weave, castering, swing) => {
    const found = eigenvalues(bicycle(v), 4);
    const real = found.filter(({ im }) => im === 0).map(({ re }) => re);
    const pair = found.find(({ im }) => im > 0);
    const digits = (printed: string): string => Number(printed).toFixed(11); // the state matrix has no more
    expectPrinted(Math.max(...real), digits(capsize));
    expectPrinted(Math.min(...real), digits(castering));
    expectPrinted(pair?.re ?? Number.NaN, digits(weave));
    expectPrinted(pair?.im ?? Number.NaN, digits(swing));
  });

  it('damping of discrete poles: z³ + 6z² + 4z + 4 at 0.01 s (GNU Octave control package, damp)', () => {
    const { a, order } = realise([1], [1, 6, 4, 4]);
    const modes = eigenvalues(a, order)
      .map((z) => mode(z, 0.01))
      .sort((p, q) => p.naturalFrequency - q.naturalFrequency);
    expect(modes).toHaveLength(3);
    ['193.4924', '193.4924', '356.5264'].forEach((printed, i) => {
      expectPrinted(modes[i]?.naturalFrequency ?? Number.NaN, printed);
    });
    ['0.0774', '0.0774', '-0.4728'].forEach((printed, i) => {
      expectPrinted(modes[i]?.dampingRatio ?? Number.NaN, printed);
    });
  });

  it.each([
    ['J1', [1, -1.3, -0.08, 0.24], 1.2],
    ['J2', [1, -1.2, 0.07, 0.3, -0.08], 0.8],
  ] as const)(
    'Jury’s test, %s (NPTEL 108103008, module 3, lecture 2): the same verdict by the largest root',
    (_, polynomial, largest) => {
      const { a, order } = realise([1], polynomial);
      expect(Math.max(...eigenvalues(a, order).map(({ re, im }) => Math.hypot(re, im)))).toBeCloseTo(
        largest,
        10,
      );
    },
  );
});
