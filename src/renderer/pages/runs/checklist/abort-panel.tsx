/** Always in view beside the item: when to stop, how to stop, and the button that writes it down. */
import { memo, useState } from 'react';
import { builtinCards, checklistsOf, readingList } from '../../../../checklist/index.ts';
import type { Revision, Run, TestCard } from '../../../../notebook/index.ts';
import { assessmentOf } from '../../../store/assessment.ts';
import { useRecord } from '../../../store/context.ts';

const SHOWN = 5; // steps of the stop procedure; the first of them are what counts

export function AbortPanel({
  card,
  run,
  revision,
  onAbort,
}: {
  card: TestCard;
  run: Run;
  revision: Revision;
  onAbort: (reason: string) => void;
}) {
  const [reason, setReason] = useState('');
  const going = run.status === 'checklist' || run.status === 'cleared';
  return (
    <aside className="abort-panel" aria-label="When and how to stop">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it may have to be scrolled by key */}
      <section className="abort-reasons" aria-label="Abort limits and stop procedure" tabIndex={0}>
        <AbortReasons card={card} prototypeId={run.prototype} revision={revision} />
      </section>
      <div className="abort-now">
        {going ? (
          <>
            <label>
              Why it is broken off
              <input
                type="text"
                value={reason}
                maxLength={500}
                autoComplete="off"
                onChange={(event) => setReason(event.target.value)}
              />
            </label>
            <button
              type="button"
              className="button big stop"
              onClick={() => onAbort(reason.trim() || 'Stopped; no reason written.')}
            >
              Break off the run
            </button>
          </>
        ) : (
          <p>
            <strong>The run is broken off.</strong> Make the vehicle safe, item by item.
          </p>
        )}
      </div>
    </aside>
  );
}

const AbortReasons = memo(function AbortReasons({
  card,
  prototypeId,
  revision,
}: {
  card: TestCard;
  prototypeId: string;
  revision: Revision;
}) {
  const prototype = useRecord('prototype', prototypeId);
  const template = builtinCards.find((each) => each.id === card.template);
  const procedure =
    prototype && template
      ? readingList(checklistsOf(template), prototype, revision, assessmentOf(prototype, revision))
      : [];
  return (
    <>
      <h2>Stop at once when</h2>
      <ul className="plain">
        {Object.entries(card.abortLimits)
          .sort(([, a], [, b]) => a.order - b.order)
          .map(([limitId, limit]) => (
            <li key={limitId}>{limit.text}</li>
          ))}
      </ul>
      {procedure.length > 0 && (
        <>
          <h2>Then</h2>
          <ol>
            {procedure.slice(0, SHOWN).map((item) => (
              <li key={item.id}>{item.text}</li>
            ))}
          </ol>
        </>
      )}
    </>
  );
});
