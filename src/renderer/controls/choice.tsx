/** A labelled choice among a few words. */
import { useId } from 'react';

export function Choice<T extends string>({
  label,
  value,
  choices,
  names,
  disabled,
  onChoose,
}: {
  label: string;
  value: T;
  choices: readonly T[];
  /** What each choice reads as, where its own word is not enough. */
  names?: Readonly<Partial<Record<T, string>>>;
  disabled: boolean;
  onChoose: (choice: T) => void;
}) {
  const id = useId();
  return (
    <div className="quantity choice">
      <label htmlFor={id} className="quantity-label">
        {label}
      </label>
      <select
        id={id}
        value={value}
        disabled={disabled}
        onChange={(event) => {
          const chosen = choices.find((choice) => choice === event.target.value);
          if (chosen !== undefined) onChoose(chosen);
        }}
      >
        {choices.map((choice) => (
          <option key={choice} value={choice}>
            {names?.[choice] ?? choice}
          </option>
        ))}
      </select>
    </div>
  );
}
