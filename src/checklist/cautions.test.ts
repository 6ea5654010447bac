import { describe, expect, it } from 'vitest';
import { assess } from '../margins/index.ts';
import { cautionPlaces, cautions, cautionsFor } from './cautions.ts';
import { sample, samplePrototype, sampleRevision } from './sample.ts';

const ids = (place: (typeof cautionPlaces)[number], subject = sample()) =>
  cautionsFor(place, subject).map(({ id }) => id);

describe('cautions', () => {
  it('have ids of their own', () => {
    expect(new Set(cautions.map(({ id }) => id)).size).toBe(cautions.length);
  });

  it('come gravest first, as their signal words rank (ANSI Z535.4)', () => {
    const rank = cautions.map(({ signal }) => ['WARNING', 'CAUTION', 'NOTICE'].indexOf(signal));
    expect(rank).toEqual(rank.toSorted());
  });

  it.each(cautions)('$id promises nothing and is short enough to be read', ({ hazard, action }) => {
    expect(`${hazard} ${action}`).not.toMatch(
      /\b(is|are|stays?|makes?|be) (now )?safe\b|guarantee|ensure|certif/i,
    );
    expect(`${hazard} ${action}`.length).toBeLessThan(330);
  });

  it.each(cautionPlaces)('stand on the %s of a vehicle that has everything', (place) => {
    expect(ids(place)).not.toEqual([]);
  });

  it('say nothing of a rotor or a pack that the vehicle does not have', () => {
    const { rotor: _rotor, gimbal: _gimbal, pack: _pack, ballast: _ballast, ...rest } = sampleRevision;
    const revision = { ...rest, parts: {} };
    const bare = { prototype: samplePrototype, revision, assessment: assess(samplePrototype, revision) };
    expect(ids('checklist', bare)).toEqual(['local-rules-first']);
    expect(ids('rotor page', bare)).toEqual([]);
  });

  it('stand in the report wherever they stand in the window', () => {
    expect(cautions.filter(({ shown }) => !shown.includes('report'))).toEqual([]);
  });
});
