/** A margin of the assessment as its scale, in the units that people read. */
import type { Assessment, Margin } from '../margins/index.ts';
import { phrase, standardUncertainty, toDisplay } from '../quantity/index.ts';
import { marginScale } from './drawing/margin-scale.ts';
import type { Drawing } from './drawing/primitive.ts';

/** @param width  in points */
export function marginDrawing(
  margin: Margin,
  assessment: Assessment,
  width: number,
  textSize?: number,
): Drawing {
  const capability = reading(margin.capability, margin.display, assessment);
  const demand = reading(margin.demand, margin.display, assessment);
  return marginScale(
    {
      title: margin.title,
      unit: margin.display,
      capability: capability?.value,
      capabilityU: capability?.u,
      demand: demand?.value,
      demandU: demand?.u,
      verdict: margin.verdict,
      ...(margin.verdict === 'unknown'
        ? { reason: phrase(margin.problem).reason }
        : { marginOfSafety: margin.marginOfSafety.value, lowerBound: margin.lowerBound }),
    },
    textSize === undefined ? { width } : { width, textSize },
  );
}

function reading(
  name: string,
  display: string,
  assessment: Assessment,
): { value: number; u: number } | undefined {
  const result = assessment.figures.get(name)?.result;
  if (!result?.ok) return undefined;
  const { value } = result.value;
  const u = standardUncertainty(result.value);
  return { value: toDisplay(value, display), u: toDisplay(value + u, display) - toDisplay(value, display) };
}
