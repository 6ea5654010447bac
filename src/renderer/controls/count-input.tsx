/** A whole number, kept as it is. */
import { useEffect, useId, useRef, useState } from 'react';
import { checkField, type FactSpec } from '../../margins/index.ts';
import { type Json, valueAt } from '../../notebook/index.ts';
import type { Problem } from '../../quantity/index.ts';
import { useNotebook, useView } from '../store/context.ts';
import { recordValue } from '../store/record-value.ts';
import { ProblemLine } from './problem-line.tsx';

export function CountInput({
  kind,
  id,
  spec,
  disabled,
}: {
  kind: 'prototype' | 'revision';
  id: string;
  spec: FactSpec;
  disabled: boolean;
}) {
  const inputId = useId();
  const store = useNotebook();
  const stored = useView((view) => valueAt(view.recorded[kind][id] as Json, spec.path));
  const [text, setText] = useState(textOf(stored));
  const [problem, setProblem] = useState<Problem>();
  const entered = useRef(stored);

  // A change from elsewhere replaces the text; what was typed here and could not be read stays.
  useEffect(() => {
    setText(textOf(stored));
    setProblem(undefined);
  }, [stored]);

  function type(next: string) {
    setText(next);
    const count = next.trim() === '' ? undefined : Number(next);
    const wrong =
      count === undefined ? undefined : checkField(kind, spec.path, count, store.getState().state[kind][id]);
    setProblem(wrong);
    if (!wrong) recordValue(store, kind, id, spec.path, count);
  }

  return (
    <div className="quantity">
      <label htmlFor={inputId} className="quantity-label">
        {spec.title}
      </label>
      <input
        id={inputId}
        type="text"
        inputMode="numeric"
        autoComplete="off"
        className="quantity-value"
        value={text}
        placeholder={disabled ? '' : `such as ${spec.example}`}
        disabled={disabled}
        aria-invalid={problem ? true : undefined}
        aria-describedby={problem ? `${inputId}-problem` : undefined}
        onFocus={() => {
          entered.current = stored;
        }}
        onChange={(event) => type(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Escape') type(textOf(entered.current));
        }}
      />
      {problem && <ProblemLine problem={problem} id={`${inputId}-problem`} />}
    </div>
  );
}

function textOf(stored: Json | undefined): string {
  return typeof stored === 'number' ? String(stored) : '';
}
