/** How far the list is: a rule with one mark an item, and the way to any item again. */
import type { ChecklistItem, Run } from '../../../../notebook/index.ts';
import { stateOf } from './item-state.ts';

export interface ProgressProps {
  readonly run: Run;
  readonly current: ChecklistItem | undefined;
  /** All items are being looked at. */
  readonly listing: boolean;
  /** Another item than the next one is being looked at. */
  readonly away: boolean;
  readonly onList: () => void;
  readonly onNext: () => void;
}

export function Progress({ run, current, listing, away, onList, onNext }: ProgressProps) {
  const place = current ? run.items.indexOf(current) + 1 : 0;
  const answered = run.items.filter((item) => run.answers[item.id]?.met).length;
  return (
    <div className="progress">
      <p className="progress-words">
        {place > 0 ? `Item ${place} of ${run.items.length}` : `${answered} of ${run.items.length} items met`}
      </p>
      <div className="progress-rule" aria-hidden>
        {run.items.map((item) => (
          <span
            key={item.id}
            data-state={item === current ? 'now' : stateOf(run, item)}
            data-hold={item.hold || undefined}
          />
        ))}
      </div>
      {away && (
        <button type="button" className="button" onClick={onNext}>
          Back to the open item
        </button>
      )}
      <button type="button" className="button" aria-pressed={listing} onClick={onList}>
        All items
      </button>
    </div>
  );
}
