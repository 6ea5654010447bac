import { describe, expect, it } from 'vitest';
import { probabilities, riskMatrix, riskOf, severities } from './risk.ts';

describe('the risk of a failure', () => {
  it('is Medium for a marginal failure that is improbable, whatever one transcription prints', () => {
    expect(riskOf('III', 'E')).toBe('Medium');
  });

  it('never falls when the failure grows worse or likelier', () => {
    const rank = { Low: 0, Medium: 1, Serious: 2, High: 3 };
    const worse = ['IV', 'III', 'II', 'I'] as const;
    const likelier = ['E', 'D', 'C', 'B', 'A'] as const;
    for (const [i, severity] of worse.entries()) {
      for (const [j, probability] of likelier.entries()) {
        const here = rank[riskOf(severity, probability)];
        for (const other of worse.slice(i))
          expect(rank[riskOf(other, probability)]).toBeGreaterThanOrEqual(here);
        for (const other of likelier.slice(j))
          expect(rank[riskOf(severity, other)]).toBeGreaterThanOrEqual(here);
      }
    }
  });

  it('is given for every severity and probability that a failure report can carry', () => {
    expect(Object.keys(riskMatrix).sort()).toEqual(Object.keys(probabilities).sort());
    for (const row of Object.values(riskMatrix)) {
      expect(Object.keys(row).sort()).toEqual(Object.keys(severities).sort());
    }
  });

  it('numbers the severities one to four, as the standard does', () => {
    expect(Object.values(severities).map(({ category }) => category)).toEqual([1, 2, 3, 4]);
  });
});
