/** The shifting mass: how it moves, what moves it, and the lean that it can hold. */

import type { BallastDrive } from '../../../notebook/index.ts';
import { FactForm } from '../../controls/fact-form.tsx';
import { FigureList } from '../../controls/figure-list.tsx';
import { Notices } from '../../controls/notices.tsx';
import { VehicleViews } from '../../controls/vehicle-views.tsx';
import { useChosen, useNotebook, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

const driveKinds: readonly BallastDrive['kind'][] = ['upright arm', 'hanging arm', 'slide'];

export function BallastPage() {
  const chosen = useChosen();
  const store = useNotebook();
  const readOnly = useView((view) => view.readOnly);
  if (!chosen) return null;
  const { ballast, parts } = chosen.revision;
  const hasPart = Object.values(parts).some((part) => part.role === 'ballast');

  function choose(kind: string) {
    const before = ballast && 'armLength' in ballast && kind !== 'slide' ? ballast : {};
    recordValue(store, 'revision', chosen?.id ?? '', 'ballast', { ...before, kind });
  }

  return (
    <>
      <section>
        <h2>What follows</h2>
        <div className="follows">
          <FigureList
            caption="Figures of the ballast"
            names={[
              'ballast_mass',
              'righting_moment',
              'largest_lean',
              'largest_lean_by_hand',
              'lateral_limit',
              'smallest_turn_radius',
              'cross_slope_held',
              'actuator_moment_needed',
              'actuator_force_needed',
              'stop_to_stop_time',
            ]}
          />
          <VehicleViews views={['rear view']} />
        </div>
        <Notices groups={['ballast', 'actuator']} />
      </section>
      <section>
        <h2>How it moves</h2>
        {!hasPart && (
          <p className="notices">
            Its mass belongs in the mass table: give one part there the role “ballast”.
          </p>
        )}
        <div className="quantity">
          <label htmlFor="drive-kind">the ballast rides on</label>
          <select
            id="drive-kind"
            disabled={readOnly || chosen.revision.status === 'issued'}
            value={ballast?.kind ?? ''}
            onChange={(event) => choose(event.target.value)}
          >
            {!ballast && <option value="">not chosen</option>}
            {driveKinds.map((kind) => (
              <option key={kind}>{kind}</option>
            ))}
          </select>
        </div>
        {ballast && <FactForm page="Ballast" group="ballast" />}
      </section>
      {ballast && (
        <section>
          <h2>Actuator</h2>
          <FactForm page="Ballast" group="actuator" />
        </section>
      )}
    </>
  );
}
