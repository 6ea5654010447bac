/** The figures and margins of the chosen revision, as they follow from what is recorded and what is being typed. */
import { type Assessment, assess, type Figure } from '../../margins/index.ts';
import { standardUncertainty } from '../../quantity/index.ts';
import { useChosenPiece } from './context.ts';

/** Remembered by `assess` itself for as long as the two records are the same objects. */
export const assessmentOf = assess;

/** The whole assessment: the component draws again at every key that is typed. */
export function useAssessment(): Assessment | undefined {
  return useAssessed((assessment) => assessment);
}

/** A piece of the assessment; the component draws again only when the piece shows something else. */
export function useAssessed<T>(
  select: (assessment: Assessment) => T,
  same?: (a: T, b: T) => boolean,
): T | undefined {
  return useChosenPiece(({ prototype, revision }) => select(assess(prototype, revision)), same);
}

/** Everything of a figure that can be seen, in a text: two figures with the same one look the same. */
export function appearanceOf(figure: Figure | undefined): string {
  if (!figure) return '';
  const { title, display, result } = figure;
  const shown = result.ok
    ? `${result.value.value} ${standardUncertainty(result.value)}`
    : `${result.problem.code} ${JSON.stringify(result.problem.figures)}`;
  return `${title} ${display} ${shown}`;
}
