/** The time that an item asks to wait, counted down by a clock that nobody can set. */
import { type FormEvent, useEffect, useState } from 'react';
import { type Clock, passedSince, waitTime } from '../../../../checklist/index.ts';
import type { ChecklistItem, Run } from '../../../../notebook/index.ts';
import { type Problem, parseQuantity } from '../../../../quantity/index.ts';
import { ProblemLine, problemText } from '../../../controls/problem-line.tsx';
import { useNotebook, useRecord } from '../../../store/context.ts';
import { recordValue } from '../../../store/record-value.ts';

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
  id,
  run,
  item,
  left,
  onStart,
}: {
  id: string;
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
      <TimedReading id={id} run={run} item={item} />
      {left === undefined ? (
        <button type="button" className="button primary big" onClick={onStart}>
          Start the wait
        </button>
      ) : (
        <>
          {left > 0 && (
            <p className="clock" role="timer" aria-label="Time still to wait">
              {words(Math.ceil(left))}
            </p>
          )}
          <p className="wait-passed" role="status">
            {left > 0 ? '' : 'The time has passed.'}
          </p>
        </>
      )}
    </div>
  );
}

/** The reading that the time rests on, asked for here while nobody has taken it. */
function TimedReading({ id, run, item }: { id: string; run: Run; item: ChecklistItem }) {
  const store = useNotebook();
  const card = useRecord('card', run.card);
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<Problem>();
  const wanted = Object.values(item.wait?.readings ?? {}).flat();
  const name = wanted.find((each) => card?.readings[each] !== undefined);
  const reading = name === undefined ? undefined : card?.readings[name];
  if (!reading || wanted.some((each) => run.readings[each] !== undefined)) return null;

  function take(event: FormEvent) {
    event.preventDefault();
    const parsed = parseQuantity(text, reading?.unit ?? 's', reading?.label ?? '');
    setProblem(parsed.ok ? undefined : parsed.problem);
    if (!parsed.ok) return;
    const { si, u } = parsed.value;
    recordValue(store, 'run', id, `readings/${name}`, {
      typed: text.trim(),
      si,
      u: u ?? 0,
      basis: 'measured',
    });
  }

  return (
    <form className="timed-reading" onSubmit={take}>
      <label>
        {reading.label}{' '}
        <input
          type="text"
          value={text}
          autoComplete="off"
          placeholder={`in ${reading.unit}`}
          onChange={(event) => setText(event.target.value)}
        />
      </label>{' '}
      <button type="submit" className="button">
        Take it
      </button>
      {problem && <ProblemLine problem={problem} />}
    </form>
  );
}

function words(seconds: number): string {
  const whole = Math.ceil(seconds);
  const minutes = Math.floor(whole / 60);
  return minutes > 0 ? `${minutes} min ${whole % 60} s` : `${whole} s`;
}
