/** Prototypes, their revisions as lettered rings on a line, and the pages of the chosen revision. */
import { memo, useEffect, useRef } from 'react';
import { Button } from 'react-aria-components';
import type { NotebookState } from '../notebook/index.ts';
import { pages } from './place.ts';
import { NewPrototype } from './start/new-prototype.tsx';
import { usePlace, useView } from './store/context.ts';

export const Navigation = memo(function Navigation({ onClose }: { onClose: () => void }) {
  const name = useView((view) => view.name);
  const prototypes = useView(({ state }) => outlineOf(state), sameOutline);
  return (
    <nav className="navigation" aria-label="Notebook">
      <header className="navigation-head">
        <p className="notebook-name">{name}</p>
        <Button className="plain-button" onPress={onClose}>
          Close notebook
        </Button>
      </header>
      <ul className="plain prototypes">
        {prototypes.map((prototype) => (
          <li key={prototype.id}>
            <h2>{prototype.name}</h2>
            <ol className="plain revision-line">
              {prototype.revisions.map((revision) => (
                <RevisionRing key={revision.id} {...revision} />
              ))}
            </ol>
          </li>
        ))}
      </ul>
      <NewPrototype />
    </nav>
  );
});

const RevisionRing = memo(function RevisionRing({ id, letter, status }: OutlineRevision) {
  const { place, go } = usePlace();
  const chosen = id === place.revision;
  const ring = useRef<HTMLLIElement>(null);

  // With two hundred revisions the chosen one may be far down the line.
  useEffect(() => {
    if (chosen) ring.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);

  return (
    <li ref={ring} data-chosen={chosen || undefined}>
      <button
        type="button"
        className="revision-ring"
        aria-current={chosen ? 'true' : undefined}
        onClick={() => go({ revision: id })}
      >
        <span className="ring" data-status={status}>
          {letter}
        </span>
        <span>
          <span className="visually-hidden">Revision {letter}, </span>
          {status}
        </span>
      </button>
      {chosen && <PageList />}
    </li>
  );
});

function PageList() {
  const { place, go } = usePlace();
  return (
    <ul className="plain page-list">
      {pages.map((page) => (
        <li key={page.id}>
          <button
            type="button"
            aria-current={page.id === place.page ? 'page' : undefined}
            onClick={() => go({ page: page.id })}
          >
            {page.title}
          </button>
        </li>
      ))}
    </ul>
  );
}

interface OutlineRevision {
  readonly id: string;
  readonly letter: string;
  readonly status: string;
}

interface OutlinePrototype {
  readonly id: string;
  readonly name: string;
  readonly revisions: readonly OutlineRevision[];
}

type Outline = readonly OutlinePrototype[];

/** Only what is shown here, so that typing a figure leaves it alone. */
function outlineOf({ prototype, revision }: NotebookState): Outline {
  const revisions = new Map<string, OutlineRevision[]>();
  for (const [id, { prototype: of, letter, status }] of Object.entries(revision)) {
    const line = revisions.get(of) ?? [];
    line.push({ id, letter, status });
    revisions.set(of, line);
  }
  return Object.entries(prototype).map(([id, { name }]) => ({
    id,
    name,
    revisions: revisions.get(id) ?? [],
  }));
}

function sameOutline(a: Outline, b: Outline): boolean {
  return a.length === b.length && a.every((each, index) => samePrototype(each, b[index]));
}

function samePrototype(a: OutlinePrototype, b: OutlinePrototype | undefined): boolean {
  return (
    a.id === b?.id &&
    a.name === b.name &&
    a.revisions.length === b.revisions.length &&
    a.revisions.every((revision, index) => {
      const other = b.revisions[index];
      return (
        revision.id === other?.id && revision.letter === other.letter && revision.status === other.status
      );
    })
  );
}
