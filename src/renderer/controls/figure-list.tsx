/** Figures of the chosen revision by name, each a button that opens its explanation. */
import type { Figure } from '../../margins/index.ts';
import { formatUncertain, phrase } from '../../quantity/index.ts';
import { useExplain } from '../explain/explain-context.ts';
import { useAssessment } from '../store/assessment.ts';

export function FigureList({ names, caption }: { names: readonly string[]; caption: string }) {
  const assessment = useAssessment();
  if (!assessment) return null;
  return (
    <table className="figures">
      <caption className="visually-hidden">{caption}</caption>
      <tbody>
        {names.map((name) => {
          const figure = assessment.figures.get(name);
          return figure ? <FigureRow key={name} figure={figure} /> : null;
        })}
      </tbody>
    </table>
  );
}

function FigureRow({ figure }: { figure: Figure }) {
  return (
    <tr>
      <th scope="row">{figure.title}</th>
      <td>
        <FigureButton figure={figure} />
      </td>
    </tr>
  );
}

/** The value with its uncertainty, or what is missing for it. */
export function FigureButton({ figure }: { figure: Figure }) {
  const explain = useExplain();
  const known = figure.result.ok;
  return (
    <button
      type="button"
      className={known ? 'figure-button' : 'figure-button unknown'}
      title={figure.result.ok ? undefined : phrase(figure.result.problem).reason}
      onClick={() => explain({ kind: 'figure', id: figure.name })}
    >
      {figure.result.ok ? formatUncertain(figure.result.value, figure.display) : 'unknown'}
    </button>
  );
}
