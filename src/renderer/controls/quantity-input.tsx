/**
 * One physical input: the value as people write it, its uncertainty, and how it was got. What is typed is read at
 * every key and shown at once in the margins; it is recorded when the field is left or the typing pauses.
 */
import { useEffect, useId, useRef, useState } from 'react';
import {
  type Basis,
  isKnown,
  type KnownQuantity,
  type QuantityField,
  type UncertaintyKind,
} from '../../notebook/index.ts';
import {
  good,
  type Problem,
  parseQuantity,
  parseUncertainty,
  phrase,
  type Result,
} from '../../quantity/index.ts';

const NOT_MEASURED = 'not measured';
const PAUSE = 700; // ms of quiet after which what was typed is recorded

const bases: readonly Basis[] = ['estimated', 'calculated', 'measured', 'data sheet'];
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
  /** Without a visible label, uncertainty typed behind the value: for tables. */
  readonly compact?: boolean;
  /** A figure that is set, not found out: no uncertainty, no word on how it was got. */
  readonly plain?: boolean;
  readonly basis?: Basis;
  readonly check?: (si: number) => Problem | undefined;
  readonly onPreview: (field: QuantityField | undefined) => void;
  readonly onCommit: (field: QuantityField | undefined) => void;
}

interface Draft {
  readonly text: string;
  readonly uncertainty: string;
  readonly kind: UncertaintyKind;
  readonly basis: Basis;
}

export function QuantityInput(props: QuantityInputProps) {
  const { label, value, disabled, compact = false, plain = false, onPreview, onCommit } = props;
  const id = useId();
  const [draft, setDraft] = useState<Draft>(() => draftOf(value, props.basis));
  const [problem, setProblem] = useState<Problem>();
  const editing = useRef(false);
  const pause = useRef<number>(undefined);

  // A change from elsewhere (undo, another window) replaces the text, but never what is being typed.
  useEffect(() => {
    if (editing.current) return;
    setDraft(draftOf(value, props.basis));
    setProblem(undefined);
  }, [value, props.basis]);
  useEffect(() => () => window.clearTimeout(pause.current), []);

  function type(next: Draft) {
    editing.current = true;
    setDraft(next);
    const read = readDraft(next, props);
    setProblem(read.ok ? undefined : read.problem);
    window.clearTimeout(pause.current);
    if (!read.ok) return;
    onPreview(read.value);
    pause.current = window.setTimeout(() => onCommit(read.value), PAUSE);
  }

  function leave() {
    if (!editing.current) return;
    window.clearTimeout(pause.current);
    const read = readDraft(draft, props);
    if (!read.ok) return; // the text stays, with its message, until it can be read
    editing.current = false;
    onCommit(read.value);
  }

  const phrased = problem && phrase(problem);
  return (
    <div className={compact ? 'quantity compact' : 'quantity'} data-invalid={problem ? true : undefined}>
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
        placeholder={
          disabled
            ? ''
            : compact
              ? props.display
              : `in ${props.display === '1' ? 'plain numbers' : props.display}`
        }
        disabled={disabled}
        aria-invalid={problem ? true : undefined}
        aria-describedby={problem ? `${id}-problem` : undefined}
        onChange={(event) => type({ ...draft, text: event.target.value })}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === 'Enter') leave();
        }}
      />
      {!compact && !plain && (
        <>
          <input
            aria-label={`${label}: uncertainty`}
            className="quantity-uncertainty"
            type="text"
            autoComplete="off"
            spellCheck={false}
            value={draft.uncertainty}
            placeholder={disabled ? '' : '±'}
            disabled={disabled || draft.text === '' || saysUncertainty(draft.text)}
            onChange={(event) => type({ ...draft, uncertainty: event.target.value })}
            onBlur={leave}
          />
          <select
            aria-label={`${label}: kind of uncertainty`}
            className={draft.uncertainty === '' ? 'unused' : undefined}
            value={draft.kind}
            disabled={disabled || draft.uncertainty === ''}
            onChange={(event) =>
              type({
                ...draft,
                kind: pick(
                  kinds.map((each) => each.kind),
                  event.target.value,
                ),
              })
            }
            onBlur={leave}
          >
            {kinds.map((each) => (
              <option key={each.kind} value={each.kind}>
                {each.label}
              </option>
            ))}
          </select>
          <select
            aria-label={`${label}: how it was got`}
            value={draft.basis}
            disabled={disabled || draft.text === ''}
            onChange={(event) => type({ ...draft, basis: pick(bases, event.target.value) })}
            onBlur={leave}
          >
            {bases.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </>
      )}
      {phrased && (
        <p className="problem" id={`${id}-problem`} role="alert">
          {phrased.reason} {phrased.remedy}
        </p>
      )}
    </div>
  );
}

function draftOf(value: QuantityField | undefined, basis: Basis | undefined): Draft {
  if (isKnown(value)) {
    return {
      text: value.typed,
      uncertainty: value.uncertainty?.typed ?? '',
      kind: value.uncertainty?.kind ?? 'bound',
      basis: value.basis,
    };
  }
  return { text: value ? NOT_MEASURED : '', uncertainty: '', kind: 'bound', basis: basis ?? 'measured' };
}

function readDraft(draft: Draft, props: QuantityInputProps): Result<QuantityField | undefined> {
  const text = draft.text.trim();
  if (text === '') return good(undefined);
  if (text.toLowerCase() === NOT_MEASURED) return good({ notMeasured: true });
  const parsed = parseQuantity(draft.text, props.display, props.label);
  if (!parsed.ok) return parsed;
  const problem = props.check?.(parsed.value.si);
  if (problem) return { ok: false, problem };
  const known: KnownQuantity = {
    typed: draft.text.trim(),
    si: parsed.value.si,
    u: parsed.value.u ?? 0,
    basis: props.compact || props.plain ? (props.basis ?? draft.basis) : draft.basis,
  };
  const typed = draft.uncertainty.trim().replace(/^±\s*/, '');
  if (typed === '') return good(known);
  const uncertainty = parseUncertainty(typed, draft.kind, props.display, `${props.label}, uncertainty`);
  if (!uncertainty.ok) return uncertainty;
  return good({ ...known, u: uncertainty.value, uncertainty: { typed, kind: draft.kind } });
}

/** `73 g ± 1 g` and `73.2(4) g` say it themselves; a leading ± is a travel to both sides. */
function saysUncertainty(text: string): boolean {
  return /[^\s±]\s*±/.test(text) || text.includes('(');
}

function pick<T extends string>(choices: readonly T[], text: string): T {
  const found = choices.find((choice) => choice === text);
  if (found === undefined) throw new RangeError(`“${text}” is not one of ${choices.join(', ')}`);
  return found;
}
