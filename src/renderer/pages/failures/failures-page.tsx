/** What broke on this prototype, newest first, and the report that is open. */
import { Button } from 'react-aria-components';
import { riskOf } from '../../../checklist/index.ts';
import { create, type FailureReport } from '../../../notebook/index.ts';
import { RecordToggle } from '../../controls/record-toggle.tsx';
import {
  useChosenPiece,
  useNotebook,
  usePlace,
  useRecords,
  useSurface,
  useView,
} from '../../store/context.ts';
import { nextNumber } from '../../store/next-number.ts';
import { newId, now } from '../../store/record-id.ts';
import { FailureForm } from './failure-form.tsx';

export function FailuresPage() {
  const prototype = useChosenPiece((chosen) => chosen.prototypeId);
  const revision = useChosenPiece((chosen) => chosen.id);
  const store = useNotebook();
  const { place, go } = usePlace();
  const { settings } = useSurface();
  const failures = useRecords('failure');
  const readOnly = useView((view) => view.readOnly);
  if (prototype === undefined || revision === undefined) return null;
  const rows = Object.entries(failures)
    .filter(([, failure]) => failure.prototype === prototype)
    .sort(([, a], [, b]) => b.number - a.number);
  const open = rows.filter(([, failure]) => failure.status !== 'closed');

  function report() {
    const id = newId('failure');
    const made = store.change([
      create('failure', id, {
        prototype: prototype ?? '',
        revision: revision ?? '',
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
            ? 'Nothing is reported on this prototype. Report what broke while it lies in front of you: what was seen, why it broke, what is done about it.'
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
          <FailureTable rows={rows} />
        </section>
      )}
      {place.record && failures[place.record] && <FailureForm key={place.record} id={place.record} />}
    </>
  );
}

function FailureTable({ rows }: { rows: readonly (readonly [string, FailureReport])[] }) {
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
          <th scope="col">What broke</th>
          <th scope="col">Risk</th>
          <th scope="col">Status</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([id, failure]) => (
          <tr key={id} data-open={place.record === id || undefined}>
            <td className="number">{failure.number}</td>
            <td>{revisions[failure.revision]?.letter}</td>
            <td>
              <RecordToggle id={id} title={failure.title || 'untitled'} />
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
  );
}
