/** The open notebook: prototypes and revisions at the left, the page in the middle, the margins at the right. */
import { type ReactNode, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { NotebookState } from '../notebook/index.ts';
import { Announcer } from './announcer.tsx';
import { ExplainContext, type Explained } from './explain/explain-context.ts';
import { ExplainSheet } from './explain/explain-sheet.tsx';
import { MarginPanel } from './margin-panel.tsx';
import { Navigation } from './navigation.tsx';
import { Page } from './pages/page.tsx';
import type { Place } from './place.ts';
import { ProblemBar } from './problem-bar.tsx';
import { PlaceContext, useNotebook, usePlace } from './store/context.ts';
import { TitleBlock } from './title-block.tsx';
import { WindowTitle } from './window-title.tsx';

export function NotebookWindow({ onClose }: { onClose: () => void }) {
  const store = useNotebook();
  const [place, setPlace] = useState<Place>(() => firstPlace(store.getState().state.revision));
  const where = useMemo(
    () => ({
      place,
      go(to: Partial<Place>) {
        store.dropPreview();
        setPlace((before) => ({ ...before, record: undefined, ...to }));
      },
    }),
    [place, store],
  );

  return (
    <PlaceContext value={where}>
      <WindowTitle />
      <Explaining>
        <div className="window">
          <SkipLink to="page">To the page</SkipLink>
          <SkipLink to="margins">To the margins</SkipLink>
          <Navigation onClose={onClose} />
          <div className="middle">
            <ProblemBar />
            <Announcer />
            <Sheet />
          </div>
          <MarginPanel />
          <TitleBlock />
        </div>
      </Explaining>
    </PlaceContext>
  );
}

/** Past the list of revisions; the address of the window stays what it is. */
function SkipLink({ to, children }: { to: string; children: string }) {
  return (
    <a
      className="skip-link"
      href={`#${to}`}
      onClick={(event) => {
        event.preventDefault();
        document.getElementById(to)?.focus();
      }}
    >
      {children}
    </a>
  );
}

/** Whatever is inside can ask for a number to be explained, and is not drawn again when it does. */
function Explaining({ children }: { children: ReactNode }) {
  const [trail, setTrail] = useState<readonly Explained[]>([]);
  const explain = useCallback((next: Explained) => {
    setTrail((before) => {
      const last = before.at(-1);
      return last?.kind === next.kind && last.id === next.id ? before : [...before, next];
    });
  }, []);
  return (
    <ExplainContext value={explain}>
      {children}
      <ExplainSheet
        trail={trail}
        onBack={() => setTrail((before) => before.slice(0, -1))}
        onClose={() => setTrail([])}
      />
    </ExplainContext>
  );
}

/** The page in its frame, from its beginning. When what had the focus went with the last page, the new one has it. */
function Sheet() {
  const { place } = usePlace();
  const frame = useRef<HTMLElement>(null);
  const shown = useRef(place);
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is the turning of the page that this follows
  useEffect(() => {
    const { activeElement } = document;
    const turned = shown.current !== place;
    shown.current = place;
    if (turned) {
      frame.current?.scrollTo(0, 0);
      frame.current?.scrollIntoView({ block: 'start' }); // where the list stands above it, in a narrow window
    }
    if (activeElement === null || activeElement === document.body) frame.current?.focus();
  }, [place.page, place.revision]);
  return (
    <main id="page" className="page" tabIndex={-1} ref={frame}>
      <Page />
    </main>
  );
}

/** The newest revision: at what it has to reach while it is empty, else at the page that a visit usually begins with. */
function firstPlace(revisions: NotebookState['revision']): Place {
  const newest = Object.entries(revisions).toSorted(([, a], [, b]) =>
    b.createdAt.localeCompare(a.createdAt),
  )[0];
  const empty = newest === undefined || Object.keys(newest[1].parts).length === 0;
  return { revision: newest?.[0], page: empty ? 'requirements' : 'masses', record: undefined };
}
