/**
 * The checklist of a run, full screen: one item at a time, read from two metres, worked by keyboard or a gloved
 * finger. The clock, the abort limits and the stop procedure are always in view.
 */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import {
  abort,
  answerItem,
  canClear,
  canFinish,
  clear,
  finish,
  type Given,
  nextItem,
  standing,
} from '../../../checklist/index.ts';
import type { Change, ChecklistItem, Run } from '../../../notebook/index.ts';
import { type Problem, phrase, type Result } from '../../../quantity/index.ts';
import { useNotebook, useRecord } from '../../store/context.ts';
import { now } from '../../store/record-id.ts';
import { AbortPanel } from './abort-panel.tsx';
import { Clock } from './clock.tsx';
import { ItemCard } from './item-card.tsx';

export function ChecklistScreen({ id, onLeave }: { id: string; onLeave: () => void }) {
  const store = useNotebook();
  const run = useRecord('run', id);
  const card = useRecord('card', run?.card);
  const revision = useRecord('revision', run?.revision);
  const [people, setPeople] = useState({ initials: '', second: '' });
  const [chosen, setChosen] = useState<string>();
  const [problem, setProblem] = useState<Problem>();
  if (!run || !card || !revision) return null;
  const status = standing(run, revision);
  const item = run.items.find((each) => each.id === chosen) ?? nextItem(run);

  function record(change: Result<Change>) {
    const done = change.ok ? store.change([change.value]) : change;
    setProblem(done.ok ? undefined : done.problem);
    if (done.ok) setChosen(undefined);
    return done.ok;
  }

  const answer = (given: Omit<Given, 'initials' | 'second' | 'at'>) =>
    item &&
    record(
      answerItem(id, run, revision, item.id, {
        ...given,
        initials: people.initials,
        ...(item.kind === 'two-person' ? { second: people.second } : {}),
        at: now(),
      }),
    );
  const phrased = problem && phrase(problem);

  return (
    <div
      className="checklist-screen"
      role="dialog"
      aria-modal="true"
      aria-label={`Checklist of run ${run.number}`}
    >
      <header className="checklist-head">
        <div>
          <strong>{card.title}</strong>, revision {revision.letter}, run {run.number}
        </div>
        <Clock since={run.startedAt} />
        <Button className="button" onPress={onLeave}>
          Leave the screen
        </Button>
      </header>
      <div className="checklist-people">
        <label>
          Reads{' '}
          <input
            value={people.initials}
            maxLength={8}
            placeholder="initials"
            onChange={(event) => setPeople({ ...people, initials: event.target.value })}
          />
        </label>
        <label>
          Answers{' '}
          <input
            value={people.second}
            maxLength={8}
            placeholder="initials"
            onChange={(event) => setPeople({ ...people, second: event.target.value })}
          />
        </label>
        <Progress run={run} current={item} onChoose={setChosen} />
      </div>
      <div className="checklist-item" aria-live="polite">
        {status === 'void' ? (
          <VoidNotice letter={revision.letter} />
        ) : item ? (
          <ItemCard key={item.id} item={item} answer={run.answers[item.id]} onAnswer={answer} />
        ) : null}
        {phrased && (
          <p className="checklist-problem" role="alert">
            {phrased.reason} {phrased.remedy}
          </p>
        )}
        {status === 'checklist' && !item && (
          <Gate
            question="Every item before the run is met."
            obstacles={canClear(run, revision).map((each) => each.problem)}
            label={`Clear the run, by ${people.initials || '…'}`}
            onPass={() => record(clear(id, run, revision, people.initials, now()))}
          />
        )}
        {status === 'cleared' && (
          <div className="checklist-outcome">
            <Button
              className="button"
              isDisabled={canFinish(run, 'passed').length > 0}
              onPress={() => record(finish(id, run, 'passed', now()))}
            >
              End: passed
            </Button>
            <Button
              className="button"
              isDisabled={canFinish(run, 'failed').length > 0}
              onPress={() => record(finish(id, run, 'failed', now()))}
            >
              End: failed
            </Button>
          </div>
        )}
      </div>
      <AbortPanel
        card={card}
        run={run}
        revision={revision}
        onAbort={(reason) => record(abort(id, run, reason, people.initials || 'unnamed', now()))}
      />
    </div>
  );
}

/** How far the list is: one mark an item, grouped by pause; any of them can be looked at again. */
function Progress({
  run,
  current,
  onChoose,
}: {
  run: Run;
  current: ChecklistItem | undefined;
  onChoose: (id: string) => void;
}) {
  return (
    <ol className="plain progress" aria-label="Items of the checklist">
      {run.items.map((item, index) => {
        const answer = run.answers[item.id];
        const state = item.id === current?.id ? 'now' : answer ? (answer.met ? 'met' : 'not met') : 'open';
        return (
          <li key={item.id}>
            <button
              type="button"
              data-state={state}
              data-hold={item.hold || undefined}
              aria-label={`Item ${index + 1}, ${item.pause}: ${state}`}
              onClick={() => onChoose(item.id)}
            >
              {state === 'met' ? '✓' : state === 'not met' ? '✗' : index + 1}
            </button>
          </li>
        );
      })}
    </ol>
  );
}

function Gate({
  question,
  obstacles,
  label,
  onPass,
}: {
  question: string;
  obstacles: readonly Problem[];
  label: string;
  onPass: () => void;
}) {
  return (
    <div className="gate">
      {obstacles.length === 0 ? (
        <p className="item-text">{question}</p>
      ) : (
        <ul>
          {obstacles.map((problem) => (
            <li key={`${problem.code} ${problem.place}`}>
              {phrase(problem).place}: {phrase(problem).reason}
            </li>
          ))}
        </ul>
      )}
      <Button className="button primary big" isDisabled={obstacles.length > 0} onPress={onPass}>
        {label}
      </Button>
    </div>
  );
}

function VoidNotice({ letter }: { letter: string }) {
  return (
    <div>
      <p className="item-text">This checklist is void.</p>
      <p>
        The data of revision {letter} have changed since it was made. Leave the screen, look at what changed,
        and start a new run from a card that is issued on the revision as it is now.
      </p>
    </div>
  );
}
