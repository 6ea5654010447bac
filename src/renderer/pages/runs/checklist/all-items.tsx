/** Every item of the checklist by pause, to be looked at again. */
import { useEffect, useRef } from 'react';
import type { ChecklistItem, Run } from '../../../../notebook/index.ts';
import { stateOf } from './item-state.ts';

const marks = { open: '', met: '✓', 'not met': '✗' } as const;

export function AllItems({ run, onChoose }: { run: Run; onChoose: (id: string) => void }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
  }, []);
  const pauses = [...new Set(run.items.map((item) => item.pause))];
  return (
    <div className="all-items">
      <h2 ref={heading} tabIndex={-1}>
        All items
      </h2>
      {pauses.map((pause) => (
        <section key={pause}>
          <h3>{pause}</h3>
          <ol className="plain">
            {run.items
              .filter((item) => item.pause === pause)
              .map((item) => (
                <li key={item.id}>
                  <ItemRow run={run} item={item} onChoose={onChoose} />
                </li>
              ))}
          </ol>
        </section>
      ))}
    </div>
  );
}

function ItemRow({ run, item, onChoose }: { run: Run; item: ChecklistItem; onChoose: (id: string) => void }) {
  const state = stateOf(run, item);
  return (
    <button type="button" onClick={() => onChoose(item.id)}>
      <span className="number">{run.items.indexOf(item) + 1}</span>
      <span>
        {item.hold && <strong>Hold point. </strong>}
        {item.text}
      </span>
      <span className="item-state">
        <span aria-hidden>{marks[state]}</span> {state}
      </span>
    </button>
  );
}
