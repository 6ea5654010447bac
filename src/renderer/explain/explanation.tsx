/** The parts of an explanation: the equation, what goes in, how sure it is, and what is made from it. */
import { type Assessment, type Explanation, type Figure, sourceText } from '../../margins/index.ts';
import { EquationView } from '../controls/equation-view.tsx';
import { FigureButton } from '../controls/figure-list.tsx';

const BUDGET_LINES = 8;

export function Equation({ explanation: { calculation } }: { explanation: Explanation }) {
  if (!calculation) return null;
  return (
    <section>
      <h3>Equation</h3>
      <EquationView tex={calculation.equation} label={calculation.title} />
      <p className="small">{calculation.validity}</p>
      <p className="quiet small">Source: {calculation.source}</p>
    </section>
  );
}

export function Inputs({ explanation: { inputs } }: { explanation: Explanation }) {
  if (inputs.length === 0) return null;
  return (
    <section>
      <h3>What goes in</h3>
      <table className="figures inputs">
        <tbody>
          {inputs.map((each) => (
            <tr key={each.input}>
              <td className="symbol-cell">
                <EquationView tex={each.symbol} label={each.meaning} inline />
              </td>
              <th scope="row">{each.meaning}</th>
              <td>
                {each.figures.map((figure) => (
                  <Input key={figure.name} figure={figure} />
                ))}
                {each.taken !== undefined && <span className="quiet">{each.taken}, as none is given</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Input({ figure }: { figure: Figure }) {
  return (
    <div>
      <FigureButton figure={figure} />
      {figure.trace.kind !== 'calculation' && (
        <div className="quiet small figure-source">{sourceText(figure)}</div>
      )}
    </div>
  );
}

export function Budget({ explanation: { budget, advice, takenAsExact } }: { explanation: Explanation }) {
  const largest = budget[0]?.share ?? 1;
  if (budget.length === 0 && takenAsExact.length === 0) return null;
  return (
    <section>
      <h3>How sure it is</h3>
      {budget.length > 0 && (
        <table className="figures">
          <caption className="visually-hidden">Share of the variance by input</caption>
          <tbody>
            {budget.slice(0, BUDGET_LINES).map((line) => (
              <tr key={line.name}>
                <th scope="row">{line.label}</th>
                <td className="number">{Math.round(line.share * 100)} %</td>
                <td className="budget-cell" aria-hidden>
                  <span
                    className="budget-bar"
                    style={{ width: `${Math.max(1, (100 * line.share) / largest)}%` }}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {budget.length > BUDGET_LINES && (
        <p className="quiet small">and {budget.length - BUDGET_LINES} inputs that add less.</p>
      )}
      {advice && <p>{advice}</p>}
      {takenAsExact.length > 0 && (
        <p className="quiet small">
          Taken as exact, since no uncertainty is typed: {takenAsExact.map(({ title }) => title).join(', ')}.
        </p>
      )}
    </section>
  );
}

/** The figures that are made from this one: where a change of it would show. */
export function UsedBy({ assessment, name }: { assessment: Assessment; name: string }) {
  const users = [...assessment.figures.values()].filter(
    ({ trace }) => trace.kind === 'calculation' && Object.values(trace.inputs).flat().includes(name),
  );
  if (users.length === 0) return null;
  return (
    <section>
      <h3>What follows from it</h3>
      <table className="figures">
        <tbody>
          {users.map((figure) => (
            <tr key={figure.name}>
              <th scope="row">{figure.title}</th>
              <td>
                <FigureButton figure={figure} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
