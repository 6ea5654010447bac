/** Figures of the chosen revision by name, each a button that opens its explanation. */
import { memo } from 'react';
import { shallow } from 'zustand/shallow';
import type { Figure } from '../../margins/index.ts';
import { formatUncertain } from '../../quantity/index.ts';
import { useExplain } from '../explain/explain-context.ts';
import { appearanceOf, useAssessed } from '../store/assessment.ts';
import { problemText } from './problem-line.tsx';

export function FigureList({ names, caption }: { names: readonly string[]; caption: string }) {
  const known = useAssessed(({ figures }) => names.filter((name) => figures.has(name)), shallow);
  if (!known || known.length === 0) return null;
  return (
    <table className="figures">
      <caption className="visually-hidden">{caption}</caption>
      <tbody>
        {known.map((name) => (
          <FigureRow key={name} name={name} />
        ))}
      </tbody>
    </table>
  );
}

const FigureRow = memo(function FigureRow({ name }: { name: string }) {
  const figure = useAssessed(({ figures }) => figures.get(name), sameFigure);
  if (!figure) return null;
  return (
    <tr>
      <th scope="row">{figure.title}</th>
      <td>
        <FigureButton figure={figure} />
      </td>
    </tr>
  );
});

/** The value with its uncertainty, or what is missing for it. */
export function FigureButton({ figure }: { figure: Figure }) {
  const explain = useExplain();
  const { result } = figure;
  return (
    <button
      type="button"
      className={result.ok ? 'figure-button' : 'figure-button unknown'}
      title={result.ok ? undefined : problemText(result.problem)}
      aria-haspopup="dialog"
      onClick={() => explain({ kind: 'figure', id: figure.name })}
    >
      {result.ok ? formatUncertain(result.value, figure.display) : 'unknown'}
    </button>
  );
}

function sameFigure(a: Figure | undefined, b: Figure | undefined): boolean {
  return a === b || appearanceOf(a) === appearanceOf(b);
}
