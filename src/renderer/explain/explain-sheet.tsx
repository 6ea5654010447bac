/**
 * The sheet that explains a number. A number on it explains itself in the same place, and the way back is kept: from
 * a margin down to what was weighed, and up again.
 */
import { useEffect, useRef } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { type Assessment, explainFigure, explainMargin } from '../../margins/index.ts';
import { FigureButton } from '../controls/figure-list.tsx';
import { MarginScale } from '../controls/margin-scale.tsx';
import { problemText } from '../controls/problem-line.tsx';
import { useAssessment } from '../store/assessment.ts';
import { useChosen } from '../store/context.ts';
import type { Explained } from './explain-context.ts';
import { Budget, Equation, Inputs, UsedBy } from './explanation.tsx';
import { ComesFrom, Missing } from './origin.tsx';
import { RandomDraws } from './random-draws.tsx';
import { TurningPoints } from './turning-points.tsx';

export interface ExplainSheetProps {
  /** What was asked, first to last; the last is shown. */
  readonly trail: readonly Explained[];
  readonly onBack: () => void;
  readonly onClose: () => void;
}

export function ExplainSheet(props: ExplainSheetProps) {
  return (
    <ModalOverlay
      className="react-aria-ModalOverlay sheet-overlay"
      isOpen={props.trail.length > 0}
      isDismissable
      onOpenChange={(open) => {
        if (!open) props.onClose();
      }}
    >
      <Modal>
        <Dialog className="explain-sheet">
          <Content {...props} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Content({ trail, onBack, onClose }: ExplainSheetProps) {
  const assessment = useAssessment();
  const chosen = useChosen();
  const heading = useRef<HTMLHeadingElement>(null);
  const explained = trail.at(-1);
  const before = trail.at(-2);

  // The first time the dialog takes the focus itself; later what had it may be gone.
  const opened = useRef(explained);
  useEffect(() => {
    if (explained !== opened.current) heading.current?.focus();
    opened.current = undefined;
  }, [explained]);

  if (!assessment || !chosen || !explained) return null;
  const { kind, id } = explained;
  const explanation = kind === 'figure' ? explainFigure(assessment, id) : explainMargin(assessment, id);
  const title = titleOf(assessment, explained);
  return (
    <>
      <div className="page-head">
        <Heading slot="title" ref={heading} tabIndex={-1}>
          {title}
        </Heading>
        <div className="sheet-ways">
          {before && (
            <Button className="plain-button" onPress={onBack}>
              Back to {titleOf(assessment, before).toLowerCase()}
            </Button>
          )}
          <Button className="plain-button" onPress={onClose}>
            Close
          </Button>
        </div>
      </div>
      {!explanation.ok && <p className="problem">{problemText(explanation.problem)}</p>}
      {kind === 'figure' ? (
        <FigureHead assessment={assessment} id={id} onClose={onClose} />
      ) : (
        <MarginHead assessment={assessment} id={id} onClose={onClose} />
      )}
      {explanation.ok && (
        <>
          <Equation explanation={explanation.value} />
          <Inputs explanation={explanation.value} />
          <Budget explanation={explanation.value} />
        </>
      )}
      {explanation.ok && explanation.value.calculation && (
        <RandomDraws
          key={`${kind} ${id}`}
          name={id}
          verdict={assessment.margins.find((margin) => kind === 'margin' && margin.id === id)?.verdict}
          prototype={chosen.prototype}
          revision={chosen.revision}
        />
      )}
      {kind === 'margin' && (
        <TurningPoints key={id} margin={id} prototype={chosen.prototype} revision={chosen.revision} />
      )}
      {kind === 'figure' && <UsedBy assessment={assessment} name={id} />}
    </>
  );
}

interface HeadProps {
  readonly assessment: Assessment;
  readonly id: string;
  readonly onClose: () => void;
}

function FigureHead({ assessment, id, onClose }: HeadProps) {
  const figure = assessment.figures.get(id);
  if (!figure) return null;
  const { result, name } = figure;
  return (
    <>
      <p>
        <FigureButton figure={figure} />
        <span className="quiet">
          {' '}
          in expressions: <code>{name}</code>
        </span>
      </p>
      {!result.ok && <Missing assessment={assessment} {...result} onLeave={onClose} />}
      <ComesFrom assessment={assessment} figure={figure} onLeave={onClose} />
    </>
  );
}

function MarginHead({ assessment, id, onClose }: HeadProps) {
  const margin = assessment.margins.find((each) => each.id === id);
  if (!margin) return null;
  return (
    <>
      <MarginScale id={id} width={440} />
      {margin.verdict === 'unknown' ? (
        <Missing assessment={assessment} {...margin} onLeave={onClose} />
      ) : (
        <p className="quiet small">
          It holds when the one-sided lower 95 % bound of the margin of safety (k = 1.645, JCGM 106) is not
          below nought; it is in doubt when only the margin itself is.
        </p>
      )}
    </>
  );
}

function titleOf({ figures, margins }: Assessment, { kind, id }: Explained): string {
  const found = kind === 'figure' ? figures.get(id) : margins.find((margin) => margin.id === id);
  return found?.title ?? id;
}
