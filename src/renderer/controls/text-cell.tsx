/** A short text in a table. */
import { useRecordedText } from './recorded-text.ts';

export function TextCell({
  label,
  value,
  disabled,
  onCommit,
}: {
  label: string;
  value: string;
  disabled: boolean;
  onCommit: (text: string) => void;
}) {
  const text = useRecordedText(value, onCommit);
  return <input type="text" aria-label={label} autoComplete="off" disabled={disabled} {...text} />;
}
