/** Any number explained: its equation, what goes in, how sure it is, and what would have to change. */
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import {
  type Assessment,
  type Explanation,
  explainFigure,
  explainMargin,
  sourceText,
} from '../../margins/index.ts';
import { phrase } from '../../quantity/index.ts';
import { marginDrawing } from '../../report/index.ts';
import { DrawingView } from '../controls/drawing-view.tsx';
import { EquationView } from '../controls/equation-view.tsx';
import { FigureButton } from '../controls/figure-list.tsx';
import { useAssessment } from '../store/assessment.ts';
import { useChosen } from '../store/context.ts';
import type { Explained } from './explain-context.ts';
import { TurningPoints } from './turning-points.tsx';

const BUDGET_LINES = 8;

export function ExplainSheet({
  explained,
  onClose,
}: {
  explained: Explained | undefined;
  onClose: () => void;
}) {
  return (
    <ModalOverlay
      className="react-aria-ModalOverlay sheet-overlay"
      isOpen={explained !== undefined}
      isDismissable
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
    >
      <Modal>
        <Dialog className="explain-sheet">
          {explained && <Content explained={explained} onClose={onClose} />}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Content({ explained, onClose }: { explained: Explained; onClose: () => void }) {
  const assessment = useAssessment();
  const chosen = useChosen();
  if (!assessment || !chosen) return null;
  const explanation =
    explained.kind === 'figure'
      ? explainFigure(assessment, explained.id)
      : explainMargin(assessment, explained.id);
  if (!explanation.ok) return <p className="problem">{phrase(explanation.problem).reason}</p>;
  const margin =
    explained.kind === 'margin' ? assessment.margins.find(({ id }) => id === explained.id) : undefined;
  const figure = explained.kind === 'figure' ? assessment.figures.get(explained.id) : undefined;

  return (
    <>
      <div className="page-head">
        <Heading slot="title">{explanation.value.title}</Heading>
        <Button className="plain-button" onPress={onClose}>
          Close
        </Button>
      </div>
      {figure && (
        <p>
          <FigureButton figure={figure} />
          <span className="quiet">
            {' '}
            in expressions: <code>{figure.name}</code>
          </span>
        </p>
      )}
      {figure && !figure.result.ok && <Missing problem={phrase(figure.result.problem)} />}
      {figure && figure.trace.kind !== 'calculation' && <p>Where it comes from: {sourceText(figure)}.</p>}
      {margin && (
        <>
          <DrawingView drawing={marginDrawing(margin, assessment, 440)} />
          {margin.verdict === 'unknown' ? (
            <Missing problem={phrase(margin.problem)} />
          ) : (
            <p className="quiet small">
              It holds when the one-sided lower 95 % bound of the margin of safety (k = 1.645, JCGM 106) is
              not below nought; it is in doubt when only the margin itself is.
            </p>
          )}
        </>
      )}
      <Equation explanation={explanation.value} />
      <Inputs explanation={explanation.value} />
      <Budget explanation={explanation.value} />
      {margin && margin.verdict !== 'unknown' && (
        <TurningPoints
          key={margin.id}
          margin={margin.id}
          prototype={chosen.prototype}
          revision={chosen.revision}
        />
      )}
      <UsedBy assessment={assessment} name={explained.kind === 'figure' ? explained.id : undefined} />
    </>
  );
}

function Missing({ problem }: { problem: ReturnType<typeof phrase> }) {
  return (
    <p className="notices">
      Not known: {problem.reason} {problem.remedy}
    </p>
  );
}

function Equation({ explanation: { calculation } }: { explanation: Explanation }) {
  if (!calculation) return null;
  return (
    <section>
      <h2>Equation</h2>
      <EquationView tex={calculation.equation} label={calculation.title} />
      <p className="small">{calculation.validity}</p>
      <p className="quiet small">Source: {calculation.source}</p>
    </section>
  );
}

function Inputs({ explanation: { inputs } }: { explanation: Explanation }) {
  if (inputs.length === 0) return null;
  return (
    <section>
      <h2>What goes in</h2>
      <table className="figures">
        <tbody>
          {inputs.map((each) => (
            <tr key={each.input}>
              <th scope="row">
                <EquationView tex={each.symbol} label={each.meaning} inline /> {each.meaning}
              </th>
              <td>
                {each.figures.map((figure) => (
                  <div key={figure.name}>
                    <FigureButton figure={figure} />
                    {figure.trace.kind !== 'calculation' && (
                      <span className="quiet small"> {sourceText(figure)}</span>
                    )}
                  </div>
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

function Budget({ explanation: { budget, advice, takenAsExact } }: { explanation: Explanation }) {
  const largest = budget[0]?.share ?? 1;
  if (budget.length === 0 && takenAsExact.length === 0) return null;
  return (
    <section>
      <h2>How sure it is</h2>
      {budget.length > 0 && (
        <table className="figures">
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
function UsedBy({ assessment, name }: { assessment: Assessment; name: string | undefined }) {
  if (name === undefined) return null;
  const users = [...assessment.figures.values()].filter(
    ({ trace }) => trace.kind === 'calculation' && Object.values(trace.inputs).flat().includes(name),
  );
  if (users.length === 0) return null;
  return (
    <section>
      <h2>What follows from it</h2>
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
