import { describe, expect, it } from 'vitest';
import type { KnownQuantity } from '../../notebook/index.ts';
import { type Draft, draftOf, readDraft, saysUncertainty } from './quantity-draft.ts';

const blank: Draft = { text: '', uncertainty: '', kind: 'bound', basis: 'measured' };
const mass = { label: 'mass', display: 'g' };

describe('a draft', () => {
  it('that is blank, nought, and “not measured” are three different things', () => {
    expect(readDraft(blank, mass)).toEqual({ ok: true, value: undefined });
    expect(readDraft({ ...blank, text: 'Not measured' }, mass)).toEqual({
      ok: true,
      value: { notMeasured: true },
    });
    expect(readDraft({ ...blank, text: '0 g' }, mass)).toMatchObject({ ok: true, value: { si: 0 } });
  });

  it('with a bound beside it has the standard uncertainty of a rectangle, a/√3 (JCGM 100, 4.3.7)', () => {
    const read = readDraft({ ...blank, text: '73 g', uncertainty: '± 3 g' }, mass);
    expect(read).toMatchObject({ ok: true, value: { typed: '73 g', uncertainty: { typed: '3 g' } } });
    expect(read.ok && read.value && 'u' in read.value ? read.value.u : Number.NaN).toBeCloseTo(
      0.003 / Math.sqrt(3),
      12,
    );
  });

  it('that states its uncertainty itself takes no second one', () => {
    const alone = readDraft({ ...blank, text: '73 g ± 3 g' }, mass);
    expect(readDraft({ ...blank, text: '73 g ± 3 g', uncertainty: '50 g' }, mass)).toEqual(alone);
  });

  it('that cannot be read says so, and so does its uncertainty', () => {
    expect(readDraft({ ...blank, text: '73 gx' }, mass)).toMatchObject({ ok: false });
    expect(readDraft({ ...blank, text: '73 g', uncertainty: 'a bit' }, mass)).toMatchObject({ ok: false });
  });

  it('outside its range is refused with the problem of the range', () => {
    const problem = { code: 'record.invalid', place: 'mass', figures: {} } as const;
    expect(readDraft({ ...blank, text: '73 g' }, { ...mass, check: () => problem })).toEqual({
      ok: false,
      problem,
    });
  });

  it('keeps instrument and day while its text is the same, and not for another text', () => {
    const before: KnownQuantity = {
      typed: '73 g',
      si: 0.073,
      u: 0,
      basis: 'measured',
      instrument: 'kitchen scale',
      on: '2026-03-01',
    };
    const same = readDraft({ ...draftOf(before, undefined), basis: 'estimated' }, { ...mass, before });
    expect(same).toMatchObject({ value: { basis: 'estimated', instrument: 'kitchen scale' } });
    const other = readDraft({ ...draftOf(before, undefined), text: '74 g' }, { ...mass, before });
    expect(other.ok && other.value).not.toHaveProperty('instrument');
  });
});

it.each([
  ['73 g ± 1 g', true],
  ['73.2(4) g', true],
  ['±45°', false],
  [' ± 60 mm', false],
  ['±60 mm ± 1 mm', true],
  ['73 g', false],
])('“%s” states its own uncertainty: %s', (text, says) => {
  expect(saysUncertainty(text)).toBe(says);
});
