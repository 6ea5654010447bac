/** The mass table, and what the parts add up to. */
import { Button } from 'react-aria-components';
import { type Json, set } from '../../../notebook/index.ts';
import { FactForm } from '../../controls/fact-form.tsx';
import { FigureList } from '../../controls/figure-list.tsx';
import { Notices } from '../../controls/notices.tsx';
import { VehicleViews } from '../../controls/vehicle-views.tsx';
import { FirstSteps } from '../../first-steps/first-steps.tsx';
import { useChosenPiece, useLocked, useNotebook } from '../../store/context.ts';
import { newId } from '../../store/record-id.ts';
import { MassTable } from './mass-table.tsx';

const whole = ['total_mass', 'cg_height', 'cg_forward', 'cg_left'];
const toppling = ['first_moment', 'roll_inertia', 'toppling_stiffness', 'toppling_time'];

export function MassesPage() {
  const store = useNotebook();
  const id = useChosenPiece((chosen) => chosen.id);
  const empty = useChosenPiece(({ revision }) => Object.keys(revision.parts).length === 0);
  const locked = useLocked();
  if (id === undefined) return null;

  function addPart() {
    const parts = store.getState().recorded.revision[id ?? '']?.parts ?? {};
    const order = Math.max(0, ...Object.values(parts).map((part) => part.order)) + 1;
    store.change([
      set('revision', id ?? '', { [`parts/${newId('part')}`]: { name: `Part ${order}`, order } as Json }),
    ]);
  }

  return (
    <>
      <FirstSteps />
      <section>
        <h2>What follows</h2>
        <div className="follows">
          <FigureList caption="What the parts add up to" names={whole} />
          <FigureList caption="How it topples" names={toppling} />
        </div>
        <VehicleViews />
        <Notices groups={['mass']} />
      </section>
      <section>
        <h2>Mass table</h2>
        <p className="quiet small">
          Distances of each part’s own centre of gravity: forward of the rear contact point, left of the
          centre line (blank: on it), above the ground. Type the uncertainty behind the value: 73 g ± 0.5 g.
          Write “not measured” where somebody has yet to look.
        </p>
        {empty ? (
          <p className="empty">
            No parts yet. Whatever can be put on the scale by itself is a part: frame, rotor, ballast, pack.
          </p>
        ) : (
          <MassTable locked={locked} />
        )}
        <p>
          <Button className="button" isDisabled={locked} onPress={addPart}>
            Add a part
          </Button>
        </p>
      </section>
      <section>
        <h2>Weighed whole</h2>
        <FactForm page="Masses" />
      </section>
    </>
  );
}
