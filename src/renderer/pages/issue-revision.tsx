/** Issuing a revision cannot be undone, and is asked about first. */
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { set } from '../../notebook/index.ts';
import type { Problem } from '../../quantity/index.ts';
import { useNotebook, useSurface, useView } from '../store/context.ts';
import { now } from '../store/record-id.ts';

export function IssueRevision({
  id,
  letter,
  onProblem,
}: {
  id: string;
  letter: string;
  onProblem: (problem: Problem | undefined) => void;
}) {
  const store = useNotebook();
  const { settings } = useSurface();
  const readOnly = useView((view) => view.readOnly);

  function issue() {
    const done = store.change([
      set('revision', id, { status: 'issued', issuedAt: now(), issuedBy: settings.author || 'unnamed' }),
    ]);
    onProblem(done.ok ? undefined : done.problem);
  }

  return (
    <DialogTrigger>
      <Button className="plain-button" isDisabled={readOnly}>
        Issue revision {letter}
      </Button>
      <ModalOverlay isDismissable>
        <Modal className="modal">
          <Dialog role="alertdialog">
            {({ close }) => (
              <div className="dialog-form">
                <Heading slot="title">Issue revision {letter}?</Heading>
                <p>
                  An issued revision does not change any more: masses, sections, gains and everything else in
                  it stay as they are now. This cannot be undone; what you change next goes into a new
                  revision.
                </p>
                <p className="quiet">
                  Issued by {settings.author || 'unnamed (enter your name in the title block)'}.
                </p>
                <div className="dialog-buttons">
                  <Button className="button" autoFocus onPress={close}>
                    Not yet
                  </Button>
                  <Button
                    className="button primary"
                    onPress={() => {
                      issue();
                      close();
                    }}
                  >
                    Issue it
                  </Button>
                </div>
              </div>
            )}
          </Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}
