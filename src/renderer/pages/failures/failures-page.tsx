/** What broke on this prototype, newest first, and the report that is open. */
import { Button } from 'react-aria-components';
import { riskOf } from '../../../checklist/index.ts';
import { create } from '../../../notebook/index.ts';
import { useChosen, useNotebook, usePlace, useRecords, useSurface, useView } from '../../store/context.ts';
import { nextNumber } from '../../store/next-number.ts';
import { newId, now } from '../../store/record-id.ts';
import { FailureForm } from './failure-form.tsx';

export function FailuresPage() {
  const chosen = useChosen();
  const store = useNotebook();
  const { place, go } = usePlace();
  const { settings } = useSurface();
  const failures = useRecords('failure');
  const revisions = useRecords('revision');
  const readOnly = useView((view) => view.readOnly);
  if (!chosen) return null;
  const rows = Object.entries(failures)
    .filter(([, failure]) => failure.prototype === chosen.prototypeId)
    .sort(([, a], [, b]) => b.number - a.number);
  const open = rows.filter(([, failure]) => failure.status !== 'closed');

  function report() {
    const id = newId('failure');
    const made = store.change([
      create('failure', id, {
        prototype: chosen?.prototypeId ?? '',
        revision: chosen?.id ?? '',
        number: nextNumber(failures),
        at: now(),
        author: settings.author,
        title: 'What broke',
        severity: 'III',
        probability: 'C',
      }),
    ]);
    if (made.ok) go({ page: 'failures', record: id });
  }

  return (
    <>
      <section>
        <h2>What follows</h2>
        <p>
          {rows.length === 0
            ? 'Nothing is reported on this prototype.'
            : `${rows.length} reported, ${open.length} not closed.`}{' '}
          A report is closed when a run has shown its corrective action to work.
        </p>
        <p>
          <Button className="button" isDisabled={readOnly} onPress={report}>
            Report a failure
          </Button>
        </p>
      </section>
      {rows.length > 0 && (
        <section>
          <h2>Reports</h2>
          <table className="data">
            <thead>
              <tr>
                <th>No.</th>
                <th>Revision</th>
                <th>What broke</th>
                <th>Risk</th>
                <th>Status</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(([id, failure]) => (
                <tr key={id}>
                  <td className="number">{failure.number}</td>
                  <td>{revisions[failure.revision]?.letter}</td>
                  <td>
                    <button
                      type="button"
                      className="plain-button"
                      aria-expanded={place.record === id}
                      onClick={() => go({ record: place.record === id ? undefined : id })}
                    >
                      {failure.title}
                    </button>
                  </td>
                  <td>
                    {failure.severity}
                    {failure.probability}, {riskOf(failure.severity, failure.probability).toLowerCase()}
                  </td>
                  <td>{failure.status}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {place.record && failures[place.record] && <FailureForm key={place.record} id={place.record} />}
    </>
  );
}
