/** The first thing seen: open the demo, start a notebook, or go on with one that is there. */
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { NotebookListing, OpenNotebook, Outcome } from '../../preload/index.ts';
import { type Problem, phrase } from '../../quantity/index.ts';
import { dateAndTime } from '../controls/moment.ts';
import { problemText } from '../controls/problem-line.tsx';
import { NameCell, PaperCell, PaperSizeCell } from '../settings-cells.tsx';
import { useSurface } from '../store/context.ts';
import { type NamedPrototype, PrototypeForm } from './prototype-form.tsx';

export function StartScreen({
  onOpen,
  told,
}: {
  onOpen: (opened: OpenNotebook, first?: NamedPrototype) => void;
  /** What went wrong before there was a window to say it in. */
  told: Problem | undefined;
}) {
  const { desk, settings } = useSurface();
  const [listing, setListing] = useState<readonly NotebookListing[]>([]);
  const [problem, setProblem] = useState(told);
  const [busy, setBusy] = useState(false);

  useEffect(() => {
    void desk['notebooks.list']({}).then((outcome) => {
      if (outcome.ok) setListing(outcome.value);
      else setProblem(outcome.problem);
    });
  }, [desk]);

  async function open(opening: Promise<Outcome<OpenNotebook>>, first?: NamedPrototype) {
    if (busy) return;
    setBusy(true);
    const outcome = await opening;
    setBusy(false);
    if (outcome.ok) onOpen(outcome.value, first);
    else setProblem(outcome.problem);
  }

  return (
    <main className="start">
      <div className="start-sheet">
        <header>
          <h1>Counterpoise</h1>
          <p>
            Build log and test plan for vehicles that would fall over if nothing moved. Weigh it, work out the
            margins, run the checklist, write down what broke.
          </p>
        </header>
        {problem && (
          <p className="problem" role="alert">
            {phrase(problem).place}: {problemText(problem)}
          </p>
        )}
        {listing.length > 0 && (
          <GoOn listing={listing} busy={busy} onOpen={(name) => void open(desk['notebook.open']({ name }))} />
        )}
        <div className="start-ways">
          <section>
            <h2>Look around first</h2>
            <p>
              Three revisions of a narrow tool cart that balances on two wheels in line, with runs, failures
              and reports. Change what you like: it is a notebook of your own.
            </p>
            <Button className="button" isDisabled={busy} onPress={() => void open(desk['notebook.demo']({}))}>
              Open the demo notebook
            </Button>
          </section>
          <section>
            <h2>New prototype</h2>
            <PrototypeForm
              nameLabel="Its name, and its notebook's"
              onMake={(first) =>
                void open(desk['notebook.create']({ name: first.name, author: settings.author }), first)
              }
            >
              <Button className="button primary" type="submit" isDisabled={busy}>
                New prototype
              </Button>
            </PrototypeForm>
          </section>
        </div>
        <p className="quiet small">
          Everything stays on this machine: a folder of plain text for each notebook. Your name is written
          beside every change in its journal.
        </p>
        <section className="title-block" aria-label="Title block">
          <NameCell label="Your name" />
          <PaperCell />
          <PaperSizeCell />
        </section>
      </div>
    </main>
  );
}

function GoOn({
  listing,
  busy,
  onOpen,
}: {
  listing: readonly NotebookListing[];
  busy: boolean;
  onOpen: (name: string) => void;
}) {
  return (
    <section>
      <h2>Go on with</h2>
      <ul className="plain start-list">
        {listing.map(({ name, changedAt }) => (
          <li key={name}>
            <Button className="plain-button" isDisabled={busy} onPress={() => onOpen(name)}>
              {name}
            </Button>
            <span className="quiet small number">last changed {dateAndTime(changedAt)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
