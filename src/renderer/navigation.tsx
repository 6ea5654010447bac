/** Prototypes, their revisions as lettered rings on a line, and the pages of the chosen revision. */
import { Button } from 'react-aria-components';
import { pages } from './place.ts';
import { NewPrototype } from './start/new-prototype.tsx';
import { usePlace, useRecords, useView } from './store/context.ts';

export function Navigation({ onClose }: { onClose: () => void }) {
  const { place, go } = usePlace();
  const name = useView((view) => view.name);
  const prototypes = useRecords('prototype');
  const revisions = useRecords('revision');

  return (
    <nav className="navigation" aria-label="Notebook">
      <header className="navigation-head">
        <h1>{name}</h1>
        <Button className="plain-button" onPress={onClose}>
          Close notebook
        </Button>
      </header>
      <ul className="plain prototypes">
        {Object.entries(prototypes).map(([prototypeId, prototype]) => (
          <li key={prototypeId}>
            <h2>{prototype.name}</h2>
            <ol className="plain revision-line">
              {Object.entries(revisions)
                .filter(([, revision]) => revision.prototype === prototypeId)
                .map(([id, revision]) => (
                  <li key={id} data-chosen={id === place.revision ? true : undefined}>
                    <button
                      type="button"
                      className="revision-ring"
                      aria-current={id === place.revision ? 'true' : undefined}
                      onClick={() => go({ revision: id })}
                    >
                      <span className="ring">{revision.letter}</span>
                      <span>
                        <span className="visually-hidden">Revision {revision.letter}, </span>
                        {revision.status}
                      </span>
                    </button>
                    {id === place.revision && <PageList />}
                  </li>
                ))}
            </ol>
          </li>
        ))}
      </ul>
      <NewPrototype />
    </nav>
  );
}

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
