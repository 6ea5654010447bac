/** Tables by RFC 4180, and against an independent reader. */
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { requireTools } from '../../../tests/tools.ts';
import { csvText, quoted, readCsv } from './csv.ts';

/** id, value of a field, as it is written; RFC 4180 section 2. */
const PUBLISHED: readonly (readonly [string, string, string])[] = [
  ['CSV-1', 'a"b', '"a""b"'],
  ['CSV-2', 'a,b', '"a,b"'],
  ['CSV-3', 'line 1\r\nline 2', '"line 1\r\nline 2"'],
  ['CSV-4', ' x ', ' x '],
  ['RFC 4180, 2.5', 'aaa', 'aaa'],
  ['RFC 4180, 2.6', 'b \nbb', '"b \nbb"'],
  ['RFC 4180, 2.7', 'b"bb', '"b""bb"'],
];

describe('a field', () => {
  it.each(PUBLISHED)('%s: %j is written %j', (_id, value, written) => {
    expect(quoted(value)).toBe(written);
    expect(readCsv(`${written}\r\n`)).toEqual([[value]]);
  });

  it.each(['=1+1', '+1', '-4 mm', '@SUM(A1)', '\tx', '\rx', ' =1', '|calc', '%x', '＝1'])(
    'that begins a formula gets an apostrophe (CSV-5): %j',
    (value) => {
      const [, [field = ''] = []] = readCsv(csvText(['head'], [[value]])) ?? [];
      expect(field).toBe(`'${value}`);
    },
  );

  it('that is a number stays one, with its sign and all its digits', () => {
    expect(csvText(['x_m'], [[-0.004], [1e-7], [undefined], [Number.NaN], [Number.POSITIVE_INFINITY]])).toBe(
      'x_m\r\n-0.004\r\n1e-7\r\n\r\n\r\n\r\n',
    );
  });
});

describe('a table', () => {
  const cell = fc
    .string({ unit: 'binary', maxLength: 20 })
    .filter((value) => !/^\s*[=+\-@\t\r|%＝＋－＠]/.test(value));
  const table = fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 6 });

  it('is read back as it was written', () => {
    fc.assert(
      fc.property(table, (rows) => {
        expect(readCsv(csvText(['a', 'b', 'c'], rows))).toEqual([['a', 'b', 'c'], ...rows]);
      }),
    );
  });

  it('is read by an independent reader as it was written', () => {
    requireTools('python3');
    const sample = fc.sample(table, { numRuns: 40, seed: 1 });
    const rows = sample.flat().map((row) => row.map((value) => value.replace(/[\0\p{Cs}]/gu, '?')));
    const script =
      'import csv, io, json, sys; t = sys.stdin.buffer.read().decode("utf-8"); print(json.dumps(list(csv.reader(io.StringIO(t, newline=""), strict=True))))';
    const { stdout, status } = spawnSync('python3', ['-c', script], {
      input: csvText(['a', 'b', 'c'], rows),
      encoding: 'utf8',
    });
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toEqual([['a', 'b', 'c'], ...rows]);
  });

  it.each(['"open', '"a"b', 'x,"a"b\r\n'])('with quotes that do not match is not read: %j', (text) => {
    expect(readCsv(text)).toBeUndefined();
  });

  it.each([
    ['aaa,bbb,ccc\r\nzzz,yyy,xxx', 'without an end of the last record (2.2)'],
    ['aaa,bbb,ccc\nzzz,yyy,xxx\n', 'with bare line feeds'],
  ])('%j is read, %s', (text) => {
    expect(readCsv(text)).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });
});
