/** The time that an item asks to wait, counted down by a clock that nobody can set. */
import { useEffect, useState } from 'react';
import { type Clock, passedSince, waitTime } from '../../../../checklist/index.ts';
import type { ChecklistItem, Run } from '../../../../notebook/index.ts';
import { problemText } from '../../../controls/problem-line.tsx';

/** Another one with each load of the window: its counts have nothing to do with those of the last one. */
const session = crypto.randomUUID();

/** Counts only up, whatever is done to the clock on the wall. */
export function steadyClock(): Clock {
  return { session, reading: performance.now() / 1000 };
}

/** Seconds still to wait; undefined while the wait is not begun, or was begun before the window was last opened. */
export function useSecondsLeft(run: Run, item: ChecklistItem): number | undefined {
  const [, tick] = useState(0);
  const waiting = item.wait !== undefined;
  useEffect(() => {
    if (!waiting) return;
    const ticking = window.setInterval(() => tick((count) => count + 1), 250);
    return () => window.clearInterval(ticking);
  }, [waiting]);
  if (!waiting) return 0;
  const time = waitTime(run, item.id);
  const passed = passedSince(run.waits?.[item.id], steadyClock());
  return time.ok && passed !== undefined ? Math.max(0, time.value.seconds - passed) : undefined;
}

export function TimedWait({
  run,
  item,
  left,
  onStart,
}: {
  run: Run;
  item: ChecklistItem;
  left: number | undefined;
  onStart: () => void;
}) {
  const time = waitTime(run, item.id);
  if (!time.ok) return <p className="checklist-problem">{problemText(time.problem)}</p>;
  const { seconds, because } = time.value;
  return (
    <div className="timed-wait">
      <p className="item-detail">
        {words(seconds)}: {because}.
      </p>
      {left === undefined ? (
        <button type="button" className="button primary big" onClick={onStart}>
          Start the wait
        </button>
      ) : (
        <p className="clock" role="timer" aria-label="Time still to wait">
          {left > 0 ? words(Math.ceil(left)) : 'The time has passed.'}
        </p>
      )}
    </div>
  );
}

function words(seconds: number): string {
  const whole = Math.ceil(seconds);
  const minutes = Math.floor(whole / 60);
  return minutes > 0 ? `${minutes} min ${whole % 60} s` : `${whole} s`;
}
