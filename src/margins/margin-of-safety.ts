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

export const marginCalculations = [marginOfSafetyCalculation] as const;
