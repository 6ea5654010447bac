/** Where a number comes from, or what is missing for it: with the way to the page where it is entered. */
import { type Assessment, type Figure, locateFact, sourceText } from '../../margins/index.ts';
import type { Problem } from '../../quantity/index.ts';
import { MissingFacts, ToPage } from '../controls/missing-facts.tsx';
import { problemText } from '../controls/problem-line.tsx';

interface Ways {
  readonly assessment: Assessment;
  /** Called before the page is turned. */
  readonly onLeave: () => void;
}

/** Said in full, and each missing fact with its page. */
export function Missing({ problem, ...rest }: Ways & { problem: Problem; missing: readonly string[] }) {
  return (
    <div className="notices">
      <p>Not known: {problemText(problem)}</p>
      <MissingFacts {...rest} />
    </div>
  );
}

/** The source of a fact or a constant; a calculation speaks for itself. */
export function ComesFrom({ assessment, figure, onLeave }: Ways & { figure: Figure }) {
  if (figure.trace.kind === 'calculation') return null;
  const place = figure.trace.kind === 'fact' ? locateFact(assessment, figure.name) : undefined;
  return (
    <p>
      Where it comes from: {sourceText(figure)}
      {place && (
        <>
          , entered on the page <ToPage title={place.page} onLeave={onLeave} />
        </>
      )}
    </p>
  );
}
