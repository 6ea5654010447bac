/** Comparison with published figures in tests; the tables and the rule of agreement stand in `checks/`. */
import { expect } from 'vitest';
import { agreesToPrintedDigits } from './checks/published-check.ts';

export {
  agreesToPrintedDigits,
  lastDigit,
  type PublishedCheck,
  solveRising,
} from './checks/published-check.ts';

/** Fails with both figures in the message. */
export function expectPrinted(computed: number, printed: string): void {
  const verdict = agreesToPrintedDigits(computed, printed) ? 'agrees' : 'does not agree';
  expect(`${computed} ${verdict} with ${printed}`).toBe(`${computed} agrees with ${printed}`);
}
