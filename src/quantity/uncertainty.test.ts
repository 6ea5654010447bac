import { describe, expect, test } from 'vitest';
import { parseQuantity } from './quantity.ts';
import { parseUncertainty } from './uncertainty.ts';

function typed(text: string, unit: string) {
  const result = parseQuantity(text, unit, 'Field');
  return result.ok ? result.value : result.problem;
}

function apart(...args: Parameters<typeof parseUncertainty>) {
  const result = parseUncertainty(...args);
  return result.ok ? result.value : result.problem.code;
}

describe('an uncertainty typed with its value', () => {
  test('figures in brackets are a standard uncertainty in the last digits', () => {
    expect(typed('73.2(4) g', 'kg')).toMatchObject({
      si: 0.0732,
      u: 0.0004,
      uncertainty: { typed: '(4)', kind: 'standard' },
    });
    expect(typed('73(4) g', 'kg')).toMatchObject({ u: 0.004 });
    expect(typed('1.2(12) g', 'kg')).toMatchObject({ u: 0.0012 });
    expect(typed('73.2(0.4) g', 'kg')).toMatchObject({ u: 0.0004 });
    expect(typed('1.235(12)×10⁵ N', 'N')).toMatchObject({ si: 123500, u: 1200 });
    expect(typed('100.021 47(35) g', 'kg')).toMatchObject({ si: 0.10002147, u: 3.5e-7 });
  });

  test('what stands after ± is a bound, u = a/√3', () => {
    const bound = { si: 0.073, u: 0.0005 / Math.sqrt(3), uncertainty: { kind: 'bound' } };
    for (const text of [
      '73 g ± 0.5 g',
      '73 ± 0.5 g',
      '73 g ± 0.5',
      '(73 ± 0.5) g',
      '73 g +/- 0.5 g',
      '73g±500mg',
    ]) {
      expect(typed(text, 'kg'), text).toMatchObject(bound);
    }
  });

  test('a percentage after ± is a part of the value', () => {
    expect(typed('200 g ± 2 %', 'kg')).toMatchObject({ si: 0.2, u: 0.004 / Math.sqrt(3) });
    expect(typed('-200 mm ± 2 %', 'm')).toMatchObject({ si: -0.2, u: 0.004 / Math.sqrt(3) });
  });

  test('in a field of numbers a percentage is a part of one, if the value is one too', () => {
    expect(typed('80 % ± 5 %', '1')).toMatchObject({ si: 0.8, u: 0.05 / Math.sqrt(3) });
    expect(typed('(80 ± 5) %', '1')).toMatchObject({ si: 0.8, u: 0.05 / Math.sqrt(3) });
    expect(typed('80 ± 5 %', '%')).toMatchObject({ code: 'quantity.ambiguous-percentage' });
  });

  test('of a temperature it is a difference: the zero of the scale does not enter', () => {
    expect(typed('20 °C ± 0.5 °C', 'K')).toMatchObject({ si: 293.15, u: 0.5 / Math.sqrt(3) });
  });

  test('of a travel it is read after the leading ±', () => {
    expect(typed('±45° ± 1°', 'rad')).toMatchObject({ si: Math.PI / 4, u: Math.PI / 180 / Math.sqrt(3) });
  });
});

describe('an uncertainty typed apart', () => {
  test('is converted by how it was stated', () => {
    expect(apart('0.5 g', 'standard', 'kg', 'u')).toBe(0.0005);
    expect(apart('± 0.5 g', 'bound', 'kg', 'u')).toBe(0.0005 / Math.sqrt(3));
    expect(apart('1 g', 'resolution', 'kg', 'u')).toBe(0.001 / Math.sqrt(12));
    expect(apart('1 °C', 'bound', 'K', 'u')).toBe(1 / Math.sqrt(3));
    expect(apart('0', 'standard', '1', 'u')).toBe(0);
  });

  test('may be a part of the value where that is given', () => {
    expect(apart('2 %', 'standard', 'kg', 'u', -0.2)).toBe(0.004);
    expect(apart('2 %', 'standard', 'kg', 'u')).toBe('quantity.wrong-dimension');
    expect(apart('2 %', 'standard', '1', 'u', 0.5)).toBe(0.02);
  });

  test('is refused when it is negative, has no unit or says something else', () => {
    expect(apart('-1 g', 'standard', 'kg', 'u')).toBe('quantity.bad-uncertainty');
    expect(apart('1.5(2) g', 'standard', 'kg', 'u')).toBe('quantity.bad-uncertainty');
    expect(apart('1', 'standard', 'kg', 'u')).toBe('quantity.missing-unit');
    expect(apart('', 'standard', 'kg', 'u')).toBe('quantity.empty');
    expect(apart('little', 'standard', 'kg', 'u')).toBe('quantity.not-a-number');
    expect(apart('1e308 km', 'standard', 'm', 'u')).toBe('quantity.too-large');
  });
});
