/** One failure report: what was seen, what it did, why, and what was done about it. */
import type { ReactNode } from 'react';
import type { FailureReport } from '../../../notebook/index.ts';
import { PageLink } from '../../controls/page-link.tsx';
import { useBroughtIntoView } from '../../controls/record-toggle.tsx';
import { TextArea } from '../../controls/text-area.tsx';
import { useNotebook, useRecord, useRecords, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';
import { CauseChain } from './cause-chain.tsx';
import type { FieldProps } from './field-props.ts';
import { PartChoice, ProbabilityChoice, RiskLine, SeverityChoice } from './how-bad.tsx';
import { CorrectedInChoice, StatusChoice, VerifiedByChoice } from './what-is-done.tsx';

export function FailureForm({ id }: { id: string }) {
  const store = useNotebook();
  const failure = useRecord('failure', id);
  const disabled = useView((view) => view.readOnly);
  const frame = useBroughtIntoView<HTMLElement>();
  if (!failure) return null;
  const field: FieldProps = {
    failure,
    disabled,
    record: (path) => (value) => recordValue(store, 'failure', id, path, value === '' ? undefined : value),
  };
  const text = (path: 'observed' | 'moment' | 'effect' | 'evidence' | 'correctiveAction', label: string) => (
    <TextArea
      label={label}
      value={failure[path]}
      disabled={disabled}
      onCommit={(value) => recordValue(store, 'failure', id, path, value)}
    />
  );

  return (
    <section className="failure-form" aria-label={`Failure report ${failure.number}`} ref={frame}>
      <h2>Report {failure.number}</h2>
      <WhereItBroke failure={failure} />
      <TextArea
        single
        label="What broke, in a line"
        value={failure.title}
        disabled={disabled}
        onCommit={(title) => recordValue(store, 'failure', id, 'title', title)}
      />
      <PartChoice {...field} />
      {text('observed', 'What was seen, heard, smelled')}
      {text('moment', 'When in the run')}
      {text('effect', 'What it did: to people, to the vehicle, to the test')}
      <Group title="How bad">
        <SeverityChoice {...field} />
        <ProbabilityChoice {...field} />
        <RiskLine failure={failure} />
      </Group>
      {text('evidence', 'Evidence: marks, data, parts kept')}
      <CauseChain id={id} causes={failure.causes} disabled={disabled} />
      <Group title="What is done about it">
        {text('correctiveAction', 'Corrective action')}
        <CorrectedInChoice {...field} />
        <VerifiedByChoice {...field} />
        <StatusChoice {...field} />
      </Group>
    </section>
  );
}

function Group({ title, children }: { title: string; children: ReactNode }) {
  return (
    <fieldset className="form-group">
      <legend>{title}</legend>
      {children}
    </fieldset>
  );
}

function WhereItBroke({ failure }: { failure: FailureReport }) {
  const revision = useRecord('revision', failure.revision);
  const runs = useRecords('run');
  const run = failure.run === undefined ? undefined : runs[failure.run];
  return (
    <p>
      On revision {revision?.letter}
      {run ? (
        <>
          ,{' '}
          <PageLink to={{ revision: failure.revision, page: 'runs', record: failure.run }}>
            run {run.number}
          </PageLink>
        </>
      ) : (
        ', outside a run'
      )}
    </p>
  );
}
