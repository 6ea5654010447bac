/** The sections of the rotor, from one end of the axis to the other. */
import { Button } from 'react-aria-components';
import { sectionFields } from '../../../margins/index.ts';
import { set } from '../../../notebook/index.ts';
import { BasisChoice, basisOf } from '../../controls/basis-choice.tsx';
import { RecordQuantity } from '../../controls/record-quantity.tsx';
import { TextCell } from '../../controls/text-cell.tsx';
import { useChosenPiece, useLocked, useNotebook } from '../../store/context.ts';
import { newId } from '../../store/record-id.ts';
import { recordValue } from '../../store/record-value.ts';

const keys = sectionFields.map(({ key }) => key);

export function SectionTable() {
  const store = useNotebook();
  const revision = useChosenPiece((chosen) => chosen.id);
  const rotorSections = useChosenPiece((chosen) => chosen.revision.rotor?.sections);
  const disabled = useLocked();
  if (revision === undefined) return null;
  const sections = Object.entries(rotorSections ?? {}).sort(([, a], [, b]) => a.order - b.order);

  function add() {
    const order = Math.max(0, ...sections.map(([, section]) => section.order)) + 1;
    const path = `rotor/sections/${newId('section')}`;
    store.change([
      set('revision', revision ?? '', { [path]: { name: order === 1 ? 'rim' : `section ${order}`, order } }),
    ]);
  }

  return (
    <>
      {sections.length > 0 && (
        <table className="data section-table">
          <caption className="visually-hidden">Sections of the rotor</caption>
          <thead>
            <tr>
              <th scope="col">Section</th>
              {sectionFields.map((field) => (
                <th scope="col" key={field.key}>
                  {field.title}
                </th>
              ))}
              <th scope="col">Known as</th>
              <th scope="col">
                <span className="visually-hidden">Take out</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {sections.map(([id, section]) => (
              <tr key={id}>
                <td>
                  <TextCell
                    label="Name of the section"
                    value={section.name}
                    disabled={disabled}
                    onCommit={(name) =>
                      recordValue(store, 'revision', revision, `rotor/sections/${id}/name`, name)
                    }
                  />
                </td>
                {sectionFields.map((field) => (
                  <td key={field.key}>
                    <RecordQuantity
                      kind="revision"
                      id={revision}
                      path={`rotor/sections/${id}/${field.key}`}
                      field={field}
                      label={`${section.name}: ${field.title}`}
                      compact
                      basis={basisOf(section, keys)}
                      disabled={disabled}
                    />
                  </td>
                ))}
                <td>
                  <BasisChoice
                    revision={revision}
                    path={`rotor/sections/${id}`}
                    row={section}
                    keys={keys}
                    locked={disabled}
                  />
                </td>
                <td>
                  <Button
                    className="plain-button"
                    isDisabled={disabled}
                    onPress={() =>
                      store.change([
                        {
                          op: 'set',
                          kind: 'revision',
                          id: revision,
                          set: [{ path: `rotor/sections/${id}` }],
                        },
                      ])
                    }
                  >
                    Take out
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p>
        <Button className="button" isDisabled={disabled} onPress={add}>
          Add a disc or annulus
        </Button>
      </p>
    </>
  );
}
