/** A new prototype with its first revision, from within an open notebook. */
import { useState } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import type { Problem } from '../../quantity/index.ts';
import { ProblemLine } from '../controls/problem-line.tsx';
import { useNotebook, usePlace, useView } from '../store/context.ts';
import { makePrototype } from './make-prototype.ts';
import { type NamedPrototype, PrototypeForm } from './prototype-form.tsx';

export function NewPrototype() {
  const store = useNotebook();
  const { go } = usePlace();
  const readOnly = useView((view) => view.readOnly);
  const [problem, setProblem] = useState<Problem>();

  function make({ name, kind }: NamedPrototype, close: () => void) {
    const made = makePrototype(store, name, kind);
    setProblem(made.ok ? undefined : made.problem);
    if (!made.ok) return;
    close();
    go({ revision: made.value, page: 'requirements' });
  }

  return (
    <DialogTrigger>
      <Button className="button" isDisabled={readOnly}>
        New prototype
      </Button>
      <ModalOverlay isDismissable>
        <Modal className="modal">
          <Dialog>
            {({ close }) => (
              <>
                <Heading slot="title">New prototype</Heading>
                <PrototypeForm nameLabel="Name" onMake={(prototype) => make(prototype, close)}>
                  {problem && <ProblemLine problem={problem} />}
                  <div className="dialog-buttons">
                    <Button className="button" onPress={close}>
                      Cancel
                    </Button>
                    <Button className="button primary" type="submit">
                      Make it, with revision A
                    </Button>
                  </div>
                </PrototypeForm>
              </>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
