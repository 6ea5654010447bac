/** How the figures of a table's row are known: one word for the row, which goes with each of them. */
import { type Basis, isKnown, type Json, type QuantityField, set, valueAt } from '../../notebook/index.ts';
import { useNotebook } from '../store/context.ts';
import { bases } from './quantity-input.tsx';

export interface BasisChoiceProps {
  readonly revision: string;
  /** Path of the row in the revision, and the row itself. */
  readonly path: string;
  readonly row: { readonly name: string };
  /** Its fields, the one that speaks for the row first. */
  readonly keys: readonly string[];
  readonly locked: boolean;
}

export function BasisChoice({ revision, path, row, keys, locked }: BasisChoiceProps) {
  const store = useNotebook();
  const known = keys.filter((key) => isKnown(fieldOf(row, key)));
  const basis = basisOf(row, keys);

  function choose(chosen: Basis) {
    const settings = known.map((key): [string, Json] => [`${path}/${key}/basis`, chosen]);
    store.change([set('revision', revision, Object.fromEntries(settings))]);
  }

  return (
    <select
      aria-label={`${row.name}: how its figures are known`}
      value={basis}
      disabled={locked || known.length === 0}
      onChange={(event) => choose(bases.find((each) => each === event.target.value) ?? basis)}
    >
      {bases.map((each) => (
        <option key={each}>{each}</option>
      ))}
    </select>
  );
}

/** What a figure typed into the row counts as. Until somebody says otherwise, an estimate. */
export function basisOf(row: object, keys: readonly string[]): Basis {
  for (const key of keys) {
    const field = fieldOf(row, key);
    if (isKnown(field)) return field.basis;
  }
  return 'estimated';
}

function fieldOf(row: object, key: string): QuantityField | undefined {
  return valueAt(row as Json, key) as QuantityField | undefined;
}
