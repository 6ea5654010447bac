import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatUncertain } from '../format.ts';
import { sentence } from '../problem.ts';
import { propagate } from '../propagate.ts';
import { independent, standardUncertainty } from '../uncertain.ts';
import { dimension } from '../unit.ts';
import { evaluateExpression, parseExpression, type Scope, type ScopeValue } from './index.ts';

function entry(name: string, value: number, u: number, unit: string): [string, ScopeValue] {
  return [name, { value: independent(name, value, u), dimension: dimension(unit) }];
}

const scope: Scope = new Map([
  entry('total_mass', 12, 0.1, 'kg'),
  entry('cg_height', 0.21, 0.004, 'm'),
  entry('largest_lean', 0.3, 0.01, 'rad'),
  entry('rotor_speed', 900, 1, 'rad/s'),
  entry('gimbal_centring', 0, 0.01, 'N·m/rad'),
]);

function evaluated(text: string, known: Scope = scope) {
  const expression = parseExpression(text);
  return expression.ok ? evaluateExpression(expression.value, known) : expression;
}

function printed(text: string): string {
  const result = evaluated(text);
  if (!result.ok) return result.problem.code;
  return formatUncertain(result.value.value, result.value.unitText).replaceAll('\u202f', ' ');
}

function refusal(text: string) {
  const result = evaluated(text);
  if (result.ok) return undefined;
  const { code, range } = result.problem;
  expect(sentence(result.problem), 'every figure in braces is given').not.toMatch(/[{}]/);
  return [code, range && text.slice(...range)];
}

describe('a formula', () => {
  test.each([
    ['2 + 3*4', '14'],
    ['(2 + 3)*4', '20'],
    ['-2^2', '−4'],
    ['2^-1', '0.5'],
    ['2^3^2', '512'],
    ['7 − 2 × 3 ÷ 4', '5.5'],
    ['3²', '9'],
    ['2⁻¹', '0.5'],
    ['+3', '3'],
    ['2 · 3', '6'],
    ['pi', '3.142'],
    ['2*π', '6.283'],
    ['e', '2.718'],
    ['g_n', '9.807 m/s²'],
    ['1e2 + .5', '100.5'],
    ['sqrt(16 m²)', '4 m'],
    ['(16 m²)^0.5', '4 m'],
    ['(4 m)^-2', '0.0625 1/m²'],
    ['sqrt(2 kg)', '1.414 kg^0.5'],
    ['abs(-3 m)', '3 m'],
    ['sin(30°)', '0.5'],
    ['cos(60 deg)', '0.5'],
    ['tan(45°)', '1'],
    ['asin(0.5) in °', '30°'],
    ['acos(0.5) in °', '60°'],
    ['atan(1) in °', '45°'],
    ['atan2(1 m, -1 m) in °', '135°'],
    ['exp(0)', '1'],
    ['ln(e)', '1'],
    ['log(e)', '1'],
    ['log10(1000)', '3'],
    ['min(3 m, 200 cm, 5 m)', '2 m'],
    ['max(3 m, 200 cm)', '3 m'],
  ])('%s is %s', (text, expected) => {
    expect(printed(text)).toBe(expected);
  });

  test('carries units and uncertainties', () => {
    expect(printed('total_mass * g_n')).toBe('117.68(98) N');
    expect(printed('total_mass * g_n * cg_height')).toBe('24.71(51) N·m');
    expect(printed('total_mass in g')).toBe('1.200(10)×10⁴ g');
    expect(printed('rotor_speed in rpm')).toBe('8594.4(95) rpm');
    expect(printed('1.5 N·m * rotor_speed')).toBe('1350.0(15) W');
  });

  test('takes a figure that occurs twice for one', () => {
    expect(printed('total_mass - total_mass')).toBe('0 kg');
    expect(printed('total_mass/total_mass')).toBe('1');
  });

  test('knows its symbols, without constants and functions', () => {
    const expression = parseExpression('sin(lean)*mass*g_n*e/mass + pi');
    expect(expression.ok && expression.value.symbols).toEqual(['lean', 'mass']);
  });

  test('finds figures of the scope only, and these before the constants', () => {
    expect(refusal('constructor')).toEqual(['expression.unknown-symbol', 'constructor']);
    expect(refusal('__proto__')).toEqual(['expression.unknown-symbol', '__proto__']);
    const offset: Scope = new Map([entry('e', 0.005, 0, 'm')]);
    const result = evaluated('2*e', offset);
    expect(result.ok && result.value.value.value).toBe(0.01);
  });

  test('names the nearest figure for one that is not known', () => {
    const result = evaluated('total_mas * 2');
    expect(result.ok ? undefined : result.problem.figures).toEqual({
      name: 'total_mas',
      hint: ' Did you mean “total_mass”?',
    });
    expect(refusal('cheese')).toEqual(['expression.unknown-symbol', 'cheese']);
  });
});

describe('units in a formula', () => {
  test.each([
    ['1 min', '60 s'],
    ['2 in', '0.0508 m'],
    ['3 m', '3 m'],
    ['2 in in mm', '50.8 mm'],
    ['(2) in %', '200 %'],
    ['(2 in) in mm', '50.8 mm'],
    ['73 g', '0.073 kg'],
    ['2.5 m/s^2', '2.5 m/s²'],
    ['2.5 m/s²', '2.5 m/s²'],
    ['0.2 N·m·s/rad', '0.2 N·m·s'],
    ['4 N/(m·s)', '4 kg/s³'],
    ['10 %', '0.1'],
    ['min(3 min, 2 min)', '120 s'],
    ['900 rpm/V * 10 V in rpm', '9000 rpm'],
    ['0.35 g_n', '3.432 m/s²'],
    ['3 kg·total_mass', '36.00(30) kg²'],
    ['3 m/cg_height', '14.29(27)'],
  ])('%s is %s', (text, expected) => {
    expect(printed(text)).toBe(expected);
  });

  test('stand only directly after a number: elsewhere a word is a figure', () => {
    const known: Scope = new Map([entry('m', 5, 0, 'kg'), entry('s', 2, 0, 's')]);
    const value = (text: string) => {
      const result = evaluated(text, known);
      return result.ok ? [result.value.value.value, result.value.unitText] : result.problem.code;
    };
    expect(value('m')).toEqual([5, 'kg']);
    expect(value('3 m')).toEqual([3, 'm']);
    expect(value('3*m')).toEqual([15, 'kg']);
    expect(value('3 m / s')).toEqual([1.5, 'm/s']);
    expect(value('3 m*s')).toEqual([6, 'm·s']);
    expect(value('3 m/s')).toBe('expression.unit-or-name');
    expect(value('3 N/(m·s)')).toBe('expression.unit-or-name');
  });

  test.each([
    ['5 in m', 'expression.inch-or-in', 'in m'],
    ['1/2 m', 'expression.fraction-of-unit', '1/2 m'],
    ['2 m ^ 2', 'expression.power-of-unit', '2 m ^'],
    ['2 m^2.5', 'expression.power-of-unit', '2 m^'],
    ['10 Hz', 'expression.no-hertz', 'Hz'],
    ['rotor_speed in Hz', 'expression.no-hertz', 'in Hz'],
    ['20 °C', 'expression.no-temperature-scale', '°C'],
    ['300 K in °C', 'expression.no-temperature-scale', 'in °C'],
    ['total_mass in mm', 'expression.cannot-show-in', 'total_mass in mm'],
    ['total_mass in furlong', 'quantity.unknown-unit', 'furlong'],
    ['(total_mass in g) * 2', 'expression.in-not-last', 'in'],
    ['2 total_mass', 'expression.not-a-unit', 'total_mass'],
    ['3 metre', 'expression.not-a-unit', 'metre'],
    ['2 and_then', 'expression.not-a-unit', 'and_then'],
    ['3 Kg', 'quantity.misspelt-unit', 'Kg'],
    ['total_mass in', 'expression.unfinished', 'in'],
    ['2 sin(1)', 'expression.not-a-unit', 'sin'],
    ['2 W/°C', 'quantity.temperature-in-product', 'W/°C'],
  ])('%s is refused as %s at “%s”', (text, code, place) => {
    expect(refusal(text)).toEqual([code, place]);
  });
});

describe('what does not fit is named with its place', () => {
  test.each([
    ['total_mass + 1 m', 'expression.dimensions-differ', 'total_mass + 1 m'],
    ['2 * (total_mass - cg_height)', 'expression.dimensions-differ', 'total_mass - cg_height'],
    ['min(1 m, 2 kg)', 'expression.dimensions-differ', 'min(1 m, 2 kg'],
    ['atan2(1 m, 2 kg)', 'expression.dimensions-differ', 'atan2(1 m, 2 kg'],
    ['1 + sin(total_mass)', 'expression.number-wanted', 'total_mass'],
    ['2^cg_height', 'expression.number-wanted', 'cg_height'],
    ['(4 m²)^0.3', 'expression.bad-exponent', '0.3'],
    ['cg_height^largest_lean', 'expression.bad-exponent', 'largest_lean'],
    ['cg_height^99', 'expression.bad-exponent', '99'],
    ['1/(total_mass - total_mass)', 'expression.division-by-zero', 'total_mass - total_mass'],
    ['0^-1', 'expression.division-by-zero', '0'],
    ['sqrt(0 m - cg_height)', 'expression.not-real', '0 m - cg_height'],
    ['(-2)^0.5', 'expression.not-real', '2)^0.5'],
    ['ln(0)', 'expression.not-real', '0'],
    ['log10(-1)', 'expression.not-real', '1'],
    ['asin(1.5)', 'expression.not-real', '1.5'],
    ['atan2(0, 0)', 'expression.not-real', 'atan2(0, 0'],
    ['exp(710)', 'expression.not-finite', 'exp(710'],
    ['1e308 * 10', 'expression.not-finite', '1e308 * 10'],
    ['1e400', 'quantity.too-large', '1e400'],
    ['asin(largest_lean / 0.3)', 'expression.no-slope', 'asin(largest_lean / 0.3'],
    ['sqrt(gimbal_centring)', 'expression.no-slope', 'sqrt(gimbal_centring'],
    ['ones(3)', 'expression.unknown-function', 'ones'],
    ['total_mass(3)', 'expression.unknown-function', 'total_mass'],
    ['sin', 'expression.function-alone', 'sin'],
    ['sin()', 'expression.operand-count', 'sin'],
    ['sin(1, 2)', 'expression.operand-count', 'sin(1, 2'],
    ['total_mass cg_height', 'expression.missing-sign', 'total_mass cg_height'],
    ['(1)(2)', 'expression.missing-sign', '1)(2'],
    ['1 < 2', 'expression.condition-here', '1 < 2'],
    ['not 1', 'expression.not-needs-brackets', '1'],
    ['true', 'expression.condition-here', 'true'],
  ])('%s: %s at “%s”', (text, code, place) => {
    expect(refusal(text)).toEqual([code, place]);
  });

  test('the place is given to the reader', () => {
    const expression = parseExpression('1/0');
    const result = expression.ok ? evaluateExpression(expression.value, scope, 'line 3') : expression;
    expect(result.ok ? undefined : result.problem.place).toBe('line 3');
    const unread = parseExpression('1 +', 'line 4');
    expect(unread.ok ? undefined : unread.problem.place).toBe('line 4');
  });
});

describe('the uncertainty of a formula', () => {
  /** Each with the same as plain code, to be carried by differences. */
  const cases: readonly (readonly [string, (x: number, y: number) => number])[] = [
    ['x + y', (x, y) => x + y],
    ['x - y', (x, y) => x - y],
    ['-x*y', (x, y) => -x * y],
    ['x/y', (x, y) => x / y],
    ['x*x/(x + y)', (x, y) => (x * x) / (x + y)],
    ['x^3', (x) => x ** 3],
    ['x^y', (x, y) => x ** y],
    ['2^x', (x) => 2 ** x],
    ['sqrt(x)', (x) => Math.sqrt(x)],
    ['abs(y - 3*x)', (x, y) => Math.abs(y - 3 * x)],
    ['sin(x)*cos(y)', (x, y) => Math.sin(x) * Math.cos(y)],
    ['tan(x/2)', (x) => Math.tan(x / 2)],
    ['asin(x/3)', (x) => Math.asin(x / 3)],
    ['acos(x/3)', (x) => Math.acos(x / 3)],
    ['atan(x*y)', (x, y) => Math.atan(x * y)],
    ['atan2(y, x)', (x, y) => Math.atan2(y, x)],
    ['exp(x - y)', (x, y) => Math.exp(x - y)],
    ['ln(x) + log10(y)', (x, y) => Math.log(x) + Math.log10(y)],
    ['max(x, y)', (x, y) => Math.max(x, y)],
    ['min(x, y)', (x, y) => Math.min(x, y)],
  ];

  test.each(cases)('%s agrees with differences of the same in plain code', (text, compute) => {
    const value = fc.double({ min: 0.2, max: 2.5, noNaN: true });
    const spread = fc.double({ min: 1e-5, max: 1e-3, noNaN: true });
    fc.assert(
      fc.property(value, value, spread, spread, (x, y, ux, uy) => {
        fc.pre(Math.abs(x - y) > 0.01 && Math.abs(y - 3 * x) > 0.01);
        const [a, b] = [independent('x', x, ux), independent('y', y, uy)];
        const number = dimension('1');
        const known: Scope = new Map([
          ['x', { value: a, dimension: number }],
          ['y', { value: b, dimension: number }],
        ]);
        const ours = evaluated(text, known);
        const { result } = propagate(({ x, y }) => ({ result: compute(Number(x), Number(y)) }), {
          x: a,
          y: b,
        });
        if (!ours.ok || !result) throw new Error(text);
        expect(ours.value.value.value).toBeCloseTo(result.value, 12);
        for (const name of ['x', 'y']) {
          const difference = result.contributions.get(name) ?? 0;
          const slope = ours.value.value.contributions.get(name) ?? 0;
          expect(Math.abs(slope - difference)).toBeLessThanOrEqual(1e-6 * Math.abs(difference) + 1e-11);
        }
      }),
    );
  });

  test('of a power at nought is that of the base or nothing', () => {
    const known: Scope = new Map([
      entry('x', 0, 0.1, '1'),
      entry('p', 2, 0.1, '1'),
      entry('n', -2, 0.1, '1'),
    ]);
    const u = (text: string) => {
      const result = evaluated(text, known);
      return result.ok ? standardUncertainty(result.value.value) : result.problem.code;
    };
    expect(u('x^1')).toBeCloseTo(0.1, 12);
    expect(u('x^2')).toBe(0);
    expect(u('x^0')).toBe(0);
    expect(u('x^0.5')).toBe('expression.no-slope');
    expect(u('n^3')).toBeCloseTo(1.2, 12);
    expect(u('n^p')).toBe('expression.not-real');
  });
});

test('a formula that was read before is read again with the same result and the new place', () => {
  const first = parseExpression('1/(2 +', 'line 1');
  const second = parseExpression('1/(2 +', 'line 2');
  expect([first, second].map((result) => (result.ok ? '' : result.problem.place))).toEqual([
    'line 1',
    'line 2',
  ]);
});
