/** What a part is for, the body that gives its own roll inertia, and a note. */
import { Button } from 'react-aria-components';
import { bodyFields } from '../../../margins/index.ts';
import { type Body, type Json, type Part, type PartRole, valueAt } from '../../../notebook/index.ts';
import { Choice } from '../../controls/choice.tsx';
import { RecordQuantity } from '../../controls/record-quantity.tsx';
import { TextArea } from '../../controls/text-area.tsx';
import { useNotebook } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

const roles: readonly PartRole[] = ['structure', 'rotor', 'ballast', 'pack'];
const shapes: readonly Body['shape'][] = ['point', 'box', 'cylinder', 'tube', 'rod', 'inertia as measured'];
const axes = { x: 'fore and aft', y: 'left and right', z: 'up and down' } as const;

export function PartDetails({
  revision,
  id,
  part,
  disabled,
}: {
  revision: string;
  id: string;
  part: Part;
  disabled: boolean;
}) {
  const store = useNotebook();
  const path = `parts/${id}`;
  const { body } = part;

  /** The dimensions that the new shape has too are kept. */
  function chooseShape(shape: Body['shape']) {
    const axis = 'axis' in body ? body.axis : 'x';
    const kept = Object.fromEntries(
      bodyFields[shape].flatMap(({ key }) => {
        const name = key.slice('body/'.length);
        const value = valueAt(body as Json, name);
        return value === undefined ? [] : [[name, value]];
      }),
    );
    const turned = shape === 'cylinder' || shape === 'tube' || shape === 'rod' ? { axis } : {};
    recordValue(store, 'revision', revision, `${path}/body`, { shape, ...turned, ...kept });
  }

  return (
    <div className="details">
      <Choice
        label="what it is in the sums"
        value={part.role}
        choices={roles}
        disabled={disabled}
        onChoose={(role) => recordValue(store, 'revision', revision, `${path}/role`, role)}
      />
      <Choice
        label="body about its own centre of gravity"
        value={body.shape}
        choices={shapes}
        disabled={disabled}
        onChoose={chooseShape}
      />
      {'axis' in body && (
        <Choice
          label="its axis lies"
          value={body.axis}
          choices={['x', 'y', 'z']}
          names={axes}
          disabled={disabled}
          onChoose={(axis) => recordValue(store, 'revision', revision, `${path}/body/axis`, axis)}
        />
      )}
      {bodyFields[body.shape].map((field) => (
        <RecordQuantity
          key={field.key}
          kind="revision"
          id={revision}
          path={`${path}/${field.key}`}
          field={field}
          disabled={disabled}
        />
      ))}
      <TextArea
        label="Note"
        value={part.note ?? ''}
        disabled={disabled}
        rows={2}
        onCommit={(note) =>
          recordValue(store, 'revision', revision, `${path}/note`, note === '' ? undefined : note)
        }
      />
      <Button
        className="plain-button"
        isDisabled={disabled}
        onPress={() => store.change([{ op: 'set', kind: 'revision', id: revision, set: [{ path }] }])}
      >
        Take this part out
      </Button>
    </div>
  );
}
