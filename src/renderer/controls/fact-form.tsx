/** The input fields of a page: every physical fact that belongs there, with its range and its unit. */
import { useId, useState } from 'react';
import {
  checkField,
  type FactPage,
  type FactSpec,
  factApplies,
  factSpecs,
  resolveFact,
} from '../../margins/index.ts';
import { type Json, valueAt } from '../../notebook/index.ts';
import { type Problem, phrase } from '../../quantity/index.ts';
import { useChosen, useNotebook, useView } from '../store/context.ts';
import { recordValue } from '../store/record-value.ts';
import { RecordQuantity } from './record-quantity.tsx';

/** `group` narrows a page of several kinds of hardware to one. */
export function FactForm({ page, group }: { page: FactPage; group?: FactSpec['group'] }) {
  const chosen = useChosen();
  const readOnly = useView((view) => view.readOnly);
  if (!chosen) return null;
  const { revision } = chosen;
  const specs = factSpecs
    .filter((spec) => spec.page === page && (group === undefined || spec.group === group))
    .filter((spec) => factApplies(spec, revision))
    .map((spec) => resolveFact(spec, revision));

  return (
    <div className="fact-form">
      {specs.map((spec) => {
        const id = spec.record === 'prototype' ? chosen.prototypeId : chosen.id;
        const disabled = readOnly || (spec.record === 'revision' && revision.status === 'issued');
        const key = `${id} ${spec.name}`;
        return spec.kind === 'count' ? (
          <CountInput key={key} kind={spec.record} id={id} spec={spec} disabled={disabled} />
        ) : (
          <RecordQuantity
            key={key}
            kind={spec.record}
            id={id}
            path={spec.path}
            field={spec}
            plain={spec.record === 'prototype'}
            disabled={disabled}
          />
        );
      })}
    </div>
  );
}

/** A whole number, kept as it is. */
function CountInput({
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
  const stored = useView((view) => valueAt(view.state[kind][id] as Json, spec.path));
  const [text, setText] = useState(typeof stored === 'number' ? String(stored) : '');
  const [problem, setProblem] = useState<Problem>();

  function type(next: string) {
    setText(next);
    const count = next.trim() === '' ? undefined : Number(next);
    const wrong = count === undefined ? undefined : checkField(kind, spec.path, count, store.getState().state[kind][id]);
    setProblem(wrong);
    if (!wrong) recordValue(store, kind, id, spec.path, count);
  }

  return (
    <div className="quantity">
      <label htmlFor={inputId}>{spec.title}</label>
      <input
        id={inputId}
        type="text"
        inputMode="numeric"
        className="quantity-value"
        value={text}
        disabled={disabled}
        aria-invalid={problem ? true : undefined}
        onChange={(event) => type(event.target.value)}
      />
      {problem && (
        <p className="problem" role="alert">
          {phrase(problem).reason} {phrase(problem).remedy}
        </p>
      )}
    </div>
  );
}
