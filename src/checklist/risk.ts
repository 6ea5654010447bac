/**
 * The risk matrix of MIL-STD-882E as data: how bad a failure is, how likely, and what the two together come to.
 * Used where a failure is recorded and where a restart has to be accepted by name.
 *
 * Source: MIL-STD-882E (11 May 2012), tables I, II and III, in our own words. One public transcription prints
 * Improbable × Marginal as Low; the standard says Medium, and a test holds that cell.
 */
import type { FailureReport } from '../notebook/index.ts';

export type Severity = FailureReport['severity'];
export type Probability = FailureReport['probability'];
export type Risk = 'High' | 'Serious' | 'Medium' | 'Low';

export interface SeverityLevel {
  readonly name: string;
  /** Number of the category in the standard. */
  readonly category: 1 | 2 | 3 | 4;
  readonly injury: string;
}

/** Table I, injury limb: the limb of money is useless on a bench, where all of it is the lowest band. */
export const severities: Readonly<Record<Severity, SeverityLevel>> = {
  I: { name: 'Catastrophic', category: 1, injury: 'death, or permanent total disability' },
  II: {
    name: 'Critical',
    category: 2,
    injury: 'permanent partial disability, or three or more people in hospital',
  },
  III: { name: 'Marginal', category: 3, injury: 'harm that costs at least one day of work' },
  IV: { name: 'Negligible', category: 4, injury: 'harm that costs no day of work' },
};

export interface ProbabilityLevel {
  readonly name: string;
  /** For one item, over its life. */
  readonly meaning: string;
}

/** Table II for a single item. Level F, eliminated, is reached by removing the hazard and is not recorded here. */
export const probabilities: Readonly<Record<Probability, ProbabilityLevel>> = {
  A: { name: 'Frequent', meaning: 'likely to happen often' },
  B: { name: 'Probable', meaning: 'will happen several times' },
  C: { name: 'Occasional', meaning: 'likely to happen at some time' },
  D: { name: 'Remote', meaning: 'unlikely, but possible' },
  E: { name: 'Improbable', meaning: 'so unlikely that it may be taken not to happen' },
};

/** Table III: rows by probability, columns by severity. */
export const riskMatrix: Readonly<Record<Probability, Readonly<Record<Severity, Risk>>>> = {
  A: { I: 'High', II: 'High', III: 'Serious', IV: 'Medium' },
  B: { I: 'High', II: 'High', III: 'Serious', IV: 'Medium' },
  C: { I: 'High', II: 'Serious', III: 'Medium', IV: 'Low' },
  D: { I: 'Serious', II: 'Medium', III: 'Medium', IV: 'Low' },
  E: { I: 'Medium', II: 'Medium', III: 'Medium', IV: 'Low' },
};

/** Risk of a failure of the given severity and probability; MIL-STD-882E table III. */
export function riskOf(severity: Severity, probability: Probability): Risk {
  return riskMatrix[probability][severity];
}
