/** The page that is chosen. */
import { type ComponentType, lazy, Suspense } from 'react';
import { FaultBoundary } from '../fault-boundary.tsx';
import { type PageId, pages } from '../place.ts';
import { useChosenPiece, usePlace } from '../store/context.ts';
import { BallastPage } from './ballast/ballast-page.tsx';
import { CardsPage } from './cards/cards-page.tsx';
import { ComparePage } from './compare/compare-page.tsx';
import { FailuresPage } from './failures/failures-page.tsx';
import { LoopPage } from './loop/loop-page.tsx';
import { MassesPage } from './masses/masses-page.tsx';
import { PowerPage } from './power/power-page.tsx';
import { RequirementsPage } from './requirements/requirements-page.tsx';
import { RevisionActions } from './revision-actions.tsx';
import { RotorPage } from './rotor/rotor-page.tsx';
import { RunsPage } from './runs/runs-page.tsx';

/** The editor is large: it is fetched when the log is first opened. */
const LogPage = lazy(async () => ({ default: (await import('./log/log-page.tsx')).LogPage }));

const contents: Record<PageId, ComponentType> = {
  requirements: RequirementsPage,
  masses: MassesPage,
  rotor: RotorPage,
  ballast: BallastPage,
  loop: LoopPage,
  power: PowerPage,
  log: LogPage,
  cards: CardsPage,
  runs: RunsPage,
  failures: FailuresPage,
  compare: ComparePage,
};

export function Page() {
  const { place } = usePlace();
  const revision = useChosenPiece(({ id }) => id);
  if (revision === undefined) return <p>Choose a revision in the list, or make a new prototype there.</p>;
  const Content = contents[place.page];
  return (
    <>
      <header className="page-head">
        <h1>{pages.find((page) => page.id === place.page)?.title}</h1>
        <RevisionActions />
      </header>
      <FaultBoundary key={`${revision} ${place.page}`}>
        <Suspense>
          <Content />
        </Suspense>
      </FaultBoundary>
    </>
  );
}
