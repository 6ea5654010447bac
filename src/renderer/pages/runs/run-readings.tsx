/** What was read on a run, beside what its card predicted. */
import { outcomeOf } from '../../../checklist/index.ts';
import type { Json, KnownQuantity, Run, TestCard } from '../../../notebook/index.ts';
import { formatValue } from '../../../quantity/index.ts';
import { QuantityInput } from '../../controls/quantity-input.tsx';
import { useNotebook } from '../../store/context.ts';
import { recordValue } from '../../store/record-value.ts';

export function RunReadings({
  id,
  run,
  card,
  disabled,
}: {
  id: string;
  run: Run;
  card: TestCard;
  disabled: boolean;
}) {
  const store = useNotebook();
  return (
    <>
      <h3>Measured beside predicted</h3>
      <table className="data readings-table">
        <thead>
          <tr>
            <th scope="col">Reading</th>
            <th scope="col" className="number">
              Predicted
            </th>
            <th scope="col">Measured</th>
            <th scope="col">Held against each other</th>
          </tr>
        </thead>
        <tbody>
          {outcomeOf(card, run).map(({ reading, label, predicted, measured, unit, words }) => (
            <tr key={reading}>
              <td>{label}</td>
              <td className="number">
                {predicted ? formatValue(predicted.value, predicted.unit, predicted.u) : '–'}
              </td>
              <td>
                <QuantityInput
                  compact
                  label={label}
                  value={measured}
                  display={unit}
                  basis="measured"
                  disabled={disabled}
                  onPreview={() => undefined}
                  onDrop={() => undefined}
                  onCommit={(field) => {
                    const read = field && 'si' in field ? (field as KnownQuantity) : undefined;
                    recordValue(store, 'run', id, `readings/${reading}`, read as Json | undefined);
                  }}
                />
              </td>
              <td>{words}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
