/** The sum that turns a capability and a demand into a margin; registered so that the handbook has it too. */
import { calculation, DomainError } from '../mechanics/index.ts';

/**
 * Margin of safety.
 *
 *   MS = C / D − 1
 *
 * @param capability  C, what the design can do; SI, in the unit of the demand
 * @param demand      D, what is asked of it, more than 0
 * @returns MS, a pure number; negative where the demand is not met
 * @throws DomainError  for a demand that is not more than 0: nothing is asked, so nothing can be met
 * Source: common practice in stress analysis.
 */
export function marginOfSafety({
  capability,
  demand,
}: {
  readonly capability: number;
  readonly demand: number;
}): number {
  if (!(demand > 0)) throw new DomainError('demand', demand, 'it has to be more than 0');
  return capability / demand - 1;
}

export const marginOfSafetyCalculation = calculation({
  id: 'margin.of-safety',
  title: 'Margin of safety',
  equation: String.raw`MS = \frac{C}{D} - 1`,
  inputs: {
    capability: { symbol: 'C', unit: '1', meaning: 'capability, in the unit of the demand' },
    demand: { symbol: 'D', unit: '1', meaning: 'demand' },
  },
  outputs: { marginOfSafety: { symbol: 'MS', unit: '1', meaning: 'margin of safety' } },
  validity:
    'Demand more than 0. The verdict takes the one-sided lower 95 % bound, MS − 1.645 u(MS), for a normal result (JCGM 106:2012, 8.3).',
  source: 'Common practice in stress analysis',
  compute: (inputs) => ({ marginOfSafety: marginOfSafety(inputs) }),
  partials: ({ capability, demand }) => ({
    marginOfSafety: { capability: 1 / demand, demand: -capability / demand ** 2 },
  }),
  example: { capability: 0.169, demand: 0.105 },
  related: ['ballast.largest-lean'],
});

/**
 * The lower gain margin as a factor that may be held against a requirement, as the upper one is.
 *
 *   f = 1 / κ↓
 *
 * @param gainMarginDown  κ↓, the factor to which all gains may fall, more than 0
 * @returns f, the factor by which they may be divided, a pure number
 * @throws DomainError  for 0: the vehicle balances without the loop, and no gain is too low
 * Source: definition.
 */
export function gainDownFactor({ gainMarginDown }: { readonly gainMarginDown: number }): number {
  if (!(gainMarginDown > 0)) {
    throw new DomainError('factor to which all gains may fall', gainMarginDown, 'it has to be more than 0');
  }
  return 1 / gainMarginDown;
}

export const gainDownFactorCalculation = calculation({
  id: 'margin.gain-down-factor',
  title: 'Factor by which the loop gain may be divided',
  equation: String.raw`f = \frac{1}{\kappa_{\downarrow}}`,
  inputs: {
    gainMarginDown: {
      symbol: String.raw`\kappa_{\downarrow}`,
      unit: '1',
      meaning: 'factor on all gains at which the balance is lost downwards',
    },
  },
  outputs: { factor: { symbol: 'f', unit: '1', meaning: 'factor by which all gains may be divided' } },
  validity: 'A vehicle that does not balance without the loop.',
  source: 'Definition',
  compute: (inputs) => ({ factor: gainDownFactor(inputs) }),
  partials: ({ gainMarginDown }) => ({ factor: { gainMarginDown: -1 / gainMarginDown ** 2 } }),
  example: { gainMarginDown: 0.5754386 },
  related: ['loop.margins'],
});

export const marginCalculations = [marginOfSafetyCalculation, gainDownFactorCalculation] as const;
