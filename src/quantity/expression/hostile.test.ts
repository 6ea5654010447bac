import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluateCalcBlock, evaluateCondition, evaluateExpression, parseExpression } from './index.ts';

const nothing = new Map();

function refusal(text: string) {
  const parsed = parseExpression(text);
  const result = parsed.ok ? evaluateExpression(parsed.value, nothing) : parsed;
  return result.ok ? undefined : result.problem;
}

describe('a hostile formula is refused with its place', () => {
  test.each([
    ['ones(3000,3000)', 'expression.unknown-function', [0, 4]],
    ['1:1e7', 'expression.no-lists', [1, 2]],
    ['f(x)=f(x+1)', 'expression.no-assignment', [4, 5]],
    ['sqrt=3', 'expression.no-assignment', [4, 5]],
    ['a.__proto__', 'expression.no-members', [1, 2]],
    ['"a".constructor', 'expression.no-text', [0, 1]],
    ["'a'", 'expression.no-text', [0, 1]],
    ['`a`', 'expression.no-text', [0, 1]],
    ['[1,2;3,4]', 'expression.no-lists', [0, 1]],
    ['{a: 1}', 'expression.no-lists', [0, 1]],
    ['a;b', 'expression.no-lists', [1, 2]],
    ['config({number: "BigNumber"})', 'expression.no-lists', [7, 8]],
    ['config(1)', 'expression.unknown-function', [0, 6]],
    ['import', 'expression.unknown-symbol', [0, 6]],
    ['import(1)', 'expression.unknown-function', [0, 6]],
    ['createUnit(1)', 'expression.unknown-function', [0, 10]],
    ['constructor(1)', 'expression.unknown-function', [0, 11]],
    ['__proto__', 'expression.unknown-symbol', [0, 9]],
    ['x0', 'expression.unknown-symbol', [0, 2]],
    ['a ? b : c', 'expression.unexpected-character', [2, 3]],
    ['a\nb', 'expression.missing-sign', [0, 3]],
    ['5!', 'expression.unexpected-character', [1, 2]],
    ["x'", 'expression.no-text', [1, 2]],
    ['a % b', 'expression.unexpected-character', [2, 3]],
    ['a to b', 'expression.missing-sign', [0, 4]],
    ['a mod b', 'expression.missing-sign', [0, 5]],
    ['# only a comment', 'expression.unexpected-character', [0, 1]],
    ['', 'expression.empty', [0, 0]],
    ['  ', 'expression.empty', [0, 2]],
    ['in mm', 'expression.empty', [0, 5]],
    ['1 +', 'expression.unfinished', [3, 3]],
    ['1 + * 2', 'expression.unexpected', [4, 5]],
    ['1 ** 2', 'expression.unexpected', [3, 4]],
    ['()', 'expression.unexpected', [1, 2]],
    ['((1)', 'expression.bracket-open', [0, 1]],
    ['1)', 'expression.bracket-close', [1, 2]],
    ['1,5', 'expression.comma', [1, 2]],
    ['1.2.3', 'expression.missing-sign', [0, 5]],
    ['0x10', 'expression.not-a-unit', [1, 4]],
    ['😀 + 1', 'expression.unexpected-character', [0, 2]],
    ['٣', 'expression.unexpected-character', [0, 1]],
    ['('.repeat(5000), 'expression.too-long', [500, 5000]],
    ['('.repeat(60), 'expression.too-deep', [50, 51]],
    [`${'sin('.repeat(51)}1${')'.repeat(51)}`, 'expression.too-deep', [203, 204]],
    ['-'.repeat(400), 'expression.unfinished', [400, 400]],
    [`${'-'.repeat(400)}1`, 'expression.too-deep', [0, 401]],
    [`${'2^'.repeat(60)}2`, 'expression.too-deep', [0, 121]],
    [`${'1+'.repeat(120)}1`, 'expression.too-many', [0, 241]],
    ['1'.repeat(10_000), 'expression.too-long', [500, 10_000]],
    ['1'.repeat(500), 'quantity.too-large', [0, 500]],
    ['9^9^9^9', 'expression.not-finite', undefined],
    ['1 ((((((((km^9)^9)^9)^9)^9)^9)^9)^9)', 'expression.missing-sign', undefined],
  ] as const)('%s', (text, code, range) => {
    expect(refusal(text)).toMatchObject({ code, ...(range ? { range } : {}) });
  });

  test('in a condition and in a calculation as well', () => {
    expect(evaluateCondition('ones(3000,3000) > 1', nothing)).toMatchObject({ ok: false });
    const [line] = evaluateCalcBlock('f(x) = x', nothing);
    expect(line?.outcome).toMatchObject({
      ok: false,
      problem: { code: 'expression.no-assignment', range: [5, 6] },
    });
  });

  test('whatever the text is, the answer is a value or a problem that points into it', () => {
    const piece = fc.constantFrom(
      ...'0123456789.eE+-*/^(),<>=!·×²⁻ xyinandortfm°%µΩ"\'[]{}:;#_\\$√\u202f',
      'sin(',
      ' in ',
      'kg',
      'g_n',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const text = pieces.join('');
        const problem = refusal(text);
        if (!problem) return;
        const [from, to] = problem.range ?? [-1, -1];
        expect(0 <= from && from <= to && to <= text.length, text).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test('any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 600 }), (text) => {
        parseExpression(text);
        evaluateCondition(text, nothing);
        evaluateCalcBlock(text, nothing);
      }),
    );
  });
});
