/** The log of the prototype: a list of dated notes, and the chosen one to be written or read. */
import '../../design/log.css';
import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { create } from '../../../notebook/index.ts';
import { type Problem, phrase } from '../../../quantity/index.ts';
import { useChosen, useNotebook, usePlace, useRecords, useSurface, useView } from '../../store/context.ts';
import { newId, now } from '../../store/record-id.ts';
import { EntryList } from './entry-list.tsx';
import { entriesOf, nextNumber } from './entry-search.ts';
import { EntrySheet } from './entry-sheet.tsx';

export function LogPage() {
  const chosen = useChosen();
  const store = useNotebook();
  const { settings } = useSurface();
  const { place, go } = usePlace();
  const records = useRecords('entry');
  const readOnly = useView((view) => view.readOnly);
  const [made, setMade] = useState<string>();
  const [problem, setProblem] = useState<Problem>();
  const prototypeId = chosen?.prototypeId ?? '';
  const entries = useMemo(() => entriesOf(records, prototypeId), [records, prototypeId]);
  const [newest] = entries;
  // Nothing chosen yet: the newest entry, which is what somebody who opens the log looks for.
  const id = place.record !== undefined && records[place.record] ? place.record : newest?.[0];
  const entry = id === undefined ? undefined : records[id];

  function write() {
    if (!chosen) return;
    const next = newId('entry');
    const done = store.change([
      create('entry', next, {
        prototype: chosen.prototypeId,
        revision: chosen.id,
        number: nextNumber(store.getState().recorded.entry),
        title: '',
        at: now(),
        author: settings.author,
        text: '',
      }),
    ]);
    setProblem(done.ok ? undefined : done.problem);
    if (!done.ok) return;
    setMade(next);
    go({ record: next });
  }

  return (
    <div className="log">
      <div className="log-side">
        <Button className="button primary" isDisabled={readOnly || !chosen} onPress={write}>
          New entry
        </Button>
        {problem && (
          <p className="problem" role="alert">
            {phrase(problem).reason} {phrase(problem).remedy}
          </p>
        )}
        {entries.length > 0 && <EntryList entries={entries} chosen={id} />}
      </div>
      {id !== undefined && entry ? (
        <EntrySheet key={id} id={id} entry={entry} isNew={id === made} />
      ) : (
        <p className="quiet log-empty">
          Nothing is written down yet. An entry is a dated note: what was changed and why, what was seen, what
          broke. It can calculate with the figures of revision {chosen?.revision.letter}, and pictures can be
          attached.
        </p>
      )}
    </div>
  );
}
