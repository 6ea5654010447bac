/** The views of the chosen revision, to scale. */
import { memo, useEffect, useState } from 'react';
import { shallow } from 'zustand/shallow';
import { type VehicleViewOptions, vehicleDrawing } from '../../report/index.ts';
import { appearanceOf, assessmentOf } from '../store/assessment.ts';
import { type Chosen, useChosenPiece } from '../store/context.ts';
import { DrawingView } from './drawing-view.tsx';

type Views = NonNullable<VehicleViewOptions['views']>;

const rear: Views = ['rear view'];
const sideAndRear: Views = ['side view', 'rear view'];

const STILL = 150; // ms without a change, after which the picture follows

/** Who types sees the figures and the margins at once; the picture follows when the hand rests. */
export function VehicleViews({ rearOnly = false }: { rearOnly?: boolean }) {
  const chosen = useChosenPiece((each) => each, drawnAlike);
  const shown = useStill(chosen);
  if (!shown || Object.keys(shown.revision.parts).length === 0) return null;
  return (
    <div className={rearOnly ? 'vehicle-views rear-only' : 'vehicle-views'}>
      <Views chosen={shown} views={rearOnly ? rear : sideAndRear} />
    </div>
  );
}

/** The value as it was when it last stood still; another revision is shown at once. */
function useStill(chosen: Chosen | undefined): Chosen | undefined {
  const [still, setStill] = useState(chosen);
  useEffect(() => {
    const waiting = window.setTimeout(() => setStill(chosen), STILL);
    return () => window.clearTimeout(waiting);
  }, [chosen]);
  return still?.id === chosen?.id ? still : chosen;
}

const Views = memo(function Views({ chosen, views }: { chosen: Chosen; views: Views }) {
  const { prototype, revision } = chosen;
  const width = views.length > 1 ? 620 : 330;
  return (
    <DrawingView
      drawing={vehicleDrawing(prototype.name, revision, assessmentOf(prototype, revision), {
        width,
        largestHeight: 300,
        views,
      })}
    />
  );
});

const DRAWN_FIGURES = ['cg_forward', 'cg_left', 'cg_height', 'largest_lean'];

/** Whether the two give the same picture: it is made of nothing else. */
function drawnAlike(a: Chosen, b: Chosen): boolean {
  return shallow(drawnOf(a), drawnOf(b));
}

function drawnOf({ prototype, revision }: Chosen): readonly unknown[] {
  const { figures } = assessmentOf(prototype, revision);
  const drawn = DRAWN_FIGURES.map((name) => appearanceOf(figures.get(name)));
  return [
    prototype.name,
    revision.letter,
    revision.parts,
    revision.ballast,
    revision.rotor?.sections,
    ...drawn,
  ];
}
