/**
 * What was measured on a run beside what its card predicted: is the difference more than the two uncertainties allow?
 *
 *   z = (x − X) / √(u(x)² + u(X)²)
 *
 * The two are independent: the prediction was frozen before the run. Source: JCGM 100:2008 5.1.2 for the combined
 * standard uncertainty; |z| ≤ 2 is the same as a normalised error |Eₙ| ≤ 1 with expanded uncertainties of k = 2
 * (ISO 13528).
 */
import type { FrozenFigure, KnownQuantity, Run, TestCard } from '../notebook/index.ts';

/** Expanded uncertainty is twice the standard one, about 95 % where the result is normal. */
const COVERAGE = 2;

export interface Comparison {
  /** Id of the reading on the card. */
  readonly reading: string;
  readonly label: string;
  readonly unit: string;
  readonly predicted?: FrozenFigure;
  readonly measured?: KnownQuantity;
  /** Measured less predicted, SI. */
  readonly difference?: number;
  /** Combined standard uncertainty of the difference, SI. */
  readonly combined?: number;
  /** Difference over its standard uncertainty; absent where neither side states one. */
  readonly z?: number;
  /** Whether |z| ≤ 2; absent where it cannot be judged. */
  readonly agrees?: boolean;
  /** For the reader: `agrees within 2 u`, `differs by 3.4 u`, `not read` … */
  readonly words: string;
}

/** Every reading of the card in order, each beside the prediction of its name where there is one. */
export function outcomeOf(card: TestCard, run: Run): readonly Comparison[] {
  return Object.entries(card.readings)
    .toSorted(([, a], [, b]) => a.order - b.order)
    .map(([id, { label, unit, name }]) => {
      const predicted = name === undefined ? undefined : card.predictions[name];
      const measured = run.readings[id];
      const common = {
        reading: id,
        label,
        unit,
        ...(predicted ? { predicted } : {}),
        ...(measured ? { measured } : {}),
      };
      if (!measured) return { ...common, words: 'not read' };
      if (!predicted) return { ...common, words: 'nothing predicted' };
      return { ...common, ...compare(measured, predicted) };
    });
}

function compare(
  measured: KnownQuantity,
  predicted: FrozenFigure,
): Pick<Comparison, 'difference' | 'combined' | 'z' | 'agrees' | 'words'> {
  const difference = measured.si - predicted.value;
  const combined = Math.hypot(measured.u, predicted.u);
  if (combined === 0) {
    const words = 'no uncertainty is stated on either side: cannot be judged';
    return { difference, combined, words };
  }
  const z = difference / combined;
  const agrees = Math.abs(z) <= COVERAGE;
  return { difference, combined, z, agrees, words: inWords(z, agrees) };
}

function inWords(z: number, agrees: boolean): string {
  if (agrees) return `agrees within ${COVERAGE} u`;
  const times = Math.abs(z) < 10 ? Math.abs(z).toFixed(1) : Math.abs(z).toFixed(0);
  return `does not agree: ${times} u ${z > 0 ? 'more' : 'less'} than predicted`;
}
