/** `margins --monte-carlo`: the margins by random draws, beside those of first order. */
import {
  confirmedInWords,
  type DrawnResult,
  holdsInWords,
  type MonteCarlo,
  monteCarlo,
  outsideInWords,
  spreadInWords,
  type Verdict,
  verdictInWords,
} from '../margins/index.ts';
import type { Prototype, Revision } from '../notebook/index.ts';
import { sentence } from '../quantity/index.ts';
import { Stop, stopAt, USAGE } from './terminal.ts';

const USUAL_SEED = 1;
const DIGITS = 1;

/** @returns undefined where no draws are asked for */
export function marginDraws(
  prototype: Prototype,
  revision: Revision,
  options: Readonly<Record<string, string | boolean | undefined>>,
): MonteCarlo | undefined {
  const { 'monte-carlo': wanted, seed } = options;
  if (!wanted && seed !== undefined) throw new Stop(USAGE, '--seed belongs to --monte-carlo.');
  if (!wanted) return undefined;
  const written = typeof seed === 'string' ? seed : String(USUAL_SEED);
  if (!/^\d{1,15}$/.test(written))
    throw new Stop(USAGE, '--seed takes a whole number from 0 on, of at most 15 figures.');
  const drawn = monteCarlo(prototype, revision, { seed: Number(written), digits: DIGITS });
  if (!drawn.ok) throw stopAt(USAGE, drawn.problem);
  return drawn.value;
}

/** Cells to follow those of the margin's line. */
export function drawCells(
  draws: MonteCarlo | undefined,
  { id, verdict }: { readonly id: string; readonly verdict: Verdict },
): readonly string[] {
  const result = draws?.results.get(id);
  if (!result) return [];
  if (!result.ok) return [`not drawn: ${sentence(result.problem)}`];
  const { value } = result;
  const { mean, interval } = spreadInWords(value);
  const outside = outsideInWords(value);
  const other = value.kind === 'margin' ? verdictInWords(verdict, value) : undefined;
  return [
    ...(value.kind === 'margin'
      ? [`holds ${holdsInWords(value)}${other === undefined ? '' : `; ${other}`}`]
      : []),
    `MS ${mean}, 95 % from ${interval}`,
    confirmedInWords(value),
    ...(outside === undefined ? [] : [outside]),
  ];
}

export function drawJson(draws: MonteCarlo | undefined, id: string) {
  const result = draws?.results.get(id);
  if (!result) return {};
  return { monteCarlo: result.ok ? resultJson(result.value) : { reason: sentence(result.problem) } };
}

function resultJson(result: DrawnResult) {
  const { mean, u, symmetric, shortest, draws, outside, tolerance, settled, confirmed } = result;
  return {
    ...(result.kind === 'margin' ? { probability: result.probability, lowerBound: result.lowerBound } : {}),
    mean,
    standardUncertainty: u,
    interval: symmetric,
    shortestInterval: shortest,
    draws,
    withoutValue: outside,
    tolerance,
    settled,
    firstOrderConfirmed: confirmed ?? null,
  };
}
