/** Free text under its label. */
import { useId } from 'react';
import { useRecordedText } from './recorded-text.ts';

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
  const text = useRecordedText(value, onCommit);
  return (
    <div className="text-area">
      <label htmlFor={id}>{label}</label>
      {single ? (
        <input id={id} className="text-input" type="text" autoComplete="off" disabled={disabled} {...text} />
      ) : (
        <textarea id={id} rows={rows} disabled={disabled} {...text} />
      )}
    </div>
  );
}
