/**
 * The number by random draws: how it spreads, how often a margin holds, and whether the first-order figures above may
 * be relied on. Asked for, because it takes a moment; in a worker, so that the window stays free.
 */
import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import {
  confirmedInWords,
  type DrawnResult,
  drawCount,
  holdsInWords,
  outsideInWords,
  spreadInWords,
  type Verdict,
  verdictInWords,
} from '../../margins/index.ts';
import type { Prototype, Revision } from '../../notebook/index.ts';
import type { Result } from '../../quantity/index.ts';
import { drawsDrawing } from '../../report/index.ts';
import { DrawingView } from '../controls/drawing-view.tsx';
import { capitalised, problemText } from '../controls/problem-line.tsx';
import { type RunningDraws, startDraws } from './draws-in-worker.ts';

export interface RandomDrawsProps {
  /** Name of a figure, or id of a margin. */
  readonly name: string;
  /** Of a margin, by first order. */
  readonly verdict?: Verdict | undefined;
  readonly prototype: Prototype;
  readonly revision: Revision;
}

/** What came out, and of which records: it is not shown for others. */
interface Drawn {
  readonly result: Result<DrawnResult>;
  readonly seed: number;
  readonly prototype: Prototype;
  readonly revision: Revision;
}

const FIRST_SEED = 1;

export function RandomDraws({ name, verdict, prototype, revision }: RandomDrawsProps) {
  const [draws, setDraws] = useState<number>();
  const [drawn, setDrawn] = useState<Drawn>();
  const running = useRef<RunningDraws>(undefined);
  useEffect(() => () => running.current?.stop(), []);

  function stop() {
    running.current?.stop();
    running.current = undefined;
    setDraws(undefined);
  }

  async function draw(seed: number) {
    stop();
    setDraws(0);
    const started = startDraws({ prototype, revision, name, seed }, setDraws);
    running.current = started;
    const result = await started.result;
    if (running.current !== started) return;
    stop();
    setDrawn({ result, seed, prototype, revision });
  }

  const shown = drawn?.prototype === prototype && drawn.revision === revision ? drawn : undefined;
  const next = shown ? shown.seed + 1 : FIRST_SEED;
  const isDrawing = draws !== undefined;
  return (
    <section>
      <h3>By random draws</h3>
      <p className="quiet small">
        Every input is drawn from what is known about it, thousands of times, and everything that follows is
        worked out anew (JCGM 101:2008).
      </p>
      {shown?.result.ok && <DrawingView drawing={drawsDrawing(shown.result.value, 440)} />}
      <div role="status">
        {shown && !shown.result.ok && <p>{problemText(shown.result.problem)}</p>}
        {shown?.result.ok && <Outcome drawn={shown.result.value} verdict={verdict} seed={shown.seed} />}
      </div>
      <p>
        {/* one button all along, so that it keeps the focus */}
        <Button className="button" onPress={() => (isDrawing ? stop() : void draw(next))}>
          {isDrawing ? 'Stop drawing' : shown ? 'Draw again, from another seed' : 'Draw it'}
        </Button>{' '}
        {isDrawing && (
          <span className="quiet">{draws > 0 ? `${drawCount(draws)} draws so far` : 'Drawing'}</span>
        )}
      </p>
    </section>
  );
}

function Outcome({
  drawn,
  verdict,
  seed,
}: {
  drawn: DrawnResult;
  verdict: Verdict | undefined;
  seed: number;
}) {
  const { mean, interval } = spreadInWords(drawn);
  const outside = outsideInWords(drawn);
  const other = drawn.kind === 'margin' && verdict ? verdictInWords(verdict, drawn) : undefined;
  return (
    <>
      {drawn.kind === 'margin' && (
        <p>
          The demand is met {holdsInWords(drawn)}
          {other && <>; {other}</>}.
        </p>
      )}
      <p>
        {drawn.kind === 'margin' ? 'Margin of safety' : 'Mean'} {mean}; 95 % of the draws from {interval}.{' '}
        {capitalised(confirmedInWords(drawn))}.{outside && ` ${capitalised(outside)}.`}
      </p>
      <p className="quiet small">
        {drawCount(drawn.draws)} draws from seed {seed}: the same seed draws the same.
      </p>
    </>
  );
}
