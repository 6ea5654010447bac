/**
 * The editor of one entry. The text lives in the editor and goes to the notebook when the typing pauses; React
 * makes and removes it and passes on what changes around it.
 */
import { history } from '@codemirror/commands';
import { Compartment, EditorState, type Extension, Transaction } from '@codemirror/state';
import { drawSelection, EditorView, placeholder } from '@codemirror/view';
import { type Ref, useEffect, useImperativeHandle, useRef } from 'react';
import type { Assessment } from '../../../../margins/index.ts';
import { calculate } from '../calculation/calculate.ts';
import { figuresOf, namesOf } from '../figures-in-scope.ts';
import { pendingText } from '../pending-text.ts';
import { calculating, calculationContext } from './calculating.ts';
import { difference } from './difference.ts';
import { editorLook } from './editor-look.ts';
import { entryLanguage } from './entry-language.ts';
import { knownNames, nameCompletion } from './name-completion.ts';
import { results } from './results.ts';
import { styleNonce } from './style-nonce.ts';
import { insertCalculation, typing } from './typing.ts';

/** The record takes no more. */
export const LONGEST_TEXT = 200_000;

export interface EntryEditorHandle {
  insertCalculation(): void;
}

export interface EntryEditorProps {
  /** What a screen reader calls the field. */
  readonly label: string;
  /** The text on record. */
  readonly text: string;
  /** The figures in scope; undefined when the entry's revision is not there. */
  readonly assessment: Assessment | undefined;
  readonly onRecord: (text: string) => void;
  /** Something was refused because the text would be longer than the record allows. */
  readonly onTooLong: () => void;
  /** Files that were pasted or dropped. */
  readonly onFiles: (files: readonly File[]) => void;
  readonly ref: Ref<EntryEditorHandle>;
}

const scoped = new Compartment();

function scopeExtension(assessment: Assessment | undefined): Extension {
  if (!assessment) return [];
  return [
    calculationContext.of({ figures: figuresOf(assessment), calculate }),
    knownNames.of(namesOf(assessment)),
  ];
}

export function EntryEditor({ ref, ...props }: EntryEditorProps) {
  const { text, assessment } = props;
  const place = useRef<HTMLDivElement>(null);
  const view = useRef<EditorView>(undefined);
  // What the editor calls is always the newest, without making the editor anew.
  const latest = useRef(props);
  latest.current = props;
  const pending = useRef(pendingText((typed) => latest.current.onRecord(typed)));

  useEffect(() => {
    if (!place.current) return undefined;
    const { current: waiting } = pending;
    const editor = new EditorView({
      parent: place.current,
      state: EditorState.create({
        doc: latest.current.text,
        extensions: [
          history(),
          drawSelection(),
          EditorView.lineWrapping,
          EditorView.cspNonce.of(styleNonce()),
          EditorView.contentAttributes.of({ 'aria-label': latest.current.label, spellcheck: 'true' }),
          placeholder('What was done, what was seen, what broke'),
          EditorState.changeFilter.of((transaction) => {
            if (fits(transaction)) return true;
            queueMicrotask(() => latest.current.onTooLong()); // a filter itself must not touch the window
            return false;
          }),
          editorLook,
          entryLanguage(),
          nameCompletion(),
          typing(),
          results(),
          calculating(),
          scoped.of(scopeExtension(latest.current.assessment)),
          EditorView.updateListener.of(({ docChanged, state, transactions }) => {
            const fromRecord = transactions.some((transaction) => transaction.isUserEvent('record'));
            if (docChanged && !fromRecord) waiting.type(state.doc.toString());
          }),
          EditorView.domEventHandlers({
            blur: () => waiting.commit(),
            // Cells of a table come as text and as a picture of it: the text is what was meant.
            paste: (event) =>
              !event.clipboardData?.types.includes('text/plain') && takeFiles(event, event.clipboardData),
            drop: (event) => takeFiles(event, event.dataTransfer),
          }),
        ],
      }),
    });
    view.current = editor;

    function takeFiles(event: Event, data: DataTransfer | null): boolean {
      const files = [...(data?.files ?? [])];
      if (files.length === 0) return false;
      event.preventDefault();
      latest.current.onFiles(files);
      return true;
    }

    const commit = (): void => waiting.commit();
    window.addEventListener('pagehide', commit);
    document.addEventListener('visibilitychange', commit);
    return () => {
      window.removeEventListener('pagehide', commit);
      document.removeEventListener('visibilitychange', commit);
      commit();
      editor.destroy();
      view.current = undefined;
    };
  }, []);

  useEffect(() => {
    view.current?.dispatch({ effects: scoped.reconfigure(scopeExtension(assessment)) });
  }, [assessment]);

  // A text from elsewhere (undo, another window) replaces what stands here, but never what is being typed.
  useEffect(() => {
    const editor = view.current;
    if (!editor || pending.current.isPending()) return;
    const before = editor.state.doc.toString();
    const after = editor.state.toText(text).toString();
    if (before !== after) {
      editor.dispatch({
        changes: difference(before, after),
        annotations: [Transaction.userEvent.of('record'), Transaction.addToHistory.of(false)],
      });
    }
  }, [text]);

  useImperativeHandle(
    ref,
    () => ({
      insertCalculation() {
        if (!view.current) return;
        insertCalculation(view.current);
        view.current.focus();
      },
    }),
    [],
  );

  return <div ref={place} className="entry-editor" />;
}

/** Refuses what would make the text longer than the record allows; what is there can always be shortened. */
function fits(transaction: Transaction): boolean {
  return (
    transaction.newDoc.length <= LONGEST_TEXT ||
    transaction.newDoc.length <= transaction.startState.doc.length
  );
}
