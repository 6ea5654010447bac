/** One failure report: what was seen, what it did, why, and what was done about it. */
import { probabilities, severities } from '../../../checklist/index.ts';
import type { FailureReport } from '../../../notebook/index.ts';
import { Choice } from '../../controls/choice.tsx';
import { TextArea } from '../../controls/text-area.tsx';
import { useNotebook, useRecord, useRecords, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';
import { CauseChain } from './cause-chain.tsx';

const severityChoices = ['I', 'II', 'III', 'IV'] as const;
const probabilityChoices = ['A', 'B', 'C', 'D', 'E'] as const;
const severityNames = Object.fromEntries(
  severityChoices.map((each) => [
    each,
    `${each}, ${severities[each].name.toLowerCase()}: ${severities[each].injury}`,
  ]),
);
const probabilityNames = Object.fromEntries(
  probabilityChoices.map((each) => [
    each,
    `${each}, ${probabilities[each].name.toLowerCase()}: ${probabilities[each].meaning}`,
  ]),
);
const statuses = ['open', 'action taken', 'closed'] as const;

export function FailureForm({ id }: { id: string }) {
  const store = useNotebook();
  const failure = useRecord('failure', id);
  const revisions = useRecords('revision');
  const runs = useRecords('run');
  const readOnly = useView((view) => view.readOnly);
  if (!failure) return null;
  const record = (path: keyof FailureReport) => (value: string) =>
    recordValue(store, 'failure', id, path, value === '' ? undefined : value);
  const text = (path: 'observed' | 'moment' | 'effect' | 'evidence' | 'correctiveAction', label: string) => (
    <TextArea
      label={label}
      value={failure[path]}
      disabled={readOnly}
      onCommit={(value) => recordValue(store, 'failure', id, path, value)}
    />
  );
  const parts = revisions[failure.revision]?.parts ?? {};
  const ofPrototype = <T extends { prototype: string }>(records: Readonly<Record<string, T>>) =>
    Object.entries(records).filter(([, each]) => each.prototype === failure.prototype);
  const later = ofPrototype(revisions);
  const verifying = ofPrototype(runs).filter(([runId]) => runId !== failure.run);
  const unverified = failure.verifiedBy === undefined;

  return (
    <section aria-label={`Failure report ${failure.number}`}>
      <h2>
        Report {failure.number}, revision {revisions[failure.revision]?.letter}
        {failure.run && runs[failure.run] ? `, run ${runs[failure.run]?.number}` : ''}
      </h2>
      <TextArea
        single
        label="What broke, in a line"
        value={failure.title}
        disabled={readOnly}
        onCommit={record('title')}
      />
      <Choice
        label="which part"
        value={failure.part ?? ''}
        choices={['', ...Object.keys(parts)]}
        names={{
          '': 'not one part',
          ...Object.fromEntries(Object.entries(parts).map(([part, { name }]) => [part, name])),
        }}
        disabled={readOnly}
        onChoose={record('part')}
      />
      {text('observed', 'What was seen, heard, smelled')}
      {text('moment', 'When in the run')}
      {text('effect', 'What it did: to people, to the vehicle, to the test')}
      <Choice
        label="severity"
        value={failure.severity}
        choices={severityChoices}
        names={severityNames}
        disabled={readOnly}
        onChoose={record('severity')}
      />
      <Choice
        label="probability"
        value={failure.probability}
        choices={probabilityChoices}
        names={probabilityNames}
        disabled={readOnly}
        onChoose={record('probability')}
      />
      {text('evidence', 'Evidence: marks, data, parts kept')}
      <CauseChain id={id} causes={failure.causes} disabled={readOnly} />
      {text('correctiveAction', 'Corrective action')}
      <Choice
        label="carried by revision"
        value={failure.correctedIn ?? ''}
        choices={['', ...later.map(([revision]) => revision)]}
        names={{
          '': 'none yet',
          ...Object.fromEntries(later.map(([revision, { letter }]) => [revision, letter])),
        }}
        disabled={readOnly}
        onChoose={record('correctedIn')}
      />
      <Choice
        label="shown to work by run"
        value={failure.verifiedBy ?? ''}
        choices={['', ...verifying.map(([run]) => run)]}
        names={{
          '': 'none yet',
          ...Object.fromEntries(
            verifying.map(([run, { number, outcome }]) => [
              run,
              `run ${number}, ${outcome ?? 'not finished'}`,
            ]),
          ),
        }}
        disabled={readOnly}
        onChoose={record('verifiedBy')}
      />
      <Choice
        label="status"
        value={failure.status}
        choices={unverified && failure.status !== 'closed' ? statuses.slice(0, 2) : statuses}
        disabled={readOnly}
        onChoose={record('status')}
      />
      {unverified && (
        <p className="quiet small">It can be closed once a run has shown the corrective action to work.</p>
      )}
    </section>
  );
}
