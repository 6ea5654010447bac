import { describe, expect, it } from 'vitest';
import { findCalcBlocks, rangeInText } from './calc-blocks.ts';

const codes = (text: string): string[] => findCalcBlocks(text).map((block) => block.code);

describe('finding the calculations of an entry', () => {
  it('a fenced block whose first word is calc is a calculation', () => {
    expect(codes('Weighed it.\n\n```calc\na = 2 kg\nb = 3 * a\n```\n\nDone.')).toEqual([
      'a = 2 kg\nb = 3 * a',
    ]);
  });

  it('tildes, longer fences and more words behind calc do as well', () => {
    expect(codes('~~~calc\na = 1\n~~~\n\n```` calc of the day\nb = 2\n````')).toEqual(['a = 1', 'b = 2']);
  });

  it('another word, an inline span or an indented block is not a calculation', () => {
    expect(
      codes('```calculation\na\n```\n\n```\ncalc\n```\n\n`calc`\n\n    ```calc\n    a\n    ```'),
    ).toEqual([]);
  });

  it('a block that is not closed reaches to the end of the text', () => {
    expect(codes('```calc\na = 1\nb = 2')).toEqual(['a = 1\nb = 2']);
  });

  it('an empty block is found and has no code', () => {
    expect(codes('```calc\n```')).toEqual(['']);
  });

  it('a block in a list or a quotation loses the marks around it and keeps its empty lines', () => {
    expect(codes('1. first\n\n   ```calc\n   a = 1\n\n   b = 2\n   ```')).toEqual(['a = 1\n\nb = 2']);
    expect(codes('> ```calc\n> a = 1\n> b = 2\n> ```')).toEqual(['a = 1\nb = 2']);
  });

  it('HTML is plain text, so that a block behind a tag is found', () => {
    expect(codes('<div>\n```calc\na = 1\n```')).toEqual(['a = 1']);
  });

  it('blocks far down a long text are found', () => {
    const text = 'A line of prose.\n\n'.repeat(10_000);
    expect(codes(`${text}\`\`\`calc\nlast = 1\n\`\`\``)).toEqual(['last = 1']);
  });
});

describe('places in a calculation', () => {
  it('a range of the code is the same characters in the text', () => {
    const text = 'Before\n\n```calc\na = 1\nb = wrong + 2\n```';
    const [block] = findCalcBlocks(text);
    if (!block) throw new Error('no block');
    const at = block.code.indexOf('wrong');
    expect(text.slice(...rangeInText(block, at, at + 5))).toBe('wrong');
  });

  it('the same holds behind quote marks', () => {
    const text = '> ```calc\n> a = 1\n> b = wrong + 2\n> ```';
    const [block] = findCalcBlocks(text);
    if (!block) throw new Error('no block');
    const at = block.code.indexOf('wrong');
    expect(text.slice(...rangeInText(block, at, at + 5))).toBe('wrong');
  });

  it('a range past the end stays inside the block', () => {
    const text = '```calc\na\n```\nafter';
    const [block] = findCalcBlocks(text);
    if (!block) throw new Error('no block');
    const [from, to] = rangeInText(block, 0, 99);
    expect(text.slice(from, to)).toBe('a');
  });
});
