/** The balance loop: gains, delays, and how close they are to the edge. */
import type { RateSource } from '../../../notebook/index.ts';
import { Choice } from '../../controls/choice.tsx';
import { FactForm } from '../../controls/fact-form.tsx';
import { FigureList } from '../../controls/figure-list.tsx';
import { Notices } from '../../controls/notices.tsx';
import { useChosenPiece, useLocked, useNotebook } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

const loopFigures = [
  'gain_margin_up',
  'gain_margin_down',
  'delay_margin',
  'peak_sensitivity',
  'toppling_time',
];
const sources: readonly RateSource[] = ['rate gyro', 'difference of angle', 'gimbal tilt', 'gimbal rate'];

export function LoopPage() {
  return (
    <>
      <section>
        <h2>What follows</h2>
        <div className="follows single">
          <FigureList caption="Margins of the loop" names={loopFigures} />
        </div>
        <Notices groups={['loop']} />
      </section>
      <section>
        <h2>Gains and delays</h2>
        <p className="quiet small">
          The ballast command is lean gain × lean + rate gain × rate + gimbal gain × gimbal tilt, counted
          against the lean, once every sample.
        </p>
        <FactForm page="Loop" />
        <RateSourceChoice />
      </section>
    </>
  );
}

function RateSourceChoice() {
  const store = useNotebook();
  const revision = useChosenPiece((chosen) => chosen.id);
  const source = useChosenPiece((chosen) => chosen.revision.loop?.rateSource);
  const locked = useLocked();
  if (revision === undefined) return null;
  return (
    <Choice
      label="what the rate gain acts on"
      value={source ?? 'rate gyro'}
      choices={sources}
      disabled={locked}
      onChoose={(next) => recordValue(store, 'revision', revision, 'loop/rateSource', next)}
    />
  );
}
