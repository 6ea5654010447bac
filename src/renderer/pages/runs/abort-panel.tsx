/** Always in view beside the item: when to stop, how to stop, and the button that writes it down. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { builtinCards, checklistsOf, readingList } from '../../../checklist/index.ts';
import type { Revision, Run, TestCard } from '../../../notebook/index.ts';
import { assessmentOf } from '../../store/assessment.ts';
import { useRecord } from '../../store/context.ts';

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
  const prototype = useRecord('prototype', run.prototype);
  const [reason, setReason] = useState('');
  const template = builtinCards.find((each) => each.id === card.template);
  const procedure =
    prototype && template
      ? readingList(checklistsOf(template), prototype, revision, assessmentOf(prototype, revision))
      : [];
  return (
    <aside className="abort-panel" aria-label="When and how to stop">
      <div className="abort-reasons">
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
              {procedure.slice(0, 5).map((item) => (
                <li key={item.id}>{item.text}</li>
              ))}
            </ol>
          </>
        )}
      </div>
      <div className="abort-now">
        <label>
          Why it is broken off
          <input value={reason} maxLength={500} onChange={(event) => setReason(event.target.value)} />
        </label>
        <Button
          className="button big stop"
          onPress={() => onAbort(reason.trim() || 'Stopped; no reason written.')}
        >
          Break off the run
        </Button>
      </div>
    </aside>
  );
}
