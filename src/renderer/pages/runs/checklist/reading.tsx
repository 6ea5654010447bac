/** A figure to be read from an instrument, with the limits that it is held against. */
import { type FormEvent, useState } from 'react';
import { type Given, limitsInWords } from '../../../../checklist/index.ts';
import type { ChecklistItem } from '../../../../notebook/index.ts';
import { type Problem, parseQuantity } from '../../../../quantity/index.ts';
import { problemText } from '../../../controls/problem-line.tsx';

export function Reading({
  item,
  measured,
  onRead,
}: {
  item: ChecklistItem;
  measured: NonNullable<ChecklistItem['measured']>;
  onRead: (reading: NonNullable<Given['reading']>) => void;
}) {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<Problem>();

  function read(event: FormEvent) {
    event.preventDefault();
    const parsed = parseQuantity(text, measured.unit, item.text);
    if (!parsed.ok) {
      setProblem(parsed.problem);
      return;
    }
    setProblem(undefined);
    onRead({ typed: text.trim(), si: parsed.value.si, u: parsed.value.u ?? 0, basis: 'measured' });
  }

  return (
    <form className="answers" onSubmit={read}>
      <label className="reading">
        <span>{limits(measured)}</span>
        <input
          type="text"
          value={text}
          // biome-ignore lint/a11y/noAutofocus: the screen puts one question at a time, and this is its answer
          autoFocus
          autoComplete="off"
          spellCheck={false}
          aria-invalid={problem ? true : undefined}
          placeholder={measured.example}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <button className="button primary big" type="submit" aria-keyshortcuts="Enter">
        Read
        <kbd aria-hidden>Enter</kbd>
      </button>
      {problem && (
        <p className="checklist-problem" role="alert">
          {problemText(problem)}
        </p>
      )}
    </form>
  );
}

function limits({ unit, low, high }: NonNullable<ChecklistItem['measured']>): string {
  return low === undefined && high === undefined ? `in ${unit}` : limitsInWords(low, high, unit);
}
