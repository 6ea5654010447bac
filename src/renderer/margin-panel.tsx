/** The margins of the chosen revision, always in view, each drawn as a scale. */
import { memo } from 'react';
import { shallow } from 'zustand/shallow';
import { MarginScale } from './controls/margin-scale.tsx';
import { PageLink } from './controls/page-link.tsx';
import { verdictTally } from './controls/verdict-tally.ts';
import { useExplain } from './explain/explain-context.ts';
import { useAssessed } from './store/assessment.ts';
import { useChosenPiece } from './store/context.ts';

const SCALE_WIDTH = 285;

export function MarginPanel() {
  const letter = useChosenPiece(({ revision }) => revision.letter);
  const ids = useAssessed(({ margins }) => margins.map(({ id }) => id), shallow);
  return (
    <aside id="margins" className="margins" aria-label="Margins" tabIndex={-1}>
      <h2>
        <span>Margins</span>
        {letter !== undefined && <span className="quiet small">revision {letter}</span>}
      </h2>
      {ids?.length === 0 ? (
        <p className="quiet">
          Nothing is asked of this prototype yet. Enter what it has to reach on the page{' '}
          <PageLink to={{ page: 'requirements' }}>Requirements</PageLink>: each line becomes a margin here.
        </p>
      ) : (
        <Tally />
      )}
      <div className="margin-scales">
        {ids?.map((id) => (
          <MarginButton key={id} id={id} />
        ))}
      </div>
    </aside>
  );
}

const MarginButton = memo(function MarginButton({ id }: { id: string }) {
  const explain = useExplain();
  const verdict = useAssessed(({ margins }) => margins.find((margin) => margin.id === id)?.verdict);
  return (
    <button
      type="button"
      className="margin"
      data-margin={id}
      data-verdict={verdict}
      aria-haspopup="dialog"
      onClick={() => explain({ kind: 'margin', id })}
    >
      <MarginScale id={id} width={SCALE_WIDTH} />
    </button>
  );
});

/** How many hold, and how many do not: not all of the scales need be in view. */
function Tally() {
  const text = useAssessed(({ margins }) => verdictTally(margins));
  return <p className="margin-tally quiet small">{text}</p>;
}
