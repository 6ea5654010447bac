import { describe, expect, it } from 'vitest';
import { ReportFrame } from './report-source.ts';
import { basisText, boundText, fieldText, prose, slug, statedUncertaintyText } from './wording.ts';

const known = { typed: '73 g', si: 0.073, u: 0.0002, basis: 'measured' as const };

describe('an input in words', () => {
  it('keeps blank, not measured and nought apart', () => {
    const words = [
      fieldText(undefined),
      fieldText({ notMeasured: true }),
      fieldText({ ...known, typed: '0 g', si: 0 }),
    ];
    expect(words).toEqual(['blank', 'not measured', '0 g']);
  });

  it('says how it was got', () => {
    expect(basisText({ ...known, instrument: 'kitchen scale', on: '2026-03-03' })).toBe(
      'measured with kitchen scale on 2026-03-03',
    );
    expect(basisText(undefined)).toBe('');
  });

  it('states the uncertainty as it was stated, and admits where there is none', () => {
    expect(statedUncertaintyText(known, 'g').replace('\u202f', ' ')).toBe('0.20 g (standard)');
    expect(statedUncertaintyText({ ...known, uncertainty: { typed: '±0.5 g', kind: 'bound' } }, 'g')).toBe(
      '±0.5 g (bound)',
    );
    expect(statedUncertaintyText({ ...known, u: 0 }, 'g')).toBe('taken as exact');
  });
});

describe('the bound of a margin', () => {
  it.each([
    [0.314, '0.31'],
    [-0.024, '−0.02'],
    [-0.001, '0.00'],
    [42.31, '42.3'],
    [412.3, '412'],
  ])('%f reads %s', (value, expected) => {
    expect(boundText(value)).toBe(expected);
  });
});

describe('prose', () => {
  it('begins a paragraph after a blank line', () => {
    expect(prose('one\ntwo\n\n\nthree\r\n\r\nfour')).toHaveLength(3);
    expect(prose('  \n ')).toEqual([]);
  });
});

describe('a name in an identification', () => {
  it.each([
    ['Sandpiper tool cart', 'SANDPIPER-TOOL-CAR'],
    ['Möwe №7', 'MO-WE-7'],
    ['鷗', 'P1'],
  ])('%s', (name, expected) => {
    expect(slug(name, 'p1')).toBe(expected);
  });
});

describe('the frame of a report', () => {
  it('counts figures and tables apart', () => {
    const frame = new ReportFrame('2026-04-02T10:30:00Z');
    expect([frame.figure('a'), frame.table('b'), frame.figure('c')]).toEqual([
      'Figure 1. a',
      'Table 1. b',
      'Figure 2. c',
    ]);
  });

  it('tells every time in the zone of the issue, over midnight too', () => {
    const frame = new ReportFrame('2026-04-02T10:30:00-05:00');
    expect(frame.moment('2026-03-05T02:15:00Z')).toBe('2026-03-04 21:15');
    expect(frame.moment('2026-03-05')).toBe('2026-03-05');
    expect(frame.moment('some day')).toBe('some day');
    expect(frame.zone).toBe('−05:00');
  });
});
