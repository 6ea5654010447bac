/** One line of text that is recorded when the typing pauses, when it is left and when it goes away. */
import { useEffect, useId, useRef, useState } from 'react';
import { pendingText } from './pending-text.ts';

export interface RecordedInputProps {
  readonly label: string;
  readonly value: string;
  readonly longest: number;
  readonly onRecord: (text: string) => void;
  readonly placeholder?: string;
  readonly className?: string;
  readonly focusAtStart?: boolean;
}

export function RecordedInput({
  label,
  value,
  longest,
  onRecord,
  placeholder,
  className = 'text-input',
  focusAtStart = false,
}: RecordedInputProps) {
  const id = useId();
  const [text, setText] = useState(value);
  const latest = useRef(onRecord);
  latest.current = onRecord;
  const [pending] = useState(() => pendingText((typed) => latest.current(typed)));

  useEffect(() => {
    if (!pending.isPending()) setText(value);
  }, [value, pending]);
  useEffect(() => {
    window.addEventListener('pagehide', pending.commit);
    return () => {
      window.removeEventListener('pagehide', pending.commit);
      pending.commit();
    };
  }, [pending]);

  return (
    <>
      <label htmlFor={id} className="visually-hidden">
        {label}
      </label>
      <input
        id={id}
        type="text"
        className={className}
        value={text}
        maxLength={longest}
        placeholder={placeholder}
        // biome-ignore lint/a11y/noAutofocus: the person has just asked for a new entry
        autoFocus={focusAtStart}
        onChange={(event) => {
          setText(event.target.value);
          pending.type(event.target.value);
        }}
        onBlur={pending.commit}
      />
    </>
  );
}
