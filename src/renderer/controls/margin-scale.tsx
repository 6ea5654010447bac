/** A margin of the chosen revision as its scale; drawn again only when something on it is another. */
import { memo } from 'react';
import { shallow } from 'zustand/shallow';
import type { Assessment, Margin } from '../../margins/index.ts';
import { marginDrawing } from '../../report/index.ts';
import { appearanceOf, useAssessed } from '../store/assessment.ts';
import { DrawingView } from './drawing-view.tsx';
import { problemText } from './problem-line.tsx';

interface Shown {
  readonly margin: Margin;
  readonly assessment: Assessment;
}

/** @param width  of the drawing, in points of its lettering of 12: it fills its place whatever that is */
export function MarginScale({ id, width }: { id: string; width: number }) {
  const shown = useAssessed((assessment) => shownIn(assessment, id), alike);
  return shown ? <Scale shown={shown} width={width} /> : null;
}

const Scale = memo(function Scale({ shown, width }: { shown: Shown; width: number }) {
  return <DrawingView drawing={marginDrawing(shown.margin, shown.assessment, width)} />;
});

function shownIn(assessment: Assessment, id: string): Shown | undefined {
  const margin = assessment.margins.find((each) => each.id === id);
  return margin && { margin, assessment };
}

function alike(a: Shown | undefined, b: Shown | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && shallow(valuesOf(a), valuesOf(b)));
}

/** Everything that the drawing is made from. */
function valuesOf({ margin, assessment }: Shown): readonly (string | number)[] {
  return [
    margin.title,
    margin.verdict,
    ...(margin.verdict === 'unknown'
      ? [problemText(margin.problem)]
      : [margin.marginOfSafety.value, margin.lowerBound]),
    appearanceOf(assessment.figures.get(margin.capability)),
    appearanceOf(assessment.figures.get(margin.demand)),
  ];
}
