/**
 * Random draws against the examples of JCGM 106:2012 on conformity. The printed results were not checked against the
 * document here (from memory); the probabilities beside them are the exact ones of normal distributions.
 */
import { describe, expect, it } from 'vitest';
import { monteCarlo } from '../../src/margins/index.ts';
import { countFrom, type DrawnSpread } from '../../src/quantity/index.ts';
import { measured, prototype, revision, withValue } from '../specimen/vehicle.ts';
import { drawn } from './drawn.ts';
import { expectPrinted } from './printed.ts';

describe('the probability that a margin holds (JCGM 106)', () => {
  /** Drawn shares scatter by √(p (1 − p)/n); four of these leave out one run in 16 000. */
  const scatter = (p: number, draws: number): number => 4 * Math.sqrt((p * (1 - p)) / draws);

  it.each([
    {
      id: 'CF-1, breakdown voltage of a Zener diode',
      y: 5.47,
      u: 0.05,
      limit: 5.4,
      printed: '0.92',
      exact: 0.919243,
    },
    {
      id: 'CF-2, burst pressure of a container',
      y: 509.7,
      u: 8.6,
      limit: 490,
      printed: '0.99',
      exact: 0.98901,
    },
  ])('$id: $printed', ({ y, u, limit, printed, exact }) => {
    const pack = { ...revision.pack, largestCurrent: measured(y, u), peakCurrent: measured(limit) };
    const drawnMargins = monteCarlo(prototype, withValue(revision, 'pack', pack), {
      seed: 106,
      digits: 1,
      names: ['pack-current'],
    });
    const result = drawnMargins.ok ? drawnMargins.value.results.get('pack-current') : undefined;
    if (!result?.ok || result.value.kind !== 'margin') throw new Error('no draws');
    const { probability, draws } = result.value;
    expect(Math.abs(probability - exact)).toBeLessThan(scatter(exact, draws));
    expectPrinted(exact, printed);
  });

  it('CF-3, viscosity of an oil between two limits: 0.66', () => {
    const { values, draws } = drawn((random) => 13.6 + 1.8 * random.normal(), { digits: 1 });
    const between = (countFrom(values, 12.5) - countFrom(values, 16.3)) / draws;
    expect(Math.abs(between - 0.66263)).toBeLessThan(scatter(0.66, draws));
    expectPrinted(0.66263, '0.66');
  });

  it.each([
    { id: 'CF-5, no guard band', guard: 0, consumer: 0.018942, producer: 0.037208 },
    { id: 'CF-6, guarded acceptance by U', guard: 0.08, consumer: 0.000469, producer: 0.24767 },
    { id: 'CF-7, guarded acceptance by U/2', guard: 0.04, consumer: 0.004334, producer: 0.114657 },
    { id: 'CF-8, guarded rejection by U', guard: -0.08, consumer: 0.069405, producer: 0.000681 },
  ])(
    '$id: risks of the consumer $consumer and of the producer $producer',
    ({ guard, consumer, producer }) => {
      // a process of N(0, 0.12²), measured with u = 0.04, against ±0.2; the item's value where it is accepted, or rejected
      const items = (accepted: boolean): DrawnSpread =>
        drawn(
          (random) => {
            const value = 0.12 * random.normal();
            const isAccepted = Math.abs(value + 0.04 * random.normal()) <= 0.2 - guard;
            return isAccepted === accepted ? Math.abs(value) : Number.NaN;
          },
          { digits: 1, part: 1, fewestBatches: 40 },
        );
      const taken = items(true);
      expect(Math.abs(countFrom(taken.values, 0.2) / taken.draws - consumer)).toBeLessThan(
        scatter(consumer, taken.draws),
      );
      const refused = items(false);
      const good = refused.values.length - countFrom(refused.values, 0.2);
      expect(Math.abs(good / refused.draws - producer)).toBeLessThan(scatter(producer, refused.draws));
    },
  );
});
