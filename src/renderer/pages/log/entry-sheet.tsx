/** The chosen entry: its heading, its text to be written or read, and what is attached to it. */
import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { type LogEntry, set } from '../../../notebook/index.ts';
import { type Problem, phrase } from '../../../quantity/index.ts';
import { useNotebook, useRecord, useSurface, useView } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';
import { attachFiles } from './attachments/attach-files.ts';
import { AttachmentList } from './attachments/attachment-list.tsx';
import { EntryEditor, type EntryEditorHandle, LONGEST_TEXT } from './editor/entry-editor.tsx';
import { useEntryAssessment } from './figures-in-scope.ts';
import { NamesList } from './names-list.tsx';
import { EntryText } from './reading/entry-text.tsx';
import { RecordedInput } from './recorded-input.tsx';

const LONGEST_TITLE = 200;

export function EntrySheet({ id, entry, isNew }: { id: string; entry: LogEntry; isNew: boolean }) {
  const store = useNotebook();
  const { desk } = useSurface();
  const readOnly = useView((view) => view.readOnly);
  const revision = useRecord('revision', entry.revision);
  const assessment = useEntryAssessment(entry);
  const [reading, setReading] = useState(false);
  const [attaching, setAttaching] = useState(false);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const editor = useRef<EntryEditorHandle>(null);
  const files = useRef<HTMLInputElement>(null);
  const name = `Entry ${entry.number}`;

  function recordText(text: string) {
    if (store.getState().recorded.entry[id]?.text === text) return;
    const done = store.change([set('entry', id, { text })]);
    setProblems(done.ok ? [] : [done.problem]);
  }

  async function attach(chosen: readonly File[]) {
    if (readOnly || chosen.length === 0) return;
    setAttaching(true);
    setProblems(await attachFiles(desk, store, id, chosen));
    setAttaching(false);
  }

  return (
    <article
      className="entry"
      aria-label={name}
      onDragOver={(event) => {
        if (event.dataTransfer.types.includes('Files')) event.preventDefault();
      }}
      onDrop={(event) => {
        if (event.defaultPrevented || event.dataTransfer.files.length === 0) return;
        event.preventDefault();
        void attach([...event.dataTransfer.files]);
      }}
    >
      <header className="entry-head">
        <p className="quiet small">
          {name}, {moment(entry.at)}, revision {revision?.letter ?? 'not in this notebook'}
          {entry.author && `, by ${entry.author}`}
        </p>
        {readOnly ? (
          <h2>{entry.title || 'Without title'}</h2>
        ) : (
          <RecordedInput
            label={`Title of entry ${entry.number}`}
            className="entry-title-input"
            value={entry.title}
            longest={LONGEST_TITLE}
            placeholder="Title"
            focusAtStart={isNew}
            onRecord={(title) => recordValue(store, 'entry', id, 'title', title)}
          />
        )}
      </header>
      {!readOnly && (
        <div className="entry-tools">
          <fieldset className="two-ways" aria-label="What to do with the text">
            <button type="button" aria-pressed={!reading} onClick={() => setReading(false)}>
              Write
            </button>
            <button type="button" aria-pressed={reading} onClick={() => setReading(true)}>
              Read
            </button>
          </fieldset>
          <Button
            className="plain-button"
            isDisabled={reading}
            onPress={() => editor.current?.insertCalculation()}
          >
            Insert a calculation
          </Button>
          <Button className="plain-button" isDisabled={attaching} onPress={() => files.current?.click()}>
            {attaching ? 'Attaching' : 'Attach a picture or file'}
          </Button>
          <input
            ref={files}
            type="file"
            multiple
            hidden
            aria-label="Picture or file to attach"
            onChange={(event) => {
              void attach([...(event.target.files ?? [])]);
              event.target.value = ''; // the same file can be chosen again
            }}
          />
        </div>
      )}
      {problems.length > 0 && (
        <div role="alert">
          {problems.map((problem) => {
            const { place, reason, remedy } = phrase(problem);
            return (
              <p key={`${problem.code} ${place}`} className="problem">
                {place}: {reason} {remedy}
              </p>
            );
          })}
        </div>
      )}
      {readOnly || reading ? (
        <EntryText text={entry.text} assessment={assessment} />
      ) : (
        <EntryEditor
          ref={editor}
          label={`Text of entry ${entry.number}, in Markdown`}
          text={entry.text}
          assessment={assessment}
          onRecord={recordText}
          onTooLong={() => setProblems([tooLong(name)])}
          onFiles={(dropped) => void attach(dropped)}
        />
      )}
      {!readOnly && !reading && assessment && (
        <NamesList assessment={assessment} letter={revision?.letter ?? ''} />
      )}
      <AttachmentList entry={id} attachments={entry.attachments} disabled={readOnly || reading} />
    </article>
  );
}

function tooLong(place: string): Problem {
  return {
    code: 'entry.too-long',
    place,
    figures: { limit: LONGEST_TEXT.toLocaleString('en').replace(',', '\u202f') },
  };
}

/** `25 November 2026, 08:02` in the time of the place where it was written. */
function moment(at: string): string {
  const [, year, month, day, time] = /^(\d{4})-(\d\d)-(\d\d)T(\d\d:\d\d)/.exec(at) ?? [];
  const named = MONTHS[Number(month) - 1];
  return named === undefined ? at : `${Number(day)} ${named} ${year}, ${time}`;
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
