import { describe, expect, it } from 'vitest';
import { continuation } from './list-continuation.ts';

describe('Enter in a list', () => {
  it.each([
    ['- weighed the ballast', '- '],
    ['  * inner', '  * '],
    ['1. first', '2. '],
    ['  9) ninth', '  10) '],
    ['> quoted', '> '],
    ['- [x] done', '- [ ] '],
    ['- [ ] to do', '- [ ] '],
  ])('behind “%s” the next line begins with “%s”', (before, insert) => {
    expect(continuation(before)).toEqual({ kind: 'go on', insert });
  });

  it.each(['- ', '1. ', '> ', '- [ ] ', '   * '])('an empty item “%s” ends the list', (before) => {
    expect(continuation(before)).toEqual({ kind: 'end', length: before.length });
  });

  it.each(['plain text', '-5 °C outside', '2.5 kg', '# Title', ''])('“%s” is no list', (before) => {
    expect(continuation(before)).toBeUndefined();
  });
});
