/** The shifting mass: how it moves, what moves it, and the lean that it can hold. */
import type { BallastDrive } from '../../../notebook/index.ts';
import { Cautions } from '../../controls/caution.tsx';
import { Choice } from '../../controls/choice.tsx';
import { FactForm } from '../../controls/fact-form.tsx';
import { FigureList } from '../../controls/figure-list.tsx';
import { Notices } from '../../controls/notices.tsx';
import { PageLink } from '../../controls/page-link.tsx';
import { VehicleViews } from '../../controls/vehicle-views.tsx';
import { useChosenPiece, useLocked, useNotebook } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

const ballastFigures = [
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
];

export function BallastPage() {
  const hasPart = useChosenPiece(({ revision }) =>
    Object.values(revision.parts).some((part) => part.role === 'ballast'),
  );
  const described = useChosenPiece(({ revision }) => revision.ballast !== undefined);
  return (
    <>
      <Cautions place="ballast page" />
      <section>
        <h2>What follows</h2>
        <div className="follows">
          <FigureList caption="Figures of the ballast" names={ballastFigures} />
          <VehicleViews rearOnly />
        </div>
        <Notices groups={['ballast', 'actuator']} />
      </section>
      <section>
        <h2>How it moves</h2>
        {!hasPart && (
          <p className="notices">
            Its mass belongs in the mass table: give one part there the role “ballast”, on the page{' '}
            <PageLink to={{ page: 'masses' }}>Masses</PageLink>.
          </p>
        )}
        <DriveChoice />
        {described && <FactForm page="Ballast" group="ballast" />}
      </section>
      {described && (
        <section>
          <h2>Actuator</h2>
          <FactForm page="Ballast" group="actuator" />
        </section>
      )}
    </>
  );
}

const NOT_CHOSEN = '';
const driveKinds: readonly BallastDrive['kind'][] = ['upright arm', 'hanging arm', 'slide'];

function DriveChoice() {
  const store = useNotebook();
  const revision = useChosenPiece((chosen) => chosen.id);
  const kind = useChosenPiece((chosen) => chosen.revision.ballast?.kind);
  const locked = useLocked();
  if (revision === undefined) return null;

  /** From one arm to the other the dimensions stay; a slide has others. */
  function choose(next: string) {
    const before = store.getState().recorded.revision[revision ?? '']?.ballast;
    const kept = before && 'armLength' in before && next !== 'slide' ? before : {};
    recordValue(store, 'revision', revision ?? '', 'ballast', { ...kept, kind: next });
  }

  return (
    <Choice
      label="the ballast rides on"
      value={kind ?? NOT_CHOSEN}
      choices={kind === undefined ? [NOT_CHOSEN, ...driveKinds] : driveKinds}
      names={{ [NOT_CHOSEN]: 'not chosen' }}
      disabled={locked}
      onChoose={choose}
    />
  );
}
