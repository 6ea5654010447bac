import { describe, expect, it } from 'vitest';
import type { DrawnFigure, DrawnMargin } from './draw-subject.ts';
import {
  confirmedInWords,
  drawCount,
  holdsInWords,
  outsideInWords,
  spreadInWords,
  verdictInWords,
} from './draws-in-words.ts';

const plain = (text: string | undefined): string | undefined => text?.replaceAll('\u202F', ' ');
const drawn: DrawnFigure = {
  kind: 'figure',
  name: 'run_time',
  title: 'run time on one charge',
  unit: 's',
  display: 'min',
  firstOrder: { value: 1200, u: 60, interval: [1082.4, 1317.6] },
  mean: 1206,
  u: 63,
  symmetric: [1098, 1344],
  shortest: [1092, 1332],
  draws: 120_000,
  outside: 0,
  tolerance: 5,
  settled: true,
  confirmed: true,
  bins: { from: 0, width: 0, shares: [1] },
};

describe('draws in words', () => {
  it.each([
    [0.873421, 190_000, 'in 87.3 % of 190 000 draws'],
    [1, 190_000, 'in all of 190 000 draws'],
    [0, 1000, 'in none of 1 000 draws'],
    [0.99999, 190_000, 'in more than 99.9 % of 190 000 draws'],
    [0.00001, 190_000, 'in fewer than 0.1 % of 190 000 draws'],
    [0.951, 1000, 'in 95 % of 1 000 draws'],
    [0.998, 1000, 'in more than 99 % of 1 000 draws'],
    [0.9994, 100_000, 'in 99.9 % of 100 000 draws'],
  ])('%s of %s: %s', (probability, draws, expected) => {
    expect(plain(holdsInWords({ probability, draws }))).toBe(expected);
  });

  it('counts in groups of three', () => {
    expect([7, 1000, 1_234_567].map((count) => plain(drawCount(count)))).toEqual(['7', '1 000', '1 234 567']);
  });

  it('gives mean and interval in the unit that people read, to the digits of the uncertainty', () => {
    const { mean, interval } = spreadInWords(drawn);
    expect([plain(mean), plain(interval)]).toEqual(['20.1(11) min', '18.3 min to 22.4 min']);
  });

  it('says whether first order is confirmed, and what it has where it is not', () => {
    expect(confirmedInWords(drawn)).toBe('first order is confirmed');
    expect(plain(confirmedInWords({ ...drawn, confirmed: false }))).toBe(
      'first order is not confirmed: it has 18.0 min to 22.0 min',
    );
    expect(plain(confirmedInWords({ ...drawn, confirmed: undefined, draws: 1000 }))).toBe(
      '1 000 draws are too few to confirm first order: it has 18.0 min to 22.0 min',
    );
  });

  it.each([
    ['holds', 0.96, undefined],
    ['holds', 0.94, 'by the draws it would be in doubt'],
    ['in doubt', 0.94, undefined],
    ['in doubt', 0.96, 'by the draws it would hold'],
    ['fails', 0.2, undefined],
    ['unknown', 1, undefined],
  ] as const)('says of a margin that %s with %s of the draws: %s', (verdict, probability, expected) => {
    const { bins, ...rest } = drawn;
    const margin: DrawnMargin = {
      ...rest,
      kind: 'margin',
      probability,
      lowerBound: 0,
      figures: { unit: 's', display: 'min' },
      capability: bins,
      demand: bins,
    };
    expect(verdictInWords(verdict, margin)).toBe(expected);
  });

  it('tells draws without a value with the reason, and nothing where there are none', () => {
    const because = {
      code: 'calculation.out-of-domain',
      place: 'x',
      figures: { name: 'gimbal friction', value: '−0.001', requirement: 'it has to be more than 0' },
    } as const;
    expect(outsideInWords(drawn)).toBeUndefined();
    expect(outsideInWords({ ...drawn, outside: 1, because })).toMatch(
      /^1 draw has no value: gimbal friction is −0\.001/,
    );
    expect(plain(outsideInWords({ ...drawn, outside: 2500 }))).toBe('2 500 draws have no value');
  });
});
