import { describe, expect, it } from 'vitest';
import type { KnownQuantity, TestCard } from '../notebook/index.ts';
import { outcomeOf } from './outcome.ts';
import { known } from './sample.ts';
import { runOf, testItems } from './sample-run.ts';

const card: TestCard = {
  prototype: 'p1',
  revision: 'r1',
  number: 1,
  template: 'club',
  title: 'Club',
  purpose: '',
  setUp: '',
  prerequisites: '',
  steps: [],
  predictions: {
    largest_lean: { name: 'largest_lean', label: 'largest lean', unit: '°', value: 0.1, u: 0.003 },
  },
  abortLimits: {},
  readings: {
    time: { label: 'Time standing', unit: 's', order: 1 },
    lean: { label: 'Lean', unit: '°', name: 'largest_lean', order: 0 },
  },
  status: 'issued',
  createdAt: '2025-03-02T10:00:00Z',
};

function compared(reading: KnownQuantity | undefined, against = card) {
  const readings = reading ? { lean: reading } : {};
  return outcomeOf(against, { ...runOf(testItems), readings })[0];
}

describe('measured beside predicted', () => {
  it('agrees where the difference is within twice the combined uncertainty', () => {
    // u = √(0.003² + 0.004²) = 0.005
    expect(compared(known(0.1099, 0.004))).toMatchObject({ agrees: true, words: 'agrees within 2 u' });
    expect(compared(known(0.1099, 0.004))?.combined).toBeCloseTo(0.005, 12);
    expect(compared(known(0.1099, 0.004))?.z).toBeCloseTo(1.98, 10);
  });

  it('says by how much, and which way, where it does not', () => {
    expect(compared(known(0.117, 0.004))).toMatchObject({
      agrees: false,
      words: 'does not agree: 3.4 u more than predicted',
    });
    expect(compared(known(0.04, 0.004))?.words).toBe('does not agree: 12 u less than predicted');
  });

  it('does not judge where neither side states an uncertainty', () => {
    const exactly: TestCard = {
      ...card,
      predictions: { largest_lean: { name: 'largest_lean', label: '', unit: '°', value: 0.1, u: 0 } },
    };
    expect(compared(known(0.1), exactly)).not.toHaveProperty('agrees');
    expect(compared(known(0.1), exactly)?.words).toMatch(/cannot be judged/);
  });

  it('shows a reading that was not taken, and one that nothing was predicted for', () => {
    expect(compared(undefined)?.words).toBe('not read');
    const run = { ...runOf(testItems), readings: { time: known(12) } };
    expect(outcomeOf(card, run).map(({ words }) => words)).toEqual(['not read', 'nothing predicted']);
  });
});
