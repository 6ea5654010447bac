/** The runs that were made from a card, newest first, each with the way to it. */
import { dateAndTime } from '../../controls/moment.ts';
import { PageLink } from '../../controls/page-link.tsx';
import { runStanding } from '../../controls/run-standing.ts';
import { useRecords } from '../../store/context.ts';

export function RunsOfCard({ id }: { id: string }) {
  const runs = useRecords('run');
  const revisions = useRecords('revision');
  const rows = Object.entries(runs)
    .filter(([, run]) => run.card === id)
    .sort(([, a], [, b]) => b.number - a.number);
  if (rows.length === 0) return null;
  return (
    <>
      <h3>Runs of this card</h3>
      <ul className="plain">
        {rows.map(([runId, run]) => (
          <li key={runId}>
            <PageLink to={{ page: 'runs', record: runId }}>Run {run.number}</PageLink>{' '}
            {dateAndTime(run.startedAt)}, {runStanding(run, revisions[run.revision])}
          </li>
        ))}
      </ul>
    </>
  );
}
