/** What random draws came to, in sentences: the same ones in the window and on the command line. */
import { formatUncertain, formatValue, independent, phrase } from '../quantity/index.ts';
import type { DrawnMargin, DrawnResult } from './draw-subject.ts';
import type { Verdict } from './figure.ts';

/** `190 000`. */
export function drawCount(draws: number): string {
  return String(draws).replace(/\B(?=(\d{3})+$)/g, '\u202F');
}

/** Draws from which on a tenth of a per cent means something: the standard error of a half is then a third of one. */
const ENOUGH_FOR_TENTHS = 20_000;

/** `in 87.3 % of 190 000 draws`; never rounded up to all of them, nor down to none. */
export function holdsInWords({ probability, draws }: Pick<DrawnMargin, 'probability' | 'draws'>): string {
  if (probability === 1) return `in all of ${drawCount(draws)} draws`;
  if (probability === 0) return `in none of ${drawCount(draws)} draws`;
  const decimals = draws >= ENOUGH_FOR_TENTHS ? 1 : 0;
  const last = 10 ** -decimals;
  const share = 100 * probability;
  const text =
    share > 100 - last / 2
      ? `more than ${(100 - last).toFixed(decimals)}`
      : share < last / 2
        ? `fewer than ${last.toFixed(decimals)}`
        : share.toFixed(decimals);
  return `in ${text}\u202F% of ${drawCount(draws)} draws`;
}

/** Mean with its uncertainty, and the interval that holds 95 % of the draws, as much left out below as above. */
export function spreadInWords({ mean, u, symmetric, display }: DrawnResult): {
  readonly mean: string;
  readonly interval: string;
} {
  const [low, high] = symmetric.map((end) => formatValue(end, display, u));
  return { mean: formatUncertain(independent('', mean, u), display), interval: `${low} to ${high}` };
}

/** Whether the first-order interval may be relied on. JCGM 101:2008 8. */
export function confirmedInWords({ confirmed, draws, firstOrder, display }: DrawnResult): string {
  if (confirmed) return 'first order is confirmed';
  const [low, high] = firstOrder.interval.map((end) => formatValue(end, display, firstOrder.u));
  const has = `it has ${low} to ${high}`;
  return confirmed === false
    ? `first order is not confirmed: ${has}`
    : `${drawCount(draws)} draws are too few to confirm first order: ${has}`;
}

/** Share of the draws in which the demand has to be met for the verdict *holds*; its first-order bound stands for it. */
const SHARE_TO_HOLD = 0.95;

/** The verdict that the draws would give where first order gives another; undefined where they agree. */
export function verdictInWords(verdict: Verdict, { probability }: DrawnMargin): string | undefined {
  if (verdict === 'holds' && probability < SHARE_TO_HOLD) return 'by the draws it would be in doubt';
  if (verdict === 'in doubt' && probability >= SHARE_TO_HOLD) return 'by the draws it would hold';
  return undefined;
}

/** Draws without a value, and why; undefined where every draw has one. */
export function outsideInWords({ outside, because }: DrawnResult): string | undefined {
  if (outside === 0) return undefined;
  const reason = because ? `: ${phrase(because).reason.replace(/\.$/, '')}` : '';
  return `${drawCount(outside)} ${outside === 1 ? 'draw has' : 'draws have'} no value${reason}`;
}
