/** Who reads the items out and who answers them, by their initials; they may change while the list is worked. */
import type { ReactNode } from 'react';

export interface People {
  readonly initials: string;
  readonly second: string;
}

export function PeopleStrip({
  people,
  onChange,
  children,
}: {
  people: People;
  onChange: (people: People) => void;
  children: ReactNode;
}) {
  return (
    <div className="checklist-people">
      <Initials
        label="Reads"
        value={people.initials}
        onChange={(initials) => onChange({ ...people, initials })}
      />
      <Initials
        label="Answers"
        value={people.second}
        onChange={(second) => onChange({ ...people, second })}
      />
      {children}
    </div>
  );
}

function Initials({
  label,
  value,
  onChange,
}: {
  label: string;
  value: string;
  onChange: (value: string) => void;
}) {
  return (
    <label>
      {label}{' '}
      <input
        type="text"
        value={value}
        maxLength={8}
        autoComplete="off"
        spellCheck={false}
        placeholder="initials"
        onChange={(event) => onChange(event.target.value)}
      />
    </label>
  );
}
