/** Free text that is recorded when the field is left. */
import { useEffect, useId, useState } from 'react';

export interface TextAreaProps {
  readonly label: string;
  readonly value: string;
  readonly disabled: boolean;
  readonly onCommit: (text: string) => void;
  /** One line instead of several. */
  readonly single?: boolean;
  readonly rows?: number;
}

export function TextArea({ label, value, disabled, onCommit, single = false, rows = 3 }: TextAreaProps) {
  const id = useId();
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  const shared = {
    id,
    value: text,
    disabled,
    onBlur: () => {
      if (text !== value) onCommit(text);
    },
  };
  return (
    <div className="text-area">
      <label htmlFor={id}>{label}</label>
      {single ? (
        <input
          className="text-input"
          type="text"
          {...shared}
          onChange={(event) => setText(event.target.value)}
        />
      ) : (
        <textarea rows={rows} {...shared} onChange={(event) => setText(event.target.value)} />
      )}
    </div>
  );
}
