/** The runs of a prototype, and the one that is open: its checklist full screen, or what came of it. */
import { useState } from 'react';
import { nextItem, standing } from '../../../checklist/index.ts';
import { useChosen, usePlace, useRecords } from '../../store/context.ts';
import { ChecklistScreen } from './checklist-screen.tsx';
import { RunSheet } from './run-sheet.tsx';

export function RunsPage() {
  const chosen = useChosen();
  const { place, go } = usePlace();
  const runs = useRecords('run');
  const cards = useRecords('card');
  const revisions = useRecords('revision');
  const [left, setLeft] = useState<string>();
  if (!chosen) return null;
  const rows = Object.entries(runs)
    .filter(([, run]) => run.prototype === chosen.prototypeId)
    .sort(([, a], [, b]) => b.number - a.number);
  const open = place.record === undefined ? undefined : runs[place.record];
  // After a run was broken off the vehicle still has to be made safe.
  const underWay =
    open &&
    open.signedAt === undefined &&
    (open.status === 'checklist' || open.status === 'cleared' || nextItem(open) !== undefined);

  return (
    <>
      {rows.length === 0 && <p>No run yet. Make a test card, issue it, and start a run from it.</p>}
      {rows.length > 0 && (
        <section>
          <h2>Runs</h2>
          <table className="data">
            <thead>
              <tr>
                <th>No.</th>
                <th>Revision</th>
                <th>Test</th>
                <th>Started</th>
                <th>Status</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(([id, run]) => {
                const revision = revisions[run.revision];
                const status = revision ? standing(run, revision) : run.status;
                return (
                  <tr key={id}>
                    <td className="number">{run.number}</td>
                    <td>{revision?.letter}</td>
                    <td>
                      <button
                        type="button"
                        className="plain-button"
                        aria-expanded={place.record === id}
                        onClick={() => {
                          setLeft(undefined);
                          go({ record: place.record === id ? undefined : id });
                        }}
                      >
                        {cards[run.card]?.title}
                      </button>
                    </td>
                    <td className="number">{run.startedAt.slice(0, 16).replace('T', ' ')}</td>
                    <td>{status === 'finished' ? run.outcome : status}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </section>
      )}
      {place.record && open && underWay && left !== place.record && (
        <ChecklistScreen id={place.record} onLeave={() => setLeft(place.record)} />
      )}
      {place.record && open && (
        <RunSheet
          key={place.record}
          id={place.record}
          onContinue={underWay && left === place.record ? () => setLeft(undefined) : undefined}
        />
      )}
    </>
  );
}
