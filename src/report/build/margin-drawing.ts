/** A margin of an assessment as a scale: figures in the unit that people read them in, and what is missing in words. */
import type { Assessment, Margin } from '../../margins/index.ts';
import { phrase, standardUncertainty, toDisplay } from '../../quantity/index.ts';
import { type MarginScaleInput, marginScale } from '../drawing/margin-scale.ts';
import type { Drawing } from '../drawing/primitive.ts';

export function marginDrawing(
  margin: Margin,
  assessment: Pick<Assessment, 'figures'>,
  width: number,
  textSize?: number,
  untitled = false,
): Drawing {
  return marginScale(marginScaleInput(margin, assessment), {
    width,
    untitled,
    ...(textSize === undefined ? {} : { textSize }),
  });
}

function marginScaleInput(margin: Margin, assessment: Pick<Assessment, 'figures'>): MarginScaleInput {
  const read = (name: string): { value?: number; u?: number; reason?: string } => {
    const result = assessment.figures.get(name)?.result;
    if (!result) return {};
    if (!result.ok) return { reason: inFewWords(phrase(result.problem).reason) };
    return {
      value: toDisplay(result.value.value, margin.display),
      u: toDisplay(standardUncertainty(result.value), margin.display),
    };
  };
  const capability = read(margin.capability);
  const demand = read(margin.demand);
  const reason = margin.verdict === 'unknown' ? inFewWords(phrase(margin.problem).reason) : capability.reason;
  return {
    title: margin.title,
    unit: margin.display,
    capability: capability.value,
    capabilityU: capability.u,
    demand: demand.value,
    demandU: demand.u,
    verdict: margin.verdict,
    ...(margin.verdict === 'unknown'
      ? {}
      : { marginOfSafety: margin.marginOfSafety.value, lowerBound: margin.lowerBound }),
    reason,
  };
}

function inFewWords(reason: string): string {
  return reason.replace(/[.\s]+$/, '');
}
