import { describe, expect, test } from 'vitest';
import { describeDimension, sameDimension, unitTextOf } from './dimension.ts';
import { ProblemError } from './problem.ts';
import { dimension, isUnitWord, parseUnit, unitOf } from './unit.ts';
import { PREFIXES, UNIT_ROWS } from './unit-table.ts';

describe('units', () => {
  test.each([
    ['kg·m²', 'kg*m^2', 'kg m2', 'kg m²', 'kg⋅m**2', 'kg×m^(2)'],
    ['N·m', 'N m', 'Nm', 'N*m', 'm·N'],
    ['N·m·s/rad', 'N m s/rad', 'N·m·s·rad^-1', 'N·m·s rad⁻¹'],
    ['rad/(s·V)', 'rad·s⁻¹·V⁻¹', 'rad/(V s)'],
    ['m/s²', 'm/s^2', 'm·s⁻²', 'm s-2', '(m/s)/s'],
    ['1/min', '/min', 'min^-1', 'min⁻¹'],
    ['µm', 'μm', 'um'],
    ['Ω', '\u2126', 'ohm', 'Ohm'],
    ['kgf·cm', 'kgf-cm', 'kgf cm', 'kgf\u202fcm'],
    ['ozf·in', 'ozf-in', 'ozf in'],
  ])('%s has these spellings', (first, ...others) => {
    const unit = unitOf(first);
    for (const other of others) {
      expect(unitOf(other).factor, other).toBe(unit.factor);
      expect(unitOf(other).dimension, other).toEqual(unit.dimension);
      expect(unitOf(other).angle, other).toBe(unit.angle);
    }
  });

  test('the coherent SI units have the factor 1 exactly', () => {
    for (const text of [
      'kg',
      'm',
      's',
      'A',
      'K',
      'rad',
      'N',
      'J',
      'W',
      'V',
      'Ω',
      'C',
      'Pa',
      'F',
      'H',
      'N·m·s/rad',
      '1',
    ]) {
      expect(unitOf(text).factor, text).toBe(1);
    }
  });

  test('an angle counts as a number, but the text remembers it', () => {
    expect(sameDimension(dimension('rpm'), dimension('Hz'))).toBe(true);
    expect(unitOf('rpm').angle).toBe(1);
    expect(unitOf('Hz').angle).toBe(0);
    expect(unitOf('N·m/°').angle).toBe(-1);
    expect(sameDimension(dimension('N·m·rad/s'), dimension('W'))).toBe(true);
  });

  test('no spelling stands for two units', () => {
    const spellings = UNIT_ROWS.flatMap((row) =>
      row.symbols.flatMap((symbol) => [
        symbol,
        ...[...(row.prefixes ?? '')].map((prefix) => prefix + symbol),
      ]),
    );
    expect(spellings.filter((spelling, index) => spellings.indexOf(spelling) !== index)).toEqual([]);
  });

  test('every row can be read, every prefix is one, and every name of a dimension has its unit', () => {
    for (const row of UNIT_ROWS) {
      for (const symbol of row.symbols) expect(parseUnit(symbol).ok, symbol).toBe(true);
      for (const prefix of row.prefixes ?? '') expect(PREFIXES, prefix).toHaveProperty(prefix);
    }
    for (const text of [
      'kg',
      'N·m',
      'kg/m³',
      '1/(s·V)',
      'kg·m',
      'A·s',
      '1',
      'K²',
      'kg/(m·s)',
      'm^0.5',
      '1/m^0.5',
      'kg^1.5/s',
    ]) {
      expect(unitTextOf(dimension(text)), text).toBe(text);
    }
    expect(describeDimension(dimension('N·m'))).toBe('a moment or an energy');
    expect(describeDimension(dimension('kg·K'))).toBe('a quantity in kg·K');
  });

  test.each([
    ['', 'quantity.missing-unit', [0, 0]],
    ['furlong', 'quantity.unknown-unit', [0, 7]],
    ['N·furlong', 'quantity.unknown-unit', [2, 9]],
    ['Kg', 'quantity.misspelt-unit', [0, 2]],
    ['N/m/s', 'quantity.unit-brackets', [3, 5]],
    ['N/m·s', 'quantity.unit-brackets', [3, 5]],
    ['kg/m s', 'quantity.unit-brackets', [4, 6]],
    ['W/°C', 'quantity.temperature-in-product', [0, 4]],
    ['°C·m', 'quantity.temperature-in-product', [0, 4]],
    ['m^0', 'quantity.unknown-unit', [1, 3]],
    ['m^99', 'quantity.unknown-unit', [1, 4]],
    ['mm^0.5', 'quantity.unknown-unit', [0, 6]],
    ['(m', 'quantity.unknown-unit', [0, 2]],
    ['m)', 'quantity.unknown-unit', [1, 2]],
    ['5', 'quantity.unknown-unit', [0, 1]],
    ['µ', 'quantity.unknown-unit', [0, 1]],
    ['kkg', 'quantity.unknown-unit', [0, 3]],
    ['m'.repeat(61), 'quantity.unknown-unit', [0, 61]],
  ] as const)('%s is refused as %s with its place', (text, code, range) => {
    const result = parseUnit(text, 'Mass');
    expect(result.ok ? undefined : result.problem).toMatchObject({ code, range, place: 'Mass' });
  });

  test('a misspelling by capitals is told what was meant', () => {
    const result = parseUnit('MAH');
    expect(result.ok ? undefined : result.problem.figures.suggestion).toBe('mAh');
  });

  test('powers of powers do not make a number of a million digits', () => {
    expect(parseUnit('((((((((%^9)^9)^9)^9)^9)^9)^9)^9)').ok).toBe(false);
    expect(parseUnit('((((((((km^9)^9)^9)^9)^9)^9)^9)^9)').ok).toBe(false);
  });

  test('a broken unit text of our own is a bug and is thrown', () => {
    expect(() => unitOf('kgm²x')).toThrow(ProblemError);
  });

  test('a word is a unit by itself or not', () => {
    expect(isUnitWord('mAh')).toBe(true);
    expect(isUnitWord('total_mass')).toBe(false);
    expect(isUnitWord('constructor')).toBe(false);
  });
});
