/**
 * Quantities against publications: exact conversion factors, the rounding and printing of results, and the worked
 * examples H.1 and H.2 of JCGM 100. A full units library is the second, independent opinion on factors.
 */
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import {
  asBound,
  asResolution,
  combine,
  covariance,
  dimension,
  evaluateExpression,
  formatUncertain,
  formatValue,
  independent,
  parseExpression,
  parseQuantity,
  parseUnit,
  propagate,
  type Scope,
  standardUncertainty,
  type Uncertain,
} from '../../src/quantity/index.ts';

function factor(text: string): number {
  const unit = parseUnit(text);
  if (!unit.ok) throw new Error(text);
  return unit.value.factor;
}

describe('conversion factors', () => {
  /** `digits`: figures that the source prints; 17 where the definition is exact and the double has to be the nearest. */
  test.each([
    { id: 'in', unit: 'in', si: 0.0254, digits: 17, source: 'exact by definition (1959), as in SFTE' },
    { id: 'ft', unit: 'ft', si: 0.3048, digits: 17, source: 'exact' },
    { id: 'mile', unit: 'mi', si: 1609.344, digits: 17, source: 'exact' },
    { id: 'lb', unit: 'lb', si: 0.45359237, digits: 17, source: 'exact by definition (1959)' },
    { id: 'g_n', unit: 'g_n', si: 9.80665, digits: 17, source: 'CGPM 1901, exact' },
    { id: 'lbf', unit: 'lbf', si: 4.4482216152605, digits: 17, source: 'lb · g_n, exact; UCUM 2.2 [lbf_av]' },
    { id: 'mph', unit: 'mph', si: 0.44704, digits: 17, source: 'exact' },
    { id: 'kgf·cm', unit: 'kgf·cm', si: 0.0980665, digits: 17, source: 'from g_n, exact' },
    {
      id: 'ft·lbf',
      unit: 'ft·lbf',
      si: Number('1.3558179483314004'),
      digits: 17,
      source: 'UCUM 2.2 [lbf_av].[ft_i]',
    },
    {
      id: 'psi',
      unit: 'psi',
      si: Number('6894.757293168361337'),
      digits: 17,
      source: 'UCUM 2.2 [psi] to 16 figures, exact quotient lbf/in² beyond',
    },
    { id: 'hp', unit: 'hp', si: 745.69987158227, digits: 15, source: 'UCUM 2.2 [HP], 550 ft·lbf/s' },
    {
      id: 'lbf·in',
      unit: 'lbf·in',
      si: 0.1129848290276167,
      digits: 16,
      source: 'computed from exact; handbook 0.112985',
    },
    {
      id: 'ozf·in',
      unit: 'ozf·in',
      si: 0.007061551814226,
      digits: 13,
      source: 'computed from exact definitions',
    },
    {
      id: 'lb·ft²',
      unit: 'lb·ft²',
      si: 0.0421401100938048,
      digits: 15,
      source: 'computed from exact definitions',
    },
    {
      id: 'slug·ft²',
      unit: 'slug·ft²',
      si: 1.355817948,
      digits: 10,
      source: 'lbf·ft·s²; SFTE prints 1.3546, which is wrong',
    },
    { id: 'rpm', unit: 'rpm', si: 0.104719755, digits: 9, source: 'π/30; OSUP App. B 0.1047' },
    { id: '1/min', unit: '1/min', si: 1 / 60, digits: 17, source: 'UCUM 2.2, 60 /min = 1 Hz' },
    { id: 'A·h', unit: 'Ah', si: 3600, digits: 17, source: 'SI Brochure table 8, h = 3600 s' },
    { id: 'km/h', unit: 'km/h', si: 1000 / 3600, digits: 17, source: 'SI Brochure table 8' },
    { id: '°', unit: '°', si: Math.PI / 180, digits: 15, source: 'SI Brochure table 8' },
  ])('$id ($source)', ({ unit, si, digits }) => {
    if (digits === 17) expect(factor(unit)).toBe(si);
    else expect(factor(unit).toPrecision(digits)).toBe(si.toPrecision(digits));
  });

  test('1 rad/s is 9.549 297 rpm (SFTE 9.549)', () => {
    expect((1 / factor('rpm')).toPrecision(7)).toBe('9.549297');
  });

  test('68 °F is 20 °C (UCUM 2.2)', () => {
    const read = parseQuantity('68 °F', 'K', 'temperature');
    expect(read.ok && read.value.si).toBe(293.15);
  });
});

describe('conversion factors against an independent units library', () => {
  const math = create({ ...all });

  /** Our spelling, its spelling, and the unit of SI to compare in. Not psi and hp: the library rounds these itself. */
  test.each([
    ['g', 'gram', 'kg'],
    ['mg', 'milligram', 'kg'],
    ['t', 'tonne', 'kg'],
    ['oz', 'ounce', 'kg'],
    ['lb', 'poundmass', 'kg'],
    ['mm', 'mm', 'm'],
    ['µm', 'um', 'm'],
    ['thou', 'mil', 'm'],
    ['in', 'inch', 'm'],
    ['ft', 'foot', 'm'],
    ['yd', 'yard', 'm'],
    ['mi', 'mile', 'm'],
    ['min', 'minute', 's'],
    ['h', 'hour', 's'],
    ['ms', 'ms', 's'],
    ['°', 'deg', 'rad'],
    ['rev', 'cycle', 'rad'],
    ['°/s', 'deg/s', 'rad/s'],
    ['kHz', 'kHz', 'Hz'],
    ['km/h', 'km/hour', 'm/s'],
    ['mph', 'mile/hour', 'm/s'],
    ['N', 'N', 'kg m/s^2'],
    ['lbf', 'lbf', 'N'],
    ['kgf', 'kgf', 'N'],
    ['mN', 'mN', 'N'],
    ['kPa', 'kPa', 'Pa'],
    ['MPa', 'MPa', 'Pa'],
    ['GPa', 'GPa', 'Pa'],
    ['bar', 'bar', 'Pa'],
    ['J', 'J', 'N m'],
    ['Wh', 'Wh', 'J'],
    ['kW', 'kW', 'W'],
    ['V', 'V', 'kg m^2 s^-3 A^-1'],
    ['mΩ', 'mohm', 'ohm'],
    ['mAh', 'mAh', 'C'],
    ['µF', 'uF', 'F'],
    ['mH', 'mH', 'H'],
    ['L', 'litre', 'm^3'],
    ['kg·m²', 'kg m^2', 'kg m^2'],
    ['lb·ft²', 'poundmass foot^2', 'kg m^2'],
    ['kg/m³', 'kg/m^3', 'kg/m^3'],
  ])('%s', (ours, theirs, si) => {
    expect(factor(ours) / math.unit(1, theirs).toNumber(si)).toBeCloseTo(1, 14);
  });
});

describe('standard uncertainty by kind', () => {
  test.each([
    { id: 'rectangular ±a', u: asBound(1), expected: '0.57735', source: 'JCGM 100 4.3.7' },
    { id: 'step of a display', u: asResolution(1), expected: '0.288675', source: 'JCGM 100 F.2.2.1' },
    { id: 'H.1 δα ±1e-6', u: asBound(1e-6) * 1e6, expected: '0.58', source: 'JCGM 100 H.1.3.5' },
    { id: 'H.1 δθ ±0.05', u: asBound(0.05), expected: '0.029', source: 'JCGM 100 H.1.3.6' },
  ])('$id ($source)', ({ u, expected }) => {
    const digits = expected.replace(/^0\.0*/, '').length;
    expect(u.toPrecision(digits)).toBe(Number(expected).toPrecision(digits));
  });
});

describe('rounding and printing', () => {
  const printed = (value: number, u: number, unit: string): string =>
    formatUncertain(independent('x', value, u), unit);

  test.each([
    // RD-1 (10.47 mΩ rounded up to 11) is an option of JCGM 100 7.2.6 that we do not take: to the nearest it is 10
    {
      id: 'RD-1',
      text: printed(1, 10.47e-3, 'Ω'),
      expected: '1.000(10) Ω',
      source: 'JCGM 100 7.2.6, to the nearest',
    },
    { id: 'RD-2', text: printed(500e3, 28.05e3, 'kHz'), expected: '500(28) kHz', source: 'JCGM 100 7.2.6' },
    { id: 'RD-3', text: printed(10.05762, 27e-3, 'Ω'), expected: '10.058(27) Ω', source: 'JCGM 100 7.2.6' },
    { id: 'RD-3b', text: formatValue(10.05762, 'Ω', 27e-3), expected: '10.058 Ω', source: 'JCGM 100 7.2.6' },
    {
      id: 'RD-4',
      text: printed(0.10002147, 0.35e-6, 'g'),
      expected: '100.021 47(35) g',
      source: 'JCGM 100 7.2.2',
    },
    {
      id: 'RD-5',
      text: formatValue(0.1e-6 * 7, 'g', 0.7e-6),
      expected: '0.000 70 g',
      source: 'JCGM 100 7.2.4, k = 2',
    },
    {
      id: 'RD-6',
      text: formatValue(2.26 * 0.35e-6, 'g', 2.26 * 0.35e-6),
      expected: '0.000 79 g',
      source: 'JCGM 100 7.2.4',
    },
    {
      id: 'RD-7',
      text: printed(1.23456, 0.0996, '1'),
      expected: '1.23(10)',
      source: 'the carry makes a new digit',
    },
    {
      id: 'RD-8',
      text: printed(1.5, 0, 'm'),
      expected: '1.5 m',
      source: 'no bracket without an uncertainty',
    },
  ])('$id: $expected ($source)', ({ text, expected }) => {
    expect(text.replaceAll('\u202f', ' ')).toBe(expected);
  });

  test('RD-8: an uncertainty that is no number is refused before it can be printed', () => {
    expect(() => independent('x', 1.5, Number.NaN)).toThrow('the standard uncertainty of x is NaN');
  });
});

/** JCGM 100 H.1, end gauge of 50 mm: l = l_s + d − l_s(δα·θ + α_s·δθ). Lengths in nm. */
describe('JCGM 100 H.1', () => {
  const comparator = combine(215, [
    // as Table H.1 prints them: 13/√5, 10/t₉₅(5), 20/3
    [1, independent('d repeated', 215, 5.8)],
    [1, independent('d comparator random', 0, 3.9)],
    [1, independent('d comparator systematic', 0, 6.7)],
  ]);
  const inputs = {
    standardLength: independent('l_s', 50_000_623, 75 / 3),
    difference: comparator,
    expansion: independent('α_s', 11.5e-6, asBound(2e-6)),
    temperature: combine(-0.1, [
      [1, independent('θ mean', -0.1, 0.2)],
      [1, independent('θ cyclic', 0, 0.5 / Math.SQRT2)],
    ]),
    expansionDifference: independent('δα', 0, asBound(1e-6)),
    temperatureDifference: independent('δθ', 0, asBound(0.05)),
  };
  const names: readonly (keyof typeof inputs)[] = [
    'standardLength',
    'difference',
    'expansion',
    'temperature',
    'expansionDifference',
    'temperatureDifference',
  ];
  const { length } = propagate((values) => {
    const [ls = 0, d = 0, alpha = 0, theta = 0, da = 0, dt = 0] = names.map((name) => Number(values[name]));
    return { length: ls + d - ls * (da * theta + alpha * dt) };
  }, inputs);
  if (!length) throw new Error('no length');

  test('H1-y: l = 50.000 838 mm', () => {
    expect(length.value).toBe(50_000_838);
  });

  test('H1-u: u = 31.66 nm, printed 32 nm', () => {
    expect(standardUncertainty(length)).toBeCloseTo(31.664, 2);
  });

  test.each([
    ['l_s', 25],
    ['δθ', 16.599],
    ['δα', 2.887],
    ['α_s', 0],
    ['θ mean', 0],
    ['θ cyclic', 0],
  ])('H1-comp: %s contributes %f nm', (name, expected) => {
    expect(Math.abs(length.contributions.get(name) ?? 0)).toBeCloseTo(expected, 3);
  });

  test('H1-comp: the comparator contributes 9.682 nm', () => {
    expect(standardUncertainty(comparator)).toBeCloseTo(9.682, 3);
  });

  test('H1: the same as a formula', () => {
    const entry = (figure: Uncertain, unit: string) => ({ value: figure, dimension: dimension(unit) });
    const scope: Scope = new Map([
      ['ls', entry(inputs.standardLength, 'm')],
      ['d', entry(inputs.difference, 'm')],
      ['alpha', entry(inputs.expansion, '1/K')],
      ['theta', entry(inputs.temperature, 'K')],
      ['da', entry(inputs.expansionDifference, '1/K')],
      ['dt', entry(inputs.temperatureDifference, 'K')],
    ]);
    const formula = parseExpression('ls + d - ls*(da*theta + alpha*dt)');
    const result = formula.ok ? evaluateExpression(formula.value, scope) : formula;
    if (!result.ok) throw new Error(result.problem.code);
    expect(result.value.value.value).toBe(50_000_838);
    expect(standardUncertainty(result.value.value)).toBeCloseTo(31.664, 2);
    expect(result.value.unitText).toBe('m');
  });
});

/** JCGM 100 H.2: resistance and reactance from five simultaneous readings, which correlate the three means. */
describe('JCGM 100 H.2', () => {
  const rows = [
    { V: 5.007, I: 19.663e-3, phi: 1.0456 },
    { V: 4.994, I: 19.639e-3, phi: 1.0438 },
    { V: 5.005, I: 19.64e-3, phi: 1.0468 },
    { V: 4.99, I: 19.685e-3, phi: 1.0428 },
    { V: 4.999, I: 19.678e-3, phi: 1.0433 },
  ];

  /** Each row is one independent input: its deviation from the mean, in all three at once; 4.2.3 and 5.2.3 follow. */
  function mean(key: 'V' | 'I' | 'phi'): Uncertain {
    const value = rows.reduce((sum, row) => sum + row[key], 0) / rows.length;
    const spread = Math.sqrt(rows.length * (rows.length - 1));
    const contributions = rows.map(
      (row, index) => [`row ${index + 1}`, (row[key] - value) / spread] as const,
    );
    return { value, contributions: new Map(contributions) };
  }

  const inputs = { V: mean('V'), I: mean('I'), phi: mean('phi') };
  const { R, X, Z } = propagate(({ V, I, phi }) => {
    const impedance = Number(V) / Number(I);
    return { R: impedance * Math.cos(Number(phi)), X: impedance * Math.sin(Number(phi)), Z: impedance };
  }, inputs);
  if (!R || !X || !Z) throw new Error('no result');
  const correlation = (a: Uncertain, b: Uncertain): number =>
    covariance(a, b) / standardUncertainty(a) / standardUncertainty(b);

  test.each([
    { id: 'V', figure: inputs.V, value: 4.999, u: '0.0032094' },
    { id: 'I', figure: inputs.I, value: 0.019661, u: '0.0000094710' },
    { id: 'φ', figure: inputs.phi, value: 1.04446, u: '0.00075206' },
    { id: 'H2-R', figure: R, value: 127.73217, u: '0.071071' },
    { id: 'H2-X', figure: X, value: 219.846512, u: '0.295582' },
    { id: 'H2-Z', figure: Z, value: 254.259702, u: '0.236336' },
  ])('$id: mean $value, u = $u (Table H.2 and H.4, approach 1)', ({ figure, value, u }) => {
    expect(figure.value / value).toBeCloseTo(1, 8);
    const digits = u.replace(/^0\.0*/, '').length;
    expect(standardUncertainty(figure).toPrecision(digits)).toBe(Number(u).toPrecision(digits));
  });

  test.each([
    { id: 'r(V, I)', r: correlation(inputs.V, inputs.I), expected: -0.3553 },
    { id: 'r(V, φ)', r: correlation(inputs.V, inputs.phi), expected: 0.8576 },
    { id: 'r(I, φ)', r: correlation(inputs.I, inputs.phi), expected: -0.6451 },
    { id: 'H2-rRX', r: correlation(R, X), expected: -0.5884 },
    { id: 'H2-rRZ', r: correlation(R, Z), expected: -0.4853 },
    { id: 'H2-rXZ', r: correlation(X, Z), expected: 0.9925 },
  ])('$id = $expected', ({ r, expected }) => {
    expect(r).toBeCloseTo(expected, 4);
  });

  test('H2-trap2: with the correlations ignored u(R) would be 2.7 times too big', () => {
    const loose = Object.fromEntries(
      Object.entries(inputs).map(([name, figure]) => [
        name,
        independent(name, figure.value, standardUncertainty(figure)),
      ]),
    );
    const { R: wrong } = propagate(
      ({ V, I, phi }) => ({ R: (Number(V) / Number(I)) * Math.cos(Number(phi)) }),
      loose,
    );
    if (!wrong) throw new Error('no result');
    expect(standardUncertainty(wrong)).toBeCloseTo(0.1945, 4);
  });

  test('printed as the example prints it', () => {
    const plain = (figure: Uncertain) => formatUncertain(figure, 'Ω').replaceAll('\u202f', ' ');
    expect(plain(R)).toBe('127.732(71) Ω');
    expect(plain(Z)).toBe('254.26(24) Ω');
  });
});
