import { describe, expect, test } from 'vitest';
import { formatUncertain } from '../format.ts';
import { sentence } from '../problem.ts';
import { independent } from '../uncertain.ts';
import { dimension } from '../unit.ts';
import { evaluateCalcBlock, type Scope } from './index.ts';

const scope: Scope = new Map([
  ['total_mass', { value: independent('total_mass', 12, 0.1), dimension: dimension('kg') }],
]);

function lines(text: string) {
  return evaluateCalcBlock(text, scope).map(({ line, name, text, outcome }) => [
    line,
    name,
    outcome.ok
      ? formatUncertain(outcome.value.value, outcome.value.unitText).replaceAll('\u202f', ' ')
      : `${outcome.problem.code} at “${text.slice(...(outcome.problem.range ?? [0, 0]))}”`,
  ]);
}

describe('a calculation', () => {
  test('gives a result for each line that says something', () => {
    const text = [
      '# the arm',
      'arm = 120 mm',
      '',
      'reach = arm * sin(30°) in mm   # at the stop',
      'reach / arm',
    ];
    expect(lines(text.join('\n'))).toEqual([
      [2, 'arm', '0.12 m'],
      [4, 'reach', '60 mm'],
      [5, undefined, '0.5'],
    ]);
  });

  test('carries the uncertainty of figures from line to line', () => {
    expect(lines('weight = total_mass * g_n\nweight / g_n - total_mass\n2 * weight')).toEqual([
      [1, 'weight', '117.68(98) N'],
      [2, undefined, '0 kg'],
      [3, undefined, '235.4(20) N'],
    ]);
  });

  test('says where in the block each line begins, with either kind of line end', () => {
    const block = 'a = 1\r\n  b = a + c\r\n';
    const [first, second] = evaluateCalcBlock(block, scope);
    expect(first).toMatchObject({ line: 1, offset: 0, text: 'a = 1' });
    expect(second).toMatchObject({ line: 2, offset: 7, text: '  b = a + c', name: 'b' });
    if (second?.outcome.ok !== false) throw new Error('c is not known');
    expect(second.outcome.problem).toMatchObject({ place: 'line 2', range: [10, 11] });
    expect(block.slice(second.offset + 10, second.offset + 11)).toBe('c');
  });

  test('lets a name be given once, above its use, and never that of a figure or of the language', () => {
    const text = [
      'a = 1',
      'a = 2',
      'b = c',
      'c = 3',
      'total_mass = 5 kg',
      'sin = 1',
      'pi = 3',
      'in = 3',
      'a',
    ];
    expect(lines(text.join('\n'))).toEqual([
      [1, 'a', '1'],
      [2, 'a', 'calc.given-twice at “a”'],
      [3, 'b', 'calc.given-later at “c”'],
      [4, 'c', '3'],
      [5, 'total_mass', 'calc.name-of-figure at “total_mass”'],
      [6, 'sin', 'calc.reserved-name at “sin”'],
      [7, 'pi', 'calc.reserved-name at “pi”'],
      [8, 'in', 'calc.reserved-name at “in”'],
      [9, undefined, '1'],
    ]);
  });

  test('tells a line that hangs on a faulty one so', () => {
    expect(lines('a = 1 kg + 1 m\nb = 2*a\na = 3')).toEqual([
      [1, 'a', 'expression.dimensions-differ at “1 kg + 1 m”'],
      [2, 'b', 'calc.hangs-on-problem at “a”'],
      [3, 'a', 'calc.given-twice at “a”'],
    ]);
    expect(lines('a = a + 1')).toEqual([[1, 'a', 'calc.given-later at “a”']]);
  });

  test('may call an offset e', () => {
    expect(lines('e = 5 mm\n2*e in mm')).toEqual([
      [1, 'e', '0.005 m'],
      [2, undefined, '10 mm'],
    ]);
  });

  test('has one equals sign a line, before the formula', () => {
    expect(lines('x = y = 3\n3 = x\nx == 3\nx =')).toEqual([
      [1, 'x', 'expression.no-assignment at “=”'],
      [2, undefined, 'expression.no-assignment at “=”'],
      [3, undefined, 'expression.condition-here at “x == 3”'],
      [4, 'x', 'calc.given-twice at “x”'],
    ]);
    expect(lines('x =')).toEqual([[1, 'x', 'expression.empty at “”']]);
  });

  test('of more than 200 lines is worked out as far as line 200', () => {
    const results = evaluateCalcBlock('1\n'.repeat(10_000), scope);
    expect(results).toHaveLength(201);
    const outcome = results.at(-1)?.outcome;
    expect(outcome?.ok === false && sentence(outcome.problem)).toBe(
      'line 201: a calculation has at most 200 lines. Begin a second one below it; it may use the names of this one.',
    );
  });
});
