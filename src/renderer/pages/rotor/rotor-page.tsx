/** The rotor as a stack of discs and annuli, and the gimbal that it tilts in. */
import { Cautions } from '../../controls/caution.tsx';
import { FactForm } from '../../controls/fact-form.tsx';
import { FigureList } from '../../controls/figure-list.tsx';
import { Notices } from '../../controls/notices.tsx';
import { MaterialChoice } from './material-choice.tsx';
import { SectionTable } from './section-table.tsx';

const rotorFigures = [
  'rotor_inertia',
  'rotor_mass',
  'spin_momentum',
  'rotor_energy',
  'rotor_rim_speed',
  'runaway_speed',
  'judged_speed',
  'rotor_peak_stress',
];
const gimbalFigures = [
  'toppling_time',
  'slow_toppling_time',
  'rotor_time_gain',
  'gimbal_stop_time',
  'gimbal_stop_time_constant_moment',
  'nutation_frequency',
];

export function RotorPage() {
  return (
    <>
      <Cautions place="rotor page" />
      <section>
        <h2>What follows</h2>
        <div className="follows">
          <FigureList caption="Figures of the rotor" names={rotorFigures} />
          <FigureList caption="Figures of the gimbal" names={gimbalFigures} />
        </div>
        <Notices groups={['rotor', 'gimbal']} />
      </section>
      <section>
        <h2>Rotor</h2>
        <p className="quiet small">
          The spin axis is vertical with the gimbal centred. A stack of sections on one axis; leave the bore
          blank for a solid disc. A vehicle without a rotor leaves this page blank.
        </p>
        <SectionTable />
        <MaterialChoice />
        <FactForm page="Rotor and gimbal" group="rotor" />
      </section>
      <section>
        <h2>Gimbal</h2>
        <FactForm page="Rotor and gimbal" group="gimbal" />
      </section>
    </>
  );
}
