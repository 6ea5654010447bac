import { expect, it } from 'vitest';
import { verdictTally } from './verdict-tally.ts';

const of = (...verdicts: readonly ('holds' | 'in doubt' | 'fails' | 'unknown')[]) =>
  verdictTally(verdicts.map((verdict) => ({ verdict })));

it('the tally begins with what is worst and leaves out what there is none of', () => {
  expect(of('holds', 'unknown', 'fails', 'holds', 'in doubt')).toBe('1 fails, 1 in doubt, 1 unknown, 2 hold');
  expect(of('holds')).toBe('1 holds');
  expect(of('fails', 'fails')).toBe('2 fail');
  expect(of()).toBe('');
});
