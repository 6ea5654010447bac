import { describe, expect, it } from 'vitest';
import { apply, create, emptyState, fingerprint } from '../notebook/index.ts';
import { builtinCards } from './builtin.ts';
import { type DraftCard, freeze, generateCard, issueCard, readableCard, type Subject } from './card.ts';
import { known, sample, sampleRevision } from './sample.ts';

const AT = '2025-03-02T10:00:00Z';
const issue = { by: 'A. Builder', at: AT };

function draft(id: string, subject: Subject): DraftCard {
  const template = builtinCards.find((candidate) => candidate.id === id);
  if (!template) throw new Error(`no card ${id}`);
  return generateCard(template, { ...subject, prototypeId: 'p1', revisionId: 'r1', number: 7, at: AT });
}

const faster = sample({
  rotor: { material: '', sections: {}, ...sampleRevision.rotor, largestSpeed: known(942.4777960769379) },
});

describe('a draft card', () => {
  it('predicts the figures of the revision with their uncertainty', () => {
    const { card, unpredicted } = draft('captive-spin-up', sample());
    expect(unpredicted).toEqual([]);
    expect(card.predictions.rotor_energy).toMatchObject({ unit: 'J', name: 'rotor_energy' });
    expect(card.predictions.rotor_energy?.value).toBeCloseTo(215.554, 3);
    expect(card.predictions.rotor_energy?.u).toBeGreaterThan(0);
  });

  it('keeps the names in its texts and follows the revision until it is issued', () => {
    const { card } = draft('captive-spin-up', sample());
    expect(card.abortLimits.speed?.text).toContain('{{rotor_speed}}');
    expect(readableCard(card, sample()).card.abortLimits.speed?.text).toContain('8000');
    expect(readableCard(card, faster).card.abortLimits.speed?.text).toContain('9000');
    expect(readableCard(card, faster).card.predictions.rotor_energy?.value).toBeCloseTo(272.81, 1);
  });

  it('leaves out what does not belong to the vehicle', () => {
    const { card } = draft('captive-spin-up', sample({ gimbal: undefined, pack: undefined }));
    expect(card.predictions).not.toHaveProperty('nutation_frequency');
    expect(card.abortLimits).not.toHaveProperty('cell');
    expect(card.readings).not.toHaveProperty('lowest-cell');
  });

  it('says what it could not predict and what to enter for it', () => {
    const unweighed = sample({
      rotor: { material: '', sections: {}, ...sampleRevision.rotor, density: undefined },
    });
    const { unpredicted, missing } = draft('captive-spin-up', unweighed);
    expect(unpredicted).toContain('rotor_energy');
    expect(missing).toEqual(['rotor_density']);
  });

  it('is a record that the notebook takes', () => {
    for (const { id } of builtinCards) {
      const { card } = draft(id, sample());
      expect(apply(emptyState, create('card', 'c1', card)).ok).toBe(true);
    }
  });
});

describe('an issued card', () => {
  it('has its figures in its texts, and no braces left', () => {
    for (const { id } of builtinCards) {
      const result = freeze(draft(id, sample()).card, { ...sample(), ...issue });
      if (!result.ok) throw new Error(result.problem.code);
      expect(JSON.stringify(result.value)).not.toMatch(/\{\{|not known/);
      expect(result.value).toMatchObject({ status: 'issued', issuedBy: 'A. Builder', issuedAt: AT });
      expect(result.value.fingerprint).toBe(fingerprint(sampleRevision));
    }
  });

  it('keeps its predictions when the revision changes', () => {
    const result = freeze(draft('captive-spin-up', sample()).card, { ...sample(), ...issue });
    if (!result.ok) throw new Error(result.problem.code);
    expect(readableCard(result.value, faster).card).toEqual(result.value);
  });

  it('is not issued twice', () => {
    const card = { ...draft('captive-spin-up', sample()).card, status: 'issued' as const };
    expect(freeze(card, { ...sample(), ...issue })).toMatchObject({ problem: { code: 'card.issued' } });
  });

  it('is refused while a text or a prediction needs a figure that is not known', () => {
    const { card } = draft('captive-spin-up', sample());
    const unweighed = sample({
      rotor: { material: '', sections: {}, ...sampleRevision.rotor, density: undefined },
    });
    expect(freeze(card, { ...unweighed, ...issue })).toMatchObject({
      problem: { code: 'card.figure-unknown', figures: { names: 'rotor_density' } },
    });
    const slipped = { ...card, purpose: 'Reach {{rotor_sped}}.' };
    expect(freeze(slipped, { ...sample(), ...issue })).toMatchObject({
      problem: { code: 'card.figure-unknown' },
    });
    const open = { ...card, purpose: 'Reach {{rotor_speed.' };
    expect(freeze(open, { ...sample(), ...issue })).toMatchObject({ problem: { code: 'template.unclosed' } });
  });

  it('predicts whatever one of its readings is held against, even where it was struck from the predictions', () => {
    const { card } = draft('captive-spin-up', sample());
    const result = freeze({ ...card, predictions: {} }, { ...sample(), ...issue });
    expect(result.ok && Object.keys(result.value.predictions)).toEqual(['rotor_speed']);
  });

  it('is issued by one change to its record', () => {
    const { card } = draft('bench-spin', sample());
    const change = issueCard('c1', card, { ...sample(), ...issue });
    if (!change.ok) throw new Error(change.problem.code);
    const made = apply(emptyState, create('card', 'c1', card));
    const issued = made.ok ? apply(made.value, change.value) : made;
    const frozen = freeze(card, { ...sample(), ...issue });
    expect(issued.ok && issued.value.card.c1).toEqual(frozen.ok && frozen.value);
  });
});
