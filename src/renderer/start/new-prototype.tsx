/** A new prototype with its first revision, from within an open notebook. */
import { useState } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal } from 'react-aria-components';
import type { Prototype } from '../../notebook/index.ts';
import { type Problem, phrase } from '../../quantity/index.ts';
import { useNotebook, usePlace, useView } from '../store/context.ts';
import { makePrototype, prototypeKinds } from './make-prototype.ts';

export function NewPrototype() {
  const store = useNotebook();
  const { go } = usePlace();
  const readOnly = useView((view) => view.readOnly);
  const [name, setName] = useState('');
  const [kind, setKind] = useState<Prototype['kind']>('inline two-wheeler');
  const [problem, setProblem] = useState<Problem>();

  function make(close: () => void) {
    const made = makePrototype(store, name.trim(), kind);
    if (!made.ok) {
      setProblem(made.problem);
      return;
    }
    setName('');
    close();
    go({ revision: made.value, page: 'requirements' });
  }

  return (
    <DialogTrigger>
      <Button className="button" isDisabled={readOnly}>
        New prototype
      </Button>
      <Modal className="modal" isDismissable>
        <Dialog>
          {({ close }) => (
            <form
              className="dialog-form"
              onSubmit={(event) => {
                event.preventDefault();
                make(close);
              }}
            >
              <Heading slot="title">New prototype</Heading>
              <label>
                Name
                <input
                  className="text-input"
                  value={name}
                  onChange={(event) => setName(event.target.value)}
                />
              </label>
              <label>
                Kind
                <select
                  value={kind}
                  onChange={(event) =>
                    setKind(prototypeKinds.find((each) => each === event.target.value) ?? kind)
                  }
                >
                  {prototypeKinds.map((each) => (
                    <option key={each}>{each}</option>
                  ))}
                </select>
              </label>
              {problem && (
                <p className="problem" role="alert">
                  {phrase(problem).reason} {phrase(problem).remedy}
                </p>
              )}
              <div className="dialog-buttons">
                <Button className="button" onPress={close}>
                  Cancel
                </Button>
                <Button className="button primary" type="submit" isDisabled={name.trim() === ''}>
                  Make it, with revision A
                </Button>
              </div>
            </form>
          )}
        </Dialog>
      </Modal>
    </DialogTrigger>
  );
}
