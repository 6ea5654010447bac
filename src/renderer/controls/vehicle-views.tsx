/** The views of the chosen revision, to scale. */
import { type VehicleViewOptions, vehicleDrawing } from '../../report/index.ts';
import { useAssessment } from '../store/assessment.ts';
import { useChosen } from '../store/context.ts';
import { DrawingView } from './drawing-view.tsx';

export function VehicleViews({ views }: { views: NonNullable<VehicleViewOptions['views']> }) {
  const chosen = useChosen();
  const assessment = useAssessment();
  if (!chosen || !assessment || Object.keys(chosen.revision.parts).length === 0) return null;
  const options =
    views.length > 1 ? { width: 620, largestHeight: 300, views } : { width: 330, largestHeight: 300, views };
  return (
    <div className="vehicle-views">
      <DrawingView drawing={vehicleDrawing(chosen.prototype.name, chosen.revision, assessment, options)} />
    </div>
  );
}
