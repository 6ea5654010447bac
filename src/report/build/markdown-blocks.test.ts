import { describe, expect, it } from 'vitest';
import { dimension, exact, type Scope } from '../../quantity/index.ts';
import { markdownBlocks } from './markdown-blocks.ts';

const scope: Scope = new Map([['ballast_mass', { value: exact(0.56), dimension: dimension('kg') }]]);

describe('the text of a log entry in a report', () => {
  it('keeps emphasis, code and links', () => {
    expect(markdownBlocks('A **bold** and *slanted* `x = 1` [note](https://example.org).', scope)).toEqual([
      {
        type: 'paragraph',
        content: [
          'A ',
          { strong: 'bold' },
          ' and ',
          { emphasis: 'slanted' },
          ' ',
          { code: 'x = 1' },
          ' ',
          'note (https://example.org)',
          '.',
        ],
      },
    ]);
  });

  it('works out its calculations with the figures of the revision', () => {
    const [table] = markdownBlocks(
      '```calc\n# moment\nT = ballast_mass * g_n * 45 mm\nq = nothing\n```',
      scope,
    );
    expect(table).toMatchObject({ type: 'table' });
    const rows = table?.type === 'table' ? table.rows : [];
    expect(rows[0]?.[0]).toEqual([{ emphasis: 'moment' }]);
    expect(rows[1]?.[0]).toEqual([{ code: 'T = ballast_mass * g_n * 45 mm' }]);
    // 0.56 kg × 9.80665 m/s² × 0.045 m = 0.24713 N·m
    expect(String(rows[1]?.[1])).toMatch(/^0\.2471/);
    expect(String(rows[2]?.[1])).toMatch(/nothing/);
  });

  it('leaves other code as it is, and tags of HTML as text', () => {
    expect(markdownBlocks('```c\nint gain = 12;\n```', scope)).toEqual([
      { type: 'paragraph', content: [{ code: 'int gain = 12;' }] },
    ]);
    expect(markdownBlocks('<b>not bold</b>', scope)).toEqual([
      { type: 'paragraph', content: ['<b>not bold</b>'] },
    ]);
  });

  it('sets lists and tables', () => {
    expect(markdownBlocks('1. one\n2. two', scope)).toEqual([
      { type: 'list', ordered: true, items: [['one'], ['two']] },
    ]);
    expect(markdownBlocks('- [x] closed\n- [ ] left', scope)).toMatchObject([
      {
        items: [
          [{ emphasis: 'done: ' }, 'closed'],
          [{ emphasis: 'open: ' }, 'left'],
        ],
      },
    ]);
    expect(markdownBlocks('| a | b |\n|---|--:|\n| 1 | 2 |', scope)).toMatchObject([
      {
        type: 'table',
        columns: [
          { title: 'a', align: 'left' },
          { title: 'b', align: 'right' },
        ],
        rows: [[['1'], ['2']]],
      },
    ]);
  });
});
