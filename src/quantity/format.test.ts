import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatUncertain, formatValue, toDisplay } from './format.ts';
import { parseQuantity } from './quantity.ts';
import { exact, independent } from './uncertain.ts';

const NARROW = '\u202f';

function uncertain(value: number, u: number, unit: string): string {
  return formatUncertain(independent('x', value, u), unit).replaceAll(NARROW, ' ');
}

function plain(si: number, unit: string, u?: number): string {
  return formatValue(si, unit, u).replaceAll(NARROW, ' ');
}

describe('a figure with its uncertainty', () => {
  test('has two digits of the uncertainty in brackets, on the last digits of the value', () => {
    expect(uncertain(0.0742, 0.0012, 'kg·m²')).toBe('0.0742(12) kg·m²');
    expect(uncertain(0.0732, 0.0004, 'g')).toBe('73.20(40) g');
    expect(uncertain(74.2, 1.2, 'N')).toBe('74.2(12) N');
    expect(uncertain(-0.3, 0.01, '°')).toBe('−17.19(57)°');
  });

  test('loses a decimal where rounding carries the uncertainty to a new digit', () => {
    expect(uncertain(1.23456, 0.0996, '1')).toBe('1.23(10)');
    expect(uncertain(1.23456, 0.0994, '1')).toBe('1.235(99)');
  });

  test('has no brackets where nothing is uncertain', () => {
    expect(formatUncertain(exact(3), 'm')).toBe(`3${NARROW}m`);
  });

  test('is set with a power of ten where noughts would claim to be known', () => {
    expect(uncertain(123456, 1200, 'N')).toBe('1.235(12)×10⁵ N');
    expect(uncertain(3, 500, 'm')).toBe('0.0(50)×10² m');
    expect(uncertain(1.2e-9, 3e-11, 'm')).toBe('1.200(30)×10⁻⁹ m');
  });

  test('shows nought when the value drowns in the uncertainty, without a sign', () => {
    expect(uncertain(0, 0.5, 'm')).toBe('0.00(50) m');
    expect(uncertain(-1e-8, 0.1, 'm')).toBe('0.00(10) m');
  });

  test('shows no digits that a double does not have', () => {
    expect(uncertain(1 / 3, 1e-30, 'm')).toBe('0.333 333 333 333 333 m');
    expect(uncertain(1, 1e-100, 'm')).toBe('1.000 000 000 000 00 m');
  });

  test('of a temperature in °C keeps a difference apart from the zero of the scale', () => {
    expect(uncertain(293.15, 0.5, '°C')).toBe('20.00(50) °C');
  });
});

describe('a figure without uncertainty', () => {
  test('has four digits at most, and no noughts at the end that nobody has stated', () => {
    expect(plain(0.0732, 'g')).toBe('73.2 g');
    expect(plain(Math.PI, '1')).toBe('3.142');
    expect(plain(2.5, 'm/s²')).toBe('2.5 m/s²');
    expect(plain(100, 'm')).toBe('100 m');
    expect(plain(9.9996, 'm')).toBe('10 m');
  });

  test('keeps every digit before the point', () => {
    expect(plain(12345.678, 'N')).toBe('12 346 N');
    expect(plain(8500 * (Math.PI / 30), 'rpm')).toBe('8500 rpm');
  });

  test('has the digits of the uncertainty that it is printed beside', () => {
    expect(plain(0.0742, 'kg·m²', 0.0012)).toBe('0.0742 kg·m²');
    expect(plain(0.07, 'kg·m²', 0.0012)).toBe('0.0700 kg·m²');
    expect(plain(0.07, 'kg·m²', 0)).toBe('0.07 kg·m²');
  });

  test('is set with a power of ten when it is very large or very small', () => {
    expect(plain(2.5e9, 'Pa')).toBe('2.5×10⁹ Pa');
    expect(plain(-1.2e-9, 'm')).toBe('−1.2×10⁻⁹ m');
    expect(plain(999_999.9, 'm')).toBe('1×10⁶ m');
    expect(plain(5e-324, 'm')).toMatch(/^5×10⁻³²⁴ m$/);
    expect(plain(1.7e308, 'm')).toBe('1.7×10³⁰⁸ m');
  });

  test('is never minus nought', () => {
    expect(plain(-0, 'm')).toBe('0 m');
    expect(plain(-1e-12, '°', 0.01)).toBe('0.00°');
  });

  test('says so when it is no finite number', () => {
    expect(plain(Number.POSITIVE_INFINITY, 's')).toBe('∞ s');
    expect(plain(Number.NEGATIVE_INFINITY, 's')).toBe('−∞ s');
    expect(plain(Number.NaN, 's')).toBe('not a number s');
  });

  test('stands a narrow space from its unit, but next to °', () => {
    expect(formatValue(Math.PI / 4, '°')).toBe('45°');
    expect(formatValue(0.1, '%')).toBe(`10${NARROW}%`);
    expect(formatValue(0.1, '1')).toBe('0.1');
  });
});

describe('a unit', () => {
  test.each([
    ['kg*m^2', 'kg·m²'],
    ['kg m2', 'kg·m²'],
    ['N·m·s/rad', 'N·m·s/rad'],
    ['m / s^2', 'm/s²'],
    ['rad s^-1', 'rad·s⁻¹'],
    ['s-1', 's⁻¹'],
    ['kgf-cm', 'kgf·cm'],
    ['rad/(s V)', 'rad/(s·V)'],
    ['m**(-2)', 'm⁻²'],
    ['deg/s', '°/s'],
    ['mohm', 'mohm'],
    ['ohm', 'Ω'],
    ['\u2126', 'Ω'],
    ['1/min', '1/min'],
    ['g_n', 'g_n'],
    ['kg^0.5', 'kg^0.5'],
  ])('typed as %s is printed as %s', (typed, expected) => {
    expect(formatValue(0, typed)).toBe(`0${NARROW}${expected}`);
    expect(toDisplay(1, expected)).toBe(toDisplay(1, typed));
  });
});

describe('display units', () => {
  test('are reached without a stray last digit', () => {
    expect(toDisplay(0.0732, 'g')).toBe(73.2);
    expect(toDisplay(298.15, '°C')).toBeCloseTo(25, 12);
    expect(toDisplay(7920, 'mAh')).toBe(2200);
  });

  test('and back again lead to the same value within the printed digits', () => {
    const units = [
      'g',
      'kg',
      'mm',
      'in',
      'rpm',
      '°',
      'km/h',
      'MPa',
      '%',
      'mΩ',
      'kg·m²',
      'N·m·s/rad',
      '°C',
      '°F',
    ];
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    const share = fc.double({ min: 1e-9, max: 10, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...units), value, share, (unit, si, relative) => {
        const u = Math.max(Math.abs(si) * relative, 1e-9);
        const text = formatUncertain(independent('x', si, u), unit);
        const read = parseQuantity(text, unit, 'Field');
        if (!read.ok) throw new Error(`${text}: ${read.problem.code}`);
        // two digits of u: the value is off by half a unit of the second at most, u by as much
        expect(Math.abs(read.value.si - si)).toBeLessThanOrEqual(0.051 * u + 1e-13 * Math.abs(si) + 1e-12);
        expect(Math.abs((read.value.u ?? 0) - u)).toBeLessThanOrEqual(0.051 * u);
      }),
      { numRuns: 500 },
    );
  });

  test('printed without an uncertainty, a value is read back to four digits', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (si) => {
        const read = parseQuantity(formatValue(si, 'mm'), 'm', 'Field');
        if (!read.ok) throw new Error(read.problem.code);
        expect(Math.abs(read.value.si - si)).toBeLessThanOrEqual(5.01e-4 * Math.abs(si));
      }),
    );
  });
});
