/** One row a part; the row that is opened shows its role, its body and its note. */
import { memo, useCallback, useState } from 'react';
import { shallow } from 'zustand/shallow';
import { type FieldSpec, partFields, partFieldsOf } from '../../../margins/index.ts';
import type { Basis, Part } from '../../../notebook/index.ts';
import { BasisChoice, basisOf } from '../../controls/basis-choice.tsx';
import { RecordQuantity } from '../../controls/record-quantity.tsx';
import { TextCell } from '../../controls/text-cell.tsx';
import { useChosenPiece, useNotebook } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';
import { PartDetails } from './part-details.tsx';

const headings: Readonly<Record<string, string>> = { mass: 'Mass', x: 'Forward', y: 'Left', z: 'Height' };

export function MassTable({ locked }: { locked: boolean }) {
  const revision = useChosenPiece((chosen) => chosen.id);
  const ids = useChosenPiece((chosen) => inOrder(chosen.revision.parts), shallow);
  const [open, setOpen] = useState<string>();
  const toggle = useCallback((id: string) => setOpen((before) => (before === id ? undefined : id)), []);
  if (revision === undefined || !ids) return null;
  return (
    <div className="table-frame">
      <table className="data mass-table">
        <caption className="visually-hidden">Parts, with mass and place</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            {partFields.map((field) => (
              <th scope="col" key={field.key}>
                {headings[field.key]}
              </th>
            ))}
            <th scope="col">Known as</th>
            <th scope="col">Role, body</th>
          </tr>
        </thead>
        <tbody>
          {ids.map((id) => (
            <PartRows
              key={id}
              revision={revision}
              id={id}
              locked={locked}
              open={open === id}
              onToggle={toggle}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}

const keys = partFields.map(({ key }) => key);

interface PartRowProps {
  readonly revision: string;
  readonly id: string;
  readonly locked: boolean;
  readonly open: boolean;
  readonly onToggle: (id: string) => void;
}

/** The row of a part, and below it its details while it is open. */
const PartRows = memo(function PartRows({ revision, id, locked, open, onToggle }: PartRowProps) {
  const store = useNotebook();
  const part = useChosenPiece((chosen) => chosen.revision.parts[id]);
  if (!part) return null;
  const fields = partFieldsOf(part);
  const basis = basisOf(part, keys);
  return (
    <>
      <tr data-open={open || undefined}>
        <td>
          <TextCell
            label="Name of the part"
            value={part.name}
            disabled={locked}
            onCommit={(name) => recordValue(store, 'revision', revision, `parts/${id}/name`, name)}
          />
        </td>
        {partFields.map((field) => (
          <PartCell
            key={field.key}
            revision={revision}
            id={id}
            field={fields.includes(field) ? field : undefined}
            name={part.name}
            basis={basis}
            locked={locked}
          />
        ))}
        <td>
          <BasisChoice revision={revision} path={`parts/${id}`} row={part} keys={keys} locked={locked} />
        </td>
        <td>
          <button
            type="button"
            className="plain-button role-button"
            aria-expanded={open}
            aria-label={`${part.name}: role and body, ${part.role}`}
            onClick={() => onToggle(id)}
          >
            {part.role}
          </button>
        </td>
      </tr>
      {open && (
        <tr>
          <td colSpan={partFields.length + 3}>
            <PartDetails revision={revision} id={id} part={part} disabled={locked} />
          </td>
        </tr>
      )}
    </>
  );
});

/** One figure of a part; a field that the part does not have says where its figure comes from instead. */
function PartCell({
  revision,
  id,
  field,
  name,
  basis,
  locked,
}: {
  revision: string;
  id: string;
  field: FieldSpec | undefined;
  name: string;
  basis: Basis;
  locked: boolean;
}) {
  if (!field) {
    return (
      <td>
        <span className="quiet small">by its drive</span>
      </td>
    );
  }
  return (
    <td>
      <RecordQuantity
        kind="revision"
        id={revision}
        path={`parts/${id}/${field.key}`}
        field={field}
        label={`${name}: ${field.title}`}
        compact
        basis={basis}
        disabled={locked}
      />
    </td>
  );
}

function inOrder(parts: Readonly<Record<string, Part>>): readonly string[] {
  return Object.entries(parts)
    .sort(([, a], [, b]) => a.order - b.order)
    .map(([id]) => id);
}
