/** The open notebook: prototypes and revisions at the left, the page in the middle, the margins at the right. */
import { useMemo, useState } from 'react';
import { ExplainContext, type Explained } from './explain/explain-context.ts';
import { ExplainSheet } from './explain/explain-sheet.tsx';
import { MarginPanel } from './margin-panel.tsx';
import { Navigation } from './navigation.tsx';
import { Page } from './pages/page.tsx';
import type { Place } from './place.ts';
import { ProblemBar } from './problem-bar.tsx';
import { PlaceContext, useNotebook } from './store/context.ts';
import { TitleBlock } from './title-block.tsx';

export function NotebookWindow({ onClose }: { onClose: () => void }) {
  const store = useNotebook();
  const [place, setPlace] = useState<Place>(() => firstPlace(store.getState().state.revision));
  const [explained, setExplained] = useState<Explained>();
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
      <ExplainContext value={setExplained}>
        <div className="window">
          <a className="skip-link" href="#page">
            To the page
          </a>
          <Navigation onClose={onClose} />
          <div className="middle">
            <ProblemBar />
            <main id="page" className="page" tabIndex={-1}>
              <Page />
            </main>
          </div>
          <MarginPanel />
          <TitleBlock />
        </div>
        <ExplainSheet explained={explained} onClose={() => setExplained(undefined)} />
      </ExplainContext>
    </PlaceContext>
  );
}

/** The newest revision, at the page that a visit usually begins with. */
function firstPlace(revisions: Readonly<Record<string, { createdAt: string; letter: string }>>): Place {
  const newest = Object.entries(revisions).sort(([, a], [, b]) => (a.createdAt < b.createdAt ? 1 : -1))[0];
  return { revision: newest?.[0], page: 'masses', record: undefined };
}
