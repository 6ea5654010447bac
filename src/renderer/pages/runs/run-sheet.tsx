/** What came of a run: measured beside predicted, the checklist as signed, and what follows from it. */

import { Button } from 'react-aria-components';
import { standing } from '../../../checklist/index.ts';
import type { Run } from '../../../notebook/index.ts';
import { dateAndTime, timeOfDay } from '../../controls/moment.ts';
import { PageLink } from '../../controls/page-link.tsx';
import { useBroughtIntoView } from '../../controls/record-toggle.tsx';
import { runStanding } from '../../controls/run-standing.ts';
import { TextArea } from '../../controls/text-area.tsx';
import { useNotebook, useRecord, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';
import { FailuresOfRun } from './failures-of-run.tsx';
import { RunActions } from './run-actions.tsx';
import { RunReadings } from './run-readings.tsx';
import { SignedChecklist } from './signed-checklist.tsx';

export function RunSheet({ id, onContinue }: { id: string; onContinue: (() => void) | undefined }) {
  const store = useNotebook();
  const run = useRecord('run', id);
  const card = useRecord('card', run?.card);
  const revision = useRecord('revision', run?.revision);
  const readOnly = useView((view) => view.readOnly);
  const frame = useBroughtIntoView<HTMLElement>();
  if (!run || !card || !revision) return null;
  const status = standing(run, revision);
  const ended = run.status === 'finished' || run.status === 'aborted';
  const locked = readOnly || run.signedAt !== undefined;

  return (
    <section className="run-sheet" aria-label={`Run ${run.number}`} ref={frame}>
      <h2>
        Run {run.number}: {card.title}, revision {revision.letter}
      </h2>
      <p>
        Started {dateAndTime(run.startedAt)} by {run.startedBy}.{' '}
        {run.clearedAt && `Cleared ${timeOfDay(run.clearedAt)} by ${run.clearedBy}. `}
        {ended ? `Ended: ${run.outcome}.` : `Now: ${runStanding(run, revision)}.`}
      </p>
      <p>
        <PageLink to={{ revision: run.revision, page: 'cards', record: run.card }}>
          Test card {card.number}
        </PageLink>
      </p>
      {onContinue && status !== 'void' && (
        <p>
          <Button className="button primary" onPress={onContinue}>
            Back to the checklist
          </Button>
        </p>
      )}
      {(ended || run.status === 'cleared') && <RunReadings id={id} run={run} card={card} disabled={locked} />}
      <TextArea
        label="What happened"
        value={run.summary}
        rows={4}
        disabled={locked}
        onCommit={(text) => recordValue(store, 'run', id, 'summary', text)}
      />
      <Notes run={run} />
      <FailuresOfRun id={id} />
      <RunActions id={id} run={run} card={card} />
      {run.signedAt && (
        <p>
          Signed {dateAndTime(run.signedAt)} by {run.signedBy}.
        </p>
      )}
      <SignedChecklist run={run} />
    </section>
  );
}

function Notes({ run }: { run: Run }) {
  const notes = Object.entries(run.notes);
  if (notes.length === 0) return null;
  return (
    <ul className="plain">
      {notes.map(([id, note]) => (
        <li key={id}>
          <span className="number quiet">{note.at.slice(11, 19)}</span> {note.text}{' '}
          <span className="quiet">{note.author}</span>
        </li>
      ))}
    </ul>
  );
}
