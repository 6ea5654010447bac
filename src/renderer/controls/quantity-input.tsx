/**
 * One physical input: the value as people write it, its uncertainty, and how it was got. What is typed is read at
 * every key and shown at once in the margins; it is recorded when the field is left or the typing pauses. Escape
 * puts back what stood there when the field was entered.
 */
import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import type { Basis, QuantityField, UncertaintyKind } from '../../notebook/index.ts';
import type { Problem, Result } from '../../quantity/index.ts';
import { ProblemLine } from './problem-line.tsx';
import { type Draft, draftOf, readDraft, saysUncertainty } from './quantity-draft.ts';

const PAUSE = 700; // ms of quiet after which what was typed is recorded, or found to be unreadable

export const bases: readonly Basis[] = ['estimated', 'calculated', 'measured', 'data sheet'];
const kinds: readonly { kind: UncertaintyKind; label: string }[] = [
  { kind: 'bound', label: '± bound' },
  { kind: 'standard', label: 'standard' },
  { kind: 'resolution', label: 'resolution' },
];

export interface QuantityInputProps {
  readonly label: string;
  readonly value: QuantityField | undefined;
  /** The unit that people usually type; any other of the same dimension is read as well. */
  readonly display: string;
  readonly disabled: boolean;
  /** As a person would type it; shown while the field is blank. */
  readonly example?: string | undefined;
  /** Without a visible label, uncertainty typed behind the value: for tables. */
  readonly compact?: boolean | undefined;
  /** A figure that is set, not found out: no uncertainty, no word on how it was got. */
  readonly plain?: boolean | undefined;
  readonly basis?: Basis | undefined;
  readonly check?: (si: number) => Problem | undefined;
  readonly onPreview: (field: QuantityField | undefined) => void;
  readonly onCommit: (field: QuantityField | undefined) => void;
  /** What is typed cannot be read, and the field was left: back to what is recorded. */
  readonly onDrop: () => void;
}

export function QuantityInput(props: QuantityInputProps) {
  const { label, value, display, disabled, compact = false, plain = false, onPreview, onCommit } = props;
  const id = useId();
  const [draft, setDraft] = useState<Draft>(() => draftOf(value, props.basis));
  const [problem, setProblem] = useState<Problem>();
  const editing = useRef(false);
  const pause = useRef<number>(undefined);
  const entered = useRef(value);

  // A change from elsewhere (undo, another window) replaces the text, but never what is being typed.
  useEffect(() => {
    if (editing.current) return;
    setDraft(draftOf(value, props.basis));
    setProblem(undefined);
  }, [value, props.basis]);
  useEffect(() => () => window.clearTimeout(pause.current), []);

  const read = (next: Draft): Result<QuantityField | undefined> =>
    readDraft(next, {
      label,
      display,
      check: props.check,
      before: entered.current,
      basis: compact || plain ? props.basis : undefined,
    });

  function type(next: Draft) {
    editing.current = true;
    setDraft(next);
    const typed = read(next);
    window.clearTimeout(pause.current);
    if (typed.ok) {
      setProblem(undefined);
      onPreview(typed.value);
    }
    // Half a figure is rarely readable: what is wrong with it is said when the typing stops, not at every key.
    pause.current = window.setTimeout(
      () => (typed.ok ? onCommit(typed.value) : setProblem(typed.problem)),
      PAUSE,
    );
  }

  function leave() {
    if (!editing.current) return;
    window.clearTimeout(pause.current);
    const typed = read(draft);
    if (!typed.ok) {
      setProblem(typed.problem); // the text stays, with its message, until it can be read
      props.onDrop();
      return;
    }
    editing.current = false;
    onCommit(typed.value);
  }

  function pressKey(event: KeyboardEvent) {
    if (event.key === 'Enter') leave();
    if (event.key !== 'Escape' || !editing.current) return;
    event.stopPropagation(); // the dialog around it stays open
    window.clearTimeout(pause.current);
    editing.current = false;
    setProblem(undefined);
    setDraft(draftOf(entered.current, props.basis));
    onCommit(entered.current);
  }

  const events = {
    onFocus: () => {
      if (!editing.current) entered.current = value;
    },
    onBlur: leave,
    onKeyDown: pressKey,
  };
  return (
    <div className={compact ? 'quantity compact' : 'quantity'} data-plain={plain || undefined}>
      <label htmlFor={id} className={compact ? 'visually-hidden' : 'quantity-label'}>
        {label}
      </label>
      <input
        id={id}
        className="quantity-value"
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={draft.text}
        placeholder={disabled ? '' : placeholder(props)}
        disabled={disabled}
        aria-invalid={problem ? true : undefined}
        aria-describedby={problem ? `${id}-problem` : undefined}
        onChange={(event) => type({ ...draft, text: event.target.value })}
        {...events}
      />
      {!compact && !plain && (
        <Provenance label={label} draft={draft} disabled={disabled} onType={type} events={events} />
      )}
      {problem && <ProblemLine problem={problem} id={`${id}-problem`} />}
    </div>
  );
}

/** How well the figure is known, and how it was got. */
function Provenance({
  label,
  draft,
  disabled,
  onType,
  events,
}: {
  label: string;
  draft: Draft;
  disabled: boolean;
  onType: (draft: Draft) => void;
  events: object;
}) {
  const blank = draft.text === '';
  const said = saysUncertainty(draft.text);
  return (
    <>
      <input
        aria-label={`${label}: uncertainty`}
        className={said ? 'quantity-uncertainty unused' : 'quantity-uncertainty'}
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={draft.uncertainty}
        placeholder={disabled ? '' : '±'}
        disabled={disabled || blank || said}
        onChange={(event) => onType({ ...draft, uncertainty: event.target.value })}
        {...events}
      />
      <select
        aria-label={`${label}: how it was got`}
        value={draft.basis}
        disabled={disabled || blank}
        onChange={(event) => onType({ ...draft, basis: pick(bases, event.target.value) })}
        {...events}
      >
        {bases.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>
      <select
        aria-label={`${label}: kind of uncertainty`}
        className={draft.uncertainty === '' || said ? 'unused' : undefined}
        value={draft.kind}
        disabled={disabled || draft.uncertainty === '' || said}
        onChange={(event) =>
          onType({
            ...draft,
            kind: pick(
              kinds.map((each) => each.kind),
              event.target.value,
            ),
          })
        }
        {...events}
      >
        {kinds.map((each) => (
          <option key={each.kind} value={each.kind}>
            {each.label}
          </option>
        ))}
      </select>
    </>
  );
}

function placeholder({ compact, display, example }: QuantityInputProps): string {
  if (compact) return display;
  return example === undefined ? `in ${display}` : `such as ${example}`;
}

function pick<T extends string>(choices: readonly T[], text: string): T {
  const found = choices.find((choice) => choice === text);
  if (found === undefined) throw new RangeError(`“${text}” is not one of ${choices.join(', ')}`);
  return found;
}
