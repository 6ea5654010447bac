/** The input fields of a page: every physical fact that belongs there, with its range and its unit. */
import { useMemo } from 'react';
import { type FactPage, type FactSpec, factApplies, factSpecs, resolveFact } from '../../margins/index.ts';
import type { BallastDrive } from '../../notebook/index.ts';
import { useChosenPiece, useLocked, useView } from '../store/context.ts';
import { CountInput } from './count-input.tsx';
import { RecordQuantity } from './record-quantity.tsx';

/** `group` narrows a page of several kinds of hardware to one. */
export function FactForm({ page, group }: { page: FactPage; group?: FactSpec['group'] }) {
  const revision = useChosenPiece((chosen) => chosen.id);
  const prototype = useChosenPiece((chosen) => chosen.prototypeId);
  const drive = useChosenPiece((chosen) => chosen.revision.ballast?.kind);
  const readOnly = useView((view) => view.readOnly);
  const locked = useLocked();
  const specs = useMemo(() => specsOf(page, group, drive), [page, group, drive]);
  if (revision === undefined || prototype === undefined) return null;
  const found = specs.some((spec) => spec.record === 'revision' && spec.kind === 'quantity');

  return (
    <div className="fact-form">
      {found && <ColumnHeads />}
      {specs.map((spec) => {
        const id = spec.record === 'prototype' ? prototype : revision;
        const disabled = spec.record === 'prototype' ? readOnly : locked;
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

/** For the eye; each field is labelled in full for those who do not see the column that it stands in. */
export function ColumnHeads() {
  return (
    <div className="quantity quantity-heads" aria-hidden>
      <span />
      <span>Value</span>
      <span>Uncertainty</span>
      <span>Known as</span>
    </div>
  );
}

function specsOf(
  page: FactPage,
  group: FactSpec['group'] | undefined,
  kind: BallastDrive['kind'] | undefined,
): readonly FactSpec[] {
  const drive = kind === undefined ? {} : { ballast: { kind } };
  return factSpecs
    .filter((spec) => spec.page === page && (group === undefined || spec.group === group))
    .filter((spec) => factApplies(spec, drive))
    .map((spec) => resolveFact(spec, drive));
}
