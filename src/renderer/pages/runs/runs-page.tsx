/** The runs of a prototype, and the one that is open: its checklist full screen, or what came of it. */
import { useState } from 'react';
import { nextItem } from '../../../checklist/index.ts';
import type { Run } from '../../../notebook/index.ts';
import { dateAndTime } from '../../controls/moment.ts';
import { PageLink } from '../../controls/page-link.tsx';
import { RecordToggle } from '../../controls/record-toggle.tsx';
import { runStanding } from '../../controls/run-standing.ts';
import { useChosenPiece, usePlace, useRecords } from '../../store/context.ts';
import { ChecklistScreen } from './checklist/checklist-screen.tsx';
import { RunSheet } from './run-sheet.tsx';

export function RunsPage() {
  const prototype = useChosenPiece((chosen) => chosen.prototypeId);
  const { place } = usePlace();
  const runs = useRecords('run');
  const [left, setLeft] = useState<string>();
  const rows = Object.entries(runs)
    .filter(([, run]) => run.prototype === prototype)
    .sort(([, a], [, b]) => b.number - a.number);
  const { record } = place;
  const open = record === undefined ? undefined : runs[record];
  const underWay = open !== undefined && isUnderWay(open);

  return (
    <>
      {rows.length === 0 ? (
        <p className="empty">
          No run yet. A run is started from an issued test card: go to{' '}
          <PageLink to={{ page: 'cards' }}>Test cards</PageLink>, make one, issue it, and start a run from it.
        </p>
      ) : (
        <section>
          <h2>Runs</h2>
          <RunTable rows={rows} />
        </section>
      )}
      {record !== undefined && underWay && left !== record && (
        <ChecklistScreen key={`checklist of ${record}`} id={record} onLeave={() => setLeft(record)} />
      )}
      {record !== undefined && open && (
        <RunSheet
          key={`sheet of ${record}`}
          id={record}
          onContinue={underWay && left === record ? () => setLeft(undefined) : undefined}
        />
      )}
    </>
  );
}

/** After a run was broken off the vehicle still has to be made safe. */
function isUnderWay(run: Run): boolean {
  if (run.signedAt !== undefined) return false;
  return run.status === 'checklist' || run.status === 'cleared' || nextItem(run) !== undefined;
}

function RunTable({ rows }: { rows: readonly (readonly [string, Run])[] }) {
  const cards = useRecords('card');
  const revisions = useRecords('revision');
  const { place } = usePlace();
  return (
    <table className="data">
      <thead>
        <tr>
          <th scope="col" className="number">
            No.
          </th>
          <th scope="col">Revision</th>
          <th scope="col">Test</th>
          <th scope="col">Started</th>
          <th scope="col">Status</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([id, run]) => (
          <tr key={id} data-open={place.record === id || undefined}>
            <td className="number">{run.number}</td>
            <td>{revisions[run.revision]?.letter}</td>
            <td>
              <RecordToggle id={id} title={cards[run.card]?.title ?? 'Test'} />
            </td>
            <td className="moment">{dateAndTime(run.startedAt)}</td>
            <td>{runStanding(run, revisions[run.revision])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
