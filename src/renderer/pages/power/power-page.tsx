/** The pack: what it holds, what is drawn from it, how long it lasts. */

import type { Chemistry } from '../../../notebook/index.ts';
import { Choice } from '../../controls/choice.tsx';
import { FactForm } from '../../controls/fact-form.tsx';
import { FigureList } from '../../controls/figure-list.tsx';
import { Notices } from '../../controls/notices.tsx';
import { useChosen, useNotebook, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

const chemistries: readonly Chemistry[] = ['lithium-ion', 'lithium iron phosphate'];

export function PowerPage() {
  const chosen = useChosen();
  const store = useNotebook();
  const readOnly = useView((view) => view.readOnly);
  if (!chosen) return null;
  const disabled = readOnly || chosen.revision.status === 'issued';
  return (
    <>
      <section>
        <h2>What follows</h2>
        <div className="follows">
          <FigureList
            caption="Energy and time"
            names={['pack_energy', 'run_time', 'pack_c_rate', 'pack_sag']}
          />
          <FigureList
            caption="Voltages"
            names={[
              'pack_full_voltage',
              'pack_nominal_voltage',
              'pack_rest_minimum_voltage',
              'pack_load_cut_voltage',
            ]}
          />
        </div>
        <Notices groups={['pack']} />
      </section>
      <section>
        <h2>Pack</h2>
        <Choice
          label="chemistry"
          value={chosen.revision.pack?.chemistry ?? 'lithium-ion'}
          choices={chemistries}
          disabled={disabled}
          onChoose={(chemistry) => recordValue(store, 'revision', chosen.id, 'pack/chemistry', chemistry)}
        />
        <FactForm page="Power" />
      </section>
      <section>
        <h2>Fittings</h2>
        <p className="quiet small">What the vehicle has besides; the checklists ask accordingly.</p>
        <FittingBox
          path="fittings/radio"
          label="commanded by radio"
          checked={chosen.revision.fittings.radio}
          disabled={disabled}
        />
        <FittingBox
          path="fittings/independentKill"
          label="a second, independent way to cut the power"
          checked={chosen.revision.fittings.independentKill}
          disabled={disabled}
        />
        <FittingBox
          path="fittings/driven"
          label="drives its own wheels"
          checked={chosen.revision.fittings.driven}
          disabled={disabled}
        />
      </section>
    </>
  );
}

function FittingBox({
  path,
  label,
  checked,
  disabled,
}: {
  path: string;
  label: string;
  checked: boolean;
  disabled: boolean;
}) {
  const store = useNotebook();
  const chosen = useChosen();
  return (
    <label className="check">
      <input
        type="checkbox"
        checked={checked}
        disabled={disabled}
        onChange={(event) => chosen && recordValue(store, 'revision', chosen.id, path, event.target.checked)}
      />
      {label}
    </label>
  );
}
