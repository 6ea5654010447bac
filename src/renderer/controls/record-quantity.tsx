/** A quantity input bound to its place in a record: previewed while it is typed, recorded when it is left. */
import { memo } from 'react';
import { checkField, type FieldSpec } from '../../margins/index.ts';
import { type Basis, type Json, type QuantityField, valueAt } from '../../notebook/index.ts';
import { useNotebook, useView } from '../store/context.ts';
import { recordValue, setting } from '../store/record-value.ts';
import { QuantityInput } from './quantity-input.tsx';

export interface RecordQuantityProps {
  readonly kind: 'prototype' | 'revision';
  readonly id: string;
  /** Path of the field in that record. */
  readonly path: string;
  readonly field: Pick<FieldSpec, 'title' | 'unit' | 'display' | 'example'>;
  /** What it is called here, where its title alone would not say. */
  readonly label?: string;
  readonly disabled: boolean;
  readonly compact?: boolean;
  readonly plain?: boolean;
  readonly basis?: Basis;
}

export const RecordQuantity = memo(function RecordQuantity({
  kind,
  id,
  path,
  field,
  label,
  ...rest
}: RecordQuantityProps) {
  const store = useNotebook();
  const stored = useView((view) => valueAt(view.state[kind][id] as Json, path)) as QuantityField | undefined;
  return (
    <QuantityInput
      {...rest}
      label={label ?? field.title}
      value={stored}
      display={field.display}
      example={field.example}
      check={(si) => checkField(kind, path, si, store.getState().state[kind][id])}
      onPreview={(next) => store.preview(kind, id, [setting(path, next as Json | undefined)])}
      onCommit={(next) => recordValue(store, kind, id, path, next as Json | undefined)}
      onDrop={() => store.dropPreview()}
    />
  );
});
