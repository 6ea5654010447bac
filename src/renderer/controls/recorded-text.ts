/** Free text that is recorded when the field is left or the typing pauses; Escape puts back what stood there before. */
import { type KeyboardEvent, useEffect, useRef, useState } from 'react';

const PAUSE = 1500; // ms of quiet; a sentence is then on record although nobody has left the field

export interface RecordedText {
  readonly value: string;
  onChange(event: { readonly target: { readonly value: string } }): void;
  onFocus(): void;
  onBlur(): void;
  onKeyDown(event: KeyboardEvent): void;
}

/** What a text field needs to be given. */
export function useRecordedText(recorded: string, record: (text: string) => void): RecordedText {
  const [text, setText] = useState(recorded);
  const entered = useRef(recorded);
  const waiting = useRef<number>(undefined);
  const pending = useRef<string>(undefined);
  // The latest, for a timer that was set in an earlier drawing.
  const latest = useRef({ recorded, record });
  latest.current = { recorded, record };

  // A change from elsewhere (undo) replaces the text, but not one that is being typed.
  useEffect(() => {
    if (pending.current === undefined) setText(recorded);
  }, [recorded]);
  // A page that goes away takes its fields with it without their being left.
  useEffect(
    () => () => {
      window.clearTimeout(waiting.current);
      if (pending.current !== undefined) latest.current.record(pending.current);
    },
    [],
  );

  function commit(next: string) {
    window.clearTimeout(waiting.current);
    pending.current = undefined;
    if (next !== latest.current.recorded) latest.current.record(next);
  }

  return {
    value: text,
    onChange({ target: { value } }) {
      setText(value);
      pending.current = value;
      window.clearTimeout(waiting.current);
      // A field that was emptied may be about to be filled with something else.
      if (value !== '') waiting.current = window.setTimeout(() => commit(value), PAUSE);
    },
    onFocus() {
      entered.current = recorded;
    },
    onBlur: () => commit(text),
    onKeyDown(event) {
      if (event.key !== 'Escape' || text === entered.current) return;
      event.stopPropagation(); // the dialog around it stays open
      setText(entered.current);
      commit(entered.current);
    },
  };
}
