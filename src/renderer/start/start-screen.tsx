/** The first thing seen: open the demo, start a notebook, or go on with one that is there. */
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Prototype } from '../../notebook/index.ts';
import type { NotebookListing, OpenNotebook, Outcome } from '../../preload/index.ts';
import { type Problem, phrase } from '../../quantity/index.ts';
import { useSurface } from '../store/context.ts';
import { prototypeKinds } from './make-prototype.ts';

export interface FirstPrototype {
  readonly name: string;
  readonly kind: Prototype['kind'];
}

export function StartScreen({
  onOpen,
  told,
}: {
  onOpen: (opened: OpenNotebook, first?: FirstPrototype) => void;
  told: Problem | undefined;
}) {
  const { desk, settings, changeSettings } = useSurface();
  const [listing, setListing] = useState<readonly NotebookListing[]>([]);
  const [name, setName] = useState('');
  const [kind, setKind] = useState<Prototype['kind']>('inline two-wheeler');
  const [problem, setProblem] = useState(told);
  const [busy, setBusy] = useState(false);

  useEffect(() => {
    void desk['notebooks.list']({}).then((outcome) => {
      if (outcome.ok) setListing(outcome.value);
      else setProblem(outcome.problem);
    });
  }, [desk]);

  async function open(opening: Promise<Outcome<OpenNotebook>>, first?: FirstPrototype) {
    setBusy(true);
    const outcome = await opening;
    setBusy(false);
    if (outcome.ok) onOpen(outcome.value, first);
    else setProblem(outcome.problem);
  }

  const phrased = problem && phrase(problem);
  return (
    <main className="start">
      <header>
        <h1>Counterpoise</h1>
        <p>
          Build log and test plan for vehicles that would fall over if nothing moved. Weigh it, work out the
          margins, run the checklist, write down what broke.
        </p>
      </header>
      {phrased && (
        <p className="problem" role="alert">
          {phrased.place}: {phrased.reason} {phrased.remedy}
        </p>
      )}
      <section>
        <h2>Your name</h2>
        <p className="quiet small">Written beside every change in the journal.</p>
        <input
          aria-label="Your name"
          className="text-input"
          value={settings.author}
          autoComplete="name"
          onChange={(event) => changeSettings({ ...settings, author: event.target.value })}
        />
      </section>
      <div className="start-ways">
        <section>
          <h2>Look around first</h2>
          <p>Three revisions of a narrow tool cart, with runs, failures and reports.</p>
          <Button className="button" isDisabled={busy} onPress={() => void open(desk['notebook.demo']({}))}>
            Open the demo notebook
          </Button>
        </section>
        <section>
          <h2>New prototype</h2>
          <form
            className="dialog-form"
            onSubmit={(event) => {
              event.preventDefault();
              const first = { name: name.trim(), kind };
              void open(desk['notebook.create']({ name: first.name, author: settings.author }), first);
            }}
          >
            <label>
              Its name, and its notebook's
              <input
                className="text-input"
                value={name}
                onChange={(event) => setName(event.target.value)}
                placeholder="for example: Heron tray cart"
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
            <Button className="button primary" type="submit" isDisabled={busy || name.trim() === ''}>
              New prototype
            </Button>
          </form>
        </section>
      </div>
      {listing.length > 0 && (
        <section>
          <h2>Go on with</h2>
          <ul className="plain start-list">
            {listing.map((notebook) => (
              <li key={notebook.name}>
                <Button
                  className="plain-button"
                  isDisabled={busy}
                  onPress={() => void open(desk['notebook.open']({ name: notebook.name }))}
                >
                  {notebook.name}
                </Button>
                <span className="quiet small number">
                  {notebook.changedAt.slice(0, 16).replace('T', ' ')}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </main>
  );
}
