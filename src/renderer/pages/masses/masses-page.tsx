/** The mass table, and what the parts add up to. */
import { Button } from 'react-aria-components';
import { type Json, set } from '../../../notebook/index.ts';
import { FactForm } from '../../controls/fact-form.tsx';
import { FigureList } from '../../controls/figure-list.tsx';
import { Notices } from '../../controls/notices.tsx';
import { VehicleViews } from '../../controls/vehicle-views.tsx';
import { useChosen, useNotebook, useView } from '../../store/context.ts';
import { newId } from '../../store/record-id.ts';
import { MassTable } from './mass-table.tsx';

export function MassesPage() {
  const chosen = useChosen();
  const store = useNotebook();
  const readOnly = useView((view) => view.readOnly);
  if (!chosen) return null;
  const { id, revision } = chosen;
  const disabled = readOnly || revision.status === 'issued';

  function addPart() {
    const order = Math.max(0, ...Object.values(revision.parts).map((part) => part.order)) + 1;
    store.change([
      set('revision', id, { [`parts/${newId('part')}`]: { name: `Part ${order}`, order } as Json }),
    ]);
  }

  return (
    <>
      <section>
        <h2>What follows</h2>
        <div className="follows">
          <FigureList
            caption="What the parts add up to"
            names={['total_mass', 'cg_height', 'cg_forward', 'cg_left']}
          />
          <FigureList
            caption="How it topples"
            names={['first_moment', 'roll_inertia', 'toppling_stiffness', 'toppling_time']}
          />
        </div>
        <VehicleViews views={['side view', 'rear view']} />
        <Notices groups={['mass']} />
      </section>
      <section>
        <h2>Mass table</h2>
        <p className="quiet small">
          Forward of the rear contact point, left of the centre line, above the ground. Type the uncertainty
          behind the value: 73 g ± 0.5 g. Write “not measured” where somebody has yet to look.
        </p>
        <MassTable disabled={disabled} />
        <p>
          <Button className="button" isDisabled={disabled} onPress={addPart}>
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
