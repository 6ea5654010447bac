/** What became of a corrective action: which revision carries it, which run has shown it to work, and so the status. */
import { Choice } from '../../controls/choice.tsx';
import { runStanding } from '../../controls/run-standing.ts';
import { useRecords } from '../../store/context.ts';
import type { FieldProps } from './field-props.ts';

const NONE_YET = '';
const statuses = ['open', 'action taken', 'closed'] as const;

export function CorrectedInChoice({ failure, disabled, record }: FieldProps) {
  const revisions = ofPrototype(useRecords('revision'), failure.prototype);
  return (
    <Choice
      label="carried by revision"
      value={failure.correctedIn ?? NONE_YET}
      choices={[NONE_YET, ...revisions.map(([id]) => id)]}
      names={{
        [NONE_YET]: 'none yet',
        ...Object.fromEntries(revisions.map(([id, { letter }]) => [id, letter])),
      }}
      disabled={disabled}
      onChoose={record('correctedIn')}
    />
  );
}

export function VerifiedByChoice({ failure, disabled, record }: FieldProps) {
  const revisions = useRecords('revision');
  const runs = ofPrototype(useRecords('run'), failure.prototype).filter(([id]) => id !== failure.run);
  return (
    <Choice
      label="shown to work by run"
      value={failure.verifiedBy ?? NONE_YET}
      choices={[NONE_YET, ...runs.map(([id]) => id)]}
      names={{
        [NONE_YET]: 'none yet',
        ...Object.fromEntries(
          runs.map(([id, run]) => [id, `run ${run.number}, ${runStanding(run, revisions[run.revision])}`]),
        ),
      }}
      disabled={disabled}
      onChoose={record('verifiedBy')}
    />
  );
}

export function StatusChoice({ failure, disabled, record }: FieldProps) {
  const unverified = failure.verifiedBy === undefined;
  return (
    <>
      <Choice
        label="status"
        value={failure.status}
        choices={unverified && failure.status !== 'closed' ? statuses.slice(0, 2) : statuses}
        disabled={disabled}
        onChoose={record('status')}
      />
      {unverified && (
        <p className="quiet small">It can be closed once a run has shown the corrective action to work.</p>
      )}
    </>
  );
}

function ofPrototype<T extends { readonly prototype: string }>(
  records: Readonly<Record<string, T>>,
  prototype: string,
): readonly [string, T][] {
  return Object.entries(records).filter(([, each]) => each.prototype === prototype);
}
