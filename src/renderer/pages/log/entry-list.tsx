/** The entries of the prototype, newest first, with a filter over all their words. */
import { useDeferredValue, useMemo, useState } from 'react';
import { usePlace, useRecords } from '../../store/context.ts';
import { filterEntries, type ListedEntry } from './entry-search.ts';

const SHOWN_AT_FIRST = 40;

export function EntryList({
  entries,
  chosen,
}: {
  entries: readonly ListedEntry[];
  chosen: string | undefined;
}) {
  const { go } = usePlace();
  const revisions = useRecords('revision');
  const [filter, setFilter] = useState('');
  const [shown, setShown] = useState(SHOWN_AT_FIRST);
  const wanted = useDeferredValue(filter);
  const found = useMemo(() => filterEntries(entries, wanted), [entries, wanted]);

  return (
    <nav className="entry-list" aria-label="Entries">
      <input
        type="text"
        className="text-input"
        aria-label="Find entries"
        placeholder="Find in entries"
        value={filter}
        onChange={(event) => {
          setFilter(event.target.value);
          setShown(SHOWN_AT_FIRST);
        }}
      />
      <p className="quiet small" role="status">
        {wanted.trim() === '' ? counted(entries.length) : `${found.length} of ${counted(entries.length)}`}
      </p>
      <ul className="plain">
        {found.slice(0, shown).map(([id, entry]) => (
          <li key={id}>
            <button
              type="button"
              aria-current={id === chosen ? 'true' : undefined}
              onClick={() => go({ record: id })}
            >
              <span className="entry-title">{entry.title || 'Without title'}</span>
              <span className="quiet small number">
                #{entry.number}, rev. {revisions[entry.revision]?.letter ?? '?'}, {entry.at.slice(0, 10)}
              </span>
              {entry.author && <span className="quiet small">{entry.author}</span>}
            </button>
          </li>
        ))}
      </ul>
      {found.length > shown && (
        <button type="button" className="plain-button" onClick={() => setShown(shown + 10 * SHOWN_AT_FIRST)}>
          Show older entries
        </button>
      )}
    </nav>
  );
}

function counted(count: number): string {
  return count === 1 ? '1 entry' : `${count} entries`;
}
