/** The pack: what it holds, what is drawn from it, how long it lasts. */
import type { Chemistry, Revision } from '../../../notebook/index.ts';
import { Cautions } from '../../controls/caution.tsx';
import { Choice } from '../../controls/choice.tsx';
import { FactForm } from '../../controls/fact-form.tsx';
import { FigureList } from '../../controls/figure-list.tsx';
import { Notices } from '../../controls/notices.tsx';
import { useChosenPiece, useLocked, useNotebook } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

const energyAndTime = ['pack_energy', 'run_time', 'pack_c_rate', 'pack_sag'];
const voltages = [
  'pack_full_voltage',
  'pack_nominal_voltage',
  'pack_rest_minimum_voltage',
  'pack_load_cut_voltage',
];

export function PowerPage() {
  return (
    <>
      <Cautions place="power page" />
      <section>
        <h2>What follows</h2>
        <div className="follows">
          <FigureList caption="Energy and time" names={energyAndTime} />
          <FigureList caption="Voltages" names={voltages} />
        </div>
        <Notices groups={['pack']} />
      </section>
      <section>
        <h2>Pack</h2>
        <ChemistryChoice />
        <FactForm page="Power" />
      </section>
      <section>
        <h2>Fittings</h2>
        <p className="quiet small">What the vehicle has besides; the checklists ask accordingly.</p>
        <FittingBox fitting="radio" label="Commanded by radio" />
        <FittingBox fitting="independentKill" label="A second, independent way to cut the power" />
        <FittingBox fitting="driven" label="Drives its own wheels" />
      </section>
    </>
  );
}

const chemistries: readonly Chemistry[] = ['lithium-ion', 'lithium iron phosphate'];

function ChemistryChoice() {
  const store = useNotebook();
  const revision = useChosenPiece((chosen) => chosen.id);
  const chemistry = useChosenPiece((chosen) => chosen.revision.pack?.chemistry);
  const locked = useLocked();
  if (revision === undefined) return null;
  return (
    <Choice
      label="chemistry"
      value={chemistry ?? 'lithium-ion'}
      choices={chemistries}
      disabled={locked}
      onChoose={(next) => recordValue(store, 'revision', revision, 'pack/chemistry', next)}
    />
  );
}

function FittingBox({ fitting, label }: { fitting: keyof Revision['fittings']; label: string }) {
  const store = useNotebook();
  const revision = useChosenPiece((chosen) => chosen.id);
  const checked = useChosenPiece((chosen) => chosen.revision.fittings[fitting]);
  const locked = useLocked();
  if (revision === undefined) return null;
  return (
    <label className="check">
      <input
        type="checkbox"
        checked={checked ?? false}
        disabled={locked}
        onChange={(event) =>
          recordValue(store, 'revision', revision, `fittings/${fitting}`, event.target.checked)
        }
      />
      {label}
    </label>
  );
}
