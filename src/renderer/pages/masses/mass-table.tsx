/** One row a part; the row that is opened shows its role, its body and its note. */
import { Fragment, useState } from 'react';
import { partFields, partFieldsOf } from '../../../margins/index.ts';
import {
  type Basis,
  isKnown,
  type Json,
  type Part,
  type QuantityField,
  set,
  valueAt,
} from '../../../notebook/index.ts';
import { RecordQuantity } from '../../controls/record-quantity.tsx';
import { TextCell } from '../../controls/text-cell.tsx';
import { useChosen, useNotebook } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';
import { PartDetails } from './part-details.tsx';

const bases: readonly Basis[] = ['estimated', 'calculated', 'measured', 'data sheet'];
const headings: Readonly<Record<string, string>> = { mass: 'Mass', x: 'Forward', y: 'Left', z: 'Height' };

export function MassTable({ disabled }: { disabled: boolean }) {
  const chosen = useChosen();
  const [open, setOpen] = useState<string>();
  if (!chosen) return null;
  const parts = Object.entries(chosen.revision.parts).sort(([, a], [, b]) => a.order - b.order);
  return (
    <table className="data mass-table">
      <thead>
        <tr>
          <th>Part</th>
          {partFields.map((field) => (
            <th key={field.key}>{headings[field.key]}</th>
          ))}
          <th>Known as</th>
          <th>
            <span className="visually-hidden">Details</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {parts.map(([id, part]) => (
          <Fragment key={id}>
            <PartRow
              revision={chosen.id}
              id={id}
              part={part}
              disabled={disabled}
              open={open === id}
              onToggle={() => setOpen(open === id ? undefined : id)}
            />
            {open === id && (
              <tr>
                <td colSpan={partFields.length + 3}>
                  <PartDetails revision={chosen.id} id={id} part={part} disabled={disabled} />
                </td>
              </tr>
            )}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}

function PartRow({
  revision,
  id,
  part,
  disabled,
  open,
  onToggle,
}: {
  revision: string;
  id: string;
  part: Part;
  disabled: boolean;
  open: boolean;
  onToggle: () => void;
}) {
  const store = useNotebook();
  const fields = partFieldsOf(part);
  const basis = basisOf(part);

  /** How the row is known goes with each of its figures. */
  function changeBasis(next: Basis) {
    const settings: Record<string, Json> = {};
    for (const field of partFields) {
      const stored = valueAt(part as Json, field.key) as QuantityField | undefined;
      if (isKnown(stored)) settings[`parts/${id}/${field.key}/basis`] = next;
    }
    if (Object.keys(settings).length > 0) store.change([set('revision', revision, settings)]);
  }

  return (
    <tr>
      <td>
        <TextCell
          label="Name of the part"
          value={part.name}
          disabled={disabled}
          onCommit={(name) => recordValue(store, 'revision', revision, `parts/${id}/name`, name)}
        />
        {part.role !== 'structure' && <span className="quiet small">{part.role}</span>}
      </td>
      {partFields.map((field) => (
        <td key={field.key}>
          {fields.includes(field) ? (
            <RecordQuantity
              kind="revision"
              id={revision}
              path={`parts/${id}/${field.key}`}
              field={field}
              label={`${part.name}: ${field.title}`}
              compact
              basis={basis}
              disabled={disabled}
            />
          ) : (
            <span className="quiet small">by its drive</span>
          )}
        </td>
      ))}
      <td>
        <select
          aria-label={`${part.name}: how its figures are known`}
          value={basis}
          disabled={disabled}
          onChange={(event) => changeBasis(bases.find((each) => each === event.target.value) ?? basis)}
        >
          {bases.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </td>
      <td>
        <button type="button" className="plain-button" aria-expanded={open} onClick={onToggle}>
          {open ? 'Close' : 'Body'}
        </button>
      </td>
    </tr>
  );
}

function basisOf(part: Part): Basis {
  return isKnown(part.mass) ? part.mass.basis : 'measured';
}
