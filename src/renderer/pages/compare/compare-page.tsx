/** What changed from one revision to this one, in input and in margin. */
import { useState } from 'react';
import { compareRevisions, type Figure, type Margin } from '../../../margins/index.ts';
import { formatUncertain } from '../../../quantity/index.ts';
import { Choice } from '../../controls/choice.tsx';
import { TextArea } from '../../controls/text-area.tsx';
import { useChosen, useNotebook, useRecords, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

export function ComparePage() {
  const chosen = useChosen();
  const store = useNotebook();
  const revisions = useRecords('revision');
  const readOnly = useView((view) => view.readOnly);
  const [against, setAgainst] = useState(chosen?.revision.from ?? '');
  if (!chosen) return null;
  const { id, revision, prototype } = chosen;
  const others = Object.entries(revisions).filter(
    ([other, each]) => other !== id && each.prototype === chosen.prototypeId,
  );
  const before = revisions[against];

  return (
    <>
      <section>
        <TextArea
          label={`Why revision ${revision.letter} was made`}
          value={revision.reason}
          disabled={readOnly || revision.status === 'issued'}
          onCommit={(text) => recordValue(store, 'revision', id, 'reason', text)}
        />
        <Choice
          label={`revision ${revision.letter} against revision`}
          value={against}
          choices={['', ...others.map(([other]) => other)]}
          names={{
            '': 'choose one',
            ...Object.fromEntries(others.map(([other, { letter }]) => [other, letter])),
          }}
          disabled={others.length === 0}
          onChoose={setAgainst}
        />
        {others.length === 0 && (
          <p className="empty">
            There is no other revision of this prototype yet. “New revision from this one” makes the next,
            with everything that is entered here; what is changed there is then set beside it.
          </p>
        )}
      </section>
      {before && (
        <Differences
          {...compareRevisions(prototype, before, revision)}
          from={before.letter}
          to={revision.letter}
        />
      )}
    </>
  );
}

function Differences({
  inputs,
  figures,
  margins,
  from,
  to,
}: ReturnType<typeof compareRevisions> & { from: string; to: string }) {
  if (inputs.length === 0)
    return (
      <p>
        Nothing is different yet: every input of {to} is as in {from}.
      </p>
    );
  return (
    <>
      <section>
        <h2>Margins</h2>
        {margins.length === 0 && <p>No margin moved.</p>}
        {margins.length > 0 && (
          <ChangeTable
            from={from}
            to={to}
            rows={margins.map((change) => ({
              id: change.id,
              label: change.title,
              before: marginText(change.before),
              after: marginText(change.after),
              mark: change.turned,
            }))}
          />
        )}
      </section>
      <section>
        <h2>Inputs</h2>
        <ChangeTable
          from={from}
          to={to}
          rows={inputs.map((change) => ({
            id: change.path,
            label: change.label,
            before: change.before ?? 'blank',
            after: change.after ?? 'blank',
            mark: false,
          }))}
        />
      </section>
      <section>
        <h2>Figures</h2>
        <ChangeTable
          from={from}
          to={to}
          rows={figures.map((change) => ({
            id: change.name,
            label: change.after?.title ?? change.before?.title ?? change.name,
            before: figureText(change.before),
            after: figureText(change.after),
            mark: false,
          }))}
        />
      </section>
    </>
  );
}

interface ChangeRow {
  readonly id: string;
  readonly label: string;
  readonly before: string;
  readonly after: string;
  /** The verdict turned. */
  readonly mark: boolean;
}

function ChangeTable({ from, to, rows }: { from: string; to: string; rows: readonly ChangeRow[] }) {
  return (
    <table className="data change-table">
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Revision {from}</th>
          <th scope="col">Revision {to}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.id}>
            <td className="capital">{row.label}</td>
            <td>{row.before}</td>
            <td>{row.mark ? <strong>{row.after}</strong> : row.after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function marginText(margin: Margin | undefined): string {
  if (!margin) return 'does not apply';
  if (margin.verdict === 'unknown') return 'unknown';
  return `${margin.verdict}, MS ${formatUncertain(margin.marginOfSafety, '1')}`;
}

function figureText(figure: Figure | undefined): string {
  if (!figure) return 'does not apply';
  return figure.result.ok ? formatUncertain(figure.result.value, figure.display) : 'unknown';
}
