/**
 * For those who do not see the window: what typing led to, said once it has come to rest. That every key is saved
 * is not said; that a verdict turned is, and that everything typed is on the medium.
 */
import { useEffect, useState } from 'react';
import type { Margin } from '../margins/index.ts';
import { assessmentOf } from './store/assessment.ts';
import { chosenIn, useNotebook, usePlace } from './store/context.ts';

const REST = 1500; // ms without a change

export function Announcer() {
  const store = useNotebook();
  const { place } = usePlace();
  const [said, setSaid] = useState('');

  useEffect(() => {
    let seq = lastSeq();
    let verdicts = verdictsNow();
    let waiting: number | undefined;

    function lastSeq(): number {
      return store.getState().entries.at(-1)?.seq ?? 0;
    }
    function verdictsNow(): ReadonlyMap<string, Margin> {
      const chosen = chosenIn({ state: store.getState().recorded }, place);
      const margins = chosen ? assessmentOf(chosen.prototype, chosen.revision).margins : [];
      return new Map(margins.map((margin) => [margin.id, margin]));
    }
    function speak() {
      const now = verdictsNow();
      const turned = [...now.values()].filter(({ id, verdict }) => turnedFrom(verdicts.get(id), verdict));
      const saved = store.getState().saving.status === 'saved' && lastSeq() !== seq;
      const words = [
        ...(saved ? ['Saved.'] : []),
        ...turned.map(({ title, verdict }) => `${title}: now ${verdict}.`),
      ];
      verdicts = now;
      if (saved) seq = lastSeq();
      if (words.length > 0) setSaid(words.join(' '));
    }
    const stop = store.subscribe(() => {
      window.clearTimeout(waiting);
      waiting = window.setTimeout(speak, REST);
    });
    return () => {
      stop();
      window.clearTimeout(waiting);
    };
  }, [store, place]);

  return (
    <div role="status" className="visually-hidden">
      {said}
    </div>
  );
}

/** A margin that has only come into being says nothing: it is unknown until its figures are entered. */
function turnedFrom(before: Margin | undefined, verdict: Margin['verdict']): boolean {
  return before === undefined ? verdict !== 'unknown' : before.verdict !== verdict;
}
