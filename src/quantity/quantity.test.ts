import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { phrase, sentence } from './problem.ts';
import { parseQuantity } from './quantity.ts';

function si(text: string, unit: string): number {
  const result = parseQuantity(text, unit, 'Field');
  if (!result.ok) throw new Error(sentence(result.problem));
  return result.value.si;
}

function refusal(text: string, unit: string) {
  const result = parseQuantity(text, unit, 'Field');
  if (result.ok) return undefined;
  expect(sentence(result.problem), 'every figure in braces is given').not.toMatch(/[{}]/);
  return result.problem;
}

describe('a number with a unit', () => {
  test.each([
    ['73 g', 'kg', 0.073],
    ['73g', 'kg', 0.073],
    ['73.2\u202fg', 'kg', 0.0732],
    ['.5 kg', 'kg', 0.5],
    ['5. kg', 'kg', 5],
    ['+5 kg', 'kg', 5],
    ['-5 mm', 'm', -0.005],
    ['−5 mm', 'm', -0.005],
    ['–5 mm', 'm', -0.005],
    ['1e-3 kg', 'kg', 0.001],
    ['1E+3 kg', 'kg', 1000],
    ['1.2×10^-3 kg·m²', 'kg·m²', 0.0012],
    ['1.2×10⁻³ kg·m²', 'kg·m²', 0.0012],
    ['1.2 x 10^−3 kg·m²', 'kg·m²', 0.0012],
    ['1.2*10^(-3) kg·m²', 'kg·m²', 0.0012],
    ['12 000 m', 'm', 12000],
    ['12\u2009345.678\u20099 m', 'm', 12345.6789],
    ['0.070 061 55 N·m', 'N·m', 0.07006155],
    ['1/2 in', 'm', 0.0127],
    ['1 1/2 in', 'm', 0.0381],
    ['1-1/2 in', 'm', 0.0381],
    ['−1 1/2 in', 'm', -0.0381],
    ['½ in', 'm', 0.0127],
    ['1 ½ in', 'm', 0.0381],
    ['5 thou', 'm', 0.000127],
    ['3/8"', 'm', 0.009525],
    ['±45°', 'rad', Math.PI / 4],
    ['± 45 deg', 'rad', Math.PI / 4],
    ['+/-30 mm', 'm', 0.03],
    ['180°', '°', Math.PI],
    ['10 %', '1', 0.1],
    ['0.1', '1', 0.1],
    ['80 %', '%', 0.8],
    ['2200 mAh', 'C', 7920],
    ['22.2 Wh', 'J', 79920],
    ['250 MPa', 'Pa', 250e6],
    ['25 °C', 'K', 298.15],
    ['68 °F', 'K', 293.15],
    ['36 km/h', 'm/s', 10],
    ['20 kgf·cm', 'N·m', 1.96133],
    ['0 g', 'kg', 0],
    ['-0 g', 'kg', 0],
  ])('%s in a field of %s', (text, unit, expected) => {
    expect(si(text, unit)).toBe(expected);
  });

  test('is converted to the very double that the decimal in SI would be', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10 ** 9 }),
        fc.integer({ min: 0, max: 6 }),
        (figures, decimals) => {
          const exact = BigInt(figures);
          const text = `${exact / 10n ** BigInt(decimals)}.${String(exact % 10n ** BigInt(decimals)).padStart(decimals, '0')}`;
          expect(si(`${text} g`, 'kg')).toBe(Number(`${figures}e${-decimals - 3}`));
          expect(si(`${text} in`, 'm')).toBe(Number(`${exact * 254n}e${-decimals - 4}`));
        },
      ),
    );
  });

  test('keeps the text as typed, without outer spaces', () => {
    const result = parseQuantity('  73\u2009g ± 0.5\u2009g ', 'kg', 'Field');
    expect(result.ok && result.value.typed).toBe('73\u2009g ± 0.5\u2009g');
    expect(result.ok && result.value.uncertainty?.typed).toBe('± 0.5\u2009g');
  });
});

describe('the unit of the field', () => {
  test('the letter g is free fall in a field of acceleration and a gram in a field of mass', () => {
    expect(si('0.35 g', 'm/s²')).toBe(3.4323275);
    expect(si('0.35 g', 'kg')).toBe(0.00035);
  });

  test('turns, radians and hertz do not mix unseen', () => {
    expect(si('3000 rpm', 'rad/s')).toBeCloseTo(100 * Math.PI, 12);
    expect(si('50 rev/s', 'rpm')).toBeCloseTo(100 * Math.PI, 12);
    expect(si('3000 1/min', 'rpm')).toBe(si('3000 rpm', 'rpm'));
    expect(si('3000/min', 'rad/s')).toBe(si('3000 rpm', 'rpm'));
    expect(si('50 Hz', 'rad/s')).toBe(100 * Math.PI);
    expect(si('0.05 kHz', 'rad/s')).toBe(100 * Math.PI);
    expect(refusal('50 Hz', 'rpm')?.code).toBe('quantity.turns-or-radians');
    expect(refusal('50 1/s', 'rad/s')?.code).toBe('quantity.turns-or-radians');
    expect(refusal('900 1/(s·V)', 'rpm/V')?.code).toBe('quantity.turns-or-radians');
    expect(refusal('50 rad/s', 'Hz')?.code).toBe('quantity.wrong-dimension');
    expect(refusal('50 rpm', '1/s')?.code).toBe('quantity.wrong-dimension');
    expect(si('2 1/h', '1/s')).toBe(2 / 3600);
  });

  test('an angle is no ratio and a ratio no angle', () => {
    expect(refusal('5°', '1')?.figures.found).toBe('an angle');
    expect(refusal('0.1 rad', '%')?.code).toBe('quantity.wrong-dimension');
    expect(refusal('5 %', '°')?.figures.expected).toBe('an angle');
    expect(refusal('0.1', 'rad')?.code).toBe('quantity.missing-unit');
  });

  test('per radian may be left out, and per degree is converted', () => {
    expect(si('0.02 N·m·s', 'N·m·s/rad')).toBe(0.02);
    expect(si('1 N·m/°', 'N·m/rad')).toBeCloseTo(180 / Math.PI, 12);
    expect(refusal('1 N·m/°', 'N·m')?.figures.found).toBe('a stiffness in moment per angle');
    expect(refusal('1 m/°', 'm')?.figures.found).toBe('a quantity in m/°');
  });

  test('a moment told in units of mass is told the unit of force', () => {
    expect(refusal('20 kg·cm', 'N·m')).toMatchObject({
      code: 'quantity.weight-as-mass',
      figures: { example: '20 kgf·cm' },
      range: [3, 8],
    });
    expect(refusal('30 oz-in', 'N·m')?.figures.example).toBe('30 ozf-in');
    expect(refusal('5 lbs', 'N')?.figures.example).toBe('5 lbf');
  });
});

describe('a refusal', () => {
  test.each([
    ['', 'kg', 'quantity.empty', [0, 0]],
    ['   ', 'kg', 'quantity.empty', [0, 3]],
    ['heavy', 'kg', 'quantity.not-a-number', [0, 5]],
    ['NaN kg', 'kg', 'quantity.not-a-number', [0, 6]],
    ['Infinity kg', 'kg', 'quantity.not-a-number', [0, 11]],
    ['- kg', 'kg', 'quantity.not-a-number', [0, 4]],
    ['--5 kg', 'kg', 'quantity.not-a-number', [0, 6]],
    ['±-45°', '°', 'quantity.not-a-number', [1, 5]],
    ['1/0 in', 'm', 'quantity.not-a-number', [0, 6]],
    ['73', 'kg', 'quantity.missing-unit', [0, 2]],
    ['73 stone', 'kg', 'quantity.unknown-unit', [3, 8]],
    ['  73 Kg', 'kg', 'quantity.misspelt-unit', [5, 7]],
    ['73 mm', 'kg', 'quantity.wrong-dimension', [3, 5]],
    ['7 3 g', 'kg', 'quantity.unknown-unit', [2, 5]],
    ['1,5 kg', 'kg', 'quantity.decimal-comma', [0, 6]],
    ['8,500 rpm', 'rpm', 'quantity.decimal-comma', [0, 9]],
    ['1e999 kg', 'kg', 'quantity.too-large', [0, 8]],
    ['1e308 km', 'm', 'quantity.too-large', [0, 8]],
    [`${'9'.repeat(190)}e300 kg`, 'kg', 'quantity.too-large', [0, 197]],
    ['1e99999999999999 kg', 'kg', 'quantity.too-large', [0, 19]],
    [`${'1'.repeat(201)} kg`, 'kg', 'quantity.too-long', [200, 204]],
    ['73 g ±', 'kg', 'quantity.bad-uncertainty', [5, 6]],
    ['73 g ± -1 g', 'kg', 'quantity.bad-uncertainty', [5, 11]],
    ['73 g ± 1(1) g', 'kg', 'quantity.bad-uncertainty', [5, 13]],
    ['73.2(4) g ± 1 g', 'kg', 'quantity.uncertainty-twice', [10, 15]],
    ['73 g ± 1 mm', 'kg', 'quantity.wrong-dimension', [9, 11]],
    ['(73 g ± 1) g', 'kg', 'quantity.bad-uncertainty', [0, 10]],
    ['(73 ± 1 g) g', 'kg', 'quantity.bad-uncertainty', [0, 10]],
    ['(x ± 1) g', 'kg', 'quantity.not-a-number', [1, 9]],
    ['(73 ± 1)', 'kg', 'quantity.missing-unit', [0, 8]],
    ['0.8 ± 5 %', '1', 'quantity.ambiguous-percentage', [4, 9]],
  ] as const)('of %j in a field of %s is %s and points at it', (text, unit, code, range) => {
    expect(refusal(text, unit)).toMatchObject({ code, range, place: 'Field' });
  });

  test('shows an example that the field takes', () => {
    const units = [
      'kg',
      '°',
      'rad',
      'rpm',
      'rad/s',
      'rpm/V',
      'm/s²',
      'N·m·s/rad',
      'mΩ',
      'A·h',
      '%',
      '1',
      'min',
      'm·s/rad',
    ];
    for (const unit of units) {
      for (const text of ['', 'x', '5 lx']) {
        const example = String(refusal(text, unit)?.figures.example);
        expect(parseQuantity(example, unit, 'Field').ok, `${example} in ${unit}`).toBe(true);
      }
      const example = String(refusal('1 ± x', unit)?.figures.example);
      expect(parseQuantity(example, unit, 'Field').ok, `${example} in ${unit}`).toBe(true);
    }
  });

  test('of a comma offers what it could have meant', () => {
    expect(refusal('1,5 kg', 'kg')?.figures.example).toBe('1.5 kg');
    expect(refusal('8,500 rpm', 'rpm')?.figures.example).toBe('8.500 rpm or 8500 rpm');
  });

  test('reads as a sentence', () => {
    const problem = refusal('73 mm', 'kg');
    expect(problem && phrase(problem)).toEqual({
      place: 'Field',
      reason: '“73 mm” is a length, but a mass is wanted.',
      remedy: 'Give it in a unit of that kind, for example 73.2 g.',
    });
  });

  test('comes for any text whatever, or else a finite number does', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (text) => {
        const result = parseQuantity(text, 'kg', 'Field');
        if (result.ok) return expect(Number.isFinite(result.value.si)).toBe(true);
        const [from, to] = result.problem.range ?? [-1, -1];
        expect(0 <= from && from <= to && to <= text.length).toBe(true);
      }),
    );
  });
});
