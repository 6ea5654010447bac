/** What came of a run: measured beside predicted, the checklist as signed, and what follows from it. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { outcomeOf, standing } from '../../../checklist/index.ts';
import {
  create,
  type Json,
  type KnownQuantity,
  type Run,
  set,
  type TestCard,
} from '../../../notebook/index.ts';
import { formatValue, type Problem, phrase } from '../../../quantity/index.ts';
import { QuantityInput } from '../../controls/quantity-input.tsx';
import { TextArea } from '../../controls/text-area.tsx';
import { ReportButton } from '../../report-button.tsx';
import { useNotebook, usePlace, useRecord, useRecords, useSurface, useView } from '../../store/context.ts';
import { nextNumber } from '../../store/next-number.ts';
import { newId, now } from '../../store/record-id.ts';
import { recordValue } from '../../store/record-value.ts';
import { SignedChecklist } from './signed-checklist.tsx';

export function RunSheet({ id, onContinue }: { id: string; onContinue: (() => void) | undefined }) {
  const store = useNotebook();
  const { go } = usePlace();
  const { settings } = useSurface();
  const run = useRecord('run', id);
  const card = useRecord('card', run?.card);
  const revision = useRecord('revision', run?.revision);
  const failures = useRecords('failure');
  const readOnly = useView((view) => view.readOnly);
  const [problem, setProblem] = useState<Problem>();
  if (!run || !card || !revision) return null;
  const status = standing(run, revision);
  const ended = run.status === 'finished' || run.status === 'aborted';
  const signed = run.signedAt !== undefined;

  function reportFailure() {
    if (!run || !card) return;
    const failure = newId('failure');
    const made = store.change([
      create('failure', failure, {
        prototype: run.prototype,
        revision: run.revision,
        run: id,
        number: nextNumber(failures),
        at: now(),
        author: settings.author,
        title: `${card.title}: what broke`,
        severity: 'III',
        probability: 'C',
      }),
    ]);
    if (made.ok) go({ page: 'failures', record: failure });
    else setProblem(made.problem);
  }

  return (
    <section className="run-sheet" aria-label={`Run ${run.number}`}>
      <h2>
        Run {run.number}: {card.title}, revision {revision.letter}
      </h2>
      <p>
        Started {run.startedAt.slice(0, 16).replace('T', ' ')} by {run.startedBy}.{' '}
        {run.clearedAt && `Cleared ${run.clearedAt.slice(11, 16)} by ${run.clearedBy}. `}
        {status === 'finished' || status === 'aborted' ? `Ended: ${run.outcome}.` : `Now: ${status}.`}
      </p>
      {onContinue && status !== 'void' && (
        <Button className="button primary" onPress={onContinue}>
          Back to the checklist
        </Button>
      )}
      {(ended || run.status === 'cleared') && (
        <Readings id={id} run={run} card={card} disabled={readOnly || signed} />
      )}
      <TextArea
        label="What happened"
        value={run.summary}
        rows={4}
        disabled={readOnly || signed}
        onCommit={(text) => recordValue(store, 'run', id, 'summary', text)}
      />
      {Object.values(run.notes).length > 0 && (
        <ul className="plain">
          {Object.entries(run.notes).map(([noteId, note]) => (
            <li key={noteId}>
              <span className="number quiet">{note.at.slice(11, 19)}</span> {note.text}{' '}
              <span className="quiet">{note.author}</span>
            </li>
          ))}
        </ul>
      )}
      {problem && (
        <p className="problem" role="alert">
          {phrase(problem).reason} {phrase(problem).remedy}
        </p>
      )}
      <div className="run-actions">
        <Button className="button" isDisabled={readOnly} onPress={reportFailure}>
          Report a failure
        </Button>
        {ended && !signed && (
          <Button
            className="button"
            isDisabled={readOnly || settings.author.trim() === ''}
            onPress={() => store.change([set('run', id, { signedBy: settings.author, signedAt: now() })])}
          >
            Sign the run{settings.author ? ` as ${settings.author}` : ''}
          </Button>
        )}
        <ReportButton subject={{ kind: 'run', id }} />
      </div>
      {signed && (
        <p>
          Signed {run.signedAt?.slice(0, 16).replace('T', ' ')} by {run.signedBy}.
        </p>
      )}
      <SignedChecklist run={run} />
    </section>
  );
}

function Readings({ id, run, card, disabled }: { id: string; run: Run; card: TestCard; disabled: boolean }) {
  const store = useNotebook();
  return (
    <>
      <h3>Measured beside predicted</h3>
      <table className="data">
        <thead>
          <tr>
            <th>Reading</th>
            <th>Predicted</th>
            <th>Measured</th>
            <th>Held against each other</th>
          </tr>
        </thead>
        <tbody>
          {outcomeOf(card, run).map((comparison) => {
            const path = `readings/${comparison.reading}`;
            return (
              <tr key={comparison.reading}>
                <td>{comparison.label}</td>
                <td className="number">
                  {comparison.predicted
                    ? formatValue(
                        comparison.predicted.value,
                        comparison.predicted.unit,
                        comparison.predicted.u,
                      )
                    : '–'}
                </td>
                <td>
                  <QuantityInput
                    compact
                    label={comparison.label}
                    value={comparison.measured}
                    display={comparison.unit}
                    basis="measured"
                    disabled={disabled}
                    onPreview={() => undefined}
                    onCommit={(field) => {
                      const reading = field && 'si' in field ? (field as KnownQuantity) : undefined;
                      recordValue(store, 'run', id, path, reading as Json | undefined);
                    }}
                  />
                </td>
                <td>{comparison.words}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}
