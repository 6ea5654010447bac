/** The margins of the chosen revision, always in view, each drawn as a scale. */
import { memo } from 'react';
import type { Assessment, Margin } from '../margins/index.ts';
import { marginDrawing } from '../report/index.ts';
import { DrawingView } from './controls/drawing-view.tsx';
import { useExplain } from './explain/explain-context.ts';
import { useAssessment } from './store/assessment.ts';
import { useChosen } from './store/context.ts';

const SCALE_WIDTH = 300; // points of the drawing; it fills the panel whatever that is

export function MarginPanel() {
  const chosen = useChosen();
  const assessment = useAssessment();
  return (
    <aside className="margins" aria-label="Margins">
      <h2>
        <span>Margins</span>
        {chosen && <span className="quiet small">revision {chosen.revision.letter}</span>}
      </h2>
      {assessment?.margins.length === 0 && (
        <p className="quiet">
          Enter what the prototype has to reach on the page “Requirements”: each line becomes a margin here.
        </p>
      )}
      {assessment?.margins.map((margin) => (
        <MarginButton key={margin.id} margin={margin} assessment={assessment} />
      ))}
    </aside>
  );
}

const MarginButton = memo(function MarginButton({
  margin,
  assessment,
}: {
  margin: Margin;
  assessment: Assessment;
}) {
  const explain = useExplain();
  return (
    <button
      type="button"
      className="margin"
      data-margin={margin.id}
      data-verdict={margin.verdict}
      onClick={() => explain({ kind: 'margin', id: margin.id })}
    >
      <DrawingView drawing={marginDrawing(margin, assessment, SCALE_WIDTH)} />
    </button>
  );
});
