/** The window: the start screen until a notebook is open, then the notebook. */
import { useEffect, useMemo, useState } from 'react';
import type { Desk, OpenNotebook, Settings, Surroundings } from '../preload/index.ts';
import type { Problem } from '../quantity/index.ts';
import { NotebookWindow } from './notebook-window.tsx';
import { makePrototype } from './start/make-prototype.ts';
import type { NamedPrototype } from './start/prototype-form.tsx';
import { StartScreen } from './start/start-screen.tsx';
import { StoreContext, SurfaceContext } from './store/context.ts';
import { type NotebookStore, openStore } from './store/notebook-store.ts';
import { keepWorkingCopy } from './store/working-copy.ts';

export function App({
  desk,
  surroundings,
  initial,
  told,
}: {
  desk: Desk;
  surroundings: Surroundings;
  initial: Settings;
  /** What went wrong before there was a window to say it in. */
  told: Problem | undefined;
}) {
  const [settings, setSettings] = useState(initial);
  const [held, setHeld] = useState<{ readonly store: NotebookStore; endCopy(): void }>();

  useEffect(() => {
    document.documentElement.dataset.theme = settings.theme;
  }, [settings.theme]);

  const surface = useMemo(
    () => ({
      desk,
      surroundings,
      settings,
      changeSettings(next: Settings) {
        setSettings(next);
        void desk['settings.write'](next);
      },
    }),
    [desk, surroundings, settings],
  );

  // The store outlives changes of the settings: it asks for the author when it writes.
  const author = useMemo(() => ({ name: initial.author }), [initial.author]);
  author.name = settings.author;

  function open(opened: OpenNotebook, first?: NamedPrototype) {
    const next = openStore(desk, opened, () => author.name);
    if (first) makePrototype(next, first.name, first.kind);
    setHeld({ store: next, endCopy: keepWorkingCopy(next) });
  }

  function close() {
    held?.endCopy();
    void held?.store.dispose();
    setHeld(undefined);
  }

  return (
    <SurfaceContext value={surface}>
      {held ? (
        <StoreContext value={held.store}>
          <NotebookWindow onClose={close} />
        </StoreContext>
      ) : (
        <StartScreen onOpen={open} told={told} />
      )}
    </SurfaceContext>
  );
}
