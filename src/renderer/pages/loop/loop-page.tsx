/** The balance loop: gains, delays, and how close they are to the edge. */

import type { RateSource } from '../../../notebook/index.ts';
import { Choice } from '../../controls/choice.tsx';
import { FactForm } from '../../controls/fact-form.tsx';
import { FigureList } from '../../controls/figure-list.tsx';
import { Notices } from '../../controls/notices.tsx';
import { useChosen, useNotebook, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

const sources: readonly RateSource[] = ['rate gyro', 'difference of angle', 'gimbal tilt', 'gimbal rate'];

export function LoopPage() {
  const chosen = useChosen();
  const store = useNotebook();
  const readOnly = useView((view) => view.readOnly);
  if (!chosen) return null;
  return (
    <>
      <section>
        <h2>What follows</h2>
        <FigureList
          caption="Margins of the loop"
          names={['gain_margin_up', 'gain_margin_down', 'delay_margin', 'peak_sensitivity', 'toppling_time']}
        />
        <Notices groups={['loop']} />
      </section>
      <section>
        <h2>Gains and delays</h2>
        <p className="quiet small">
          The ballast command is lean gain × lean + rate gain × rate + gimbal gain × gimbal tilt, counted
          against the lean, once every sample.
        </p>
        <FactForm page="Loop" />
        <Choice
          label="what the rate gain acts on"
          value={chosen.revision.loop?.rateSource ?? 'rate gyro'}
          choices={sources}
          disabled={readOnly || chosen.revision.status === 'issued'}
          onChoose={(source) => recordValue(store, 'revision', chosen.id, 'loop/rateSource', source)}
        />
      </section>
    </>
  );
}
