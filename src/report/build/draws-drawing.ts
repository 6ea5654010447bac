/** Random draws of a figure or a margin as a histogram, in the unit that people read them in. */
import type { DrawBins, DrawnResult } from '../../margins/index.ts';
import { toDisplay } from '../../quantity/index.ts';
import { type Bars, histogram } from '../drawing/histogram.ts';
import type { Drawing } from '../drawing/primitive.ts';

export function drawsDrawing(result: DrawnResult, width: number, textSize?: number): Drawing {
  const options = { width, ...(textSize === undefined ? {} : { textSize }) };
  const { title } = result;
  if (result.kind === 'margin') {
    const unit = result.figures.display;
    const capability = inUnit(result.capability, unit);
    return histogram({ title, unit, capability, demand: inUnit(result.demand, unit) }, options);
  }
  const unit = result.display;
  const [low, high] = result.symmetric;
  const interval = [toDisplay(low, unit), toDisplay(high, unit)] as const;
  return histogram({ title, unit, capability: inUnit(result.bins, unit), interval }, options);
}

function inUnit({ from, width, shares }: DrawBins, unit: string): Bars {
  const start = toDisplay(from, unit);
  return { from: start, width: toDisplay(from + width, unit) - start, shares };
}
