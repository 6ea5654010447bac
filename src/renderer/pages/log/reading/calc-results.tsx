/** Results under a calculation that is read, in the same form as in the editor. */
import { placeOf, type ShownLine } from '../calculation/shown-result.ts';

export function CalcResults({ lines }: { lines: readonly ShownLine[] }) {
  if (lines.length === 0) return null;
  return (
    <ul className="plain calc-results" aria-label="Results">
      {lines.map((line, index) =>
        line.kind === 'value' ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines have no other identity than their order
          <li key={index} className="calc-line">
            <span className="calc-name">{line.name}</span>
            <span className="calc-equals"> = </span>
            <span className="calc-value">{line.value}</span>
          </li>
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines have no other identity than their order
          <li key={index} className="calc-line calc-problem">
            <span className="calc-place">{placeOf(line)}</span>
            <span className="calc-reason">
              {line.reason} {line.remedy}
            </span>
          </li>
        ),
      )}
    </ul>
  );
}
