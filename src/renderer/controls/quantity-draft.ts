/** A physical input as it is being typed, and the field of the record that it reads as. */
import {
  type Basis,
  isKnown,
  type KnownQuantity,
  type QuantityField,
  type UncertaintyKind,
} from '../../notebook/index.ts';
import { good, type Problem, parseQuantity, parseUncertainty, type Result } from '../../quantity/index.ts';

const NOT_MEASURED = 'not measured';

export interface Draft {
  readonly text: string;
  readonly uncertainty: string;
  readonly kind: UncertaintyKind;
  readonly basis: Basis;
}

export interface Reading {
  /** Place of the field, in the words that the reader sees. */
  readonly label: string;
  /** The unit that is taken where none is typed; any other of the same dimension is read as well. */
  readonly display: string;
  /** How the figure was got, where the field does not ask. */
  readonly basis?: Basis | undefined;
  readonly check?: ((si: number) => Problem | undefined) | undefined;
  /** What stood there: the same text keeps the instrument and the day that it was read with. */
  readonly before?: QuantityField | undefined;
}

/** What nobody has classified counts as an estimate: “measured” is for a person to say. */
export function draftOf(value: QuantityField | undefined, basis: Basis | undefined): Draft {
  if (isKnown(value)) {
    return {
      text: value.typed,
      uncertainty: value.uncertainty?.typed ?? '',
      kind: value.uncertainty?.kind ?? 'bound',
      basis: value.basis,
    };
  }
  return { text: value ? NOT_MEASURED : '', uncertainty: '', kind: 'bound', basis: basis ?? 'estimated' };
}

/** The field that the draft says; undefined for a blank one, which is neither nought nor “not measured”. */
export function readDraft(draft: Draft, reading: Reading): Result<QuantityField | undefined> {
  const text = draft.text.trim();
  if (text === '') return good(undefined);
  if (text.toLowerCase() === NOT_MEASURED) return good({ notMeasured: true });
  const parsed = parseQuantity(draft.text, reading.display, reading.label);
  if (!parsed.ok) return parsed;
  const problem = reading.check?.(parsed.value.si);
  if (problem) return { ok: false, problem };
  const known: KnownQuantity = {
    ...(isKnown(reading.before) && reading.before.typed === text ? occasionOf(reading.before) : {}),
    typed: text,
    si: parsed.value.si,
    u: parsed.value.u ?? 0,
    basis: reading.basis ?? draft.basis,
  };
  const typed = draft.uncertainty.trim().replace(/^±\s*/, '');
  if (typed === '' || saysUncertainty(text)) return good(known);
  const uncertainty = parseUncertainty(typed, draft.kind, reading.display, `${reading.label}, uncertainty`);
  if (!uncertainty.ok) return uncertainty;
  return good({ ...known, u: uncertainty.value, uncertainty: { typed, kind: draft.kind } });
}

function occasionOf({ instrument, on }: KnownQuantity): Pick<KnownQuantity, 'instrument' | 'on'> {
  return { ...(instrument === undefined ? {} : { instrument }), ...(on === undefined ? {} : { on }) };
}

/** `73 g ± 1 g` and `73.2(4) g` say it themselves; a leading ± is a travel to both sides. */
export function saysUncertainty(text: string): boolean {
  return /[^\s±]\s*±/.test(text) || text.includes('(');
}
